/* Oxturn: plan/order: the order of work of halls that a person would order the same way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "judge.h"
#include "laid.h"
#include "plan/leg.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxLeg *
leg (GArray *legs, guint i)
{
  return &g_array_index (legs, OxLeg, i);
}

static gboolean
same_strip (const OxLeg *p, const OxLeg *q)
{
  return (ox_point_distance (p->a, q->a) < 1e-9 && ox_point_distance (p->b, q->b) < 1e-9)
         || (q->reversible && ox_point_distance (p->a, q->b) < 1e-9 && ox_point_distance (p->b, q->a) < 1e-9);
}

/* Puts the legs of @laid into order: each one once, turned round only when it may be, and the seconds add up. */
static GArray *
ordered (const Laid *laid)
{
  GArray *legs = ox_legs_new (laid->layout, laid->ways);
  g_autoptr (GArray) before = g_array_copy (legs);
  double seconds = ox_order_legs (legs, laid->job->machine, NULL), sum = 0;
  g_assert_cmpuint (legs->len, ==, before->len);
  for (guint i = 0; i < before->len; i++)
    {
      guint found = 0;
      for (guint k = 0; k < legs->len; k++)
        found += same_strip (leg (legs, k), leg (before, i));
      g_assert_cmpuint (found, ==, 1);
    }
  for (guint i = 1; i < legs->len; i++)
    sum += ox_leg_seconds (laid->job->machine, leg (legs, i - 1), leg (legs, i));
  ox_test_near (sum, seconds, 1e-6);
  return legs;
}

/* To and fro, lane by lane: each strip starts at the side where the one before it stopped. */
static void
serpentine (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 4, "compact"), OX_WORK_SERPENTINE);
  g_assert_true (ox_layout_mains (laid->layout));
  g_autoptr (GArray) legs = ordered (laid);
  double way = leg (legs, 1)->y - leg (legs, 0)->y;
  ox_test_near (fabs (way), laid->layout->spacing, 1e-9);
  for (guint i = 1; i < legs->len; i++)
    {
      ox_test_near (leg (legs, i)->y - leg (legs, i - 1)->y, way, 1e-9);
      ox_test_near (ox_point_dot (leg (legs, i)->along, leg (legs, i - 1)->along), -1, 1e-9);
      ox_test_near (leg (legs, i)->a.x, leg (legs, i - 1)->b.x, 1.25 - 0.37 + 1e-6);
    }
}

/* One way: between lanes the machine rolls back the length of a lane and over by the spacing. */
static void
pull_backs (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (4, 2.32, "compact"), OX_WORK_FORWARD);
  laid->layout->one_heading = TRUE;
  g_assert_true (ox_layout_mains (laid->layout));
  g_autoptr (GArray) legs = ordered (laid);
  double seconds = ox_order_legs (legs, laid->job->machine, NULL);
  g_assert_cmpuint (legs->len, ==, 11);
  ox_test_near (seconds, 10 * hypot (4 - 1.25 - 0.37, 0.19) / 30 * 60, 1e-2);
  for (guint i = 1; i < legs->len; i++)
    ox_test_near (fabs (leg (legs, i)->y - leg (legs, i - 1)->y), 0.19, 1e-6);
}

/* The two strips of a lane that a column cuts follow each other, in the lane's direction. */
static void
column (void)
{
  g_autoptr (Laid) laid = laid_new (
      judge_with_obstacle (ox_test_floor_rectangle (10, 4, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 2 }, 0.5),
      OX_WORK_SERPENTINE);
  guint pairs = 0;
  g_assert_true (ox_layout_mains (laid->layout));
  g_autoptr (GArray) legs = ordered (laid);
  for (guint i = 1; i < legs->len; i++)
    {
      const OxLeg *p = leg (legs, i - 1), *q = leg (legs, i);
      g_assert_cmpfloat (fabs (q->y - p->y), <, laid->layout->spacing * 1.001);
      if (q->y != p->y)
        continue;
      pairs++;
      g_assert_cmpfloat (ox_point_dot (ox_point_sub (q->a, p->b), p->along), >, 0);
    }
  g_assert_cmpuint (pairs, ==, laid->layout->drafts->len - laid->layout->n_main_lanes);
  g_assert_cmpuint (pairs, >, 2);
}

/* A finished hall in any order of its drafts: each strip once, and the same order twice. */
static void
whole_hall (void)
{
  g_autoptr (Laid) laid = laid_new (
      judge_with_obstacle (ox_test_floor_rectangle (9, 7, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 4, 3 }, 0.8),
      OX_WORK_SERPENTINE);
  g_assert_true (ox_layout_mains (laid->layout));
  ox_layout_zones (laid->layout);
  ox_layout_trim (laid->layout);
  g_assert_true (ox_layout_finish (laid->layout, NULL));
  g_autoptr (GArray) legs = ordered (laid);
  g_autoptr (GArray) again = ordered (laid);
  for (guint i = 0; i < legs->len; i++)
    {
      ox_test_near (ox_point_distance (leg (legs, i)->a, leg (again, i)->a), 0, 1e-15);
      ox_test_near (ox_point_distance (leg (legs, i)->b, leg (again, i)->b), 0, 1e-15);
    }
}

/* Loose strips in a row, given out of order: the best order runs along the row. */
static void
loose (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (20, 6, "compact"), OX_WORK_SERPENTINE);
  static const guint shuffled[] = { 3, 0, 5, 1, 4, 2 };
  for (guint i = 0; i < G_N_ELEMENTS (shuffled); i++)
    {
      double x = 2 + 2.5 * shuffled[i];
      laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = x, .x1 = x + 1, .kind = OX_STRIP_CROSSWISE });
    }
  laid_add (laid, (OxDraft){ .sign = 1, .y = 2, .x0 = 1.5, .x1 = 2.5, .grid = TRUE });
  g_autoptr (GArray) legs = ordered (laid);
  g_assert_true (leg (legs, 0)->grid);
  for (guint i = 2; i < legs->len; i++)
    {
      g_assert_cmpfloat (leg (legs, i)->a.x, >, leg (legs, i - 1)->b.x);
      ox_test_near (leg (legs, i)->heading, 0, 1e-9);
    }
}

static void
empty (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (10, 4, "compact"), OX_WORK_SERPENTINE);
  g_autoptr (GArray) legs = ordered (laid);
  g_assert_cmpuint (legs->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/order/serpentine", serpentine);
  g_test_add_func ("/plan/order/pull-backs", pull_backs);
  g_test_add_func ("/plan/order/column", column);
  g_test_add_func ("/plan/order/whole-hall", whole_hall);
  g_test_add_func ("/plan/order/loose", loose);
  g_test_add_func ("/plan/order/empty", empty);
  return g_test_run ();
}
