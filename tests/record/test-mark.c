/* Oxturn: tests/record/test-mark
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "marked.h"
#include "support/floors.h"
#include "support/ox-test.h"

static const OxMark monday = { "2026-09-14", "first day", 3, 0.42 };

static guint
count_done (const OxPlan *plan)
{
  guint n = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    n += plan->strips[i].done > 0;
  return n;
}

static void
assert_same_strips (const OxPlan *a, const OxPlan *b)
{
  g_assert_cmpuint (a->n_strips, ==, b->n_strips);
  for (guint i = 0; i < a->n_strips; i++)
    {
      OxStrip p = a->strips[i], q = b->strips[i];
      p.done = q.done = 0;
      g_assert_true (p.order == q.order && p.lane == q.lane && p.kind == q.kind && p.minutes == q.minutes);
      g_assert_true (p.a.x == q.a.x && p.a.y == q.a.y && p.b.x == q.b.x && p.b.y == q.b.y);
    }
}

/* Marking changes nothing in the plan but the marks, and taking back takes back. */
static void
test_strips (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 9, 0.4, 4, "compact");
  g_autoptr (OxPlan) plan = marked_plan (job);
  g_autoptr (OxJob) begun = marked_job (job, plan, "-9", NULL, &monday);
  g_autoptr (OxPlan) later = marked_plan (begun);
  assert_same_strips (plan, later);
  g_assert_cmpuint (count_done (later), ==, 9);
  for (guint i = 0; i < later->n_strips; i++)
    g_assert_cmpint (later->strips[i].done > 0, ==, i < 9);
  const OxDoneStrip *mark = &begun->record->strips[later->strips[4].done - 1];
  g_assert_cmpstr (mark->note, ==, "first day");
  g_assert_cmpstr (mark->room, ==, "R1");
  g_assert_cmpuint (mark->csp, ==, 3);
  g_autoptr (GArray) numbers = ox_which_strips (later, "3-9", &error);
  g_autoptr (OxJob) back = ox_unmark_strips (begun, later, numbers, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) again = marked_plan (back);
  g_assert_cmpuint (count_done (again), ==, 2);
  g_assert_cmpuint (back->record->n_strips, ==, 2);
}

static void
test_edges (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 9, 0.4, 4, "compact");
  g_autoptr (OxPlan) plan = marked_plan (job);
  g_assert_cmpuint (plan->n_edges, >=, 4);
  g_autoptr (OxJob) begun = marked_job (job, plan, NULL, "E1, E3", &monday);
  g_autoptr (OxPlan) later = marked_plan (begun);
  assert_same_strips (plan, later);
  g_assert_cmpuint (later->n_edges, ==, plan->n_edges);
  for (guint i = 0; i < later->n_edges; i++)
    {
      g_assert_cmpint (later->edges[i].done > 0, ==, i == 0 || i == 2);
      ox_test_near (later->edges[i].area, plan->edges[i].area, 1e-9);
    }
  g_autoptr (GArray) numbers = ox_which_edges (later, "E1", &error);
  g_autoptr (OxJob) back = ox_unmark_edges (begun, later, numbers, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) again = marked_plan (back);
  g_assert_cmpuint (again->edges[0].done, ==, 0);
  g_assert_cmpuint (again->edges[2].done, >, 0);
}

/* A run over an earlier day's work leaves that day its marks; one strip or edge area alone is marked anew. */
static void
test_two_days (void)
{
  const OxMark tuesday = { "2026-09-15", NULL, 5, 0 };
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 9, 0.4, 4, "compact");
  g_autoptr (OxPlan) plan = marked_plan (job);
  g_autoptr (OxJob) begun = marked_job (job, plan, "-4", "E1-E2", &monday);
  g_autoptr (OxPlan) later = marked_plan (begun);
  g_autoptr (OxJob) run = marked_job (begun, later, "-6", "E1-E3", &tuesday);
  g_assert_cmpuint (run->record->n_strips, ==, 6);
  g_assert_cmpuint (run->record->n_edges, ==, 3);
  for (guint i = 0; i < 6; i++)
    {
      g_assert_cmpstr (run->record->strips[i].date, ==, i < 4 ? "2026-09-14" : "2026-09-15");
      g_assert_cmpstr (run->record->strips[i].note, ==, i < 4 ? "first day" : "");
      g_assert_cmpuint (run->record->strips[i].csp, ==, i < 4 ? 3 : 5);
    }
  for (guint i = 0; i < 3; i++)
    g_assert_cmpstr (run->record->edges[i].date, ==, i < 2 ? "2026-09-14" : "2026-09-15");
  /* With the plan of the morning, which does not know what is done, it is the same. */
  g_autoptr (OxJob) stale = marked_job (begun, plan, "-6", NULL, &tuesday);
  g_assert_cmpstr (stale->record->strips[0].date, ==, "2026-09-14");
  g_autoptr (OxJob) nothing = marked_job (begun, later, "-4", NULL, &tuesday);
  g_assert_true (nothing == begun);
  g_autoptr (OxJob) alone = marked_job (begun, later, "2", "E1", &tuesday);
  g_assert_cmpuint (alone->record->n_strips, ==, 4);
  g_assert_cmpuint (alone->record->n_edges, ==, 2);
  g_assert_cmpstr (alone->record->strips[1].date, ==, "2026-09-15");
  g_assert_cmpstr (alone->record->strips[0].date, ==, "2026-09-14");
  g_autoptr (OxPlan) last = marked_plan (alone);
  g_assert_cmpstr (alone->record->edges[last->edges[0].done - 1].date, ==, "2026-09-15");
  g_assert_cmpstr (alone->record->edges[last->edges[1].done - 1].date, ==, "2026-09-14");
}

/* Without a date nothing is marked. */
static void
test_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (8, 6, "compact");
  g_autoptr (OxPlan) plan = marked_plan (job);
  g_autoptr (GArray) numbers = ox_which_strips (plan, "1", &error);
  g_assert_null (ox_mark_strips (job, plan, numbers, &(OxMark){ .date = "soon" }, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
}

static void
test_days (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (8, 6, "compact");
  g_autoptr (OxJob) set = ox_mark_day (job, &(OxRecordDay){ (char *) "2026-09-14", 5, 9.5, NULL, 1 }, &error);
  g_assert_no_error (error);
  ox_test_near (ox_record_meter_hours (set->record, 1), 4.5, 1e-12);
  g_autoptr (OxJob) gone = ox_unmark_day (set, "2026-09-14", &error);
  g_assert_no_error (error);
  g_assert_true (ox_record_is_empty (gone->record));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/mark/strips", test_strips);
  g_test_add_func ("/record/mark/edges", test_edges);
  g_test_add_func ("/record/mark/two-days", test_two_days);
  g_test_add_func ("/record/mark/refused", test_refused);
  g_test_add_func ("/record/mark/days", test_days);
  return g_test_run ();
}
