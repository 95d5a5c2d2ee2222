/* Oxturn: session/plan-words - what a strip, an edge area or a turnaround zone of a plan says of itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

/* ox_plan_strip_of: the strip that the floor picture names "strip-12"; (nullable): NULL when @id names none of @plan */
const OxStrip *ox_plan_strip_of (const OxPlan *plan, const char *id);

/* ox_plan_words:
 * @id: as the floor picture names it: "strip-12", "E1", "Z1"
 *
 * One translated line, lengths in the units of the job: number, room, lane, length and minutes of a strip; number, cause, area, length and
 * minutes of an edge area (at the hand rate of the job); number and area of a zone.
 * Returns: (transfer full) (nullable): NULL when @id names nothing of the plan */
char *ox_plan_words (const OxPlan *plan, const char *id) G_GNUC_WARN_UNUSED_RESULT;

/* ox_plan_place: a point in the middle of what @id names. Returns: FALSE when it names nothing of the plan */
gboolean ox_plan_place (const OxPlan *plan, const char *id, OxPoint *at);

/* ox_plan_ids: strips in working order, then edge areas, then zones; (transfer full): NULL-ended */
char **ox_plan_ids (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
