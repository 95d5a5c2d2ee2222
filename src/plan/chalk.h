/* Oxturn: plan/chalk - where the chalk lines of a room are measured from.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
#include "plan/room.h"
G_BEGIN_DECLS

/* ox_chalk_of:
 * @wing: the lanes of the other wing, of which @room must have some, else those of the main direction
 *
 * The side that the chalk lines are measured from: parallel ones before others, those that have all lanes on their inner side before others, then the
 * nearest. Lane 1 is the one next to it. */
OxChalk ox_chalk_of (const OxJob *job, const OxRoomPlan *room, gboolean wing);

G_END_DECLS
