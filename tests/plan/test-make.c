/* Oxturn: plan/make: errors, notices, numbers of strips and lanes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "base/share.h"
#include "base/notice.h"
#include "judge.h"
#include "job/check.h"
#include "job/classes.h"
#include "plan/plan.h"
#include "plan/room.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
assert_notice (const OxPlan *plan, guint i, const char *words)
{
  g_autofree char *text = ox_notice_text (plan->notices[i]);
  g_assert_nonnull (strstr (text, words));
}

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxRun run = OX_RUN_INIT;
  OxPlan *plan = ox_plan_new (job, &run, &error);
  g_assert_no_error (error);
  g_assert_cmpint (run.total, >, 0);
  g_assert_cmpint (run.done, ==, run.total - 1); /* the last step ends with the plan */
  g_assert_true (plan->job == job);
  return plan;
}

/* A room of @width x @depth whose lower left corner is (@x, 0). */
static OxJob *
and_room (const OxJob *base, const char *id, double x, double width, double depth)
{
  const OxPoint points[4] = { { x, 0 }, { x + width, 0 }, { x + width, depth }, { x, depth } };
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  OxRoom fields = { .id = (char *) id, .name = (char *) "Store", .ring = ring, .profile = (char *) "" };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (base);
  ox_job_builder_put_room (builder, room);
  return ox_job_builder_end (builder);
}

static void
cancelled (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (OxJob) job = ox_test_floor_rectangle (8, 6, "compact");
  OxRun run = OX_RUN_INIT;
  run.cancel = cancel;
  g_cancellable_cancel (cancel);
  g_assert_null (ox_plan_new (job, &run, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

typedef struct
{
  OxRun *run;
  gint at;       /* steps done when it is to be cancelled */
  gint finished; /* set once there is nothing left to cancel */
} Watch;

static gpointer
cancel_then (gpointer data)
{
  Watch *watch = data;
  while (g_atomic_int_get (&watch->run->done) < watch->at && !g_atomic_int_get (&watch->finished))
    g_thread_yield ();
  g_cancellable_cancel (watch->run->cancel);
  return NULL;
}

/* Wherever it is cancelled there is an error and no plan, or, when it came too late, the plan as it would have been; on one thread and on three. */
static void
cancelled_anywhere (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (9, 8, 0.5, 4, "compact");
  g_autoptr (OxPlan) whole = plan_of (job);
  for (gint at = 0; at < OX_ROOM_STEPS + 6; at++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GCancellable) cancel = g_cancellable_new ();
      OxRun run = OX_RUN_INIT;
      Watch watch = { &run, at, 0 };
      run.cancel = cancel;
      ox_share_set_threads (at % 2 ? 1 : 3);
      GThread *thread = g_thread_new ("cancel", cancel_then, &watch);
      g_autoptr (OxPlan) plan = ox_plan_new (job, &run, &error);
      g_atomic_int_set (&watch.finished, 1);
      g_thread_join (thread);
      if (plan == NULL)
        g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
      else
        g_assert_cmpuint (plan->n_strips, ==, whole->n_strips);
    }
  ox_share_set_threads (0);
}

/* Rooms that lie on one another cannot be planned; the message is what the check says first. */
static void
bad_job (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) base = ox_test_floor_rectangle (8, 6, "compact");
  g_autoptr (OxJob) job = and_room (base, "R2", 4, 8, 6);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_assert_null (ox_plan_new (job, NULL, &error));
  g_assert_error (error, OX_PLAN_ERROR, OX_PLAN_ERROR_BAD_JOB);
  g_assert_cmpstr (error->message, ==, ((const OxFinding *) g_ptr_array_index (findings, 0))->text);
}

static void
empty_job (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, ox_classes_find ("compact"));
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_strips + plan->n_moves + plan->n_zones + plan->n_edges + plan->n_chalks, ==, 0);
  g_assert_true (ox_region_is_empty (plan->target));
  ox_test_near (plan->totals.labour_hours, 0, 1e-12);
  g_assert_nonnull (plan->notices);
  g_assert_null (plan->notices[0]);
}

/* Two halls without a way between them: one move by hand, and a notice of it. */
static void
carried (void)
{
  g_autoptr (OxJob) base = ox_test_floor_rectangle (6, 4, "medium");
  g_autoptr (OxJob) job = and_room (base, "R2", 8, 6, 4);
  g_autoptr (OxPlan) plan = plan_of (job);
  guint without = 0;
  for (guint i = 0; i < plan->n_moves; i++)
    without += plan->moves[i].n_path == 0;
  g_assert_cmpuint (without, ==, 1);
  g_assert_cmpuint (g_strv_length (plan->notices), ==, 3); /* and that neither collector nor supply is placed */
  assert_notice (plan, 0, "carried");
  g_assert_cmpuint (plan->n_chalks, ==, 2);
}

/* A room that no strip fits into is named. */
static void
left_out (void)
{
  g_autoptr (OxJob) base = ox_test_floor_rectangle (6, 4, "medium");
  g_autoptr (OxJob) job = and_room (base, "R2", 8, 1, 1);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (g_strv_length (plan->notices), ==, 3);
  assert_notice (plan, 0, "Store:");
  g_assert_cmpuint (plan->n_chalks, ==, 1);
}

/* Strips are numbered as they are worked, one move leads from each to the next, room by room. */
static void
numbers (void)
{
  g_autoptr (OxJob) job = judge_two_rooms (0.5, 1.5);
  g_autoptr (OxPlan) plan = plan_of (job);
  guint changes = 0;
  g_assert_cmpuint (plan->n_strips, >, 4);
  g_assert_cmpuint (plan->n_moves, ==, plan->n_strips - 1);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      g_assert_cmpuint (strip->order, ==, i + 1);
      g_assert_cmpuint (strip->coat, ==, 1);
      g_assert_cmpuint (strip->lane, >=, 1);
      ox_test_near (strip->width, 0.21, 1e-12);
      ox_test_near (strip->minutes, ox_strip_length (strip) / 6, 1e-9);
      if (i == 0)
        continue;
      changes += strip->room != plan->strips[i - 1].room;
      g_assert_cmpuint (plan->moves[i - 1].from, ==, i);
      g_assert_cmpuint (plan->moves[i - 1].to, ==, i + 1);
    }
  g_assert_cmpuint (changes, ==, 1);
}

/* Strips on chalk line k lie where the table says: k - 1 spacings on from the first, measured from the base side. */
static void
chalk_lines (void)
{
  for (guint side = 0; side < 4; side++)
    {
      g_autoptr (OxJob) base = ox_test_floor_rectangle (8, 6, "medium");
      OxRoom fields = *base->rooms[0];
      fields.direction = (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = side };
      g_autoptr (OxRoom) room = ox_room_new (&fields);
      OxJobBuilder *builder = ox_job_builder_new (base);
      ox_job_builder_put_room (builder, room);
      g_autoptr (OxJob) job = ox_job_builder_end (builder);
      g_autoptr (OxPlan) plan = plan_of (job);
      g_assert_cmpuint (plan->n_chalks, ==, 1);
      const OxChalk *chalk = &plan->chalks[0];
      g_assert_cmpuint (chalk->base_side % 2, ==, side % 2);
      const OxRing *ring = room->ring;
      OxPoint a = ring->points[chalk->base_side], b = ring->points[(chalk->base_side + 1) % 4];
      OxPoint u = ox_point_scale (ox_point_sub (b, a), 1 / ox_point_distance (a, b));
      for (guint i = 0; i < plan->n_strips; i++)
        if (plan->strips[i].kind == OX_STRIP_MAIN)
          {
            double off = fabs (ox_point_cross (u, ox_point_sub (plan->strips[i].a, a)));
            g_assert_cmpuint (plan->strips[i].lane, <=, chalk->lanes);
            ox_test_near (off, chalk->first_distance + (plan->strips[i].lane - 1) * chalk->spacing, 2e-4);
          }
    }
}

/* Totals are the sums of what the plan lists. */
static void
totals (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (9, 8, 0.5, 3.5, "medium");
  g_autoptr (OxPlan) plan = plan_of (job);
  const OxTotals *t = &plan->totals;
  double strip_m = 0, move_m = 0, hours = 0, edge_m2 = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      strip_m += ox_strip_length (&plan->strips[i]);
      hours += plan->strips[i].minutes / 60;
    }
  for (guint i = 0; i < plan->n_moves; i++)
    {
      move_m += plan->moves[i].length;
      hours += plan->moves[i].minutes / 60;
    }
  for (guint i = 0; i < plan->n_edges; i++)
    edge_m2 += plan->edges[i].area;
  ox_test_near (t->strip_m, strip_m, 1e-9);
  ox_test_near (t->move_m, move_m, 1e-9);
  ox_test_near (t->edge_m2, edge_m2, 1e-9);
  ox_test_near (t->labour_hours, hours + edge_m2 / 4, 1e-9);
  ox_test_near (t->blasted_m2 + t->edge_m2, t->target_m2, 1e-6);
  g_assert_cmpuint (t->strips, ==, plan->n_strips);
  g_assert_cmpfloat (t->edge_limit_m2, <=, t->edge_m2 + 1e-6);
  g_assert_cmpfloat (t->ideal_hours, <, t->labour_hours);
  double gross = strip_m * 0.33 + plan->n_strips * 0.33 * 0.1;
  ox_test_near (t->double_m2, gross - t->blasted_m2, 1e-6);
}

static void
add_points (GString *text, const OxPoint *points, guint n)
{
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, " %a %a", points[i].x, points[i].y);
  g_string_append_c (text, '\n');
}

/* All of the plan as text, to the last bit; rooms by their ids. */
static char *
plan_text (const OxPlan *plan)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *s = &plan->strips[i];
      g_string_append_printf (text, "%u %s %u %d", s->order, plan->job->rooms[s->room]->id, s->lane, (int) s->kind);
      add_points (text, (const OxPoint[]) { s->a, s->b }, 2);
    }
  for (guint i = 0; i < plan->n_moves; i++)
    add_points (text, plan->moves[i].path, plan->moves[i].n_path);
  for (guint i = 0; i < plan->n_edges; i++)
    {
      g_string_append_printf (text, "%s %s %d", plan->edges[i].id, plan->job->rooms[plan->edges[i].room]->id, (int) plan->edges[i].cause);
      add_points (text, plan->edges[i].region->points, plan->edges[i].region->n_points);
    }
  for (guint i = 0; i < plan->n_zones; i++)
    add_points (text, plan->zones[i].region->points, plan->zones[i].region->n_points);
  g_string_append_printf (text, "%a %a %a\n", plan->totals.labour_hours, plan->totals.ideal_hours, plan->totals.double_m2);
  return g_string_free (text, FALSE);
}

static void
any_number_of_threads (void)
{
  static const guint threads[] = { 1, 2, 3, 8 };
  enum { FLOORS = 13 }; /* every kind of floor once */
  for (guint32 seed = 0; seed < 2 * FLOORS; seed++)
    {
      g_autoptr (OxJob) job = seed < FLOORS ? ox_test_floor_random (seed) : ox_test_floor_coats (seed);
      g_autofree char *first = NULL;
      for (guint t = 0; t < G_N_ELEMENTS (threads); t++)
        {
          ox_share_set_threads (threads[t]);
          g_autoptr (OxPlan) plan = plan_of (job);
          g_autofree char *text = plan_text (plan);
          if (first == NULL)
            first = g_steal_pointer (&text);
          else
            g_assert_cmpstr (text, ==, first);
        }
    }
  ox_share_set_threads (0);
}

static OxJob *
with_rooms_turned_about (const OxJob *job)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; i < job->n_rooms; i++)
    ox_job_builder_remove (builder, job->rooms[i]->id);
  for (guint i = job->n_rooms; i > 0; i--)
    ox_job_builder_put_room (builder, job->rooms[i - 1]);
  return ox_job_builder_end (builder);
}

static void
any_order_of_rooms (void)
{
  guint several = 0;
  for (guint32 seed = 0; seed < 60 && several < 4; seed++)
    {
      g_autoptr (OxJob) job = ox_test_floor_random (seed);
      if (job->n_rooms < 2)
        continue;
      several++;
      g_autoptr (OxJob) turned = with_rooms_turned_about (job);
      g_assert_cmpstr (turned->rooms[0]->id, ==, job->rooms[job->n_rooms - 1]->id);
      g_autoptr (OxPlan) plan = plan_of (job);
      g_autoptr (OxPlan) other = plan_of (turned);
      g_autofree char *text = plan_text (plan), *other_text = plan_text (other);
      g_assert_cmpstr (text, ==, other_text);
    }
  g_assert_cmpuint (several, ==, 4);
}

/* An area of 0.4 x 0.4 m in two coats is too small for a strip of the second: a notice says so, and it is edge work. */
static void
coat_without_strips (void)
{
  g_autoptr (OxJob) job
      = ox_test_floor_with_condition (ox_test_floor_rectangle (8, 6, "compact"), (OxBox){ 3, 3, 3.4, 3.4 }, 0, 2);
  g_autoptr (OxPlan) plan = plan_of (job);
  gboolean said = FALSE;
  for (guint i = 0; plan->notices[i] != NULL; i++)
    {
      g_autofree char *text = ox_notice_text (plan->notices[i]);
      said = said || strstr (text, "no strip of coat 2") != NULL;
    }
  g_assert_true (said);
  g_assert_false (ox_region_contains (plan->blasted, (OxPoint){ 3.2, 3.2 }));
  g_assert_cmpuint (plan->strips[plan->n_strips - 1].coat, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/make/cancelled", cancelled);
  g_test_add_func ("/plan/make/cancelled-anywhere", cancelled_anywhere);
  g_test_add_func ("/plan/make/bad-job", bad_job);
  g_test_add_func ("/plan/make/empty-job", empty_job);
  g_test_add_func ("/plan/make/carried", carried);
  g_test_add_func ("/plan/make/left-out", left_out);
  g_test_add_func ("/plan/make/coat-without-strips", coat_without_strips);
  g_test_add_func ("/plan/make/numbers", numbers);
  g_test_add_func ("/plan/make/chalk-lines", chalk_lines);
  g_test_add_func ("/plan/make/totals", totals);
  g_test_add_func ("/plan/make/any-number-of-threads", any_number_of_threads);
  g_test_add_func ("/plan/make/any-order-of-rooms", any_order_of_rooms);
  return g_test_run ();
}
