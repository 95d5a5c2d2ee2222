/* Oxturn: tests of trade/exposure
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/exposure.h"
#include "trade/defaults.h"

#define near g_assert_cmpfloat_with_epsilon

/* 29 CFR 1926.1153: 25 ug/m3 is the action level, 50 the limit, means over 8 h. 30.0 lies between them, and so does 38.125. */
static void
test_silica (void)
{
  static const OxExposure one[] = { { 80, 3 } }, three[] = { { 120, 1.5 }, { 30, 3 }, { 10, 3.5 } };
  double action = ox_defaults_get ("silica-action")->value, limit = ox_defaults_get ("silica-limit")->value;
  near (ox_exposure_mean (one, 1), 30, 1e-12);
  near (ox_exposure_mean (three, 3), 38.125, 1e-12);
  g_assert_true (action < 30 && 38.125 < limit);
  near (ox_exposure_hours (50, 160), 2.5, 1e-12);
  near (ox_exposure_hours (50, 1), 24, 1e-12);
  g_assert_cmpfloat (ox_exposure_mean (NULL, 0), ==, 0);
}

/* 29 CFR 1926.52 Table D-2, whose hours are rounded. */
static void
test_noise_table (void)
{
  static const struct
  {
    double hours, level, off;
  } rows[] = { { 8, 90, 0 },    { 6, 92, 0.07 },    { 4, 95, 0 },  { 3, 97, 0.04 }, { 2, 100, 0 },
               { 1.5, 102, 0.02 }, { 1, 105, 0 }, { 0.5, 110, 0 }, { 0.25, 115, 0 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    near (ox_noise_hours (rows[i].level), rows[i].hours, rows[i].off + 1e-12);
  near (ox_noise_hours (92), 6.063, 5e-4);
  near (ox_noise_hours (97), 3.031, 5e-4);
  near (ox_noise_hours (102), 1.516, 5e-4);
  near (ox_noise_hours (98), 2.639, 5e-4);
}

/* The sample of 29 CFR 1926.52: 1/4 h at 110, 1/2 h at 100 and 1 1/2 h at 90 dB(A) are a factor of 0.938, allowed. WAC 296-817-30015: 5 h at 98. */
static void
test_noise_dose (void)
{
  static const OxExposure sample[] = { { 110, 0.25 }, { 100, 0.5 }, { 90, 1.5 } }, five[] = { { 98, 5 } };
  near (ox_noise_dose (sample, 3), 93.75, 1e-9);
  near (ox_noise_dose (five, 1), 189.46, 5e-3);
  near (ox_noise_mean (ox_noise_dose (five, 1)), 94.61, 5e-3);
  near (ox_noise_mean (100), 90, 1e-12);
}

/* Directive 2003/10/EC: daily level. Eight hours at one level are that level. */
static void
test_noise_day (void)
{
  static const OxExposure four[] = { { 95, 4 } }, two[] = { { 98, 3 }, { 88, 5 } }, day[] = { { 91, 8 } };
  near (ox_noise_day_level (four, 1), 91.99, 5e-3);
  near (ox_noise_day_level (two, 2), 94.41, 5e-3);
  near (ox_noise_day_level (day, 1), 91, 1e-9);
  g_assert_cmpfloat (ox_noise_day_level (NULL, 0), ==, 0);
}

/* Longer or louder is more, in each measure; a stretch cut in two is what it was. */
static void
test_monotone (void)
{
  for (guint round = 0; round < 100; round++)
    {
      const OxExposure a = { g_test_rand_double_range (70, 115), g_test_rand_double_range (0.1, 8) };
      const OxExposure longer = { a.level, a.hours * 1.1 }, louder = { a.level + 1, a.hours };
      const OxExposure halves[] = { { a.level, a.hours / 2 }, { a.level, a.hours / 2 } };
      double (*const measures[]) (const OxExposure *, guint) = { ox_exposure_mean, ox_noise_dose, ox_noise_day_level };
      for (guint i = 0; i < G_N_ELEMENTS (measures); i++)
        {
          g_assert_cmpfloat (measures[i](&longer, 1), >, measures[i](&a, 1));
          g_assert_cmpfloat (measures[i](&louder, 1), >, measures[i](&a, 1));
          near (measures[i](halves, 2), measures[i](&a, 1), 1e-9);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/exposure/silica/means", test_silica);
  g_test_add_func ("/trade/exposure/noise/table", test_noise_table);
  g_test_add_func ("/trade/exposure/noise/dose", test_noise_dose);
  g_test_add_func ("/trade/exposure/noise/day-level", test_noise_day);
  g_test_add_func ("/trade/exposure/monotone", test_monotone);
  return g_test_run ();
}
