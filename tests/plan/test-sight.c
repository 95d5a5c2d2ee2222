/* Oxturn: plan/sight against lines looked at point by point.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/sight.h"
#include "support/ox-test.h"

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

static gboolean
stays_inside (const OxRegion *region, OxPoint a, OxPoint b, guint steps)
{
  for (guint i = 0; i <= steps; i++)
    {
      double t = (double) i / steps;
      if (!ox_region_contains (region, (OxPoint){ a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t }))
        return FALSE;
    }
  return TRUE;
}

/* What is free lies wholly on the floor; what is not leaves a floor that is shrunk by 1 mm. */
static void
random_lines (void)
{
  guint seen = 0, hidden = 0;
  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (OxRegion) shrunk = ox_region_offset (region, -0.001, FALSE);
      g_autoptr (OxRegion) grown = ox_region_offset (region, 0.001, FALSE);
      g_autoptr (OxSight) sight = ox_sight_new (region);
      for (guint i = 0; i < 30; i++)
        {
          OxPoint a = point_inside (region), b = point_inside (region);
          if (ox_sight_is_free (sight, a, b))
            {
              g_assert_true (stays_inside (grown, a, b, 2000));
              seen++;
            }
          else
            {
              g_assert_false (stays_inside (shrunk, a, b, 50000));
              hidden++;
            }
        }
    }
  g_assert_cmpuint (seen, >, 100);
  g_assert_cmpuint (hidden, >, 100);
}

/* A column of 2 m about (5, 5): past its corners and along its faces is free, from corner to corner through it is not.
 */
static void
touching_lines (void)
{
  g_autoptr (OxRegion) region = ox_test_region ("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (4 4, 6 4, 6 6, 4 6, 4 4))");
  g_autoptr (OxSight) sight = ox_sight_new (region);
  OxPoint low = { 4, 4 }, right = { 6, 4 }, high = { 6, 6 };
  g_assert_true (ox_sight_is_free (sight, low, right));
  g_assert_true (ox_sight_is_free (sight, (OxPoint){ 0, 4 }, (OxPoint){ 10, 4 }));
  g_assert_true (ox_sight_is_free (sight, (OxPoint){ 2, 6 }, (OxPoint){ 6, 2 }));
  g_assert_true (ox_sight_is_free (sight, (OxPoint){ 0, 0 }, (OxPoint){ 10, 0 }));
  g_assert_true (ox_sight_is_free (sight, (OxPoint){ 0, 0 }, low));
  g_assert_false (ox_sight_is_free (sight, low, high));
  g_assert_false (ox_sight_is_free (sight, (OxPoint){ 0, 0 }, (OxPoint){ 10, 10 }));
  g_assert_false (ox_sight_is_free (sight, (OxPoint){ 0, 5 }, (OxPoint){ 10, 5.5 }));
}

static void
through_a_slit (void)
{
  g_autoptr (OxRegion) region
      = ox_test_region ("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (4 0.001, 6 0.001, 6 9, 4 9, 4 0.001))");
  g_autoptr (OxSight) sight = ox_sight_new (region);
  g_assert_true (ox_sight_is_free (sight, (OxPoint){ 1, 0.0005 }, (OxPoint){ 9, 0.0005 }));
  g_assert_false (ox_sight_is_free (sight, (OxPoint){ 1, 0.0005 }, (OxPoint){ 9, 0.1 }));
  g_assert_true (ox_sight_is_free (sight, (OxPoint){ 1, 9.5 }, (OxPoint){ 9, 9.2 }));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/sight/what-is-free-lies-on-the-floor", random_lines);
  g_test_add_func ("/plan/sight/lines-may-touch-corners-and-sides", touching_lines);
  g_test_add_func ("/plan/sight/a-slit-lets-a-line-through", through_a_slit);
  return g_test_run ();
}
