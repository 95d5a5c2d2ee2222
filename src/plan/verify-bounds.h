/* Oxturn: plan/verify-bounds - does a shape lie in a region; where does a line run inside it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact up to rounding and without polygon algebra: a connected shape lies in a region when no side of the region's outline
 * enters it and one of its points is inside.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

/* Axes laid on the floor: x runs along @u from @origin, y to the left of it. */
typedef struct
{
  OxPoint origin;
  OxPoint u; /* of length 1 */
} OxAxes;

OxAxes ox_axes_along (OxPoint a, OxPoint b); /* origin @a, looking at @b; along +x when they are equal */
OxPoint ox_axes_to (OxAxes axes, OxPoint p);   /* from the floor to these axes */
OxPoint ox_axes_from (OxAxes axes, OxPoint p); /* and back */
OxBox ox_axes_box (OxAxes axes, OxBox box); /* on the floor, of a box that is given in these axes */

typedef struct
{
  double a, b; /* a <= b */
} OxPiece;

/* ox_pieces_subtract: takes @cut out of the pieces, an array of OxPiece sorted and apart; stays so */
void ox_pieces_subtract (GArray *pieces, OxPiece cut);

typedef struct _OxBounds OxBounds;

OxBounds *ox_bounds_new (const OxRegion *region) G_GNUC_WARN_UNUSED_RESULT;
void ox_bounds_free (OxBounds *bounds);

gboolean ox_bounds_holds_point (OxBounds *bounds, OxPoint p); /* inside; either answer on the outline itself */

/* ox_bounds_holds_box: whether all of @box, given in @axes, lies in the region; @where: (out): a point at fault on the floor */
gboolean ox_bounds_holds_box (OxBounds *bounds, OxAxes axes, OxBox box, OxPoint *where);

/* ox_bounds_holds_circle: as ox_bounds_holds_box(), for a circle */
gboolean ox_bounds_holds_circle (OxBounds *bounds, OxPoint centre, double radius, OxPoint *where);

/* ox_bounds_cut:
 * @axes, @y, @x: the line at height @y of @axes, from x.a to x.b
 * @pieces: array of OxPiece, emptied first; the pieces inside the region, in x of @axes, ascending
 */
void ox_bounds_cut (OxBounds *bounds, OxAxes axes, double y, OxPiece x, GArray *pieces);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxBounds, ox_bounds_free)
G_END_DECLS
