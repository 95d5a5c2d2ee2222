/* Oxturn: session/session - the job that is worked on in a window.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The hub: widgets read the job, the plan and the selection from here and send edits here; no widget knows another.
 * Signals, all without arguments:
 *   "job-changed"        another job is current (edit, undo, redo, open); its plan is on the way, the old one is still to be had
 *   "plan-changed"       ox_session_get_plan() or ox_session_get_plan_error() gives something new
 *   "selection-changed"  other ids are selected
 *   "state-changed"      path, modified mark, what undo and redo would do, or whether a plan is under way
 * Main thread only.
 */
#pragma once
#include "session/crash-copy.h"
#include "session/plan-service.h"
G_BEGIN_DECLS

#define OX_TYPE_SESSION (ox_session_get_type ())
G_DECLARE_FINAL_TYPE (OxSession, ox_session, OX, SESSION, GObject)

/* ox_session_new:
 * @job: what it starts with, as never saved and not modified
 * @plan: what plans, ox_plan_new() but for tests
 * @copy_folder: (nullable): where unsaved work is kept; NULL: nowhere
 * Returns: (transfer full) */
OxSession *ox_session_new (const OxJob *job, OxPlanFunc plan, const char *copy_folder) G_GNUC_WARN_UNUSED_RESULT;

/* ox_session_new_job: an empty floor with the first machine class and the usual rates; (transfer full) */
OxJob *ox_session_new_job (OxUnits units) G_GNUC_WARN_UNUSED_RESULT;

const OxJob *ox_session_get_job (OxSession *session);
const char *ox_session_get_path (OxSession *session);   /* (nullable) */
char *ox_session_get_display_name (OxSession *session); /* (transfer full): file name, or a name for a job never saved */

/* ox_session_find_plan: (nullable): plan of the current job or, while that is under way, of an earlier one */
const OxPlan *ox_session_find_plan (OxSession *session);
const char *ox_session_find_plan_error (OxSession *session); /* (nullable): why the current job has no plan */
gboolean ox_session_is_plan_current (OxSession *session);
OxPlanService *ox_session_get_plan_service (OxSession *session);

/* ox_session_apply:
 * @label: translated name of the edit in header capitals, e.g. "Move Column"
 * @selection: (nullable): ids selected afterwards; NULL keeps the selection
 * @merge_key: (nullable): quick edits with the same key become one step of undo
 *
 * Makes @job the current one. A job that is the current one already changes nothing. */
void ox_session_apply (OxSession *session, const OxJob *job, const char *label, const char *const *selection,
                       const char *merge_key);

gboolean ox_session_undo (OxSession *session);
gboolean ox_session_redo (OxSession *session);
const char *ox_session_find_undo_label (OxSession *session); /* (nullable) */
const char *ox_session_find_redo_label (OxSession *session); /* (nullable) */

const char *const *ox_session_get_selection (OxSession *session); /* never NULL, NULL-ended */
void ox_session_select (OxSession *session, const char *const *ids);
gboolean ox_session_is_selected (OxSession *session, const char *id);

/* ox_session_is_modified: whether the current job is another than the one saved last */
gboolean ox_session_is_modified (OxSession *session);

/* ox_session_open: replaces job and history by the file's; on failure nothing changes */
gboolean ox_session_open (OxSession *session, const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_session_save: writes whole or not at all; on success @path becomes the session's */
gboolean ox_session_save (OxSession *session, const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_session_is_overtaken: the file was written or removed by somebody else after it was opened or saved here, also when what was done here since
 * was restored from a copy */
gboolean ox_session_is_overtaken (OxSession *session);

/* ox_session_is_read_only: the file it was opened from or saved to must not be written as things are now: its mode or that of its folder */
gboolean ox_session_is_read_only (OxSession *session);

/* ox_session_restore: takes over the copy of a session that ended badly, as modified work; the copy is kept until that is
 * saved or discarded */
gboolean ox_session_restore (OxSession *session, const char *copy_file, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_session_close: stops planning and removes the copy of unsaved work; called when the user saved or chose to discard */
void ox_session_close (OxSession *session);

G_END_DECLS
