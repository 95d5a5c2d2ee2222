/* Oxturn: plan/lane: where a strip may run, on floors where it can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The compact machine heading +x in a room 10 m long may have the middle of its pattern from 1.25 to 10 - 0.35 - 0.02 =
 * 9.63 m, heading -x from 0.37 to 8.75 m, and keeps 0.19 + 0.02 = 0.21 m to each side. Its pattern is 0.21 x 0.08 m.
 */
#include "judge.h"
#include "plan/floor.h"
#include "plan/lane.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* The spans of a lane are @want, @n of them from first to last. */
static void
expect (const OxJob *job, double angle, double y, int sign, const OxSpan *want, guint n)
{
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxFrame) frame = ox_frame_new (floor->travel, floor->rooms[0], job->machine, angle);
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  ox_frame_spans (frame, y, sign, spans);
  g_assert_cmpuint (spans->len, ==, n);
  for (guint i = 0; i < n; i++)
    {
      ox_test_near (g_array_index (spans, OxSpan, i).lo, want[i].lo, 2e-4);
      ox_test_near (g_array_index (spans, OxSpan, i).hi, want[i].hi, 2e-4);
    }
}

static const OxSpan ahead = { 1.25, 9.63 }, back = { 0.37, 8.75 };

static void
rectangle (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  expect (job, 0, 3, 1, &ahead, 1);
  expect (job, 0, 3, -1, &back, 1);
  expect (job, 0, 0.21, 1, &ahead, 1);
  expect (job, 0, 6 - 0.21, -1, &back, 1);
  expect (job, 0, 7, 1, NULL, 0);
  /* Seen from lanes along +y the room is 6 m long and lies from x = -10 to 0 in y. */
  expect (job, G_PI / 2, -5, 1, &(OxSpan){ 1.25, 6 - 0.37 }, 1);
}

/* A side that enters by less than OX_LANE_TOUCH does not block the lane, one that enters by more does. */
static void
touching (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  expect (job, 0, 0.21 - OX_LANE_TOUCH + 1e-4, 1, &ahead, 1);
  expect (job, 0, 0.21 - OX_LANE_TOUCH - 1e-4, 1, NULL, 0);
  expect (job, 0, 5.79 + OX_LANE_TOUCH - 1e-4, -1, &back, 1);
  expect (job, 0, 5.79 + OX_LANE_TOUCH + 1e-4, -1, NULL, 0);
}

/* A column from 4 to 6 m both ways round (5, 3). */
static void
column (void)
{
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 3 }, 2);
  const OxSpan there[2] = { { 1.25, 4 - 0.37 }, { 6 + 1.25, 9.63 } };
  const OxSpan again[2] = { { 0.37, 4 - 1.25 }, { 6 + 0.37, 8.75 } };
  expect (job, 0, 3, 1, there, 2);
  expect (job, 0, 3, -1, again, 2);
  expect (job, 0, 2 - 0.21 + 0.001, 1, there, 2);
  expect (job, 0, 2 - 0.21, 1, &ahead, 1);
}

/* The end wall runs from (10, 0) to (4, 6): on the lane at y = 2 the body meets it at y = 2.21, x = 7.79. */
static void
slanted_wall (void)
{
  const OxPoint points[4] = { { 0, 0 }, { 10, 0 }, { 4, 6 }, { 0, 6 } };
  g_autoptr (OxJob) job = ox_test_floor_polygon (points, 4, "compact");
  expect (job, 0, 2, 1, &(OxSpan){ 1.25, 7.79 - 0.37 }, 1);
  expect (job, 0, 2, -1, &(OxSpan){ 0.37, 7.79 - 1.25 }, 1);
}

/* A turned room has the same spans in its own direction. */
static void
turned (void)
{
  const double angle = 0.6;
  OxPoint points[4] = { { 0, 0 }, { 10, 0 }, { 10, 6 }, { 0, 6 } };
  for (guint i = 0; i < 4; i++)
    points[i] = ox_point_snap (ox_point_turn (points[i], cos (angle), sin (angle)));
  g_autoptr (OxJob) job = ox_test_floor_polygon (points, 4, "compact");
  expect (job, angle, 3, 1, &ahead, 1);
  expect (job, angle, 0.21, -1, &back, 1);
}

/* Offset head: 0.16 to the left and 0.28 to the right, gap 0.02. Only heading -x does it get to 0.18 m from the lower
 * wall. */
static void
offset_head (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "offset");
  const OxSpan there = { 1.3, 9.58 }, again = { 0.42, 8.7 };
  expect (job, 0, 0.18, -1, &again, 1);
  expect (job, 0, 0.18, 1, NULL, 0);
  expect (job, 0, 0.30, 1, &there, 1);
  expect (job, 0, 0.299, 1, NULL, 0);
  expect (job, 0, 6 - 0.18, 1, &there, 1);
  expect (job, 0, 6 - 0.18, -1, NULL, 0);
}

/* Over a masked area the body may roll, the pattern must keep off it. */
static void
masked (void)
{
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_MASKED, (OxPoint){ 5, 3 }, 2);
  const OxSpan there[2] = { { 1.25, 4 - 0.04 }, { 6 + 0.04, 9.63 } };
  expect (job, 0, 3, 1, there, 2);
  expect (job, 0, 2 - 0.105, 1, &ahead, 1);
  expect (job, 0, 2 - 0.105 + 0.001, 1, there, 2);
}

static void
find_span (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxFrame) frame = ox_frame_new (floor->travel, floor->rooms[0], job->machine, 0);
  OxSpan span = { -1, -1 };
  g_assert_false (ox_frame_find_span (frame, 3, 1, (OxSpan){ 1.2, 9 }, &span));
  ox_test_near (span.lo, -1, 1e-12);
  g_assert_true (ox_frame_find_span (frame, 3, 1, (OxSpan){ 1.2 + 0.051, 9 - 0.051 }, &span));
  ox_test_near (span.lo, 1.25, 1e-9);
  ox_test_near (span.hi, 9.63, 1e-9);
}

static double
area_within (const OxRegion *region, double x0, double y0, double x1, double y1)
{
  const OxPoint points[4] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };
  g_autoptr (OxRegion) box = ox_region_new_points (points, 4);
  g_autoptr (OxRegion) both = ox_region_intersection (box, region);
  return ox_region_area (both);
}

/* On any floor: what is free is free but for the touch, and 50 mm more would not be. */
static void
random_outlines (void)
{
  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxSideIndex) index = ox_side_index_new (region, 0);
      g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
      OxBox box = ox_region_box (region);
      double y0 = g_test_rand_double_range (box.y0, box.y1), y1 = y0 + g_test_rand_double_range (0.1, 0.6);
      ox_side_index_spans (index, y0, y1, spans);
      for (guint i = 0; i < spans->len; i++)
        {
          OxSpan span = g_array_index (spans, OxSpan, i);
          double length = span.hi - span.lo;
          if (i > 0)
            g_assert_cmpfloat (span.lo, >=, g_array_index (spans, OxSpan, i - 1).hi);
          g_assert_cmpfloat (area_within (region, span.lo, y0, span.hi, y1), >=,
                             length * (y1 - y0) - 2 * OX_LANE_TOUCH * length - 1e-7);
          g_assert_cmpfloat (area_within (region, span.lo - 0.05, y0, span.hi, y1), <,
                             (length + 0.05) * (y1 - y0) - 1e-9);
          g_assert_cmpfloat (area_within (region, span.lo, y0, span.hi + 0.05, y1), <,
                             (length + 0.05) * (y1 - y0) - 1e-9);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/lane/rectangle", rectangle);
  g_test_add_func ("/plan/lane/touching", touching);
  g_test_add_func ("/plan/lane/column", column);
  g_test_add_func ("/plan/lane/slanted-wall", slanted_wall);
  g_test_add_func ("/plan/lane/turned", turned);
  g_test_add_func ("/plan/lane/offset-head", offset_head);
  g_test_add_func ("/plan/lane/masked", masked);
  g_test_add_func ("/plan/lane/find-span", find_span);
  g_test_add_func ("/plan/lane/random-outlines", random_outlines);
  return g_test_run ();
}
