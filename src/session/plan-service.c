/* Oxturn: session/plan-service - plans off the main thread, the latest job wins.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/plan-service.h"

/* What a worker works on. It may be the last to let go of it, so nothing here belongs to the main thread. */
typedef struct
{
  OxPlanFunc plan;
  OxJob *job;
  GCancellable *cancel;
  OxRun run;
} Flight;

struct _OxPlanService
{
  GObject parent_instance;

  OxPlanFunc plan;

  /* Owned */
  Flight *flight; /* (nullable) under way; its answer counts unless it was cancelled */
  OxJob *pending; /* (nullable) next in line */
};

G_DEFINE_FINAL_TYPE (OxPlanService, ox_plan_service, G_TYPE_OBJECT)

enum
{
  PLANNED,
  RUNNING_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void start (OxPlanService *self, const OxJob *job);

static void
flight_clear (gpointer data)
{
  Flight *flight = data;

  ox_job_unref (flight->job);
  g_object_unref (flight->cancel);
}

static void
flight_unref (gpointer flight)
{
  g_atomic_rc_box_release_full (flight, flight_clear);
}

static void
fly (GTask *task, gpointer source, gpointer task_data, GCancellable *cancel)
{
  Flight *flight = task_data;
  GError *error = NULL;
  OxPlan *plan = flight->plan (flight->job, &flight->run, &error);

  (void) source;
  (void) cancel;
  if (plan != NULL)
    g_task_return_pointer (task, plan, (GDestroyNotify) ox_plan_unref);
  else
    g_task_return_error (task, error);
}

static void
landed_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  OxPlanService *self = OX_PLAN_SERVICE (source);
  Flight *flight = g_task_get_task_data (G_TASK (result));
  gboolean wanted = !g_cancellable_is_cancelled (flight->cancel);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = g_task_propagate_pointer (G_TASK (result), &error);
  g_autoptr (OxJob) next = g_steal_pointer (&self->pending);

  (void) data;
  g_clear_pointer (&self->flight, flight_unref);
  if (next != NULL)
    start (self, next);
  else
    g_signal_emit (self, signals[RUNNING_CHANGED], 0);
  if (wanted)
    g_signal_emit (self, signals[PLANNED], 0, plan, error);
}

static void
start (OxPlanService *self, const OxJob *job)
{
  Flight *flight = g_atomic_rc_box_new0 (Flight);
  g_autoptr (GTask) task = NULL;

  flight->plan = self->plan;
  flight->job = ox_job_ref (job);
  flight->cancel = g_cancellable_new ();
  flight->run = (OxRun) OX_RUN_INIT;
  flight->run.cancel = flight->cancel;
  self->flight = flight;

  /* The task is not given the cancellable: whether an answer still counts is decided when it lands, and a plan that was
   * finished in the same moment must be freed by us. */
  task = g_task_new (self, NULL, landed_cb, NULL);
  g_task_set_task_data (task, g_atomic_rc_box_acquire (flight), flight_unref);
  g_task_run_in_thread (task, fly);
}

void
ox_plan_service_request (OxPlanService *self, const OxJob *job)
{
  g_return_if_fail (OX_IS_PLAN_SERVICE (self));

  g_clear_pointer (&self->pending, ox_job_unref);
  if (self->flight != NULL)
    {
      g_cancellable_cancel (self->flight->cancel);
      self->pending = ox_job_ref (job);
      return;
    }
  start (self, job);
  g_signal_emit (self, signals[RUNNING_CHANGED], 0);
}

void
ox_plan_service_stop (OxPlanService *self)
{
  g_return_if_fail (OX_IS_PLAN_SERVICE (self));

  g_clear_pointer (&self->pending, ox_job_unref);
  if (self->flight != NULL)
    g_cancellable_cancel (self->flight->cancel);
}

gboolean
ox_plan_service_is_running (OxPlanService *self)
{
  return self->flight != NULL;
}

double
ox_plan_service_get_progress (OxPlanService *self, const char **doing)
{
  gint total = 0;
  gint done = 0;

  if (self->flight != NULL)
    {
      total = g_atomic_int_get (&self->flight->run.total);
      done = g_atomic_int_get (&self->flight->run.done);
    }
  if (doing != NULL)
    *doing = self->flight != NULL ? g_atomic_pointer_get (&self->flight->run.doing) : NULL;
  return total > 0 ? CLAMP ((double) done / total, 0, 1) : -1;
}

static void
ox_plan_service_dispose (GObject *object)
{
  OxPlanService *self = OX_PLAN_SERVICE (object);

  ox_plan_service_stop (self);
  g_clear_pointer (&self->flight, flight_unref);
  G_OBJECT_CLASS (ox_plan_service_parent_class)->dispose (object);
}

static void
ox_plan_service_class_init (OxPlanServiceClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ox_plan_service_dispose;
  signals[PLANNED] = g_signal_new ("planned", OX_TYPE_PLAN_SERVICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                   2, G_TYPE_POINTER, G_TYPE_POINTER);
  signals[RUNNING_CHANGED]
      = g_signal_new ("running-changed", OX_TYPE_PLAN_SERVICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
ox_plan_service_init (OxPlanService *self)
{
  (void) self;
}

OxPlanService *
ox_plan_service_new (OxPlanFunc plan)
{
  OxPlanService *self = g_object_new (OX_TYPE_PLAN_SERVICE, NULL);

  self->plan = plan;
  return self;
}
