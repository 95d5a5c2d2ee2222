/* Oxturn: drawing/clip - outlines and lines cut to a box.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

/* ox_clip_ring: what of the closed ring @points lies in @box, by its four sides one after another (Sutherland and Hodgman, 1974): @out
 * (array of OxPoint) gets its corners, none where nothing is left. Parts that hang together only outside are joined along the box. */
void ox_clip_ring (GArray *out, const OxPoint *points, guint n, OxBox box);

/* ox_clip_line: the part of @a to @b in @box (Liang and Barsky, 1984)
 * Returns: FALSE when there is none; @a and @b are kept then */
gboolean ox_clip_line (OxPoint *a, OxPoint *b, OxBox box);

G_END_DECLS
