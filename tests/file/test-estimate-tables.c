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

/* Three equal strips: the one check lies in the middle of the second. */
static void
test_checks (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autofree char *text = ox_table_checks (plan);
  g_assert_cmpstr (text, ==, "check,room,x,y,strip\r\n1,R1,5,0.325,2\r\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/estimate-tables/quantities/rows", test_quantities);
  g_test_add_func ("/file/estimate-tables/shifts/add-up", test_shifts);
  g_test_add_func ("/file/estimate-tables/checks/middle", test_checks);
  return g_test_run ();
}
