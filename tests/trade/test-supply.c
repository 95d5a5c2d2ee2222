/* Oxturn: tests of trade/supply
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Feet: 100 ft of a table in ohm per 1,000 ft are 30.48 m of the same table in ohm per km.
 */
#include "trade/supply.h"
#include "trade/defaults.h"
#include <math.h>

#define near g_assert_cmpfloat_with_epsilon
#define FOOT 0.3048

static double
table (const char *id)
{
  return ox_supply_find_conductor (id)->ohm_per_km;
}

/* Each row: load and length, then volts and percent for 14, 12, 10 and 8 AWG. */
static void
test_drop_awg (void)
{
  static const char *const sizes[] = { "14 AWG", "12 AWG", "10 AWG", "8 AWG" };
  static const struct
  {
    double amperes, volts, feet;
    double drop[4], percent[4];
  } rows[] = {
    { 20, 120, 100, { 12.56, 7.92, 4.96, 3.112 }, { 10.47, 6.60, 4.13, 2.59 } },
    { 15, 120, 50, { 4.71, 2.97, 1.86, 1.167 }, { 3.92, 2.48, 1.55, 0.97 } },
    { 12, 120, 100, { 7.536, 4.752, 2.976, 1.867 }, { 6.28, 3.96, 2.48, 1.56 } },
    { 16, 120, 150, { 15.072, 9.504, 5.952, 3.734 }, { 12.56, 7.92, 4.96, 3.11 } },
    { 18, 230, 150, { 16.956, 10.692, 6.696, 4.201 }, { 7.37, 4.65, 2.91, 1.83 } },
  };
  for (guint r = 0; r < G_N_ELEMENTS (rows); r++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        OxSupply supply = { rows[r].volts, rows[r].amperes, 1 };
        OxCord cord = { rows[r].feet * FOOT, table (sizes[s]) };
        near (ox_supply_drop (&supply, &cord, 1), rows[r].drop[s], 6e-4);
        near (100 * ox_supply_drop_share (&supply, &cord, 1), rows[r].percent[s], 6e-3);
      }
}

/* K = 12.9 ohm circular mil per ft, as handbooks print it: R = K / cmil. 12 AWG 6,530 cmil, 8 AWG 16,510 cmil. */
static void
test_drop_by_circular_mils (void)
{
  OxSupply supply = { 120, 20, 1 };
  OxCord twelve = { 100 * FOOT, 12.9 / 6530 * 1000 / FOOT };
  OxCord eight = { 100 * FOOT, 12.9 / 16510 * 1000 / FOOT };
  near (ox_supply_drop (&supply, &twelve, 1), 7.9020, 5e-5);
  near (ox_supply_drop (&supply, &eight, 1), 3.1254, 5e-5);
  near (table ("12 AWG"), twelve.ohm_per_km, 0.02);
  near (table ("8 AWG"), eight.ohm_per_km, 0.02);
}

static void
test_drop_three_phases (void)
{
  OxCord cord = { 150 * FOOT, table ("8 AWG") };
  near (ox_supply_drop (&(OxSupply){ 480, 30, 3 }, &cord, 1), 6.064, 5e-4);
  near (100 * ox_supply_drop_share (&(OxSupply){ 480, 30, 3 }, &cord, 1), 1.263, 5e-4);
  cord = (OxCord){ 50, table ("2.5 mm2") };
  near (ox_supply_drop (&(OxSupply){ 400, 16, 3 }, &cord, 1), 11.057, 5e-4);
  near (100 * ox_supply_drop_share (&(OxSupply){ 400, 16, 3 }, &cord, 1), 2.764, 5e-4);
  cord = (OxCord){ 50, table ("6 mm2") };
  near (ox_supply_drop (&(OxSupply){ 400, 32, 3 }, &cord, 1), 9.145, 5e-4);
}

static void
test_drop_series (void)
{
  OxSupply supply = { 120, 16, 1 };
  OxCord cords[] = { { 50 * FOOT, table ("12 AWG") }, { 50 * FOOT, table ("10 AWG") } };
  near (ox_supply_drop (&supply, cords, 2), 5.152, 5e-4);
  near (100 * ox_supply_drop_share (&supply, cords, 2), 4.293, 5e-4);
  near (ox_supply_drop (&supply, cords, 2),
        ox_supply_drop (&supply, &cords[0], 1) + ox_supply_drop (&supply, &cords[1], 1), 1e-12);
  g_assert_cmpfloat (ox_supply_drop (&supply, NULL, 0), ==, 0);
}

static void
test_drop_metric (void)
{
  static const char *const sizes[] = { "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2" };
  static const struct
  {
    double amperes, length;
    double drop[4], percent[4];
  } rows[] = {
    { 16, 50, { 21.28, 12.768, 7.92, 5.28 }, { 9.25, 5.55, 3.44, 2.30 } },
    { 16, 25, { 10.64, 6.384, 3.96, 2.64 }, { 4.63, 2.78, 1.72, 1.15 } },
    { 13, 30, { 10.374, 6.224, 3.861, 2.574 }, { 4.51, 2.71, 1.68, 1.12 } },
  };
  for (guint r = 0; r < G_N_ELEMENTS (rows); r++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        OxSupply supply = { 230, rows[r].amperes, 1 };
        OxCord cord = { rows[r].length, table (sizes[s]) };
        near (ox_supply_drop (&supply, &cord, 1), rows[r].drop[s], 5.1e-4);
        near (100 * ox_supply_drop_share (&supply, &cord, 1), rows[r].percent[s], 6e-3);
      }
}

/* NFPA 70: 12 AWG has 1.98 ohm/kft at 75 C, 1.628 at 20 C, 1.884 at 60 C. IEC 60228: 7.98 ohm/km at 20 C is 9.548 at 70
 * C. */
static void
test_resistance (void)
{
  const OxConductor *twelve = ox_supply_find_conductor ("12 AWG");
  near (ox_supply_resistance (twelve, 75) * FOOT, 1.98, 1e-6);
  near (ox_supply_resistance (twelve, 20) * FOOT, 1.628, 5e-4);
  near (ox_supply_resistance (twelve, 60) * FOOT, 1.884, 5e-4);
  near (ox_supply_resistance (ox_supply_find_conductor ("2.5 mm2"), 70), 9.548, 5e-4);
  g_assert_null (ox_supply_find_conductor ("13 AWG"));
}

/* At working temperature a cord of 2.5 mm2 drops 18 mV per A and m (BS 7671 appendix 4): our 70 C figure is a little
 * above. */
static void
test_working_temperature (void)
{
  double warm = ox_supply_resistance (ox_supply_find_conductor ("2.5 mm2"), 70);
  OxCord cord = { 50, warm }, tabulated = { 50, 9.0 };
  OxSupply supply = { 230, 16, 1 };
  near (ox_supply_drop (&supply, &tabulated, 1), 14.40, 1e-9);
  near (100 * ox_supply_drop_share (&supply, &tabulated, 1), 6.26, 5e-3);
  near (ox_supply_drop (&supply, &cord, 1) / 14.40, 1.06, 0.01);
}

static void
test_longest (void)
{
  static const struct
  {
    const char *id;
    double feet_3, feet_5;
  } awg[] = {
    { "14 AWG", 35.8, 59.7 },
    { "12 AWG", 56.8, 94.7 },
    { "10 AWG", 90.7, 151.2 },
    { "8 AWG", 144.6, 241.0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (awg); i++)
    {
      OxSupply supply = { 120, 16, 1 };
      near (ox_supply_longest (&supply, table (awg[i].id), 0.03) / FOOT, awg[i].feet_3, 0.05);
      near (ox_supply_longest (&supply, table (awg[i].id), 0.05) / FOOT, awg[i].feet_5, 0.05);
    }
  static const struct
  {
    const char *id;
    double metres;
  } metric[] = {
    { "1.5 mm2", 16.2 },
    { "2.5 mm2", 27.0 },
    { "4 mm2", 43.6 },
    { "6 mm2", 65.3 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (metric); i++)
    near (ox_supply_longest (&(OxSupply){ 230, 16, 1 }, table (metric[i].id), 0.03), metric[i].metres, 0.06);
  g_assert_cmpfloat (ox_supply_longest (&(OxSupply){ 230, 0, 1 }, 7.98, 0.03), ==, G_MAXDOUBLE);
}

/* A cord of exactly the longest length has exactly the drop of the limit. */
static void
test_longest_meets_limit (void)
{
  for (guint i = 0; i < 1000; i++)
    {
      OxSupply supply = { g_test_rand_double_range (100, 500), g_test_rand_double_range (1, 60), i % 2 ? 1 : 3 };
      double r = g_test_rand_double_range (0.5, 15), share = g_test_rand_double_range (0.01, 0.1);
      OxCord cord = { ox_supply_longest (&supply, r, share), r };
      near (ox_supply_drop_share (&supply, &cord, 1), share, 1e-12);
      g_assert_cmpint (ox_supply_judge (ox_supply_drop_share (&supply, &cord, 1), share, share), ==, OX_DROP_FINE);
    }
}

/* 3 % and 5 % of 120 V are 3.6 and 6.0 V, of 230 V 6.9 and 11.5 V. */
static void
test_judge (void)
{
  double warn = ox_defaults_get ("drop-warn")->value, stop = ox_defaults_get ("drop-stop")->value;
  g_assert_cmpint (ox_supply_judge (3.6 / 120, warn, stop), ==, OX_DROP_FINE);
  g_assert_cmpint (ox_supply_judge (3.7 / 120, warn, stop), ==, OX_DROP_HIGH);
  g_assert_cmpint (ox_supply_judge (11.5 / 230, warn, stop), ==, OX_DROP_HIGH);
  g_assert_cmpint (ox_supply_judge (11.6 / 230, warn, stop), ==, OX_DROP_TOO_HIGH);
}

/* BS 7671 Appendix 4: 5 % become 5.25 % over 150 m, 5.5 % over 200 m and no more beyond. */
static void
test_long_cord (void)
{
  g_assert_cmpfloat (ox_supply_long_cord_allowance (100), ==, 0);
  g_assert_cmpfloat (ox_supply_long_cord_allowance (20), ==, 0);
  near (ox_supply_long_cord_allowance (150), 0.0025, 1e-12);
  near (ox_supply_long_cord_allowance (200), 0.005, 1e-12);
  near (ox_supply_long_cord_allowance (900), 0.005, 1e-12);
}

/* NFPA 70: a circuit carries 80 % of its rating for three hours or more. */
static void
test_continuous (void)
{
  static const double circuits[][2] = { { 15, 12 }, { 20, 16 }, { 30, 24 }, { 50, 40 } };
  for (guint i = 0; i < G_N_ELEMENTS (circuits); i++)
    near (ox_supply_continuous_limit (circuits[i][0], ox_defaults_get ("continuous-share")->value), circuits[i][1],
          1e-9);
}

/* Thicker copper has less resistance and may carry more. */
static void
test_conductors (void)
{
  guint n;
  const OxConductor *c = ox_supply_conductors (&n);
  g_assert_cmpuint (n, ==, 10);
  for (guint i = 1; i < n; i++)
    if (c[i].mm2 > c[i - 1].mm2)
      {
        g_assert_cmpfloat (c[i].ohm_per_km, <, c[i - 1].ohm_per_km);
        g_assert_cmpfloat (c[i].amperes_1, >=, c[i - 1].amperes_1);
        g_assert_cmpfloat (c[i].amperes_3, <=, c[i].amperes_1);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/supply/drop/awg", test_drop_awg);
  g_test_add_func ("/trade/supply/drop/circular-mils", test_drop_by_circular_mils);
  g_test_add_func ("/trade/supply/drop/three-phases", test_drop_three_phases);
  g_test_add_func ("/trade/supply/drop/cords-in-series", test_drop_series);
  g_test_add_func ("/trade/supply/drop/metric", test_drop_metric);
  g_test_add_func ("/trade/supply/resistance/temperature", test_resistance);
  g_test_add_func ("/trade/supply/resistance/working-temperature", test_working_temperature);
  g_test_add_func ("/trade/supply/longest/examples", test_longest);
  g_test_add_func ("/trade/supply/longest/meets-the-limit", test_longest_meets_limit);
  g_test_add_func ("/trade/supply/judge/limits", test_judge);
  g_test_add_func ("/trade/supply/long-cord/allowance", test_long_cord);
  g_test_add_func ("/trade/supply/continuous/four-fifths", test_continuous);
  g_test_add_func ("/trade/supply/conductors/thicker-is-better", test_conductors);
  return g_test_run ();
}
