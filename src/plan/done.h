/* Oxturn: plan/done - what of a plan is done already, by the job's record.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the strips of the record are strips of the plan of the whole floor, that plan stands, and they are flagged in it: marking changes
 * nothing else. Where some are not, since floor, machine or overlap changed after they were run, they are kept as they are: they come first, in the
 * order in which they were marked, and the rest is laid around them:
 *
 *      floor left = target less done strips and done edge work, and of the done strips a rim as wide as the least overlap where floor wide enough for a
 *                   strip adjoins, so that a strip laid there overlaps them by that
 *
 * The body may roll over what is done. Floor between done strips that is narrower than a strip is edge work. Rules 1 to 7 of plan/verify.h are
 * those of the strips that are laid anew; kept ones, which nobody can lay otherwise any more, count in the account of rule 3.
 */
#pragma once
#include "plan/floor.h"
#include "plan/plan.h"
G_BEGIN_DECLS

/* ox_done_strips: sets @done of each strip that lies where the record has one of the same coat
 * Returns: whether the plan keeps to the record: no strip of it that lies in a room which asks for its coat is missing, and no strip blasts done edge work */
gboolean ox_done_strips (OxPlan *plan, const OxFloor *floor);

/* ox_done_kept:
 * @n: how many strips of the record, from the first on
 *
 * Returns: (transfer full) (element-type OxStrip): those that lie in a room which asks for their coat, with place, room, kind and coat */
GArray *ox_done_kept (const OxJob *job, const OxFloor *floor, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_done_coats_left: the coats of @floor with what is left to lay around @kept; ox_coats_free() */
OxCoat *ox_done_coats_left (const OxJob *job, const OxFloor *floor, const GArray *kept) G_GNUC_WARN_UNUSED_RESULT;

/* ox_done_number_lanes: gives a kept strip of @plan the lane of the strips of its room and coat on the same chalk line, else one beyond all of them */
void ox_done_number_lanes (OxPlan *plan);

/* ox_done_edges: sets @done of each edge area whose floor is marked. One that is marked in part is split into what is done and what is left, and the
 * areas are numbered anew; a rim that only the grid of stored corners leaves is not split off */
void ox_done_edges (OxPlan *plan);

G_END_DECLS
