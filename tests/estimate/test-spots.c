/* Oxturn: tests of estimate/spots
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/spots.h"
#include "made.h"

/* 90 m2 ask for two checks; of 40 strips the middles of the halves are the ends of strip 10 and of strip 30. */
static void
test_two (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (GArray) spots = ox_spots_of (plan);
  g_assert_cmpuint (spots->len, ==, 2);
  g_assert_cmpuint (g_array_index (spots, OxSpot, 0).strip, ==, 10);
  g_assert_cmpuint (g_array_index (spots, OxSpot, 1).strip, ==, 30);
}

/* Of 42 strips the last 20 are a second coat of an area alone: checks are where the room's only coat is, half way along strips 6 and 17. */
static void
test_last_coat (void)
{
  g_autoptr (OxPlan) plan = made_plan (42, 9, "");
  for (guint i = 22; i < 42; i++)
    plan->strips[i].coat = 2;
  g_autoptr (GArray) spots = ox_spots_of (plan);
  g_assert_cmpuint (spots->len, ==, 2);
  g_assert_cmpuint (g_array_index (spots, OxSpot, 0).strip, ==, 6);
  g_assert_cmpuint (g_array_index (spots, OxSpot, 1).strip, ==, 17);
}

/* Every spot lies on its strip, in working order, and as many are there as the figure of the estimate says. */
static void
test_on_strips (void)
{
  for (guint n = 1; n < 200; n += 13)
    {
      g_autoptr (OxPlan) plan = made_plan (n, 45, "");
      g_autoptr (GArray) spots = ox_spots_of (plan);
      g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
      guint last = 1;
      ox_test_near (spots->len, ox_estimate_find (estimate, "profile-checks")->value, 1e-9);
      for (guint i = 0; i < spots->len; i++)
        {
          const OxSpot *spot = &g_array_index (spots, OxSpot, i);
          const OxStrip *strip = &plan->strips[spot->strip - 1];
          g_assert_cmpuint (spot->strip, >=, last);
          ox_test_near (ox_point_segment_distance (spot->at, strip->a, strip->b, NULL), 0, 1e-4);
          last = spot->strip;
        }
    }
}

static void
test_none (void)
{
  g_autoptr (OxPlan) plan = made_plan (0, 1, "");
  g_autoptr (GArray) spots = ox_spots_of (plan);
  g_assert_cmpuint (spots->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/spots/middle-of-each-share", test_two);
  g_test_add_func ("/estimate/spots/on-the-last-coat", test_last_coat);
  g_test_add_func ("/estimate/spots/on-strips-in-order", test_on_strips);
  g_test_add_func ("/estimate/spots/none-without-strips", test_none);
  return g_test_run ();
}
