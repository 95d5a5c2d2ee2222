/* Oxturn: tests of sheets/hours
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/estimate.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

static OxPageSet *
make (const OxJob *job, const OxPlan *plan)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCHEDULE;
  options.paper = ox_paper_find ("A4");
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

/* A day sheet for each shift of the estimate, each with its strips and room to write; the table has the same shifts. */
static void
test_day_sheets (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxPageSet) set = make (job, plan);
  guint sheets = 0, tables = 0;
  for (guint i = 0; i < set->n_pages; i++)
    {
      const OxDrawing *drawing = set->pages[i].drawing;
      tables += ox_test_find_text (drawing, "Hours by shift") != NULL;
      if (g_strcmp0 (set->pages[i].title, "Day sheet") != 0)
        continue;
      sheets++;
      g_assert_nonnull (ox_test_find_text (drawing, "Meter at the start, h"));
      g_assert_nonnull (ox_test_find_text (drawing, "Signature"));
    }
  g_assert_cmpuint (sheets, ==, estimate->work->shifts->len);
  g_assert_cmpuint (sheets, >, 0);
  g_assert_cmpuint (tables, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/hours/a-day-sheet-for-each-shift", test_day_sheets);
  return g_test_run ();
}
