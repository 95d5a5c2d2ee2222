/* Oxturn: plan/verify-grid - which boxes lie near a box, for many boxes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

typedef struct _OxBoxGrid OxBoxGrid;

/* ox_box_grid_new:
 * @boxes: @n of them, none empty; copied
 *
 * A query costs about as many steps as boxes are found when the boxes are spread evenly. One thread at a time.
 */
OxBoxGrid *ox_box_grid_new (const OxBox *boxes, guint n) G_GNUC_WARN_UNUSED_RESULT;
void ox_box_grid_free (OxBoxGrid *grid);

/* ox_box_grid_query:
 * @found: array of guint, emptied first; indices of the boxes that touch @box, ascending
 */
void ox_box_grid_query (OxBoxGrid *grid, OxBox box, GArray *found);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxBoxGrid, ox_box_grid_free)
G_END_DECLS
