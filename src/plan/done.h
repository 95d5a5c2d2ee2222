/* Oxturn: plan/done - what of a plan is done already, by the job's record.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

/* ox_done_strips: sets @done of each strip that lies where the record has one of the same coat */
void ox_done_strips (OxPlan *plan);

/* ox_done_edges: sets @done of each edge area whose floor is marked. One that is marked in part is split into what is done and what is left, and the
 * areas are numbered anew; a rim that only the grid of stored corners leaves is not split off */
void ox_done_edges (OxPlan *plan);

G_END_DECLS
