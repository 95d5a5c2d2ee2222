/* Oxturn: file/job-xml - job files: XML that a person can read and diff.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Namespace urn:oxturn:job, version "1.2", RELAX NG schema in data/job.rng (built in). One item of the floor is one element, one corner
 * one line; a side's kind stands with the corner that it starts from, walls are not written:
 *
 *      <room id="R1" name="Hall" profile="CSP 3">
 *        <corner x="0" y="0"/>
 *        <corner x="40" y="0" side="drop" keep-back="0.6"/>
 *
 * A file is untrusted: no DTD, no entities but the five of XML, no network, no other file, size and depth capped. What it holds is checked
 * like an edit (job/check.h). The same job gives the same bytes in every locale. Any thread may call.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

#define OX_JOB_FILE_MAX_BYTES (64 * 1024 * 1024)
#define OX_JOB_FILE_MAX_DEPTH 64 /* elements in one another */

#define OX_FILE_ERROR (ox_file_error_quark ())
GQuark ox_file_error_quark (void);
typedef enum
{
  OX_FILE_ERROR_INVALID,   /* what stands in the file is not allowed: the message has name, line, what was found, what is allowed */
  OX_FILE_ERROR_NEWER,     /* written by a newer major version; the message names it */
  OX_FILE_ERROR_TOO_LARGE  /* more bytes than OX_JOB_FILE_MAX_BYTES */
} OxFileError;

/* ox_job_file_read:
 * @out: (out) (transfer full): untouched on failure
 * @error: OX_FILE_ERROR, or G_FILE_ERROR with the path in the message
 *
 * Where items break a rule of job/check.h the message has one line for each, ten at most.
 */
gboolean ox_job_file_read (const char *path, OxJob **out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_job_file_read_data: as above; @name stands for the file in messages */
gboolean ox_job_file_read_data (const char *name, const void *data, gsize length, OxJob **out,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_job_file_write: whole or not at all, see base/atomic.h; OX_FILE_ERROR_TOO_LARGE for a job that could not be read again */
gboolean ox_job_file_write (const OxJob *job, const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_job_file_to_text: Returns: (transfer full): what ox_job_file_write() writes */
char *ox_job_file_to_text (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
