/* Oxturn: plan/sequence - in which order the rooms are worked, and the fields of each.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/lies.h"
#include "plan/room.h"
G_BEGIN_DECLS

typedef struct
{
  const OxPlan *plan;  /* with its job, and with @lies its strips */
  const OxFloor *floor;
  OxWays *ways;
  GPtrArray **rooms;   /* OxRoomPlan, coat by coat, of each room: the legs are put into order */
  const GArray *kept;  /* OxStrip: done ones, after which the rest is worked */
  const OxLies *lies;  /* (nullable): where hose and cord lie; then rooms and fields are worked outward from their stations */
  const OxRun *run;
} OxSequence;

/* ox_sequence_rooms:
 * @saved_hours: (inout): hours of moves that the search for a better order of fields saved, at a guess, are added
 *
 * Each time the room whose first strip is nearest is next; with lies, walking time and time for hose and cord that would lie on rooms still to be
 * blasted together say which. Returns: (transfer full): indices of the rooms in working order */
guint *ox_sequence_rooms (const OxSequence *sequence, double *saved_hours) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
