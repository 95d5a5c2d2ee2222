/* Oxturn: plan/verify-paces - walking speeds along strips, and the minutes that they make.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"

#define RELATIVE 1e-6
#define NEAR_BORDER 0.02 /* m: nearer than this to the border of a condition area either speed will do */

/* What the conditions round @p ask for; NAN beside the border of one. */
static double
speed_asked (const OxJob *job, OxPoint p)
{
  static const OxPoint around[] = { { NEAR_BORDER, 0 }, { -NEAR_BORDER, 0 }, { 0, NEAR_BORDER }, { 0, -NEAR_BORDER } };
  double speed = INFINITY;
  for (guint i = 0; i < job->n_conditions; i++)
    {
      const OxCondition *condition = job->conditions[i];
      gboolean inside = ox_ring_contains (condition->ring, p);
      for (guint k = 0; k < G_N_ELEMENTS (around) && condition->speed_m_per_min > 0; k++)
        if (ox_ring_contains (condition->ring, ox_point_add (p, around[k])) != inside)
          return NAN;
      if (inside && condition->speed_m_per_min > 0)
        speed = MIN (speed, condition->speed_m_per_min);
    }
  return isinf (speed) ? job->machine->travel_speed : speed;
}

/* The speed @along metres of the strip is the one that is asked for there. */
static void
judge_speed (OxVerify *verify, const OxVerifyStrip *s, double along, double speed)
{
  OxPoint at = ox_axes_from (s->axes, (OxPoint){ along, 0 });
  double asked = speed_asked (verify->plan->job, at);
  if (fabs (speed - asked) > RELATIVE * asked) /* FALSE for NAN */
    ox_verify_blame (verify, OX_RULE_ORDER, s->strip->order, at, "%.3f m/min where %.3f m/min are asked for", speed, asked);
}

static void
judge_strip (OxVerify *verify, const OxVerifyStrip *s)
{
  const OxStrip *strip = s->strip;
  const OxPace one = { s->length, strip->speed }, *paces = strip->n_paces > 0 ? verify->plan->paces + strip->pace : &one;
  double length = 0, minutes = 0;
  for (guint i = 0; i < MAX (strip->n_paces, 1); i++)
    {
      judge_speed (verify, s, length + paces[i].length / 2, paces[i].speed);
      length += paces[i].length;
      minutes += paces[i].length / paces[i].speed;
    }
  if (fabs (length - s->length) > RELATIVE * MAX (1, s->length))
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "%.6f m at one speed or another of %.6f m", length, s->length);
  if (fabs (strip->minutes - minutes) > RELATIVE * MAX (1, minutes))
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "%.6f minutes for %.6f", strip->minutes, minutes);
}

void
ox_verify_paces (OxVerify *verify)
{
  for (guint i = 0; i < verify->plan->n_strips; i++)
    judge_strip (verify, &verify->strips[i]);
}
