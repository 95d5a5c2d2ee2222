/* Oxturn: tests of geometry/ring
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/ring.h"
#include "support/ox-test.h"
#include <stdlib.h>

#define FOOT 0.3048

/* Published traverses of surveying textbooks and figures worked by hand; in feet where @feet. The traverses' printed
 * areas are 102,935.75 and 140,494 ft2, from partial products rounded to 0.1 and 1 ft2. */
static const struct
{
  const char *wkt;
  double area;
  double area_tolerance;
  double perimeter;
} figures[] = {
  { "POLYGON ((2000 500, 1561.426 323.614, 1488.321 526.996, 1686.956 719.336, 2000 500))", 102935.7226, 0.02,
    1347.56988 },
  { "POLYGON ((1259.97 406.31, 1489.47 235.12, 1126.40 65.81, 942.04 317.89, 1282.54 675.32, 1259.97 406.31))",
    140493.1069, 0.02, 1762.83564 },
  { "POLYGON ((0 0, 0 300, 200 300, 200 0, 0 0))", 60000, 1e-6, 1000 },
  { "POLYGON ((3 4, 5 11, 12 8, 9 5, 5 6, 3 4))", 30, 1e-9, 26.090056 },
  { "POLYGON ((1 6, 3 1, 7 2, 4 4, 8 5, 1 6))", 16.5, 1e-9, 24.307996 },
  { "POLYGON ((0 0, 12 0, 12 5, 7 5, 7 9, 0 9, 0 0))", 88, 1e-9, 42 },
  { "POLYGON ((0 0, 10 0, 10 8, 7 8, 7 3, 3 3, 3 8, 0 8, 0 0))", 60, 1e-9, 46 },
  { "POLYGON ((0 0, 3 0, 0 4, 0 0))", 6, 1e-9, 12 },
  { "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))", 240, 1e-9, 64 },
};

static void
test_area_and_perimeter (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      g_autoptr (OxRing) ring = ox_test_ring (figures[i].wkt);
      ox_test_near (fabs (ox_ring_area (ring)), figures[i].area, figures[i].area_tolerance);
      ox_test_near (ox_ring_perimeter (ring), figures[i].perimeter, 1e-4);
    }
}

/* A traverse measured in feet and stored in metres has the published area in square feet again. */
static void
test_area_in_feet (void)
{
  OxPoint p[4] = { { 2000, 500 }, { 1561.426, 323.614 }, { 1488.321, 526.996 }, { 1686.956, 719.336 } };
  for (int i = 0; i < 4; i++)
    p[i] = ox_point_scale (p[i], FOOT);
  g_autoptr (OxRing) ring = ox_ring_new (p, 4);
  ox_test_near (fabs (ox_ring_area (ring)) / (FOOT * FOOT), 102935.7226, 0.3);
}

static void
test_area_has_a_sign (void)
{
  g_autoptr (OxRing) left = ox_test_ring ("POLYGON ((0 0, 3 0, 0 4, 0 0))");
  g_autoptr (OxRing) right = ox_test_ring ("POLYGON ((0 0, 0 4, 3 0, 0 0))");
  g_assert_cmpfloat (ox_ring_area (left), ==, 6);
  g_assert_cmpfloat (ox_ring_area (right), ==, -6);
}

static void
test_centroid (void)
{
  static const struct
  {
    const char *wkt;
    OxPoint centroid;
  } cases[] = {
    { "POLYGON ((0 0, 12 0, 12 5, 7 5, 7 9, 0 9, 0 0))", { 458.0 / 88, 346.0 / 88 } },
    { "POLYGON ((0 0, 0 9, 7 9, 7 5, 12 5, 12 0, 0 0))", { 458.0 / 88, 346.0 / 88 } },
    { "POLYGON ((0 0, 10 0, 10 8, 7 8, 7 3, 3 3, 3 8, 0 8, 0 0))", { 5, 3.5 } },
    { "POLYGON ((0 0, 3 0, 0 4, 0 0))", { 1, 4.0 / 3 } },
    { "POLYGON ((9000 9000, 9020 9000, 9020 9012, 9000 9012, 9000 9000))", { 9010, 9006 } },
    { "POLYGON ((0 0, 4 2, 8 4, 0 0))", { 4, 2 } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (OxRing) ring = ox_test_ring (cases[i].wkt);
      OxPoint c = ox_ring_centroid (ring);
      ox_test_near (c.x, cases[i].centroid.x, 1e-9);
      ox_test_near (c.y, cases[i].centroid.y, 1e-9);
    }
}

static void
test_new_snaps_and_opens (void)
{
  OxPoint p[4] = { { 0.00004, 0 }, { 1.00006, 0 }, { 0, 1 }, { -0.00001, 0.00001 } };
  g_autoptr (OxRing) ring = ox_ring_new (p, 4);
  g_assert_cmpuint (ring->n, ==, 3);
  g_assert_cmpfloat (ring->points[0].x, ==, 0);
  g_assert_cmpfloat (ring->points[1].x, ==, 1.0001);
  g_autoptr (OxRing) none = ox_ring_new (NULL, 0);
  g_assert_cmpuint (none->n, ==, 0);
  g_assert_true (ox_box_is_empty (ox_ring_box (none)));
}

static void
test_rectangle (void)
{
  g_autoptr (OxRing) straight = ox_ring_new_rectangle ((OxPoint){ 5, 3 }, 4, 2, 0);
  g_autoptr (OxRing) wanted = ox_test_ring ("POLYGON ((3 2, 7 2, 7 4, 3 4, 3 2))");
  g_assert_true (ox_ring_equal (straight, wanted));
  g_autoptr (OxRing) turned = ox_ring_new_rectangle ((OxPoint){ 5, 3 }, 4, 2, G_PI / 2);
  OxBox box = ox_ring_box (turned);
  g_assert_true (box.x0 == 4 && box.x1 == 6 && box.y0 == 1 && box.y1 == 5);
  g_autoptr (OxRing) slanted = ox_ring_new_rectangle ((OxPoint){ 5, 3 }, 4, 2, 0.7);
  ox_test_near (ox_ring_area (slanted), 8, 6 * OX_GRID);
}

/* The circle lies within (about) the polygon, nowhere more than 1 mm away; both measured from the middle to the
 * corners, which are farthest out, and to the sides, which come nearest. */
static void
test_circle (void)
{
  static const double radii[] = { 0.02, 0.05, 0.15, 0.25, 0.5, 1, 7.3, 100 };
  OxPoint middle = { 12.34, -5.6 };
  for (gsize i = 0; i < 2 * G_N_ELEMENTS (radii); i++)
    {
      double r = radii[i / 2];
      gboolean outside = i % 2;
      g_autoptr (OxRing) ring = ox_ring_new_circle (middle, r, outside);
      g_assert_cmpuint (ring->n, >=, 16);
      g_assert_cmpfloat (ox_ring_area (ring), >, 0);
      g_assert_true (ox_ring_is_simple (ring, NULL));
      for (guint k = 0; k < ring->n; k++)
        {
          double corner = ox_point_distance (middle, ring->points[k]);
          double side = ox_point_segment_distance (middle, ring->points[k], ring->points[(k + 1) % ring->n], NULL);
          g_assert_cmpfloat (corner, <=, outside ? r + 0.001 : r);
          g_assert_cmpfloat (side, >=, outside ? r : r - 0.001);
        }
      double ratio = ox_ring_area (ring) / (G_PI * r * r);
      g_assert_true (outside ? ratio >= 1 : ratio <= 1);
    }
}

/* A regular n-gon within a circle that keeps to 1 mm needs n >= pi / acos (1 - 0.001 / r): 50 corners for r = 0.5 m. */
static void
test_circle_is_not_wasteful (void)
{
  g_autoptr (OxRing) ring = ox_ring_new_circle ((OxPoint){ 0, 0 }, 0.5, FALSE);
  g_assert_cmpuint (ring->n, >=, 50);
  g_assert_cmpuint (ring->n, <=, 64);
}

static void
test_contains (void)
{
  g_autoptr (OxRing) ell = ox_test_ring ("POLYGON ((0 0, 12 0, 12 5, 7 5, 7 9, 0 9, 0 0))");
  g_assert_true (ox_ring_contains (ell, (OxPoint){ 6.9999, 8.9999 }));
  g_assert_true (ox_ring_contains (ell, (OxPoint){ 7, 7 }));
  g_assert_true (ox_ring_contains (ell, (OxPoint){ 7, 5 }));
  g_assert_true (ox_ring_contains (ell, (OxPoint){ 0, 0 }));
  g_assert_true (ox_ring_contains (ell, (OxPoint){ 3, 5 }));
  g_assert_false (ox_ring_contains (ell, (OxPoint){ 7.0001, 5.0001 }));
  g_assert_false (ox_ring_contains (ell, (OxPoint){ -0.0001, 5 }));
  g_assert_false (ox_ring_contains (ell, (OxPoint){ 13, 0 }));
}

static void
test_equal (void)
{
  g_autoptr (OxRing) a = ox_test_ring ("POLYGON ((0 0, 3 0, 0 4, 0 0))");
  g_autoptr (OxRing) same = ox_test_ring ("POLYGON ((0.00001 0, 3 0, 0 4, 0.00001 0))");
  g_autoptr (OxRing) other = ox_test_ring ("POLYGON ((0 0, 3 0, 0 4.0001, 0 0))");
  g_autoptr (OxRing) longer = ox_test_ring ("POLYGON ((0 0, 3 0, 0 4, 0 2, 0 0))");
  g_assert_true (ox_ring_equal (a, same));
  g_assert_false (ox_ring_equal (a, other));
  g_assert_false (ox_ring_equal (a, longer));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/ring/area/and-perimeter", test_area_and_perimeter);
  g_test_add_func ("/geometry/ring/area/in-feet", test_area_in_feet);
  g_test_add_func ("/geometry/ring/area/has-a-sign", test_area_has_a_sign);
  g_test_add_func ("/geometry/ring/centroid", test_centroid);
  g_test_add_func ("/geometry/ring/new/snaps-and-opens", test_new_snaps_and_opens);
  g_test_add_func ("/geometry/ring/rectangle", test_rectangle);
  g_test_add_func ("/geometry/ring/circle/keeps-to-a-millimetre", test_circle);
  g_test_add_func ("/geometry/ring/circle/is-not-wasteful", test_circle_is_not_wasteful);
  g_test_add_func ("/geometry/ring/contains", test_contains);
  g_test_add_func ("/geometry/ring/equal", test_equal);
  return g_test_run ();
}
