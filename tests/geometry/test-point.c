/* Oxturn: tests of geometry/point
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/point.h"
#include "support/ox-test.h"

static void
test_snap (void)
{
  g_assert_cmpfloat (ox_snap (1.00004), ==, 1);
  g_assert_cmpfloat (ox_snap (1.00006), ==, 1.0001);
  g_assert_cmpfloat (ox_snap (-9999.99996), ==, -10000);
  g_assert_false (signbit (ox_snap (-0.00001)));
  for (int i = 0; i < 1000; i++)
    {
      double v = ox_snap (g_test_rand_double_range (-OX_COORD_MAX, OX_COORD_MAX));
      g_assert_cmpfloat (ox_snap (v), ==, v);
      g_assert_cmpfloat (ox_snap (v + 0.4 * OX_GRID), ==, v);
      g_assert_cmpfloat (ox_snap (v - 0.4 * OX_GRID), ==, v);
    }
}

static void
test_segment_distance (void)
{
  OxPoint a = { 1, 1 }, b = { 5, 4 }; /* 3-4-5: length 5 */
  OxPoint nearest;
  ox_test_near (ox_point_segment_distance ((OxPoint){ 0, 6.5 }, a, b, &nearest), 5, 1e-12);
  ox_test_near (nearest.x, 3, 1e-12);
  ox_test_near (nearest.y, 2.5, 1e-12);
  ox_test_near (ox_point_segment_distance ((OxPoint){ 8, 8 }, a, b, &nearest), 5, 1e-12);
  g_assert_true (nearest.x == b.x && nearest.y == b.y);
  ox_test_near (ox_point_segment_distance ((OxPoint){ -2, -3 }, a, b, &nearest), 5, 1e-12);
  g_assert_true (nearest.x == a.x && nearest.y == a.y);
  ox_test_near (ox_point_segment_distance ((OxPoint){ 4, 5 }, a, a, NULL), 5, 1e-12);
}

/* Ten kilometres away and one grid step off the line of two points 14 km apart: nothing a double's product would show.
 */
static void
test_orient_is_exact (void)
{
  OxPoint a = { -10000, -10000 }, b = { 10000, 10000 };
  g_assert_cmpint (ox_point_orient (a, b, (OxPoint){ 9999.9999, 9999.9999 }), ==, 0);
  g_assert_cmpint (ox_point_orient (a, b, (OxPoint){ 9999.9998, 9999.9999 }), ==, 1);
  g_assert_cmpint (ox_point_orient (a, b, (OxPoint){ 9999.9999, 9999.9998 }), ==, -1);
  g_assert_cmpint (ox_point_orient ((OxPoint){ 0, 0 }, (OxPoint){ 0.3, 0.1 }, (OxPoint){ 0.9, 0.3 }), ==, 0);
}

static void
test_orient_symmetry (void)
{
  for (int i = 0; i < 2000; i++)
    {
      OxPoint p[3];
      for (int k = 0; k < 3; k++)
        p[k]
            = (OxPoint){ ox_snap (g_test_rand_int_range (-3, 4) * 0.1), ox_snap (g_test_rand_int_range (-3, 4) * 0.1) };
      int turn = ox_point_orient (p[0], p[1], p[2]);
      g_assert_cmpint (ox_point_orient (p[1], p[2], p[0]), ==, turn);
      g_assert_cmpint (ox_point_orient (p[1], p[0], p[2]), ==, -turn);
    }
}

static void
test_segments_cross (void)
{
  static const struct
  {
    OxPoint a, b, c, d;
    gboolean cross;
  } cases[] = {
    { { 0, 0 }, { 4, 4 }, { 0, 4 }, { 4, 0 }, TRUE },            /* across */
    { { 0, 0 }, { 4, 0 }, { 2, 0 }, { 2, 3 }, TRUE },            /* ends on */
    { { 0, 0 }, { 4, 0 }, { 4, 0 }, { 6, 3 }, TRUE },            /* corner to corner */
    { { 0, 0 }, { 4, 0 }, { 3, 0 }, { 6, 0 }, TRUE },            /* overlap */
    { { 0, 0 }, { 4, 0 }, { 4, 0 }, { 6, 0 }, TRUE },            /* end to end */
    { { 0, 0 }, { 4, 0 }, { 1, 0 }, { 2, 0 }, TRUE },            /* one in the other */
    { { 0, 0 }, { 4, 0 }, { 4.0001, 0 }, { 6, 0 }, FALSE },      /* a grid step apart */
    { { 0, 0 }, { 4, 0 }, { 2, 0.0001 }, { 2, 3 }, FALSE },      /* a grid step short */
    { { 0, 0 }, { 4, 0 }, { 0, 0.0001 }, { 4, 0.0001 }, FALSE }, /* beside */
    { { 0, 0 }, { 1, 1 }, { 3, 0 }, { 0, 3 }, FALSE },           /* lines cross, segments do not */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      OxPoint a = cases[i].a, b = cases[i].b, c = cases[i].c, d = cases[i].d;
      g_test_message ("case %" G_GSIZE_FORMAT, i);
      g_assert_true (ox_segments_cross (a, b, c, d) == cases[i].cross);
      g_assert_true (ox_segments_cross (d, c, b, a) == cases[i].cross);
      g_assert_true (ox_segments_cross (b, a, c, d) == cases[i].cross);
    }
}

static void
test_box (void)
{
  OxBox box = OX_BOX_EMPTY;
  g_assert_true (ox_box_is_empty (box));
  ox_box_add (&box, (OxPoint){ 3, -1 });
  g_assert_false (ox_box_is_empty (box));
  ox_box_add (&box, (OxPoint){ -2, 5 });
  g_assert_true (box.x0 == -2 && box.y0 == -1 && box.x1 == 3 && box.y1 == 5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/point/snap", test_snap);
  g_test_add_func ("/geometry/point/segment-distance", test_segment_distance);
  g_test_add_func ("/geometry/point/orient/is-exact", test_orient_is_exact);
  g_test_add_func ("/geometry/point/orient/symmetry", test_orient_symmetry);
  g_test_add_func ("/geometry/point/segments-cross", test_segments_cross);
  g_test_add_func ("/geometry/point/box", test_box);
  return g_test_run ();
}
