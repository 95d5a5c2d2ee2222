/* Oxturn: plan/floor - the floor as the planner sees it: what is to be prepared, and where the body may stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   target = rooms less solids, pits, masked and excluded areas
 *   travel = rooms, an apron beyond open sides as deep as the body needs, and doorways,
 *            less solids, pits with their keep-back, the keep-back of drops, and walls between rooms that share a side
 *
 *   hose floor = rooms, the same apron and doorways, less solids, pits wider than OX_FLOOR_SPAN, and walls between rooms that share a side:
 *            where a hose or cord may lie. It may lie in the keep-back of a drop and over masked and excluded floor; it crosses a drain
 *            channel, but goes round an opening whose edge would chafe it (common practice, no source).
 *
 * A wall has no thickness of its own: where the floor on its far side is travel too, 1 mm of that floor is taken away along it, except in
 * doorways.
 */
#pragma once
#include "plan/coat.h"
G_BEGIN_DECLS

#define OX_FLOOR_SPAN 0.60 /* m: width of a pit that a hose still crosses */
#define OX_WALL_SLAB 0.001 /* m taken from the floor on the far side of a wall that two floors share */

typedef struct
{
  guint n_rooms;
  OxRegion **rooms;    /* target of each room, in the order of the job */
  guint *by_place;     /* rooms from the lowest, then leftmost corner on: an order that does not hang on how the job lists them */
  OxRegion *target;    /* all of them */
  guint n_coats;
  OxCoat *coats;       /* what is to be laid, room by room in the order of the job, coat by coat */
  OxRegion *travel;
  OxRegion *hose;      /* where a hose or cord may lie */
  const GArray *kept;  /* (nullable) (element-type OxStrip): borrowed: done strips that new ones must overlap (plan/done.h) */
} OxFloor;

/* ox_floor_new: @job must pass ox_job_check(); (transfer full) */
OxFloor *ox_floor_new (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;
void ox_floor_free (OxFloor *floor);

/* ox_floor_apron_depth: m beyond an open side that the body may overrun: its largest extent or turning circle */
double ox_floor_apron_depth (const OxMachine *machine);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxFloor, ox_floor_free)
G_END_DECLS
