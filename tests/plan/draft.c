/* Oxturn: tests/plan/draft - a plan made by hand, to be judged.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "draft.h"
#include "plan/floor.h"

Draft *
draft_new (const OxJob *job)
{
  Draft *draft = g_new0 (Draft, 1);
  draft->plan.job = ox_job_ref (job);
  draft->strips = g_array_new (FALSE, TRUE, sizeof (OxStrip));
  draft->moves = g_array_new (FALSE, TRUE, sizeof (OxMove));
  draft->paths = g_ptr_array_new_with_free_func (g_free);
  return draft;
}

void
draft_free (Draft *draft)
{
  ox_job_unref (draft->plan.job);
  g_clear_pointer (&draft->plan.target, ox_region_unref);
  g_clear_pointer (&draft->plan.travel, ox_region_unref);
  g_clear_pointer (&draft->plan.blasted, ox_region_unref);
  g_clear_pointer (&draft->edge.region, ox_region_unref);
  g_array_unref (draft->strips);
  g_array_unref (draft->moves);
  g_ptr_array_unref (draft->paths);
  g_free (draft);
}

OxStrip *
draft_strip (Draft *draft, double x1, double y1, double x2, double y2)
{
  const OxMachine *m = draft->plan.job->machine;
  OxStrip strip = { .order = draft->strips->len + 1, .lane = draft->strips->len + 1, .coat = 1 };
  strip.a = (OxPoint){ x1, y1 };
  strip.b = (OxPoint){ x2, y2 };
  strip.heading = atan2 (y2 - y1, x2 - x1);
  strip.width = m->blast_width;
  strip.speed = m->travel_speed;
  strip.minutes = ox_point_distance (strip.a, strip.b) / strip.speed;
  strip.station = -1;
  g_array_append_val (draft->strips, strip);
  return &g_array_index (draft->strips, OxStrip, draft->strips->len - 1);
}

OxMove *
draft_move (Draft *draft, OxMoveKind kind, const OxPoint *path, guint n, const OxPoint *turn)
{
  const OxMachine *m = draft->plan.job->machine;
  OxMove move = { .from = draft->strips->len - 1, .to = draft->strips->len, .kind = kind, .n_path = n };
  OxPoint *own = g_memdup2 (path, sizeof (OxPoint) * n);
  g_ptr_array_add (draft->paths, own);
  move.path = own;
  move.turns = turn != NULL;
  move.turn = turn != NULL ? *turn : (OxPoint){ 0, 0 };
  for (guint i = 0; i + 1 < n; i++)
    move.length += ox_point_distance (path[i], path[i + 1]);
  move.minutes = move.length / m->walk_speed + (move.turns ? m->swing_s / 60 : 0);
  g_array_append_val (draft->moves, move);
  return &g_array_index (draft->moves, OxMove, draft->moves->len - 1);
}

static OxRegion *
covered (const Draft *draft)
{
  double half = draft->plan.job->machine->blast_length / 2;
  g_autofree OxPoint *corners = g_new0 (OxPoint, 4 * draft->strips->len + 1);
  for (guint i = 0; i < draft->strips->len; i++)
    {
      const OxStrip *s = &g_array_index (draft->strips, OxStrip, i);
      OxPoint u = { cos (s->heading), sin (s->heading) }, left = { -u.y * s->width / 2, u.x * s->width / 2 };
      OxPoint a = ox_point_sub (s->a, ox_point_scale (u, half)), b = ox_point_add (s->b, ox_point_scale (u, half));
      corners[4 * i] = ox_point_sub (a, left);
      corners[4 * i + 1] = ox_point_sub (b, left);
      corners[4 * i + 2] = ox_point_add (b, left);
      corners[4 * i + 3] = ox_point_add (a, left);
    }
  return ox_region_union_quads (corners, draft->strips->len);
}

static void
add_up (Draft *draft)
{
  OxTotals *t = &draft->plan.totals;
  t->target_m2 = ox_region_area (draft->plan.target);
  t->blasted_m2 = t->coats_m2 = ox_region_area (draft->plan.blasted);
  t->edge_m2 = draft->edge.area;
  t->strips = draft->strips->len;
  for (guint i = 0; i < draft->strips->len; i++)
    {
      const OxStrip *s = &g_array_index (draft->strips, OxStrip, i);
      t->strip_m += ox_point_distance (s->a, s->b);
      t->strip_hours += s->minutes / 60;
    }
  for (guint i = 0; i < draft->moves->len; i++)
    {
      t->move_m += g_array_index (draft->moves, OxMove, i).length;
      t->move_hours += g_array_index (draft->moves, OxMove, i).minutes / 60;
    }
  t->edge_hours = t->edge_m2 / draft->plan.job->rates.edge_m2_per_hour;
  t->labour_hours = t->strip_hours + t->move_hours + t->edge_hours;
}

const OxPlan *
draft_finish (Draft *draft)
{
  OxPlan *plan = &draft->plan;
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  g_autoptr (OxRegion) cover = covered (draft);
  plan->target = ox_region_ref (floor->target);
  plan->travel = ox_region_ref (floor->travel);
  plan->blasted = ox_region_intersection (cover, plan->target);
  draft->chalk.coat = 1;
  draft->edge.id = (char *) "E1";
  draft->edge.region = ox_region_difference (plan->target, plan->blasted);
  draft->edge.area = ox_region_area (draft->edge.region);
  plan->strips = (OxStrip *) (void *) draft->strips->data;
  plan->n_strips = draft->strips->len;
  plan->moves = (OxMove *) (void *) draft->moves->data;
  plan->n_moves = draft->moves->len;
  plan->edges = &draft->edge;
  plan->n_edges = 1;
  plan->chalks = &draft->chalk;
  plan->n_chalks = draft->chalk.lanes > 0 ? 1 : 0;
  add_up (draft);
  return plan;
}
