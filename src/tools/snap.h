/* Oxturn: tools/snap - where a pointer that is near something is held, and why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tried in this order, the first that lies within the radius wins; of equals the nearer, then the earlier in the job:
 *   0 a step          of 15 degrees from the point placed last, where that was asked for
 *   1 a corner        of a room, an obstacle, an excluded area, an end or bend of a joint
 *   2 an intersection of two sides or joints
 *   3 a middle        of a side
 *   4 square to both  at a right angle to the last side and in line with the first corner
 *   5 perpendicular   the foot on a side of the shortest way from the point placed last
 *   6 square          at a right angle to the last side or along it, or along an axis of the floor
 *   7 in line         with the first corner along an axis of the floor
 *   8 a side          the nearest point on it
 *   9 the grid        always: even lengths of a step that suits the zoom
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

typedef enum
{
  OX_SNAP_NONE,
  OX_SNAP_STEP,
  OX_SNAP_CORNER,
  OX_SNAP_INTERSECTION,
  OX_SNAP_MIDDLE,
  OX_SNAP_SQUARE_BOTH,
  OX_SNAP_PERPENDICULAR,
  OX_SNAP_SQUARE,
  OX_SNAP_IN_LINE,
  OX_SNAP_SIDE,
  OX_SNAP_GRID
} OxSnapKind;

typedef struct
{
  double px_per_m;
  const char *skip_id;   /* (nullable): item whose corners and sides are not looked at, as it is being dragged */
  const OxPoint *last;   /* (nullable): point placed last */
  const OxPoint *before; /* (nullable): the one before, which gives the last side its direction */
  const OxPoint *first;  /* (nullable): where the outline begins */
  gboolean steps;        /* keep to steps of 15 degrees from @last */
  gboolean free;         /* hold on to nothing, not even the grid */
} OxSnapOptions;

typedef struct
{
  OxSnapKind kind;
  OxPoint at;       /* on OX_GRID */
  gboolean guided;  /* whether @guide says what it holds on to */
  OxPoint guide[2]; /* e.g. the side, or the line from the last corner */
} OxSnap;

#define OX_SNAP_RADIUS_PX 9.0

/* ox_snap_find: where @at is held in @job */
OxSnap ox_snap_find (const OxJob *job, OxPoint at, const OxSnapOptions *options);

/* ox_snap_reason: "corner", "on a side" and so on, translated; "" for the grid and for none */
const char *ox_snap_reason (OxSnapKind kind);

/* ox_snap_step: even length, in metres, that is 6 pixels or more at this scale: 1, 5 or 10 cm, 0.5 m ... or inches and feet */
double ox_snap_step (OxUnits units, double px_per_m);

G_END_DECLS
