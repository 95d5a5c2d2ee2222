/* Oxturn: file/job-known-private - the table of known elements, for the files that split a tree into known and unknown.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "file/job-known.h"
G_BEGIN_DECLS

typedef enum
{
  OX_KNOWN_TEXT = 1 << 0, /* holds text and no elements */
  OX_KNOWN_MANY = 1 << 1, /* may stand more than once */
  OX_KNOWN_ITEM = 1 << 2
} OxKnownFlags;

typedef struct
{
  const char *parent;     /* (nullable): of which element; NULL: of any */
  const char *name;       /* (nullable): NULL: any child that the parent's row lists */
  const char *attributes; /* names, split by blanks */
  const char *children;
  OxKnownFlags flags;
} OxKnown;

const OxKnown *ox_known_find (const xmlNode *node); /* (nullable) */
gboolean ox_known_has_attribute (const OxKnown *known, const xmlAttr *attribute);
gboolean ox_known_is_foreign (const xmlNs *ns); /* of a namespace that is not ours */

G_END_DECLS
