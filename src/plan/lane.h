/* Oxturn: plan/lane - where a strip may run on a lane: free intervals in the frame of one direction.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A frame is the floor turned so that lanes run along +x. The places that a body heading straight may take on a lane are one-dimensional:
 *
 *        ___________        every side of the outline that enters the body's band blocks its x-extent;
 *   -----|//////////|----   what lies between blocked extents, and inside, is free. Shortened by rear and
 *   ==== | ======== | ===   front it is where the middle of the pattern may go; exact for slanted walls.
 *   -----|__________|----
 *
 * The pattern itself must stay on the room's target; the same test with the pattern's band gives that.
 */
#pragma once
#include "job/machine.h"
#include "geometry/region.h"
G_BEGIN_DECLS

/* A side that enters a lane's band by less than this does not block it: corners lie on the 0.0001 m grid and lanes are computed from them. */
#define OX_LANE_TOUCH 0.0005 /* m */

typedef struct
{
  double lo, hi;
} OxSpan;

typedef struct _OxSideIndex OxSideIndex;

/* ox_side_index_new: the sides of @region turned by -@angle, bucketed by y; (transfer full) */
OxSideIndex *ox_side_index_new (const OxRegion *region, double angle) G_GNUC_WARN_UNUSED_RESULT;
void ox_side_index_free (OxSideIndex *index);

/* ox_side_index_spans: the x-intervals in which the band @y0..@y1 is free of sides and inside; appends OxSpan to @out */
void ox_side_index_spans (const OxSideIndex *index, double y0, double y1, GArray *out);

typedef struct
{
  double angle;        /* radians, of lanes on the floor */
  double cos_a, sin_a;
  OxSideIndex *travel;
  OxSideIndex *target; /* of one room */
  OxBox box;           /* of that target in the frame */
  const OxMachine *machine;
} OxFrame;

/* ox_frame_new: @travel and @target on the floor; @machine is borrowed; (transfer full) */
OxFrame *ox_frame_new (const OxRegion *travel, const OxRegion *target, const OxMachine *machine,
                       double angle) G_GNUC_WARN_UNUSED_RESULT;
void ox_frame_free (OxFrame *frame);

/* ox_frame_to_floor, ox_frame_from_floor: a point of the frame as a point of the floor, and back */
OxPoint ox_frame_to_floor (const OxFrame *frame, OxPoint p);
OxPoint ox_frame_from_floor (const OxFrame *frame, OxPoint p);

/* ox_frame_spans:
 * @y: lane
 * @sign: +1 heading along +x, -1 along -x
 *
 * Appends to @out (OxSpan) where the middle of the pattern may be while the machine heads that way: spans of x, some of no length.
 */
void ox_frame_spans (const OxFrame *frame, double y, int sign, GArray *out);

/* ox_frame_find_span: the span as above that holds all of @x; FALSE when there is none, @out is then untouched */
gboolean ox_frame_find_span (const OxFrame *frame, double y, int sign, OxSpan x, OxSpan *out);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxSideIndex, ox_side_index_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxFrame, ox_frame_free)
G_END_DECLS
