/* Oxturn: drawing/page - pages of paper and the set that they make.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/drawing.h"
G_BEGIN_DECLS

typedef struct
{
  double width_mm, height_mm;
  char *title;        /* translated: "Crew drawing" */
  char *description;  /* translated: one or two sentences on what the page shows */
  char *label;        /* "1": stands on the page and in the list of pages of a PDF */
  OxDrawing *drawing; /* in mm of paper, origin in the lower left corner */
  OxDrawing *part;    /* (nullable): of another page, at the same scale, of which this one shows a piece under its own drawing: */
  OxBox piece;        /* what of @part, in its mm; nothing of it stands outside */
  OxPoint piece_at;   /* where the lower left corner of the piece stands on this page */
} OxPage;

/* an immutable counted value */
typedef struct
{
  char *title, *author, *subject, *keywords;
  char *date;         /* YYYY-MM-DD, "" when the job has none */
  guint n_pages;
  OxPage *pages;
} OxPageSet;

/* ox_page_set_new: @set is copied deeply, drawings are referenced; NULL texts become "" */
OxPageSet *ox_page_set_new (const OxPageSet *set) G_GNUC_WARN_UNUSED_RESULT;
OxPageSet *ox_page_set_ref (const OxPageSet *set);
void ox_page_set_unref (const OxPageSet *set);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxPageSet, ox_page_set_unref)
G_END_DECLS
