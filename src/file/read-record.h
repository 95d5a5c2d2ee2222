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

/* ox_read_record_sort: puts the days in the tree in the order that a job has them in, so that what is kept of each (file/job-known.h) is found again */
void ox_read_record_sort (xmlNode *root);

G_END_DECLS
