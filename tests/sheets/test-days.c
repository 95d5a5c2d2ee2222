/* Oxturn: tests of sheets/days
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/estimate.h"
#include "record/mark.h"
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

/* Every strip has a row in the shift in which it is laid, every check one with its name, every edge area one at least.
 */
static void
test_all_work (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      g_autofree char *number
          = g_strdup_printf (strip->kind == OX_STRIP_CROSSWISE ? "%u \xc3\x97" : "%u", strip->order);
      g_assert_cmpuint (count_texts (set, number), >=, 1);
    }
  for (guint i = 0; i < plan->n_edges; i++)
    g_assert_cmpuint (count_texts (set, plan->edges[i].id), >=, 1);
  g_assert_cmpuint (count_texts (set, "PC1"), ==, 1);
}

/* What the record has of a strip stands on its sheet: the day and the profile; and a sheet says what is left. */
static void
test_filled (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  guint number = 1;
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  g_array_append_val (numbers, number);
  g_autoptr (GError) error = NULL;
  const OxMark mark = { .date = "2026-10-05", .csp = 4 };
  g_autoptr (OxJob) marked = ox_mark_strips (job, plan, numbers, &mark, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) again = ox_test_plan (marked);
  g_autoptr (OxPageSet) set = make (marked, again), blank = make (job, plan);
  g_assert_cmpuint (count_texts (set, "10-05"), ==, 1);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "Done on 2026-10-05"));
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "CSP 4"));
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "Left to do"));
  g_autofree char *strips = g_strdup_printf ("%u of %u strips", again->n_strips - 1, again->n_strips);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, strips));
  g_assert_null (ox_test_find_text (blank->pages[0].drawing, "Left to do"));
}

/* Meters of two machines, with the sign of the sheet's language; notes line by line. */
static void
test_machines (void)
{
  g_autoptr (GError) error = NULL;
  OxLanguage german;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_assert_true (ox_language_find ("de", &german));
  options.which = OX_SHEET_DAYS;
  options.language = &german;
  g_autoptr (OxJob) hall = ox_test_hall (OX_UNITS_METRES);
  const OxRecordDay days[] = { { (char *) "2026-10-05", 100, 104, (char *) "Rain\nat noon", 1 },
                               { (char *) "2026-10-05", 7, 9.5, (char *) "New wheel", 2 } };
  g_autoptr (OxJob) first = ox_mark_day (hall, &days[0], &error);
  g_autoptr (OxJob) job = ox_mark_day (first, &days[1], &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  static const char *const parts[] = { "6,50 (1: 4,00; 2: 2,50)", "Rain", "at noon", "2: New wheel" };
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (ox_test_find_text (set->pages[0].drawing, parts[i]) == NULL)
      g_error ("%s", parts[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/days/each-shift", test_each_shift);
  g_test_add_func ("/sheets/days/all-work", test_all_work);
  g_test_add_func ("/sheets/days/filled-from-the-record", test_filled);
  g_test_add_func ("/sheets/days/machines", test_machines);
  return g_test_run ();
}
