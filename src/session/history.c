/* Oxturn: session/history - undo and redo over immutable jobs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/history.h"

typedef struct
{
  OxJob *job;
  char *label;
  char **selection;
  char *merge_key;
  gint64 time_us;
  gsize bytes; /* what this entry holds beyond the one before it */
} Entry;

struct _OxHistory
{
  GPtrArray *entries; /* of Entry */
  guint current;
  OxJob *saved; /* a reference, so that its address cannot come back as another job's */
  gsize bytes;
};

static const char *const nothing[] = { NULL };

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  ox_job_unref (entry->job);
  g_free (entry->label);
  g_strfreev (entry->selection);
  g_free (entry->merge_key);
  g_free (entry);
}

static Entry *
entry_at (const OxHistory *history, guint i)
{
  return g_ptr_array_index (history->entries, i);
}

/* Arrays of pointers are copied by each edit, items only where they changed; texts and machine are small change. */
static gsize
new_bytes (const OxJob *job, const OxJob *before)
{
  gsize bytes = sizeof *job + 2048;

  bytes += sizeof (gpointer) * (job->n_rooms + job->n_obstacles + job->n_excluded + job->n_doorways + job->n_joints);
  for (guint i = 0; i < job->n_rooms; i++)
    if (before == NULL || i >= before->n_rooms || before->rooms[i] != job->rooms[i])
      bytes += job->rooms[i]->ring->n * (sizeof (OxPoint) + sizeof (OxSide));
  for (guint i = 0; i < job->n_obstacles; i++)
    if (before == NULL || i >= before->n_obstacles || before->obstacles[i] != job->obstacles[i])
      bytes += sizeof (OxObstacle) + job->obstacles[i]->shape.ring->n * sizeof (OxPoint);
  for (guint i = 0; i < job->n_excluded; i++)
    if (before == NULL || i >= before->n_excluded || before->excluded[i] != job->excluded[i])
      bytes += job->excluded[i]->ring->n * sizeof (OxPoint);
  for (guint i = 0; i < job->n_traced; i++)
    if (before == NULL || i >= before->n_traced || before->traced[i]->data != job->traced[i]->data)
      bytes += g_bytes_get_size (job->traced[i]->data);
  return bytes;
}

static void
append (OxHistory *history, const OxHistoryEdit *edit)
{
  Entry *entry = g_new0 (Entry, 1);
  const OxJob *before = history->entries->len > 0 ? entry_at (history, history->entries->len - 1)->job : NULL;

  entry->job = ox_job_ref (edit->job);
  entry->label = g_strdup (edit->label);
  entry->selection = g_strdupv ((char **) (edit->selection != NULL ? edit->selection : nothing));
  entry->merge_key = g_strdup (edit->merge_key);
  entry->time_us = edit->now_us;
  entry->bytes = new_bytes (edit->job, before);
  g_ptr_array_add (history->entries, entry);
  history->bytes += entry->bytes;
  history->current = history->entries->len - 1;
}

static void
remove_at (OxHistory *history, guint i)
{
  history->bytes -= entry_at (history, i)->bytes;
  g_ptr_array_remove_index (history->entries, i);
}

OxHistory *
ox_history_new (const OxJob *job)
{
  OxHistory *history = g_new0 (OxHistory, 1);

  history->entries = g_ptr_array_new_with_free_func (entry_free);
  append (history, &(OxHistoryEdit){ .job = job });
  history->saved = ox_job_ref (job);
  return history;
}

void
ox_history_free (OxHistory *history)
{
  g_ptr_array_unref (history->entries);
  g_clear_pointer (&history->saved, ox_job_unref);
  g_free (history);
}

/* A saved entry is never merged away: undo must be able to come back to what is on disk. */
static gboolean
merges (const OxHistory *history, const OxHistoryEdit *edit)
{
  const Entry *top = entry_at (history, history->current);

  return edit->merge_key != NULL && g_strcmp0 (top->merge_key, edit->merge_key) == 0 && top->job != history->saved
         && edit->now_us - top->time_us < OX_HISTORY_MERGE_US;
}

void
ox_history_push (OxHistory *history, const OxHistoryEdit *edit)
{
  g_return_if_fail (edit->job != NULL);

  if (edit->job == entry_at (history, history->current)->job)
    return;
  while (history->entries->len > history->current + 1)
    remove_at (history, history->entries->len - 1);
  if (merges (history, edit))
    remove_at (history, history->current);
  append (history, edit);
  while (history->bytes > OX_HISTORY_MAX_BYTES && history->entries->len > 2)
    {
      remove_at (history, 0);
      history->current--;
    }
}

gboolean
ox_history_undo (OxHistory *history)
{
  if (history->current == 0)
    return FALSE;
  history->current--;
  return TRUE;
}

gboolean
ox_history_redo (OxHistory *history)
{
  if (history->current + 1 == history->entries->len)
    return FALSE;
  history->current++;
  return TRUE;
}

const OxJob *
ox_history_get_job (const OxHistory *history)
{
  return entry_at (history, history->current)->job;
}

const char *
ox_history_find_undo_label (const OxHistory *history)
{
  return history->current > 0 ? entry_at (history, history->current)->label : NULL;
}

const char *
ox_history_find_redo_label (const OxHistory *history)
{
  return history->current + 1 < history->entries->len ? entry_at (history, history->current + 1)->label : NULL;
}

const char *const *
ox_history_get_selection (const OxHistory *history)
{
  return (const char *const *) entry_at (history, history->current)->selection;
}

void
ox_history_set_selection (OxHistory *history, const char *const *selection)
{
  Entry *entry = entry_at (history, history->current);
  char **copy = g_strdupv ((char **) (selection != NULL ? selection : nothing));

  g_strfreev (entry->selection);
  entry->selection = copy;
}

void
ox_history_mark_saved (OxHistory *history)
{
  OxJob *job = ox_job_ref (ox_history_get_job (history));

  g_clear_pointer (&history->saved, ox_job_unref);
  history->saved = job;
}

void
ox_history_mark_unsaved (OxHistory *history)
{
  g_clear_pointer (&history->saved, ox_job_unref);
}

gboolean
ox_history_is_saved (const OxHistory *history)
{
  return ox_history_get_job (history) == history->saved;
}

guint
ox_history_get_count (const OxHistory *history)
{
  return history->entries->len;
}
