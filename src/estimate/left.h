/* Oxturn: estimate/left - the work that is left once part of a plan is done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/work.h"
G_BEGIN_DECLS

/* ox_left_work:
 * @rules: those of the whole job
 *
 * Strips and edge areas without a mark, shared out to shifts from the working day after the last one of the record, or from the calendar's first day
 * where that is later; the first of those shifts is number 1. Wear parts have run what the meter says. The hopper is taken for full, the drum for empty.
 * Returns: (transfer full) (nullable): NULL where nothing of the plan is done
 */
OxWork *ox_left_work (const OxPlan *plan, const OxWorkRules *rules) G_GNUC_WARN_UNUSED_RESULT;

/* ox_left_areas:
 * @room_m2: m2 of target in each room of the job
 *
 * Less floor that done strips cover with all the coats that it asks for, and less done edge work.
 * Returns: (transfer full): m2 left in each room
 */
double *ox_left_areas (const OxPlan *plan, const double *room_m2) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
