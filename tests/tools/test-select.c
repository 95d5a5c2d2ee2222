/* Oxturn: tests/tools/test-select - choose, move, reshape, delete.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "job/edit.h"
#include "support/floors.h"

#define ROOM(hand) ((hand)->job->rooms[0]->id)

/* A room of 10 m x 8 m with a column of 0.4 m about (3, 3) and another about (6, 3). */
static OxHand *
new_hand (void)
{
  OxJob *job = ox_test_floor_rectangle (10, 8, "compact");
  OxHand *hand;

  for (int i = 1; i <= 2; i++)
    {
      g_autofree char *id = g_strdup_printf ("O%d", i);
      OxObstacle draft = { .id = id, .name = (char *) "" };
      g_autoptr (OxObstacle) obstacle = NULL;
      OxJob *next;

      draft.shape = (OxShape){ .kind = OX_SHAPE_RECTANGLE, .centre = { 3 * i, 3 }, .width = 0.4, .depth = 0.4 };
      obstacle = ox_obstacle_new (&draft);
      next = ox_job_with_obstacle (job, obstacle, NULL);
      ox_job_unref (job);
      job = next;
    }
  hand = ox_hand_new (OX_TOOL_SELECT, job);
  ox_job_unref (job);
  return hand;
}

static void
test_click (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 3, 3);
  g_assert_cmpstr (hand->selection[0], ==, "O1");
  ox_hand_click (hand, 1, 1);
  g_assert_cmpstr (hand->selection[0], ==, ROOM (hand));
  ox_hand_click (hand, -5, -5);
  g_assert_null (hand->selection[0]);
  g_assert_cmpuint (hand->edits, ==, 0);
}

static void
test_shift_adds (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 3, 3);
  ox_hand_press (hand, 6, 3, OX_HOLD_SHIFT, 1);
  ox_hand_release (hand, 6, 3, OX_HOLD_SHIFT);
  g_assert_cmpuint (g_strv_length (hand->selection), ==, 2);
  ox_hand_press (hand, 3, 3, OX_HOLD_SHIFT, 1);
  ox_hand_release (hand, 3, 3, OX_HOLD_SHIFT);
  g_assert_cmpuint (g_strv_length (hand->selection), ==, 1);
  g_assert_cmpstr (hand->selection[0], ==, "O2");
}

/* However many motions it has, a drag is one edit. */
static void
test_drag_is_one_edit (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_drag (hand, 3, 3, 5.02, 4.99);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_job_find_obstacle (hand->job, "O1")->shape.centre.x, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_job_find_obstacle (hand->job, "O1")->shape.centre.y, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_job_find_obstacle (hand->job, "O2")->shape.centre.x, 6, 1e-9);
}

static void
test_drop_in_place_is_no_edit (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_press (hand, 3, 3, OX_HOLD_NONE, 1);
  ox_hand_move (hand, 6, 6, OX_HOLD_NONE);
  ox_hand_move (hand, 3, 3, OX_HOLD_NONE);
  ox_hand_release (hand, 3, 3, OX_HOLD_NONE);
  g_assert_cmpuint (hand->edits, ==, 0);
}

static void
test_escape_puts_back (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_press (hand, 3, 3, OX_HOLD_NONE, 1);
  ox_hand_move (hand, 6, 6, OX_HOLD_NONE);
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
  ox_hand_release (hand, 6, 6, OX_HOLD_NONE);
  g_assert_cmpuint (hand->edits, ==, 0);
  g_assert_cmpstr (hand->selection[0], ==, "O1");
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_null (hand->selection[0]);
  g_assert_false (ox_hand_key (hand, OX_KEY_ESCAPE));
}

static void
test_corner (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  g_assert_cmpuint (ox_hand_count (hand, OX_PREVIEW_HANDLE), ==, 4);
  ox_hand_drag (hand, 10.03, 7.98, 12.02, 9.01);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (hand->job->rooms[0]->ring->points[2].x, 12, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->rooms[0]->ring->points[2].y, 9, 1e-9);
}

/* A corner dragged across the other side makes an outline that cannot be: nothing is done, and it is said why. */
static void
test_bad_corner_is_refused (void)
{
  g_autoptr (OxHand) hand = new_hand ();
  const OxJob *before = hand->job;

  ox_hand_click (hand, 1, 1);
  ox_hand_drag (hand, 10, 8, -3, 4.03);
  g_assert_nonnull (hand->refusal);
  /* The side down from the corner meets the left one on its way: both points are on x = 0. */
  g_assert_true (hand->placed);
  g_assert_cmpfloat_with_epsilon (hand->place.x, 0, 1e-3);
  g_assert_true (hand->job == before);
  g_assert_false (ox_tool_is_busy (hand->tool));
}

static void
test_side (void)
{
  g_autoptr (OxHand) hand = new_hand ();
  g_autofree char *side = NULL;

  ox_hand_click (hand, 1, 1);
  side = g_strdup_printf ("%s#1", ROOM (hand));
  ox_hand_click (hand, 10.02, 4);
  g_assert_cmpstr (hand->selection[0], ==, side);
  ox_hand_drag (hand, 10, 4, 11.48, 5);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 11.5 * 8, 1e-9);
  /* a side is no item: it cannot be deleted, and that is said */
  ox_hand_key (hand, OX_KEY_DELETE);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->job->n_rooms, ==, 1);
}

static void
test_double_click_adds_corner (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  ox_hand_click (hand, 5, 0.02);
  ox_hand_press (hand, 5, 0.02, OX_HOLD_NONE, 2);
  ox_hand_release (hand, 5, 0.02, OX_HOLD_NONE);
  g_assert_cmpuint (hand->job->rooms[0]->ring->n, ==, 5);
}

static void
test_band (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_drag (hand, 1, 1, 9, 5); /* begins in the room, which is not selected */
  g_assert_cmpuint (hand->edits, ==, 0);
  g_assert_cmpuint (g_strv_length (hand->selection), ==, 2);
}

static void
test_nudge (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 3, 3);
  g_assert_true (ox_hand_key (hand, OX_KEY_RIGHT));
  g_assert_true (ox_hand_key (hand, OX_KEY_UP));
  g_assert_cmpfloat_with_epsilon (ox_job_find_obstacle (hand->job, "O1")->shape.centre.x, 3.1, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_job_find_obstacle (hand->job, "O1")->shape.centre.y, 3.1, 1e-9);
}

static void
test_delete (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  g_assert_false (ox_hand_key (hand, OX_KEY_DELETE));
  ox_hand_click (hand, 3, 3);
  g_assert_true (ox_hand_key (hand, OX_KEY_DELETE));
  g_assert_cmpuint (hand->job->n_obstacles, ==, 1);
  g_assert_cmpstr (hand->label, ==, "Delete Obstacle");
  g_assert_null (hand->selection[0]);
}

/* Delete while a corner or a side is held: it is gone, and the button lets go of nothing. */
static void
test_delete_in_mid_drag (void)
{
  static const OxPoint held[] = { { 10, 8 }, { 10, 4 } }; /* a corner of the room, the middle of a side */

  for (guint i = 0; i < G_N_ELEMENTS (held); i++)
    {
      g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
      g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_SELECT, job);

      ox_hand_click (hand, 5, 4);
      ox_hand_press (hand, held[i].x, held[i].y, OX_HOLD_NONE, 1);
      ox_hand_move (hand, 11, held[i].y, OX_HOLD_NONE);
      g_strfreev (hand->selection);
      hand->selection = g_strdupv ((char *[]){ ROOM (hand), NULL });
      g_assert_true (ox_hand_key (hand, OX_KEY_DELETE));
      g_assert_cmpuint (hand->job->n_rooms, ==, 0);
      ox_hand_move (hand, 12, held[i].y, OX_HOLD_NONE);
      g_assert_false (ox_tool_is_busy (hand->tool));
      ox_hand_release (hand, 12, held[i].y, OX_HOLD_NONE);
      g_assert_cmpuint (hand->edits, ==, 1);
    }
}

/* A double click on a corner takes it away; the last three stay. */
static void
test_double_click_deletes_corner (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  ox_hand_press (hand, 10, 8, OX_HOLD_NONE, 1);
  ox_hand_release (hand, 10, 8, OX_HOLD_NONE);
  g_assert_cmpuint (hand->edits, ==, 0);
  ox_hand_press (hand, 10, 8, OX_HOLD_NONE, 2);
  ox_hand_release (hand, 10, 8, OX_HOLD_NONE);
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpuint (hand->job->rooms[0]->ring->n, ==, 3);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (hand->job->rooms[0]->ring), 40, 1e-9);
  ox_hand_press (hand, 0, 0, OX_HOLD_NONE, 2);
  g_assert_nonnull (hand->refusal);
  g_assert_cmpuint (hand->edits, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/select/click", test_click);
  g_test_add_func ("/tools/select/shift-adds", test_shift_adds);
  g_test_add_func ("/tools/select/drag-is-one-edit", test_drag_is_one_edit);
  g_test_add_func ("/tools/select/drop-in-place-is-no-edit", test_drop_in_place_is_no_edit);
  g_test_add_func ("/tools/select/escape-puts-back", test_escape_puts_back);
  g_test_add_func ("/tools/select/corner", test_corner);
  g_test_add_func ("/tools/select/bad-corner-is-refused", test_bad_corner_is_refused);
  g_test_add_func ("/tools/select/side", test_side);
  g_test_add_func ("/tools/select/double-click-adds-corner", test_double_click_adds_corner);
  g_test_add_func ("/tools/select/band", test_band);
  g_test_add_func ("/tools/select/nudge", test_nudge);
  g_test_add_func ("/tools/select/delete", test_delete);
  g_test_add_func ("/tools/select/delete-in-mid-drag", test_delete_in_mid_drag);
  g_test_add_func ("/tools/select/double-click-deletes-corner", test_double_click_deletes_corner);
  return g_test_run ();
}
