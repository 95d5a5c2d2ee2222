/* Oxturn: plan/way - where the machine can go with the blasting off: corridors, turning points, ways round obstacles.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A way is a chain of straight pieces along which a corridor as wide as the body is clear. Where the head is set to one side the corridor is
 * as wide as the wider side asks for, except on the first and last piece, which may lie in a lane beside a wall.
 * Corners of a way stand off the corners of solids:
 *
 *         a ----.             o  corner of the way, off the solid's corner by the
 *                `o               corridor's half width to both sides
 *            +---+ \
 *            |///|  b
 *            +---+
 *
 * Not for several threads at once: what was found is kept for later questions.
 */
#pragma once
#include "geometry/region.h"
#include "job/machine.h"
G_BEGIN_DECLS

typedef struct _OxWays OxWays;

/* ox_ways_new: @travel: floor that the body may stand on; (transfer full) */
OxWays *ox_ways_new (const OxRegion *travel, const OxMachine *machine) G_GNUC_WARN_UNUSED_RESULT;
void ox_ways_free (OxWays *ways);

/* ox_ways_is_clear: whether the corridor from @a straight to @b is clear; both in travel */
gboolean ox_ways_is_clear (OxWays *ways, OxPoint a, OxPoint b);

/* ox_ways_find:
 * @path: (element-type OxPoint): set to the corners from @a to @b, both included, when there is a way
 *
 * Returns: length of the way in m, INFINITY when there is none
 */
double ox_ways_find (OxWays *ways, OxPoint a, OxPoint b, GArray *path);

/* where the machine stands, which way it looks, and where it goes next */
typedef struct
{
  OxPoint from;
  double heading; /* radians */
  OxPoint to;
} OxWayEnds;

/* ox_ways_turn:
 * @path: (element-type OxPoint): set to the way by the turning point
 * @turn: (out): turning point; the circle of turn_radius about it is clear
 *
 * Looks for the turning point that makes the way short. Returns: its length in m, INFINITY when there is none
 */
double ox_ways_turn (OxWays *ways, OxWayEnds ends, GArray *path, OxPoint *turn);

/* ox_ways_can_turn: whether the clear circle of a swing fits at @p, a point in travel */
gboolean ox_ways_can_turn (OxWays *ways, OxPoint p);

/* ox_ways_has_turns: whether there is any place in the whole floor where a swing fits */
gboolean ox_ways_has_turns (const OxWays *ways);

/* ox_ways_turn_distance: m from @p to the nearest place where a swing fits, INFINITY when there is none; as the crow flies */
double ox_ways_turn_distance (const OxWays *ways, OxPoint p);

/* ox_ways_part:
 * Returns: which connected part of the floor, as far as the body's corridor reaches, @p lies in (by number); -1: none */
int ox_ways_part (const OxWays *ways, OxPoint p);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxWays, ox_ways_free)
G_END_DECLS
