/* Oxturn: plan/leftover - what the strips leave: edge work with its causes, and turnaround zones.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/floor.h"
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct
{
  double gross_m2;   /* m2 of target under each strip, added up */
  double covered_m2; /* m2 of target that strips cover, counted once a coat */
} OxBlasted;

/* ox_leftover_blasted: target that all its coats cover; @sums: (out); (transfer full) */
OxRegion *ox_leftover_blasted (const OxFloor *floor, const OxPlan *plan, OxBlasted *sums) G_GNUC_WARN_UNUSED_RESULT;

/* ox_leftover_edges: target less blasted, room by room, in pieces numbered along the rooms; @limit is R*; sets plan->edges and n_edges */
void ox_leftover_edges (const OxFloor *floor, const OxRegion *blasted, const OxRegion *limit, OxPlan *plan);

/* ox_leftover_zones: coat by coat, floor of the target that main strips leave at their ends and crosswise strips prepare; sets plan->zones */
void ox_leftover_zones (const OxFloor *floor, OxPlan *plan);

G_END_DECLS
