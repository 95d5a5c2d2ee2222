/* Oxturn: sheets/crew - what the crew drawing is put together from, on one sheet or split over several (sheets/split.h).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/draft.h"
#include "sheets/floor.h"
G_BEGIN_DECLS

#define OX_CREW_AROUND ((OxAround){ 22, 22, 14, 14 }) /* tags and their leaders: they are wider than high */
#define OX_CREW_LAYERS \
  (OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_STRIPS | OX_FLOOR_NUMBERS | OX_FLOOR_ZONES | OX_FLOOR_EDGE_WORK \
   | OX_FLOOR_STATIONS | OX_FLOOR_NAMES | OX_FLOOR_WALKS | OX_FLOOR_REACH)

void ox_crew_add_untagged (OxBlock *block, guint untagged); /* a line that says how many edge areas have no tag; none for 0 */
OxBlock *ox_crew_order_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;    /* steps of the work */
OxBlock *ox_crew_fields_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;   /* runs of strips in working order, to be marked up */
OxBlock *ox_crew_chalk_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;    /* chalk lines */
OxBlock *ox_crew_stations_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crew_rough_new: (transfer full): the floor with all that any scale shows, for the legend as long as it may become */
OxDrawing *ox_crew_rough_new (const OxSheetRun *run) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crew_add_unnumbered: a line that says how many strips have no number on the @floor; none where all have */
void ox_crew_add_unnumbered (OxBlock *block, const OxPlan *plan, const OxDrawing *floor);
/* ox_crew_cautions_new: @untagged: edge areas without a tag; @brief: the table of edge work stands elsewhere */
OxBlock *ox_crew_cautions_new (const OxSheetRun *run, guint untagged, gboolean brief) G_GNUC_WARN_UNUSED_RESULT;

/* ox_crew_append_tags: stations, base walls, drops, profile checks, edge areas, pits; what stands beside the floor takes its place before the numbers of the
 * strips do.  Returns: how many edge areas on the page have no tag */
guint ox_crew_append_tags (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

G_END_DECLS
