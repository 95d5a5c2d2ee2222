/* Oxturn: sheets/dimension - dimension lines, the scale bar and the north arrow, on a page.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * After ISO 129-1: narrow continuous lines, oblique strokes at their ends, the figure above the line, readable from below or from the right.
 */
#pragma once
#include "base/units.h"
#include "drawing/drawing.h"
#include "sheets/paper.h"
G_BEGIN_DECLS

#define OX_DIMENSION_TEXT_MM 2.5

typedef struct
{
  OxPoint a, b;      /* mm: the two points measured */
  double offset_mm;  /* of the dimension line from a-b, > 0 to the left of a -> b */
  const char *text;
} OxDimension;

/* ox_dimension_get_text: where its figure stands: middle of the base line, and the angle; readable */
OxPoint ox_dimension_get_text (const OxDimension *dimension, double *angle);

/* ox_dimension_append: extension lines only where the offset is 6 mm or more */
void ox_dimension_append (const OxDimension *dimension, OxDrawingBuilder *builder);

/* ox_scale_bar_append: the bar, its figures and the scale in words; @corner: lower left, mm; about 90 x 11 mm
 * Returns: where more may be written behind those words */
OxPoint ox_scale_bar_append (OxDrawingBuilder *builder, OxPoint corner, OxScale scale, OxUnits units, const char *paper_name);

/* ox_north_append: @north_deg: counter-clockwise from +x */
void ox_north_append (OxDrawingBuilder *builder, OxPoint centre, double north_deg);

G_END_DECLS
