/* Oxturn: tests of estimate/dose
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "made.h"

/* Three strips of 10 m by 0.25 m that overlap by 0.05 m: 7.5 m2 laid on 6.5 m2, 1.0 m2 twice. Closed form. */
static void
test_three_strips (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxDose dose = ox_dose_of (plan);
  static const double expected[] = { 3.5, 5.5, 1.0, 0 };
  for (guint k = 0; k < OX_DOSE_LEVELS; k++)
    ox_test_near (dose.area[k], expected[k], MAX (dose.error_m2, 1e-9));
  g_assert_cmpfloat (dose.error_m2, <, 0.02);
}

/* The floor that a third strip covers as well counts as three, and what lies beyond the floor counts for nothing. */
static void
test_crossing (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  plan->strips[2]
      = (OxStrip){ .order = 3, .coat = 1, .a = { 5, -1 }, .b = { 5, 3 }, .heading = G_PI / 2, .width = 0.25, .minutes = 1 };
  OxDose dose = ox_dose_of (plan);
  /* two lanes cover 4.5 m2, 0.5 m2 of it twice; the third crosses 0.25 m by 1 m, 0.45 m of which the lanes cover */
  static const double expected[]
      = { 10 - 4.5 - 0.25 * 0.55, 4.0 - 0.25 * 0.40 + 0.25 * 0.55, 0.5 - 0.0125 + 0.25 * 0.40, 0.0125 };
  double all = 0;
  for (guint k = 0; k < OX_DOSE_LEVELS; k++)
    {
      ox_test_near (dose.area[k], expected[k], MAX (dose.error_m2, 1e-9));
      all += dose.area[k];
    }
  ox_test_near (all, 10, 1e-9);
}

/* The same three lanes in a second coat cover nothing twice: each coat by itself. */
static void
test_two_coats (void)
{
  g_autoptr (OxPlan) plan = made_plan (6, 1, "");
  for (guint i = 0; i < 3; i++)
    {
      plan->strips[3 + i] = plan->strips[i];
      plan->strips[3 + i].order = 4 + i;
      plan->strips[3 + i].coat = 2;
    }
  plan->n_coats = 2;
  plan->coats = g_new (OxRegion *, 2);
  plan->coats[0] = ox_region_ref (plan->target);
  plan->coats[1] = ox_region_ref (plan->target);
  OxDose dose = ox_dose_of (plan);
  static const double expected[] = { 7, 11, 2, 0 };
  for (guint k = 0; k < OX_DOSE_LEVELS; k++)
    ox_test_near (dose.area[k], expected[k], MAX (dose.error_m2, 1e-9));
}

static void
test_nothing (void)
{
  g_autoptr (OxPlan) plan = made_plan (0, 1, "");
  OxDose dose = ox_dose_of (plan);
  ox_test_near (dose.area[0], 10, 1e-9);
  g_clear_pointer (&plan->target, ox_region_unref);
  plan->target = ox_region_new_empty ();
  dose = ox_dose_of (plan);
  g_assert_cmpfloat (dose.area[0], ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/dose/lanes-side-by-side", test_three_strips);
  g_test_add_func ("/estimate/dose/crosswise-over-lanes", test_crossing);
  g_test_add_func ("/estimate/dose/two-coats", test_two_coats);
  g_test_add_func ("/estimate/dose/no-strip-no-floor", test_nothing);
  return g_test_run ();
}
