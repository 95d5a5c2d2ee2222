/* Oxturn: plan/sight - what sees what on a floor, along straight lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sides of the outline lie in a grid of square cells, so that a question looks at the cells along its line only. Read-only after it
 * is made: any thread may ask.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

typedef struct _OxSight OxSight;

OxSight *ox_sight_new (const OxRegion *floor) G_GNUC_WARN_UNUSED_RESULT;
void ox_sight_free (OxSight *sight);

/* ox_sight_is_free: whether the line @a-@b stays on the floor; both lie on it. Lines along sides and past corners are free. */
gboolean ox_sight_is_free (const OxSight *sight, OxPoint a, OxPoint b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxSight, ox_sight_free)
G_END_DECLS
