/* Oxturn: tests/geometry/test-traverse
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The two traverses are printed in textbooks of surveying by coordinates (north, east, in feet); their areas and perimeters follow from those.
 */
#include "geometry/traverse.h"
#include "geometry/ring.h"

typedef struct
{
  guint n;
  OxPoint corners[5]; /* x east, y north */
  double area, perimeter;
} Published;

static const Published published[] = {
  { 4,
    { { 2000.000, 500.000 }, { 1561.426, 323.614 }, { 1488.321, 526.996 }, { 1686.956, 719.336 } },
    102935.7226,
    1347.56988 },
  { 5,
    { { 1259.97, 406.31 }, { 1489.47, 235.12 }, { 1126.40, 65.81 }, { 942.04, 317.89 }, { 1282.54, 675.32 } },
    140493.1069,
    1762.83564 },
};

/* The legs as a tape and a compass would have given them, each a little wrong by @error and @error_deg. */
static GArray *
walk (const Published *from, double error, double error_deg)
{
  OxLeg legs[5];
  for (guint i = 0; i < from->n; i++)
    {
      OxPoint to = ox_point_sub (from->corners[(i + 1) % from->n], from->corners[i]);
      double odd = i % 2 ? -1 : 1;
      legs[i] = (OxLeg){ hypot (to.x, to.y) + error * odd, atan2 (to.y, to.x) * 180 / G_PI + error_deg * (i == 0) };
    }
  return ox_traverse_points (from->corners[0], legs, from->n);
}

static double
area_of (const GArray *points)
{
  double twice = 0;
  for (guint i = 0; i + 1 < points->len; i++)
    twice += ox_point_cross (g_array_index (points, OxPoint, i), g_array_index (points, OxPoint, i + 1));
  return fabs (twice) / 2;
}

static void
test_published (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (published); i++)
    {
      g_autoptr (GArray) points = walk (&published[i], 0, 0);
      g_assert_cmpfloat (ox_traverse_gap (points), <, 1e-6);
      g_assert_cmpfloat_with_epsilon (ox_traverse_length (points), published[i].perimeter, 1e-5);
      g_assert_cmpfloat_with_epsilon (area_of (points), published[i].area, 1e-3);
    }
}

/* Spread, the chain closes, begins where it began, and no corner has moved further than the error was. */
static void
test_spread (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (published); i++)
    {
      g_autoptr (GArray) raw = walk (&published[i], 0.2, 0.1);
      g_autoptr (GArray) points = g_array_copy (raw);
      double gap = ox_traverse_gap (raw), so_far = 0;
      g_assert_cmpfloat (gap, >, 0.2);
      ox_traverse_spread (points);
      g_assert_cmpfloat (ox_traverse_gap (points), <, 1e-9);
      for (guint k = 0; k < raw->len; k++)
        {
          OxPoint before = g_array_index (raw, OxPoint, k);
          if (k > 0)
            so_far += ox_point_distance (before, g_array_index (raw, OxPoint, k - 1));
          g_assert_cmpfloat_with_epsilon (ox_point_distance (before, g_array_index (points, OxPoint, k)),
                                          gap * so_far / ox_traverse_length (raw), 1e-9);
        }
    }
}

/* The example of the header. */
static void
test_shares (void)
{
  const OxLeg legs[] = { { 30, 0 }, { 10, 180 } };
  g_autoptr (GArray) points = ox_traverse_points ((OxPoint){ 1, 2 }, legs, 2);
  g_assert_cmpfloat_with_epsilon (ox_traverse_gap (points), 20, 1e-9);
  ox_traverse_spread (points);
  g_assert_cmpfloat_with_epsilon (g_array_index (points, OxPoint, 1).x, 31 - 15, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (points, OxPoint, 2).x, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (points, OxPoint, 2).y, 2, 1e-9);
}

static void
test_nothing (void)
{
  g_autoptr (GArray) points = ox_traverse_points ((OxPoint){ 1, 2 }, NULL, 0);
  ox_traverse_spread (points);
  g_assert_cmpuint (points->len, ==, 1);
  g_assert_cmpfloat (ox_traverse_gap (points), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/traverse/published", test_published);
  g_test_add_func ("/geometry/traverse/spread", test_spread);
  g_test_add_func ("/geometry/traverse/shares", test_shares);
  g_test_add_func ("/geometry/traverse/nothing", test_nothing);
  return g_test_run ();
}
