/* Oxturn: plan/verify on a planner with a fault in it: each fault is noticed under the rule it breaks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The planner runs as always, but for a hook that spoils its work at one stage; what comes after builds on the spoiled work. One hall
 * of 12 x 8 m with a column and a masked square, compact machine, planned sound first.
 */
#include <string.h>
#include "judge.h"
#include "plan/hook-private.h"
#include "support/floors.h"

#define MASKED_Y 3.0

typedef void (*Fault) (OxPlan *plan);

typedef struct
{
  const char *name;
  OxPlanStage stage;
  OxRule rule;
  Fault fault;
  gboolean coats; /* in a hall that asks for two coats */
} Case;

/* A long main strip in the middle of the floor, with neighbours on both sides. */
static OxStrip *
middle_strip (OxPlan *plan)
{
  OxStrip *best = NULL;
  OxBox box = ox_job_box (plan->job);
  double middle = (box.y0 + box.y1) / 2;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      OxStrip *s = &plan->strips[i];
      gboolean along = fabs (s->a.y - s->b.y) < 1e-9 && ox_strip_length (s) > 5;
      if (along && (best == NULL || fabs (s->a.y - middle) < fabs (best->a.y - middle)))
        best = s;
    }
  g_assert_nonnull (best);
  return best;
}

static void
move_aside (OxPlan *plan, double by)
{
  OxStrip *s = middle_strip (plan);
  s->a.y += by;
  s->b.y += by;
}

/* Far enough that floor stays open on one side, wider than any tolerance. */
static void
leave_a_slot (OxPlan *plan)
{
  move_aside (plan, 0.035);
}

static void
spare_overlap (OxPlan *plan)
{
  move_aside (plan, 0.005);
}

static void
run_into_the_wall (OxPlan *plan)
{
  OxStrip *s = middle_strip (plan);
  s->b.x += s->b.x > s->a.x ? 2 : -2;
}

static void
lay_a_stub (OxPlan *plan)
{
  OxStrip *s = middle_strip (plan);
  s->b.x = s->a.x + (s->b.x > s->a.x ? 0.3 : -0.3);
}

static void
lay_twice (OxPlan *plan)
{
  OxStrip *s = middle_strip (plan);
  OxStrip *other = s == plan->strips ? s + 1 : plan->strips;
  guint order = other->order;
  *other = *s;
  other->order = order;
}

static void
swap_numbers (OxPlan *plan)
{
  guint order = plan->strips[2].order;
  plan->strips[2].order = plan->strips[3].order;
  plan->strips[3].order = order;
}

static void
lose_a_move (OxPlan *plan)
{
  plan->n_moves--;
  g_free ((gpointer) plan->moves[plan->n_moves].path);
}

static OxMove *
a_swing (OxPlan *plan)
{
  for (guint i = 0; i < plan->n_moves; i++)
    if (plan->moves[i].kind == OX_MOVE_SWING)
      return &plan->moves[i];
  g_assert_not_reached ();
}

static void
swing_in_the_wall (OxPlan *plan)
{
  a_swing (plan)->turn.x = ox_job_box (plan->job).x0 + 0.1;
}

static void
start_the_path_elsewhere (OxPlan *plan)
{
  OxMove *move = a_swing (plan);
  OxPoint *path = (OxPoint *) move->path;
  memmove (path, path + 1, (move->n_path - 1) * sizeof *path);
  move->n_path--;
}

/* The largest area of edge work. */
static void
forget_edge_work (OxPlan *plan)
{
  guint largest = 0;
  for (guint i = 1; i < plan->n_edges; i++)
    if (plan->edges[i].area > plan->edges[largest].area)
      largest = i;
  OxEdge edge = plan->edges[largest];
  plan->edges[largest] = plan->edges[plan->n_edges - 1];
  plan->n_edges--;
  g_free (edge.id);
  ox_region_unref (edge.region);
}

static void
count_blasted_as_edge (OxPlan *plan)
{
  OxEdge *edge = &plan->edges[0];
  OxRegion *both = ox_region_union (edge->region, plan->blasted);
  ox_region_unref (edge->region);
  edge->region = both;
  edge->area = ox_region_area (both);
}

static void
blast_what_is_masked (OxPlan *plan)
{
  OxStrip *s = middle_strip (plan);
  s->a.y = s->b.y = MASKED_Y;
}

/* A long main strip of the second coat in the middle of the floor; that coat lies across the first one. */
static OxStrip *
second_coat_strip (OxPlan *plan)
{
  OxStrip *best = NULL;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      OxStrip *s = &plan->strips[i];
      gboolean across = s->coat == 2 && fabs (s->a.x - s->b.x) < 1e-9 && ox_strip_length (s) > 5;
      if (across && (best == NULL || fabs (s->a.x - 5.5) < fabs (best->a.x - 5.5)))
        best = s;
    }
  g_assert_nonnull (best);
  return best;
}

/* What the first coat covers there is no help to the second. */
static void
leave_a_slot_in_the_second_coat (OxPlan *plan)
{
  OxStrip *s = second_coat_strip (plan);
  s->a.x += 0.035;
  s->b.x += 0.035;
}

static void
spare_a_strip_of_the_second_coat (OxPlan *plan)
{
  second_coat_strip (plan)->coat = 1;
}

static void
lay_a_third_coat (OxPlan *plan)
{
  second_coat_strip (plan)->coat = 3;
}

static void
begin_with_the_second_coat (OxPlan *plan)
{
  plan->strips[0].coat = 2;
}

static void
forget_a_speed (OxPlan *plan)
{
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].n_paces > 0)
      {
        plan->strips[i].n_paces = 0;
        plan->strips[i].speed = plan->job->machine->travel_speed;
        return;
      }
  g_assert_not_reached ();
}

/* Kept strips are let off rules; these are none of the record. */
static void
claim_to_be_kept (OxPlan *plan)
{
  plan->n_kept = 4;
}

static void
flag_as_done (OxPlan *plan)
{
  plan->strips[2].done = 1;
}

static const Case cases[] = {
  { "a-strip-runs-into-the-wall", OX_STAGE_STRIPS, OX_RULE_BODY, run_into_the_wall, FALSE },
  { "a-swing-has-no-room", OX_STAGE_MOVES, OX_RULE_MOVE, swing_in_the_wall, FALSE },
  { "a-path-starts-elsewhere", OX_STAGE_MOVES, OX_RULE_MOVE, start_the_path_elsewhere, FALSE },
  { "edge-work-is-forgotten", OX_STAGE_END, OX_RULE_ACCOUNT, forget_edge_work, FALSE },
  { "floor-is-counted-twice", OX_STAGE_END, OX_RULE_ACCOUNT, count_blasted_as_edge, FALSE },
  { "a-lane-is-off-by-little", OX_STAGE_STRIPS, OX_RULE_OVERLAP, spare_overlap, FALSE },
  { "a-lane-is-off-by-much", OX_STAGE_STRIPS, OX_RULE_SLOT, leave_a_slot, FALSE },
  { "a-strip-is-too-short", OX_STAGE_STRIPS, OX_RULE_SHORT, lay_a_stub, FALSE },
  { "a-strip-is-laid-twice", OX_STAGE_STRIPS, OX_RULE_SHORT, lay_twice, FALSE },
  { "numbers-are-swapped", OX_STAGE_END, OX_RULE_ORDER, swap_numbers, FALSE },
  { "a-move-is-lost", OX_STAGE_END, OX_RULE_ORDER, lose_a_move, FALSE },
  { "a-masked-square-is-blasted", OX_STAGE_STRIPS, OX_RULE_TARGET, blast_what_is_masked, FALSE },
  { "the-second-coat-has-a-slot", OX_STAGE_STRIPS, OX_RULE_SLOT, leave_a_slot_in_the_second_coat, TRUE },
  { "the-second-coat-misses-a-strip", OX_STAGE_END, OX_RULE_ACCOUNT, spare_a_strip_of_the_second_coat, TRUE },
  { "a-coat-that-nothing-asks-for", OX_STAGE_STRIPS, OX_RULE_TARGET, lay_a_third_coat, TRUE },
  { "the-second-coat-comes-first", OX_STAGE_END, OX_RULE_ORDER, begin_with_the_second_coat, TRUE },
  { "strips-claim-to-be-kept", OX_STAGE_END, OX_RULE_ORDER, claim_to_be_kept, FALSE },
  { "a-strip-claims-to-be-done", OX_STAGE_END, OX_RULE_ORDER, flag_as_done, FALSE },
  { "a-speed-is-forgotten", OX_STAGE_STRIPS, OX_RULE_ORDER, forget_a_speed, TRUE },
};

static void
spoil (OxPlan *plan, OxPlanStage stage, gpointer data)
{
  const Case *c = data;
  if (c->fault == NULL || stage != c->stage)
    return;
  c->fault (plan);
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].n_paces == 0)
      plan->strips[i].minutes = ox_strip_length (&plan->strips[i]) / plan->strips[i].speed;
}

static OxJob *
hall (void)
{
  g_autoptr (OxJob) column = judge_with_obstacle (ox_test_floor_rectangle (12, 8, "compact"), OX_OBSTACLE_SOLID,
                                                  (OxPoint){ 4, 5.5 }, 0.4);
  return judge_with_obstacle (ox_job_ref (column), OX_OBSTACLE_MASKED, (OxPoint){ 8, MASKED_Y }, 0.8);
}

/* In two coats, with an area from x = 7 to 9 that is walked at 3 m/min; long enough both ways to be worked to and fro. */
static OxJob *
hall_in_coats (void)
{
  OxJob *job = ox_test_floor_with_coats (ox_test_floor_rectangle (16, 15, "compact"), 2, 90);
  return ox_test_floor_with_condition (job, (OxBox){ 7, 3, 9, 5 }, 3, 0);
}

static OxPlan *
plan_with (const Case *c)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = c->coats ? hall_in_coats () : hall ();
  OxPlan *plan = ox_plan_new_hooked (job, spoil, (gpointer) c, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

static void
without_fault (void)
{
  static const Case none[2] = { { 0 }, { .coats = TRUE } };
  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    {
      g_autoptr (OxPlan) plan = plan_with (&none[i]);
      g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
      g_assert_cmpuint (breaches->len, ==, 0);
      g_assert_cmpuint (plan->n_strips, >, 20);
    }
}

static void
with_fault (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (OxPlan) plan = plan_with (c);
  judge_expect_among (plan, c->rule);
}

static guint calls;

/* A planner that hangs on what happened before: every second plan has its middle strip another way round. */
static void
remember (OxPlan *plan, OxPlanStage stage, gpointer data)
{
  (void) data;
  if (stage != OX_STAGE_STRIPS || calls++ % 2 == 0)
    return;
  OxStrip *s = middle_strip (plan);
  s->b.x += s->b.x > s->a.x ? -0.01 : 0.01;
}

/* The eighth rule is judged from two plans of one job. */
static void
not_the_same_twice (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = hall ();
  g_autoptr (OxPlan) a = ox_plan_new_hooked (job, remember, NULL, NULL, &error);
  g_autoptr (OxPlan) b = ox_plan_new_hooked (job, remember, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_false (judge_same (a, b));
  g_assert_true (judge_same (a, a));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  /* A debug build warns of what it finds; that is what is looked for here. */
  g_log_set_always_fatal (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL);
  g_test_add_func ("/plan/broken/without-fault", without_fault);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/plan/broken/%s", cases[i].name);
      g_test_add_data_func (path, &cases[i], with_fault);
    }
  g_test_add_func ("/plan/broken/not-the-same-twice", not_the_same_twice);
  return g_test_run ();
}
