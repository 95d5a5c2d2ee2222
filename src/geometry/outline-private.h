/* Oxturn: geometry/outline - corners in a row, for rings and regions alike; private to this module.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

/* How near to an outline a point counts as lying on it, m: far under the grid, far over rounding. */
#define OX_OUTLINE_TOLERANCE 1e-9

/* ox_outline_area: signed, m2, positive when counter-clockwise. Shoelace formula about the first corner, which keeps the digits of
 * small outlines far from the origin. */
double ox_outline_area (const OxPoint *points, guint n);
double ox_outline_perimeter (const OxPoint *points, guint n);

/* ox_outline_count:
 * @inside: (inout): turned over for each side that a ray from @p to +x crosses, so that several rings can be counted together
 *
 * Returns: TRUE when @p lies on the outline, and @inside means nothing */
gboolean ox_outline_count (const OxPoint *points, guint n, OxPoint p, gboolean *inside);

G_END_DECLS
