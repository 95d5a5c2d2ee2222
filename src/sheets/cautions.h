/* Oxturn: sheets/cautions - cautions where they bite, under the same number on every sheet of a set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/cautions.h"
#include "sheets/form.h"
G_BEGIN_DECLS

typedef enum
{
  OX_CAUTIONS_ALL,    /* all that apply, at length */
  OX_CAUTIONS_BRIEF,  /* all that apply, short */
  OX_CAUTIONS_OFFICE  /* short, and only those that a client is told with a price: what a plan is, dust, old coatings */
} OxCautionsChoice;

/* ox_cautions_block_new: titled "Cautions", each with its number; OX_CAUTIONS_ALL adds the kind of rule it rests on */
OxBlock *ox_cautions_block_new (const OxForm *form, const OxEstimate *estimate, OxCautionsChoice choice) G_GNUC_WARN_UNUSED_RESULT;

/* ox_cautions_add: the same lines added to @block */
void ox_cautions_add (OxBlock *block, const OxEstimate *estimate, OxCautionsChoice choice);

/* ox_cautions_office: ids of those that OX_CAUTIONS_OFFICE chooses from, NULL at the end */
const char *const *ox_cautions_office (void);

/* ox_cautions_tag: " !9" behind what the caution @id, one of ox_cautions_list(), is about, "" where it does not apply; (transfer full) */
char *ox_cautions_tag (const char *id, const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
