/* Oxturn: tests of trade/profile
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/profile.h"
#include <math.h>

#define near g_assert_cmpfloat_with_epsilon

/* MTD = 4 V / (pi D^2) worked by hand for each. */
static void
test_texture_depth (void)
{
  near (ox_profile_texture_depth (50, (double[]){ 200 }, 1), 1.5915, 5e-5);
  near (ox_profile_texture_depth (50, (double[]){ 250 }, 1), 1.0186, 5e-5);
  near (ox_profile_texture_depth (25, (double[]){ 150 }, 1), 1.4147, 5e-5);
  near (ox_profile_texture_depth (50, (double[]){ 198, 203, 201, 206 }, 4), 1.5602, 5e-5);
  near (ox_profile_texture_depth (1.5 * 16.387064, (double[]){ 8 * 25.4 }, 1), 0.7580, 5e-5); /* 1.5 in3 over 8 in */
}

static void
test_dose (void)
{
  near (ox_profile_dose (100, 0.254, 6), 65.617, 5e-4);
  near (ox_profile_dose (100, 0.229, 6), 72.780, 5e-4);
  near (ox_profile_dose (60, 0.25, 5), 48.000, 1e-9);
  near (ox_profile_dose (220 * 0.45359237, 0.254, 20 * 0.3048), 64.448, 5e-4); /* 220 lb/min, 10 in, 20 ft/min */
  near (ox_profile_dose (78, 0.254, 4.572), 67.2, 0.05);
  near (ox_profile_dose (78, 0.254, 3.048), 100.8, 0.05);
}

/* Overlap raises the mean dose by w / (w - o), whatever the flow and the speed. */
static void
test_dose_with_overlap (void)
{
  near (ox_profile_dose (100, 0.229, 6) / ox_profile_dose (100, 0.254, 6), 0.254 / 0.229, 1e-12);
}

static void
test_fit_none (void)
{
  OxProfileFit fit = { .factor = 7 };
  g_assert_cmpint (ox_profile_fit (NULL, 0, &fit), ==, OX_FIT_NO_PATCH);
  g_assert_cmpfloat (fit.factor, ==, 7);
}

/* One patch scales by 1 / v: half the speed, twice the depth. */
static void
test_fit_single (void)
{
  OxTestPatch patch = { 4, 0.45 };
  OxProfileFit fit;
  g_assert_cmpint (ox_profile_fit (&patch, 1, &fit), ==, OX_FIT_GOOD);
  near (ox_profile_depth (&fit, 4), 0.45, 1e-12);
  near (ox_profile_depth (&fit, 2), 0.90, 1e-12);
  near (ox_profile_speed (&fit, 0.90), 2, 1e-12);
  g_assert_cmpfloat (fit.spread, ==, 0);
  g_assert_true (ox_profile_is_tried (&fit, 4));
  g_assert_false (ox_profile_is_tried (&fit, 3.9));
}

/* Patches at one speed: the geometric mean; 0.4 and 0.9 mean 0.6, and each is 1.5 away from it: s = ln 1.5 * sqrt 2. */
static void
test_fit_one_speed (void)
{
  OxTestPatch patches[] = { { 3, 0.4 }, { 3, 0.9 } };
  OxProfileFit fit;
  g_assert_cmpint (ox_profile_fit (patches, 2, &fit), ==, OX_FIT_GOOD);
  near (ox_profile_depth (&fit, 3), 0.6, 1e-12);
  near (fit.exponent, 1, 1e-12);
  near (fit.spread, exp (log (1.5) * sqrt (2)), 1e-9);
}

static void
test_fit_exact (void)
{
  OxTestPatch patches[] = { { 3, 0.6 }, { 6, 0.3 } };
  OxProfileFit fit;
  g_assert_cmpint (ox_profile_fit (patches, 2, &fit), ==, OX_FIT_GOOD);
  near (fit.factor, 1.8, 1e-12);
  near (fit.exponent, 1, 1e-12);
  near (ox_profile_depth (&fit, 4), 0.45, 1e-12);
  near (ox_profile_speed (&fit, 0.45), 4, 1e-12);
}

/* Depths made from 2.5 / v^0.8 give that back, without spread, in whatever order they come; speed undoes depth. */
static void
test_fit_recovers (void)
{
  static const double speeds[] = { 6.5, 2, 4.7, 3, 9 };
  OxTestPatch patches[G_N_ELEMENTS (speeds)];
  for (guint i = 0; i < G_N_ELEMENTS (speeds); i++)
    patches[i] = (OxTestPatch){ speeds[i], 2.5 / pow (speeds[i], 0.8) };
  OxProfileFit fit;
  g_assert_cmpint (ox_profile_fit (patches, G_N_ELEMENTS (patches), &fit), ==, OX_FIT_GOOD);
  near (fit.factor, 2.5, 1e-9);
  near (fit.exponent, 0.8, 1e-9);
  near (fit.spread, 1, 1e-6);
  g_assert_cmpfloat (fit.slowest, ==, 2);
  g_assert_cmpfloat (fit.fastest, ==, 9);
  for (double depth = 0.1; depth < 2; depth += 0.1)
    near (ox_profile_depth (&fit, ox_profile_speed (&fit, depth)), depth, 1e-9);
  g_assert_true (ox_profile_is_tried (&fit, 9));
  g_assert_false (ox_profile_is_tried (&fit, 9.1));
}

/* Three patches whose logarithms lie +d, -2 d, +d about a line at equal steps: s = d sqrt 6 on one degree of freedom.
 */
static void
test_fit_spread (void)
{
  double d = log (1.1);
  OxTestPatch patches[] = { { 2, 2 * exp (d) / 2 }, { 4, 2 * exp (-2 * d) / 4 }, { 8, 2 * exp (d) / 8 } };
  OxProfileFit fit;
  g_assert_cmpint (ox_profile_fit (patches, 3, &fit), ==, OX_FIT_GOOD);
  near (fit.exponent, 1, 1e-12);
  near (fit.factor, 2, 1e-12);
  near (fit.spread, exp (d * sqrt (6)), 1e-9);
}

static void
test_fit_reversed (void)
{
  OxTestPatch deeper[] = { { 3, 0.3 }, { 6, 0.6 } };
  OxProfileFit fit;
  g_assert_cmpint (ox_profile_fit (deeper, 2, &fit), ==, OX_FIT_REVERSED);
}

/* ICRI 310.2R-2013: grinding stops at CSP 3, so a floor of CSP 4 and up cannot be matched at its edges by a grinder. */
static void
test_methods (void)
{
  g_assert_cmpint (ox_profile_find_method ("grind")->csp_high, ==, 3);
  g_assert_cmpint (ox_profile_find_method ("shot")->csp_low, ==, 2);
  g_assert_cmpint (ox_profile_find_method ("shot")->csp_high, ==, 9);
  g_assert_null (ox_profile_find_method ("magic"));
  guint n;
  const OxProfileMethod *methods = ox_profile_methods (&n);
  g_assert_cmpuint (n, ==, 12);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpint (methods[i].csp_low, >=, 1);
      g_assert_cmpint (methods[i].csp_high, >=, methods[i].csp_low);
      g_assert_cmpint (methods[i].csp_high, <=, 10);
      g_assert_cmpstr (methods[i].source, !=, "");
    }
}

/* Thicker systems never ask for less. 3, 10, 40 and 125 mil are 0.0762, 0.254, 1.016 and 3.175 mm. */
static void
test_systems (void)
{
  guint n;
  const OxProfileSystem *systems = ox_profile_systems (&n);
  g_assert_cmpuint (n, ==, 6);
  for (guint i = 1; i < n; i++)
    {
      g_assert_cmpfloat (systems[i].thick_low_mm, >=, systems[i - 1].thick_low_mm);
      g_assert_cmpint (systems[i].csp_high, >=, systems[i - 1].csp_high);
    }
  g_assert_cmpfloat (systems[n - 1].thick_high_mm, ==, 0);
}

static void
test_starter (void)
{
  near (ox_profile_starter (3).depth_high_mm, 0.3, 1e-12);
  near (ox_profile_starter (4).depth_low_mm, 0.2, 1e-12);
  near (ox_profile_starter (4).depth_high_mm, 0.55, 1e-12);
  near (ox_profile_starter (6).dose_high, 265, 1e-9);
  near (ox_profile_starter (1).depth_low_mm, 0.1, 1e-12);
  near (ox_profile_starter (10).dose_high, 350, 1e-12);
  for (int csp = 2; csp <= 10; csp++)
    {
      OxProfileStarter step = ox_profile_starter (csp), below = ox_profile_starter (csp - 1);
      g_assert_cmpint (step.csp, ==, csp);
      g_assert_cmpint (step.typical, ==, 1);
      g_assert_true (step.depth_low_mm < step.depth_high_mm && step.dose_low < step.dose_high);
      g_assert_true (step.depth_low_mm >= below.depth_low_mm && step.dose_low >= below.dose_low);
    }
}

static void
test_tilt (void)
{
  near (ox_profile_tilt (0.40, 0.60), 0.2, 1e-12);
  near (ox_profile_tilt (0.60, 0.40), -0.2, 1e-12);
  g_assert_cmpfloat (ox_profile_tilt (0.5, 0.5), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/profile/texture-depth/sand-patches", test_texture_depth);
  g_test_add_func ("/trade/profile/dose/examples", test_dose);
  g_test_add_func ("/trade/profile/dose/overlap-raises-the-mean", test_dose_with_overlap);
  g_test_add_func ("/trade/profile/fit/no-patch", test_fit_none);
  g_test_add_func ("/trade/profile/fit/one-patch-scales-by-speed", test_fit_single);
  g_test_add_func ("/trade/profile/fit/one-speed-takes-the-mean", test_fit_one_speed);
  g_test_add_func ("/trade/profile/fit/two-patches-exactly", test_fit_exact);
  g_test_add_func ("/trade/profile/fit/recovers-a-power-law", test_fit_recovers);
  g_test_add_func ("/trade/profile/fit/spread", test_fit_spread);
  g_test_add_func ("/trade/profile/fit/deeper-when-faster-is-refused", test_fit_reversed);
  g_test_add_func ("/trade/profile/starter/grows-with-the-profile", test_starter);
  g_test_add_func ("/trade/profile/tilt/examples", test_tilt);
  g_test_add_func ("/trade/profile/methods/ranges", test_methods);
  g_test_add_func ("/trade/profile/systems/thicker-asks-for-more", test_systems);
  return g_test_run ();
}
