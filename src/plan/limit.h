/* Oxturn: plan/limit - the reachable limit R*: floor that the machine can prepare in some heading, whatever the plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a heading h the middle of the pattern can be anywhere in travel eroded by the body at h; the pattern swept over that set is what the heading
 * reaches. R* is the union over the headings: all wall directions and their normals, both ways, and a fan of 15 degrees. Headings between those are
 * left out, so R* is a little too small next to round or oddly turned obstacles: less than front x (1 - cos 7.5 deg) = 0.009 front there.
 */
#pragma once
#include "plan/floor.h"
#include "base/run.h"
G_BEGIN_DECLS

/* ox_limit_new: R* within the target; NULL when cancelled; (transfer full) */
OxRegion *ox_limit_new (const OxFloor *floor, const OxMachine *machine, const OxRun *run) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
