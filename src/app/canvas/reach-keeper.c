/* Oxturn: app/canvas/reach-keeper - the lines of reach of a plan, found off the main thread and kept while they are asked for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/reach-keeper.h"

struct _OxReachKeeper
{
  void (*found) (gpointer user_data);
  gpointer user_data;
  OxPlan *wanted;      /* (nullable) asked for last */
  OxPlan *plan;        /* (nullable) whose lines are there */
  OxReachLines *lines; /* (nullable) */
  gboolean busy;
  gboolean orphaned; /* freed while busy: the callback frees it */
};

static void find (OxReachKeeper *self);

static void
find_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancel)
{
  (void) source;
  (void) cancel;
  g_task_return_pointer (task, ox_reach_lines_new (task_data), (GDestroyNotify) ox_reach_lines_free);
}

static void
keeper_free (OxReachKeeper *self)
{
  g_clear_pointer (&self->wanted, ox_plan_unref);
  g_clear_pointer (&self->plan, ox_plan_unref);
  g_clear_pointer (&self->lines, ox_reach_lines_free);
  g_free (self);
}

static void
found_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  OxReachKeeper *self = data;
  OxReachLines *lines = g_task_propagate_pointer (G_TASK (result), NULL);

  (void) source;
  g_clear_pointer (&self->lines, ox_reach_lines_free);
  self->lines = lines;
  self->busy = FALSE;
  if (self->orphaned)
    keeper_free (self);
  else if (self->wanted != self->plan)
    find (self);
  else
    self->found (self->user_data);
}

static void
find (OxReachKeeper *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, found_cb, self);

  g_clear_pointer (&self->lines, ox_reach_lines_free);
  g_clear_pointer (&self->plan, ox_plan_unref);
  self->plan = ox_plan_ref (self->wanted);
  self->busy = TRUE;
  g_task_set_task_data (task, ox_plan_ref (self->plan), (GDestroyNotify) ox_plan_unref);
  g_task_run_in_thread (task, find_thread);
}

const OxReachLines *
ox_reach_keeper_find (OxReachKeeper *self, const OxPlan *plan)
{
  OxPlan *wanted = ox_plan_ref (plan);

  g_clear_pointer (&self->wanted, ox_plan_unref);
  self->wanted = wanted;
  if (!self->busy && self->plan != plan)
    find (self);
  return self->busy ? NULL : self->lines;
}

gboolean
ox_reach_keeper_is_settled (OxReachKeeper *self)
{
  return !self->busy;
}

OxReachKeeper *
ox_reach_keeper_new (void (*found) (gpointer user_data), gpointer user_data)
{
  OxReachKeeper *self = g_new0 (OxReachKeeper, 1);

  self->found = found;
  self->user_data = user_data;
  return self;
}

void
ox_reach_keeper_free (OxReachKeeper *self)
{
  if (self->busy)
    self->orphaned = TRUE;
  else
    keeper_free (self);
}
