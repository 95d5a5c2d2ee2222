/* Oxturn: plan/verify-strips: bodies off the floor, short and useless strips, floor that is not to be blasted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine and the floors.
 */
#include "judge.h"
#include "support/floors.h"

static void
body_beside_wall (void)
{
  const double lanes[] = { 0.2075, 0.3975 };
  g_autoptr (Draft) draft = judge_corridor_of (0.8, lanes, 2);
  judge_expect_only (draft, OX_RULE_BODY);
}

/* 1.5 mm are within the tolerance, 3 mm are not. */
static void
body_ahead (void)
{
  g_autoptr (Draft) close = judge_corridor ();
  g_array_index (close->strips, OxStrip, 2).b.x = 9.6315;
  g_array_index (close->strips, OxStrip, 2).minutes += 0.0015 / 6;
  judge_expect_sound (close);
  g_autoptr (Draft) over = judge_corridor ();
  g_array_index (over->strips, OxStrip, 2).b.x = 9.633;
  g_array_index (over->strips, OxStrip, 2).minutes += 0.003 / 6;
  judge_expect_only (over, OX_RULE_BODY);
}

/* A column inside the swept body touches none of its corners. */
static void
body_over_column (void)
{
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 2.83 }, 0.02);
  g_autoptr (Draft) draft = judge_to_and_fro (job, (OxPoint){ 9, 3 });
  judge_expect_only (draft, OX_RULE_BODY);
}

static void
body_through_shared_wall (void)
{
  g_autoptr (OxJob) job = judge_two_rooms (0.2, 0.8);
  g_autoptr (Draft) through_wall = draft_new (job);
  draft_strip (through_wall, 1.25, 1.5, 4.63, 1.5);
  judge_expect_sound (through_wall);
  g_autoptr (Draft) nose_in_wall = draft_new (job);
  draft_strip (nose_in_wall, 1.25, 1.5, 4.8, 1.5);
  judge_expect_only (nose_in_wall, OX_RULE_BODY);
  g_autoptr (Draft) nose_in_door = draft_new (job);
  draft_strip (nose_in_door, 1.25, 0.5, 4.8, 0.5);
  judge_expect_sound (nose_in_door);
}

static void
short_strip (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (Draft) least = draft_new (job);
  draft_strip (least, 3, 3, 3.5, 3);
  judge_expect_sound (least);
  g_autoptr (Draft) draft = draft_new (job);
  draft_strip (draft, 3, 3, 3.49, 3);
  judge_expect_only (draft, OX_RULE_SHORT);
}

/* Two strips of 2 m that cover the same floor but for 40 mm: each has 0.04 of 2.08 m, 1.9 %, to itself. */
static void
strip_for_nothing (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  for (guint i = 0; i < 2; i++)
    {
      double shift = i == 0 ? 0.05 : 0.04;
      g_autoptr (Draft) draft = draft_new (job);
      OxPoint path[2] = { { 5, 3 }, { 3 + shift, 3 } };
      draft_strip (draft, 3, 3, 5, 3);
      draft_strip (draft, 3 + shift, 3, 5 + shift, 3);
      draft_move (draft, OX_MOVE_PULL_BACK, path, 2, NULL);
      if (i == 0)
        judge_expect_sound (draft);
      else
        judge_expect_only (draft, OX_RULE_SHORT);
    }
}

/* A strip at 10 degrees over two lanes: they cover most of it, but not the wedges that stick out above and below. */
static void
strip_at_a_slant (void)
{
  const double slope = 0.1763;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (Draft) draft = draft_new (job);
  OxPoint back[3] = { { 7, 3 }, { 3, 3 }, { 3, 3.19 } };
  OxPoint on[3] = { { 7, 3.19 }, { 4.2, 3.19 }, { 4.2, 2.93 } };
  draft_strip (draft, 3, 3, 7, 3);
  draft_strip (draft, 3, 3.19, 7, 3.19);
  draft_move (draft, OX_MOVE_PULL_BACK, back, 3, NULL);
  draft_strip (draft, 4.2, 2.93, 5.8, 2.93 + 1.6 * slope)->kind = OX_STRIP_CROSSWISE;
  draft_move (draft, OX_MOVE_WALK, on, 3, NULL);
  const OxPlan *plan = draft_finish (draft);
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  for (guint i = 0; i < breaches->len; i++)
    g_assert_cmpint (((const OxBreach *) g_ptr_array_index (breaches, i))->rule, !=, OX_RULE_SHORT);
}

static void
target_masked (void)
{
  g_autoptr (OxJob) job
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_MASKED, (OxPoint){ 5, 2.85 }, 0.2);
  g_autoptr (Draft) draft = judge_to_and_fro (job, (OxPoint){ 9, 3 });
  judge_expect_only (draft, OX_RULE_TARGET);
}

/* Over an open side the body may run on, the blasting may not. */
static void
target_open_side (void)
{
  g_autoptr (OxJob) walls = ox_test_floor_rectangle (10, 6, "compact");
  OxRoom fields = *walls->rooms[0];
  OxSide sides[4] = { { OX_SIDE_WALL, 0 }, { OX_SIDE_OPEN, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 } };
  fields.sides = sides;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (walls);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (Draft) within = draft_new (job);
  draft_strip (within, 1.25, 3, 9.96, 3);
  judge_expect_sound (within);
  g_autoptr (Draft) beyond = draft_new (job);
  draft_strip (beyond, 1.25, 3, 9.97, 3);
  judge_expect_only (beyond, OX_RULE_TARGET);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-strips/body/beside-wall", body_beside_wall);
  g_test_add_func ("/plan/verify-strips/body/ahead", body_ahead);
  g_test_add_func ("/plan/verify-strips/body/over-column", body_over_column);
  g_test_add_func ("/plan/verify-strips/body/through-shared-wall", body_through_shared_wall);
  g_test_add_func ("/plan/verify-strips/short/strip", short_strip);
  g_test_add_func ("/plan/verify-strips/short/for-nothing", strip_for_nothing);
  g_test_add_func ("/plan/verify-strips/short/at-a-slant", strip_at_a_slant);
  g_test_add_func ("/plan/verify-strips/target/masked", target_masked);
  g_test_add_func ("/plan/verify-strips/target/open-side", target_open_side);
  return g_test_run ();
}
