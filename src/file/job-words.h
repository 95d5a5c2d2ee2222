/* Oxturn: file/job-words - names that reader and writer of job files share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <libxml/tree.h>
#include "job/job.h"
G_BEGIN_DECLS

/* Words by the value of the enumeration, NULL-ended. */
extern const char *const ox_words_units[];    /* OxUnits */
extern const char *const ox_words_side[];     /* OxSideKind */
extern const char *const ox_words_shape[];    /* OxShapeKind */
extern const char *const ox_words_obstacle[]; /* OxObstacleKind: names of elements */
extern const char *const ox_words_cost[];     /* OxCostDriver */
extern const char *const ox_words_day[];      /* bits of OxCalendar.days */
extern const char *const ox_words_scope_list[];  /* OxScopeList: names of elements */
extern const char *const ox_words_orientation[]; /* OxOrientation */
extern const char *const ox_words_traced[];   /* OxTracedKind */
extern const char *const ox_words_station[];  /* OxStationKind */
extern const char *const ox_words_done[];     /* OxDoneStrip.crosswise */

/* One text of the sheets: its element and its place in OxTexts. */
typedef struct
{
  const char *element;
  gsize offset;
} OxTextField;

#define OX_TEXT_FIELDS 10
extern const OxTextField ox_text_fields[OX_TEXT_FIELDS];

static inline char **
ox_text_field_at (OxTexts *texts, guint i)
{
  return (char **) (gpointer) ((char *) texts + ox_text_fields[i].offset);
}

G_END_DECLS
