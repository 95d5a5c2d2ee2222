/* Oxturn: tests/job/test-items
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/items.h"
#include "job/job-making.h"

static void
test_room_is_a_deep_copy (void)
{
  g_autofree char *id = g_strdup ("R1");
  OxSide sides[4] = { { OX_SIDE_WALL, 0.5 }, { OX_SIDE_DROP, 0.60004 }, { OX_SIDE_OPEN, 1 }, { OX_SIDE_WALL, 0 } };
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 0, 4 0, 4 3, 0 3, 0 0))");
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = id, .ring = ring, .sides = sides });
  id[0] = 'X';
  sides[1].keep_back = 7;
  g_assert_cmpstr (room->id, ==, "R1");
  g_assert_cmpstr (room->name, ==, "");
  g_assert_cmpstr (room->profile, ==, "");
  g_assert_cmpfloat (room->sides[1].keep_back, ==, 0.6);
  /* A keep-back belongs to a drop only. */
  g_assert_cmpfloat (room->sides[0].keep_back, ==, 0);
  g_assert_cmpfloat (room->sides[2].keep_back, ==, 0);
}

static void
test_room_without_sides_has_walls (void)
{
  g_autoptr (OxRoom) room = make_room ("R1", "POLYGON ((0 0, 4 0, 4 3, 0 3, 0 0))");
  for (guint i = 0; i < room->ring->n; i++)
    g_assert_cmpint (room->sides[i].kind, ==, OX_SIDE_WALL);
}

static void
test_direction_keeps_what_its_kind_has (void)
{
  g_autoptr (OxRoom) plain = make_room ("R1", "POLYGON ((0 0, 4 0, 4 3, 0 3, 0 0))");
  OxRoom fields = *plain;
  fields.direction = (OxDirection){ OX_DIRECTION_ANGLE, 3, 30.00000049 };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  g_assert_cmpuint (room->direction.side, ==, 0);
  g_assert_cmpfloat (room->direction.angle_deg, ==, 30);
}

static void
test_rectangle_ring (void)
{
  g_autoptr (OxObstacle) plate = ox_obstacle_new (&(OxObstacle){
      .id = (char *) "O1",
      .shape = { .kind = OX_SHAPE_RECTANGLE, .centre = { 2, 1 }, .width = 4, .depth = 2, .angle_deg = 30 },
  });
  ox_test_near (ox_ring_area (plate->shape.ring), 8, 0.001);
  OxPoint middle = ox_ring_centroid (plate->shape.ring);
  ox_test_near (middle.x, 2, 0.0001);
  ox_test_near (middle.y, 1, 0.0001);
  /* Width runs along the angle: the end of the long axis lies 2 m from the middle at 30 degrees. */
  g_assert_true (ox_ring_contains (plate->shape.ring, (OxPoint){ 2 + 1.99 * 0.8660254, 1 + 1.99 * 0.5 }));
  g_assert_false (ox_ring_contains (plate->shape.ring, (OxPoint){ 2 - 1.01 * 0.5, 1 + 1.01 * 0.8660254 }));
}

/* The outline of a circle holds all of it, and sticks out by a millimetre at most. */
static void
test_circle_ring (void)
{
  const double radius = 0.5;
  g_autoptr (OxObstacle) column = ox_obstacle_new (
      &(OxObstacle){ .id = (char *) "O1", .shape = { .kind = OX_SHAPE_CIRCLE, .centre = { 3, 4 }, .radius = radius } });
  const OxRing *ring = column->shape.ring;
  for (guint i = 0; i < ring->n; i++)
    {
      OxPoint a = ring->points[i];
      OxPoint b = ring->points[(i + 1) % ring->n];
      double near = ox_point_segment_distance ((OxPoint){ 3, 4 }, a, b, NULL);
      g_assert_cmpfloat (near, >=, radius - 0.0001);
      g_assert_cmpfloat (ox_point_distance ((OxPoint){ 3, 4 }, a), <=, radius + 0.00115);
    }
}

/* The check refuses these; making one must neither hang nor eat the memory. */
static void
test_senseless_circles (void)
{
  const double radii[] = { 0, -1, 1e300, INFINITY, NAN };
  for (guint i = 0; i < G_N_ELEMENTS (radii); i++)
    {
      g_autoptr (OxObstacle) column = ox_obstacle_new (
          &(OxObstacle){ .id = (char *) "O1", .shape = { .kind = OX_SHAPE_CIRCLE, .radius = radii[i] } });
      g_assert_cmpuint (column->shape.ring->n, >=, 3);
    }
}

static void
test_only_pits_have_a_keep_back (void)
{
  for (guint kind = OX_OBSTACLE_SOLID; kind <= OX_OBSTACLE_MASKED; kind++)
    {
      g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){
          .id = (char *) "O1",
          .kind = (OxObstacleKind) kind,
          .shape = { .kind = OX_SHAPE_CIRCLE, .radius = 1 },
          .keep_back = 0.3,
      });
      g_assert_cmpfloat (obstacle->keep_back, ==, kind == OX_OBSTACLE_PIT ? 0.3 : 0);
    }
}

static void
test_doorway_ring (void)
{
  g_autoptr (OxDoorway) doorway = make_doorway ("D1", (OxPoint){ 1, 1 }, (OxPoint){ 1.6, 1.8 }, 0.2);
  g_autoptr (OxRing) ring = ox_doorway_ring (doorway);
  /* The gap is 1 m wide (3-4-5 triangle) and 0.2 m deep. */
  ox_test_near (ox_ring_area (ring), 0.2, 0.0002);
  g_assert_true (ox_ring_contains (ring, (OxPoint){ 1.3, 1.4 }));
  ox_test_near (ox_ring_perimeter (ring), 2.4, 0.001);
}

static void
test_stored_on_the_grid (void)
{
  g_autoptr (OxStation) station = make_station ("S1", (OxPoint){ 1.00004999, -0.00001 });
  g_assert_cmpfloat (station->at.x, ==, 1);
  g_assert_false (signbit (station->at.y));
  g_autoptr (OxJoint) joint = make_joint ("J1", (OxPoint){ 0.12345, 0 }, (OxPoint){ 1, 1 });
  g_assert_cmpfloat (joint->points[0].x, ==, ox_snap (0.12345));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/items/room/deep-copy", test_room_is_a_deep_copy);
  g_test_add_func ("/job/items/room/walls", test_room_without_sides_has_walls);
  g_test_add_func ("/job/items/room/direction", test_direction_keeps_what_its_kind_has);
  g_test_add_func ("/job/items/obstacle/rectangle", test_rectangle_ring);
  g_test_add_func ("/job/items/obstacle/circle", test_circle_ring);
  g_test_add_func ("/job/items/obstacle/senseless-circles", test_senseless_circles);
  g_test_add_func ("/job/items/obstacle/keep-back", test_only_pits_have_a_keep_back);
  g_test_add_func ("/job/items/doorway/ring", test_doorway_ring);
  g_test_add_func ("/job/items/on-the-grid", test_stored_on_the_grid);
  return g_test_run ();
}
