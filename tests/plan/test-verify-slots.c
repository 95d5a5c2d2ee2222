/* Oxturn: plan/verify-slots: stripes left between strips.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine and the floors.
 */
#include "judge.h"
#include "support/floors.h"

/* 0.24 m apart leaves 30 mm, 0.27 m apart leaves 60 mm: more than a quarter of 0.21 m is edge work like any other. */
static void
between_lanes (void)
{
  const double lanes[] = { 0.21, 0.45 }, apart[] = { 0.21, 0.48 };
  g_autoptr (Draft) draft = judge_corridor_of (0.8, lanes, 2);
  judge_expect_only (draft, OX_RULE_SLOT);
  g_autoptr (Draft) wide = judge_corridor_of (0.8, apart, 2);
  judge_expect_sound (wide);
}

/* Lanes end 0.04 m beyond their stops; where the side of a strip across them lies 20 mm beyond that, what is left lies
 * along one strip only. */
static void
beside_ends (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  g_autoptr (Draft) draft = draft_new (job);
  OxPoint back[3] = { { 6, 3 }, { 4, 3 }, { 4, 3.19 } }, turn = { 5, 3.19 };
  OxPoint across[4] = { { 6, 3.19 }, { 5, 3.19 }, { 6.165, 3 }, { 6.165, 2.5 } };
  draft_strip (draft, 4, 3, 6, 3);
  draft_strip (draft, 4, 3.19, 6, 3.19);
  draft_move (draft, OX_MOVE_PULL_BACK, back, 3, NULL);
  draft_strip (draft, 6.165, 2.5, 6.165, 3.5);
  draft_move (draft, OX_MOVE_SWING, across, 4, &turn);
  judge_expect_sound (draft);
}

/* The same stripe with a strip on one side only, along the room's wall, is edge work. */
static void
beside_wall (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  OxRoom fields = *job->rooms[0];
  OxSide sides[4] = { { OX_SIDE_OPEN, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 } };
  fields.sides = sides;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) open = ox_job_builder_end (builder);
  g_autoptr (Draft) draft = draft_new (open);
  draft_strip (draft, 2, 0.125, 6, 0.125);
  judge_expect_sound (draft);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-slots/between-lanes", between_lanes);
  g_test_add_func ("/plan/verify-slots/beside-ends", beside_ends);
  g_test_add_func ("/plan/verify-slots/beside-wall", beside_wall);
  return g_test_run ();
}
