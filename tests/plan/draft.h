/* Oxturn: tests/plan/draft - a plan made by hand, to be judged.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct
{
  OxPlan plan;     /* its arrays point into those below */
  GArray *strips;  /* OxStrip */
  GArray *moves;   /* OxMove */
  GPtrArray *paths; /* of the moves */
  OxEdge edge;
  OxChalk chalk;
} Draft;

Draft *draft_new (const OxJob *job);
void draft_free (Draft *draft);

/* draft_strip: appends a strip; order number, heading and minutes are worked out */
OxStrip *draft_strip (Draft *draft, double x1, double y1, double x2, double y2);

/* draft_move: appends a move from the last but one strip to the last one along @n corners; turns at @turn when it is not NULL */
OxMove *draft_move (Draft *draft, OxMoveKind kind, const OxPoint *path, guint n, const OxPoint *turn);

/* draft_finish: works out floor, edge work (all in one) and totals, so that the plan holds when its strips and moves do */
const OxPlan *draft_finish (Draft *draft);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Draft, draft_free)
G_END_DECLS
