/* Oxturn: session/work-clock - where the machine is after so many minutes of strips and moves.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clock counts what the plan counts: the strips one after the other, each followed by its move, of one machine without breaks.
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct
{
  guint done;        /* strips that are finished */
  gboolean blasting; /* within strip done + 1; else on a move, or at the end */
  OxPoint at;        /* m, reference point of the machine */
  double heading;    /* radians */
} OxWorkState;

/* ox_work_minutes: of the whole work, all strips and moves; 0 without strips */
double ox_work_minutes (const OxPlan *plan);

/* ox_work_at:
 * @plan: with one strip or more
 * @minutes: below 0 counts as 0, beyond the end as the end */
OxWorkState ox_work_at (const OxPlan *plan, double minutes);

/* ox_work_start: minutes until strip number @order begins, 1 or more */
double ox_work_start (const OxPlan *plan, guint order);

G_END_DECLS
