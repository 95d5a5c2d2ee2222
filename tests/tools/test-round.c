/* Oxturn: tests/tools/test-round - a circular obstacle.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "support/floors.h"

static OxHand *
new_hand (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");

  return ox_hand_new (OX_TOOL_OBSTACLE_CIRCLE, job);
}

static void
test_pointed (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 4.02, 3.97);
  ox_hand_click (hand, 4.26, 4);
  g_assert_cmpuint (hand->job->n_obstacles, ==, 1);
  g_assert_cmpfloat_with_epsilon (hand->job->obstacles[0]->shape.centre.x, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->obstacles[0]->shape.radius, 0.25, 1e-9);
}

static void
test_typed (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 4, 4);
  ox_hand_type (hand, "0.37\n");
  g_assert_cmpfloat_with_epsilon (hand->job->obstacles[0]->shape.radius, 0.185, 1e-9);
}

static void
test_several_in_a_row (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  for (int i = 1; i <= 4; i++)
    ox_hand_drag (hand, 2 * i, 4, 2 * i + 0.3, 4);
  g_assert_cmpuint (hand->job->n_obstacles, ==, 4);
  g_assert_cmpuint (hand->edits, ==, 4);
}

static void
test_no_size_is_refused (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 4, 4);
  ox_hand_click (hand, 4, 4);
  g_assert_nonnull (hand->refusal);
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_false (ox_tool_is_busy (hand->tool));
  g_assert_cmpuint (hand->job->n_obstacles, ==, 0);
}

/* A diameter that no floor has is seen while it is typed and refused when it is entered. */
static void
test_far_too_large (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 4, 4);
  ox_hand_type (hand, "123456789");
  g_assert_true (ox_hand_sees (hand, "123456789"));
  g_assert_cmpuint (ox_hand_count (hand, OX_PREVIEW_OUTLINE), ==, 1);
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->job->n_obstacles, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/round/pointed", test_pointed);
  g_test_add_func ("/tools/round/typed", test_typed);
  g_test_add_func ("/tools/round/several-in-a-row", test_several_in_a_row);
  g_test_add_func ("/tools/round/no-size-is-refused", test_no_size_is_refused);
  g_test_add_func ("/tools/round/far-too-large", test_far_too_large);
  return g_test_run ();
}
