/* Oxturn: file/job-known - which elements and attributes version 1.2 of the job file knows, and what becomes of others.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is not known is kept as a "rest": XML text of one element that holds only the unknown attributes and children, with empty shells of
 * known elements around them where that is needed to say where they belong. The rest of the root leaves out the items, which have their own.
 */
#pragma once
#include <glib.h>
#include <libxml/tree.h>
G_BEGIN_DECLS

#define OX_JOB_NAMESPACE "urn:oxturn:job"

/* ox_known_is_ours: an element in our namespace, called @name when that is not NULL */
gboolean ox_known_is_ours (const xmlNode *node, const char *name);

/* ox_known_is_item: a room, an obstacle and so on, directly in the root */
gboolean ox_known_is_item (const xmlNode *node);

/* ox_known_check:
 * @file_name: stands for the file in messages
 * @root: the job
 * @newer: whether the file says that it is of a newer minor version, where unknown elements and attributes of ours are no error
 * @error: OX_FILE_ERROR_INVALID: an unknown element or attribute, one that stands twice, stray text; with its line and what is allowed
 */
gboolean ox_known_check (const char *file_name, const xmlNode *root, gboolean newer, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_known_rest: Returns: (transfer full) (nullable): the rest of @node, the root or an item; NULL when all is known */
char *ox_known_rest (const xmlNode *node) G_GNUC_WARN_UNUSED_RESULT;

/* ox_known_rest_names: Returns: (transfer full): names of the elements of the root that @rest (nullable), that of a root, has something for: a set of
 * strings */
GHashTable *ox_known_rest_names (const char *rest) G_GNUC_WARN_UNUSED_RESULT;

/* ox_known_merge: puts a rest back into @node. Parts of a rest that have lost their place (a corner that is gone) are left out. */
void ox_known_merge (xmlNode *node, const char *rest);

/* ox_known_strip: takes out of the tree what is not known, the blanks between elements too */
void ox_known_strip (xmlNode *root);

G_END_DECLS
