/* Oxturn: geometry/region - areas of any shape and their algebra; the only module that knows GEOS.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A region is an immutable counted value: some parts, each one outer ring and its holes, with the inside on the left:
 *
 *      outer, counter-clockwise        hole, clockwise
 *          3 <----- 2                    3 -----> 2
 *          |        ^                    ^        |
 *          v        |                    |        v
 *          0 -----> 1                    0 <----- 1
 *
 * Parts are sorted (by their lowest, then leftmost corner) and each ring starts at its lowest, leftmost corner, so that
 * the same floor gives the same bytes. Any thread may call; nothing global (one GEOS context a thread).
 * Results have corners to 1e-9 m (coordinates on OX_GRID stay what they are) and no parts or holes thinner than 1e-8 m or under
 * 1e-9 m2. An operation that GEOS fails at is tried again on a 1e-6 m grid; if that fails too the program stops with a message
 * (never seen; not an input error, since inputs are checked first).
 */
#pragma once
#include "geometry/ring.h"
G_BEGIN_DECLS

typedef struct
{
  guint start;   /* index of the first corner in OxRegion.points */
  guint n;       /* corners */
  guint part;    /* which part it belongs to */
  gboolean hole; /* the first ring of a part is its outer one */
} OxRegionRing;

typedef struct
{
  guint n_parts;
  guint n_rings;
  const OxRegionRing *rings; /* outer ring of a part, then its holes, part by part */
  const OxPoint *points;     /* all corners */
  guint n_points;
} OxRegion;

OxRegion *ox_region_ref (const OxRegion *region);
void ox_region_unref (const OxRegion *region);

OxRegion *ox_region_new_empty (void) G_GNUC_WARN_UNUSED_RESULT;
OxRegion *ox_region_new_ring (const OxRing *ring) G_GNUC_WARN_UNUSED_RESULT; /* simple; either direction */
OxRegion *ox_region_new_points (const OxPoint *points, guint n) G_GNUC_WARN_UNUSED_RESULT; /* unsnapped, simple */

/* ox_region_new_rings: one outer ring and holes, made valid when holes touch or cross; (transfer full) */
OxRegion *ox_region_new_rings (const OxRing *outer, const OxRing *const *holes, guint n_holes) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_union, ox_region_intersection, ox_region_difference: what belongs to either, to both, to @a only; (transfer full) */
OxRegion *ox_region_union (const OxRegion *a, const OxRegion *b) G_GNUC_WARN_UNUSED_RESULT;
OxRegion *ox_region_intersection (const OxRegion *a, const OxRegion *b) G_GNUC_WARN_UNUSED_RESULT;
OxRegion *ox_region_difference (const OxRegion *a, const OxRegion *b) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_union_many: of @n regions, which may overlap; empty for none; (transfer full) */
OxRegion *ox_region_union_many (const OxRegion *const *regions, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_union_quads: union of @n quadrilaterals of four corners each, @corners has 4 n points; 10,000 strips take about a second */
OxRegion *ox_region_union_quads (const OxPoint *corners, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_union_hulls: union of the convex hulls of @n groups of @size points each */
OxRegion *ox_region_union_hulls (const OxPoint *points, guint n, guint size) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_offset: grown (@distance > 0) or shrunk (< 0); @round: arcs (64 segments a full turn) or mitred corners (limit 5) */
OxRegion *ox_region_offset (const OxRegion *region, double distance, gboolean round) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_erode_rectangle, ox_region_dilate_rectangle:
 * @rear, @front, @right, @left: extents of a rectangle from its origin, >= 0, looking along +x of its own frame
 * @angle: radians, heading of that rectangle on the floor
 *
 * Erosion: the origins at which the whole rectangle lies in @region. Dilation: all floor that the rectangle touches with its
 * origin in @region. Minkowski difference and sum; exact for any polygon up to rounding: each side of the outline swept by
 * the rectangle is a convex hull of 8 points (derivation in region-sweep.c).
 * Parts of the result thinner than 1e-6 m may be missing. */
OxRegion *ox_region_erode_rectangle (const OxRegion *region, double rear, double front, double right, double left,
                                     double angle) G_GNUC_WARN_UNUSED_RESULT;
OxRegion *ox_region_dilate_rectangle (const OxRegion *region, double rear, double front, double right, double left,
                                      double angle) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_turn: turned by @angle (radians) about the origin */
OxRegion *ox_region_turn (const OxRegion *region, double angle) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_get_part: part @i < n_parts as a region of its own */
OxRegion *ox_region_get_part (const OxRegion *region, guint i) G_GNUC_WARN_UNUSED_RESULT;

/* ox_region_fill_holes: @fill: one a ring, TRUE for the holes to leave out; no other part may stand in those; (transfer full) */
OxRegion *ox_region_fill_holes (const OxRegion *region, const gboolean *fill) G_GNUC_WARN_UNUSED_RESULT;

double ox_region_area (const OxRegion *region);      /* m2 */
double ox_region_perimeter (const OxRegion *region); /* m, holes too */
OxBox ox_region_box (const OxRegion *region);
gboolean ox_region_is_empty (const OxRegion *region);
gboolean ox_region_contains (const OxRegion *region, OxPoint p); /* inside or on the outline */

/* ox_region_label_point: a point well inside the largest part, for a label (centre of the largest inscribed circle, to 5 % of its
 * radius; in parts hundreds of times as long as wide any point inside); @radius: (out) (optional) of that circle. The region must
 * not be empty. */
OxPoint ox_region_label_point (const OxRegion *region, double *radius);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxRegion, ox_region_unref)
G_END_DECLS
