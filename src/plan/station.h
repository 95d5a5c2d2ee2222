/* Oxturn: plan/station - which station serves which strip, what is out of reach, and where further stations would help.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A strip is in reach of a station when the longest way along the floor to any of its points (plan/reach.h, on OxFloor.hose) is at most
 * ox_hose_reach() of its hose or cord. Of the stations that reach a strip the one with the shortest such way serves it.
 */
#pragma once
#include "plan/floor.h"
#include "plan/plan.h"
#include "plan/reach.h"
G_BEGIN_DECLS

/* ox_stations_reach_new: the floor that hoses and cords of the job lie on, as far as the longest of them reaches; (transfer full) */
OxReach *ox_stations_reach_new (const OxJob *job, const OxFloor *floor) G_GNUC_WARN_UNUSED_RESULT;

/* ox_stations_plan:
 * @plan: with its strips; gets its stations, what each strip is served by, and totals.out_of_reach
 * @reach: of ox_stations_reach_new()
 * @notices: (element-type utf8): what a person must be told is added
 *
 * Where the job has no station of a kind, or strips are out of reach, places are proposed: few by a greedy set cover, each time the one that
 * reaches most strips, then without those that the others made needless. A notice tells how many any plan of stations needs at least.
 * Returns: FALSE when cancelled
 */
gboolean ox_stations_plan (OxPlan *plan, OxReach *reach, GPtrArray *notices, const OxRun *run);

/* ox_station_step_on: moves a station that stands in a wall, where it is plugged in, onto the floor; FALSE when it is too far off that */
gboolean ox_station_step_on (const OxReach *reach, OxPoint *p) G_GNUC_WARN_UNUSED_RESULT;

/* ox_station_places:
 * @step: m between places along a wall
 * @anywhere: also places in lanes and away from walls
 *
 * Where a station can stand: on travel floor, OX_STATION_OFF from a wall, a doorway's jamb or a solid, and not in a lane of main strips, so
 * that it is in nobody's way until the crosswise strips along that wall are worked. Returns: (transfer full) (element-type OxPoint)
 */
#define OX_STATION_OFF 0.4 /* m: half the width of a collector; from memory */
GArray *ox_station_places (const OxPlan *plan, const OxReach *reach, double step, gboolean anywhere) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
