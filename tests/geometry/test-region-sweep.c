/* Oxturn: tests of geometry/region-sweep
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/region.h"
#include "support/ox-test.h"

/* Extents of a rectangle from its origin: rear, front, right, left. */
typedef struct
{
  double rear, front, right, left;
} Body;

static const Body bodies[] = {
  { 1.25, 0.35, 0.21, 0.21 }, { 1.3, 0.4, 0.16, 0.28 }, { 0.05, 0.05, 0.6, 0.6 },
  { 0.5, 0, 0, 0.3 },         { 0.4, 0.2, 0, 0 },
};

static OxRegion *
erode (const OxRegion *region, Body b, double angle)
{
  return ox_region_erode_rectangle (region, b.rear, b.front, b.right, b.left, angle);
}

static OxRegion *
dilate (const OxRegion *region, Body b, double angle)
{
  return ox_region_dilate_rectangle (region, b.rear, b.front, b.right, b.left, angle);
}

/* A room a x b leaves (a - length)(b - width), and the origins stand rear from one wall, front from the other. */
static void
test_erode_rectangle (void)
{
  g_autoptr (OxRegion) room = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  for (gsize i = 0; i < G_N_ELEMENTS (bodies); i++)
    {
      Body b = bodies[i];
      double along = b.rear + b.front, across = b.right + b.left;
      g_autoptr (OxRegion) east = erode (room, b, 0);
      g_autoptr (OxRegion) north = erode (room, b, G_PI / 2);
      ox_test_near (ox_region_area (east), (20 - along) * (12 - across), 1e-7);
      ox_test_near (ox_region_area (north), (12 - along) * (20 - across), 1e-7);
      OxBox box = ox_region_box (east);
      ox_test_near (box.x0, b.rear, 1e-7);
      ox_test_near (box.x1, 20 - b.front, 1e-7);
      ox_test_near (box.y0, b.right, 1e-7);
      ox_test_near (box.y1, 12 - b.left, 1e-7);
    }
}

/* A rectangle u x v turned by t against a room a x b needs u |cos t| + v |sin t| along and u |sin t| + v |cos t|
 * across. */
static void
test_erode_slanted (void)
{
  g_autoptr (OxRegion) room = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  for (int i = 0; i < 100; i++)
    {
      double angle = g_test_rand_double_range (-7, 7);
      Body b = bodies[i % G_N_ELEMENTS (bodies)];
      double u = b.rear + b.front, v = b.right + b.left;
      g_autoptr (OxRegion) free = erode (room, b, angle);
      double c = fabs (cos (angle)), s = fabs (sin (angle));
      ox_test_near (ox_region_area (free), (20 - u * c - v * s) * (12 - u * s - v * c), 1e-7);
    }
}

static void
test_erode_too_narrow (void)
{
  g_autoptr (OxRegion) corridor = ox_test_region ("POLYGON ((0 0, 30 0, 30 1.2, 0 1.2, 0 0))");
  g_autoptr (OxRegion) along = erode (corridor, bodies[0], 0);
  g_autoptr (OxRegion) across = erode (corridor, bodies[0], G_PI / 2);
  ox_test_near (ox_region_area (along), (30 - 1.6) * (1.2 - 0.42), 1e-7);
  g_assert_true (ox_region_is_empty (across));
  /* As wide as the rectangle to the last bit: nothing is left, and no crumbs of rounding either. */
  g_autoptr (OxRegion) exact = ox_region_erode_rectangle (corridor, 1, 1, 0.6, 0.6, 0);
  g_autoptr (OxRegion) turned = ox_region_turn (corridor, 0.3);
  g_autoptr (OxRegion) exact_turned = ox_region_erode_rectangle (turned, 1, 1, 0.6, 0.6, 0.3);
  g_assert_true (ox_region_is_empty (exact));
  ox_test_near (ox_region_area (exact_turned), 0, 1e-7);
  g_autoptr (OxRegion) none = ox_region_new_empty ();
  g_autoptr (OxRegion) still_none = erode (none, bodies[0], 1);
  g_assert_true (ox_region_is_empty (still_none));
}

/* A column a x b takes (a + length)(b + width) from the origins, reflected: the body's front keeps off by front. */
static void
test_erode_column (void)
{
  g_autoptr (OxRegion) room = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (9 5, 10 5, 10 7, 9 7, 9 5))");
  Body b = bodies[1];
  g_autoptr (OxRegion) free = erode (room, b, 0);
  double along = b.rear + b.front, across = b.right + b.left;
  ox_test_near (ox_region_area (free), (20 - along) * (12 - across) - (1 + along) * (2 + across), 1e-7);
  g_assert_false (ox_region_contains (free, (OxPoint){ 9 - b.front + 0.01, 6 }));
  g_assert_true (ox_region_contains (free, (OxPoint){ 9 - b.front - 0.01, 6 }));
  g_assert_false (ox_region_contains (free, (OxPoint){ 10 + b.rear - 0.01, 6 }));
  g_assert_true (ox_region_contains (free, (OxPoint){ 10 + b.rear + 0.01, 6 }));
}

/* A room within a room: the hole between them is convex, but must not be taken for solid. */
static void
test_erode_island (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 30 0, 30 30, 0 30, 0 0), (5 5, 25 5, 25 25, 5 25, 5 5))"
                                               "POLYGON ((10 10, 20 10, 20 20, 10 20, 10 10))");
  g_autoptr (OxRegion) free = ox_region_erode_rectangle (floor, 1, 1, 0.5, 0.5, 0);
  g_assert_cmpuint (free->n_parts, ==, 2);
  ox_test_near (ox_region_area (free), 28 * 29 - 22 * 21 + 8 * 9, 1e-7);
}

/* By a segment along, then by one across, is by the rectangle of both. */
static void
test_erode_splits (void)
{
  for (int i = 0; i < 40; i++)
    {
      Body b = bodies[i % G_N_ELEMENTS (bodies)];
      double angle = g_test_rand_double_range (-7, 7);
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRing) other = ox_test_random_ring ();
      g_autoptr (OxRegion) whole = ox_region_new_ring (ring);
      g_autoptr (OxRegion) taken = ox_region_new_ring (other);
      g_autoptr (OxRegion) region = ox_region_difference (whole, taken);
      g_autoptr (OxRegion) at_once = erode (region, b, angle);
      g_autoptr (OxRegion) along = ox_region_erode_rectangle (region, b.rear, b.front, 0, 0, angle);
      g_autoptr (OxRegion) both = ox_region_erode_rectangle (along, 0, 0, b.right, b.left, angle);
      ox_test_near (ox_test_difference_area (at_once, both), 0, 1e-6);
    }
}

/* The definition: wherever an origin may be, the rectangle there is in the region; just beyond the edge, it is not. */
static void
test_erode_definition (void)
{
  guint free_points = 0, other_points = 0;
  for (int i = 0; i < 400; i++)
    {
      Body b = bodies[i % 3];
      double angle = g_test_rand_double_range (-7, 7);
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxRegion) free = erode (region, b, angle);
      OxBox box = ox_ring_box (ring);
      OxPoint p = { g_test_rand_double_range (box.x0, box.x1), g_test_rand_double_range (box.y0, box.y1) };
      OxPoint middle
          = ox_point_turn ((OxPoint){ (b.front - b.rear) / 2, (b.left - b.right) / 2 }, cos (angle), sin (angle));
      g_autoptr (OxRing) body
          = ox_ring_new_rectangle (ox_point_add (p, middle), b.rear + b.front, b.right + b.left, angle);
      g_autoptr (OxRegion) stands = ox_region_new_ring (body);
      g_autoptr (OxRegion) beyond = ox_region_difference (stands, region);
      double out = ox_region_area (beyond);
      gboolean is_free = ox_region_contains (free, p);
      /* Between the two, rounding of the rectangle's corners to the grid decides. */
      if (is_free)
        g_assert_cmpfloat (out, <, 5 * OX_GRID);
      else
        g_assert_cmpfloat (out, >, 0);
      *(is_free ? &free_points : &other_points) += 1;
    }
  g_assert_cmpuint (free_points, >, 20);
  g_assert_cmpuint (other_points, >, 20);
}

static void
test_dilate_rectangle (void)
{
  g_autoptr (OxRegion) room = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  g_autoptr (OxRegion) ring = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (5 5, 15 5, 15 7, 5 7, 5 5))");
  for (gsize i = 0; i < G_N_ELEMENTS (bodies); i++)
    {
      Body b = bodies[i];
      double along = b.rear + b.front, across = b.right + b.left;
      g_autoptr (OxRegion) reached = dilate (room, b, 0);
      g_autoptr (OxRegion) round = dilate (ring, b, 0);
      ox_test_near (ox_region_area (reached), (20 + along) * (12 + across), 1e-7);
      ox_test_near (ox_region_area (round), (20 + along) * (12 + across) - (10 - along) * (2 - across), 1e-7);
      OxBox box = ox_region_box (reached);
      ox_test_near (box.x0, -b.rear, 1e-7);
      ox_test_near (box.y1, 12 + b.left, 1e-7);
    }
}

/* A convex figure and a rectangle: area A + the mixed part, which is the sum over the sides of length times the
 * rectangle's reach along the outward normal, + the rectangle's own area. */
static void
test_dilate_triangle (void)
{
  OxPoint p[3] = { { 0, 0 }, { 3, 0 }, { 0, 4 } };
  g_autoptr (OxRegion) triangle = ox_region_new_points (p, 3);
  for (int i = 0; i < 50; i++)
    {
      double angle = g_test_rand_double_range (-7, 7);
      Body b = bodies[i % G_N_ELEMENTS (bodies)];
      double mixed = 0;
      for (int k = 0; k < 3; k++)
        {
          OxPoint side = ox_point_sub (p[(k + 1) % 3], p[k]);
          OxPoint out = ox_point_turn ((OxPoint){ side.y, -side.x }, cos (-angle), sin (-angle));
          mixed += (out.x > 0 ? out.x * b.front : -out.x * b.rear) + (out.y > 0 ? out.y * b.left : -out.y * b.right);
        }
      g_autoptr (OxRegion) grown = dilate (triangle, b, angle);
      ox_test_near (ox_region_area (grown), 6 + mixed + (b.rear + b.front) * (b.right + b.left), 1e-7);
    }
}

/* At an angle is: turned back, along the axes, turned again. */
static void
test_angle_is_a_turn (void)
{
  for (int i = 0; i < 40; i++)
    {
      Body b = bodies[i % G_N_ELEMENTS (bodies)];
      double angle = g_test_rand_double_range (-7, 7);
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxRegion) turned = ox_region_turn (region, -angle);
      g_autoptr (OxRegion) eroded = erode (region, b, angle);
      g_autoptr (OxRegion) eroded_turned = erode (turned, b, 0);
      g_autoptr (OxRegion) eroded_back = ox_region_turn (eroded_turned, angle);
      ox_test_near (ox_test_difference_area (eroded, eroded_back), 0, 1e-6);
      g_autoptr (OxRegion) dilated = dilate (region, b, angle);
      g_autoptr (OxRegion) dilated_turned = dilate (turned, b, 0);
      g_autoptr (OxRegion) dilated_back = ox_region_turn (dilated_turned, angle);
      ox_test_near (ox_test_difference_area (dilated, dilated_back), 0, 1e-6);
    }
}

/* Opening stays inside, closing holds all; and eroding what was dilated gives back at least the region. */
static void
test_opening_and_closing (void)
{
  for (int i = 0; i < 60; i++)
    {
      Body b = bodies[i % G_N_ELEMENTS (bodies)];
      double angle = g_test_rand_double_range (-7, 7);
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRing) other = ox_test_random_ring ();
      g_autoptr (OxRegion) whole = ox_region_new_ring (ring);
      g_autoptr (OxRegion) taken = ox_region_new_ring (other);
      g_autoptr (OxRegion) region = ox_region_difference (whole, taken);
      g_autoptr (OxRegion) eroded = erode (region, b, angle);
      g_autoptr (OxRegion) opened = dilate (eroded, b, angle);
      g_autoptr (OxRegion) beyond = ox_region_difference (opened, region);
      ox_test_near (ox_region_area (beyond), 0, 1e-6);
      g_autoptr (OxRegion) dilated = dilate (region, b, angle);
      g_autoptr (OxRegion) closed = erode (dilated, b, angle);
      g_autoptr (OxRegion) lost = ox_region_difference (region, closed);
      ox_test_near (ox_region_area (lost), 0, 1e-6);
      /* Once opened, opening loses nothing, but for origins on floor too thin to last. */
      g_autoptr (OxRegion) core = ox_region_erode_rectangle (eroded, 1e-4, 1e-4, 1e-4, 1e-4, angle);
      g_autoptr (OxRegion) sure = dilate (core, b, angle);
      g_autoptr (OxRegion) eroded_again = erode (opened, b, angle);
      g_autoptr (OxRegion) opened_again = dilate (eroded_again, b, angle);
      g_autoptr (OxRegion) missing = ox_region_difference (sure, opened_again);
      ox_test_near (ox_region_area (missing), 0, 1e-6);
    }
}

/* Strips w wide at spacing s over a width: area length (s (n - 1) + w), one part, at any angle. */
static void
test_union_of_strips (void)
{
  enum
  {
    N = 400
  };
  for (int i = 0; i < 4; i++)
    {
      double angle = i * 0.41;
      g_autofree OxPoint *corners = g_new (OxPoint, 4 * N);
      for (guint k = 0; k < N; k++)
        {
          double y = 0.3 * k;
          OxPoint strip[4] = { { 0, y }, { 20, y }, { 20, y + 0.33 }, { 0, y + 0.33 } };
          for (guint c = 0; c < 4; c++)
            corners[4 * k + c] = ox_point_turn (strip[c], cos (angle), sin (angle));
        }
      g_autoptr (OxRegion) blasted = ox_region_union_quads (corners, N);
      g_assert_cmpuint (blasted->n_parts, ==, 1);
      ox_test_near (ox_region_area (blasted), 20 * (0.3 * (N - 1) + 0.33), 1e-5);
    }
}

/* Strips that abut, apart from rounding, at any angle, every fourth overlapping the next by 0.05 m, of two lengths. */
static void
test_union_of_abutting_strips (void)
{
  enum
  {
    N = 24
  };
  for (int i = 0; i < 400; i++)
    {
      OxPoint corners[4 * N];
      double angle = g_test_rand_double_range (-4, 4);
      double y = 0, wanted = 0;
      for (guint k = 0; k < N; k++)
        {
          double width = g_test_rand_double_range (0.2, 0.5), length = k % 3 ? 7.3 : 5;
          double before = (k + 2) % 3 ? 7.3 : 5;
          gboolean overlaps = k > 0 && k % 4 == 0;
          y -= overlaps ? 0.05 : 0;
          wanted += length * width - (overlaps ? 0.05 * MIN (length, before) : 0);
          OxPoint strip[4] = { { 0, y }, { length, y }, { length, y + width }, { 0, y + width } };
          for (guint c = 0; c < 4; c++)
            {
              corners[4 * k + c] = ox_point_turn (strip[c], cos (angle), sin (angle));
              corners[4 * k + c].x += k % 2 ? 1e-15 : 0;
            }
          y += width;
        }
      g_autoptr (OxRegion) blasted = ox_region_union_quads (corners, N);
      ox_test_near (ox_region_area (blasted), wanted, 1e-6);
    }
}

static void
test_union_of_hulls (void)
{
  /* Any order, points inside and on the sides, a group without area. */
  OxPoint points[18] = {
    { 0, 0 }, { 4, 4 }, { 2, 2 }, { 4, 0 }, { 0, 4 },   { 2, 0 },   { 3, 3 }, { 7, 7 },   { 3, 7 },
    { 7, 3 }, { 5, 5 }, { 3, 3 }, { 9, 9 }, { 10, 10 }, { 11, 11 }, { 9, 9 }, { 10, 10 }, { 11, 11 },
  };
  g_autoptr (OxRegion) both = ox_region_union_hulls (points, 3, 6);
  g_autoptr (OxRegion) wanted = ox_test_region ("POLYGON ((0 0, 4 0, 4 3, 7 3, 7 7, 3 7, 3 4, 0 4, 0 0))");
  g_assert_true (ox_test_same_bytes (both, wanted));
  g_autoptr (OxRegion) none = ox_region_union_hulls (NULL, 0, 6);
  g_assert_true (ox_region_is_empty (none));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/region-sweep/erode/rectangle", test_erode_rectangle);
  g_test_add_func ("/geometry/region-sweep/erode/slanted", test_erode_slanted);
  g_test_add_func ("/geometry/region-sweep/erode/too-narrow", test_erode_too_narrow);
  g_test_add_func ("/geometry/region-sweep/erode/column", test_erode_column);
  g_test_add_func ("/geometry/region-sweep/erode/island", test_erode_island);
  g_test_add_func ("/geometry/region-sweep/erode/splits", test_erode_splits);
  g_test_add_func ("/geometry/region-sweep/erode/definition", test_erode_definition);
  g_test_add_func ("/geometry/region-sweep/dilate/rectangle", test_dilate_rectangle);
  g_test_add_func ("/geometry/region-sweep/dilate/triangle", test_dilate_triangle);
  g_test_add_func ("/geometry/region-sweep/angle-is-a-turn", test_angle_is_a_turn);
  g_test_add_func ("/geometry/region-sweep/opening-and-closing", test_opening_and_closing);
  g_test_add_func ("/geometry/region-sweep/union/of-strips", test_union_of_strips);
  g_test_add_func ("/geometry/region-sweep/union/of-abutting-strips", test_union_of_abutting_strips);
  g_test_add_func ("/geometry/region-sweep/union/of-hulls", test_union_of_hulls);
  return g_test_run ();
}
