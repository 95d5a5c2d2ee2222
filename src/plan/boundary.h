/* Oxturn: plan/boundary - the sides that strips are laid along, seen in a frame.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/layout.h"
G_BEGIN_DECLS

/* a stretch that the body must keep off, parallel to the lanes of a frame */
typedef struct
{
  guint frame;
  double y;      /* of the stretch */
  double x0, x1; /* its ends */
  int inside;    /* +1: the floor lies above it (towards +y), -1: below */
} OxStretch;

/* ox_boundary_sides: the sides of the layout's travel that border on its room and are @least m long or more, each in the frame of its own
 * direction (made when new, up to @max_frames of them; longest sides first); appends OxStretch */
void ox_boundary_sides (OxLayout *layout, double least, guint max_frames, GArray *out);

/* ox_boundary_boxes: the four sides of the box round each hole of the travel in the room, in the main frame and the one across it, so that round
 * and small obstacles have stretches as well; appends OxStretch */
void ox_boundary_boxes (OxLayout *layout, GArray *out);

/* ox_boundary_side_clearance: least distance of a lane from a stretch on its @inside while heading @sign */
double ox_boundary_side_clearance (const OxMachine *machine, int inside, int sign);

/* ox_boundary_reach:
 * @angle: between wall and lane, radians
 * @ahead: TRUE for a strip that runs on to the wall, FALSE for one that starts at it
 *
 * Seen square to the wall, how far from it a strip that ends there leaves the floor uncovered at most. */
double ox_boundary_reach (const OxMachine *machine, double angle, gboolean ahead);

G_END_DECLS
