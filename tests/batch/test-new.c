/* Oxturn: tests/batch/test-new
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"

typedef struct
{
  char *folder;
  char *outline;
  char *job;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer outline)
{
  fixture->folder = ox_test_folder_new ();
  fixture->outline = g_build_filename (fixture->folder, "hall.wkt", NULL);
  fixture->job = g_build_filename (fixture->folder, "hall.oxturn", NULL);
  g_assert_true (g_file_set_contents (fixture->outline, outline, -1, NULL));
}

static void
tear_down (Fixture *fixture, gconstpointer outline G_GNUC_UNUSED)
{
  ox_test_folder_free (fixture->folder);
  g_free (fixture->outline);
  g_free (fixture->job);
}

static void
test_makes_a_job (Fixture *fixture, gconstpointer outline G_GNUC_UNUSED)
{
  g_auto (Run) made = run_batch ("new", fixture->job, "--room", fixture->outline, "--machine", "large");
  assert_silent (&made);
  g_auto (Run) checked = run_batch ("check", fixture->job);
  assert_silent (&checked);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (fixture->job, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "<machine class=\"large\""));
  g_assert_nonnull (strstr (text, "<solid id=\"O1\" shape=\"polygon\">"));
}

static void
test_bad_outline (Fixture *fixture, gconstpointer outline G_GNUC_UNUSED)
{
  g_auto (Run) run = run_batch ("new", fixture->job, "--room", fixture->outline, "--machine", "large");
  assert_complained (&run, 1, "hall.wkt: The outline of R1 meets itself at 2.000, 2.000");
  g_assert_false (g_file_test (fixture->job, G_FILE_TEST_EXISTS));
}

static void
test_paths (Fixture *fixture, gconstpointer outline G_GNUC_UNUSED)
{
  g_auto (Run) no_outline = run_batch ("new", fixture->job, "--room", "/nowhere.wkt", "--machine", "large");
  assert_complained (&no_outline, 1, "/nowhere.wkt");
  g_auto (Run) no_folder = run_batch ("new", "/nowhere/hall.oxturn", "--room", fixture->outline, "--machine", "large");
  assert_complained (&no_folder, 1, "/nowhere/hall.oxturn");
}

/* A disk without room is nobody's input: a file may have no more than one block here. */
static void
test_full_disk (Fixture *fixture, gconstpointer outline G_GNUC_UNUSED)
{
  g_assert_true (g_file_set_contents (fixture->job, "as it was", -1, NULL));
  g_autofree char *program = built_path ("src/batch/oxturn-batch");
  g_autofree char *line = g_strdup_printf ("trap '' XFSZ; ulimit -f 1; exec '%s' new '%s' --room '%s' --machine large",
                                           program, fixture->job, fixture->outline);
  g_auto (Run) run = run_program ((const char *const[]){ "sh", "-c", line, NULL });
  assert_complained (&run, 3, fixture->job);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (fixture->job, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "as it was");
}

static void
test_usage (Fixture *fixture, gconstpointer outline G_GNUC_UNUSED)
{
  g_auto (Run) no_out = run_batch ("new", "--room", fixture->outline, "--machine", "large");
  assert_complained (&no_out, 2, "OUT is missing");
  g_auto (Run) no_room = run_batch ("new", fixture->job, "--machine", "large");
  assert_complained (&no_room, 2, "--room is missing");
  g_auto (Run) no_machine = run_batch ("new", fixture->job, "--room", fixture->outline);
  assert_complained (&no_machine, 2, "--machine is missing");
  g_auto (Run) class = run_batch ("new", fixture->job, "--room", fixture->outline, "--machine", "colossal");
  assert_complained (&class, 2, "“colossal” is no class of machines");
  assert_one_line (class.err);
}

static void
test_classes (Fixture *fixture G_GNUC_UNUSED, gconstpointer outline G_GNUC_UNUSED)
{
  static const char *const ids[] = { "compact", "medium", "large", "offset" };
  g_auto (Run) run = run_batch ("new", "--machine", "help");
  g_assert_cmpint (run.status, ==, 0);
  g_auto (GStrv) lines = g_strsplit (run.out, "\n", -1);
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    g_assert_true (g_str_has_prefix (lines[i], ids[i]));
}

int
main (int argc, char **argv)
{
  static const char hall[] = "POLYGON ((0 0, 9 0, 9 5, 0 5, 0 0), (4 2, 5 2, 5 3, 4 3, 4 2))";
  static const char bow[] = "POLYGON ((0 0, 4 4, 4 0, 0 4, 0 0))";
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/batch/new/makes-a-job", Fixture, hall, set_up, test_makes_a_job, tear_down);
  g_test_add ("/batch/new/bad-outline", Fixture, bow, set_up, test_bad_outline, tear_down);
  g_test_add ("/batch/new/paths", Fixture, hall, set_up, test_paths, tear_down);
  g_test_add ("/batch/new/full-disk", Fixture, hall, set_up, test_full_disk, tear_down);
  g_test_add ("/batch/new/usage", Fixture, hall, set_up, test_usage, tear_down);
  g_test_add ("/batch/new/classes", Fixture, hall, set_up, test_classes, tear_down);
  return g_test_run ();
}
