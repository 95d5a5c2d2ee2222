/* Oxturn: file/job-schema - the RELAX NG schema of data/job.rng, built in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
#include <libxml/tree.h>
G_BEGIN_DECLS

/* ox_job_schema_check:
 * @file_name: stands for the file in messages
 * @doc: of version 1.2; taken apart and put together again on the way, its items and their corners stand last then
 * @error: OX_FILE_ERROR_INVALID with name and line
 *
 * libxml2 takes time by the square of the length of a list, so lists are checked in bites: to the schema the items of a job and the corners
 * of an item do not depend on one another.
 */
gboolean ox_job_schema_check (const char *file_name, xmlDoc *doc, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
