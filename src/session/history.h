/* Oxturn: session/history - undo and redo over immutable jobs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row of entries, each a whole job that shares with its neighbours what did not change:
 *
 *      [opened] - [Draw Room] - [Move Column] - [Set Overlap]
 *                      ^saved        ^current
 *
 * Undo steps left, redo right, an edit cuts off what is right of the current entry. Whether there is unsaved work is one
 * comparison of the current job with the saved one. Not for several threads; the jobs in it are.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

#define OX_HISTORY_MERGE_US G_USEC_PER_SEC        /* edits with the same key closer than this become one entry */
#define OX_HISTORY_MAX_BYTES (64 * 1024 * 1024)   /* the oldest entries go when more than this is held */

typedef struct _OxHistory OxHistory;

/* ox_history_new:
 * @job: the first entry, which also counts as saved
 * Returns: (transfer full) */
OxHistory *ox_history_new (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;
void ox_history_free (OxHistory *history);

typedef struct
{
  const OxJob *job;              /* the result of the edit */
  const char *label;             /* translated name for the menu, e.g. "Move Column" */
  const char *const *selection;  /* (nullable): ids selected afterwards, NULL-ended */
  const char *merge_key;         /* (nullable): replaces the current entry when that one has the same key and is young */
  gint64 now_us;                 /* monotonic time, microseconds */
} OxHistoryEdit;

/* ox_history_push: adds @edit after the current entry; does nothing when its job is the current one */
void ox_history_push (OxHistory *history, const OxHistoryEdit *edit);

/* ox_history_undo, ox_history_redo: Returns: FALSE, and nothing done, at the end of the row */
gboolean ox_history_undo (OxHistory *history);
gboolean ox_history_redo (OxHistory *history);

const OxJob *ox_history_get_job (const OxHistory *history);
const char *ox_history_find_undo_label (const OxHistory *history); /* (nullable): NULL when there is nothing to undo */
const char *ox_history_find_redo_label (const OxHistory *history); /* (nullable) */

/* The selection is no edit, but it rides along, so that undo shows what it changed. */
const char *const *ox_history_get_selection (const OxHistory *history); /* never NULL */
void ox_history_set_selection (OxHistory *history, const char *const *selection);

void ox_history_mark_saved (OxHistory *history);
/* ox_history_mark_unsaved: no entry counts as saved any more, as after work came back from a crash */
void ox_history_mark_unsaved (OxHistory *history);
gboolean ox_history_is_saved (const OxHistory *history);

guint ox_history_get_count (const OxHistory *history); /* entries held, 1 or more */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxHistory, ox_history_free)
G_END_DECLS
