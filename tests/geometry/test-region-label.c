/* Oxturn: tests of geometry/region-label
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/region.h"
#include "support/ox-test.h"

static double
distance_to_outline (const OxRegion *region, OxPoint p)
{
  double nearest = INFINITY;
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0; i < region->rings[r].n; i++)
      {
        const OxPoint *q = region->points + region->rings[r].start;
        nearest = MIN (nearest, ox_point_segment_distance (p, q[i], q[(i + 1) % region->rings[r].n], NULL));
      }
  return nearest;
}

/* Radii of the largest inscribed circles, by hand. */
static void
test_known_circles (void)
{
  static const struct
  {
    const char *what;
    const char *wkt;
    double radius;
  } cases[] = {
    { "square", "POLYGON ((0 0, 8 0, 8 8, 0 8, 0 0))", 4 },
    { "hall", "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))", 6 },
    { "3-4-5 triangle", "POLYGON ((0 0, 3 0, 0 4, 0 0))", 1 },
    /* r from the walls x = 0 and y = 0 and from the corner (4, 4): (4 - r) sqrt 2 = r */
    { "ell", "POLYGON ((0 0, 9 0, 9 4, 4 4, 4 9, 0 9, 0 0))", 4 * G_SQRT2 / (1 + G_SQRT2) },
    /* in the quarter that is left: r from two walls and from the corner (4, 4) of the column */
    { "column in the middle", "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (4 4, 5 4, 5 5, 4 5, 4 4))",
      4 * G_SQRT2 / (1 + G_SQRT2) },
    { "larger of two", "POLYGON ((0 0, 2 0, 2 2, 0 2, 0 0)) POLYGON ((5 0, 9 0, 9 4, 5 4, 5 0))", 2 },
    { "court", "POLYGON ((0 0, 30 0, 30 30, 0 30, 0 0), (4 4, 28 4, 28 28, 4 28, 4 4))", 4 * G_SQRT2 / (1 + G_SQRT2) },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double radius = -1;
      g_autoptr (OxRegion) region = ox_test_region (cases[i].wkt);
      OxPoint p = ox_region_label_point (region, &radius);
      g_test_message ("%s: (%g, %g), %g", cases[i].what, p.x, p.y, radius);
      g_assert_true (ox_region_contains (region, p));
      ox_test_near (distance_to_outline (region, p), radius, 1e-9);
      g_assert_cmpfloat (radius, <=, cases[i].radius + 1e-9);
      g_assert_cmpfloat (radius, >=, cases[i].radius / 1.05 - 1e-9);
    }
}

/* No other point is much better: looked for at random. */
static void
test_no_better_point (void)
{
  for (int i = 0; i < 60; i++)
    {
      double radius;
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      OxPoint p = ox_region_label_point (region, &radius);
      g_assert_true (ox_region_contains (region, p));
      OxBox box = ox_region_box (region);
      for (int k = 0; k < 200; k++)
        {
          OxPoint q = { g_test_rand_double_range (box.x0, box.x1), g_test_rand_double_range (box.y0, box.y1) };
          if (ox_region_contains (region, q))
            g_assert_cmpfloat (distance_to_outline (region, q), <=, radius * 1.05 + 1e-9);
        }
    }
}

/* Slivers of edge work, up to 100 m by a tenth of a millimetre and at any angle, still have their label inside. */
static void
test_slivers (void)
{
  for (int i = 0; i < 60; i++)
    {
      double width = pow (10, g_test_rand_double_range (-4, 0));
      double angle = i % 2 ? g_test_rand_double_range (-4, 4) : i * G_PI / 4;
      OxPoint p[4] = { { 0, 0 }, { 100, 0 }, { 100, width }, { 0, width } };
      for (int k = 0; k < 4; k++)
        p[k] = ox_point_turn (p[k], cos (angle), sin (angle));
      double radius;
      g_autoptr (OxRegion) sliver = ox_region_new_points (p, 4);
      OxPoint at = ox_region_label_point (sliver, &radius);
      g_assert_true (ox_region_contains (sliver, at));
      g_assert_cmpfloat (radius, >, 0);
      g_assert_cmpfloat (radius, <=, width / 2 + 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/region-label/known-circles", test_known_circles);
  g_test_add_func ("/geometry/region-label/no-better-point", test_no_better_point);
  g_test_add_func ("/geometry/region-label/slivers", test_slivers);
  return g_test_run ();
}
