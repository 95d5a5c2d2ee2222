/* Oxturn: base/stop - whether to stop, for those who are not told of a run.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A long computation calls functions that know of no OxRun, geometry above all, and some of them take their time. It says once for its thread which
 * run it belongs to, and they ask here:
 *
 *      g_auto (OxStopScope) scope = ox_stop_scope (run);
 *
 * ox_share() carries the scope into its threads. Unions, overlays and offsets of geometry/region that are begun after the run was cancelled do nothing
 * and return an empty region or part of what they should: the computation is to be given up then, and what it made thrown away.
 */
#pragma once
#include "base/run.h"
G_BEGIN_DECLS

typedef struct
{
  const OxRun *outer;
} OxStopScope;

/* ox_stop_scope: @run: (nullable): NULL is never cancelled; it must outlive the scope */
OxStopScope ox_stop_scope (const OxRun *run) G_GNUC_WARN_UNUSED_RESULT;
void ox_stop_scope_end (OxStopScope *scope); /* back to what was asked before */
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (OxStopScope, ox_stop_scope_end)

/* ox_stop_run: (nullable): of the innermost scope, to begin one with it in another thread */
const OxRun *ox_stop_run (void);

/* ox_stop_asked: whether the run of the innermost scope was cancelled; FALSE without one */
gboolean ox_stop_asked (void);

G_END_DECLS
