/* Oxturn: tests/session/test-marking
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/marking.h"
#include "support/floors.h"
#include "support/wait.h"

static const OxMark today = { .date = "2026-09-14" };

static OxSession *
new_session (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  return ox_session_new (job, ox_plan_new, NULL);
}

static guint
count_done (OxSession *session)
{
  const OxPlan *plan = ox_session_find_plan (session);
  guint n = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    n += plan->strips[i].done > 0;
  return n;
}

/* Up to here, one taken back, undo: each is one step, and numbers stay. */
static void
test_strips (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxSession) session = new_session ();
  g_assert_false (ox_marking_mark_strips (session, "1", &today, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM);
  g_clear_error (&error);
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_true (ox_marking_mark_strips (session, "-5", &today, &error));
  g_assert_no_error (error);
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_cmpuint (count_done (session), ==, 5);
  g_assert_true (ox_marking_unmark_strips (session, "5", &error));
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_cmpuint (count_done (session), ==, 4);
  g_assert_false (ox_marking_mark_strips (session, "9999", &today, &error));
  g_assert_error (error, OX_WHICH_ERROR, OX_WHICH_ERROR_RANGE);
  g_assert_true (ox_session_undo (session));
  g_assert_true (ox_session_undo (session));
  g_assert_false (ox_session_is_modified (session));
  ox_session_close (session);
}

static void
test_edges_and_days (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxSession) session = new_session ();
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_true (ox_marking_mark_edges (session, "E1", &today, &error));
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_cmpuint (ox_session_find_plan (session)->edges[0].done, ==, 1);
  g_assert_true (ox_marking_unmark_edges (session, "E1", &error));
  g_assert_cmpuint (ox_session_get_job (session)->record->n_edges, ==, 0);
  g_assert_true (ox_marking_set_day (session, &(OxRecordDay){ (char *) "2026-09-14", 1, 2, NULL, 1 }, &error));
  g_assert_cmpuint (ox_session_get_job (session)->record->n_days, ==, 1);
  g_assert_false (ox_marking_set_day (session, &(OxRecordDay){ (char *) "2026-09-15", 3, 2, NULL, 1 }, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_true (ox_marking_remove_day (session, "2026-09-14", &error));
  g_assert_true (ox_record_is_empty (ox_session_get_job (session)->record));
  ox_session_close (session);
}

/* The middle of a strip is found, beyond the floor is nothing; where two overlap the one to be done comes first. */
static void
test_under_the_pointer (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  const OxStrip *strip = &plan->strips[6];
  OxPoint middle = ox_point_scale (ox_point_add (strip->a, strip->b), 0.5);
  g_assert_cmpuint (ox_marking_strip_at (plan, middle), ==, 7);
  g_assert_cmpuint (ox_marking_strip_at (plan, (OxPoint){ -3, 4 }), ==, 0);
  g_assert_cmpuint (ox_marking_edge_at (plan, middle), ==, 0);
  g_assert_cmpuint (ox_marking_edge_at (plan, (OxPoint){ 0.01, 0.01 }), >, 0);
  /* 1 cm within the edge of strip 7, where its neighbour lies as well */
  OxPoint along = { cos (strip->heading), sin (strip->heading) };
  OxPoint aside = { middle.x - along.y * (strip->width / 2 - 0.01), middle.y + along.x * (strip->width / 2 - 0.01) };
  guint first = ox_marking_strip_at (plan, aside);
  plan->strips[first - 1].done = 1;
  guint second = ox_marking_strip_at (plan, aside);
  g_assert_cmpuint (second, >, 0);
  g_assert_cmpuint (second, !=, first);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/marking/strips", test_strips);
  g_test_add_func ("/session/marking/edges-and-days", test_edges_and_days);
  g_test_add_func ("/session/marking/under-the-pointer", test_under_the_pointer);
  return g_test_run ();
}
