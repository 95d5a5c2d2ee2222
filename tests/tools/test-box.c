/* Oxturn: tests/tools/test-box - rectangles between two corners.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "session/session.h"
#include "support/floors.h"

static void
test_room_by_two_clicks (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_ROOM_RECTANGLE, job);

  ox_hand_click (hand, 8, 5);
  ox_hand_click (hand, 2, 1);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 24, 1e-9);
}

static void
test_room_by_drag (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_ROOM_RECTANGLE, job);

  ox_hand_drag (hand, 0, 0, 3, 2);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 6, 1e-9);
}

/* A typed size runs to the side where the pointer is. */
static void
test_typed_towards_pointer (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_ROOM_RECTANGLE, job);
  OxBox box;

  ox_hand_click (hand, 10, 10);
  ox_hand_move (hand, 9, 12, OX_HOLD_NONE);
  ox_hand_type (hand, "6.25\t4.5\n");
  box = ox_ring_box (hand->job->rooms[0]->ring);
  g_assert_cmpfloat_with_epsilon (box.x0, 3.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.x1, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y1, 14.5, 1e-9);
}

static void
test_obstacle_kinds (void)
{
  for (int kind = OX_OBSTACLE_SOLID; kind <= OX_OBSTACLE_MASKED; kind++)
    {
      g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
      g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_OBSTACLE_RECTANGLE, job);

      hand->obstacle_kind = (OxObstacleKind) kind;
      ox_hand_click (hand, 2, 2);
      ox_hand_move (hand, 3, 3, OX_HOLD_NONE);
      ox_hand_type (hand, "0.4\t0.6\n");
      g_assert_cmpuint (hand->job->n_obstacles, ==, 1);
      g_assert_cmpint (hand->job->obstacles[0]->kind, ==, kind);
      g_assert_cmpint (hand->job->obstacles[0]->shape.kind, ==, OX_SHAPE_RECTANGLE);
      g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->obstacles[0]->shape.ring), 0.24, 1e-9);
    }
}

static void
test_excluded (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_EXCLUDED, job);

  ox_hand_drag (hand, 0, 0, 2, 3);
  g_assert_cmpuint (hand->job->n_excluded, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->excluded[0]->ring), 6, 1e-9);
}

static void
test_condition (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_CONDITION, job);

  ox_hand_drag (hand, 4, 4, 6, 7);
  g_assert_cmpuint (hand->job->n_conditions, ==, 1);
  g_assert_cmpstr (hand->selection[0], ==, "C1");
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->conditions[0]->ring), 6, 1e-9);
  /* Nothing of its own yet: speed, coats and profile are those around it. */
  g_assert_cmpfloat (hand->job->conditions[0]->speed_m_per_min, ==, 0);
  g_assert_cmpuint (hand->job->conditions[0]->coats, ==, 0);
}

static void
test_no_area_is_refused (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_ROOM_RECTANGLE, job);

  ox_hand_click (hand, 1, 1);
  ox_hand_key (hand, OX_KEY_ENTER);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->edits, ==, 0);
  g_assert_true (ox_tool_is_busy (hand->tool));
}

static void
test_overlapping_room_is_refused (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_ROOM_RECTANGLE, job);

  ox_hand_click (hand, 5, 5);
  ox_hand_click (hand, 15, 15);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->job->n_rooms, ==, 1);
}

static void
test_escape (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_METRES);
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_ROOM_RECTANGLE, job);

  g_assert_false (ox_hand_key (hand, OX_KEY_ESCAPE));
  ox_hand_click (hand, 1, 1);
  ox_hand_type (hand, "5");
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_true (ox_tool_is_busy (hand->tool));
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_false (ox_tool_is_busy (hand->tool));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/box/room-by-two-clicks", test_room_by_two_clicks);
  g_test_add_func ("/tools/box/room-by-drag", test_room_by_drag);
  g_test_add_func ("/tools/box/typed-towards-pointer", test_typed_towards_pointer);
  g_test_add_func ("/tools/box/obstacle-kinds", test_obstacle_kinds);
  g_test_add_func ("/tools/box/excluded", test_excluded);
  g_test_add_func ("/tools/box/condition", test_condition);
  g_test_add_func ("/tools/box/no-area-is-refused", test_no_area_is_refused);
  g_test_add_func ("/tools/box/overlapping-room-is-refused", test_overlapping_room_is_refused);
  g_test_add_func ("/tools/box/escape", test_escape);
  return g_test_run ();
}
