/* Oxturn: tests of sheets/cautions
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/cautions.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

/* The drop of the hall is marked with the number that the list beside has for drops. */
static void
test_numbers_meet (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_CREW;
  options.paper = ox_paper_find ("A2");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  g_autofree char *tag = ox_cautions_tag ("drop", estimate);
  g_autofree char *drop = g_strdup_printf ("DROP: keep 0.60 m back%s", tag);
  g_assert_cmpuint (ox_caution_number ("drop", estimate), >, 0);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, drop));
  const OxElement *number = ox_test_find_cell (set->pages[0].drawing, tag + 2), *words;
  words = ox_test_find_text (set->pages[0].drawing, "Drops and pits");
  g_assert_nonnull (number);
  g_assert_nonnull (words);
  g_assert_true (ox_test_has_cell_beside (set->pages[0].drawing, words, tag + 2));
}

/* Every id that sheets ask for by name is one of the table, where a typing error would leave a caution out in silence;
 * ox_cautions_tag() itself refuses others. */
static void
test_ids_exist (void)
{
  guint n;
  const OxCaution *cautions = ox_cautions_list (&n);
  for (const char *const *id = ox_cautions_office (); *id != NULL; id++)
    {
      guint found = 0;
      for (guint i = 0; i < n; i++)
        found += g_str_equal (cautions[i].id, *id);
      g_assert_cmpuint (found, ==, 1);
    }
  g_test_expect_message (G_LOG_DOMAIN, G_LOG_LEVEL_CRITICAL, "*is_known*");
  g_autofree char *none = ox_cautions_tag ("no such caution", NULL);
  g_test_assert_expected_messages ();
  g_assert_cmpstr (none, ==, "");
}

/* Numbers go on without a gap, and an id that does not apply has none. */
static void
test_numbers (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  guint n, next = 1;
  const OxCaution *cautions = ox_cautions_list (&n);
  for (guint i = 0; i < n; i++)
    if (ox_caution_applies (&cautions[i], estimate))
      g_assert_cmpuint (ox_caution_number (cautions[i].id, estimate), ==, next++);
    else
      g_assert_cmpuint (ox_caution_number (cautions[i].id, estimate), ==, 0);
  g_autofree char *unknown = ox_cautions_tag ("drop", NULL);
  g_assert_cmpstr (unknown, ==, "");
}

/* Every sheet says what it is not. */
static void
test_on_every_sheet (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < set->n_pages; i++)
    g_assert_nonnull (ox_test_find_text (set->pages[i].drawing, "Plan, not a certificate."));
}

/* The tables of dust and supply name the cautions that bite there. */
static void
test_in_schedules (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCHEDULE;
  options.paper = ox_paper_find ("A1");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  g_autofree char *residual = ox_cautions_tag ("residual", estimate), *load = ox_cautions_tag ("load", estimate);
  g_autofree char *silica = ox_cautions_tag ("silica", estimate), *drum = ox_cautions_tag ("drum", estimate);
  g_autofree char *supply = g_strconcat ("Supply", residual, load, NULL),
                  *dust = g_strconcat ("Dust", silica, drum, NULL);
  g_assert_nonnull (ox_test_find_cell (set->pages[0].drawing, supply));
  g_assert_nonnull (ox_test_find_cell (set->pages[0].drawing, dust));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/cautions/numbers-meet", test_numbers_meet);
  g_test_add_func ("/sheets/cautions/numbers", test_numbers);
  g_test_add_func ("/sheets/cautions/ids-exist", test_ids_exist);
  g_test_add_func ("/sheets/cautions/on-every-sheet", test_on_every_sheet);
  g_test_add_func ("/sheets/cautions/in-schedules", test_in_schedules);
  return g_test_run ();
}
