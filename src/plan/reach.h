/* Oxturn: plan/reach - how far it is along the floor, round solids and through doorways, as a hose or cord lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A taut hose bends only at corners that stand into the floor. The shortest way is therefore found on the graph of those corners that see
 * each other along lines which touch both without cutting either (a visibility graph, reduced to its tangents):
 *
 *      s o-----------.
 *                +----a          s-a-p: bends at a, not at b
 *                |////|  \
 *                +----b    o p
 *
 * Exact up to rounding for floors of straight sides. Gaps narrower than OX_REACH_GAP let nothing through.
 * Not for several threads at once: what was found is kept for later questions.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

#define OX_REACH_GAP 0.10 /* m: a dust hose and the plug of a cord need as much; common practice, no source */

typedef struct _OxReach OxReach;

/* ox_reach_new: @floor: where a hose may lie; @limit: m, no way longer than this is looked for; (transfer full) */
OxReach *ox_reach_new (const OxRegion *floor, double limit) G_GNUC_WARN_UNUSED_RESULT;
void ox_reach_free (OxReach *reach);

/* ox_reach_sees: whether a hose can lie straight from @a to @b, both on the floor */
gboolean ox_reach_sees (const OxReach *reach, OxPoint a, OxPoint b);

/* ox_reach_holds: whether @p lies on the floor */
gboolean ox_reach_holds (const OxReach *reach, OxPoint p);

/* A corner that stands into the floor, where a taut hose can bend, and its neighbours along the outline */
typedef struct
{
  OxPoint at, before, after;
} OxReachCorner;

/* ox_reach_corners: (out) @n: how many; borrowed from @reach */
const OxReachCorner *ox_reach_corners (const OxReach *reach, guint *n);

/* All ways from one place; borrows its OxReach */
typedef struct _OxReachTree OxReachTree;

/* ox_reach_tree_new: ways from @from, on the floor, of up to @limit m (at most that of @reach); (transfer full) */
OxReachTree *ox_reach_tree_new (OxReach *reach, OxPoint from, double limit) G_GNUC_WARN_UNUSED_RESULT;
void ox_reach_tree_free (OxReachTree *tree);

/* ox_reach_tree_distance: m along the floor to @p; INFINITY when that is more than the limit */
double ox_reach_tree_distance (const OxReachTree *tree, OxPoint p);

/* ox_reach_tree_path:
 * @path: (element-type OxPoint): set to the corners of the way from the root to @p, both included; empty when there is none
 *
 * Returns: its length, as ox_reach_tree_distance() */
double ox_reach_tree_path (const OxReachTree *tree, OxPoint p, GArray *path);

/* ox_reach_tree_farthest:
 * @a, @b: ends of a straight piece of floor
 *
 * The farthest point may lie between the ends, where the ways round both sides of a solid meet.
 * Returns: the longest of the ways to its points, in m, to 5 mm; INFINITY when any is longer than the limit */
double ox_reach_tree_farthest (const OxReachTree *tree, OxPoint a, OxPoint b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxReach, ox_reach_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxReachTree, ox_reach_tree_free)
G_END_DECLS
