/* Oxturn: file/read-record - what is done, from its element.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "file/read-value.h"
#include "job/job.h"
G_BEGIN_DECLS

/* ox_read_record:
 * @root: the job; one without a record has done nothing yet
 * @error of @reader: OX_FILE_ERROR_INVALID
 */
gboolean ox_read_record (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
