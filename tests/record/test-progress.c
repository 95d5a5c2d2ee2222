/* Oxturn: tests/record/test-progress
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/progress.h"
#include "estimate/made.h"
#include "marked.h"
#include "plan/done.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* Four strips of 2.5 m2, each of which overlaps the one before by 0.5 m2, and moves of half a minute: two strips done on Monday, one on Tuesday. */
static void
test_closed_form (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = made_plan (4, 2, "CSP 3");
  plan->totals.coats_m2 = plan->totals.blasted_m2;
  g_autoptr (OxJob) monday = marked_job (plan->job, plan, "1-2", NULL, &(OxMark){ "2026-09-14", NULL, 3, 0.4 });
  g_autoptr (OxJob) tuesday = marked_job (monday, plan, "3", NULL, &(OxMark){ "2026-09-15", NULL, 4, 0.7 });
  g_autoptr (OxJob) job
      = ox_mark_day (tuesday, &(OxRecordDay){ (char *) "2026-09-14", 10, 11.5, (char *) "cold", 1 }, &error);
  g_assert_no_error (error);
  ox_job_unref (plan->job);
  plan->job = ox_job_ref (job);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  ox_done_strips (plan, floor);
  g_autoptr (OxProgress) progress = ox_progress_new (plan);
  g_assert_cmpuint (progress->n_days, ==, 2);
  const OxProgressDay *day = &progress->days[0];
  g_assert_cmpstr (day->date, ==, "2026-09-14");
  g_assert_cmpstr (day->strip_numbers, ==, "1, 2");
  g_assert_cmpuint (day->strips, ==, 2);
  ox_test_near (day->strip_m, 19.8, 1e-9);
  ox_test_near (day->blasted_m2, 4.5, 1e-6);
  ox_test_near (day->strip_hours, 2 * MADE_MINUTES / 60, 1e-9);
  ox_test_near (day->move_hours, MADE_MOVE / 60, 1e-9);
  ox_test_near (day->meter_hours, 1.5, 1e-9);
  ox_test_near (day->depth_mm, 0.4, 1e-9);
  g_assert_cmpstr (day->notes, ==, "cold");
  day = &progress->days[1];
  g_assert_false (day->metered);
  ox_test_near (day->blasted_m2, 2, 1e-6);
  ox_test_near (day->move_hours, MADE_MOVE / 60, 1e-9);
  g_assert_cmpuint (progress->done.least_csp, ==, 3);
  g_assert_cmpuint (progress->done.most_csp, ==, 4);
  ox_test_near (progress->done.depth_mm, (0.4 + 0.4 + 0.7) / 3, 1e-9);
  g_assert_cmpstr (progress->done.strip_numbers, ==, "1–3");
  g_assert_cmpuint (progress->left.strips, ==, 1);
  ox_test_near (progress->left.blasted_m2, 2, 1e-6);
  ox_test_near (progress->finished_m2, 6.5, 1e-6);
  ox_test_near (progress->left_m2, 13.5, 1e-6);
}

/* 20 m2 less 8.5 are 11.5 m2 in one edge area: 10 m long it is wide and goes at 4 m2/h, 20 m long narrow and at 5 m/h, on its day as in the plan. */
static void
test_edge_hours (void)
{
  static const double lengths[] = { 10, 20 }, hours[] = { 11.5 / 4, 20.0 / 5 };
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (OxPlan) plan = made_plan (4, 2, NULL);
      ((OxJob *) plan->job)->rates.edge_m_per_hour = 5;
      plan->edges[0].length = lengths[i];
      g_autoptr (OxProgress) progress = ox_progress_new (plan);
      ox_test_near (progress->left.edge_hours, hours[i], 1e-9);
      ox_test_near (ox_plan_edge_hours (plan->job, &plan->edges[0]), hours[i], 1e-9);
    }
}

/* Done and left are the whole plan, and the days are what is done, on floors of all kinds. */
static void
test_sums (void)
{
  for (guint32 seed = 0; seed < 8; seed++)
    {
      g_autoptr (OxJob) job = ox_test_floor_random (seed);
      g_autoptr (OxPlan) plan = marked_plan (job);
      if (plan->n_strips < 4 || plan->n_edges < 2)
        continue;
      g_autoptr (OxJob) monday = marked_job (job, plan, "-3", "E1", &(OxMark){ .date = "2026-09-14" });
      g_autoptr (OxJob) tuesday = marked_job (monday, plan, "4", NULL, &(OxMark){ .date = "2026-09-15" });
      g_autoptr (OxPlan) later = marked_plan (tuesday);
      g_autoptr (OxProgress) progress = ox_progress_new (later);
      const OxProgressDay *done = &progress->done, *left = &progress->left;
      const OxTotals *totals = &later->totals;
      g_assert_cmpuint (done->strips, ==, 4);
      g_assert_cmpuint (done->strips + left->strips, ==, totals->strips);
      ox_test_near (done->strip_m + left->strip_m, totals->strip_m, 1e-6);
      ox_test_near (done->strip_hours + left->strip_hours, totals->strip_hours, 1e-9);
      ox_test_near (done->move_hours + left->move_hours, totals->move_hours, 1e-9);
      ox_test_near (done->edge_m2 + left->edge_m2, totals->edge_m2, 1e-6);
      ox_test_near (done->edge_hours + left->edge_hours, totals->edge_hours, 1e-9);
      ox_test_near (progress->finished_m2 + progress->left_m2, totals->target_m2, 1e-6);
      g_assert_cmpuint (progress->lost, ==, 0);
      double days = 0;
      for (guint i = 0; i < progress->n_days; i++)
        days += progress->days[i].blasted_m2;
      ox_test_near (days, done->blasted_m2, 1e-9);
      ox_test_near (ox_progress_hours (done) + ox_progress_hours (left), totals->labour_hours, 1e-9);
    }
}

/* Everything done leaves nothing. */
static void
test_finished (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 5, "compact");
  g_autoptr (OxPlan) plan = marked_plan (job);
  g_autoptr (OxJob) all = marked_job (job, plan, "1-", "E1-", &(OxMark){ .date = "2026-09-14" });
  g_autoptr (OxPlan) later = marked_plan (all);
  g_autoptr (OxProgress) progress = ox_progress_new (later);
  g_assert_cmpuint (progress->left.strips + progress->left.edges, ==, 0);
  ox_test_near (progress->left_m2, 0, 0.01);
  ox_test_near (progress->finished_m2, 30, 0.01);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/progress/closed-form", test_closed_form);
  g_test_add_func ("/record/progress/edge-hours", test_edge_hours);
  g_test_add_func ("/record/progress/sums", test_sums);
  g_test_add_func ("/record/progress/finished", test_finished);
  return g_test_run ();
}
