/* Oxturn: plan/hook-private - where a test can break a plan in the making.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A judge of plans is worth as much as the faults that it is seen to notice. A hook plays the planner with a fault in it: what it changes
 * at one stage is the ground of all that comes after it, as it would be with the fault in the planner itself.
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

typedef enum
{
  OX_STAGE_STRIPS, /* strips are laid and numbered; no moves, no edge work yet */
  OX_STAGE_MOVES,  /* moves are found */
  OX_STAGE_END     /* edge work, zones and totals are there */
} OxPlanStage;

/* OxPlanHook: changes numbers of @plan in place, or makes n_strips, n_moves or n_edges smaller */
typedef void (*OxPlanHook) (OxPlan *plan, OxPlanStage stage, gpointer data);

/* ox_plan_new_hooked: as ox_plan_new(), with @hook (nullable) called with @data at each stage. Tests only. */
OxPlan *ox_plan_new_hooked (const OxJob *job, OxPlanHook hook, gpointer data, OxRun *run, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
