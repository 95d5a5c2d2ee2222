/* Oxturn: job/job-private - the eight kinds of items seen as one, for the files of this module.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <string.h>
#include "job/job.h"
G_BEGIN_DECLS

#define OX_ITEM_FAMILIES 8

typedef struct
{
  OxItemKind kind;
  gsize items; /* offset of the array in OxJob */
  gsize count; /* offset of its length */
  gpointer (*ref) (gconstpointer item);
  GDestroyNotify unref;
} OxItemFamily;

extern const OxItemFamily ox_item_families[OX_ITEM_FAMILIES]; /* in the order of the file */

static inline gpointer *
ox_job_items (const OxJob *job, guint family)
{
  return *(gpointer **) (gpointer) ((char *) job + ox_item_families[family].items);
}

static inline guint
ox_job_count (const OxJob *job, guint family)
{
  return *(const guint *) (gconstpointer) ((const char *) job + ox_item_families[family].count);
}

static inline const char *
ox_item_id (gconstpointer item)
{
  return *(char *const *) item;
}

G_END_DECLS
