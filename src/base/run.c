/* Oxturn: base/run - one long computation: how far it is, and whether it should stop.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/run.h"

gboolean
ox_run_cancelled (const OxRun *run, GError **error)
{
  return run && g_cancellable_set_error_if_cancelled (run->cancel, error);
}

void
ox_run_step (OxRun *run, const char *doing, gint done, gint total)
{
  if (!run)
    return;
  g_atomic_pointer_set (&run->doing, doing);
  g_atomic_int_set (&run->total, total);
  g_atomic_int_set (&run->done, done);
}
