/* Oxturn: tests/tools/test-outline - a room corner by corner.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "session/session.h"

static OxHand *
new_hand (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);

  return ox_hand_new (OX_TOOL_ROOM_CORNERS, job);
}

static void
test_clicked (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_click (hand, 6.02, 0.03);
  ox_hand_click (hand, 6.01, 4.04);
  ox_hand_click (hand, 0.04, 3.97);
  g_assert_cmpuint (hand->edits, ==, 0);
  g_assert_true (ox_tool_is_busy (hand->tool));
  ox_hand_click (hand, 0.02, 0.02); /* the first corner again */
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpuint (hand->job->n_rooms, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 24, 1e-9);
  g_assert_cmpstr (hand->selection[0], ==, hand->job->rooms[0]->id);
  g_assert_false (ox_tool_is_busy (hand->tool));
}

/* Lengths and angles typed: an L of 6 x 4 m less 2 x 2 m, with the pointer somewhere else all the time. */
static void
test_typed (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  ox_hand_type (hand, "6\t0\n");
  ox_hand_type (hand, "2\t90\n");
  ox_hand_type (hand, "2\t180\n");
  ox_hand_type (hand, "200cm\t90\n");
  ox_hand_type (hand, "4\t180\n");
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpuint (hand->job->rooms[0]->ring->n, ==, 6);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 20, 1e-9);
}

/* A length without an angle goes where the pointer points. */
static void
test_typed_length_pointed_angle (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_move (hand, 2, 0.02, OX_HOLD_NONE);
  ox_hand_type (hand, "7,5\n");
  ox_hand_move (hand, 7.52, 3, OX_HOLD_NONE);
  ox_hand_type (hand, "3\n");
  ox_hand_key (hand, OX_KEY_ENTER); /* two sides: nothing to close yet, and it says so when there are too few corners */
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 7.5 * 3 / 2, 1e-9);
}

static void
test_clockwise_is_turned (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_click (hand, 0, 4);
  ox_hand_click (hand, 6, 4);
  ox_hand_click (hand, 6, 0);
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 24, 1e-9);
}

static void
test_escape_steps_back (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_click (hand, 5, 0);
  ox_hand_type (hand, "3");
  g_assert_true (ox_hand_sees (hand, "3"));
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE)); /* what was typed */
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE)); /* the second corner */
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE)); /* the first */
  g_assert_false (ox_tool_is_busy (hand->tool));
  g_assert_false (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_cmpuint (hand->edits, ==, 0);
}

static void
test_too_few_corners (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_click (hand, 5, 0);
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->edits, ==, 0);
}

/* A bow tie is refused, and what was drawn stays so that it can be mended. */
static void
test_crossing_is_refused (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_click (hand, 6, 4);
  ox_hand_click (hand, 6, 0);
  ox_hand_click (hand, 0, 4);
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->job->n_rooms, ==, 0);
  g_assert_true (ox_tool_is_busy (hand->tool));
}

static void
test_shows_length_and_angle (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0, 0);
  ox_hand_move (hand, 3, 4, OX_HOLD_NONE);
  g_assert_true (ox_hand_sees (hand, "5.00 m"));
  g_assert_true (ox_hand_sees (hand, "53.1"));
  ox_hand_move (hand, 4.02, 0.03, OX_HOLD_NONE);
  g_assert_true (ox_hand_sees (hand, "square"));
  g_assert_cmpuint (ox_hand_count (hand, OX_PREVIEW_GUIDE), ==, 1);
}

static OxHand *
new_hand_of (OxToolKind kind)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);

  return ox_hand_new (kind, job);
}

/* The same three clicks and an Enter make whatever the tool is for. */
static void
test_other_kinds (void)
{
  g_autoptr (OxHand) obstacle = new_hand_of (OX_TOOL_OBSTACLE_CORNERS);
  g_autoptr (OxHand) excluded = new_hand_of (OX_TOOL_EXCLUDED_CORNERS);
  g_autoptr (OxHand) condition = new_hand_of (OX_TOOL_CONDITION_CORNERS);
  OxHand *const hands[] = { obstacle, excluded, condition };

  obstacle->obstacle_kind = OX_OBSTACLE_PIT;
  for (guint i = 0; i < G_N_ELEMENTS (hands); i++)
    {
      ox_hand_click (hands[i], 0, 0);
      ox_hand_type (hands[i], "4\t0\n3\t90\n\n");
      g_assert_cmpuint (hands[i]->edits, ==, 1);
    }
  g_assert_cmpint (obstacle->job->obstacles[0]->kind, ==, OX_OBSTACLE_PIT);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (obstacle->job->obstacles[0]->shape.ring), 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (excluded->job->excluded[0]->ring), 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (condition->job->conditions[0]->ring), 6, 1e-9);
  g_assert_cmpuint (obstacle->job->n_rooms + excluded->job->n_rooms, ==, 0);
}

/* A joint may come back to where it began without being closed there; two ends are enough. */
static void
test_joint (void)
{
  g_autoptr (OxHand) hand = new_hand_of (OX_TOOL_JOINT);

  ox_hand_click (hand, 0, 0);
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_nonnull (hand->refusal);
  ox_hand_type (hand, "25\t90\n");
  g_assert_cmpuint (ox_hand_count (hand, OX_PREVIEW_OUTLINE), ==, 0);
  ox_hand_type (hand, "3\t0\n\n");
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpuint (hand->job->joints[0]->n, ==, 3);
  g_assert_cmpfloat_with_epsilon (hand->job->joints[0]->points[2].x, 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->joints[0]->points[2].y, 25, 1e-9);
  g_assert_cmpstr (hand->selection[0], ==, "J1");
}

/* Shift: 50 degrees become 45, the length stays on the step. */
static void
test_steps_of_15_degrees (void)
{
  g_autoptr (OxHand) hand = new_hand_of (OX_TOOL_JOINT);
  OxPoint end;

  ox_hand_click (hand, 0, 0);
  ox_hand_press (hand, 5 * cos (50 * G_PI / 180), 5 * sin (50 * G_PI / 180), OX_HOLD_SHIFT, 1);
  ox_hand_key (hand, OX_KEY_ENTER);
  end = hand->job->joints[0]->points[1];
  g_assert_cmpfloat_with_epsilon (end.x, end.y, OX_GRID);
  g_assert_cmpfloat_with_epsilon (hypot (end.x, end.y), 5, 0.06);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/outline/clicked", test_clicked);
  g_test_add_func ("/tools/outline/typed", test_typed);
  g_test_add_func ("/tools/outline/typed-length-pointed-angle", test_typed_length_pointed_angle);
  g_test_add_func ("/tools/outline/clockwise-is-turned", test_clockwise_is_turned);
  g_test_add_func ("/tools/outline/escape-steps-back", test_escape_steps_back);
  g_test_add_func ("/tools/outline/too-few-corners", test_too_few_corners);
  g_test_add_func ("/tools/outline/crossing-is-refused", test_crossing_is_refused);
  g_test_add_func ("/tools/outline/other-kinds", test_other_kinds);
  g_test_add_func ("/tools/outline/joint", test_joint);
  g_test_add_func ("/tools/outline/steps-of-15-degrees", test_steps_of_15_degrees);
  g_test_add_func ("/tools/outline/shows-length-and-angle", test_shows_length_and_angle);
  return g_test_run ();
}
