/* Oxturn: estimate/dose - how much of the floor is blasted once, twice, more often, or not at all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

#define OX_DOSE_LEVELS 4

typedef struct
{
  double area[OX_DOSE_LEVELS]; /* m2 of target with 0, 1, 2, and 3 or more strips of one coat over it, all coats added up */
  double error_m2;             /* each of them is right to about this much */
} OxDose;

/* ox_dose_of:
 *
 * Lengths along slanting lines evenly spread over the floor, exact on each line, times the distance of the lines: the midpoint rule. The error
 * is how far results from every fourth line lie apart at most. Derived. The areas add up to the target's, coat by coat the floor
 * that asks for it, scaled so that they do.
 */
OxDose ox_dose_of (const OxPlan *plan);

G_END_DECLS
