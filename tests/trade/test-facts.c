/* Oxturn: check values of the trade that go through more than one formula, or turn units over; tests/trade/facts.md
 * lists all of them SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <math.h>
#include "trade/abrasive.h"
#include "trade/cost.h"
#include "trade/dust.h"
#include "trade/hose.h"
#include "trade/production.h"
#include "trade/profile.h"
#include "trade/supply.h"

#define near g_assert_cmpfloat_with_epsilon
#define FOOT 0.3048           /* exact: 16 CFR 500.19 */
#define POUND 0.45359237      /* exact: NIST SP 811 */
#define GALLON 0.003785411784 /* 231 cubic inches */

/* 1.5 in3 over 8 in are 0.02984 in, 0.7580 mm (ASTM E965). */
static void
test_sand_patch_in_inches (void)
{
  double ml = 1.5 * 16.387064, mm = 8 * 25.4;
  near (ox_profile_texture_depth (ml, &mm, 1), 0.7580, 5e-5);
  near (ox_profile_texture_depth (ml, &mm, 1) / 25.4, 0.02984, 5e-6);
}

/* 1,000 ft2 = 92.90304 m2; 1 lb/ft2 = 4.882428 kg/m2; 1 lb/ft3 = 16.018463 kg/m3; international over survey foot
 * 0.999998. */
static void
test_units (void)
{
  near (1000 * FOOT * FOOT, 92.90304, 1e-9);
  near (100 / (FOOT * FOOT), 1076.391042, 1e-6);
  near (POUND / (FOOT * FOOT), 4.882428, 1e-6);
  near (POUND / pow (FOOT, 3), 16.018463, 1e-6);
  near (FOOT / (1200.0 / 3937), 0.999998, 1e-12);
  near (55 * GALLON / pow (FOOT, 3), 7.352431, 1e-6);
}

/* 1,040 kg/min from 74.57 kW are 13.95 kg/min for a kilowatt; at 75 m/s the ideal would be 21.33, so 65.4 % of the
 * power is found again. */
static void
test_wheel (void)
{
  near (1040 / 74.57, 13.95, 5e-3);
  near (60000 / (0.5 * 75 * 75), 21.33, 5e-3);
  near (ox_abrasive_wheel_efficiency (1040, 74.57, 75), 13.946627 / 21.333333, 1e-5);
  near (5.593 * 1040 / 74.57, 78.0, 5e-2);
}

/* Overlap of even grids, in the unit of the widths. */
static void
test_overlaps (void)
{
  static const struct
  {
    double width, blast, overlap;
    guint lanes;
    double even;
  } rows[] = { { 354, 10, 1, 40, 1.17949 },
               { 11.8, 0.254, 0.025, 52, 0.027608 },
               { 5, 0.25, 0.03, 23, 0.034091 },
               { 6.1, 0.38, 0.05, 19, 0.062222 },
               { 0.3, 0.25, 0.02, 2, 0.2 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_assert_cmpuint (ox_production_lanes (rows[i].width, rows[i].blast, rows[i].overlap), ==, rows[i].lanes);
      near (ox_production_overlap (rows[i].width, rows[i].blast, rows[i].lanes), rows[i].even, 6e-6);
    }
}

/* A drum of 22.5 in by 33.5 in holds 218.27 L, 57.66 gal, more than the 55 gal it is called after. */
static void
test_drum (void)
{
  double litres = G_PI / 4 * 22.5 * 22.5 * 33.5 * 0.016387064;
  near (litres, 218.27, 5e-3);
  near (litres / 1000 / GALLON, 57.66, 5e-3);
  near (ox_dust_drum_mass (208.19765, 0.9, 1100), 206.1, 5e-2);
}

/* R times circular mils is about 12.9 for stranded copper (NFPA 70 Chapter 9 Table 8, stranded, uncoated). */
static void
test_circular_mils (void)
{
  static const struct
  {
    const char *id;
    double mils, k;
  } rows[] = {
    { "14 AWG", 4110, 12.905 }, { "12 AWG", 6530, 12.929 }, { "10 AWG", 10380, 12.871 }, { "8 AWG", 16510, 12.845 }
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    near (ox_supply_find_conductor (rows[i].id)->ohm_per_km * FOOT * rows[i].mils / 1000, rows[i].k, 1e-3);
}

/* What cords carry with two and three live conductors (NFPA 70 Table 400.5). */
static void
test_ampacity (void)
{
  static const struct
  {
    const char *id;
    double two, three;
  } rows[]
      = { { "14 AWG", 18, 15 }, { "12 AWG", 25, 20 }, { "10 AWG", 30, 25 }, { "8 AWG", 40, 35 }, { "6 AWG", 55, 45 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_assert_cmpfloat (ox_supply_find_conductor (rows[i].id)->amperes_1, ==, rows[i].two);
      g_assert_cmpfloat (ox_supply_find_conductor (rows[i].id)->amperes_3, ==, rows[i].three);
    }
}

/* S330 is usual, and coarser shot for a rougher profile; common practice, no source. */
static void
test_usual_shot (void)
{
  g_assert_cmpstr (ox_abrasive_usual (3)->id, ==, "S330");
  g_assert_cmpstr (ox_abrasive_usual (5)->id, ==, "S330");
  g_assert_cmpstr (ox_abrasive_usual (6)->id, ==, "S390");
  g_assert_null (ox_abrasive_usual (10));
}

/* Slower is deeper and costs more shot; a longer cord loses more; more air is faster; more floor is more dust. */
static void
test_monotone (void)
{
  const OxProfileFit fit = { .factor = 1.8, .exponent = 1, .slowest = 1, .fastest = 10 };
  const OxSupply supply = { 120, 16, 1 };
  for (double x = 1; x < 20; x += 0.5)
    {
      const OxCord shorter = { x, 6.5 }, longer = { x + 0.5, 6.5 };
      g_assert_cmpfloat (ox_profile_depth (&fit, x), >, ox_profile_depth (&fit, x + 0.5));
      g_assert_cmpfloat (ox_profile_dose (20, 0.21, x), >, ox_profile_dose (20, 0.21, x + 0.5));
      g_assert_cmpfloat (ox_supply_drop (&supply, &shorter, 1), <, ox_supply_drop (&supply, &longer, 1));
      g_assert_cmpfloat (ox_hose_velocity (100 * x, 0.1), <, ox_hose_velocity (100 * (x + 0.5), 0.1));
      g_assert_cmpfloat (ox_dust_mass (x, 0.3, 2350), <, ox_dust_mass (x + 0.5, 0.3, 2350));
      g_assert_cmpfloat (ox_production_minutes (x, 6), <, ox_production_minutes (x + 0.5, 6));
    }
}

/* A total is the sum of its lines and the contingency, whatever the lines. */
static void
test_totals (void)
{
  for (guint round = 0; round < 200; round++)
    {
      OxCostLine lines[7];
      OxCostSum sum;
      OxMoney added = 0, rooms = 0;
      for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
        lines[i] = (OxCostLine){ .what = "line",
                                 .room = i % 2 ? "R1" : "",
                                 .quantity = g_test_rand_double_range (0, 500),
                                 .decimals = 2,
                                 .unit = "h",
                                 .rate = g_test_rand_int_range (0, 2000000) };
      g_assert_true (ox_cost_sum (lines, G_N_ELEMENTS (lines), (guint) g_test_rand_int_range (0, 5000), &sum));
      for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
        added += lines[i].amount;
      rooms = ox_cost_room (lines, G_N_ELEMENTS (lines), "R1") + ox_cost_room (lines, G_N_ELEMENTS (lines), "");
      g_assert_cmpint (added, ==, sum.subtotal);
      g_assert_cmpint (rooms, ==, sum.subtotal);
      g_assert_cmpint (sum.subtotal + sum.contingency, ==, sum.total);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/facts/sand-patch-in-inches", test_sand_patch_in_inches);
  g_test_add_func ("/trade/facts/units", test_units);
  g_test_add_func ("/trade/facts/wheel", test_wheel);
  g_test_add_func ("/trade/facts/overlaps", test_overlaps);
  g_test_add_func ("/trade/facts/drum", test_drum);
  g_test_add_func ("/trade/facts/circular-mils", test_circular_mils);
  g_test_add_func ("/trade/facts/ampacity", test_ampacity);
  g_test_add_func ("/trade/facts/usual-shot", test_usual_shot);
  g_test_add_func ("/trade/facts/monotone", test_monotone);
  g_test_add_func ("/trade/facts/totals", test_totals);
  return g_test_run ();
}
