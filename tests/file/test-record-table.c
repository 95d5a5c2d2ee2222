/* Oxturn: tests/file/test-record-table
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/tables.h"
#include "plan-making.h"

#define HEAD                                                                                                           \
  "what,date,strips,strip_numbers,edge_areas,edge_numbers,strip_m,blasted_m2,edge_m2,strip_hours,move_hours,"          \
  "edge_hours,meter_hours,csp_least,csp_most,depth_mm,notes,machine_meters\r\n"

/* Two days: on the first a strip of 6 m that covers 6.08 m by 0.21 m less 1 m by 0.105 m of a hole, in 1 min, the meters of two machines read twice, notes in lines; on the second a third of a square metre by hand.
 * A strip and the move to it are left. */
static void
test_days (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  hand.strips[0].done = 1;
  hand.edges[0].done = 1;
  hand.plan.totals.coats_m2 = 1.1718 + 1;
  g_autofree char *text = ox_table_record (&hand.plan);
  g_assert_cmpstr (text, ==,
                   HEAD "day,2026-09-14,1,1,0,,6,1.1718,0,0.016666667,0,0,11.25,3,3,0.42,\"cold start\n2: new wheel\nat "
                        "noon\",\"1: 6.75, 2: 4.5\"\r\n"
                        "day,2026-09-15,0,,1,E1,0,0,0.333333,0,0,0.083333333,,,,,,\r\n"
                        "done,,1,1,1,E1,6,1.1718,0.333333,0.016666667,0,0.083333333,11.25,3,3,0.42,,\r\n"
                        "left,,1,2,0,,3,1,0,0.008333333,0.0075,0,,,,,,\r\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/record-table/days", test_days);
  return g_test_run ();
}
