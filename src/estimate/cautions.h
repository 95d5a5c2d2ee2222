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
  const char *text;   /* English */
} OxCaution;

/* ox_cautions_list: data/trade/cautions.csv; @n: (out) */
const OxCaution *ox_cautions_list (guint *n);

/* ox_caution_applies: whether there is anything in this job for the caution to be about */
gboolean ox_caution_applies (const OxCaution *caution, const OxEstimate *estimate);

G_END_DECLS
