/* Oxturn: tests of sheets/schedule
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"
#include <string.h>

static OxPageSet *
make (const OxJob *job, const OxPlan *plan, const char *paper)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCHEDULE;
  options.paper = ox_paper_find (paper);
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

/* count_rows: rows of the table of strips whose first cell is the number of @strip */
static guint
count_rows (const OxPageSet *set, const OxStrip *strip)
{
  g_autofree char *number = g_strdup_printf (strip->kind == OX_STRIP_CROSSWISE ? "%u \xc3\x97" : "%u", strip->order);
  guint n = 0;
  for (guint p = 0; p < set->n_pages; p++)
    {
      const OxDrawing *drawing = set->pages[p].drawing;
      for (guint i = 0; i + 1 < drawing->n_elements; i++)
        {
          const OxElement *cell = &drawing->elements[i], *next = cell + 1;
          n += cell->kind == OX_ELEMENT_TEXT && next->kind == OX_ELEMENT_TEXT && g_str_equal (cell->text.text, number)
               && (g_str_equal (next->text.text, "Hall") || g_str_equal (next->text.text, "Store"));
        }
    }
  return n;
}

static void
test_every_strip_is_listed_once (void)
{
  const char *const papers[] = { "A4", "A3", "Tabloid" };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint p = 0; p < G_N_ELEMENTS (papers); p++)
    {
      g_autoptr (OxPageSet) set = make (job, plan, papers[p]);
      for (guint i = 0; i < plan->n_strips; i++)
        g_assert_cmpuint (count_rows (set, &plan->strips[i]), ==, 1);
    }
}

static void
test_hours_are_the_plan_s (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan, "A3");
  const double hours[]
      = { plan->totals.strip_hours, plan->totals.move_hours, plan->totals.edge_hours, plan->totals.labour_hours };
  for (guint i = 0; i < G_N_ELEMENTS (hours); i++)
    {
      char number[G_ASCII_DTOSTR_BUF_SIZE];
      g_autofree char *text = g_strdup_printf ("%s h", g_ascii_formatd (number, sizeof number, "%.2f", hours[i]));
      g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, text));
    }
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "at 6 m/min"));
}

/* Beside a quantity stands what it rests on. */
static void
test_quantities_say_what_they_rest_on (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan, "A3");
  static const char *const texts[] = { "as drawn,", "counted once", "what no strip reaches", "blasting, moves" };
  const OxElement *length = ox_test_find_cell (set->pages[0].drawing, "Length of all strips");
  g_assert_nonnull (length);
  g_assert_true (ox_test_has_cell_beside (set->pages[0].drawing, length, "the valve is open"));
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, texts[i]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/schedule/strips", test_every_strip_is_listed_once);
  g_test_add_func ("/schedule/hours", test_hours_are_the_plan_s);
  g_test_add_func ("/schedule/quantities-rest-on", test_quantities_say_what_they_rest_on);
  return g_test_run ();
}
