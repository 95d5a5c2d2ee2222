/* Oxturn: tests of base/stop
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/share.h"
#include "base/stop.h"

static void
scopes (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  OxRun run = OX_RUN_INIT, other = OX_RUN_INIT;
  run.cancel = cancel;
  g_assert_false (ox_stop_asked ());
  {
    g_auto (OxStopScope) scope = ox_stop_scope (&run);
    g_assert_true (ox_stop_run () == &run);
    g_assert_false (ox_stop_asked ());
    g_cancellable_cancel (cancel);
    g_assert_true (ox_stop_asked ());
    {
      g_auto (OxStopScope) inner = ox_stop_scope (&other);
      g_assert_false (ox_stop_asked ());
    }
    g_assert_true (ox_stop_asked ());
  }
  g_assert_null (ox_stop_run ());
  g_assert_false (ox_stop_asked ());
}

static void
note (guint i, gpointer data)
{
  gint *asked = data;
  asked[i] = ox_stop_asked ();
}

/* Pieces that are shared out belong to the run of the one who shares. */
static void
shared (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  OxRun run = OX_RUN_INIT;
  gint asked[400] = { 0 };
  run.cancel = cancel;
  g_cancellable_cancel (cancel);
  ox_share_set_threads (8);
  {
    g_auto (OxStopScope) scope = ox_stop_scope (&run);
    ox_share (G_N_ELEMENTS (asked), note, asked);
  }
  for (guint i = 0; i < G_N_ELEMENTS (asked); i++)
    g_assert_true (asked[i]);
  ox_share (G_N_ELEMENTS (asked), note, asked);
  for (guint i = 0; i < G_N_ELEMENTS (asked); i++)
    g_assert_false (asked[i]);
  ox_share_set_threads (0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/stop/scopes", scopes);
  g_test_add_func ("/base/stop/shared", shared);
  return g_test_run ();
}
