/* Oxturn: tests of estimate/equipment
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "made.h"

static const OxFigure *
find (const OxEstimate *estimate, const char *id)
{
  const OxFigure *figure = ox_estimate_find (estimate, id);
  g_assert_nonnull (figure);
  return figure;
}

/* 20 A over 100 ft of 12 AWG at 120 V: 7.92 V, 6.60 %, too high; 5 % are lost after 75.76 ft (NFPA 70 Chapter 9 Table
 * 8). Such a load asks for a circuit of 25 A, so that a circuit of 20 A, common with these machines, is too small for
 * hours. */
static void
test_supply (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  OxMachine *machine = plan->job->machine;
  machine->volts = 120;
  machine->amperes = 20;
  machine->phases = 1;
  machine->cord_length = 30.48;
  machine->cord_mm2 = 3.31;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "drop-volts")->value, 7.92, 1e-4);
  ox_test_near (find (estimate, "drop-percent")->value, 6.60, 1e-4);
  g_assert_cmpint (find (estimate, "drop-percent")->verdict, ==, OX_VERDICT_STOP);
  ox_test_near (find (estimate, "longest-cord")->value, 30.48 * 5 / 6.60, 1e-3);
  ox_test_near (find (estimate, "circuit")->value, 25, 1e-9);
}

/* A cord that lies between two sizes loses as much as its copper says: half the copper, twice the drop. */
static void
test_cord_between (void)
{
  double drop[2];
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (OxPlan) plan = made_plan (3, 1, "");
      plan->job->machine->cord_mm2 = i == 0 ? 3.31 : 3.4;
      g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
      drop[i] = find (estimate, "drop-volts")->value;
    }
  ox_test_near (drop[0] * 3.31, drop[1] * 3.4, 1e-9);
}

/* 1,272.3 m3/h in 150 mm move at 20 m/s, just enough for heavy dust; 10 % less and it settles. */
static void
test_hose (void)
{
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (OxPlan) plan = made_plan (3, 1, "");
      plan->job->machine->hose_bore = 0.15;
      plan->job->machine->hose_flow = i == 0 ? 1272.5 : 1145;
      g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
      ox_test_near (find (estimate, "hose-velocity")->value, i == 0 ? 20.0 : 18.0, 0.01);
      g_assert_cmpint (find (estimate, "hose-velocity")->verdict, ==, i == 0 ? OX_VERDICT_FINE : OX_VERDICT_STOP);
    }
}

/* Common practice: the wheel is looked at about every 50 h. 49.95 h run leave 3 min, one strip of 1.65 min. */
static void
test_wear (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  plan->job->machine->wear[0].interval_h = 50;
  plan->job->machine->wear[0].run_h = 49.95;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  const OxFigure *wheel = find (estimate, "wear-left-1");
  ox_test_near (wheel->value, 0.05, 1e-9);
  g_assert_cmpint (wheel->verdict, ==, OX_VERDICT_WARN);
  g_assert_nonnull (strstr (wheel->assumption, "strip 2"));
}

/* One for each 500 ft2 begun, common practice: 90 m2 are 968.8 ft2. */
static void
test_checks (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 9, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "profile-checks")->value, 2, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/equipment/supply/published-drop", test_supply);
  g_test_add_func ("/estimate/equipment/supply/cord-between-sizes", test_cord_between);
  g_test_add_func ("/estimate/equipment/hose/keeps-heavy-dust-moving", test_hose);
  g_test_add_func ("/estimate/equipment/wear/check-falls-due", test_wear);
  g_test_add_func ("/estimate/equipment/tests/by-area", test_checks);
  return g_test_run ();
}
