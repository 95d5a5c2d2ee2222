/* Oxturn: session/work-clock - where the machine is after so many minutes of strips and moves.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/work-clock.h"

/* Minutes of the move that follows strip number i, from 0. */
static double
move_minutes (const OxPlan *plan, guint i)
{
  return i < plan->n_moves ? plan->moves[i].minutes : 0;
}

double
ox_work_start (const OxPlan *plan, guint order)
{
  double minutes = 0;

  for (guint i = 0; i + 1 < order && i < plan->n_strips; i++)
    minutes += plan->strips[i].minutes + move_minutes (plan, i);
  return minutes;
}

double
ox_work_minutes (const OxPlan *plan)
{
  return ox_work_start (plan, plan->n_strips + 1);
}

static OxPoint
between (OxPoint a, OxPoint b, double share)
{
  return (OxPoint){ a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share };
}

/* The point that lies @share along the path, and the way the path goes there. */
static void
walk (const OxMove *move, double share, OxWorkState *state)
{
  double left = 0;

  for (guint i = 0; i + 1 < move->n_path; i++)
    left += hypot (move->path[i + 1].x - move->path[i].x, move->path[i + 1].y - move->path[i].y);
  left *= share;
  for (guint i = 0; i + 1 < move->n_path; i++)
    {
      OxPoint a = move->path[i], b = move->path[i + 1];
      double length = hypot (b.x - a.x, b.y - a.y);

      if (length <= 0)
        continue;
      state->at = between (a, b, MIN (left / length, 1));
      if (left <= length)
        return;
      left -= length;
    }
}

OxWorkState
ox_work_at (const OxPlan *plan, double minutes)
{
  const OxStrip *last = &plan->strips[plan->n_strips - 1];
  double left = MAX (minutes, 0);

  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      OxWorkState state = { .done = i, .blasting = TRUE, .at = strip->a, .heading = strip->heading };
      double move = move_minutes (plan, i);

      if (left < strip->minutes)
        {
          state.at = between (strip->a, strip->b, left / strip->minutes);
          return state;
        }
      left -= strip->minutes;
      if (left < move && i + 1 < plan->n_strips)
        {
          state = (OxWorkState){ .done = i + 1, .at = strip->b, .heading = strip->heading };
          walk (&plan->moves[i], left / move, &state);
          if (left > move / 2)
            state.heading = plan->strips[i + 1].heading;
          return state;
        }
      left -= move;
    }
  return (OxWorkState){ .done = plan->n_strips, .at = last->b, .heading = last->heading };
}
