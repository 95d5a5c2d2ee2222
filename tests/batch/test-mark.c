/* Oxturn: tests/batch/test-mark
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"

typedef struct
{
  char *folder;
  char *job;
  char *marked;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  fixture->folder = ox_test_folder_new ();
  g_autofree char *outline = g_build_filename (fixture->folder, "hall.wkt", NULL);
  fixture->job = g_build_filename (fixture->folder, "hall.oxturn", NULL);
  fixture->marked = g_build_filename (fixture->folder, "marked.oxturn", NULL);
  g_assert_true (g_file_set_contents (outline, "POLYGON ((0 0, 10 0, 10 8, 0 8, 0 0))", -1, NULL));
  g_auto (Run) made = run_batch ("new", fixture->job, "--room", outline, "--machine", "compact");
  assert_silent (&made);
}

static void
tear_down (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  ox_test_folder_free (fixture->folder);
  g_free (fixture->job);
  g_free (fixture->marked);
}

/* Morning and evening of a day: the record table has both, and the strips by their day. */
static void
test_a_day (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  g_autofree char *tables = g_build_filename (fixture->folder, "tables", NULL);
  g_autofree char *table = g_build_filename (tables, "record.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (Run) morning = run_batch ("mark", fixture->job, "--date", "2026-09-14", "--meter-start", "12.5", "-o", fixture->marked);
  assert_silent (&morning);
  g_auto (Run) evening = run_batch ("mark", fixture->marked, "--date", "2026-09-14", "--strips", "-12, 20", "--edges", "E1", "--meter-end",
                                    "14.25", "-o", fixture->marked);
  assert_silent (&evening);
  g_auto (Run) planned = run_batch ("plan", fixture->marked, "--tables", tables);
  g_assert_cmpint (planned.status, ==, 0);
  g_assert_true (g_file_get_contents (table, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "\r\nday,2026-09-14,13,1-12 20,1,E1,"));
  g_assert_nonnull (strstr (text, ",1.75,"));
}

/* Each machine has a meter of its own. */
static void
test_machines (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  g_autofree char *text = NULL;
  g_auto (Run) first = run_batch ("mark", fixture->job, "--date", "2026-09-14", "--meter-start", "12.5", "--meter-end", "14", "-o", fixture->marked);
  assert_silent (&first);
  g_auto (Run) second = run_batch ("mark", fixture->marked, "--date", "2026-09-14", "--machine", "2", "--meter-start", "300", "--note",
                                   "New wheel", "-o", fixture->marked);
  assert_silent (&second);
  g_assert_true (g_file_get_contents (fixture->marked, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "<day date=\"2026-09-14\" meter-start=\"12.5\" meter-end=\"14\"/>"));
  g_assert_nonnull (strstr (text, "<day date=\"2026-09-14\" machine=\"2\" meter-start=\"300\" notes=\"New wheel\"/>"));
  g_auto (Run) none = run_batch ("mark", fixture->job, "--date", "2026-09-14", "--machine", "21", "--meter-start", "1", "-o", fixture->marked);
  assert_complained (&none, 2, "--machine 21: 1 to 20 is allowed");
}

/* A note without strips or edge work is the day's; another comes below it, and readings of the day stay. */
static void
test_note_of_a_day (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  g_autofree char *text = NULL;
  g_auto (Run) first = run_batch ("mark", fixture->job, "--date", "2026-09-14", "--note", "Slab wet until ten", "-o", fixture->marked);
  assert_silent (&first);
  g_auto (Run) second = run_batch ("mark", fixture->marked, "--date", "2026-09-14", "--note", "Hose torn", "--meter-end", "14.25", "-o",
                                   fixture->marked);
  assert_silent (&second);
  g_auto (Run) third = run_batch ("mark", fixture->marked, "--date", "2026-09-14", "--meter-start", "12.5", "-o", fixture->marked);
  assert_silent (&third);
  g_assert_true (g_file_get_contents (fixture->marked, &text, NULL, NULL));
  const char *wet = strstr (text, "Slab wet until ten"), *torn = strstr (text, "Hose torn");
  g_assert_true (wet != NULL && torn != NULL && wet < torn);
  g_assert_nonnull (strstr (text, "14.25"));
  g_assert_nonnull (strstr (text, "12.5"));
}

/* With nothing to be marked the job is not written as if something had been, whatever the day; and no reading is
 * passed over. */
static void
test_nothing_asked_for (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  g_auto (Run) bare = run_batch ("mark", fixture->job, "--date", "2026-09-14", "-o", fixture->marked);
  assert_complained (&bare, 2, "one of --strips, --edges, --meter-start, --meter-end and --note is needed");
  assert_one_line (bare.err);
  g_auto (Run) soon = run_batch ("mark", fixture->job, "--date", "soon", "-o", fixture->marked);
  assert_complained (&soon, 2, "is needed");
  static const char *const readings[] = { "-3", "-1", "nan", "twelve", "" };
  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      g_autofree char *start = g_strdup_printf ("--meter-start=%s", readings[i]);
      g_auto (Run) told = run_batch ("mark", fixture->job, "--date", "2026-09-14", "--strips", "1", start, "-o", fixture->marked);
      assert_complained (&told, 2, "is no reading of a meter in hours");
    }
  g_assert_false (g_file_test (fixture->marked, G_FILE_TEST_EXISTS));
}

static void
test_complains (Fixture *fixture, gconstpointer data G_GNUC_UNUSED)
{
  g_auto (Run) far = run_batch ("mark", fixture->job, "--date", "2026-09-14", "--strips", "9999", "-o", fixture->marked);
  assert_complained (&far, 1, "The plan has no number 9999");
  g_auto (Run) soon = run_batch ("mark", fixture->job, "--date", "soon", "--strips", "1", "-o", fixture->marked);
  assert_complained (&soon, 1, "“soon” is no day of the record");
  g_auto (Run) undated = run_batch ("mark", fixture->job, "--strips", "1", "-o", fixture->marked);
  assert_complained (&undated, 2, "--date is missing");
  g_assert_false (g_file_test (fixture->marked, G_FILE_TEST_EXISTS));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/batch/mark/a-day", Fixture, NULL, set_up, test_a_day, tear_down);
  g_test_add ("/batch/mark/note-of-a-day", Fixture, NULL, set_up, test_note_of_a_day, tear_down);
  g_test_add ("/batch/mark/machines", Fixture, NULL, set_up, test_machines, tear_down);
  g_test_add ("/batch/mark/nothing-asked-for", Fixture, NULL, set_up, test_nothing_asked_for, tear_down);
  g_test_add ("/batch/mark/complains", Fixture, NULL, set_up, test_complains, tear_down);
  return g_test_run ();
}
