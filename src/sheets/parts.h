/* Oxturn: sheets/parts - a floor that is too large for one legible sheet, cut into parts of which each has its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts are equal boxes in rows from the top down and from left to right; together they are the floor's box, no floor is in two. A part
 * without any room in it has no sheet.
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS

typedef struct
{
  OxBox box;      /* m of floor */
  guint sheet;    /* number of its sheet; 0: it has none */
} OxPart;

typedef struct
{
  guint n_columns, n_rows, n_sheets, first_sheet;
  OxPart *parts;  /* n_columns * n_rows, row by row */
} OxParts;

/* ox_parts_new:
 * @mm: width and height that a part may take on paper
 * @first_sheet: number of the first part's sheet */
OxParts *ox_parts_new (const OxJob *job, double mm_per_m, const double mm[2], guint first_sheet) G_GNUC_WARN_UNUSED_RESULT;
void ox_parts_free (OxParts *parts);

/* ox_parts_append_lines: the match lines of part @i, each with the number of the sheet beyond it; labels give way to those */
void ox_parts_append_lines (const OxParts *parts, guint i, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_parts_append_grid: on a drawing of the whole floor: where the sheets meet, and their numbers; labels give way to them */
void ox_parts_append_grid (const OxParts *parts, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_parts_key_new: a key plan, @mm wide and high at most, part @i of it hatched; in mm, its lower left corner at the origin */
OxDrawing *ox_parts_key_new (const OxParts *parts, guint i, const OxJob *job, const double mm[2]) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxParts, ox_parts_free)
G_END_DECLS
