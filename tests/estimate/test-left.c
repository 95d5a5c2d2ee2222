/* Oxturn: tests of estimate/left
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/card.h"
#include "estimate/left.h"
#include <string.h>
#include "made.h"

#define FRIDAY "2026-09-18"

/* The first @n of 40 strips are marked on a Friday, and the meter ran @meter_h then. */
static OxPlan *
begun_plan (guint n, double meter_h)
{
  OxPlan *plan = made_plan (40, 9, "");
  OxDoneStrip marks[40];
  for (guint i = 0; i < n; i++)
    {
      marks[i] = (OxDoneStrip){ .room = (char *) "R1", .a = plan->strips[i].a, .b = plan->strips[i].b, .width = 0.25, .coat = 1, .date = (char *) FRIDAY };
      plan->strips[i].done = i + 1;
    }
  g_autoptr (OxRecord) marked = ox_record_with_strips (plan->job->record, marks, n);
  OxRecord *record = ox_record_with_day (marked, &(OxRecordDay){ (char *) FRIDAY, 100, 100 + meter_h, NULL, 1 });
  ox_record_unref (plan->job->record);
  ((OxJob *) plan->job)->record = record;
  return plan;
}

static const OxFigure *
find (const OxEstimate *estimate, const char *id)
{
  const OxFigure *figure = ox_estimate_find (estimate, id);
  g_assert_nonnull (figure);
  return figure;
}

static void
test_nothing_done (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_assert_null (ox_left_work (plan, &rules));
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_assert_null (ox_estimate_find (estimate, "left-shifts"));
}

/* 25 of 40 done on Friday: the other 15 strips, each once, with 14 moves between them, and all edge work; on Monday. */
static void
test_strips (void)
{
  g_autoptr (OxPlan) plan = begun_plan (25, 1);
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_autoptr (OxWork) left = ox_left_work (plan, &rules);
  guint laid[40] = { 0 };
  double minutes = 0, edge = 0;
  for (guint i = 0; i < left->pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (left->pieces, OxPiece, i);
      if (piece->kind == OX_PIECE_STRIP)
        laid[piece->index]++;
      *(piece->kind == OX_PIECE_EDGE ? &edge : &minutes) += piece->minutes;
    }
  for (guint i = 0; i < 40; i++)
    g_assert_cmpuint (laid[i], ==, i < 25 ? 0 : 1);
  ox_test_near (minutes, 15 * (MADE_MINUTES + MADE_START) + 14 * MADE_MOVE, 1e-9);
  ox_test_near (edge, 142.5, 1e-9);
  g_assert_cmpstr (g_array_index (left->shifts, OxShift, 0).day, ==, "2026-09-21");
  rules.first_day = "2026-10-05"; /* a Monday, later than the record */
  g_autoptr (OxWork) later = ox_left_work (plan, &rules);
  g_assert_cmpstr (g_array_index (later->shifts, OxShift, 0).day, ==, "2026-10-05");
}

/* What was done by hand is not to do again. */
static void
test_edges (void)
{
  g_autoptr (OxPlan) plan = begun_plan (40, 1);
  plan->edges[0].done = 1;
  OxWorkRules rules;
  ox_work_rules_of (&rules, plan->job);
  g_autoptr (OxWork) left = ox_left_work (plan, &rules);
  g_assert_cmpuint (left->pieces->len, ==, 0);
  g_assert_cmpuint (left->n_shifts, ==, 0);
}

/* A wheel looked at every 50 h, 40 h run: 9.95 h on the meter leave 3 min, one strip of 1.65 min. So the check comes before the second strip that is
 * left, number 27, though by the hours at the start of the job none would fall due. */
static void
test_wear (void)
{
  g_autoptr (OxPlan) plan = begun_plan (25, 9.95);
  plan->job->machine->wear[0].interval_h = 50;
  plan->job->machine->wear[0].run_h = 40;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "wear-left-1")->value, 0.05, 1e-9);
  ox_test_near (ox_card_part_run (estimate, 0), 49.95, 1e-9); /* as the set-up card has it */
  g_assert_true (ox_card_brings_part (estimate, 0));
  g_assert_nonnull (strstr (find (estimate, "wear-left-1")->assumption, "before strip 27"));
  g_assert_cmpint (find (estimate, "wear-left-1")->verdict, ==, OX_VERDICT_WARN);
}

/* The whole plan's figures stay, to be held against what was needed; what is left stands beside them: 15 strips, 14 moves, 142.5 min by hand, a check and
 * one shift's 90 min around it. */
static void
test_figures (void)
{
  g_autoptr (OxPlan) whole = made_plan (40, 9, ""), plan = begun_plan (25, 1);
  g_autoptr (OxEstimate) before = ox_estimate_new (whole, NULL), estimate = ox_estimate_new (plan, NULL);
  ox_test_near (find (estimate, "crew-hours")->value, find (before, "crew-hours")->value, 1e-9);
  ox_test_near (find (estimate, "left-hours")->value, (15 * (MADE_MINUTES + MADE_START) + 14 * MADE_MOVE + 142.5 + 90) / 60, 1e-9);
  ox_test_near (find (estimate, "left-shifts")->value, 1, 1e-9);
  g_assert_nonnull (strstr (find (estimate, "left-shifts")->assumption, "2026-09-21"));
  g_assert_nonnull (strstr (find (estimate, "left-shifts")->assumption, "15 of 40"));
}

/* Two machines share what is left, not what is done: neither is without work. */
static void
test_crew (void)
{
  g_autoptr (OxPlan) plan = begun_plan (20, 1);
  guint machine[40], count[2] = { 0, 0 };
  ox_work_split (plan, 2, TRUE, machine);
  for (guint i = 20; i < 40; i++)
    count[machine[i]]++;
  g_assert_cmpuint (MAX (count[0], count[1]) - MIN (count[0], count[1]), <=, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/left/nothing-done", test_nothing_done);
  g_test_add_func ("/estimate/left/strips", test_strips);
  g_test_add_func ("/estimate/left/edges", test_edges);
  g_test_add_func ("/estimate/left/wear-by-the-meter", test_wear);
  g_test_add_func ("/estimate/left/figures", test_figures);
  g_test_add_func ("/estimate/left/crew", test_crew);
  return g_test_run ();
}
