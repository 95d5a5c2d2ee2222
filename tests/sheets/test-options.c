/* Oxturn: tests of sheets/options
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/options.h"
#include "job/edit.h"
#include "support/floors.h"

/* Papers that a job may name are those that there are, in their order. */
static void
test_papers (void)
{
  guint n = 0;
  for (; ox_setup_papers[n]; n++)
    g_assert_cmpstr (ox_setup_papers[n], ==, ox_paper_get (n)->name);
  g_assert_cmpuint (n, ==, ox_paper_get_count ());
}

/* What a job holds comes back from the options made of it. */
static void
test_there_and_back (void)
{
  const OxSheetSetup rows[] = {
    { .language = (char *) "" },
    { .language = (char *) "es",
      .paper = (char *) "A1",
      .tiles = (char *) "A4",
      .orientation = OX_ORIENTATION_PORTRAIT },
    { .schedule_paper = (char *) "Letter", .scale = 96 },
  };
  g_autoptr (OxJob) bare = ox_test_floor_rectangle (10, 8, "compact");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&rows[i]);
      g_autoptr (OxJob) job = ox_job_with_setup (bare, setup, NULL);
      OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
      OxLanguage language;
      OxSheetSetup kept;
      ox_sheet_options_take (&options, job, &language);
      g_assert_cmpint (options.which, ==, OX_SHEET_ALL);
      ox_sheet_options_keep (&options, &kept);
      g_autoptr (OxSheetSetup) again = ox_sheet_setup_new (&kept);
      g_assert_true (ox_sheet_setup_equal (setup, again));
    }
}

/* A scale of the US series has its name where lengths are in feet. */
static void
test_scale (void)
{
  g_autoptr (OxJob) bare = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&(OxSheetSetup){ .scale = 96 });
  g_autoptr (OxJob) metres = ox_job_with_setup (bare, setup, NULL);
  g_autoptr (OxJob) feet = ox_job_with_units (metres, OX_UNITS_FEET);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  OxLanguage language;
  ox_sheet_options_take (&options, metres, &language);
  g_assert_null (options.scale.name);
  ox_sheet_options_take (&options, feet, &language);
  g_assert_cmpstr (options.scale.name, ==, "1/8\" = 1'-0\"");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/options/papers", test_papers);
  g_test_add_func ("/options/there-and-back", test_there_and_back);
  g_test_add_func ("/options/scale", test_scale);
  return g_test_run ();
}
