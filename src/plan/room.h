/* Oxturn: plan/room - the best strips for one room, in working order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/leg.h"
G_BEGIN_DECLS

typedef struct
{
  guint room, coat;
  GArray *legs;          /* OxLeg, in working order; empty when no strip pays */
  double angle;          /* radians, main direction */
  OxWork work;
  double first_y, spacing; /* lane grid in the frame of that direction */
  guint lanes;
  double wing_angle, wing_first_y, wing_spacing; /* lane grid of another wing with a direction of its own */
  guint wing_lanes;        /* 0: none */
} OxRoomPlan;

/* ox_room_plans_new:
 * The first coat tries the directions that the job allows (all distinct wall directions when it leaves the choice), worked to and fro and one way, and
 * keeps what costs the fewest labour hours; a room of two wings may have one direction for each. Each further coat is turned by the room's angle from the one before; where that takes OX_ROOM_MOST_TURN
 * times the labour of the first coat's direction or more, as in a corridor that is too narrow for strips across it, it has that direction instead. Where
 * no swing fits anywhere all coats are worked as the first one.
 * Of the steps of @run it counts OX_ROOM_STEPS up, says what is being done, and leaves the total alone.
 * Returns: (transfer full) (element-type OxRoomPlan): the coats of the room in the order of @floor; NULL when cancelled
 */
#define OX_ROOM_MOST_TURN 1.5
#define OX_ROOM_STEPS 24
GPtrArray *ox_room_plans_new (const OxFloor *floor, guint room, const OxJob *job, const OxWays *ways, OxRun *run) G_GNUC_WARN_UNUSED_RESULT;
void ox_room_plan_free (OxRoomPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxRoomPlan, ox_room_plan_free)
G_END_DECLS
