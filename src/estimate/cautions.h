/* Oxturn: estimate/cautions - what to look out for, and where it bites.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
G_BEGIN_DECLS

typedef struct
{
  const char *id;
  const char *where;  /* "always", "edges", "drops", "supply", "drums", "coated" */
  const char *rule;   /* kind of rule that it rests on: "law", "standard", "maker", "practice", "note" */
  const char *source;
  const char *brief;  /* English: short, for drawings; translate with ox_words() */
  const char *text;   /* the same at length */
} OxCaution;

/* ox_cautions_list: data/trade/cautions.csv; @n: (out) */
const OxCaution *ox_cautions_list (guint *n);

/* ox_caution_applies: whether there is anything in this job for the caution to be about */
gboolean ox_caution_applies (const OxCaution *caution, const OxEstimate *estimate);

/* ox_caution_number: the number, from 1, under which @id stands in the list of those that apply; 0 when it does not */
guint ox_caution_number (const char *id, const OxEstimate *estimate);

/* ox_cautions_of_group: the ids of the cautions that bite where the figures of @group stand, ended by NULL; whether they apply is asked apart */
const char *const *ox_cautions_of_group (OxFigureGroup group);

/* ox_caution_find: (nullable) */
const OxCaution *ox_caution_find (const char *id);

G_END_DECLS
