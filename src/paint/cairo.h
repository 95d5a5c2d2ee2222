/* Oxturn: paint/cairo - a drawing onto a cairo context: screen, PDF, print.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/drawing.h"
#include "drawing/page.h"
#include "drawing/view.h"
#include <cairo.h>
G_BEGIN_DECLS

typedef struct
{
  OxView view;
  double px_per_mm;  /* pixels a mm of paper, for line widths, texts, marks, hatches; 96 / 25.4 on a usual screen */
  OxPalette palette;
} OxPaintOptions;

/* ox_paint_cairo:
 * @cr: pixels as in the view; its state is kept
 *
 * Paints what the view shows; the ground is left to the caller (ox_palette_get_ground()). */
void ox_paint_cairo (cairo_t *cr, const OxDrawing *drawing, const OxPaintOptions *options);

/* ox_paint_page: a page at true scale, its upper left corner at the origin; @units_per_mm: of the context (72 / 25.4 in a PDF, 1 in a
 * print context set to mm) */
void ox_paint_page (cairo_t *cr, const OxPage *page, double units_per_mm);

G_END_DECLS
