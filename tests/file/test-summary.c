/* Oxturn: tests/file/test-summary
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/tables.h"
#include "plan-making.h"

static void
test_whole (void)
{
  g_auto (HandPlan) hand;
  hand_plan_init (&hand);
  g_autofree char *json = ox_table_summary (&hand.plan);
  g_assert_cmpstr (json, ==,
                   "{\n"
                   "  \"machine\": {\n"
                   "    \"blast_width_m\": 0.21,\n"
                   "    \"blast_length_m\": 0.08,\n"
                   "    \"front_m\": 0.35,\n"
                   "    \"rear_m\": 1.25,\n"
                   "    \"left_m\": 0.19,\n"
                   "    \"right_m\": 0.19,\n"
                   "    \"wall_gap_m\": 0.02,\n"
                   "    \"min_overlap_m\": 0.02,\n"
                   "    \"turn_radius_m\": 0.75,\n"
                   "    \"min_strip_m\": 0.5\n"
                   "  },\n"
                   "  \"rates\": {\n"
                   "    \"travel_speed_m_per_min\": 6,\n"
                   "    \"walk_speed_m_per_min\": 30,\n"
                   "    \"swing_s\": 15,\n"
                   "    \"edge_m2_per_hour\": 4\n"
                   "  },\n"
                   "  \"totals\": {\n"
                   "    \"target_m2\": 95,\n"
                   "    \"blasted_m2\": 0.333333333,\n"
                   "    \"double_m2\": 0,\n"
                   "    \"edge_m2\": 0,\n"
                   "    \"edge_limit_m2\": 0,\n"
                   "    \"strips\": 2,\n"
                   "    \"strip_m\": 9,\n"
                   "    \"move_m\": 0,\n"
                   "    \"strip_hours\": 0,\n"
                   "    \"move_hours\": 0,\n"
                   "    \"edge_hours\": 0,\n"
                   "    \"labour_hours\": 0.025,\n"
                   "    \"ideal_hours\": 0,\n"
                   "    \"coats_m2\": 0\n"
                   "  },\n"
                   "  \"record\": {\n"
                   "    \"days\": 2,\n"
                   "    \"done_strips\": 0,\n"
                   "    \"left_strips\": 2,\n"
                   "    \"done_m2\": 0,\n"
                   "    \"left_m2\": 95,\n"
                   "    \"done_hours\": 0,\n"
                   "    \"left_hours\": 0.115833333,\n"
                   "    \"meter_hours\": 11.25,\n"
                   "    \"lost_strips\": 2\n"
                   "  },\n"
                   "  \"out_of_reach\": 1\n"
                   "}\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/summary/whole", test_whole);
  return g_test_run ();
}
