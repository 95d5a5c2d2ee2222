/* Oxturn: file/read-scope - scope of work and setup of the sheets from their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "file/read-value.h"
#include "job/job.h"
G_BEGIN_DECLS

/* ox_read_scope: @root: the job; what it lacks stays as in a new job */
gboolean ox_read_scope (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
