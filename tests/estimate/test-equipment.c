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

/* 40 strips on two machines, 20 each. With 3 min and 12 strips to go 13 strips of 1.65 min fit on either machine: the check comes before the fourteenth
 * strip of the first machine. With 24 strips to go neither comes to it. */
static void
test_wear_of_a_crew (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  plan->job->machine->wear[0].interval_h = 50;
  plan->job->machine->wear[0].run_h = 49.95 - 12 * MADE_MINUTES / 60;
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  rules.machines = 2;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, &rules);
  guint machine[40], first = 0, count[2] = { 0, 0 };
  ox_work_split (plan, 2, FALSE, machine);
  for (guint i = 0; i < 40 && first == 0; i++)
    if (machine[i] == 0 && ++count[0] == 14)
      first = i + 1;
  g_autofree char *strip = g_strdup_printf ("before strip %u, in shift 1;", first);
  g_assert_nonnull (strstr (find (estimate, "wear-left-1")->assumption, strip));
  plan->job->machine->wear[0].run_h = 50 - 24 * MADE_MINUTES / 60;
  g_autoptr (OxEstimate) none = ox_estimate_new (plan, &rules);
  g_assert_nonnull (strstr (find (none, "wear-left-1")->assumption, "no check within this job"));
  g_assert_cmpint (find (none, "wear-left-1")->verdict, ==, OX_VERDICT_FINE);
}

/* One for each 500 ft2 begun, common practice: 90 m2 are 968.8 ft2. */
static void
test_checks (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 9, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "profile-checks")->value, 2, 1e-9);
  g_assert_nonnull (strstr (find (estimate, "profile-checks")->assumption, "setting")); /* no standard asks for them */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/equipment/hose/keeps-heavy-dust-moving", test_hose);
  g_test_add_func ("/estimate/equipment/wear/check-falls-due", test_wear);
  g_test_add_func ("/estimate/equipment/wear/of-a-crew", test_wear_of_a_crew);
  g_test_add_func ("/estimate/equipment/tests/by-area", test_checks);
  return g_test_run ();
}
