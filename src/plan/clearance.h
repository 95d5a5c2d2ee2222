/* Oxturn: plan/clearance - how far a point or a straight piece of way keeps off the outline of a region.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sides of the outline lie in a grid of square cells; each cell lists all sides that come within the reach asked for, so that a question
 * about a point looks at one cell. Answers hold for points inside the region. Read-only after it is made: any thread may ask.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

typedef struct _OxClearance OxClearance;

OxClearance *ox_clearance_new (const OxRegion *region, double reach) G_GNUC_WARN_UNUSED_RESULT;
void ox_clearance_free (OxClearance *clearance);

/* ox_clearance_at:
 * @nearest: (out) (optional): nearest point of the outline; untouched when it is beyond reach
 * Returns: m from @p to the outline, at most the reach */
double ox_clearance_at (const OxClearance *clearance, OxPoint p, OxPoint *nearest);

/* ox_clearance_is_over: whether no point of the segment is nearer to the outline than @distance (<= reach) */
gboolean ox_clearance_is_over (const OxClearance *clearance, OxPoint a, OxPoint b, double distance);

/* ox_clearance_is_off: whether the rectangle along @a-@b, from @right (<= reach) on its right to @left on its left, is free of the outline */
gboolean ox_clearance_is_off (const OxClearance *clearance, OxPoint a, OxPoint b, double left, double right);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxClearance, ox_clearance_free)
G_END_DECLS
