/* Oxturn: file/read-items - items of the floor from their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "file/read-value.h"
#include "job/job.h"
G_BEGIN_DECLS

/* ox_read_item:
 * @node: an element for which ox_known_is_item() holds
 * @builder: gets the item
 * @error of @reader: OX_FILE_ERROR_INVALID
 */
gboolean ox_read_item (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
