/* Oxturn: tests/job/job-making - small jobs in few words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All return (transfer full).
 */
#pragma once
#include "job/classes.h"
#include "job/job.h"
#include "support/ox-test.h"
G_BEGIN_DECLS

static inline OxRoom *
make_room (const char *id, const char *wkt)
{
  g_autoptr (OxRing) ring = ox_test_ring (wkt);
  return ox_room_new (&(OxRoom){ .id = (char *) id, .name = (char *) "Room", .ring = ring });
}

static inline OxObstacle *
make_rectangle (const char *id, OxObstacleKind kind, OxBox box)
{
  return ox_obstacle_new (&(OxObstacle){
      .id = (char *) id,
      .kind = kind,
      .shape = { .kind = OX_SHAPE_RECTANGLE,
                 .centre = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 },
                 .width = box.x1 - box.x0,
                 .depth = box.y1 - box.y0 },
  });
}

static inline OxObstacle *
make_polygon (const char *id, const char *wkt)
{
  g_autoptr (OxRing) ring = ox_test_ring (wkt);
  return ox_obstacle_new (&(OxObstacle){ .id = (char *) id, .shape = { .kind = OX_SHAPE_POLYGON, .ring = ring } });
}

static inline OxExcluded *
make_excluded (const char *id, const char *wkt)
{
  g_autoptr (OxRing) ring = ox_test_ring (wkt);
  return ox_excluded_new (&(OxExcluded){ .id = (char *) id, .ring = ring });
}

static inline OxDoorway *
make_doorway (const char *id, OxPoint a, OxPoint b, double depth)
{
  return ox_doorway_new (&(OxDoorway){ .id = (char *) id, .a = a, .b = b, .depth = depth });
}

static inline OxJoint *
make_joint (const char *id, OxPoint a, OxPoint b)
{
  OxPoint points[] = { a, b };
  return ox_joint_new (&(OxJoint){ .id = (char *) id, .n = 2, .points = points });
}

static inline OxStation *
make_station (const char *id, OxPoint at)
{
  return ox_station_new (&(OxStation){ .id = (char *) id, .at = at });
}

/* One of each kind of item: R1 12 m x 8 m, R2 beside it, O1 solid, O2 pit, X1, D1 between the rooms, J1, S1. */
static inline OxJob *
make_job (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxRoom) hall = make_room ("R1", "POLYGON ((0 0, 12 0, 12 8, 0 8, 0 0))");
  g_autoptr (OxRoom) store = make_room ("R2", "POLYGON ((12.2 0, 18 0, 18 8, 12.2 8, 12.2 0))");
  g_autoptr (OxObstacle) column = make_rectangle ("O1", OX_OBSTACLE_SOLID, (OxBox){ 5, 3, 5.5, 3.5 });
  g_autoptr (OxObstacle) drain = make_polygon ("O2", "POLYGON ((8 1, 9 1, 9 1.2, 8 1.2, 8 1))");
  g_autoptr (OxExcluded) excluded = make_excluded ("X1", "POLYGON ((14 4, 16 4, 16 6, 14 6, 14 4))");
  g_autoptr (OxDoorway) doorway = make_doorway ("D1", (OxPoint){ 12.1, 2 }, (OxPoint){ 12.1, 3.2 }, 0.2);
  g_autoptr (OxJoint) joint = make_joint ("J1", (OxPoint){ 0, 4 }, (OxPoint){ 12, 4 });
  g_autoptr (OxStation) station = make_station ("S1", (OxPoint){ 1, 1 });
  ox_job_builder_put_room (builder, hall);
  ox_job_builder_put_room (builder, store);
  ox_job_builder_put_obstacle (builder, column);
  ox_job_builder_put_obstacle (builder, drain);
  ox_job_builder_put_excluded (builder, excluded);
  ox_job_builder_put_doorway (builder, doorway);
  ox_job_builder_put_joint (builder, joint);
  ox_job_builder_put_station (builder, station);
  return ox_job_builder_end (builder);
}

G_END_DECLS
