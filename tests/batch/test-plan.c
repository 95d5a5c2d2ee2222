/* Oxturn: tests/batch/test-plan
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "run-batch.h"

static const char *const tables[] = { "floor.csv",    "strips.csv",   "moves.csv",      "zones.csv", "edge.csv",
                                      "stations.csv", "summary.json", "quantities.csv", "shifts.csv", "cost.csv", "checks.csv",
                                      "record.csv" };

static char *
table_text (const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

/* The same job gives the same tables to the byte. */
static void
test_tables (void)
{
  char *first = ox_test_folder_new ();
  char *second = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/shop.oxturn");
  g_auto (Run) one = run_batch ("plan", job, "--tables", first);
  assert_done (&one);
  g_auto (Run) two = run_batch ("plan", job, "--tables", second);
  assert_done (&two);
  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      g_autofree char *a = table_text (first, tables[i]);
      g_autofree char *b = table_text (second, tables[i]);
      g_assert_cmpstr (a, ==, b);
    }
  ox_test_folder_free (first);
  ox_test_folder_free (second);
}

static void
test_folder_is_made (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/shop.oxturn");
  char *inner = g_build_filename (folder, "tables", NULL);
  g_auto (Run) run = run_batch ("plan", job, "--tables", inner);
  assert_done (&run);
  g_autofree char *text = table_text (inner, "summary.json");
  g_assert_nonnull (strstr (text, "\"labour_hours\": "));
  ox_test_folder_free (inner);
  ox_test_folder_free (folder);
}

static void
test_faults (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *job = source_path ("samples/shop.oxturn");
  g_autofree char *file = g_build_filename (folder, "file", NULL);
  g_assert_true (g_file_set_contents (file, "<job/>", -1, NULL));
  g_auto (Run) no_job = run_batch ("plan", file, "--tables", folder);
  assert_complained (&no_job, 1, "file:1: <job> of namespace “” stands here");
  g_autofree char *summary = g_build_filename (folder, "summary.json", NULL);
  g_assert_false (g_file_test (summary, G_FILE_TEST_EXISTS));
  g_auto (Run) no_folder = run_batch ("plan", job, "--tables", file);
  assert_complained (&no_folder, 1, file);
  ox_test_folder_free (folder);
}

static void
test_usage (void)
{
  g_auto (Run) no_tables = run_batch ("plan", "floor.oxturn");
  assert_complained (&no_tables, 2, "--tables is missing. Right is: oxturn-batch plan JOB --tables DIR");
  g_auto (Run) no_job = run_batch ("plan", "--tables", "out");
  assert_complained (&no_job, 2, "JOB is missing");
  g_auto (Run) no_value = run_batch ("plan", "floor.oxturn", "--tables");
  assert_complained (&no_value, 2, "--tables");
  assert_one_line (no_value.err);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/plan/tables", test_tables);
  g_test_add_func ("/batch/plan/folder-is-made", test_folder_is_made);
  g_test_add_func ("/batch/plan/faults", test_faults);
  g_test_add_func ("/batch/plan/usage", test_usage);
  return g_test_run ();
}
