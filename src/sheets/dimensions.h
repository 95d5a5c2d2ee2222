/* Oxturn: sheets/dimensions - the dimensions of a floor on a page: running and overall ones outside it, others along the walls.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * After ISO 129-1: the smaller stand nearer to the floor, each length once.
 *
 *      +-------------+--+------+
 *      |             |  |      |
 *      |             +--+      |
 *      +-------------+  +------+
 *      /----12.00----/--/-5.00-/     running: walls in one line are one, a figure without room stands below its line
 *                     0.20
 *      /---------17.20---------/     overall
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS


/* Stops of the four chains, m along x (below, above) and along y (left, right), sorted; empty where there is no chain. */
typedef struct
{
  GArray *stops[4]; /* of double: below, above, left, right */
} OxChains;

/* ox_chains_around: the room that they need around the floor: most where a running and an overall one stand */
OxAround ox_chains_around (const OxJob *job);

/* ox_chains_append: the running and overall dimensions; figures of a chain add up to the overall one as they are printed. Where a figure finds no
 * place its span becomes one with the next. Returns: (transfer full) */
OxChains *ox_chains_append (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels) G_GNUC_WARN_UNUSED_RESULT;
void ox_chains_free (OxChains *chains);

/* ox_chains_append_sides: sides of rooms whose length no chain says, along the wall, where there is room */
void ox_chains_append_sides (const OxChains *chains, const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxChains, ox_chains_free)
G_END_DECLS
