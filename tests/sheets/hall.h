/* Oxturn: tests/sheets/hall - a job and its plan with everything on the floor that sheets know how to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/drawing.h"
#include "plan/plan.h"
G_BEGIN_DECLS

/* ox_test_hall: a hall of 12 m x 8 m with a drop, a column, a pit, a masked and an excluded area, a joint and two stations, and through a
 * doorway a store of 5 m x 8 m.  Returns: (transfer full) */
OxJob *ox_test_hall (OxUnits units) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_plan: the planner's plan of it.  Returns: (transfer full) */
OxPlan *ox_test_plan (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* ox_test_count: elements in the layer @layer (nullable: any) whose id begins with @id (nullable: any) */
guint ox_test_count (const OxDrawing *drawing, const char *layer, const char *id);

/* ox_test_find_text: (nullable): the first text element that holds @part */
const OxElement *ox_test_find_text (const OxDrawing *drawing, const char *part);

/* ox_test_find_cell: (nullable): the first text element that is @text from its first letter to its last */
const OxElement *ox_test_find_cell (const OxDrawing *drawing, const char *text);

/* ox_test_has_cell_beside: whether a text of exactly these words stands in line with @cell */
gboolean ox_test_has_cell_beside (const OxDrawing *drawing, const OxElement *cell, const char *text);

/* ox_test_no_texts_overlap: stops the test when two texts of the drawing overlap by more than a hair at @mm_per_unit mm a unit */
void ox_test_no_texts_overlap (const OxDrawing *drawing, double mm_per_unit);

G_END_DECLS
