/* Oxturn: app/canvas/plan-marks - what is shown over the plan: a strip or area that is asked about, the machine at work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
#include "tools/preview.h"
G_BEGIN_DECLS

/* ox_plan_marks_add_pointed: outlines what @id names, see session/plan-words.h */
void ox_plan_marks_add_pointed (OxPreview *preview, const OxPlan *plan, const char *id);

/* ox_plan_marks_add_clock: what is worked off after @minutes, and the body of the machine where it is then */
void ox_plan_marks_add_clock (OxPreview *preview, const OxPlan *plan, double minutes);

G_END_DECLS
