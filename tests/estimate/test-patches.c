/* Oxturn: tests/estimate/test-patches - what the test patches of a job say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/patches.h"

#include <math.h>
#include <string.h>

/* 50 ml over 200 mm: 4 V / (pi D^2), ASTM E965. What was measured another way goes before it. */
static void
test_depth (void)
{
  OxPatch patch = { .volume_ml = 50, .n_diameters = 4, .diameters_mm = { 196, 204, 198, 202 } };

  g_assert_cmpfloat_with_epsilon (ox_patch_depth (&patch), 4 * 50e3 / (G_PI * 200 * 200), 1e-12);
  patch.depth_mm = 0.7;
  g_assert_cmpfloat (ox_patch_depth (&patch), ==, 0.7);
  patch = (OxPatch){ .volume_ml = 50 };
  g_assert_cmpfloat (ox_patch_depth (&patch), ==, 0);
  patch = (OxPatch){ .n_diameters = 1, .diameters_mm = { 200 } };
  g_assert_cmpfloat (ox_patch_depth (&patch), ==, 0);
}

/* 1.8 / v lies exactly on 0.6 mm at 3 and 0.3 mm at 6 m/min; a patch without a depth has no say. */
static void
test_fit (void)
{
  OxPatch items[] = { { .speed_m_per_min = 3, .depth_mm = 0.6 },
                      { .speed_m_per_min = 50 },
                      { .speed_m_per_min = 6, .depth_mm = 0.3 } };
  OxPatches patches = { 3, items };
  OxProfileFit fit;
  guint n;

  g_assert_cmpint (ox_patches_fit (&patches, &fit, &n), ==, OX_FIT_GOOD);
  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpfloat_with_epsilon (ox_profile_speed (&fit, 0.45), 4, 1e-9);
  g_assert_cmpfloat (fit.fastest, ==, 6);
  patches.n = 0;
  g_assert_cmpint (ox_patches_fit (&patches, &fit, &n), ==, OX_FIT_NO_PATCH);
  g_assert_cmpuint (n, ==, 0);
}

/* 0.40 mm left and 0.60 mm right are 20 %: the right side is cut deeper, the pattern goes left; 5 % and less stay. */
static void
test_trial (void)
{
  static const struct
  {
    double left, right, balance;
    const char *way;
  } rows[] = {
    { 0.4, 0.6, 20, "goes left" }, { 0.6, 0.4, -20, "goes right" }, { 0.5, 0.5, 0, "leave" }, { 0.49, 0.51, 2, "leave" }
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      OxPatch patch = { .left_mm = rows[i].left, .right_mm = rows[i].right };
      g_autofree char *advice = ox_patch_advice_text (&patch);
      g_assert_cmpfloat_with_epsilon (ox_patch_balance (&patch), rows[i].balance, 1e-9);
      g_assert_nonnull (strstr (advice, rows[i].way));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/patches/depth", test_depth);
  g_test_add_func ("/estimate/patches/fit", test_fit);
  g_test_add_func ("/estimate/patches/trial", test_trial);
  return g_test_run ();
}
