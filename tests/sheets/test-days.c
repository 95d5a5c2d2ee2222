/* Oxturn: tests of sheets/days
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
  options.which = OX_SHEET_DAYS;
  options.paper = ox_paper_find ("A4");
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static guint
count_texts (const OxPageSet *set, const char *text)
{
  guint n = 0;
  for (guint p = 0; p < set->n_pages; p++)
    for (guint i = 0; i < set->pages[p].drawing->n_elements; i++)
      {
        const OxElement *element = &set->pages[p].drawing->elements[i];
        n += element->kind == OX_ELEMENT_TEXT && g_str_equal (element->text.text, text);
      }
  return n;
}

/* A sheet for each shift of the estimate, each with room to write. */
static void
test_each_shift (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxPageSet) set = make (job, plan);
  g_assert_cmpuint (estimate->work->shifts->len, >, 0);
  g_assert_cmpuint (count_texts (set, "Meter at the start, h"), ==, estimate->work->shifts->len);
  g_assert_cmpuint (count_texts (set, "Signature"), ==, estimate->work->shifts->len);
  for (guint i = 0; i < set->n_pages; i++)
    g_assert_cmpstr (set->pages[i].title, ==, "Day sheet");
}

/* Every strip has a row in the shift in which it is laid, every check one with its name, every edge area one at least. */
static void
test_all_work (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      g_autofree char *number = g_strdup_printf (strip->kind == OX_STRIP_CROSSWISE ? "%u \xc3\x97" : "%u", strip->order);
      g_assert_cmpuint (count_texts (set, number), >=, 1);
    }
  for (guint i = 0; i < plan->n_edges; i++)
    g_assert_cmpuint (count_texts (set, plan->edges[i].id), >=, 1);
  g_assert_cmpuint (count_texts (set, "PC1"), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/days/each-shift", test_each_shift);
  g_test_add_func ("/sheets/days/all-work", test_all_work);
  return g_test_run ();
}
