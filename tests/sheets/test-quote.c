/* Oxturn: tests of sheets/quote
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/cost.h"
#include "job/classes.h"
#include "job/edit.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"
#include <string.h>

static OxPageSet *
make (const OxJob *job, OxSheetKinds which, const char *language, GError **error)
{
  OxLanguage found;
  g_assert_true (ox_language_find (language, &found));
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, error);
  g_assert_nonnull (plan);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = which;
  options.paper = ox_paper_find ("A4");
  options.language = &found;
  return ox_sheets_new (job, plan, &options, error);
}

static OxJob *
priced_hall (const char *validity)
{
  OxCostRate rates[] = { { OX_COST_AREA, (char *) "Blasting", (char *) "6.50" },
                         { OX_COST_FIXED, (char *) "Travel", (char *) "120" } };
  g_autoptr (OxJob) hall = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxCosts) costs = ox_costs_new (&(OxCosts){ .currency = (char *) "EUR",
                                                        .decimals = 2,
                                                        .contingency = 0.1,
                                                        .n = 2,
                                                        .rates = rates,
                                                        .validity = (char *) validity });
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_costs (hall, costs, &error);
  g_assert_no_error (error);
  return job;
}

/* Every line, the sum of each room, the contingency and the total stand there as the estimate reckons them. */
static void
test_amounts (void)
{
  g_autoptr (OxJob) job = priced_hall ("Holds for 30 days.");
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxQuote) quote = ox_quote_new (estimate);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = make (job, OX_SHEET_QUOTE, "en", &error);
  g_assert_no_error (error);
  const OxDrawing *page = set->pages[0].drawing;
  OxMoney sum = 0;
  for (guint i = 0; i < quote->lines->len; i++)
    {
      OxMoney amount = g_array_index (quote->lines, OxCostLine, i).amount;
      g_autofree char *text = ox_money_text (amount);
      g_assert_nonnull (ox_test_find_text (page, text));
      sum += amount;
    }
  g_assert_cmpuint (quote->lines->len, ==, 3); /* two rooms and the whole job */
  g_autofree char *subtotal = ox_money_text (sum), *total = ox_money_text (quote->sum.total);
  g_assert_nonnull (ox_test_find_text (page, subtotal));
  g_assert_nonnull (ox_test_find_text (page, total));
  g_assert_nonnull (ox_test_find_text (page, "Contingency, 10 %"));
  g_assert_nonnull (ox_test_find_text (page, "Total, EUR"));
}

static void
test_what_else_stands_there (void)
{
  static const char *const parts[] = { "Ellorin & Daughters", "Quay Road 14", "BFP-0412", "Holds for 30 days.",
                                       "What it rests on",    "certificate",  "Silica",   "Signature" };
  g_autoptr (OxJob) job = priced_hall ("Holds for 30 days."), open = priced_hall (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = make (job, OX_SHEET_QUOTE, "en", &error);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, parts[i]));
  g_assert_null (ox_test_find_text (set->pages[0].drawing, "Valid until"));
  g_autoptr (OxPageSet) unsaid = make (open, OX_SHEET_QUOTE, "en", &error);
  g_assert_nonnull (ox_test_find_text (unsaid->pages[0].drawing, "Valid until"));
  g_autoptr (OxPageSet) german = make (job, OX_SHEET_QUOTE, "de", &error);
  g_assert_nonnull (ox_test_find_text (german->pages[0].drawing, "120,00"));
}

/* Alone it needs rates; among all sheets it is left out without. */
static void
test_no_rates (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (GError) error = NULL;
  g_assert_null (make (job, OX_SHEET_QUOTE, "en", &error));
  g_assert_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_NO_QUOTE);
  g_clear_error (&error);
  g_autoptr (OxPageSet) set = make (job, OX_SHEET_ALL, "en", &error);
  g_assert_no_error (error);
  for (guint i = 0; i < set->n_pages; i++)
    g_assert_cmpstr (set->pages[i].title, !=, "Quote");
}

/* A closet that no machine enters, and a rate for its hours only, whose quantity is 0. */
static OxJob *
priced_closet (void)
{
  OxCostRate rate = { OX_COST_WEAR_HOUR, (char *) "Wear", (char *) "45" };
  g_autoptr (OxCosts) costs
      = ox_costs_new (&(OxCosts){ .currency = (char *) "EUR", .decimals = 2, .n = 1, .rates = &rate });
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 0.2, 0.2 }, 0.4, 0.4, 0);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .name = (char *) "Closet", .ring = ring });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, ox_classes_find ("compact"));
  ox_job_builder_put_room (builder, room);
  ox_job_builder_set_costs (builder, costs);
  return ox_job_builder_end (builder);
}

/* Rates whose quantities all round to 0 make no quote: alone it says so, among all sheets it is left out. */
static void
test_nothing_to_price (void)
{
  g_autoptr (OxJob) job = priced_closet ();
  g_autoptr (GError) error = NULL;
  g_assert_null (make (job, OX_SHEET_QUOTE, "en", &error));
  g_assert_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_NO_QUOTE);
  g_assert_nonnull (strstr (error->message, "come to nothing"));
  g_clear_error (&error);
  g_autoptr (OxPageSet) set = make (job, OX_SHEET_ALL, "en", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (set->n_pages, >, 3);
  for (guint i = 0; i < set->n_pages; i++)
    g_assert_cmpstr (set->pages[i].title, !=, "Quote");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/quote/amounts-of-the-estimate", test_amounts);
  g_test_add_func ("/sheets/quote/what-else-stands-there", test_what_else_stands_there);
  g_test_add_func ("/sheets/quote/no-rates", test_no_rates);
  g_test_add_func ("/sheets/quote/nothing-to-price", test_nothing_to_price);
  return g_test_run ();
}
