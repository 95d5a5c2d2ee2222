/* Oxturn: session/session - the job that is worked on in a window.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/session.h"

#include "file/job-xml.h"
#include "job/classes.h"
#include "session/history.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

struct _OxSession
{
  GObject parent_instance;

  /* Owned */
  OxHistory *history;
  OxPlanService *planner;
  OxCrashCopy *copy; /* (nullable) */
  OxPlan *plan;      /* (nullable) */
  OxJob *planned;    /* (nullable) the job that it is a plan of: plan->job, or one that has other traced plans and is the same else */
  char *plan_error;  /* (nullable) */
  char *path;        /* (nullable) */
  char *stamp;       /* (nullable) of the file when it was read or written last; NULL while there is none */
};

G_DEFINE_FINAL_TYPE (OxSession, ox_session, G_TYPE_OBJECT)

enum
{
  JOB_CHANGED,
  PLAN_CHANGED,
  SELECTION_CHANGED,
  STATE_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

OxJob *
ox_session_new_job (OxUnits units)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);

  ox_job_builder_set_machine (builder, ox_classes_get (0));
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = OX_HAND_RATE_DEFAULT });
  ox_job_builder_set_units (builder, units);
  return ox_job_builder_end (builder);
}

const OxJob *
ox_session_get_job (OxSession *self)
{
  return ox_history_get_job (self->history);
}

const char *
ox_session_get_path (OxSession *self)
{
  return self->path;
}

char *
ox_session_get_display_name (OxSession *self)
{
  return self->path != NULL ? g_filename_display_basename (self->path) : g_strdup (_ ("New job"));
}

const OxPlan *
ox_session_find_plan (OxSession *self)
{
  return self->plan;
}

const char *
ox_session_find_plan_error (OxSession *self)
{
  return self->plan_error;
}

gboolean
ox_session_is_plan_current (OxSession *self)
{
  return self->plan != NULL && self->planned == ox_session_get_job (self);
}

OxPlanService *
ox_session_get_plan_service (OxSession *self)
{
  return self->planner;
}

static void
set_planned (OxSession *self, const OxJob *job)
{
  OxJob *kept = job != NULL ? ox_job_ref (job) : NULL;

  g_clear_pointer (&self->planned, ox_job_unref);
  self->planned = kept;
}

static void
planned_cb (OxSession *self, OxPlan *plan, const GError *error)
{
  g_clear_pointer (&self->plan_error, g_free);
  g_clear_pointer (&self->plan, ox_plan_unref);
  set_planned (self, plan != NULL ? plan->job : NULL);
  if (plan != NULL)
    self->plan = ox_plan_ref (plan);
  else
    self->plan_error = g_strdup (error->message);
  g_signal_emit (self, signals[PLAN_CHANGED], 0);
}

static void
running_changed_cb (OxSession *self)
{
  g_signal_emit (self, signals[STATE_CHANGED], 0);
}

static void
keep_copy (OxSession *self)
{
  if (self->copy == NULL)
    return;
  if (ox_history_is_saved (self->history))
    ox_crash_copy_clear (self->copy);
  else
    ox_crash_copy_write (self->copy, ox_session_get_job (self), self->path, self->stamp);
}

static char *
text_without_traced (const OxJob *job)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_autoptr (OxJob) bare = NULL;

  for (guint i = 0; i < job->n_traced; i++)
    ox_job_builder_remove (builder, job->traced[i]->id);
  bare = ox_job_builder_end (builder);
  return ox_job_file_to_text (bare);
}

/* What shines through the floor from below changes nothing of the plan. */
static gboolean
differs_in_traced_only (const OxJob *a, const OxJob *b)
{
  gboolean same = a->n_traced == b->n_traced;
  g_autofree char *one = NULL;
  g_autofree char *other = NULL;

  for (guint i = 0; same && i < a->n_traced; i++)
    same = a->traced[i] == b->traced[i];
  if (same)
    return FALSE;
  one = text_without_traced (a);
  other = text_without_traced (b);
  return g_str_equal (one, other);
}

static void
plan_anew (OxSession *self)
{
  const OxJob *job = ox_session_get_job (self);

  if (self->planned != NULL && (self->planned == job || differs_in_traced_only (self->planned, job)))
    {
      set_planned (self, job);
      ox_plan_service_stop (self->planner);
    }
  else
    ox_plan_service_request (self->planner, job);
}

/* Everything that follows from another job being current. */
static void
job_changed (OxSession *self)
{
  plan_anew (self);
  keep_copy (self);
  g_signal_emit (self, signals[JOB_CHANGED], 0);
  g_signal_emit (self, signals[SELECTION_CHANGED], 0);
  g_signal_emit (self, signals[STATE_CHANGED], 0);
}

void
ox_session_apply (OxSession *self, const OxJob *job, const char *label, const char *const *selection,
                  const char *merge_key)
{
  g_return_if_fail (OX_IS_SESSION (self));
  g_return_if_fail (job != NULL && label != NULL);

  if (job == ox_session_get_job (self))
    return;
  ox_history_push (self->history, &(OxHistoryEdit){
                                      .job = job,
                                      .label = label,
                                      .selection = selection != NULL ? selection : ox_session_get_selection (self),
                                      .merge_key = merge_key,
                                      .now_us = g_get_monotonic_time (),
                                  });
  job_changed (self);
}

gboolean
ox_session_undo (OxSession *self)
{
  g_return_val_if_fail (OX_IS_SESSION (self), FALSE);

  if (!ox_history_undo (self->history))
    return FALSE;
  job_changed (self);
  return TRUE;
}

gboolean
ox_session_redo (OxSession *self)
{
  g_return_val_if_fail (OX_IS_SESSION (self), FALSE);

  if (!ox_history_redo (self->history))
    return FALSE;
  job_changed (self);
  return TRUE;
}

const char *
ox_session_find_undo_label (OxSession *self)
{
  return ox_history_find_undo_label (self->history);
}

const char *
ox_session_find_redo_label (OxSession *self)
{
  return ox_history_find_redo_label (self->history);
}

const char *const *
ox_session_get_selection (OxSession *self)
{
  return ox_history_get_selection (self->history);
}

void
ox_session_select (OxSession *self, const char *const *ids)
{
  static const char *const nothing[] = { NULL };

  g_return_if_fail (OX_IS_SESSION (self));

  if (ids == NULL)
    ids = nothing;
  if (g_strv_equal (ids, ox_session_get_selection (self)))
    return;
  ox_history_set_selection (self->history, ids);
  g_signal_emit (self, signals[SELECTION_CHANGED], 0);
}

gboolean
ox_session_is_selected (OxSession *self, const char *id)
{
  return g_strv_contains (ox_session_get_selection (self), id);
}

gboolean
ox_session_is_modified (OxSession *self)
{
  return !ox_history_is_saved (self->history);
}

/* What tells one state of a file from another: another inode where it was replaced, else time and size. */
static char *
stamp_of (const char *path)
{
  GStatBuf info;

  if (path == NULL || g_stat (path, &info) != 0)
    return NULL;
  return g_strdup_printf ("%" G_GUINT64_FORMAT " %" G_GINT64_FORMAT ".%ld %" G_GINT64_FORMAT, (guint64) info.st_ino,
                          (gint64) info.st_mtim.tv_sec, info.st_mtim.tv_nsec, (gint64) info.st_size);
}

gboolean
ox_session_is_overtaken (OxSession *self)
{
  g_autofree char *now = stamp_of (self->path);

  return self->stamp != NULL && g_strcmp0 (self->stamp, now) != 0;
}

/* By its mode first: whoever took the right to write from it did not mean the administrator to have it. */
gboolean
ox_session_is_read_only (OxSession *self)
{
  GStatBuf info;
  g_autofree char *folder = self->path != NULL ? g_path_get_dirname (self->path) : NULL;

  if (self->path == NULL || g_stat (self->path, &info) != 0)
    return FALSE;
  return (info.st_mode & (S_IWUSR | S_IWGRP | S_IWOTH)) == 0 || g_access (self->path, W_OK) != 0
         || g_access (folder, W_OK) != 0;
}

/* Takes @stamp. */
static void
take_stamp (OxSession *self, char *stamp)
{
  g_free (self->stamp);
  self->stamp = stamp;
}

/* Takes @stamp. */
static void
start_over (OxSession *self, const OxJob *job, const char *path, char *stamp, gboolean saved)
{
  char *copy = g_strdup (path);

  g_clear_pointer (&self->history, ox_history_free);
  self->history = ox_history_new (job);
  if (!saved)
    ox_history_mark_unsaved (self->history);
  g_free (self->path);
  self->path = copy;
  take_stamp (self, stamp);
  g_clear_pointer (&self->plan, ox_plan_unref);
  set_planned (self, NULL);
  g_clear_pointer (&self->plan_error, g_free);
  g_signal_emit (self, signals[PLAN_CHANGED], 0);
  job_changed (self);
}

gboolean
ox_session_open (OxSession *self, const char *path, GError **error)
{
  g_autoptr (OxJob) job = NULL;
  g_autofree char *stamp = stamp_of (path); /* what somebody saves while it is read comes after it */

  g_return_val_if_fail (OX_IS_SESSION (self), FALSE);

  if (!ox_job_file_read (path, &job, error))
    return FALSE;
  start_over (self, job, path, g_steal_pointer (&stamp), TRUE);
  return TRUE;
}

gboolean
ox_session_save (OxSession *self, const char *path, GError **error)
{
  char *copy = NULL;

  g_return_val_if_fail (OX_IS_SESSION (self), FALSE);

  if (!ox_job_file_write (ox_session_get_job (self), path, error))
    return FALSE;
  copy = g_strdup (path); /* @path may be our own */
  g_free (self->path);
  self->path = copy;
  take_stamp (self, stamp_of (copy));
  ox_history_mark_saved (self->history);
  keep_copy (self);
  g_signal_emit (self, signals[STATE_CHANGED], 0);
  return TRUE;
}

gboolean
ox_session_restore (OxSession *self, const char *copy_file, GError **error)
{
  g_autoptr (OxJob) job = NULL;
  g_autofree char *path = NULL;
  g_autofree char *stamp = NULL;

  g_return_val_if_fail (OX_IS_SESSION (self), FALSE);

  if (!ox_crash_copy_read (copy_file, &job, &path, &stamp, error))
    return FALSE;
  /* A file of which the copy does not know in what state it was may be anybody's. */
  if (stamp == NULL && path != NULL && g_file_test (path, G_FILE_TEST_EXISTS))
    stamp = g_strdup ("");
  if (self->copy == NULL || !ox_crash_copy_adopt (self->copy, copy_file))
    ox_crash_copy_discard (copy_file);
  start_over (self, job, path, g_steal_pointer (&stamp), FALSE);
  return TRUE;
}

void
ox_session_close (OxSession *self)
{
  g_return_if_fail (OX_IS_SESSION (self));

  ox_plan_service_stop (self->planner);
  if (self->copy != NULL)
    ox_crash_copy_clear (self->copy);
}

static void
ox_session_dispose (GObject *object)
{
  OxSession *self = OX_SESSION (object);

  if (self->planner != NULL)
    ox_plan_service_stop (self->planner);
  g_clear_object (&self->planner);
  g_clear_object (&self->copy);
  G_OBJECT_CLASS (ox_session_parent_class)->dispose (object);
}

static void
ox_session_finalize (GObject *object)
{
  OxSession *self = OX_SESSION (object);

  g_clear_pointer (&self->history, ox_history_free);
  g_clear_pointer (&self->plan, ox_plan_unref);
  set_planned (self, NULL);
  g_free (self->plan_error);
  g_free (self->path);
  g_free (self->stamp);
  G_OBJECT_CLASS (ox_session_parent_class)->finalize (object);
}

static guint
new_signal (const char *name)
{
  return g_signal_new (name, OX_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
ox_session_class_init (OxSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ox_session_dispose;
  G_OBJECT_CLASS (klass)->finalize = ox_session_finalize;
  signals[JOB_CHANGED] = new_signal ("job-changed");
  signals[PLAN_CHANGED] = new_signal ("plan-changed");
  signals[SELECTION_CHANGED] = new_signal ("selection-changed");
  signals[STATE_CHANGED] = new_signal ("state-changed");
}

static void
ox_session_init (OxSession *self)
{
  (void) self;
}

OxSession *
ox_session_new (const OxJob *job, OxPlanFunc plan, const char *copy_folder)
{
  OxSession *self = g_object_new (OX_TYPE_SESSION, NULL);

  self->history = ox_history_new (job);
  self->planner = ox_plan_service_new (plan);
  if (copy_folder != NULL)
    self->copy = ox_crash_copy_new (copy_folder);
  g_signal_connect_object (self->planner, "planned", G_CALLBACK (planned_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->planner, "running-changed", G_CALLBACK (running_changed_cb), self, G_CONNECT_SWAPPED);
  ox_plan_service_request (self->planner, job);
  return self;
}
