/* Oxturn: tests of plan/chalk
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/chalk.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* Lanes along x at y = 1, 1.5 and 2 in a room of 9 x 7 m are measured from its lower wall; those of a wing along y, at x = 8 and
 * 8.5, from the right one, where lane 1 is the last of them: frames of lanes along y count their y against x. */
static void
test_measured_from_the_nearest_wall (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (9, 7, "compact");
  const OxRing *ring = job->rooms[0]->ring;
  OxRoomPlan room = { .coat = 1, .first_y = 1, .spacing = 0.5, .lanes = 3, .wing_angle = G_PI / 2,
                      .wing_first_y = -8.5, .wing_spacing = 0.5, .wing_lanes = 2 };
  OxChalk main = ox_chalk_of (job, &room, FALSE), wing = ox_chalk_of (job, &room, TRUE);
  ox_test_near (main.first_distance, 1, 1e-9);
  ox_test_near (ring->points[main.base_side].y, 0, 1e-9);
  ox_test_near (ring->points[(main.base_side + 1) % ring->n].y, 0, 1e-9);
  g_assert_cmpuint (main.lanes, ==, 3);
  g_assert_false (main.is_wing);
  ox_test_near (wing.first_distance, 0.5, 1e-9);
  ox_test_near (ring->points[wing.base_side].x, 9, 1e-9);
  ox_test_near (ring->points[(wing.base_side + 1) % ring->n].x, 9, 1e-9);
  g_assert_cmpuint (wing.lanes, ==, 2);
  ox_test_near (wing.heading, G_PI / 2, 1e-12);
  g_assert_true (wing.is_wing);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/chalk/nearest-wall", test_measured_from_the_nearest_wall);
  return g_test_run ();
}
