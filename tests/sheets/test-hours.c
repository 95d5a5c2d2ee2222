/* Oxturn: tests of sheets/hours
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/estimate.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

/* The schedule has a table of shifts, and a title of each group of figures. */
static void
test_tables (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCHEDULE;
  options.paper = ox_paper_find ("A4");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  guint tables = 0, groups = 0;
  for (guint i = 0; i < set->n_pages; i++)
    {
      const OxDrawing *drawing = set->pages[i].drawing;
      tables += ox_test_find_text (drawing, "Hours by shift") != NULL;
      for (OxFigureGroup group = OX_FIGURE_TIME; group < OX_N_FIGURE_GROUPS; group++)
        groups += ox_test_find_text (drawing, ox_estimate_group_name (group)) != NULL;
      g_assert_cmpstr (set->pages[i].title, ==, "Schedule");
    }
  g_assert_cmpuint (tables, >, 0);
  g_assert_cmpuint (groups, >=, OX_N_FIGURE_GROUPS - OX_FIGURE_TIME);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/hours/tables", test_tables);
  return g_test_run ();
}
