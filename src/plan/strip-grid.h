/* Oxturn: plan/strip-grid - which strips cover a point.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strips lie in a grid of square cells, so that a question looks at those near its point only. Read-only after it is made.
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct _OxStripGrid OxStripGrid;

/* ox_strip_grid_new: of the first @n of @strips, which it borrows; @blast_length in m; (transfer full) */
OxStripGrid *ox_strip_grid_new (const OxStrip *strips, guint n, double blast_length) G_GNUC_WARN_UNUSED_RESULT;
void ox_strip_grid_free (OxStripGrid *grid);

/* ox_strip_grid_at:
 * @found: (out) (array fixed-size=2): the lowest two indices of strips of @coat that cover @p, G_MAXUINT where there are fewer
 */
void ox_strip_grid_at (const OxStripGrid *grid, OxPoint p, guint coat, guint found[2]);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxStripGrid, ox_strip_grid_free)
G_END_DECLS
