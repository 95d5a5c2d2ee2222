/* Oxturn: sheets/form - the empty sheet: frame, grid, title block, and where blocks and drawing go.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Millimetres, origin in the lower left corner of the paper. Laid out after ISO 5457 (frame, grid) and ISO 7200 (title block).
 *
 *      landscape                            upright
 *      +--------------------+--------+      +---------------+
 *      |                    | blocks |      |    drawing    |
 *      |      drawing       |        |      |               |
 *      |                    +--------+      +-------+-------+
 *      |                    | title  |      | blocks|blocks |
 *      +--------------------+--------+      +-------+-------+
 *                                           |  title block  |
 *                                           +---------------+
 */
#pragma once
#include "job/job.h"
#include "sheets/block.h"
#include "sheets/sheets.h"
G_BEGIN_DECLS

#define OX_FORM_GAP_MM 6.0 /* between columns of blocks */

typedef struct
{
  const OxPaper *paper;
  gboolean upright;
  double width, height;
  OxBox frame;
  OxBox title;        /* title block */
  double body_mm;     /* height of text in blocks */
  guint n_columns;    /* of blocks side by side */
  double block_mm;    /* width of a block */
} OxForm;

/* where blocks flow: from @top down to @bottom */
typedef struct
{
  double x, top, bottom;
} OxSlot;

typedef struct
{
  const char *kind;   /* "Crew drawing" */
  const char *sheet;  /* "2 / 4" */
  const char *scale;  /* "" where nothing is to scale */
} OxFormTexts;

OxForm ox_form_new (const OxSheetOptions *options, OxUnits units);

/* ox_form_widened: the same page with columns of about @width_mm */
OxForm ox_form_widened (const OxForm *form, double width_mm);

/* ox_form_append: frame, grid and title block, in layers of their own */
void ox_form_append (const OxForm *form, OxDrawingBuilder *builder, const OxTexts *job_texts, const OxFormTexts *texts);

/* ox_form_get_slots: all slots of a page without a drawing; (transfer full): form->n_columns of them */
OxSlot *ox_form_get_slots (const OxForm *form) G_GNUC_WARN_UNUSED_RESULT;

/* ox_form_get_slot_x: left side of column @i */
double ox_form_get_slot_x (const OxForm *form, guint i);

G_END_DECLS
