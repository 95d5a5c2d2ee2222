/* Oxturn: tests of file/estimate-tables
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "../estimate/made.h"
#include "file/tables.h"

static void
test_quantities (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autofree char *text = ox_table_quantities (estimate);
  g_assert_true (
      g_str_has_prefix (text, "item,room,quantity,unit,verdict,basis\r\ntarget,,10,m2,,\r\nblasted,,6.5,m2,,\r\n"));
  g_assert_nonnull (strstr (text, "\r\nabrasive-bags,,1,,,abrasive-contingency bag\r\n"));
}

/* Three strips of 1.65 min, two moves and three starts; 52.5 min of edge work; an hour and a half around it and 45 min
 * of breaks. */
static void
test_shifts (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autofree char *text = ox_table_shifts (estimate);
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", 0);
  g_assert_cmpuint (g_strv_length (lines), ==, 3);
  g_assert_cmpstr (lines[1], ==, "1,,1,1-3,E1,4.95,1,0.3,0,0,0,52.5,60,30,45,193.75");
}

/* Rates without a name have the words of README.md, in each language; one with a name keeps it. */
static void
test_cost (void)
{
  static const char *const words[] = { "labour-hour", "edge-hour", "machine-hour", "abrasive-kg", "dust-drum",
                                       "wear-hour",   "area",      "fixed",        "edge-m" };
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxJob *job = (OxJob *) plan->job;
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      OxCostRate rate = { (OxCostDriver) i, NULL, (char *) "10" };
      ox_costs_unref (job->costs);
      job->costs = ox_costs_new (&(OxCosts){ .n = 1, .rates = &rate, .decimals = 2 });
      g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
      g_autofree char *text = ox_table_cost (estimate);
      g_auto (GStrv) lines = g_strsplit (text, "\r\n", 0);
      g_assert_cmpstr (lines[0], ==, "what,room,quantity,unit,rate,amount");
      g_autofree char *start = g_strconcat (words[i], ",", NULL);
      if (!g_str_has_prefix (lines[1], start))
        g_error ("%s: %s", words[i], text);
    }
  OxCostRate named = { OX_COST_FIXED, (char *) "Barrier", (char *) "12.5" };
  ox_costs_unref (job->costs);
  job->costs = ox_costs_new (&(OxCosts){ .n = 1, .rates = &named, .decimals = 2 });
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autofree char *text = ox_table_cost (estimate);
  g_assert_nonnull (strstr (text, "\r\nBarrier,,1,,12.50,12.50\r\nsubtotal,,,,,12.50\r\n"));
}

/* Three equal strips: the one check lies in the middle of the second. */
static void
test_checks (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autofree char *text = ox_table_checks (plan);
  g_assert_cmpstr (text, ==, "check,room,x,y,strip\r\n1,R1,5,0.325,2\r\n");
}

/* A row for each strip and edge area of the shift: 9.9 m of 0.25 m with its start in 1.75 min, then with the move before it in 2.25;
 * what the record has of the second stands behind it. */
static void
test_days (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxDoneStrip done = { .room = (char *) "R1", .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.25, .date = (char *) "2026-10-05",
                       .csp = 3, .depth_mm = 0.35, .note = (char *) "damp" };
  OxJob *job = (OxJob *) plan->job;
  ox_record_unref (job->record);
  job->record = ox_record_new (&(OxRecord){ .n_strips = 1, .strips = &done });
  plan->strips[1].done = 1;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autofree char *text = ox_table_days (estimate);
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", 0);
  g_assert_cmpuint (g_strv_length (lines), ==, 6);
  g_assert_cmpstr (lines[1], ==, "1,,1,strip,1,R1,9.9,2.475,1.75,,,,");
  g_assert_cmpstr (lines[2], ==, "1,,1,strip,2,R1,9.9,2.475,2.25,2026-10-05,3,0.35,damp");
  g_assert_cmpstr (lines[4], ==, "1,,1,edge,E1,R1,10,3.5,52.5,,,,");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/estimate-tables/quantities/rows", test_quantities);
  g_test_add_func ("/file/estimate-tables/shifts/add-up", test_shifts);
  g_test_add_func ("/file/estimate-tables/cost/words", test_cost);
  g_test_add_func ("/file/estimate-tables/checks/middle", test_checks);
  g_test_add_func ("/file/estimate-tables/days/planned-and-done", test_days);
  return g_test_run ();
}
