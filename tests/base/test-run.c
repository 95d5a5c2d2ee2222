/* Oxturn: tests of base/run
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/run.h"

static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  OxRun run = OX_RUN_INIT;
  run.cancel = cancel;
  g_assert_false (ox_run_cancelled (&run, &error));
  g_assert_no_error (error);
  g_cancellable_cancel (cancel);
  g_assert_true (ox_run_cancelled (&run, NULL));
  g_assert_true (ox_run_cancelled (&run, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static void
test_nobody_asks (void)
{
  g_autoptr (GError) error = NULL;
  OxRun run = OX_RUN_INIT;
  g_assert_false (ox_run_cancelled (NULL, &error));
  g_assert_false (ox_run_cancelled (&run, &error));
  g_assert_no_error (error);
  ox_run_step (NULL, "nothing", 1, 2);
}

static void
test_step (void)
{
  OxRun run = OX_RUN_INIT;
  g_assert_cmpint (run.total, ==, 0);
  ox_run_step (&run, "laying strips", 3, 12);
  g_assert_cmpstr (run.doing, ==, "laying strips");
  g_assert_cmpint (g_atomic_int_get (&run.done), ==, 3);
  g_assert_cmpint (g_atomic_int_get (&run.total), ==, 12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/run/cancelled", test_cancelled);
  g_test_add_func ("/base/run/nobody-asks", test_nobody_asks);
  g_test_add_func ("/base/run/step", test_step);
  return g_test_run ();
}
