/* Oxturn: tests/session/test-work-clock - where the machine is after so many minutes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/work-clock.h"

#include "support/floors.h"
#include "support/ox-test.h"

static OxPlan *
plan_new (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 8, 0.5, 4, "compact");

  return ox_plan_new (job, NULL, NULL);
}

static void
test_whole_work_is_strips_and_moves (void)
{
  g_autoptr (OxPlan) plan = plan_new ();

  g_assert_cmpfloat_with_epsilon (ox_work_minutes (plan), (plan->totals.strip_hours + plan->totals.move_hours) * 60,
                                  1e-6);
}

/* In the middle of the time of a strip the machine, which runs evenly, is in the middle of the strip. */
static void
test_middle_of_each_strip (void)
{
  g_autoptr (OxPlan) plan = plan_new ();

  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      OxWorkState state = ox_work_at (plan, ox_work_start (plan, i + 1) + strip->minutes / 2);

      g_assert_true (state.blasting);
      g_assert_cmpuint (state.done, ==, i);
      g_assert_cmpfloat_with_epsilon (state.at.x, (strip->a.x + strip->b.x) / 2, 1e-6);
      g_assert_cmpfloat_with_epsilon (state.at.y, (strip->a.y + strip->b.y) / 2, 1e-6);
    }
}

static void
test_ends (void)
{
  g_autoptr (OxPlan) plan = plan_new ();
  OxWorkState start = ox_work_at (plan, -5);
  OxWorkState end = ox_work_at (plan, ox_work_minutes (plan) + 5);

  g_assert_cmpuint (start.done, ==, 0);
  g_assert_cmpfloat (start.at.x, ==, plan->strips[0].a.x);
  g_assert_cmpuint (end.done, ==, plan->n_strips);
  g_assert_false (end.blasting);
  g_assert_cmpfloat (end.at.x, ==, plan->strips[plan->n_strips - 1].b.x);
}

/* No strip is finished twice, and a move keeps within the box of its path. */
static void
test_time_goes_forward (void)
{
  g_autoptr (OxPlan) plan = plan_new ();
  double whole = ox_work_minutes (plan);
  guint done = 0;

  for (guint i = 0; i <= 1000; i++)
    {
      OxWorkState state = ox_work_at (plan, whole * i / 1000);

      g_assert_cmpuint (state.done, >=, done);
      g_assert_true (state.at.x > 0 && state.at.x < 12 && state.at.y > 0 && state.at.y < 8);
      done = state.done;
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/work-clock/whole-work-is-strips-and-moves", test_whole_work_is_strips_and_moves);
  g_test_add_func ("/session/work-clock/middle-of-each-strip", test_middle_of_each_strip);
  g_test_add_func ("/session/work-clock/ends", test_ends);
  g_test_add_func ("/session/work-clock/time-goes-forward", test_time_goes_forward);
  return g_test_run ();
}
