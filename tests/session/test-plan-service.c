/* Oxturn: tests/session/test-plan-service - plans off the main thread, the latest job wins.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/plan-service.h"

#include "job/edit.h"
#include "support/floors.h"
#include "support/wait.h"

/* A planner that waits at a gate, so that a test decides when a plan is ready. */
static struct
{
  GMutex mutex;
  GCond cond;
  gboolean open;  /* plans come at once */
  gint runs;      /* begun */
  gint at_once;   /* under way in this moment */
  gint most;      /* at any moment */
  gint cancelled; /* gave up */
} gate;

static OxPlan *
gated_plan (const OxJob *job, OxRun *run, GError **error)
{
  OxPlan *plan = NULL;
  gint64 until = g_get_monotonic_time () + 20 * G_TIME_SPAN_SECOND;

  g_mutex_lock (&gate.mutex);
  gate.runs++;
  gate.at_once++;
  gate.most = MAX (gate.most, gate.at_once);
  g_mutex_unlock (&gate.mutex);
  ox_run_step (run, "Waiting", 1, 4);
  g_mutex_lock (&gate.mutex);
  while (!gate.open && !ox_run_cancelled (run, NULL) && g_get_monotonic_time () < until)
    g_cond_wait_until (&gate.cond, &gate.mutex, g_get_monotonic_time () + G_TIME_SPAN_MILLISECOND);
  gate.at_once--;
  if (ox_run_cancelled (run, error))
    gate.cancelled++;
  g_mutex_unlock (&gate.mutex);
  if (error == NULL || *error == NULL)
    {
      plan = ox_plan_new (job, NULL, error);
      g_assert_nonnull (plan);
    }
  return plan;
}

static void
set_gate (gboolean open)
{
  g_mutex_lock (&gate.mutex);
  gate.open = open;
  gate.runs = gate.most = gate.cancelled = 0;
  g_cond_broadcast (&gate.cond);
  g_mutex_unlock (&gate.mutex);
}

typedef struct
{
  guint planned;
  guint failed;
  OxPlan *last;
} Seen;

static void
planned_cb (OxPlanService *service, OxPlan *plan, const GError *error, Seen *seen)
{
  (void) service;
  g_assert_true ((plan == NULL) == (error != NULL));
  g_clear_pointer (&seen->last, ox_plan_unref);
  if (plan != NULL)
    seen->last = ox_plan_ref (plan);
  *(plan != NULL ? &seen->planned : &seen->failed) += 1;
}

static OxPlanService *
new_service (OxPlanFunc func, Seen *seen)
{
  OxPlanService *service = ox_plan_service_new (func);

  g_signal_connect (service, "planned", G_CALLBACK (planned_cb), seen);
  return service;
}

static void
test_plan (void)
{
  Seen seen = { 0 };
  g_autoptr (OxPlanService) service = new_service (ox_plan_new, &seen);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");

  ox_plan_service_request (service, job);
  g_assert_true (ox_plan_service_is_running (service));
  OX_WAIT_FOR (seen.planned == 1);
  g_assert_true (seen.last->job == job);
  g_assert_cmpfloat_with_epsilon (seen.last->totals.target_m2, 80, 1e-9);
  g_assert_false (ox_plan_service_is_running (service));
  g_assert_cmpfloat (ox_plan_service_get_progress (service, NULL), ==, -1);
  ox_plan_unref (seen.last);
}

static void
test_latest_wins (void)
{
  enum
  {
    REQUESTS = 20
  };
  Seen seen = { 0 };
  g_autoptr (OxPlanService) service = new_service (gated_plan, &seen);
  OxJob *jobs[REQUESTS];

  g_test_summary (
      "20 requests while the first plan is under way give two runs, never two at once, and the last one's plan");
  set_gate (FALSE);
  for (guint i = 0; i < REQUESTS; i++)
    {
      jobs[i] = ox_test_floor_rectangle (5 + i, 4, "compact");
      ox_plan_service_request (service, jobs[i]);
    }
  OX_WAIT_FOR (g_atomic_int_get (&gate.cancelled) == 1 && g_atomic_int_get (&gate.runs) == 2);
  g_assert_cmpuint (seen.planned + seen.failed, ==, 0);
  g_mutex_lock (&gate.mutex);
  gate.open = TRUE;
  g_mutex_unlock (&gate.mutex);
  OX_WAIT_FOR (!ox_plan_service_is_running (service));
  g_assert_cmpuint (seen.planned, ==, 1);
  g_assert_cmpuint (seen.failed, ==, 0);
  g_assert_true (seen.last->job == jobs[REQUESTS - 1]);
  g_assert_cmpint (gate.runs, ==, 2);
  g_assert_cmpint (gate.most, ==, 1);
  for (guint i = 0; i < REQUESTS; i++)
    ox_job_unref (jobs[i]);
  ox_plan_unref (seen.last);
}

static void
test_progress (void)
{
  Seen seen = { 0 };
  g_autoptr (OxPlanService) service = new_service (gated_plan, &seen);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  const char *doing = NULL;

  set_gate (FALSE);
  ox_plan_service_request (service, job);
  while (ox_plan_service_get_progress (service, &doing) < 0)
    g_thread_yield ();
  g_assert_cmpfloat_with_epsilon (ox_plan_service_get_progress (service, &doing), 0.25, 1e-9);
  g_assert_cmpstr (doing, ==, "Waiting");
  ox_plan_service_stop (service);
  OX_WAIT_FOR (!ox_plan_service_is_running (service));
  g_assert_cmpuint (seen.planned + seen.failed, ==, 0);
}

static void
test_error (void)
{
  Seen seen = { 0 };
  g_autoptr (OxPlanService) service = new_service (ox_plan_new, &seen);
  g_autoptr (OxJob) good = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxMachine) machine = ox_machine_copy (good->machine);
  OxJobBuilder *builder = ox_job_builder_new (good);
  g_autoptr (OxJob) bad = NULL;

  machine->blast_width = -1;
  ox_job_builder_set_machine (builder, machine);
  bad = ox_job_builder_end (builder);
  ox_plan_service_request (service, bad);
  OX_WAIT_FOR (seen.failed == 1);
  g_assert_cmpuint (seen.planned, ==, 0);
}

static void
test_close_in_mid_plan (void)
{
  Seen seen = { 0 };
  OxPlanService *service = new_service (gated_plan, &seen);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");

  set_gate (FALSE);
  ox_plan_service_request (service, job);
  ox_plan_service_stop (service);
  g_object_add_weak_pointer (G_OBJECT (service), (gpointer *) &service);
  g_object_unref (service);
  /* The task keeps the service until its callback ran; then both go. */
  OX_WAIT_FOR (service == NULL);
  g_assert_cmpuint (seen.planned + seen.failed, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/plan-service/plan", test_plan);
  g_test_add_func ("/session/plan-service/latest-wins", test_latest_wins);
  g_test_add_func ("/session/plan-service/progress", test_progress);
  g_test_add_func ("/session/plan-service/error", test_error);
  g_test_add_func ("/session/plan-service/close-in-mid-plan", test_close_in_mid_plan);
  return g_test_run ();
}
