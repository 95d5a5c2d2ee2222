/* Oxturn: plan/shadow - floor round an obstacle that stands alone which no heading reaches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An obstacle O keeps the middle of the pattern out of O - B, where B is the body at a heading. What the pattern S does not reach there is O - B
 * eroded by S. For a convex O all of that is convex, each side with the normal of a side of O or of the body, so that the floor which none of the
 * headings reaches is cut out by half planes: for the normal n those with n.q <= h(O) + h(-B) - h(S), where h is the farthest extent along n.
 *
 *       +- - - - - - - - - -+  O - B at one heading
 *         +---------------+
 *       | |  +---------+  | |  the same less the pattern
 *         |  |    O    |  |    (a strip may run close by)
 *       | |  +---------+  | |
 *         +---------------+
 *       +- - - - - - - - - -+
 */
#pragma once
#include "geometry/region.h"
#include "job/machine.h"
G_BEGIN_DECLS

/* ox_shadow_lone:
 * Returns: (transfer full): for each ring of @travel whether it is a convex hole so far from all other rings that bodies which touch it touch none of
 * those, whatever their heading
 */
gboolean *ox_shadow_lone (const OxRegion *travel, const OxMachine *machine) G_GNUC_WARN_UNUSED_RESULT;

/* ox_shadow_new:
 * @hole: corners of a convex obstacle, @n of them, clockwise as a hole is
 * @headings: (element-type double): radians
 * @ease: m taken off each side of body and pattern
 *
 * Returns: (transfer full): what no heading reaches round the obstacle, itself included
 */
OxRegion *ox_shadow_new (const OxPoint *hole, guint n, const OxMachine *machine, const GArray *headings, double ease) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
