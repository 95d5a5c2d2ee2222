/* Oxturn: base/stop - whether to stop, for those who are not told of a run.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/stop.h"

static GPrivate present = G_PRIVATE_INIT (NULL);

OxStopScope
ox_stop_scope (const OxRun *run)
{
  OxStopScope scope = { g_private_get (&present) };
  g_private_set (&present, (gpointer) run);
  return scope;
}

void
ox_stop_scope_end (OxStopScope *scope)
{
  g_private_set (&present, (gpointer) scope->outer);
}

const OxRun *
ox_stop_run (void)
{
  return g_private_get (&present);
}

gboolean
ox_stop_asked (void)
{
  return ox_run_cancelled (ox_stop_run (), NULL);
}
