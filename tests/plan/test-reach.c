/* Oxturn: plan/reach against closed forms and a slow second way of computing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/reach.h"
#include "support/ox-test.h"

static double
distance (const OxRegion *floor, OxPoint from, OxPoint to)
{
  g_autoptr (OxReach) reach = ox_reach_new (floor, 100);
  g_autoptr (OxReachTree) tree = ox_reach_tree_new (reach, from, 100);
  g_autoptr (OxReachTree) back = ox_reach_tree_new (reach, to, 100);
  double way = ox_reach_tree_distance (tree, to);
  if (isinf (way))
    g_assert_true (isinf (ox_reach_tree_distance (back, from)));
  else
    ox_test_near (ox_reach_tree_distance (back, from), way, 1e-9);
  return way;
}

static void
empty_rectangle (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  ox_test_near (distance (floor, (OxPoint){ 0, 0 }, (OxPoint){ 20, 12 }), hypot (20, 12), 1e-6);
  ox_test_near (distance (floor, (OxPoint){ 0, 3 }, (OxPoint){ 0, 12 }), 9, 1e-6);
}

/* A wall of 0.2 m across, open from y = 9 on: by both corners of its end. */
static void
wall_with_a_gap (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 10 0, 10 9, 10.2 9, 10.2 0, 20 0, 20 10, 0 10, 0 0))");
  ox_test_near (distance (floor, (OxPoint){ 4, 1 }, (OxPoint){ 16.2, 1 }), hypot (6, 8) + 0.2 + hypot (6, 8), 1e-6);
  /* A line that just passes the end bends nowhere. */
  ox_test_near (distance (floor, (OxPoint){ 4, 9.5 }, (OxPoint){ 16, 9.5 }), 12, 1e-6);
}

/* A column of 2 m: round the side that is nearer; from its middle both are the same. */
static void
one_column (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 20 0, 20 10, 0 10, 0 0), (9 4, 11 4, 11 6, 9 6, 9 4))");
  ox_test_near (distance (floor, (OxPoint){ 3, 5 }, (OxPoint){ 17, 5 }), 2 * hypot (6, 1) + 2, 1e-6);
  ox_test_near (distance (floor, (OxPoint){ 3, 5.5 }, (OxPoint){ 17, 5.5 }), 2 * hypot (6, 0.5) + 2, 1e-6);
}

/* Behind the column the farthest point of the line x = 17 lies between its ends, opposite the middle of the column. */
static void
farthest_lies_between (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 20 0, 20 10, 0 10, 0 0), (9 4, 11 4, 11 6, 9 6, 9 4))");
  g_autoptr (OxReach) reach = ox_reach_new (floor, 100);
  OxPoint from = { 7, 5 }, a = { 11.5, 4.2 }, b = { 11.5, 5.9 };
  g_autoptr (OxReachTree) tree = ox_reach_tree_new (reach, from, 100);
  double middle = hypot (2, 1) + 2 + hypot (0.5, 1);
  ox_test_near (ox_reach_tree_farthest (tree, a, b), middle, 0.006);
  ox_test_near (ox_reach_tree_distance (tree, a), hypot (2, 1) + 2 + hypot (0.5, 0.2), 1e-6);
  g_autoptr (OxReachTree) shorter = ox_reach_tree_new (reach, from, middle - 0.05);
  g_assert_false (isinf (ox_reach_tree_distance (shorter, a)));
  g_assert_false (isinf (ox_reach_tree_distance (shorter, b)));
  g_assert_true (isinf (ox_reach_tree_farthest (shorter, a, b)));
}

static void
gaps (void)
{
  g_autoptr (OxRegion) narrow
      = ox_test_region ("POLYGON ((0 0, 20 0, 20 10, 0 10, 0 0), (9 0.08, 11 0.08, 11 9.92, 9 9.92, 9 0.08))");
  g_autoptr (OxRegion) wide
      = ox_test_region ("POLYGON ((0 0, 20 0, 20 10, 0 10, 0 0), (9 0.2, 11 0.2, 11 9.92, 9 9.92, 9 0.2))");
  g_assert_true (isinf (distance (narrow, (OxPoint){ 3, 5 }, (OxPoint){ 17, 5 })));
  ox_test_near (distance (wide, (OxPoint){ 3, 5 }, (OxPoint){ 17, 5 }), 2 * hypot (6, 4.8) + 2, 1e-6);
}

static OxRegion *
random_floor (void)
{
  OxPoint corners[] = { { 0, 0 }, { 16, 0 }, { 16, 12 }, { 0, 12 } };
  OxRegion *floor = ox_region_new_points (corners, 4);
  guint n = (guint) g_test_rand_int_range (1, 7);
  for (guint i = 0; i < n; i++)
    {
      OxPoint centre = { g_test_rand_double_range (1, 15), g_test_rand_double_range (1, 11) };
      g_autoptr (OxRing) ring
          = ox_ring_new_rectangle (centre, g_test_rand_double_range (0.3, 6), g_test_rand_double_range (0.3, 1.5),
                                   g_test_rand_double_range (0, G_PI));
      g_autoptr (OxRegion) solid = ox_region_new_ring (ring);
      g_autoptr (OxRegion) before = floor;
      floor = ox_region_difference (before, solid);
    }
  return floor;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

/* Cut where it meets sides, every piece lies inside by its middle. */
static gboolean
runs_inside (const OxRegion *region, OxPoint a, OxPoint b)
{
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (double));
  double ends[] = { 0, 1 };
  OxPoint d = ox_point_sub (b, a);
  g_array_append_vals (cuts, ends, 2);
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0, n = region->rings[r].n; i < n; i++)
      {
        OxPoint p = region->points[region->rings[r].start + i],
                q = region->points[region->rings[r].start + (i + 1) % n];
        OxPoint e = ox_point_sub (q, p), off = ox_point_sub (p, a);
        double across = ox_point_cross (d, e);
        double t = ox_point_cross (off, e) / across, u = ox_point_cross (off, d) / across;
        if (across != 0 && t > 0 && t < 1 && u >= 0 && u <= 1)
          g_array_append_val (cuts, t);
      }
  g_array_sort (cuts, compare_doubles);
  for (guint i = 0; i + 1 < cuts->len; i++)
    {
      double t = (g_array_index (cuts, double, i) + g_array_index (cuts, double, i + 1)) / 2;
      if (!ox_region_contains (region, ox_point_add (a, ox_point_scale (d, t))))
        return FALSE;
    }
  return TRUE;
}

static double
slow_distance (const OxRegion *floor, OxPoint from, OxPoint to)
{
  g_autoptr (OxRegion) grown = ox_region_offset (floor, 0.0005, FALSE);
  guint n = floor->n_points + 2;
  g_autofree OxPoint *points = g_new (OxPoint, n);
  g_autofree double *length = g_new (double, n);
  g_autofree gboolean *sees = g_new0 (gboolean, n * n);
  points[0] = from;
  points[1] = to;
  for (guint i = 2; i < n; i++)
    points[i] = floor->points[i - 2];
  for (guint i = 0; i < n; i++)
    {
      length[i] = i == 0 ? 0 : INFINITY;
      for (guint k = 0; k < i; k++)
        sees[i * n + k] = sees[k * n + i] = runs_inside (grown, points[i], points[k]);
    }
  for (gboolean changed = TRUE; changed;)
    {
      changed = FALSE;
      for (guint i = 0; i < n; i++)
        for (guint k = 0; k < n; k++)
          if (sees[i * n + k] && length[i] + ox_point_distance (points[i], points[k]) < length[k] - 1e-12)
            {
              length[k] = length[i] + ox_point_distance (points[i], points[k]);
              changed = TRUE;
            }
    }
  return length[1];
}

static OxPoint
point_on (const OxRegion *floor)
{
  for (;;)
    {
      OxPoint p = { g_test_rand_double_range (0, 16), g_test_rand_double_range (0, 12) };
      if (ox_region_contains (floor, p))
        return p;
    }
}

static void
random_floors (void)
{
  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (OxRegion) raw = random_floor ();
      /* Gaps that plan/reach closes are closed here as well: what is compared is the search. */
      g_autoptr (OxRegion) shrunk = ox_region_offset (raw, -OX_REACH_GAP / 2, FALSE);
      g_autoptr (OxRegion) opened = ox_region_offset (shrunk, OX_REACH_GAP / 2, FALSE);
      g_autoptr (OxRegion) floor = ox_region_intersection (opened, raw);
      for (guint i = 0; i < 4; i++)
        {
          OxPoint a = point_on (floor), b = point_on (floor);
          double fast = distance (raw, a, b), slow = slow_distance (floor, a, b);
          g_assert_true (isinf (fast) == isinf (slow));
          if (!isinf (fast))
            ox_test_near (fast, slow, 0.005); /* the slow way may cut a corner by half a millimetre */
        }
    }
}

/* Looked at every centimetre along it, no point of a line is farther than the farthest, and one is as far. */
static void
random_lines (void)
{
  for (guint round = 0; round < 100; round++)
    {
      g_autoptr (OxRegion) floor = random_floor ();
      g_autoptr (OxReach) reach = ox_reach_new (floor, 60);
      OxPoint from = point_on (floor), a = point_on (floor), b = point_on (floor);
      g_autoptr (OxReachTree) tree = ox_reach_tree_new (reach, from, 60);
      double most = 0, farthest = ox_reach_tree_farthest (tree, a, b);
      if (!ox_reach_sees (reach, a, b))
        continue;
      for (guint i = 0; i <= 1000; i++)
        most = MAX (most, ox_reach_tree_distance (
                              tree, (OxPoint){ a.x + (b.x - a.x) * i / 1000, a.y + (b.y - a.y) * i / 1000 }));
      if (isinf (most))
        g_assert_true (isinf (farthest));
      else
        ox_test_near (farthest, most, 0.02);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/reach/empty-rectangle", empty_rectangle);
  g_test_add_func ("/plan/reach/wall-with-a-gap", wall_with_a_gap);
  g_test_add_func ("/plan/reach/one-column", one_column);
  g_test_add_func ("/plan/reach/the-farthest-point-may-lie-between", farthest_lies_between);
  g_test_add_func ("/plan/reach/a-hose-needs-a-gap", gaps);
  g_test_add_func ("/plan/reach/random-floors-by-a-second-way", random_floors);
  g_test_add_func ("/plan/reach/random-lines", random_lines);
  return g_test_run ();
}
