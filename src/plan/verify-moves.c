/* Oxturn: plan/verify-moves - what lies between strips, and the order of work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"

#define END_TOLERANCE 0.0005 /* m between the end of a path and the strip it joins */
#define STEER 0.1746         /* radians, 10 degrees: what a machine is steered by on its way, without a swing */
#define SAME_HEADING 0.01745 /* radians, 1 degree */
#define RELATIVE 1e-6        /* of stored lengths and minutes */

static gboolean
differs (double stored, double computed)
{
  return fabs (stored - computed) > RELATIVE * MAX (1, fabs (computed));
}

static double
heading_change (const OxVerifyStrip *from, const OxVerifyStrip *to)
{
  return fabs (atan2 (ox_point_cross (from->axes.u, to->axes.u), ox_point_dot (from->axes.u, to->axes.u)));
}

static void
judge_strip_figures (OxVerify *verify, guint index)
{
  const OxVerifyStrip *s = &verify->strips[index];
  const OxStrip *strip = s->strip;
  if (strip->order != index + 1)
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "stands at place %u", index + 1);
  if (index > verify->plan->n_kept && strip[-1].room == strip->room && strip[-1].coat > strip->coat)
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "coat %u after coat %u", strip->coat, strip[-1].coat);
  if (strip->room >= verify->plan->job->n_rooms)
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "has no room");
  if (differs (strip->minutes, s->length / strip->speed))
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "%.6f minutes for %.6f", strip->minutes,
                     s->length / strip->speed);
  if (cos (strip->heading) * s->axes.u.x + sin (strip->heading) * s->axes.u.y < cos (SAME_HEADING))
    ox_verify_blame (verify, OX_RULE_ORDER, strip->order, strip->a, "does not run along its heading");
}

static double
path_length (const OxMove *move)
{
  double length = 0;
  for (guint i = 0; i + 1 < move->n_path; i++)
    length += ox_point_distance (move->path[i], move->path[i + 1]);
  return length;
}

static void
judge_figures (OxVerify *verify, const OxMove *move)
{
  const OxMachine *m = verify->machine;
  OxPoint at = move->n_path > 0 ? move->path[0] : verify->strips[move->from - 1].strip->b;
  double minutes = move->length / m->walk_speed + (move->turns ? m->swing_s / 60 : 0);
  if (move->n_path > 0 && differs (move->length, path_length (move)))
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, at, "path of %.6f m said to be %.6f m", path_length (move),
                     move->length);
  if (differs (move->minutes, minutes))
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, at, "%.6f minutes for %.6f", move->minutes, minutes);
}

static void
judge_kind (OxVerify *verify, const OxMove *move)
{
  const OxVerifyStrip *from = &verify->strips[move->from - 1], *to = &verify->strips[move->to - 1];
  gboolean changes = heading_change (from, to) > STEER;
  if (move->kind == OX_MOVE_SWING && !move->turns)
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, from->strip->b, "a swing without a turning point");
  if (move->kind == OX_MOVE_PULL_BACK && (move->turns || changes))
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, from->strip->b, "a pull-back that turns");
  if (changes && !move->turns && move->n_path > 0)
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, from->strip->b, "the heading changes without a turn");
}

/* The turning point lies on the way, and the circle around it is clear. */
static void
judge_turn (OxVerify *verify, const OxMove *move)
{
  double away = INFINITY, radius = verify->machine->turn_radius - OX_VERIFY_BODY_TOLERANCE;
  OxPoint at;
  if (!ox_bounds_holds_circle (verify->travel_bounds, move->turn, radius, &at))
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, at, "no room to swing at %.4f, %.4f", move->turn.x,
                     move->turn.y);
  for (guint i = 0; i + 1 < move->n_path; i++)
    away = MIN (away, ox_point_segment_distance (move->turn, move->path[i], move->path[i + 1], NULL));
  if (move->n_path > 0 && away > OX_VERIFY_BODY_TOLERANCE)
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, move->turn, "the turning point lies %.3f m off the path", away);
}

/* A machine whose head is set to one side may go with either side to the left, and may be led by the middle of its
 * body. */
static gboolean
leg_is_clear (OxVerify *verify, OxPoint a, OxPoint b, OxPoint *at)
{
  const OxMachine *m = verify->machine;
  const double t = OX_VERIFY_BODY_TOLERANCE, half = (m->left + m->right) / 2;
  const double sides[3][2] = { { half, half }, { m->right, m->left }, { m->left, m->right } };
  double length = ox_point_distance (a, b);
  OxAxes axes = ox_axes_along (a, b);
  for (guint i = 0; i < (m->left == m->right ? 1 : 3); i++)
    {
      OxBox corridor = { MIN (t, length / 4), t - sides[i][0], MAX (length - t, length * 0.75), sides[i][1] - t };
      if (ox_bounds_holds_box (verify->travel_bounds, axes, corridor, at))
        return TRUE;
    }
  return FALSE;
}

static void
judge_path (OxVerify *verify, const OxMove *move)
{
  OxPoint start = verify->strips[move->from - 1].strip->b, stop = verify->strips[move->to - 1].strip->a, at;
  double half = (verify->machine->left + verify->machine->right) / 2 - OX_VERIFY_BODY_TOLERANCE;
  if (ox_point_distance (move->path[0], start) > END_TOLERANCE
      || ox_point_distance (move->path[move->n_path - 1], stop) > END_TOLERANCE)
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, move->path[0], "the path does not lead from stop to start");
  for (guint i = 0; i + 1 < move->n_path; i++)
    if (!leg_is_clear (verify, move->path[i], move->path[i + 1], &at))
      ox_verify_blame (verify, OX_RULE_MOVE, move->from, at, "leg %u of the path is not clear for the body", i + 1);
  for (guint i = 1; i + 1 < move->n_path; i++)
    if (!ox_bounds_holds_circle (verify->travel_bounds, move->path[i], half, &at))
      ox_verify_blame (verify, OX_RULE_MOVE, move->from, at, "bend %u of the path is not clear for the body", i);
}

/* A machine is carried only where the floor on which the whole of it can roll does not join the two places. */
static void
judge_carried (OxVerify *verify, const OxMove *move, const OxRegion *rolling)
{
  OxPoint from = verify->strips[move->from - 1].strip->b, to = verify->strips[move->to - 1].strip->a;
  for (guint i = 0; i < rolling->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (rolling, i);
      if (ox_region_contains (part, from) && ox_region_contains (part, to))
        ox_verify_blame (verify, OX_RULE_MOVE, move->from, from, "carried although there is a way on wheels");
    }
}

static void
judge_move (OxVerify *verify, const OxMove *move)
{
  judge_kind (verify, move);
  if (move->turns)
    judge_turn (verify, move);
  if (move->n_path > 1)
    judge_path (verify, move);
  else if (move->n_path == 1)
    ox_verify_blame (verify, OX_RULE_MOVE, move->from, move->path[0], "a path of one corner");
}

void
ox_verify_moves (OxVerify *verify)
{
  const OxPlan *plan = verify->plan;
  const OxMachine *m = verify->machine;
  g_autoptr (OxRegion) rolling = NULL;
  for (guint i = 0; i < plan->n_strips; i++)
    judge_strip_figures (verify, i);
  if (plan->n_moves != (plan->n_strips > 0 ? plan->n_strips - 1 : 0))
    ox_verify_blame (verify, OX_RULE_ORDER, 0, (OxPoint){ 0, 0 }, "%u moves between %u strips", plan->n_moves,
                     plan->n_strips);
  for (guint i = 0; i < plan->n_moves && i + 1 < plan->n_strips; i++)
    {
      const OxMove *move = &plan->moves[i];
      if (move->from != i + 1 || move->to != i + 2)
        {
          ox_verify_blame (verify, OX_RULE_ORDER, move->from, plan->strips[i].b,
                           "move %u leads from strip %u to strip %u", i + 1, move->from, move->to);
          continue;
        }
      judge_figures (verify, move);
      if (move->to <= plan->n_kept)
        continue;
      judge_move (verify, move);
      if (move->n_path > 0)
        continue;
      if (rolling == NULL)
        rolling = ox_region_offset (verify->floor->travel, -MAX (m->left, m->right) - m->wall_gap, TRUE);
      judge_carried (verify, move, rolling);
    }
}
