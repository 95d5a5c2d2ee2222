/* Oxturn: plan/clearance against distances to every side of random outlines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/clearance.h"
#include "support/ox-test.h"

#define REACH 0.9

static double
brute_distance (const OxRegion *region, OxPoint p)
{
  double best = INFINITY;
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0; i < region->rings[r].n; i++)
      {
        const OxPoint *points = region->points + region->rings[r].start;
        best = MIN (best, ox_point_segment_distance (p, points[i], points[(i + 1) % region->rings[r].n], NULL));
      }
  return best;
}

static OxPoint
point_inside (const OxRegion *region)
{
  OxBox box = ox_region_box (region);
  for (;;)
    {
      OxPoint p = { g_test_rand_double_range (box.x0, box.x1), g_test_rand_double_range (box.y0, box.y1) };
      if (ox_region_contains (region, p))
        return p;
    }
}

static void
points (void)
{
  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxClearance) clearance = ox_clearance_new (region, REACH);
      for (guint i = 0; i < 60; i++)
        {
          OxPoint p = point_inside (region), nearest = { 12345, 0 };
          double far = brute_distance (region, p);
          ox_test_near (ox_clearance_at (clearance, p, &nearest), MIN (far, REACH), 1e-9);
          ox_test_near (ox_clearance_at (clearance, p, NULL), MIN (far, REACH), 1e-9);
          if (far < REACH)
            {
              ox_test_near (ox_point_distance (p, nearest), far, 1e-9);
              ox_test_near (brute_distance (region, nearest), 0, 1e-9);
            }
          else
            ox_test_near (nearest.x, 12345, 1e-12);
        }
    }
}

/* Looked at every few millimetres along the segment, the least distance is right within half such a step. */
static void
segments (void)
{
  guint clear = 0, blocked = 0;
  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxClearance) clearance = ox_clearance_new (region, REACH);
      for (guint i = 0; i < 20; i++)
        {
          OxPoint a = point_inside (region), b = point_inside (region);
          double distance = g_test_rand_double_range (0.1, REACH), least = INFINITY;
          double length = ox_point_distance (a, b), steps = ceil (length / 0.01);
          for (double k = 0; k <= steps; k++)
            {
              OxPoint p = ox_point_add (a, ox_point_scale (ox_point_sub (b, a), k / steps));
              least = MIN (least, brute_distance (region, p));
            }
          if (least < distance)
            g_assert_false (ox_clearance_is_over (clearance, a, b, distance));
          else if (least > distance + 0.005)
            g_assert_true (ox_clearance_is_over (clearance, a, b, distance));
          clear += least > distance + 0.005;
          blocked += least < distance;
        }
    }
  g_assert_cmpuint (clear, >, 50);
  g_assert_cmpuint (blocked, >, 50);
}

/* m2 of the rectangle along a-b that lie outside the region. */
static double
outside (const OxRegion *region, OxPoint a, OxPoint b, double left, double right)
{
  OxPoint u = ox_point_scale (ox_point_sub (b, a), 1 / ox_point_distance (a, b)), n = { -u.y, u.x };
  OxPoint l = ox_point_scale (n, left), r = ox_point_scale (n, -right);
  const OxPoint corners[4] = { ox_point_add (a, r), ox_point_add (b, r), ox_point_add (b, l), ox_point_add (a, l) };
  g_autoptr (OxRegion) box = ox_region_new_points (corners, 4);
  g_autoptr (OxRegion) off = ox_region_difference (box, region);
  return ox_region_area (off);
}

static void
rectangles (void)
{
  guint clear = 0, blocked = 0;
  for (guint round = 0; round < 100; round++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxClearance) clearance = ox_clearance_new (region, REACH);
      for (guint i = 0; i < 20; i++)
        {
          OxPoint a = point_inside (region), b = point_inside (region);
          double left = g_test_rand_double_range (0.1, REACH), right = g_test_rand_double_range (0.1, REACH);
          if (outside (region, a, b, left, right) > 1e-6)
            {
              g_assert_false (ox_clearance_is_off (clearance, a, b, left, right));
              blocked++;
            }
          else if (outside (region, a, b, left + 1e-3, right + 1e-3) <= 0)
            {
              g_assert_true (ox_clearance_is_off (clearance, a, b, left, right));
              clear++;
            }
        }
    }
  g_assert_cmpuint (clear, >, 50);
  g_assert_cmpuint (blocked, >, 50);
}

/* A lane 0.2 m off a wall of a room of 5 x 3 m: left and right are told apart, ends do not count. */
static void
beside_wall (void)
{
  g_autoptr (OxRegion) region = ox_test_region ("POLYGON ((0 0, 5 0, 5 3, 0 3, 0 0))");
  g_autoptr (OxClearance) clearance = ox_clearance_new (region, REACH);
  OxPoint a = { 0.1, 0.2 }, b = { 4.9, 0.2 };
  g_assert_true (ox_clearance_is_off (clearance, a, b, 0.5, 0.2));
  g_assert_false (ox_clearance_is_off (clearance, a, b, 0.2, 0.21));
  g_assert_true (ox_clearance_is_off (clearance, b, a, 0.2, 0.5));
  g_assert_false (ox_clearance_is_over (clearance, a, b, 0.101));
  g_assert_true (ox_clearance_is_over (clearance, a, b, 0.099));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/clearance/points", points);
  g_test_add_func ("/plan/clearance/segments", segments);
  g_test_add_func ("/plan/clearance/rectangles", rectangles);
  g_test_add_func ("/plan/clearance/beside-wall", beside_wall);
  return g_test_run ();
}
