/* Oxturn: tests/job/test-value
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/value.h"

static void
test_snap (void)
{
  g_assert_cmpfloat (ox_value_snap (1.23456789), ==, 1.234568);
  g_assert_cmpfloat (ox_value_snap (ox_value_snap (0.1 + 0.2)), ==, 0.3);
  g_assert_false (signbit (ox_value_snap (-1e-9)));
}

static void
test_ranges (void)
{
  g_assert_true (ox_value_is_within (0, 0, 1) && ox_value_is_within (1, 0, 1));
  g_assert_false (ox_value_is_within (-1e-9, 0, 1) || ox_value_is_within (NAN, 0, 1)
                  || ox_value_is_within (INFINITY, 0, 1));
  g_assert_true (ox_value_is_over (1e-9, 1) && ox_value_is_over (1, 1));
  g_assert_false (ox_value_is_over (0, 1) || ox_value_is_over (1.1, 1) || ox_value_is_over (NAN, 1));
  g_assert_true (ox_value_is_place ((OxPoint){ -10000, 10000 }));
  g_assert_false (ox_value_is_place ((OxPoint){ -10000.1, 0 }) || ox_value_is_place ((OxPoint){ 0, NAN }));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/value/snap", test_snap);
  g_test_add_func ("/job/value/ranges", test_ranges);
  return g_test_run ();
}
