/* Oxturn: file/job-read - a job from its tree of elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <libxml/tree.h>
#include "job/job.h"
G_BEGIN_DECLS

/* ox_job_read_tree:
 * @file_name: stands for the file in messages
 * @doc: a document with a root; what is not known and ours is taken out of it
 * @error: OX_FILE_ERROR
 * Returns: (transfer full) (nullable): a job that has been checked (job/check.h)
 */
OxJob *ox_job_read_tree (const char *file_name, xmlDoc *doc, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
