/* Oxturn: tests/plan/judge - sound plans to start from, and what the judge of plans says of them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "judge.h"
#include "support/floors.h"

static void
print_breaches (const GPtrArray *breaches)
{
  for (guint i = 0; i < breaches->len; i++)
    {
      const OxBreach *b = g_ptr_array_index (breaches, i);
      g_test_message ("rule %d strip %u at %.4f %.4f: %s", b->rule, b->strip, b->at.x, b->at.y, b->text);
    }
}

static guint
count_rule (const GPtrArray *breaches, OxRule rule)
{
  guint n = 0;
  for (guint i = 0; i < breaches->len; i++)
    n += ((const OxBreach *) g_ptr_array_index (breaches, i))->rule == rule;
  return n;
}

void
judge_expect_sound (Draft *draft)
{
  g_autoptr (GPtrArray) breaches = ox_plan_verify (draft_finish (draft));
  print_breaches (breaches);
  g_assert_cmpuint (breaches->len, ==, 0);
}

void
judge_expect_only (Draft *draft, OxRule rule)
{
  g_autoptr (GPtrArray) breaches = ox_plan_verify (draft_finish (draft));
  print_breaches (breaches);
  g_assert_cmpuint (count_rule (breaches, rule), >, 0);
  g_assert_cmpuint (count_rule (breaches, rule), ==, breaches->len);
}

void
judge_expect_among (const OxPlan *plan, OxRule rule)
{
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  print_breaches (breaches);
  g_assert_cmpuint (count_rule (breaches, rule), >, 0);
}

void
judge_corridor_strip (Draft *draft, double y, double start, double stop)
{
  draft_strip (draft, start, y, stop, y);
  if (draft->strips->len < 2)
    return;
  OxPoint from = g_array_index (draft->strips, OxStrip, draft->strips->len - 2).b;
  OxPoint path[3] = { from, { start, from.y }, { start, y } };
  draft_move (draft, OX_MOVE_PULL_BACK, path, 3, NULL);
}

Draft *
judge_corridor_of (double width, const double *lanes, guint n)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, width, "compact");
  Draft *draft = draft_new (job);
  for (guint i = 0; i < n; i++)
    judge_corridor_strip (draft, lanes[i], 1.25, 9.63);
  return draft;
}

Draft *
judge_corridor (void)
{
  const double lanes[] = { 0.21, 0.40, 0.59 };
  Draft *draft = judge_corridor_of (0.8, lanes, 3);
  draft->chalk = (OxChalk){ .base_side = 0, .first_distance = 0.21, .spacing = 0.19, .lanes = 3 };
  return draft;
}

OxJob *
judge_with_obstacle (OxJob *base, OxObstacleKind kind, OxPoint centre, double size)
{
  g_autoptr (OxJob) job = base;
  OxObstacle fields = { .id = (char *) "O1", .name = (char *) "", .kind = kind };
  fields.shape = (OxShape){ .kind = OX_SHAPE_RECTANGLE, .centre = centre, .width = size, .depth = size };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_obstacle (builder, obstacle);
  return ox_job_builder_end (builder);
}

OxJob *
judge_two_rooms (double from, double to)
{
  g_autoptr (OxJob) left = ox_test_floor_rectangle (5, 2, "compact");
  OxPoint points[4] = { { 5, 0 }, { 10, 0 }, { 10, 2 }, { 5, 2 } };
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  OxRoom fields = { .id = (char *) "R2", .name = (char *) "", .ring = ring, .profile = (char *) "" };
  OxDoorway door = { .id = (char *) "D1", .name = (char *) "", .a = { 5, from }, .b = { 5, to } };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  g_autoptr (OxDoorway) doorway = ox_doorway_new (&door);
  OxJobBuilder *builder = ox_job_builder_new (left);
  ox_job_builder_put_room (builder, room);
  ox_job_builder_put_doorway (builder, doorway);
  return ox_job_builder_end (builder);
}

Draft *
judge_to_and_fro (const OxJob *job, OxPoint turn)
{
  Draft *draft = draft_new (job);
  draft_strip (draft, 1.25, 3, 9.63, 3);
  draft_strip (draft, 8.75, 3.19, 0.37, 3.19);
  OxPoint path[3] = { { 9.63, 3 }, turn, { 8.75, 3.19 } };
  draft_move (draft, OX_MOVE_SWING, path, 3, &turn);
  return draft;
}

Draft *
judge_hall (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  return judge_to_and_fro (job, (OxPoint){ 9, 3 });
}

static void
write_region (GString *text, const OxRegion *region)
{
  for (guint i = 0; i < region->n_points; i++)
    g_string_append_printf (text, " %.17g %.17g", region->points[i].x, region->points[i].y);
  g_string_append_c (text, '\n');
}

char *
judge_plan_text (const OxPlan *plan)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *s = &plan->strips[i];
      g_string_append_printf (text, "%u %u %u %d %u %.17g %.17g %.17g %.17g %.17g %.17g %d\n", s->order, s->room,
                              s->lane, s->kind, s->coat, s->a.x, s->a.y, s->b.x, s->b.y, s->heading, s->minutes,
                              s->station);
    }
  for (guint i = 0; i < plan->n_moves; i++)
    {
      const OxMove *m = &plan->moves[i];
      g_string_append_printf (text, "%u %u %d %.17g %.17g %d %.17g %.17g", m->from, m->to, m->kind, m->minutes,
                              m->length, m->turns, m->turn.x, m->turn.y);
      for (guint p = 0; p < m->n_path; p++)
        g_string_append_printf (text, " %.17g %.17g", m->path[p].x, m->path[p].y);
      g_string_append_c (text, '\n');
    }
  for (guint i = 0; i < plan->n_zones; i++)
    write_region (text, plan->zones[i].region);
  for (guint i = 0; i < plan->n_edges; i++)
    {
      const OxEdge *e = &plan->edges[i];
      g_string_append_printf (text, "%s %u %d %.17g %.17g", e->id, e->room, e->cause, e->area, e->length);
      write_region (text, e->region);
    }
  const OxTotals *t = &plan->totals;
  g_string_append_printf (text, "%.17g %.17g %.17g %.17g %.17g %.17g\n", t->labour_hours, t->ideal_hours, t->blasted_m2,
                          t->double_m2, t->edge_m2, t->edge_limit_m2);
  return g_string_free (text, FALSE);
}

gboolean
judge_same (const OxPlan *a, const OxPlan *b)
{
  g_autofree char *first = judge_plan_text (a);
  g_autofree char *second = judge_plan_text (b);
  return g_str_equal (first, second);
}
