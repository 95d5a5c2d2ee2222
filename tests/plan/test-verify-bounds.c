/* Oxturn: plan/verify-bounds: points, boxes, circles and lines against a square with a square hole.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The square reaches from 0 to 10, its hole from 4 to 6, both ways.
 */
#include "plan/verify-bounds.h"

static OxBounds *
holed_square (void)
{
  const OxPoint outer[4] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  const OxPoint inner[4] = { { 4, 4 }, { 6, 4 }, { 6, 6 }, { 4, 6 } };
  g_autoptr (OxRegion) square = ox_region_new_points (outer, 4);
  g_autoptr (OxRegion) hole = ox_region_new_points (inner, 4);
  g_autoptr (OxRegion) region = ox_region_difference (square, hole);
  return ox_bounds_new (region);
}

static void
points (void)
{
  g_autoptr (OxBounds) bounds = holed_square ();
  for (double y = -0.5; y < 11; y += 0.5)
    for (double x = -0.75; x < 11; x += 0.5)
      {
        gboolean in_hole = x > 4 && x < 6 && y >= 4 && y < 6;
        gboolean inside = x > 0 && x < 10 && y >= 0 && y < 10 && !in_hole;
        g_assert_true (ox_bounds_holds_point (bounds, (OxPoint){ x, y }) == inside);
      }
}

static void
boxes (void)
{
  const OxAxes plain = { { 0, 0 }, { 1, 0 } };
  const OxAxes turned = { { 5, 0 }, { M_SQRT1_2, M_SQRT1_2 } };
  g_autoptr (OxBounds) bounds = holed_square ();
  OxPoint at;
  g_assert_true (ox_bounds_holds_box (bounds, plain, (OxBox){ 0, 0, 4, 10 }, &at));
  g_assert_true (ox_bounds_holds_box (bounds, plain, (OxBox){ 0, 6, 10, 10 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, plain, (OxBox){ 0, 5.9, 10, 10 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, plain, (OxBox){ 3, 3, 7, 7 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, plain, (OxBox){ 4.5, 4.5, 5.5, 5.5 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, plain, (OxBox){ 11, 1, 12, 2 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, plain, (OxBox){ -1, -1, 11, 11 }, &at));
  /* From (5, 0) at 45 degrees: the corner (10, 5) is 5 sqrt 2 = 7.071 ahead, (6, 4) is 3 / sqrt 2 = 2.121 to the left.
   */
  g_assert_true (ox_bounds_holds_box (bounds, turned, (OxBox){ 3, -0.0, 7, 2.12 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, turned, (OxBox){ 3, -0.0, 7, 2.13 }, &at));
  g_assert_false (ox_bounds_holds_box (bounds, turned, (OxBox){ 3, -0.0, 7.1, 2.12 }, &at));
}

static void
circles (void)
{
  g_autoptr (OxBounds) bounds = holed_square ();
  OxPoint at;
  g_assert_true (ox_bounds_holds_circle (bounds, (OxPoint){ 2, 5 }, 1.999, &at));
  g_assert_false (ox_bounds_holds_circle (bounds, (OxPoint){ 2, 5 }, 2.001, &at));
  g_assert_true (ox_bounds_holds_circle (bounds, (OxPoint){ 2, 2 }, 1.999, &at));
  g_assert_false (ox_bounds_holds_circle (bounds, (OxPoint){ 5, 5 }, 0.5, &at));
  g_assert_false (ox_bounds_holds_circle (bounds, (OxPoint){ 12, 5 }, 0.5, &at));
}

static void
lines (void)
{
  g_autoptr (OxBounds) bounds = holed_square ();
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  const OxAxes turned = { { 0, 0 }, { M_SQRT1_2, M_SQRT1_2 } };
  ox_bounds_cut (bounds, turned, 0, (OxPiece){ -1, 20 }, pieces);
  const double expected[4] = { 0, 4 * G_SQRT2, 6 * G_SQRT2, 10 * G_SQRT2 };
  g_assert_cmpuint (pieces->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      OxPiece piece = g_array_index (pieces, OxPiece, i);
      g_assert_cmpfloat_with_epsilon (piece.a, expected[2 * i], 1e-9);
      g_assert_cmpfloat_with_epsilon (piece.b, expected[2 * i + 1], 1e-9);
    }
  ox_bounds_cut (bounds, turned, 8, (OxPiece){ -1, 20 }, pieces);
  g_assert_cmpuint (pieces->len, ==, 0);
}

static void
cutting (void)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (OxPiece));
  OxPiece all = { 0, 10 };
  g_array_append_val (pieces, all);
  ox_pieces_subtract (pieces, (OxPiece){ 2, 3 });
  ox_pieces_subtract (pieces, (OxPiece){ 2.5, 5 });
  ox_pieces_subtract (pieces, (OxPiece){ -1, 1 });
  ox_pieces_subtract (pieces, (OxPiece){ 9, 12 });
  ox_pieces_subtract (pieces, (OxPiece){ 20, 30 });
  g_assert_cmpuint (pieces->len, ==, 2);
  OxPiece first = g_array_index (pieces, OxPiece, 0), second = g_array_index (pieces, OxPiece, 1);
  g_assert_true (first.a == 1 && first.b == 2 && second.a == 5 && second.b == 9);
  ox_pieces_subtract (pieces, (OxPiece){ 0, 10 });
  g_assert_cmpuint (pieces->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-bounds/points", points);
  g_test_add_func ("/plan/verify-bounds/boxes", boxes);
  g_test_add_func ("/plan/verify-bounds/circles", circles);
  g_test_add_func ("/plan/verify-bounds/lines", lines);
  g_test_add_func ("/plan/verify-bounds/cutting", cutting);
  return g_test_run ();
}
