/* Oxturn: tests of trade/cage
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/cage.h"
#include "trade/defaults.h"

#define near g_assert_cmpfloat_with_epsilon

/* A clock's hand goes round in twelve hours, so half past eight is 255 degrees from twelve. */
static void
test_angle (void)
{
  near (ox_cage_angle (8.5), 255, 1e-12);
  near (ox_cage_angle (10.5), 315, 1e-12);
  near (ox_cage_angle (12), 360, 1e-12);
}

/* Common practice, no source: first set between half past eight and half past ten. */
static void
test_first (void)
{
  static const double inside[] = { 8.5, 9, 9.25, 10.5 }, outside[] = { 8.49, 10.51, 3, 12 };
  for (guint i = 0; i < 4; i++)
    {
      g_assert_true (ox_cage_is_first (inside[i]));
      g_assert_false (ox_cage_is_first (outside[i]));
    }
}

/* 0.40 mm left and 0.60 mm right lie 20 % off their mean of 0.50 mm to either side. */
static void
test_balance (void)
{
  const OxCageTrial right = { 0.40, 0.52, 0.60 }, left = { 0.60, 0.52, 0.40 }, even = { 0.5, 0.6, 0.5 };
  near (ox_cage_balance (&right), 20, 1e-9);
  near (ox_cage_balance (&left), -20, 1e-9);
  near (ox_cage_balance (&even), 0, 1e-12);
}

/* What is cut too deep is given less: the pattern goes to the other side. */
static void
test_advice (void)
{
  double even = ox_defaults_get ("cage-even")->value;
  g_assert_cmpint (ox_cage_advise (20, even), ==, OX_CAGE_LEFT);
  g_assert_cmpint (ox_cage_advise (-20, even), ==, OX_CAGE_RIGHT);
  g_assert_cmpint (ox_cage_advise (even, even), ==, OX_CAGE_LEAVE);
  g_assert_cmpint (ox_cage_advise (-even, even), ==, OX_CAGE_LEAVE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/cage/angle", test_angle);
  g_test_add_func ("/trade/cage/first-setting", test_first);
  g_test_add_func ("/trade/cage/balance", test_balance);
  g_test_add_func ("/trade/cage/advice", test_advice);
  return g_test_run ();
}
