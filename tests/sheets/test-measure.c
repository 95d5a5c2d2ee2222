/* Oxturn: tests of sheets/measure
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/measure.h"
#include "support/ox-test.h"
#include <locale.h>

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
  g_test_add_func ("/measure/locale", test_a_point_everywhere);
  return g_test_run ();
}
