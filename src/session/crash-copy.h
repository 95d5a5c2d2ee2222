/* Oxturn: session/crash-copy - work that is not saved yet, kept for the case that the program or the computer stops.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One private file (mode 0600) a session in a folder under the user's state directory, with the whole job and the file that it
 * belongs to. A lock beside it tells the living from the dead: who holds the lock still works on it.
 */
#pragma once
#include "job/job.h"

#include <gio/gio.h>
G_BEGIN_DECLS

#define OX_TYPE_CRASH_COPY (ox_crash_copy_get_type ())
G_DECLARE_FINAL_TYPE (OxCrashCopy, ox_crash_copy, OX, CRASH_COPY, GObject)

/* ox_crash_copy_default_folder: XDG_STATE_HOME/oxturn; (transfer full) */
char *ox_crash_copy_default_folder (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crash_copy_new: @folder: made when it is missing, with the first write; Returns: (transfer full) */
OxCrashCopy *ox_crash_copy_new (const char *folder) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crash_copy_write:
 * @path: (nullable): file of the job, NULL before it was saved
 * @stamp: (nullable): state of that file when it was read or written last, in any words; NULL when there was none
 *
 * Writes on a worker thread, one at a time; of several quick calls only the last is sure to reach the disk. A copy that cannot be
 * written is no reason to stop anybody from working: that is logged as a message, once. */
void ox_crash_copy_write (OxCrashCopy *copy, const OxJob *job, const char *path, const char *stamp);

/* ox_crash_copy_adopt: goes on with @file of a session that ended badly; Returns: FALSE when somebody else works on it */
gboolean ox_crash_copy_adopt (OxCrashCopy *copy, const char *file);

/* ox_crash_copy_clear: removes the copy: nothing is unsaved. Waits for a write under way (a few milliseconds). */
void ox_crash_copy_clear (OxCrashCopy *copy);

gboolean ox_crash_copy_is_busy (OxCrashCopy *copy); /* a write is under way or waits */

/* ox_crash_copy_list:
 * Returns: (transfer full): file names of copies in @folder that no living session holds, oldest name first, NULL-ended */
char **ox_crash_copy_list (const char *folder) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crash_copy_read:
 * @file: from ox_crash_copy_list()
 * @path: (out) (transfer full) (nullable): file that the work belongs to, NULL when it was never saved
 * @stamp: (out) (transfer full) (nullable): as it was written; NULL also in copies of older versions
 * @error: G_KEY_FILE_ERROR, G_FILE_ERROR or what ox_job_file_read_data() reports
 */
gboolean ox_crash_copy_read (const char *file, OxJob **job, char **path, char **stamp, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crash_copy_discard: removes @file and its lock; one that is gone already is fine */
void ox_crash_copy_discard (const char *file);

G_END_DECLS
