/* Oxturn: tests of geometry/region: values, normal form, measures
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/region.h"
#include "support/ox-test.h"

static void
assert_normal (const OxRegion *region)
{
  guint n_points = 0;
  for (guint i = 0; i < region->n_rings; i++)
    {
      const OxRegionRing *ring = &region->rings[i];
      const OxPoint *p = region->points + ring->start;
      guint part_before = i > 0 ? region->rings[i - 1].part : 0;
      g_assert_cmpuint (ring->start, ==, n_points);
      g_assert_cmpuint (ring->n, >=, 3);
      g_assert_cmpuint (ring->part, ==, i > 0 && !ring->hole ? part_before + 1 : part_before);
      g_assert_true (i > 0 || !ring->hole);
      double twice = 0;
      for (guint k = 0; k < ring->n; k++)
        {
          OxPoint next = p[(k + 1) % ring->n];
          twice += ox_point_cross (ox_point_sub (p[k], p[0]), ox_point_sub (next, p[0]));
          g_assert_true (p[0].y < p[k].y || (p[0].y == p[k].y && p[0].x <= p[k].x));
          g_assert_false (p[k].x == next.x && p[k].y == next.y);
        }
      g_assert_true (ring->hole ? twice < 0 : twice > 0);
      n_points += ring->n;
      /* Sorted among its like. */
      const OxRegionRing *before = NULL;
      for (guint j = 0; j < i; j++)
        if (region->rings[j].hole == ring->hole && (!ring->hole || region->rings[j].part == ring->part))
          before = &region->rings[j];
      const OxPoint *q = before ? region->points + before->start : NULL;
      g_assert_true (!q || q->y < p->y || (q->y == p->y && q->x <= p->x));
    }
  g_assert_cmpuint (n_points, ==, region->n_points);
  g_assert_cmpuint (region->n_parts, ==, region->n_rings ? region->rings[region->n_rings - 1].part + 1 : 0);
}

static void
test_empty (void)
{
  g_autoptr (OxRegion) none = ox_region_new_empty ();
  g_assert_true (ox_region_is_empty (none));
  g_assert_cmpfloat (ox_region_area (none), ==, 0);
  g_assert_true (ox_box_is_empty (ox_region_box (none)));
  g_assert_false (ox_region_contains (none, (OxPoint){ 0, 0 }));
  g_autoptr (OxRegion) flat = ox_region_new_points ((OxPoint[]){ { 0, 0 }, { 4, 0 }, { 9, 0 } }, 3);
  g_assert_true (ox_region_is_empty (flat));
  g_autoptr (OxRegion) turned = ox_region_turn (none, 1);
  g_assert_true (ox_region_is_empty (turned));
}

/* The same outline from any corner, in either direction, with a corner typed twice. */
static void
test_same_bytes_from_any_start (void)
{
  for (int i = 0; i < 200; i++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autofree OxPoint *p = g_new (OxPoint, ring->n + 1);
      guint first = (guint) g_test_rand_int_range (0, (gint) ring->n);
      gboolean back = g_test_rand_bit ();
      for (guint k = 0; k <= ring->n; k++)
        p[k] = ring->points[(first + (back ? ring->n * 2 - k : k)) % ring->n];
      g_autoptr (OxRegion) other = ox_region_new_points (p, ring->n + 1);
      assert_normal (region);
      g_assert_true (ox_test_same_bytes (region, other));
      ox_test_near (ox_region_area (region), fabs (ox_ring_area (ring)), 1e-9);
    }
}

static void
test_new_rings (void)
{
  static const struct
  {
    const char *what;
    const char *wkt;
    guint parts, rings;
    double area, perimeter;
  } cases[] = {
    { "two columns",
      "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (14 5, 15 5, 15 6, 14 6, 14 5), (5 5, 6 5, 6 6, 5 6, 5 5))", 1, 3, 238,
      72 },
    { "columns that share a side",
      "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (5 5, 6 5, 6 6, 5 6, 5 5), (6 5, 7 5, 7 6, 6 6, 6 5))", 1, 2, 238, 70 },
    { "columns that cross",
      "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (5 5, 8 5, 8 6, 5 6, 5 5), (6 4, 7 4, 7 7, 6 7, 6 4))", 1, 2, 235, 76 },
    { "column on the wall", "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (5 0, 6 0, 6 1, 5 1, 5 0))", 1, 1, 239, 66 },
    { "column through the wall", "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (5 -1, 6 -1, 6 1, 5 1, 5 -1))", 1, 1, 239,
      66 },
    { "wall to wall", "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (8 -1, 10 -1, 10 13, 8 13, 8 -1))", 2, 2, 216, 84 },
    { "all of it", "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (-1 -1, 21 -1, 21 13, -1 13, -1 -1))", 0, 0, 0, 0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (OxRegion) region = ox_test_region (cases[i].wkt);
      g_test_message ("%s", cases[i].what);
      assert_normal (region);
      g_assert_cmpuint (region->n_parts, ==, cases[i].parts);
      g_assert_cmpuint (region->n_rings, ==, cases[i].rings);
      ox_test_near (ox_region_area (region), cases[i].area, 1e-9);
      ox_test_near (ox_region_perimeter (region), cases[i].perimeter, 1e-9);
    }
}

/* 20 x 12 m less eight columns of 0.4 m: 238.72 m2, 76.8 m of edge. */
static void
test_hall_with_columns (void)
{
  g_autoptr (OxRing) hall = ox_test_ring ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))");
  g_autoptr (GPtrArray) columns = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_ring_unref);
  for (int i = 0; i < 8; i++)
    {
      OxPoint middle = { 4 + 4 * (i % 4), 4 + 4 * (i / 4) };
      g_ptr_array_add (columns, ox_ring_new_rectangle (middle, 0.4, 0.4, 0));
    }
  g_autoptr (OxRegion) floor = ox_region_new_rings (hall, (const OxRing *const *) columns->pdata, 8);
  assert_normal (floor);
  g_assert_cmpuint (floor->n_rings, ==, 9);
  ox_test_near (ox_region_area (floor), 238.72, 1e-9);
  ox_test_near (ox_region_perimeter (floor), 76.8, 1e-9);
  g_assert_false (ox_region_contains (floor, (OxPoint){ 4, 4 }));
  g_assert_true (ox_region_contains (floor, (OxPoint){ 4.2, 4 }));
  g_assert_true (ox_region_contains (floor, (OxPoint){ 6, 6 }));
}

static void
test_parts_are_sorted (void)
{
  g_autoptr (OxRegion) region = ox_test_region ("POLYGON ((9 5, 8 6, 8 5, 9 5)) POLYGON ((5 1, 6 1, 6 2, 5 1))"
                                                "POLYGON ((1 5, 3 5, 3 7, 1 5)) POLYGON ((0 1, 2 1, 1 2, 0 1))");
  assert_normal (region);
  g_assert_cmpuint (region->n_parts, ==, 4);
  static const double starts[] = { 0, 5, 1, 8 };
  double sum = 0;
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (region, i);
      g_assert_cmpuint (part->n_parts, ==, 1);
      g_assert_cmpfloat (part->points[0].x, ==, starts[i]);
      sum += ox_region_area (part);
    }
  ox_test_near (sum, ox_region_area (region), 1e-12);
}

static void
test_turn (void)
{
  g_autoptr (OxRegion) region = ox_test_region ("POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0), (5 5, 6 5, 6 6, 5 6, 5 5))");
  g_autoptr (OxRegion) quarter = ox_region_turn (region, G_PI / 2);
  g_autoptr (OxRegion) wanted
      = ox_test_region ("POLYGON ((0 0, 0 20, -12 20, -12 0, 0 0), (-5 5, -5 6, -6 6, -6 5, -5 5))");
  ox_test_near (ox_test_difference_area (quarter, wanted), 0, 1e-9);
  for (int i = 0; i < 100; i++)
    {
      double angle = g_test_rand_double_range (-7, 7);
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) straight = ox_region_new_ring (ring);
      g_autoptr (OxRegion) turned = ox_region_turn (straight, angle);
      g_autoptr (OxRegion) back = ox_region_turn (turned, -angle);
      assert_normal (turned);
      ox_test_near (ox_region_area (turned), ox_region_area (straight), 1e-9);
      ox_test_near (ox_region_perimeter (turned), ox_region_perimeter (straight), 1e-9);
      ox_test_near (ox_test_difference_area (back, straight), 0, 1e-9);
    }
}

/* Holes that are filled add their area; the others stay. */
static void
test_fill_holes (void)
{
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (1 1, 1 2, 2 2, 2 1, 1 1), (4 4, 4 7, 7 7, 7 4, 4 4))");
  const gboolean none[3] = { FALSE, FALSE, FALSE }, first[3] = { FALSE, TRUE, FALSE }, all[3] = { TRUE, TRUE, TRUE };
  g_autoptr (OxRegion) same = ox_region_fill_holes (floor, none);
  g_autoptr (OxRegion) one = ox_region_fill_holes (floor, first);
  g_autoptr (OxRegion) whole = ox_region_fill_holes (floor, all);
  ox_test_near (ox_region_area (same), 71, 1e-12);
  ox_test_near (ox_region_area (one), 72, 1e-12);
  ox_test_near (ox_region_area (whole), 81, 1e-12);
}

/* Regions are let go on any thread; the last one frees. */
static void
test_counted (void)
{
  OxRegion *region = ox_test_region ("POLYGON ((0 0, 3 0, 0 4, 0 0))");
  OxRegion *same = ox_region_ref (region);
  g_assert_true (same == region);
  ox_region_unref (region);
  ox_test_near (ox_region_area (same), 6, 1e-12);
  ox_region_unref (same);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/region/empty", test_empty);
  g_test_add_func ("/geometry/region/normal/same-bytes-from-any-start", test_same_bytes_from_any_start);
  g_test_add_func ("/geometry/region/new-rings", test_new_rings);
  g_test_add_func ("/geometry/region/hall-with-columns", test_hall_with_columns);
  g_test_add_func ("/geometry/region/normal/parts-are-sorted", test_parts_are_sorted);
  g_test_add_func ("/geometry/region/turn", test_turn);
  g_test_add_func ("/geometry/region/fill-holes", test_fill_holes);
  g_test_add_func ("/geometry/region/counted", test_counted);
  return g_test_run ();
}
