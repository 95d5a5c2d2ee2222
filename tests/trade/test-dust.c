/* Oxturn: tests of trade/dust
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/dust.h"
#include "trade/defaults.h"

#define near g_assert_cmpfloat_with_epsilon

static const double litres = 208.19764812; /* 55 gal of 231 in3 */

static void
test_metric (void)
{
  double mass = ox_dust_mass (100, 0.30, 2350);
  near (mass, 70.5, 1e-9);
  double volume = ox_dust_volume (mass, 1100);
  near (volume, 0.06409, 5e-6);
  near (ox_dust_drums (volume, litres, 1), 0.3078, 5e-5);
  near (ox_dust_drums (volume, litres, 0.9), 0.3420, 5e-5);
  g_assert_cmpuint (ox_dust_drums_to_order (ox_dust_drums (volume, litres, 0.9)), ==, 1);
}

/* 1,000 ft2, 1/64 in, 145 lb/ft3 and 70 lb/ft3 loose: 188.80 lb, 2.6972 ft3, 0.3668 drums. */
static void
test_imperial (void)
{
  double lb = 0.45359237, ft3 = 0.028316846592;
  double mass = ox_dust_mass (92.90304, 25.4 / 64, 145 * lb / ft3);
  near (mass / lb, 188.80, 5e-3);
  double volume = ox_dust_volume (mass, 70 * lb / ft3);
  near (volume / ft3, 2.6972, 5e-5);
  near (ox_dust_drums (volume, litres, 1), 0.3668, 5e-5);
}

static void
test_order (void)
{
  g_assert_cmpuint (ox_dust_drums_to_order (0), ==, 0);
  g_assert_cmpuint (ox_dust_drums_to_order (0.001), ==, 1);
  g_assert_cmpuint (ox_dust_drums_to_order (3), ==, 3);
  g_assert_cmpuint (ox_dust_drums_to_order (3.01), ==, 4);
}

/* 55 gal brimful are 208.19765 l; full of dust it weighs 206.1 kg, 454 lb, far over what one or two may lift. */
static void
test_drum_mass (void)
{
  near (ox_defaults_get ("drum-litres")->value, 55 * 231 * 0.016387064, 1e-9);
  double mass = ox_dust_drum_mass (litres, 0.9, 1100);
  near (mass, 206.1, 0.05);
  near (mass / 0.45359237, 454, 0.5);
  g_assert_cmpfloat (mass, >, ox_defaults_get ("carry-limit")->value);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/dust/mass-and-drums/metric", test_metric);
  g_test_add_func ("/trade/dust/mass-and-drums/imperial", test_imperial);
  g_test_add_func ("/trade/dust/drums-to-order/begun-ones-count", test_order);
  g_test_add_func ("/trade/dust/drum-mass/too-heavy-to-lift", test_drum_mass);
  return g_test_run ();
}
