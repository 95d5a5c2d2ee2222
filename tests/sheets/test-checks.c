/* Oxturn: tests of sheets/checks
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "sheets/hall.h"
#include "sheets/measure.h"
#include "support/ox-test.h"

static gboolean
has_cross (const OxDrawing *drawing, const char *id)
{
  guint n = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    n += drawing->elements[i].kind == OX_ELEMENT_MARK && drawing->elements[i].mark.kind == OX_MARK_CHECK
         && g_str_equal (drawing->elements[i].id, id);
  return n == 1;
}

/* One row and one cross on the crew drawing for each planned check; the distance is that from the strip's start. */
static void
test_found_on_table_and_drawing (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GArray) spots = ox_spots_of (plan);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_CREW | OX_SHEET_SCHEDULE;
  options.paper = ox_paper_find ("A2");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (spots->len, >=, 2);
  for (guint i = 0; i < spots->len; i++)
    {
      const OxSpot *spot = &g_array_index (spots, OxSpot, i);
      const OxStrip *strip = &plan->strips[spot->strip - 1];
      g_autofree char *name = ox_check_name (i), *id = g_strdup_printf ("check-%u", i + 1);
      g_autofree char *along = ox_measure_length (OX_UNITS_METRES, ox_point_distance (strip->a, spot->at));
      guint crosses = 0, rows = 0;
      for (guint p = 0; p < set->n_pages; p++)
        {
          gboolean table = g_str_equal (set->pages[p].title, "Schedule");
          const OxElement *cell = ox_test_find_cell (set->pages[p].drawing, name);
          crosses += !table && has_cross (set->pages[p].drawing, id);
          rows += table && cell != NULL && ox_test_has_cell_beside (set->pages[p].drawing, cell, along);
        }
      g_assert_cmpuint (crosses, ==, 1);
      g_assert_cmpuint (rows, ==, 1);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/checks/found-on-table-and-drawing", test_found_on_table_and_drawing);
  return g_test_run ();
}
