/* Oxturn: plan/room - the best strips for one room, in working order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/leg.h"
G_BEGIN_DECLS

typedef struct
{
  GArray *legs;          /* OxLeg, in working order; empty when no strip pays */
  double angle;          /* radians, main direction */
  double first_y, spacing; /* lane grid in the frame of that direction */
  guint lanes;
} OxRoomPlan;

/* ox_room_plan_new:
 * Tries the directions that the job allows (all distinct wall directions when it leaves the choice), worked to and fro and one way, and keeps what
 * costs the fewest labour hours. NULL when cancelled; (transfer full)
 */
OxRoomPlan *ox_room_plan_new (const OxFloor *floor, guint room, const OxJob *job, const OxWays *ways, const OxRun *run) G_GNUC_WARN_UNUSED_RESULT;
void ox_room_plan_free (OxRoomPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxRoomPlan, ox_room_plan_free)
G_END_DECLS
