/* Oxturn: app/canvas/reach-keeper - the lines of reach of a plan, found off the main thread and kept while they are asked for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/reach-line.h"

#include <gio/gio.h>
G_BEGIN_DECLS

typedef struct _OxReachKeeper OxReachKeeper;

/* ox_reach_keeper_new: @found: called when the lines of the plan asked for last are there. Main thread only, as all below */
OxReachKeeper *ox_reach_keeper_new (void (*found) (gpointer user_data), gpointer user_data) G_GNUC_WARN_UNUSED_RESULT;
void ox_reach_keeper_free (OxReachKeeper *keeper); /* @found is not called any more */

/* ox_reach_keeper_find: (nullable): the lines of @plan; NULL while they are being found, which this begins */
const OxReachLines *ox_reach_keeper_find (OxReachKeeper *keeper, const OxPlan *plan);
gboolean ox_reach_keeper_is_settled (OxReachKeeper *keeper); /* nothing is being found */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxReachKeeper, ox_reach_keeper_free)
G_END_DECLS
