/* Oxturn: plan/strip-grid against looking at every strip.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/strip-grid.h"
#include "support/ox-test.h"

static OxStrip
random_strip (void)
{
  OxStrip strip = { .width = 0.21, .coat = (guint) g_test_rand_int_range (1, 3) };
  double length = g_test_rand_double_range (0.5, 12);
  strip.a = (OxPoint){ g_test_rand_double_range (-20, 20), g_test_rand_double_range (-20, 20) };
  strip.heading = g_test_rand_int_range (0, 2) ? g_test_rand_double_range (0, 2 * G_PI) : g_test_rand_int_range (0, 4) * G_PI / 2;
  strip.b = (OxPoint){ strip.a.x + length * cos (strip.heading), strip.a.y + length * sin (strip.heading) };
  return strip;
}

/* Distance along and across by the corners of what is covered. */
static gboolean
lies_on (const OxStrip *strip, OxPoint p)
{
  OxPoint corners[4];
  ox_strip_corners (strip, 0.08, corners);
  g_autoptr (OxRegion) covered = ox_region_new_points (corners, 4);
  return ox_region_contains (covered, p);
}

static void
as_one_by_one (void)
{
  enum { STRIPS = 60 };
  OxStrip strips[STRIPS];
  for (guint i = 0; i < STRIPS; i++)
    strips[i] = random_strip ();
  g_autoptr (OxStripGrid) grid = ox_strip_grid_new (strips, STRIPS, 0.08);
  guint met = 0;
  for (guint k = 0; k < 3000; k++)
    {
      OxPoint p = { g_test_rand_double_range (-24, 24), g_test_rand_double_range (-24, 24) };
      guint coat = 1 + k % 2, found[2], expected[2] = { G_MAXUINT, G_MAXUINT }, n = 0;
      for (guint i = 0; i < STRIPS && n < 2; i++)
        if (strips[i].coat == coat && lies_on (&strips[i], p))
          expected[n++] = i;
      ox_strip_grid_at (grid, p, coat, found);
      g_assert_cmpuint (found[0], ==, expected[0]);
      g_assert_cmpuint (found[1], ==, expected[1]);
      met += n;
    }
  g_assert_cmpuint (met, >, 5);
}

static void
none (void)
{
  guint found[2];
  g_autoptr (OxStripGrid) grid = ox_strip_grid_new (NULL, 0, 0.08);
  ox_strip_grid_at (grid, (OxPoint){ 0, 0 }, 1, found);
  g_assert_cmpuint (found[0], ==, G_MAXUINT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/strip-grid/as-one-by-one", as_one_by_one);
  g_test_add_func ("/plan/strip-grid/none", none);
  return g_test_run ();
}
