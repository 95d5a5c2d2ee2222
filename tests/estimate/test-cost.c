/* Oxturn: tests of estimate/cost
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/cost.h"
#include "base/words.h"
#include "made.h"

static OxCosts *
make_costs (void)
{
  OxCostRate rates[] = { { OX_COST_LABOUR_HOUR, (char *) "", (char *) "48.00" },
                         { OX_COST_EDGE_HOUR, (char *) "Grinder", (char *) "38.50" },
                         { OX_COST_AREA, (char *) "", (char *) "0.15" },
                         { OX_COST_FIXED, (char *) "Travel", (char *) "120" } };
  return ox_costs_new (
      &(OxCosts){ .currency = (char *) "EUR", .decimals = 2, .contingency = 0.1, .n = 4, .rates = rates });
}

/* By hand: 89.5 min of strips are 1.49 h, 71.52; setting up and cleaning up 1.5 h, 72.00; 142.5 min by hand are 2.38 h
 * (2.375, rounded up), 91.63; 90 m2, 13.50; 120.00. Together 368.65, with 10 % (36.87) 405.52. */
static void
test_by_hand (void)
{
  static const char *const amounts[] = { "71.52", "72.00", "91.63", "13.50", "120.00" };
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (OxCosts) costs = make_costs ();
  ox_costs_unref (plan->job->costs);
  plan->job->costs = ox_costs_ref (costs);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxQuote) quote = ox_quote_new (estimate);
  g_autofree char *total = ox_money_text (quote->sum.total);
  OxMoney sum = 0;
  g_assert_true (quote->valid);
  g_assert_cmpuint (quote->lines->len, ==, G_N_ELEMENTS (amounts));
  for (guint i = 0; i < quote->lines->len; i++)
    {
      g_autofree char *amount = ox_money_text (g_array_index (quote->lines, OxCostLine, i).amount);
      g_assert_cmpstr (amount, ==, amounts[i]);
      sum += g_array_index (quote->lines, OxCostLine, i).amount;
    }
  g_assert_cmpint (sum, ==, quote->sum.subtotal);
  g_assert_cmpstr (total, ==, "405.52");
}

/* 10 m of edge work at 2.50 a metre. */
static void
test_edge_metres (void)
{
  OxCostRate rate = { OX_COST_EDGE_METRE, (char *) "", (char *) "2.50" };
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (OxCosts) costs = ox_costs_new (&(OxCosts){ .decimals = 2, .n = 1, .rates = &rate });
  ox_costs_unref (plan->job->costs);
  plan->job->costs = ox_costs_ref (costs);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxQuote) quote = ox_quote_new (estimate);
  g_autofree char *total = ox_money_text (quote->sum.total);
  g_assert_cmpstr (total, ==, "25.00");
  g_assert_cmpstr (g_array_index (quote->lines, OxCostLine, 0).unit, ==, "m");
}

static void
test_no_rates (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxQuote) quote = ox_quote_new (estimate);
  g_assert_true (quote->valid);
  g_assert_cmpuint (quote->lines->len, ==, 0);
  g_assert_cmpint (quote->sum.total, ==, 0);
}

/* What is written 1234.50 in English is 1234,50 in German. */
static void
test_text (void)
{
  OxLanguage german;
  OxMoney amount;
  g_assert_true (ox_money_parse ("-1234.5", &amount));
  g_autofree char *english = ox_cost_text (amount);
  g_assert_cmpstr (english, ==, "-1234.50");
  g_assert_true (ox_language_find ("de", &german));
  g_auto (OxWordsScope) scope = ox_words_scope (&german);
  g_autofree char *text = ox_cost_text (amount);
  g_assert_cmpstr (text, ==, "-1234,50");
}

/* By hand, with 25 of 40 strips done: 15 strips with their starts and 14 moves take 33.25 min, 0.55 h, 26.40; one shift's set-up and clean-up 72.00; edge
 * work as above 91.63; 90 m2 less the 10 m by 5.05 m that are done, 39.50 m2, 5.93; the travel is paid. 195.96, with 10 % (19.60) 215.56. */
static void
test_left (void)
{
  static const char *const amounts[] = { "26.40", "72.00", "91.63", "5.93" };
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (OxCosts) costs = make_costs ();
  ox_costs_unref (plan->job->costs);
  plan->job->costs = ox_costs_ref (costs);
  g_autoptr (OxEstimate) before = ox_estimate_new (plan, NULL);
  g_assert_null (ox_quote_left_new (before));
  plan->n_coats = 1;
  plan->coats = g_new0 (OxRegion *, 1);
  plan->coats[0] = ox_region_ref (plan->target);
  for (guint i = 0; i < 25; i++)
    plan->strips[i].done = i + 1;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (OxQuote) left = ox_quote_left_new (estimate);
  g_assert_true (left->valid);
  g_assert_cmpuint (left->lines->len, ==, G_N_ELEMENTS (amounts));
  for (guint i = 0; i < G_N_ELEMENTS (amounts); i++)
    {
      g_autofree char *text = ox_money_text (g_array_index (left->lines, OxCostLine, i).amount);
      g_assert_cmpstr (text, ==, amounts[i]);
    }
  g_autofree char *total = ox_money_text (left->sum.total);
  g_assert_cmpstr (total, ==, "215.56");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/cost/reckoned-by-hand", test_by_hand);
  g_test_add_func ("/estimate/cost/no-rates", test_no_rates);
  g_test_add_func ("/estimate/cost/edge-work-by-the-metre", test_edge_metres);
  g_test_add_func ("/estimate/cost/text/decimal-sign", test_text);
  g_test_add_func ("/estimate/cost/left", test_left);
  return g_test_run ();
}
