/* Oxturn: tests of estimate/exposure
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

/* 89.5 min at the machine, 95 dB(A) (common practice, no source), and 142.5 min by hand, 97 dB(A) (NIOSHTIC-2 20043139): by the formulas of Directive
 * 2003/10/EC and 29 CFR 1926.52. */
static void
test_noise (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  double machine = 89.5 / 60, hand = 142.5 / 60;
  ox_test_near (find (estimate, "noise-day")->value, 10 * log10 ((machine * pow (10, 9.5) + hand * pow (10, 9.7)) / 8), 1e-9);
  ox_test_near (find (estimate, "noise-dose")->value, 100 * (machine / 4 + hand * pow (2, 7.0 / 5) / 8), 1e-9);
  g_assert_cmpint (find (estimate, "noise-day")->verdict, ==, OX_VERDICT_WARN);
  g_assert_nonnull (strstr (find (estimate, "noise-day")->assumption, "not measured"));
}

/* 1.16 mg/m3 (doi 10.1093/annhyg/mef043) for 2.375 h: 344 ug/m3 over the day, far beyond 50 (29 CFR 1926.1153); 25 are reached in 0.172 h. A cup of
 * 125 mm takes 25 * 125 / 25.4 ft3/min. */
static void
test_edge_work (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "silica-day")->value, 1160 * 2.375 / 8, 1e-9);
  g_assert_cmpint (find (estimate, "silica-day")->verdict, ==, OX_VERDICT_WARN);
  ox_test_near (find (estimate, "silica-hours")->value, 25.0 * 8 / 1160, 1e-9);
  ox_test_near (find (estimate, "shroud-air")->value, 25 * 125 / 25.4 * 1.69901, 1e-3);
}

static void
set_calendar (OxPlan *plan, const OxCalendar *draft)
{
  OxCalendar *calendar = ox_calendar_new (draft); /* first: the texts of @draft may be the old one's */
  ox_calendar_unref (plan->job->calendar);
  ((OxJob *) plan->job)->calendar = calendar;
}

/* By hand little enough for the day, and nobody measured at the machine: no figure says that this is fine. */
static void
test_half_measured (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  OxCalendar draft = *plan->job->calendar;
  draft.silica_hand = 5;
  set_calendar (plan, &draft);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_assert_cmpint (find (estimate, "silica-day")->verdict, ==, OX_VERDICT_NONE);
  draft = *plan->job->calendar;
  draft.silica_machine = 5;
  set_calendar (plan, &draft);
  g_autoptr (OxEstimate) known = ox_estimate_new (plan, NULL);
  g_assert_cmpint (find (known, "silica-day")->verdict, ==, OX_VERDICT_FINE);
}

/* Measured: 88 dB(A) at the machine; 30 and 200 ug/m3 of silica. They take the place of what is common, and the machine's share comes in. */
static void
test_measured (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  OxCalendar draft = *plan->job->calendar;
  draft.noise_db = 88;
  draft.silica_machine = 30;
  draft.silica_hand = 200;
  set_calendar (plan, &draft);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  double machine = 89.5 / 60, hand = 142.5 / 60;
  ox_test_near (find (estimate, "noise-day")->value, 10 * log10 ((machine * pow (10, 8.8) + hand * pow (10, 9.7)) / 8), 1e-9);
  ox_test_near (find (estimate, "silica-day")->value, (30 * machine + 200 * hand) / 8, 1e-9);
  g_assert_nonnull (strstr (find (estimate, "silica-day")->assumption, "as measured"));
  ox_test_near (find (estimate, "silica-hours")->value, 25.0 * 8 / 200, 1e-9);
}

/* Without edge work nothing is said of it. */
static void
test_no_edge_work (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  ox_region_unref (plan->edges[0].region);
  g_free (plan->edges[0].id);
  plan->n_edges = 0;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_assert_nonnull (ox_estimate_find (estimate, "noise-day"));
  g_assert_null (ox_estimate_find (estimate, "silica-day"));
  g_assert_null (ox_estimate_find (estimate, "shroud-air"));
}

/* The worst shift counts: 300 min by hand are cut over two shifts, 110.5 min after the strips and 189.5 min on the day after. */
static void
test_worst_shift (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  rules.shift_min = 200 + rules.break_min + rules.setup_min + rules.cleanup_min;
  plan->edges[0].area = 20;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, &rules);
  ox_test_near (find (estimate, "silica-day")->value, 1160 * 189.5 / 60 / 8, 1e-6);
}

/* What was not measured has no figure, for 0 would read as clean air. */
static void
test_not_measured (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  const char *text = find (estimate, "silica-day")->assumption;
  g_assert_true (g_str_has_prefix (text, "1.5 h at the machine, not measured, and 2.4 h by hand at 1160, the mean of a study;"));
  g_assert_null (strstr (text, "at 0 "));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/exposure/noise", test_noise);
  g_test_add_func ("/estimate/exposure/edge-work", test_edge_work);
  g_test_add_func ("/estimate/exposure/measured", test_measured);
  g_test_add_func ("/estimate/exposure/half-measured", test_half_measured);
  g_test_add_func ("/estimate/exposure/no-edge-work", test_no_edge_work);
  g_test_add_func ("/estimate/exposure/worst-shift", test_worst_shift);
  g_test_add_func ("/estimate/exposure/not-measured", test_not_measured);
  return g_test_run ();
}
