/* Oxturn: tests/tools/test-doorway - a gap between two points of a wall.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "job/edit.h"
#include "support/floors.h"

/* Two rooms of 10 m x 8 m, the second @gap to the right of the first. */
static OxJob *
two_rooms (double gap)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 15 + gap, 4 }, 10, 8, 0);
  OxRoom draft = { .id = (char *) "R9", .name = (char *) "", .ring = ring, .profile = (char *) "" };
  g_autoptr (OxRoom) room = ox_room_new (&draft);

  return ox_job_with_room (job, room, NULL);
}

static void
test_takes_thickness_of_wall (void)
{
  static const double gaps[] = { 0.24, 0, 3 };
  static const double depths[] = { 0.24, 0, 0.2 }; /* 3 m apart is no wall */

  for (guint i = 0; i < G_N_ELEMENTS (gaps); i++)
    {
      g_autoptr (OxJob) job = two_rooms (gaps[i]);
      g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_DOORWAY, job);
      const OxDoorway *doorway;

      ox_hand_click (hand, 9.95, 3.02);
      ox_hand_click (hand, 9.9, 4.21);
      g_assert_cmpuint (hand->job->n_doorways, ==, 1);
      doorway = hand->job->doorways[0];
      g_assert_cmpfloat_with_epsilon (doorway->depth, depths[i], 1e-9);
      g_assert_cmpfloat_with_epsilon (doorway->a.x, 10 + depths[i] / 2, 1e-9);
      g_assert_cmpfloat_with_epsilon (ox_point_distance (doorway->a, doorway->b), 1.2, 1e-9);
    }
}

static void
test_typed_width (void)
{
  g_autoptr (OxJob) job = two_rooms (0.2);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_DOORWAY, job);

  ox_hand_click (hand, 10, 5);
  ox_hand_move (hand, 10, 2, OX_HOLD_NONE);
  ox_hand_type (hand, "1.01\n");
  g_assert_cmpfloat_with_epsilon (MIN (hand->job->doorways[0]->a.y, hand->job->doorways[0]->b.y), 3.99, 1e-9);
}

static void
test_not_at_a_wall (void)
{
  g_autoptr (OxJob) job = two_rooms (0.2);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_DOORWAY, job);

  ox_hand_click (hand, 5, 4);
  g_assert_nonnull (hand->refusal);
  g_assert_false (ox_tool_is_busy (hand->tool));
}

static void
test_stays_on_its_wall (void)
{
  g_autoptr (OxJob) job = two_rooms (0.2);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_DOORWAY, job);

  ox_hand_click (hand, 10, 7);
  ox_hand_click (hand, 4, 30);
  g_assert_cmpfloat_with_epsilon (MAX (hand->job->doorways[0]->a.y, hand->job->doorways[0]->b.y), 8, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/doorway/takes-thickness-of-wall", test_takes_thickness_of_wall);
  g_test_add_func ("/tools/doorway/typed-width", test_typed_width);
  g_test_add_func ("/tools/doorway/not-at-a-wall", test_not_at_a_wall);
  g_test_add_func ("/tools/doorway/stays-on-its-wall", test_stays_on_its_wall);
  return g_test_run ();
}
