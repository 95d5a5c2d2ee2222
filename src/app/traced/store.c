/* Oxturn: app/traced/store - the pictures of a job's traced plans, decoded off the main thread and kept while the job holds them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/traced/store.h"

#include <glib/gi18n-lib.h>

/* --- What is seen --- */

typedef struct
{
  OxTracedPicture *picture;
  OxTracedLook look;
} Sheet;

struct _OxTracedSet
{
  guint n;
  Sheet *sheets;
};

OxTracedSet *
ox_traced_set_ref (const OxTracedSet *set)
{
  return g_atomic_rc_box_acquire ((gpointer) set);
}

static void
set_clear (gpointer data)
{
  OxTracedSet *set = data;

  for (guint i = 0; i < set->n; i++)
    ox_traced_picture_unref (set->sheets[i].picture);
  g_free (set->sheets);
}

void
ox_traced_set_unref (const OxTracedSet *set)
{
  g_atomic_rc_box_release_full ((gpointer) set, set_clear);
}

void
ox_traced_set_paint (const OxTracedSet *set, cairo_t *cr, const OxView *view, gboolean night)
{
  for (guint i = 0; i < set->n; i++)
    ox_traced_picture_paint (set->sheets[i].picture, cr, view, &set->sheets[i].look, night);
}

/* --- Decoding --- */

typedef struct
{
  GBytes *data;
  guint page;
} Source;

static void
source_free (gpointer data)
{
  Source *source = data;

  g_bytes_unref (source->data);
  g_free (source);
}

static void
read_thread (GTask *task, gpointer object, gpointer task_data, GCancellable *cancel)
{
  const Source *source = task_data;
  GError *error = NULL;
  OxTracedPicture *picture = ox_traced_picture_new (source->data, source->page, cancel, &error);

  (void) object;
  if (picture != NULL)
    g_task_return_pointer (task, picture, (GDestroyNotify) ox_traced_picture_unref);
  else
    g_task_return_error (task, error);
}

void
ox_traced_read (GBytes *data, guint page, GCancellable *cancel, GAsyncReadyCallback done, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancel, done, user_data);
  Source *source = g_new0 (Source, 1);

  source->data = g_bytes_ref (data);
  source->page = page;
  g_task_set_task_data (task, source, source_free);
  g_task_run_in_thread (task, read_thread);
}

OxTracedPicture *
ox_traced_read_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

/* --- The store --- */

typedef struct
{
  OxTracedStore *store; /* Borrowed (nullable): NULL when it is gone or has no use for this any more */
  char *id;             /* of the traced plan, to name it */
  GBytes *data;
  guint page;
  OxTracedPicture *picture; /* (nullable) while it is read, and when it cannot be */
  GCancellable *cancel;     /* (nullable) while it is read */
} Entry;

struct _OxTracedStore
{
  OxTracedListener listener;
  GPtrArray *entries; /* of Entry */
  OxJob *job;         /* (nullable) */
  OxTracedSet *set;
};

static void
entry_free (Entry *entry)
{
  g_free (entry->id);
  g_bytes_unref (entry->data);
  g_clear_pointer (&entry->picture, ox_traced_picture_unref);
  g_clear_object (&entry->cancel);
  g_free (entry);
}

/* An entry that is being read belongs to its callback from now on. */
static void
entry_drop (gpointer data)
{
  Entry *entry = data;

  if (entry->cancel == NULL)
    {
      entry_free (entry);
      return;
    }
  entry->store = NULL;
  g_cancellable_cancel (entry->cancel);
}

static Entry *
find_entry (const OxTracedStore *self, GBytes *data, guint page)
{
  for (guint i = 0; i < self->entries->len; i++)
    {
      Entry *entry = g_ptr_array_index (self->entries, i);

      if (entry->data == data && entry->page == page)
        return entry;
    }
  return NULL;
}

static OxTracedSet *
make_set (const OxTracedStore *self)
{
  OxTracedSet *set = g_atomic_rc_box_new0 (OxTracedSet);
  guint n = self->job != NULL ? self->job->n_traced : 0;

  set->sheets = g_new0 (Sheet, n + 1);
  for (guint i = 0; i < n; i++)
    {
      const OxTracedPlan *traced = self->job->traced[i];
      const Entry *entry = find_entry (self, traced->data, traced->page);

      if (traced->hidden || entry == NULL || entry->picture == NULL)
        continue;
      set->sheets[set->n++]
          = (Sheet){ .picture = ox_traced_picture_ref (entry->picture),
                     .look = { .middle = traced->middle,
                               .width = traced->width,
                               .depth = traced->depth,
                               .angle_deg = traced->angle_deg,
                               .strength = traced->strength } };
    }
  return set;
}

static void
renew_set (OxTracedStore *self)
{
  ox_traced_set_unref (self->set);
  self->set = make_set (self);
  self->listener.changed (self->listener.user_data);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Entry *entry = data;
  OxTracedStore *self = entry->store;
  g_autoptr (GError) error = NULL;
  g_autofree char *why = NULL;

  (void) source;
  entry->picture = ox_traced_read_finish (result, &error);
  g_clear_object (&entry->cancel);
  if (self == NULL)
    {
      entry_free (entry);
      return;
    }
  if (entry->picture != NULL)
    renew_set (self);
  else
    {
      why = g_strdup_printf (_ ("The traced plan %s cannot be shown. %s."), entry->id, error->message);
      self->listener.failed (why, self->listener.user_data);
    }
}

static Entry *
add_entry (OxTracedStore *self, GBytes *data, guint page, const char *id)
{
  Entry *entry = g_new0 (Entry, 1);

  *entry = (Entry){ .store = self, .id = g_strdup (id), .data = g_bytes_ref (data), .page = page };
  g_ptr_array_add (self->entries, entry);
  return entry;
}

static gboolean
is_wanted (const OxJob *job, const Entry *entry)
{
  for (guint i = 0; i < job->n_traced; i++)
    if (job->traced[i]->data == entry->data && job->traced[i]->page == entry->page)
      return TRUE;
  return FALSE;
}

static gboolean
is_same (const OxJob *a, const OxJob *b)
{
  if (a == NULL || a->n_traced != b->n_traced)
    return FALSE;
  for (guint i = 0; i < a->n_traced; i++)
    if (a->traced[i] != b->traced[i])
      return FALSE;
  return TRUE;
}

static void
read_new (OxTracedStore *self, const OxJob *job)
{
  for (guint i = 0; i < job->n_traced; i++)
    {
      const OxTracedPlan *traced = job->traced[i];
      Entry *entry;

      /* What is hidden costs nothing until it is shown. */
      if (traced->hidden || find_entry (self, traced->data, traced->page) != NULL)
        continue;
      entry = add_entry (self, traced->data, traced->page, traced->id);
      entry->cancel = g_cancellable_new ();
      ox_traced_read (traced->data, traced->page, entry->cancel, read_cb, entry);
    }
}

void
ox_traced_store_set_job (OxTracedStore *self, const OxJob *job)
{
  gboolean same = is_same (self->job, job);
  OxJob *kept = ox_job_ref (job);

  g_clear_pointer (&self->job, ox_job_unref);
  self->job = kept;
  if (same)
    return;
  for (guint i = self->entries->len; i-- > 0;)
    if (!is_wanted (job, g_ptr_array_index (self->entries, i)))
      g_ptr_array_remove_index (self->entries, i);
  read_new (self, job);
  renew_set (self);
}

void
ox_traced_store_add (OxTracedStore *self, GBytes *data, guint page, const OxTracedPicture *picture)
{
  if (find_entry (self, data, page) == NULL)
    add_entry (self, data, page, "")->picture = ox_traced_picture_ref (picture);
}

const OxTracedSet *
ox_traced_store_get_set (OxTracedStore *self)
{
  return self->set;
}

gboolean
ox_traced_store_is_settled (OxTracedStore *self)
{
  for (guint i = 0; i < self->entries->len; i++)
    if (((const Entry *) g_ptr_array_index (self->entries, i))->cancel != NULL)
      return FALSE;
  return TRUE;
}

OxTracedStore *
ox_traced_store_new (const OxTracedListener *listener)
{
  OxTracedStore *self = g_new0 (OxTracedStore, 1);

  self->listener = *listener;
  self->entries = g_ptr_array_new_with_free_func (entry_drop);
  self->set = make_set (self);
  return self;
}

void
ox_traced_store_free (OxTracedStore *self)
{
  g_ptr_array_unref (self->entries);
  g_clear_pointer (&self->job, ox_job_unref);
  ox_traced_set_unref (self->set);
  g_free (self);
}
