/* Oxturn: tests of trade/wear
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/wear.h"

#define near g_assert_cmpfloat_with_epsilon

static void
test_hours_left (void)
{
  near (ox_wear_hours_left (50, 38.5), 11.5, 1e-12);
  g_assert_cmpfloat (ox_wear_hours_left (50, 50), ==, 0);
  g_assert_cmpfloat (ox_wear_hours_left (50, 61), ==, 0);
}

static void
test_due_strip (void)
{
  static const double four[] = { 4, 4, 4, 4, 4 };
  g_assert_cmpuint (ox_wear_due_strip (10.0 / 60, four, 5), ==, 2);
  g_assert_cmpuint (ox_wear_due_strip (12.0 / 60, four, 5), ==, 3);
  g_assert_cmpuint (ox_wear_due_strip (0, four, 5), ==, 0);
  g_assert_cmpuint (ox_wear_due_strip (1, four, 5), ==, 5);
  g_assert_cmpuint (ox_wear_due_strip (1, NULL, 0), ==, 0);
}

/* 600 strips of a tenth of a minute are an hour, however a tenth adds up in binary. */
static void
test_due_strip_rounding (void)
{
  double minutes[1000];
  for (guint i = 0; i < G_N_ELEMENTS (minutes); i++)
    minutes[i] = 0.1;
  g_assert_cmpuint (ox_wear_due_strip (1, minutes, G_N_ELEMENTS (minutes)), ==, 600);
}

static void
test_checks (void)
{
  g_assert_cmpuint (ox_wear_checks (50, 40, 120), ==, 3); /* after 10, 60 and 110 h */
  g_assert_cmpuint (ox_wear_checks (50, 40, 9.9), ==, 0);
  g_assert_cmpuint (ox_wear_checks (50, 40, 10), ==, 1);
  g_assert_cmpuint (ox_wear_checks (50, 60, 0), ==, 1);
  g_assert_cmpuint (ox_wear_checks (50, 0, 99.9), ==, 1);
}

/* The blast wheel is looked at about every 50 h and the liners about every 100 h. */
static void
test_starters (void)
{
  guint n;
  const OxWearStarter *starters = ox_wear_starters (&n);
  g_assert_cmpuint (n, ==, 5);
  g_assert_true (starters[0].least_h <= 50 && starters[0].most_h >= 50);
  g_assert_true (starters[2].least_h <= 100 && starters[2].most_h >= 100);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat (starters[i].least_h, <, starters[i].most_h);
      g_assert_cmpint (starters[i].typical, ==, 1);
    }
}

/* Every 50 h: what was run, what came on top, what is run since the last check then. */
static void
test_run (void)
{
  static const double rows[][3] = { { 40, 0, 40 }, { 40, 5, 45 }, { 40, 25, 15 }, { 40, 120, 10 }, { 60, 0, 60 }, { 60, 20, 20 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (ox_wear_run (50, rows[i][0], rows[i][1]), rows[i][2], 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/wear/hours-left/never-negative", test_hours_left);
  g_test_add_func ("/trade/wear/due-strip/examples", test_due_strip);
  g_test_add_func ("/trade/wear/due-strip/forgives-rounding", test_due_strip_rounding);
  g_test_add_func ("/trade/wear/checks/within-hours", test_checks);
  g_test_add_func ("/trade/wear/starters/typical", test_starters);
  g_test_add_func ("/trade/wear/run/checks-are-done-when-due", test_run);
  return g_test_run ();
}
