/* Oxturn: plan/floor: target and travel of floors whose areas can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "judge.h"
#include "plan/floor.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxJob *
with_sides (double width, double depth, const OxSide sides[4])
{
  g_autoptr (OxJob) walls = ox_test_floor_rectangle (width, depth, "compact");
  OxRoom fields = *walls->rooms[0];
  fields.sides = (OxSide *) sides;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (walls);
  ox_job_builder_put_room (builder, room);
  return ox_job_builder_end (builder);
}

static void
expect (const OxJob *job, double target, double travel)
{
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  ox_test_near (ox_region_area (floor->target), target, 1e-6);
  ox_test_near (ox_region_area (floor->travel), travel, 1e-6);
}

static void
walls (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 6, "compact");
  expect (job, 60, 60);
}

/* Solids and pits are neither prepared nor rolled over, masked areas are rolled over. */
static void
obstacles (void)
{
  g_autoptr (OxJob) solid
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 3 }, 2);
  g_autoptr (OxJob) pit
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_PIT, (OxPoint){ 5, 3 }, 2);
  g_autoptr (OxJob) masked
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_MASKED, (OxPoint){ 5, 3 }, 2);
  g_autoptr (OxJob) across
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 0, 3 }, 2);
  expect (solid, 56, 56);
  expect (pit, 56, 56);
  expect (masked, 56, 60);
  expect (across, 58, 58);
}

/* A pit of 2 x 2 m with 0.5 m kept back takes 4 + 8 x 0.5 + pi 0.25 m2 of travel; arcs are polygons that may differ by
 * 1 % of pi 0.25. */
static void
pit_keep_back (void)
{
  g_autoptr (OxJob) base
      = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), OX_OBSTACLE_PIT, (OxPoint){ 5, 3 }, 2);
  OxObstacle fields = *base->obstacles[0];
  fields.keep_back = 0.5;
  g_autoptr (OxObstacle) pit = ox_obstacle_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (base);
  ox_job_builder_put_obstacle (builder, pit);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  ox_test_near (ox_region_area (floor->target), 56, 1e-6);
  ox_test_near (ox_region_area (floor->travel), 60 - (4 + 8 * 0.5 + G_PI * 0.25), 0.01 * G_PI * 0.25);
}

/* The body keeps back from a drop as far as it says, the target goes up to it. */
static void
drop (void)
{
  const OxSide sides[4] = { { OX_SIDE_DROP, 0.75 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 } };
  g_autoptr (OxJob) job = with_sides (10, 6, sides);
  expect (job, 60, 10 * (6 - 0.75));
}

/* Beyond an open side there is floor as deep as the body needs and no wider than the side, none of which is target. */
static void
open_side (void)
{
  const OxSide sides[4] = { { OX_SIDE_OPEN, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_WALL, 0 } };
  g_autoptr (OxJob) job = with_sides (10, 6, sides);
  double depth = ox_floor_apron_depth (job->machine);
  g_assert_cmpfloat (depth, >=, job->machine->rear);
  g_assert_cmpfloat (depth, >=, job->machine->front + job->machine->wall_gap);
  g_assert_cmpfloat (depth, >=, 2 * job->machine->turn_radius);
  expect (job, 60, 60 + 10 * depth);
}

/* Rooms that share a side: the wall parts them, the doorway joins them. Without it there are two pieces of travel. */
static void
shared_wall (void)
{
  g_autoptr (OxJob) job = judge_two_rooms (0.5, 1.5);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_assert_true (ox_job_builder_remove (builder, "D1"));
  g_autoptr (OxJob) shut = ox_job_builder_end (builder);
  g_autoptr (OxFloor) parted = ox_floor_new (shut);
  ox_test_near (ox_region_area (floor->target), 20, 1e-6);
  g_assert_cmpuint (floor->travel->n_parts, ==, 1);
  g_assert_cmpuint (parted->travel->n_parts, ==, 2);
  ox_test_near (ox_region_area (parted->travel), 20 - 2 * 2 * OX_WALL_SLAB, 1e-6);
  g_assert_true (ox_region_contains (floor->travel, (OxPoint){ 5, 1 }));
  g_assert_false (ox_region_contains (floor->travel, (OxPoint){ 5, 1.8 }));
}

/* Rooms 0.2 m apart: a doorway through the wall adds its own floor to travel, not to the target. */
static void
thick_wall (void)
{
  g_autoptr (OxJob) left = ox_test_floor_rectangle (5, 2, "compact");
  OxPoint points[4] = { { 5.2, 0 }, { 10, 0 }, { 10, 2 }, { 5.2, 2 } };
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  OxRoom fields = { .id = (char *) "R2", .name = (char *) "", .ring = ring, .profile = (char *) "" };
  OxDoorway door = { .id = (char *) "D1", .name = (char *) "", .a = { 5.1, 0.5 }, .b = { 5.1, 1.5 }, .depth = 0.2 };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  g_autoptr (OxDoorway) doorway = ox_doorway_new (&door);
  OxJobBuilder *builder = ox_job_builder_new (left);
  ox_job_builder_put_room (builder, room);
  ox_job_builder_put_doorway (builder, doorway);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  expect (job, 10 + 9.6, 10 + 9.6 + 0.2);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_assert_cmpuint (floor->travel->n_parts, ==, 1);
}

static void
excluded (void)
{
  g_autoptr (OxJob) base = ox_test_floor_rectangle (10, 6, "compact");
  OxPoint points[4] = { { 8, 4 }, { 12, 4 }, { 12, 8 }, { 8, 8 } };
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  OxExcluded fields = { .id = (char *) "X1", .name = (char *) "", .ring = ring };
  g_autoptr (OxExcluded) item = ox_excluded_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (base);
  ox_job_builder_put_excluded (builder, item);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  expect (job, 56, 60);
}

/* A hose goes round solids and openings, and lies across a drain channel and in what is kept back from a pit. */
static void
hose_floor (void)
{
  static const struct
  {
    OxObstacleKind kind;
    double side, area;
  } rows[] = { { OX_OBSTACLE_SOLID, 2, 56 },   { OX_OBSTACLE_PIT, 2, 56 }, { OX_OBSTACLE_MASKED, 2, 60 },
               { OX_OBSTACLE_SOLID, 0.5, 59.75 }, { OX_OBSTACLE_PIT, 0.5, 60 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxJob) job = judge_with_obstacle (ox_test_floor_rectangle (10, 6, "compact"), rows[i].kind,
                                                   (OxPoint){ 5, 3 }, rows[i].side);
      g_autoptr (OxFloor) floor = ox_floor_new (job);
      ox_test_near (ox_region_area (floor->hose), rows[i].area, 1e-6);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/floor/walls", walls);
  g_test_add_func ("/plan/floor/obstacles", obstacles);
  g_test_add_func ("/plan/floor/pit-keep-back", pit_keep_back);
  g_test_add_func ("/plan/floor/drop", drop);
  g_test_add_func ("/plan/floor/open-side", open_side);
  g_test_add_func ("/plan/floor/shared-wall", shared_wall);
  g_test_add_func ("/plan/floor/thick-wall", thick_wall);
  g_test_add_func ("/plan/floor/excluded", excluded);
  g_test_add_func ("/plan/floor/where-a-hose-may-lie", hose_floor);
  return g_test_run ();
}
