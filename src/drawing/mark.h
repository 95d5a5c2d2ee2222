/* Oxturn: drawing/mark - the shapes of the marks, for the painters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A mark is made of parts in its own frame: size 1, looking along +x, its place at the origin.
 */
#pragma once
#include "drawing/drawing.h"
G_BEGIN_DECLS

typedef enum
{
  OX_PART_LINE,   /* stroked with the style's ink */
  OX_PART_SOLID,  /* filled with the style's ink */
  OX_PART_GROUND  /* filled with the style's fill and stroked */
} OxMarkPaint;

typedef struct
{
  OxMarkPaint paint;
  double radius;      /* > 0: a circle about the first of its points */
  gboolean closed;
  guint n;
  OxPoint points[12];
} OxMarkPart;

/* ox_mark_get_parts: @n: (out) how many */
const OxMarkPart *ox_mark_get_parts (OxMarkKind kind, guint *n);

/* ox_mark_place: a point of a part where it stands: @mm: drawing units a mm of paper */
OxPoint ox_mark_place (const OxElement *element, OxPoint p, double mm);

G_END_DECLS
