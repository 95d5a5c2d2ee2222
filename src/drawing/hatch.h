/* Oxturn: drawing/hatch - the lines of a hatch, cut to an area, for the painters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/drawing.h"
G_BEGIN_DECLS

typedef struct
{
  double angle;   /* radians */
  double spacing; /* drawing units between lines, > 0 */
  OxBox within;   /* lines that cannot meet this box may be left out */
} OxHatchGrid;

/* ox_hatch_append:
 * @out: array of OxPoint; two more a line are appended, from one end to the other
 * @element: a path; its area by the even-odd rule
 *
 * Lines stand at fixed places of the floor: multiples of the spacing from the origin, so that two areas side by side share them. */
void ox_hatch_append (GArray *out, const OxDrawing *drawing, const OxElement *element, const OxHatchGrid *grid);

G_END_DECLS
