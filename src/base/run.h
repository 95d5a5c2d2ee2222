/* Oxturn: base/run - one long computation: how far it is, and whether it should stop.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one who asks makes an OxRun on the stack or in a task, hands it down, and may read @done and @total
 * from any thread while the work goes on. Those who work call ox_run_cancelled() at least every few
 * milliseconds and give up at once when it says so.
 */
#pragma once
#include <gio/gio.h>
G_BEGIN_DECLS

typedef struct
{
  GCancellable *cancel;  /* (nullable) borrowed */
  gint done;             /* steps finished; read with g_atomic_int_get */
  gint total;            /* steps to do; 0 while unknown */
  const char *doing;     /* (nullable) untranslated name of the present step, a static string; g_atomic_pointer */
} OxRun;

#define OX_RUN_INIT { NULL, 0, 0, NULL }

/* ox_run_cancelled:
 * @run: (nullable): NULL is never cancelled
 * @error: set to G_IO_ERROR_CANCELLED when cancelled
 *
 * Returns: TRUE when the work is to stop
 */
gboolean ox_run_cancelled (const OxRun *run, GError **error);

/* ox_run_step:
 * @run: (nullable)
 * @doing: a static, untranslated string marked with N_()
 * @done: steps finished
 * @total: steps to do
 *
 * Tells how far the work is.
 */
void ox_run_step (OxRun *run, const char *doing, gint done, gint total);

G_END_DECLS
