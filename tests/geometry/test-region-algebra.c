/* Oxturn: tests of geometry/region-algebra
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/region.h"
#include "support/ox-test.h"

static void
test_two_squares (void)
{
  g_autoptr (OxRegion) a = ox_test_region ("POLYGON ((0 0, 4 0, 4 4, 0 4, 0 0))");
  g_autoptr (OxRegion) b = ox_test_region ("POLYGON ((3 3, 7 3, 7 7, 3 7, 3 3))");
  g_autoptr (OxRegion) both = ox_region_intersection (a, b);
  g_autoptr (OxRegion) either = ox_region_union (a, b);
  g_autoptr (OxRegion) only_a = ox_region_difference (a, b);
  g_autoptr (OxRegion) wanted = ox_test_region ("POLYGON ((3 3, 4 3, 4 4, 3 4, 3 3))");
  g_assert_true (ox_test_same_bytes (both, wanted));
  g_assert_cmpfloat (ox_region_area (either), ==, 31);
  g_assert_cmpfloat (ox_region_area (only_a), ==, 15);
  g_assert_cmpuint (either->n_points, ==, 8);
}

/* Touching along a side or in a corner is nothing in common. */
static void
test_touching (void)
{
  g_autoptr (OxRegion) a = ox_test_region ("POLYGON ((0 0, 4 0, 4 4, 0 4, 0 0))");
  g_autoptr (OxRegion) beside = ox_test_region ("POLYGON ((4 0, 6 0, 6 4, 4 4, 4 0))");
  g_autoptr (OxRegion) corner = ox_test_region ("POLYGON ((4 4, 6 4, 6 6, 4 6, 4 4))");
  g_autoptr (OxRegion) none = ox_region_intersection (a, beside);
  g_autoptr (OxRegion) none_either = ox_region_intersection (a, corner);
  g_assert_true (ox_region_is_empty (none));
  g_assert_true (ox_region_is_empty (none_either));
  g_autoptr (OxRegion) one = ox_region_union (a, beside);
  g_assert_cmpuint (one->n_parts, ==, 1);
  g_assert_cmpfloat (ox_region_area (one), ==, 24);
  g_autoptr (OxRegion) two = ox_region_union (a, corner);
  g_assert_cmpuint (two->n_parts, ==, 2);
}

static void
test_with_nothing (void)
{
  g_autoptr (OxRegion) a = ox_test_region ("POLYGON ((0 0, 4 0, 4 4, 0 4, 0 0))");
  g_autoptr (OxRegion) none = ox_region_new_empty ();
  g_autoptr (OxRegion) sum = ox_region_union (a, none);
  g_autoptr (OxRegion) mus = ox_region_union (none, a);
  g_autoptr (OxRegion) both = ox_region_intersection (a, none);
  g_autoptr (OxRegion) rest = ox_region_difference (a, none);
  g_autoptr (OxRegion) gone = ox_region_difference (none, a);
  g_autoptr (OxRegion) self = ox_region_difference (a, a);
  g_autoptr (OxRegion) many = ox_region_union_many (NULL, 0);
  g_assert_true (ox_test_same_bytes (sum, a) && ox_test_same_bytes (mus, a) && ox_test_same_bytes (rest, a));
  g_assert_true (ox_region_is_empty (both) && ox_region_is_empty (gone) && ox_region_is_empty (self));
  g_assert_true (ox_region_is_empty (many));
}

/* GEOS 3.11.1 in plain doubles leaves the whole of this outline when itself, turned there and back, is taken away. */
static void
test_coinciding_but_for_rounding (void)
{
  OxPoint p[5]
      = { { 36.4295, -5.4003 }, { 30.6906, 26.4912 }, { 19.0321, 23.0957 }, { 11.4546, 19.8638 }, { 1.5489, -1.4535 } };
  g_autoptr (OxRegion) a = ox_region_new_points (p, 5);
  for (int i = 0; i < 4; i++)
    {
      p[i].x += i == 0 ? 7.1e-15 : 3.5e-15;
      p[i].y += i == 0 ? -8.9e-16 : 3.5e-15;
    }
  g_autoptr (OxRegion) b = ox_region_new_points (p, 5);
  g_autoptr (OxRegion) left = ox_region_difference (a, b);
  g_autoptr (OxRegion) right = ox_region_difference (b, a);
  g_autoptr (OxRegion) either = ox_region_union (a, b);
  g_assert_true (ox_region_is_empty (left));
  g_assert_true (ox_region_is_empty (right));
  ox_test_near (ox_region_area (either), ox_region_area (a), 1e-6);
}

static void
test_turned_there_and_back (void)
{
  for (int i = 0; i < 1500; i++)
    {
      double angle = g_test_rand_double_range (-4, 4);
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxRegion) turned = ox_region_turn (region, angle);
      g_autoptr (OxRegion) back = ox_region_turn (turned, -angle);
      g_autoptr (OxRegion) left = ox_region_difference (region, back);
      g_autoptr (OxRegion) both = ox_region_intersection (region, back);
      g_autoptr (OxRegion) either = ox_region_union (region, back);
      ox_test_near (ox_region_area (left), 0, 1e-6);
      ox_test_near (ox_region_area (both), ox_region_area (region), 1e-6);
      ox_test_near (ox_region_area (either), ox_region_area (region), 1e-6);
    }
}

/* area (A) + area (B) = area (A u B) + area (A n B), and the difference is what is left of A; with a third region made
 * of the results, so that coordinates off the grid go in too. */
static void
test_areas_add_up (void)
{
  for (int i = 0; i < 300; i++)
    {
      g_autoptr (OxRing) ring_a = ox_test_random_ring ();
      g_autoptr (OxRing) ring_b = ox_test_random_ring ();
      g_autoptr (OxRing) ring_c = ox_test_random_ring ();
      g_autoptr (OxRegion) a0 = ox_region_new_ring (ring_a);
      g_autoptr (OxRegion) b = ox_region_new_ring (ring_b);
      g_autoptr (OxRegion) c = ox_region_new_ring (ring_c);
      g_autoptr (OxRegion) a = ox_region_difference (a0, c);
      g_autoptr (OxRegion) both = ox_region_intersection (a, b);
      g_autoptr (OxRegion) either = ox_region_union (a, b);
      g_autoptr (OxRegion) only_a = ox_region_difference (a, b);
      double area_a = ox_region_area (a), area_b = ox_region_area (b), area_both = ox_region_area (both);
      ox_test_near (area_a + area_b, ox_region_area (either) + area_both, 1e-7);
      ox_test_near (area_a - area_both, ox_region_area (only_a), 1e-7);
      g_autoptr (OxRegion) apart = ox_region_intersection (only_a, b);
      ox_test_near (ox_region_area (apart), 0, 1e-7);
    }
}

static void
test_points_agree (void)
{
  for (int i = 0; i < 60; i++)
    {
      g_autoptr (OxRing) ring_a = ox_test_random_ring ();
      g_autoptr (OxRing) ring_b = ox_test_random_ring ();
      g_autoptr (OxRegion) a = ox_region_new_ring (ring_a);
      g_autoptr (OxRegion) b = ox_region_new_ring (ring_b);
      g_autoptr (OxRegion) both = ox_region_intersection (a, b);
      g_autoptr (OxRegion) either = ox_region_union (a, b);
      g_autoptr (OxRegion) only_a = ox_region_difference (a, b);
      for (int k = 0; k < 50; k++)
        {
          OxPoint p = { g_test_rand_double_range (-60, 60), g_test_rand_double_range (-60, 60) };
          gboolean in_a = ox_ring_contains (ring_a, p), in_b = ox_ring_contains (ring_b, p);
          g_assert_true (ox_region_contains (both, p) == (in_a && in_b));
          g_assert_true (ox_region_contains (either, p) == (in_a || in_b));
          g_assert_true (ox_region_contains (only_a, p) == (in_a && !in_b));
        }
    }
}

static void
test_union_many (void)
{
  enum
  {
    N = 12
  };
  OxRegion *regions[N];
  g_autoptr (OxRegion) one_by_one = ox_region_new_empty ();
  for (int i = 0; i < N; i++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      regions[i] = ox_region_new_ring (ring);
      OxRegion *sum = ox_region_union (one_by_one, regions[i]);
      ox_region_unref (one_by_one);
      one_by_one = sum;
    }
  g_autoptr (OxRegion) at_once = ox_region_union_many ((const OxRegion *const *) regions, N);
  ox_test_near (ox_test_difference_area (at_once, one_by_one), 0, 1e-6);
  for (int i = 0; i < N; i++)
    ox_region_unref (regions[i]);
}

/* Steiner: a convex figure grown by r has area A + P r + pi r2; round corners of 64 segments a turn lack
 * pi r2 - 32 r2 sin (pi / 32) of it. Mitred ones have (2 r)2 in place of pi r2 at right angles. */
static void
test_offset_outward (void)
{
  static const double distances[] = { 0.1, 0.3, 0.5, 1 };
  g_autoptr (OxRegion) hall = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  g_autoptr (OxRegion) triangle = ox_test_region ("POLYGON ((0 0, 3 0, 0 4, 0 0))");
  for (gsize i = 0; i < G_N_ELEMENTS (distances); i++)
    {
      double r = distances[i];
      double corners = 32 * r * r * sin (G_PI / 32);
      g_autoptr (OxRegion) rounded = ox_region_offset (hall, r, TRUE);
      g_autoptr (OxRegion) mitred = ox_region_offset (hall, r, FALSE);
      g_autoptr (OxRegion) round_triangle = ox_region_offset (triangle, r, TRUE);
      ox_test_near (ox_region_area (rounded), 240 + 64 * r + corners, 1e-6);
      ox_test_near (ox_region_area (mitred), 240 + 64 * r + 4 * r * r, 1e-9);
      /* Where a corner's turn is no multiple of a segment, the last segment is shorter. */
      ox_test_near (ox_region_area (round_triangle), 6 + 12 * r + corners, 0.002 * G_PI * r * r);
    }
}

/* What strips left of a floor, in two parts a hair apart, which GEOS 3.11 cannot shrink but on a coarser grid. */
static void
test_offset_again (void)
{
  static const OxPoint points[] = {
    { 4.5225, -5.6698 }, { 5.0992197, -3.7339 }, { 4.637549206, -3.7339 },
    { 4.770477729, -3.733903688 }, { 4.794854786, -4.387776222 }, { 4.204074788, -5.365178968 },
    { -6.387863886, 0.924063469 }, { -1.704479941, 7.033311196 }, { -1.703986805, 7.0329621 },
    { -1.667285177, 7.084812544 }, { -6.693, 0.6803 }, { 3.934166532, -3.879327791 },
    { 3.977485449, -3.7339 }, { 3.041, -3.7339 }, { 3.291726301, -3.733921198 },
  };
  static const OxRegionRing rings[] = { { 0, 11, 0, FALSE }, { 11, 4, 1, FALSE } };
  const OxRegion region = { 2, 2, rings, points, G_N_ELEMENTS (points) };
  g_autoptr (OxRegion) smaller = ox_region_offset (&region, -0.02625, FALSE);
  OxBox whole = ox_region_box (&region), box = ox_region_box (smaller);
  g_assert_cmpfloat (ox_region_area (smaller), >, 0);
  g_assert_cmpfloat (ox_region_area (smaller), <, ox_region_area (&region));
  g_assert_true (box.x0 > whole.x0 && box.y0 > whole.y0 && box.x1 < whole.x1 && box.y1 < whole.y1);
}

/* Right-angled figures with c outward and k inner corners: a disc leaves A - P r + c r2 - k pi r2 / 4, where
 * 8 sin (pi / 32) stands for pi / 4 in our segments; mitred sides leave A - P r + (c - k) r2. The 3-4-5 triangle,
 * inradius 1, shrinks as 6 (1 - r)2. */
static void
test_offset_inward (void)
{
  static const struct
  {
    const char *wkt;
    double area, perimeter, outward, inner;
  } figures[] = {
    { "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))", 240, 64, 4, 0 },
    { "POLYGON ((0 0, 12 0, 12 5, 7 5, 7 9, 0 9, 0 0))", 88, 42, 5, 1 },
    { "POLYGON ((0 0, 10 0, 10 8, 7 8, 7 3, 3 3, 3 8, 0 8, 0 0))", 60, 46, 6, 2 },
  };
  static const double distances[] = { 0.1, 0.3, 0.5 };
  for (gsize i = 0; i < G_N_ELEMENTS (figures) * 3; i++)
    {
      double r = distances[i % 3], r2 = r * r;
      g_autoptr (OxRegion) figure = ox_test_region (figures[i / 3].wkt);
      g_autoptr (OxRegion) rounded = ox_region_offset (figure, -r, TRUE);
      g_autoptr (OxRegion) mitred = ox_region_offset (figure, -r, FALSE);
      double disc = figures[i / 3].area - figures[i / 3].perimeter * r + figures[i / 3].outward * r2
                    - figures[i / 3].inner * 8 * sin (G_PI / 32) * r2;
      double inset
          = figures[i / 3].area - figures[i / 3].perimeter * r + (figures[i / 3].outward - figures[i / 3].inner) * r2;
      ox_test_near (ox_region_area (rounded), disc, 1e-6);
      ox_test_near (ox_region_area (mitred), inset, 1e-9);
    }
  g_autoptr (OxRegion) triangle = ox_test_region ("POLYGON ((0 0, 3 0, 0 4, 0 0))");
  g_autoptr (OxRegion) smaller = ox_region_offset (triangle, -0.3, FALSE);
  g_autoptr (OxRegion) gone = ox_region_offset (triangle, -1.01, TRUE);
  ox_test_near (ox_region_area (smaller), 2.94, 1e-9);
  g_assert_true (ox_region_is_empty (gone));
}

/* Eight columns of 0.4 m and the walls, kept off by 0.1 m: 1.60 + 6.36 m2 is lost (mitred). A corridor narrower than 2
 * r vanishes and leaves two rooms. */
static void
test_offset_bands_and_corridors (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  for (int i = 0; i < 8; i++)
    {
      g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 4 + 4 * (i % 4), 4 + 4 * (i / 4) }, 0.4, 0.4, 0);
      g_autoptr (OxRegion) column = ox_region_new_ring (ring);
      OxRegion *left = ox_region_difference (floor, column);
      ox_region_unref (floor);
      floor = left;
    }
  g_autoptr (OxRegion) kept = ox_region_offset (floor, -0.1, FALSE);
  ox_test_near (ox_region_area (floor) - ox_region_area (kept), 7.96, 1e-9);
  g_autoptr (OxRegion) rooms
      = ox_test_region ("POLYGON ((0 0, 4 0, 4 2, 8 2, 8 0, 12 0, 12 5, 8 5, 8 3, 4 3, 4 5, 0 5, 0 0))");
  g_autoptr (OxRegion) apart = ox_region_offset (rooms, -0.6, FALSE);
  g_autoptr (OxRegion) joined = ox_region_offset (rooms, -0.4, FALSE);
  g_assert_cmpuint (apart->n_parts, ==, 2);
  ox_test_near (ox_region_area (apart), 2 * 2.8 * 3.8, 1e-9);
  g_assert_cmpuint (joined->n_parts, ==, 1);
}

typedef struct
{
  OxRegion *a, *b, *both;
} Work;

static gpointer
intersect_often (gpointer data)
{
  Work *work = data;
  for (int i = 0; i < 20; i++)
    {
      g_autoptr (OxRegion) both = ox_region_intersection (work->a, work->b);
      g_assert_true (ox_test_same_bytes (both, work->both));
    }
  return NULL;
}

/* One context a thread: the same bytes from all of them, at the same time. */
static void
test_threads (void)
{
  g_autoptr (OxRing) ring_a = ox_ring_new_circle ((OxPoint){ 0, 0 }, 20, TRUE);
  g_autoptr (OxRing) ring_b = ox_ring_new_rectangle ((OxPoint){ 10, 3 }, 30, 12, 0.3);
  g_autoptr (OxRegion) a = ox_region_new_ring (ring_a);
  g_autoptr (OxRegion) b = ox_region_new_ring (ring_b);
  g_autoptr (OxRegion) both = ox_region_intersection (a, b);
  Work work = { a, b, both };
  GThread *threads[4];
  for (int i = 0; i < 4; i++)
    threads[i] = g_thread_new (NULL, intersect_often, &work);
  for (int i = 0; i < 4; i++)
    g_thread_join (threads[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/region-algebra/two-squares", test_two_squares);
  g_test_add_func ("/geometry/region-algebra/touching", test_touching);
  g_test_add_func ("/geometry/region-algebra/with-nothing", test_with_nothing);
  g_test_add_func ("/geometry/region-algebra/coinciding-but-for-rounding", test_coinciding_but_for_rounding);
  g_test_add_func ("/geometry/region-algebra/turned-there-and-back", test_turned_there_and_back);
  g_test_add_func ("/geometry/region-algebra/areas-add-up", test_areas_add_up);
  g_test_add_func ("/geometry/region-algebra/points-agree", test_points_agree);
  g_test_add_func ("/geometry/region-algebra/union-many", test_union_many);
  g_test_add_func ("/geometry/region-algebra/offset/outward", test_offset_outward);
  g_test_add_func ("/geometry/region-algebra/offset/inward", test_offset_inward);
  g_test_add_func ("/geometry/region-algebra/offset/offset-again", test_offset_again);
  g_test_add_func ("/geometry/region-algebra/offset/bands-and-corridors", test_offset_bands_and_corridors);
  g_test_add_func ("/geometry/region-algebra/threads", test_threads);
  return g_test_run ();
}
