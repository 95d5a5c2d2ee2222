/* Oxturn: tests/batch/test-main
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"

static void
test_usage (void)
{
  g_auto (Run) none = run_batch_strv ((const char *const[]){ NULL });
  assert_complained (&none, 2, "a command is missing. Right is: oxturn-batch check|new|plan|draw");
  assert_one_line (none.err);
  g_auto (Run) unknown = run_batch ("bake", "job");
  assert_complained (&unknown, 2, "“bake” is no command");
  assert_one_line (unknown.err);
}

static void
test_help (void)
{
  static const char *const lines[]
      = { "oxturn-batch check JOB\n", "oxturn-batch new OUT --room FILE.wkt --machine CLASS",
          "oxturn-batch plan JOB --tables DIR\n", "oxturn-batch draw JOB --sheet scope|quote|crew|setup|schedule|days|all" };
  g_auto (Run) run = run_batch ("--help");
  g_assert_cmpint (run.status, ==, 0);
  g_assert_cmpstr (run.err, ==, "");
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    g_assert_nonnull (strstr (run.out, lines[i]));
}

static void
test_help_of_a_command (void)
{
  g_auto (Run) run = run_batch ("plan", "--help");
  g_assert_cmpint (run.status, ==, 0);
  g_assert_true (g_str_has_prefix (run.out, "oxturn-batch plan JOB --tables DIR\n"));
}

static void
test_version (void)
{
  g_auto (Run) run = run_batch ("--version");
  g_assert_cmpint (run.status, ==, 0);
  g_assert_cmpstr (run.out, ==, "oxturn-batch " OX_VERSION "\n");
}

/* No display and no window library: a server needs neither. */
static void
test_no_gtk (void)
{
  g_autofree char *program = built_path ("src/batch/oxturn-batch");
  g_auto (Run) run = run_program ((const char *const[]){ "ldd", program, NULL });
  g_assert_cmpint (run.status, ==, 0);
  g_assert_nonnull (strstr (run.out, "libxml2"));
  g_assert_null (strstr (run.out, "libgtk"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/main/usage", test_usage);
  g_test_add_func ("/batch/main/help", test_help);
  g_test_add_func ("/batch/main/help/of-a-command", test_help_of_a_command);
  g_test_add_func ("/batch/main/version", test_version);
  g_test_add_func ("/batch/main/no-gtk", test_no_gtk);
  return g_test_run ();
}
