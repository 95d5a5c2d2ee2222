/* Oxturn: tests of trade/production
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All expected values are worked by hand from the formulas in the header; feet and inches where they come out round.
 */
#include "trade/production.h"
#include <math.h>

#define near g_assert_cmpfloat_with_epsilon

typedef struct
{
  double width, blast_width, min_overlap;
  guint lanes;
  double overlap;
} LaneCase;

static const LaneCase lane_cases[] = {
  { 354, 10, 1, 40, 1.1794872 },         /* 29 ft 6 in, all in inches: 344 / 9 = 38.2 -> 39 + 1 */
  { 11.8, 0.254, 0.025, 52, 0.0276078 }, /* 11.546 / 0.229 = 50.4 */
  { 5.0, 0.25, 0.03, 23, 0.0340909 },    /* 4.75 / 0.22 = 21.6 */
  { 6.1, 0.38, 0.05, 19, 0.0622222 },    /* 5.72 / 0.33 = 17.3 */
  { 0.30, 0.25, 0.02, 2, 0.200 },
};

static void
test_lanes_examples (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (lane_cases); i++)
    {
      const LaneCase *c = &lane_cases[i];
      guint n = ox_production_lanes (c->width, c->blast_width, c->min_overlap);
      g_assert_cmpuint (n, ==, c->lanes);
      near (ox_production_overlap (c->width, c->blast_width, n), c->overlap, 1e-6);
    }
  near (ox_production_spacing (11.8, 0.254, 52), 0.226392, 1e-6);
}

static void
test_lanes_single (void)
{
  g_assert_cmpuint (ox_production_lanes (0.25, 0.25, 0.02), ==, 1);
  g_assert_cmpuint (ox_production_lanes (0.10, 0.25, 0.02), ==, 1);
  g_assert_cmpfloat (ox_production_spacing (0.25, 0.25, 1), ==, 0);
  g_assert_cmpfloat (ox_production_overlap (0.25, 0.25, 1), ==, 0);
}

/* W = w + k (w - o) is k + 1 lanes exactly, however the division rounds; a tenth of a millimetre more needs one more.
 */
static void
test_lanes_whole_spacings (void)
{
  static const double widths[][2] = { { 0.21, 0.02 }, { 0.33, 0.03 }, { 0.5, 0.04 }, { 0.25, 0.025 }, { 0.3, 0.1 } };
  for (guint m = 0; m < G_N_ELEMENTS (widths); m++)
    for (guint k = 1; k <= 5000; k++)
      {
        double w = widths[m][0], o = widths[m][1];
        double width = w + k * (w - o);
        g_assert_cmpuint (ox_production_lanes (width, w, o), ==, k + 1);
        g_assert_cmpuint (ox_production_lanes (width + 0.0001, w, o), ==, k + 2);
      }
}

/* The even grid covers the width from side to side, overlaps enough, and one lane fewer would not do. */
static void
test_lanes_properties (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      double w = g_test_rand_double_range (0.1, 1.3);
      double o = g_test_rand_double_range (0, w * 0.9);
      double width = g_test_rand_double_range (w * 1.01, 120);
      guint n = ox_production_lanes (width, w, o);
      double spacing = ox_production_spacing (width, w, n);
      near (spacing * (n - 1) + w, width, 1e-9);
      near (spacing + ox_production_overlap (width, w, n), w, 1e-9);
      g_assert_cmpfloat (ox_production_overlap (width, w, n), >=, o - 2e-6);
      if (n > 2)
        g_assert_cmpfloat (ox_production_overlap (width, w, n - 1), <, o);
    }
}

static void
test_minutes (void)
{
  near (ox_production_minutes (40 * 29.5, 20), 59.0, 1e-12);
  near (ox_production_field_minutes (40 * 29.5, 20, 39, 20), 72.0, 1e-12);
  near (ox_production_efficiency (59, 72), 0.8194, 5e-5);
  near (29.5 * 29.5 / (ox_production_field_minutes (40 * 29.5, 20, 39, 20) / 60), 725.2, 0.05);
}

static void
test_area_per_hour (void)
{
  near (ox_production_area_per_hour (10.0 / 12, 1.0 / 12, 20, 1.00), 900, 1e-9);
  near (ox_production_area_per_hour (10.0 / 12, 1.0 / 12, 20, 0.75), 675, 1e-9);
  near (ox_production_area_per_hour (0.254, 0.025, 6, 1.00), 82.44, 1e-9);
  near (ox_production_area_per_hour (0.254, 0.025, 6, 0.75), 61.83, 1e-9);
}

/* 20 m by 12 m less eight columns is 238.72 m2, of which 7.96 m2 lie too near to walls and columns and go by hand. */
static void
test_columned_hall (void)
{
  double rate = ox_production_area_per_hour (0.254, 0.025, 6, 0.75);
  near (238.72 / rate, 3.861, 5e-4);
  near (230.76 / rate, 3.732, 5e-4);
  near (230.76 / rate + 7.96 / 4, 5.722, 5e-4);
}

static void
test_double_share (void)
{
  double gross = 3 * 10 * 0.25, covered = 10 * (3 * 0.25 - 2 * 0.05);
  near (covered, 6.5, 1e-12);
  near (ox_production_double_share (gross, covered), 0.1538, 5e-5);
  g_assert_cmpfloat (ox_production_double_share (6.5, 6.5), ==, 0);
}

static void
test_days (void)
{
  g_assert_cmpuint (ox_production_days (50000, 4200), ==, 12);
  g_assert_cmpuint (ox_production_days (8400, 4200), ==, 2);
  g_assert_cmpuint (ox_production_days (0, 4200), ==, 0);
}

/* 6 m at 30 m/min take 12 s, and the swing 15 s. */
static void
test_move (void)
{
  near (ox_production_move_seconds (6, 30, 15), 27, 1e-12);
  near (ox_production_move_seconds (6, 30, 0), 12, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/production/lanes/examples", test_lanes_examples);
  g_test_add_func ("/trade/production/lanes/single", test_lanes_single);
  g_test_add_func ("/trade/production/lanes/whole-spacings-gain-no-lane", test_lanes_whole_spacings);
  g_test_add_func ("/trade/production/lanes/grid-covers-evenly", test_lanes_properties);
  g_test_add_func ("/trade/production/minutes/strips-and-turns", test_minutes);
  g_test_add_func ("/trade/production/area-per-hour/examples", test_area_per_hour);
  g_test_add_func ("/trade/production/area-per-hour/columned-hall", test_columned_hall);
  g_test_add_func ("/trade/production/double-share/three-strips", test_double_share);
  g_test_add_func ("/trade/production/days/begun-ones-count", test_days);
  g_test_add_func ("/trade/production/move/example", test_move);
  return g_test_run ();
}
