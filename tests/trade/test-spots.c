/* Oxturn: tests of trade/spots
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/spots.h"

#define SQUARE_FOOT 0.09290304

static const OxSpotRule *
rule (const char *id)
{
  guint n;
  const OxSpotRule *rules = ox_spots_rules (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (rules[i].id, id))
      return &rules[i];
  g_assert_not_reached ();
}

/* Square feet, then spots by three for the first 5,000 ft2 and by three for the first 1,000 ft2 (ASTM F2170). */
static void
test_examples (void)
{
  static const guint rows[][3] = {
    { 900, 3, 3 },  { 1000, 3, 3 },   { 1001, 3, 4 },   { 5000, 3, 7 },
    { 5001, 4, 8 }, { 12500, 5, 15 }, { 20000, 6, 22 }, { 48000, 12, 50 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_assert_cmpuint (ox_spots_count (rule ("pull-off"), rows[i][0] * SQUARE_FOOT), ==, rows[i][1]);
      g_assert_cmpuint (ox_spots_count (rule ("humidity"), rows[i][0] * SQUARE_FOOT), ==, rows[i][2]);
    }
}

static void
test_profile (void)
{
  g_assert_cmpuint (ox_spots_count (rule ("profile"), 0), ==, 0);
  g_assert_cmpuint (ox_spots_count (rule ("profile"), 500 * SQUARE_FOOT), ==, 1);
  g_assert_cmpuint (ox_spots_count (rule ("profile"), 501 * SQUARE_FOOT), ==, 2);
}

/* Whole steps gain no spot by rounding, and more floor never asks for fewer. */
static void
test_whole_steps (void)
{
  const OxSpotRule *r = rule ("humidity");
  for (guint k = 0; k < 2000; k++)
    {
      double area = r->base_m2 + k * r->step_m2;
      g_assert_cmpuint (ox_spots_count (r, area), ==, 3 + k);
      g_assert_cmpuint (ox_spots_count (r, area + 0.01), ==, 4 + k);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/spots/count/examples", test_examples);
  g_test_add_func ("/trade/spots/count/profile-checks", test_profile);
  g_test_add_func ("/trade/spots/count/whole-steps-gain-none", test_whole_steps);
  return g_test_run ();
}
