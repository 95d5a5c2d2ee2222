/* Oxturn: tests/batch/test-check
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"

static void
test_sound (void)
{
  static const char *const samples[] = { "samples/warehouse.oxturn", "samples/workshop.oxturn", "samples/shop.oxturn" };
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    {
      g_autofree char *path = source_path (samples[i]);
      g_auto (Run) run = run_batch ("check", path);
      assert_silent (&run);
    }
}

/* The shop of the samples with its first @old replaced, checked. */
static Run
check_changed (const char *old, const char *new)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *from = source_path ("samples/shop.oxturn");
  g_autofree char *to = g_build_filename (folder, "floor.oxturn", NULL);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (from, &text, NULL, NULL));
  g_autoptr (GString) changed = g_string_new (text);
  g_assert_cmpuint (g_string_replace (changed, old, new, 1), ==, 1);
  g_assert_true (g_file_set_contents (to, changed->str, -1, NULL));
  Run run = run_batch ("check", to);
  ox_test_folder_free (folder);
  return run;
}

static void
test_wrong (void)
{
  g_auto (Run) narrow = check_changed ("blast-width=\"0.21\"", "blast-width=\"0\"");
  assert_complained (&narrow, 1, "floor.oxturn:17: blast-width “0” of body of machine: a number of more than 0");
  assert_one_line (narrow.err);
  g_auto (Run) doctype = check_changed ("<job", "<!DOCTYPE job>\n<job");
  assert_complained (&doctype, 1, "floor.oxturn:2: a document type declaration");
  g_auto (Run) newer = check_changed ("version=\"1.2\" units", "version=\"2.0\" units");
  assert_complained (&newer, 1, "version 2.0");
}

static void
test_notice (void)
{
  g_auto (Run) run = check_changed ("x1=\"2\"", "x1=\"2.7\"");
  assert_complained (&run, 0, "floor.oxturn: notice: Doorway D1 is 0.300 m wide; the machine needs 0.420 m to pass");
}

static void
test_missing (void)
{
  g_auto (Run) run = run_batch ("check", "/nowhere/floor.oxturn");
  assert_complained (&run, 1, "/nowhere/floor.oxturn could not be read");
}

static void
test_usage (void)
{
  g_auto (Run) none = run_batch ("check");
  assert_complained (&none, 2, "JOB is missing. Right is: oxturn-batch check JOB");
  g_auto (Run) two = run_batch ("check", "a", "b");
  assert_complained (&two, 2, "“b” is one argument too many");
  g_auto (Run) option = run_batch ("check", "a", "--deep");
  assert_complained (&option, 2, "--deep");
  assert_one_line (option.err);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/check/sound", test_sound);
  g_test_add_func ("/batch/check/wrong", test_wrong);
  g_test_add_func ("/batch/check/notice", test_notice);
  g_test_add_func ("/batch/check/missing", test_missing);
  g_test_add_func ("/batch/check/usage", test_usage);
  return g_test_run ();
}
