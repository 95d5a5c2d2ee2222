/* Oxturn: tests of sheets/measure
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/measure.h"
#include "support/ox-test.h"
#include <locale.h>
#include <math.h>

#define assert_is(made, expected)                                                                                      \
  G_STMT_START                                                                                                         \
  {                                                                                                                    \
    g_autofree char *text = (made);                                                                                    \
    g_assert_cmpstr (text, ==, (expected));                                                                            \
  }                                                                                                                    \
  G_STMT_END

static void
test_rounding (void)
{
  assert_is (ox_measure_length (OX_UNITS_METRES, 19.2474), "19.25 m");
  assert_is (ox_measure_length (OX_UNITS_METRES, 4880.786), "4880.79 m");
  assert_is (ox_measure_length (OX_UNITS_MILLIMETRES, 2.8964), "2900 mm");
  /* 3.048 m are 10 ft; 11.9 in round to the next foot. */
  assert_is (ox_measure_length (OX_UNITS_FEET, 3.048), "10'-0\"");
  assert_is (ox_measure_length (OX_UNITS_FEET, 3.048 + 11.9 * 0.0254), "11'-0\"");
  assert_is (ox_measure_area (OX_UNITS_METRES, 0.0437), "0.04 m\xc2\xb2");
  assert_is (ox_measure_area (OX_UNITS_METRES, 30.24), "30.2 m\xc2\xb2");
  assert_is (ox_measure_area (OX_UNITS_FEET, 0.09290304), "1.0 ft\xc2\xb2");
  assert_is (ox_measure_number (6, 1), "6.0");
  assert_is (ox_measure_speed (OX_UNITS_METRES, 6), "6 m/min");
  assert_is (ox_measure_speed (OX_UNITS_FEET, 6), "19.7 ft/min");      /* 6 / 0.3048 */
  assert_is (ox_measure_rate (OX_UNITS_FEET, 4), "43.1 ft\xc2\xb2/h"); /* 4 / 0.3048^2 */
  assert_is (ox_measure_rate (OX_UNITS_METRES, 4), "4 m\xc2\xb2/h");
  assert_is (ox_measure_length_rate (OX_UNITS_FEET, 12), "39.4 ft/h"); /* 12 / 0.3048 */
  assert_is (ox_measure_length_rate (OX_UNITS_METRES, 12), "12 m/h");
}

/* Whatever the parts: each is less than a step off, and together they are their sum, rounded to a step. */
static void
test_shares_add_up (void)
{
  const double steps[] = { 0.1, 0.01, 0.09290304 };
  for (guint round_of = 0; round_of < 3000; round_of++)
    {
      double parts[9], shares[9], sum = 0, printed = 0, step = steps[round_of % G_N_ELEMENTS (steps)];
      guint n = (guint)g_test_rand_int_range (1, 10);
      for (guint i = 0; i < n; i++)
        {
          parts[i] = shares[i] = g_test_rand_int_range (0, 4) == 0 ? 0 : g_test_rand_double_range (0, 50);
          sum += parts[i];
        }
      double whole = round (sum / step) * step;
      ox_measure_share (shares, n, step, whole);
      for (guint i = 0; i < n; i++)
        {
          ox_test_near (shares[i], round (shares[i] / step) * step, 1e-9);
          g_assert_cmpfloat (fabs (shares[i] - parts[i]), <, step + 1e-9);
          g_assert_true (parts[i] > 0 || shares[i] <= 0);
          printed += shares[i];
        }
      ox_test_near (printed, whole, 1e-9);
    }
}

/* 0.34 goes up first, the largest remainder; rounded each by itself they would be 0.9. */
static void
test_largest_remainder (void)
{
  double parts[] = { 0.33, 0.34, 0.33 };
  ox_measure_share (parts, 3, 0.1, 1);
  ox_test_near (parts[0], 0.3, 1e-9);
  ox_test_near (parts[1], 0.4, 1e-9);
  ox_test_near (parts[2], 0.3, 1e-9);
}

static void
test_a_point_everywhere (void)
{
  g_autofree char *before = g_strdup (setlocale (LC_ALL, NULL));
  if (setlocale (LC_ALL, "de_DE.utf8") == NULL)
    {
      g_test_skip ("no German locale is installed");
      return;
    }
  assert_is (ox_measure_number (0.25, 2), "0.25");
  setlocale (LC_ALL, before);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/measure/rounding", test_rounding);
  g_test_add_func ("/measure/shares", test_shares_add_up);
  g_test_add_func ("/measure/largest-remainder", test_largest_remainder);
  g_test_add_func ("/measure/locale", test_a_point_everywhere);
  return g_test_run ();
}
