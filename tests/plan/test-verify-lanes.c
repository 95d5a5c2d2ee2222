/* Oxturn: plan/verify-lanes: overlaps and the even grid.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine and the floors.
 */
#include "judge.h"
#include "support/floors.h"

/* 0.20 m apart strips overlap by 10 mm where 20 mm are asked for. */
static void
overlap_short (void)
{
  const double lanes[] = { 0.21, 0.41 };
  g_autoptr (Draft) draft = judge_corridor_of (0.8, lanes, 2);
  judge_expect_only (draft, OX_RULE_OVERLAP);
}

static void
overlap_lane_missing (void)
{
  const double lanes[] = { 0.21, 0.59 };
  g_autoptr (Draft) draft = judge_corridor_of (0.8, lanes, 2);
  judge_expect_only (draft, OX_RULE_OVERLAP);
}

/* The column between the lanes explains why there is none. */
static void
overlap_column_between (void)
{
  const double lanes[] = { 0.21, 0.79 };
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (10, 1.2, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 0.5 }, 0.1);
  g_autoptr (OxJob) empty = ox_test_floor_rectangle (10, 1.2, "compact");
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (Draft) draft = draft_new (i == 0 ? job : empty);
      judge_corridor_strip (draft, lanes[0], 3.4, 6.6);
      judge_corridor_strip (draft, lanes[1], 3.4, 6.6);
      if (i == 0)
        judge_expect_sound (draft);
      else
        judge_expect_only (draft, OX_RULE_OVERLAP);
    }
}

/* The third strip, 0.9 mm off the lane of the second, overlaps the first by 19.1 mm only, all of it where the second lies between them: whichever is
 * run first. */
static void
overlap_hidden (void)
{
  const double strips[][3] = { { 0.21, 3, 6 }, { 0.40, 3, 6 }, { 0.4009, 5, 7 } };
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 0.8, "compact");
  for (guint first = 0; first < 3; first++)
    {
      g_autoptr (Draft) draft = draft_new (job);
      for (guint i = 0; i < 3; i++)
        judge_corridor_strip (draft, strips[(first + i) % 3][0], strips[(first + i) % 3][1], strips[(first + i) % 3][2]);
      judge_expect_sound (draft);
    }
}

static void
grid_off_chalk (void)
{
  g_autoptr (Draft) off = judge_corridor ();
  off->chalk.first_distance = 0.22;
  judge_expect_only (off, OX_RULE_OVERLAP);
  g_autoptr (Draft) bunched = judge_corridor ();
  bunched->chalk.spacing = 0.095;
  bunched->chalk.lanes = 5;
  judge_expect_only (bunched, OX_RULE_OVERLAP);
  g_autoptr (Draft) wide = judge_corridor ();
  wide->chalk.spacing = 0.38;
  wide->chalk.lanes = 2;
  judge_expect_only (wide, OX_RULE_OVERLAP);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-lanes/overlap/short", overlap_short);
  g_test_add_func ("/plan/verify-lanes/overlap/lane-missing", overlap_lane_missing);
  g_test_add_func ("/plan/verify-lanes/overlap/column-between", overlap_column_between);
  g_test_add_func ("/plan/verify-lanes/overlap/hidden", overlap_hidden);
  g_test_add_func ("/plan/verify-lanes/overlap/grid-off-chalk", grid_off_chalk);
  return g_test_run ();
}
