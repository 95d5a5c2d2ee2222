/* Oxturn: plan/tether - a taut hose that follows the machine, and what it turns about on the way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unlike the shortest way (plan/reach.h) a hose that is dragged on stays on its side of a column, and bends about it:
 *
 *        station o------.                 the machine went out above the column and comes back below it:
 *                 m      \                the hose turns about the column by half a turn and more
 *                  `--[]--`
 *
 * From every place of the machine to the next, the last piece of the hose sweeps a triangle: it catches at corners inside it and comes
 * free of corners that it no longer presses on.
 */
#pragma once
#include "plan/plan.h"
#include "plan/reach.h"
G_BEGIN_DECLS

#define OX_TETHER_TURN G_PI /* radians: a hose that turns about solids by so much in one sense has wrapped round them ... */
#define OX_TETHER_SPARE 1.0 /* m: ... when the shortest way is shorter by so much; no source */

typedef struct _OxTether OxTether;

/* ox_tether_new: borrows @reach; (transfer full): nowhere yet */
OxTether *ox_tether_new (const OxReach *reach) G_GNUC_WARN_UNUSED_RESULT;
void ox_tether_free (OxTether *tether);

/* ox_tether_lay: @path: (element-type OxPoint): from the station to the machine, two points or more, as ox_reach_tree_path() finds it */
void ox_tether_lay (OxTether *tether, const GArray *path);

/* ox_tether_drag: the machine rolls straight on to @to */
void ox_tether_drag (OxTether *tether, OxPoint to);

double ox_tether_length (const OxTether *tether); /* m */

/* ox_tether_turn: radians by which it turns about solids, all bends that follow each other in one sense together; the most of them */
double ox_tether_turn (const OxTether *tether);

/* ox_tethers_plan:
 * @plan: with stations, strips and moves; gets hose_wraps and cord_wraps of its strips and totals.wraps
 *
 * A hose is laid the shortest way to the first strip that a station serves and then follows strips and moves. Where it has wrapped round a solid, or is
 * too short for the way that it has come although the shortest is not, that strip is flagged, and the hose taken for freed: laid the shortest way again.
 */
void ox_tethers_plan (OxPlan *plan, OxReach *reach, const OxRun *run);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxTether, ox_tether_free)
G_END_DECLS
