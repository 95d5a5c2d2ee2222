/* Oxturn: tests/tools/test-station - where the collector stands: one click.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "support/floors.h"

static void
test_click (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_STATION, job);

  ox_hand_click (hand, 2.02, 1.98);
  ox_hand_click (hand, 9, 7);
  g_assert_cmpuint (hand->job->n_stations, ==, 2);
  g_assert_cmpfloat_with_epsilon (hand->job->stations[0]->at.x, 2, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->stations[0]->at.y, 2, 1e-9);
  g_assert_cmpint (hand->job->stations[0]->kind, ==, OX_STATION_COLLECTOR);
  g_assert_cmpstr (hand->selection[0], ==, hand->job->stations[1]->id);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/station/click", test_click);
  return g_test_run ();
}
