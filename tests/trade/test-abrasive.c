/* Oxturn: tests of trade/abrasive
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/abrasive.h"
#include "trade/defaults.h"

#define near g_assert_cmpfloat_with_epsilon

static void
test_use (void)
{
  near (ox_abrasive_use (70, 2500, 0), 0.028, 1e-12);
  near (ox_abrasive_use (70, 3000, 0), 0.0233, 5e-5);
  near (ox_abrasive_use (70, 2000, 0), 0.035, 1e-12);
  near (ox_abrasive_use (70, 2500, 0.05), 0.078, 1e-12);
}

/* (50 + 230 * 0.08) * 1.1 = 75.24; (25 + 0) * 1 is one bag and not two. */
static void
test_bags (void)
{
  near (ox_abrasive_lost (600, 20, 0.0012), 14.4, 1e-12);
  g_assert_cmpfloat (ox_abrasive_lost (0, 20, 0.0012), ==, 0);
  g_assert_cmpuint (ox_abrasive_bags (&(OxAbrasiveOrder){ 50, 230, 0.08, 0.10, 25 }), ==, 4);
  g_assert_cmpuint (ox_abrasive_bags (&(OxAbrasiveOrder){ 25, 0, 0.08, 0, 25 }), ==, 1);
  g_assert_cmpuint (ox_abrasive_bags (&(OxAbrasiveOrder){ 0, 1000, 0.1, 0.1, 10 }), ==, 11);
  g_assert_cmpuint (ox_abrasive_bags (&(OxAbrasiveOrder){ 0, 0, 0.1, 0.1, 25 }), ==, 0);
}

/* Spheres of the nominal screen at 7.4 g/cm3. */
static void
test_grains (void)
{
  static const struct
  {
    const char *id;
    double mg, per_kg;
  } cases[] = {
    { "S230", 0.8369, 1194857 }, { "S280", 1.3868, 721099 }, { "S330", 2.3795, 420255 },
    { "S390", 3.8746, 258089 },  { "S460", 6.3661, 157081 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double mg = ox_abrasive_grain_mg (ox_abrasive_find_size (cases[i].id)->nominal_mm, 7.4);
      near (mg, cases[i].mg, 5e-5);
      near (1e6 / mg, cases[i].per_kg, 0.5);
    }
}

/* 75 m/s carry 2,812.5 J/kg, so 1 kW throws 21.33 kg/min at best; 1,040 kg/min from 100 hp are 65.4 % of it. */
static void
test_wheel (void)
{
  near (ox_abrasive_wheel_efficiency (21.3333, 1, 75), 1, 1e-5);
  near (ox_abrasive_wheel_efficiency (1040, 74.57, 75), 0.654, 5e-4);
  near (1040 / 74.57, ox_defaults_get ("wheel-flow")->value, 0.1);
}

/* S330 = 0.0330 in (SAE J444). */
static void
test_opening (void)
{
  near (ox_abrasive_opening_mm (330), 0.838, 5e-4);
  near (ox_abrasive_opening_mm (230), 0.58420, 1e-9);
}

/* AMS-S-13165 table I, shot size bands in inches: upper and lower end of each are the screens "at most on" and
 * "nominal". */
static void
test_bands (void)
{
  static const struct
  {
    const char *id;
    double upper, lower;
  } bands[] = {
    { "S460", .066, .047 },  { "S390", .056, .039 },   { "S330", .047, .0331 },
    { "S280", .039, .0278 }, { "S230", .0331, .0234 }, { "S170", .0278, .0165 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (bands); i++)
    {
      const OxShotSize *size = ox_abrasive_find_size (bands[i].id);
      near (size->most_on_mm, bands[i].upper * 25.4, 0.03);
      near (size->nominal_mm, bands[i].lower * 25.4, 0.02);
    }
}

/* Each size is made of ever finer screens that hold ever more, and the sizes come from coarse to fine. */
static void
test_sizes (void)
{
  guint n;
  const OxShotSize *sizes = ox_abrasive_sizes (&n);
  g_assert_cmpuint (n, ==, 10);
  for (guint i = 0; i < n; i++)
    {
      const OxShotSize *s = &sizes[i];
      g_assert_cmpfloat (s->all_pass_mm, >, s->nominal_mm);
      g_assert_cmpfloat (s->nominal_mm, >, s->least_on_mm);
      g_assert_cmpfloat (s->least_on_share, >, s->nominal_share);
      if (s->most_on_mm > 0)
        g_assert_true (s->most_on_mm < s->all_pass_mm && s->most_on_mm > s->nominal_mm);
      if (i > 0)
        g_assert_cmpfloat (s->nominal_mm, <, sizes[i - 1].nominal_mm);
    }
  g_assert_null (ox_abrasive_find_size ("S1"));
}

/* Bulk density of 280 lb/ft3 = 4,485 kg/m3: a 25 kg bag is 5.574 l, a 50 lb bag 0.17857 ft3 = 5.057 l. */
static void
test_litres (void)
{
  double bulk = ox_defaults_get ("shot-bulk")->value;
  near (ox_abrasive_litres (25, bulk), 5.574, 5e-4);
  near (ox_abrasive_litres (50 * 0.45359237, bulk), 5.057, 5e-4);
  near (ox_abrasive_litres (280 * 0.45359237, 280 * 0.45359237 / (0.3048 * 0.3048 * 0.3048)), 28.316846592, 1e-9);
  g_assert_cmpfloat (ox_abrasive_litres (0, bulk), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/abrasive/use/dose-over-life", test_use);
  g_test_add_func ("/trade/abrasive/bags/whole-ones", test_bags);
  g_test_add_func ("/trade/abrasive/grains/spheres", test_grains);
  g_test_add_func ("/trade/abrasive/wheel/kinetic-energy", test_wheel);
  g_test_add_func ("/trade/abrasive/opening/ten-thousandths", test_opening);
  g_test_add_func ("/trade/abrasive/sizes/agree-with-second-standard", test_bands);
  g_test_add_func ("/trade/abrasive/sizes/screens-in-order", test_sizes);
  g_test_add_func ("/trade/abrasive/litres/bags", test_litres);
  return g_test_run ();
}
