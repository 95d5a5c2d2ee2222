/* Oxturn: file/xml-parse - XML that nobody has vouched for, as a tree.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
#include <libxml/tree.h>
G_BEGIN_DECLS

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlDoc, xmlFreeDoc)

/* ox_xml_parse:
 * @name: stands for the file in messages
 * @error: OX_FILE_ERROR_INVALID with name and line
 *
 * Refuses a document type declaration as soon as it begins, elements nested deeper than OX_JOB_FILE_MAX_DEPTH, and whatever is not
 * well-formed; opens nothing else, neither file nor network.
 * Returns: (transfer full) (nullable): a document with a root element
 */
xmlDoc *ox_xml_parse (const char *name, const void *data, gsize length, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
