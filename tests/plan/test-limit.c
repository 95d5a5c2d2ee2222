/* Oxturn: plan/limit: the reachable limit of floors where it can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Beside walls e = side + gap - w / 2 stays, ahead of them h = front + gap - l / 2, so that of a rectangle a band of e
 * all round and a square from e to h in each corner cannot be reached.
 */
#include "judge.h"
#include "plan/limit.h"
#include "support/floors.h"
#include "support/ox-test.h"

static double
reached (const OxJob *job, OxRegion **out)
{
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxRegion) limit = ox_limit_new (floor, job->machine, NULL);
  g_assert_nonnull (limit);
  g_autoptr (OxRegion) beyond = ox_region_difference (limit, floor->target);
  ox_test_near (ox_region_area (beyond), 0, 1e-9);
  double area = ox_region_area (limit);
  if (out != NULL)
    *out = g_steal_pointer (&limit);
  return area;
}

static void
rectangle (void)
{
  static const char *const classes[] = { "compact", "medium", "large" };
  for (guint c = 0; c < G_N_ELEMENTS (classes); c++)
    {
      g_autoptr (OxJob) job = ox_test_floor_rectangle (9, 7, classes[c]);
      const OxMachine *m = job->machine;
      double e = m->left + m->wall_gap - m->blast_width / 2, h = m->front + m->wall_gap - m->blast_length / 2;
      ox_test_near (reached (job, NULL), (9 - 2 * e) * (7 - 2 * e) - 4 * (h - e) * (h - e), 1e-6);
    }
}

/* Turned by 20 degrees, which is none of the fan, the wall directions are tried all the same. */
static void
turned (void)
{
  OxPoint points[4] = { { 0, 0 }, { 9, 0 }, { 9, 7 }, { 0, 7 } };
  for (guint i = 0; i < 4; i++)
    points[i] = ox_point_snap (ox_point_turn (points[i], cos (20 * G_PI / 180), sin (20 * G_PI / 180)));
  g_autoptr (OxJob) straight = ox_test_floor_rectangle (9, 7, "compact");
  g_autoptr (OxJob) job = ox_test_floor_polygon (points, 4, "compact");
  ox_test_near (reached (job, NULL), reached (straight, NULL), 0.005);
}

/* A corridor just as wide as the body: run both ways all but 0.33 m at either end, 0.21 m across. */
static void
exact_fit (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 0.42, "compact");
  ox_test_near (reached (job, NULL), 9.34 * 0.21, 1e-3);
  g_autoptr (OxJob) narrow = ox_test_floor_rectangle (10, 0.41, "compact");
  ox_test_near (reached (narrow, NULL), 0, 1e-12);
}

/* Beside a column e stays on each of its sides; its corners are passed outside. */
static void
column (void)
{
  g_autoptr (OxJob) empty = ox_test_floor_rectangle (12, 9, "compact");
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (12, 9, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 6, 4.5 }, 1);
  g_autoptr (OxRegion) limit = NULL;
  double less = reached (empty, NULL) - reached (job, &limit), e = 0.105;
  g_assert_cmpfloat (less, <=, (1 + 2 * e) * (1 + 2 * e) + 1e-6);
  g_assert_cmpfloat (less, >=, 1 + 4 * e - 1e-6);
  g_assert_true (ox_region_contains (limit, (OxPoint){ 6, 5 + e + 0.001 }));
  g_assert_false (ox_region_contains (limit, (OxPoint){ 6, 5 + e - 0.001 }));
}

static void
cancelled (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  OxRun run = OX_RUN_INIT;
  run.cancel = cancel;
  g_cancellable_cancel (cancel);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (9, 7, "compact");
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_assert_null (ox_limit_new (floor, job->machine, &run));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/limit/rectangle", rectangle);
  g_test_add_func ("/plan/limit/turned", turned);
  g_test_add_func ("/plan/limit/exact-fit", exact_fit);
  g_test_add_func ("/plan/limit/column", column);
  g_test_add_func ("/plan/limit/cancelled", cancelled);
  return g_test_run ();
}
