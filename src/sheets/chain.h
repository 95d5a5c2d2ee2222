/* Oxturn: sheets/chain - one row of running dimensions beside the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "sheets/draft.h"
G_BEGIN_DECLS

/* which side of the floor it stands on */
typedef struct
{
  gboolean level; /* below or above, along x; else along y */
  double out;     /* -1: below or left, 1: above or right */
} OxChainEdge;

/* where an extension line begins: @s along the chain, @v across it, both m of floor */
typedef struct
{
  double s, v;
} OxChainStop;

typedef struct
{
  const OxPlot *plot;
  OxUnits units;
  OxBox box;        /* m: of the rooms; chains stand outside it */
  OxDrawingBuilder *builder;
  OxLabels *labels;
} OxChainPage;

/* ox_chain_append:
 * @stops: of OxChainStop, sorted along the chain; those that go because a figure finds no place are taken out
 * @row_mm: from the box to the dimension line
 *
 * Figures are differences of rounded positions, so that they add up. Returns: FALSE, and nothing drawn, when not even the whole finds a place */
gboolean ox_chain_append (const OxChainPage *page, OxChainEdge edge, GArray *stops, double row_mm);

G_END_DECLS
