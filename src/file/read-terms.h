/* Oxturn: file/read-terms - test patches, calendar, cost and outfit from their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "file/read-value.h"
#include "job/job.h"
G_BEGIN_DECLS

/* ox_read_terms:
 * @root: the job; what it does not have keeps its default
 * @error of @reader: OX_FILE_ERROR_INVALID
 */
gboolean ox_read_terms (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
