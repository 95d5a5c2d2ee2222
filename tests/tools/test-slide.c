/* Oxturn: tests/tools/test-slide - a doorway slid along the wall that it is in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/slide.h"

#include "hand.h"
#include "job/edit.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* A room of 10 m x 8 m with a doorway of 2 m in the middle of a wall of 0.2 m above it. */
static OxJob *
make_floor (void)
{
  g_autoptr (OxJob) room = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxDoorway) doorway = ox_doorway_new (
      &(OxDoorway){ .id = (char *) "D1", .name = (char *) "", .a = { 4, 8.1 }, .b = { 6, 8.1 }, .depth = 0.2 });

  return ox_job_with_doorway (room, doorway, NULL);
}

/* The side above runs from right to left: its corner is at 10, 8. */
static void
test_wall (void)
{
  g_autoptr (OxJob) job = make_floor ();
  OxDoorwayWall wall;

  g_assert_true (ox_doorway_wall (job, "D1", &wall));
  ox_test_near (wall.length, 10, 1e-9);
  ox_test_near (wall.from, 4, 1e-9);
  ox_test_near (wall.width, 2, 1e-9);
  g_assert_false (ox_doorway_wall (job, job->rooms[0]->id, &wall));
}

static void
test_slide (void)
{
  static const double froms[][2] = { { 1, 7 }, { 0, 8 }, { -3, 8 }, { 8, 0 }, { 99, 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (froms); i++)
    {
      g_autoptr (OxJob) job = make_floor ();
      g_autoptr (OxJob) slid = ox_doorway_slide (job, "D1", froms[i][0], NULL);

      ox_test_near (slid->doorways[0]->a.x, froms[i][1], 1e-9);
      ox_test_near (slid->doorways[0]->a.y, 8.1, 1e-9);
      ox_test_near (slid->doorways[0]->b.x, froms[i][1] + 2, 1e-9);
    }
}

/* To where it is, or against the end of its wall where it is already: no edit. */
static void
test_nowhere (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (OxJob) same = ox_doorway_slide (job, "D1", 4, NULL);
  g_autoptr (OxJob) end = ox_doorway_slide (job, "D1", 99, NULL);
  g_autoptr (OxJob) beyond = ox_doorway_slide (end, "D1", 100, NULL);

  g_assert_true (same == job);
  g_assert_true (beyond == end);
}

/* Dragged anywhere it stays in its wall; with Control it goes where the pointer goes. */
static void
test_drag (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (OxHand) hand = ox_hand_new (OX_TOOL_SELECT, job);
  double x;

  ox_hand_click (hand, 5, 8.1);
  ox_hand_drag (hand, 5, 8.1, 6.5, 3);
  ox_test_near (hand->job->doorways[0]->a.x, 5.5, 1e-9);
  ox_test_near (hand->job->doorways[0]->a.y, 8.1, 1e-9);
  ox_hand_key (hand, OX_KEY_LEFT);
  g_assert_cmpfloat (hand->job->doorways[0]->a.x, <, 5.5);
  ox_test_near (hand->job->doorways[0]->a.y, 8.1, 1e-9);
  /* 1 m along the wall and 2 m off it, taken hold of in its middle */
  x = hand->job->doorways[0]->a.x;
  ox_hand_press (hand, x + 1, 8.1, OX_HOLD_CONTROL, 1);
  ox_hand_move (hand, x + 1.5, 7, OX_HOLD_CONTROL);
  ox_hand_move (hand, x + 2, 6.1, OX_HOLD_CONTROL);
  ox_hand_release (hand, x + 2, 6.1, OX_HOLD_CONTROL);
  ox_test_near (hand->job->doorways[0]->a.x, x + 1, 1e-4);
  ox_test_near (hand->job->doorways[0]->a.y, 6.1, 1e-4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/slide/wall", test_wall);
  g_test_add_func ("/tools/slide/slide", test_slide);
  g_test_add_func ("/tools/slide/nowhere", test_nowhere);
  g_test_add_func ("/tools/slide/drag", test_drag);
  return g_test_run ();
}
