/* Oxturn: sheets/tags - tags beside what they name, with leaders, on a crew drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS

/* ox_tags_append_edges:
 * Each edge area gets a tag with id, area and length outside the rooms where a leader reaches, inside with its id alone where not.
 * Returns: how many areas had no room for a tag; they are listed in the schedule only */
guint ox_tags_append_edges (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_tags_take_wraps: the places of the marks where hose or cord wraps, which are drawn with the floor */
void ox_tags_take_wraps (const OxSheetRun *run, OxLabels *labels);

/* ox_tags_append_pits: each pit with what to keep back from it, beside it where there is room */
void ox_tags_append_pits (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_tags_append_sides: drops with what to keep back, and the base walls with what to measure from them */
void ox_tags_append_sides (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_tags_append_check_names: beside the crosses where the numbers of the strips leave room: of all checks, or, where there would be no floor to
 * be seen for names, of the first, the last and every fifth */
void ox_tags_append_check_names (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_tags_append_checks: a small cross at each planned profile check */
void ox_tags_append_checks (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

/* ox_tags_append_stations: names of the stations and of the places proposed for further ones beside them; one on the line between two parts of the
 * floor is named on the sheet of the part to its right, or above. @proposed: whether those are drawn */
void ox_tags_append_stations (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels, gboolean proposed);

/* ox_tags_append_reach: once on the lines of each station whose reach ends there; where the numbers of the strips leave room */
void ox_tags_append_reach (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

G_END_DECLS
