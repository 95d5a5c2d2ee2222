/* Oxturn: file/job-write - a job as a tree of elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <libxml/tree.h>
#include "job/job.h"
G_BEGIN_DECLS

/* ox_job_write_tree: Returns: (transfer full) */
xmlDoc *ox_job_write_tree (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
