/* Oxturn: file/read-traced - traced plans from and to their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "file/read-value.h"
#include "job/job.h"
G_BEGIN_DECLS

/* ox_read_traced: @node: <traced-plan>; its file stands in base64 in one <part> or several, since libxml2 holds no longer text than 10 MB
 * @error of @reader: OX_FILE_ERROR_INVALID, also when the parts do not hold the kind of picture that they are said to hold */
gboolean ox_read_traced (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

/* ox_write_traced_parts: adds the <part>s of @data to @node */
void ox_write_traced_parts (xmlNode *node, GBytes *data);

G_END_DECLS
