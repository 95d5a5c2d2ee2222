/* Oxturn: tests/job/test-setup
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/setup.h"
#include "job/edit.h"
#include "job-making.h"

static void
test_equal (void)
{
  const OxSheetSetup rows[] = {
    { .language = (char *) "de" }, { .paper = (char *) "A1" }, { .schedule_paper = (char *) "A4" },
    { .tiles = (char *) "A4" },    { .scale = 100 },           { .orientation = OX_ORIENTATION_PORTRAIT },
  };
  g_autoptr (OxSheetSetup) usual = ox_sheet_setup_new (&(OxSheetSetup){ .scale = 0 });
  g_assert_cmpstr (usual->paper, ==, "");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxSheetSetup) one = ox_sheet_setup_new (&rows[i]);
      g_autoptr (OxSheetSetup) same = ox_sheet_setup_new (one);
      g_assert_true (ox_sheet_setup_equal (one, same));
      g_assert_false (ox_sheet_setup_equal (one, usual));
    }
}

/* An edit of something else shares it. */
static void
test_edit (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&(OxSheetSetup){ .paper = (char *) "Arch D", .scale = 96 });
  g_autoptr (OxJob) set = ox_job_with_setup (job, setup, &error);
  g_autoptr (OxJob) feet = ox_job_with_units (set, OX_UNITS_FEET);
  g_assert_no_error (error);
  g_assert_true (feet->setup == setup);
  g_assert_cmpstr (job->setup->paper, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/setup/equal", test_equal);
  g_test_add_func ("/job/setup/edit", test_edit);
  return g_test_run ();
}
