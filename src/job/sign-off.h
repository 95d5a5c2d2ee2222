/* Oxturn: job/sign-off - a drawing that was signed stays what was signed: a change of it is another revision, not signed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* ox_sign_off_keep:
 * @old: the job that the edit began with
 * @job: what it came to, not yet shared with anybody; its scope and texts may be replaced
 *
 * The last step of every builder that started from a job (job/builder.c), so no edit gets round it. Where @old was signed and @job is another
 * drawing, or was signed anew, or not any more: the revision that was signed keeps who accepted it in its line; the next mark that is free, or
 * the one the edit gave, becomes the revision, with a line "changed after sign-off"; the sign-off is cleared, the date of issue too unless the edit
 * gave another, and a status goes back to "for approval". Who and when may be corrected in a sign-off without that.
 * A mark that was accepted once is not given to another drawing, and its line stays.
 */
void ox_sign_off_keep (const OxJob *old, OxJob *job);

G_END_DECLS
