/* Oxturn: tests/tools/test-pick - what lies under a point, and the handles of an item.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/pick.h"

#include "job/edit.h"
#include "support/floors.h"

static OxJob *
with_column (const OxJob *job, OxShape shape, const char *id)
{
  OxObstacle draft = { .id = (char *) id, .name = (char *) "", .shape = shape };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&draft);

  return ox_job_with_obstacle (job, obstacle, NULL);
}

/* A room of 10 m x 8 m, a rectangular column O1 about (3, 3), a round one O2 about (7, 3), a doorway D1, a station S1.
 */
static OxJob *
make_floor (void)
{
  g_autoptr (OxJob) room = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxJob) one = with_column (
      room, (OxShape){ .kind = OX_SHAPE_RECTANGLE, .centre = { 3, 3 }, .width = 0.6, .depth = 0.4 }, "O1");
  g_autoptr (OxJob) two
      = with_column (one, (OxShape){ .kind = OX_SHAPE_CIRCLE, .centre = { 7, 3 }, .radius = 0.5 }, "O2");
  g_autoptr (OxDoorway) doorway = ox_doorway_new (
      &(OxDoorway){ .id = (char *) "D1", .name = (char *) "", .a = { 4, 8 }, .b = { 6, 8 }, .depth = 0.2 });
  g_autoptr (OxJob) three = ox_job_with_doorway (two, doorway, NULL);
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) "", .at = { 9, 7 } });

  return ox_job_with_station (three, station, NULL);
}

static void
test_item (void)
{
  g_autoptr (OxJob) job = make_floor ();

  g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 3, 3 }, 0.1), ==, "O1");
  g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 7.4, 3 }, 0.1), ==, "O2");
  g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 5, 8.05 }, 0.1), ==, "D1");
  g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 9.1, 7 }, 0.1), ==, "S1");
  g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 1, 1 }, 0.1), ==, job->rooms[0]->id);
  g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 1, -0.05 }, 0.1), ==, job->rooms[0]->id);
  g_assert_null (ox_pick_item (job, (OxPoint){ 1, -0.5 }, 0.1));
}

/* A condition area lies on its room. A traced plan lies below everything, and is passed through when locked or hidden. */
static void
test_areas_and_traced_plans (void)
{
  g_autoptr (OxJob) floor = make_floor ();
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 5, 6 }, 2, 2, 0);
  g_autoptr (OxCondition) condition = ox_condition_new (
      &(OxCondition){ .id = (char *) "C1", .name = (char *) "", .ring = ring, .profile = (char *) "" });
  g_autoptr (GBytes) data = g_bytes_new_static ("%PDF-", 5);
  OxTracedPlan draft = { .id = (char *) "T1", .data = data, .page = 1, .width = 40, .depth = 40, .strength = 1 };
  g_autoptr (OxJob) one = ox_job_with_condition (floor, condition, NULL);

  g_assert_cmpstr (ox_pick_item (one, (OxPoint){ 5, 6 }, 0.1), ==, "C1");
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (OxTracedPlan) traced = NULL;
      g_autoptr (OxJob) job = NULL;
      g_auto (GStrv) all = NULL;

      draft.locked = i == 1;
      draft.hidden = i == 2;
      traced = ox_traced_plan_new (&draft);
      job = ox_job_with_traced (one, traced, NULL);
      all = ox_pick_in_box (job, (OxBox){ -INFINITY, -INFINITY, INFINITY, INFINITY });
      g_assert_cmpstr (ox_pick_item (job, (OxPoint){ 1, 1 }, 0.1), ==, job->rooms[0]->id);
      g_assert_cmpstr (ox_pick_item (job, (OxPoint){ -5, -5 }, 0.1), ==, i == 0 ? "T1" : NULL);
      g_assert_true (g_strv_contains ((const char *const *) all, "C1"));
      g_assert_true (g_strv_contains ((const char *const *) all, "T1") == (i == 0));
    }
}

static void
test_side (void)
{
  g_autoptr (OxJob) job = make_floor ();

  g_assert_cmpint (ox_pick_side (job->rooms[0], (OxPoint){ 5, 0.05 }, 0.1), ==, 0);
  g_assert_cmpint (ox_pick_side (job->rooms[0], (OxPoint){ 9.95, 4 }, 0.1), ==, 1);
  g_assert_cmpint (ox_pick_side (job->rooms[0], (OxPoint){ 5, 4 }, 0.1), ==, -1);
}

static void
test_in_box (void)
{
  g_autoptr (OxJob) job = make_floor ();
  const char *const columns[] = { "O1", "O2", NULL };
  g_auto (GStrv) some = ox_pick_in_box (job, (OxBox){ 2, 2, 8, 4 });
  g_auto (GStrv) none = ox_pick_in_box (job, (OxBox){ 2.8, 2, 3.2, 4 });
  g_auto (GStrv) all = ox_pick_in_box (job, (OxBox){ -1, -1, 11, 9 });

  g_assert_cmpstrv (some, columns);
  g_assert_cmpuint (g_strv_length (none), ==, 0);
  g_assert_cmpuint (g_strv_length (all), ==, 5);
}

static void
test_drag_rectangle (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (GArray) handles = ox_handles (job, "O1");
  g_autoptr (OxJob) after = NULL;
  const OxShape *shape;

  g_assert_cmpuint (handles->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      OxPoint across = g_array_index (handles, OxPoint, (i + 2) % 4);
      OxPoint at = g_array_index (handles, OxPoint, i);

      g_clear_pointer (&after, ox_job_unref);
      at = ox_point_add (at, ox_point_scale (ox_point_sub (at, across), 0.5));
      after = ox_handles_drag (job, "O1", i, at, NULL);
      shape = &ox_job_find_obstacle (after, "O1")->shape;
      g_assert_cmpfloat_with_epsilon (shape->width, 0.9, 1e-9);
      g_assert_cmpfloat_with_epsilon (shape->depth, 0.6, 1e-9);
      /* the corner across stays */
      g_assert_cmpfloat_with_epsilon (ox_point_distance (shape->ring->points[(i + 2) % 4], across), 0, 2 * OX_GRID);
    }
}

static void
test_drag_rim (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (OxJob) after = ox_handles_drag (job, "O2", 0, (OxPoint){ 8.25, 3 }, NULL);

  g_assert_cmpfloat_with_epsilon (ox_job_find_obstacle (after, "O2")->shape.radius, 1.25, 1e-9);
}

static void
test_drag_doorway_stays_in_wall (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (OxJob) after = ox_handles_drag (job, "D1", 1, (OxPoint){ 6.7, 9.3 }, NULL);

  g_assert_cmpfloat_with_epsilon (after->doorways[0]->b.x, 6.7, 1e-9);
  g_assert_cmpfloat_with_epsilon (after->doorways[0]->b.y, 8, 1e-9);
}

/* A rectangle a x b whose side of a is moved out by d has the area a (b + d). */
static void
test_side_drag (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (OxJob) out = ox_side_drag (job, job->rooms[0]->id, 0, 0.75, NULL);
  g_autoptr (OxJob) in = ox_side_drag (job, job->rooms[0]->id, 0, -0.75, NULL);

  g_assert_cmpfloat_with_epsilon (fabs (ox_ring_area (out->rooms[0]->ring)), 10 * 8.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (fabs (ox_ring_area (in->rooms[0]->ring)), 10 * 7.25, 1e-9);
}

static void
test_side_set_length (void)
{
  g_autoptr (OxJob) job = make_floor ();
  g_autoptr (OxJob) after = ox_side_set_length (job, job->rooms[0]->id, 0, 12.5, NULL);
  const OxRing *ring = after->rooms[0]->ring;

  g_assert_cmpfloat_with_epsilon (ox_point_distance (ring->points[0], ring->points[1]), 12.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (fabs (ox_ring_area (ring)), 12.5 * 8, 1e-9);
}

static void
test_side_split (void)
{
  g_autoptr (OxJob) plain = make_floor ();
  const char *room = plain->rooms[0]->id;
  g_autoptr (OxJob) drop = ox_job_with_side (plain, room, 1, (OxSide){ OX_SIDE_DROP, 0.5 }, NULL);
  g_autoptr (OxJob) job
      = ox_job_with_direction (drop, room, (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = 3 }, NULL);
  g_autoptr (OxJob) after = ox_side_split (job, room, 1, (OxPoint){ 10.03, 4 }, NULL);
  const OxRoom *split = after->rooms[0];

  g_assert_cmpuint (split->ring->n, ==, 5);
  g_assert_cmpfloat_with_epsilon (split->ring->points[2].x, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (split->ring->points[2].y, 4, 1e-9);
  g_assert_cmpint (split->sides[1].kind, ==, OX_SIDE_DROP);
  g_assert_cmpint (split->sides[2].kind, ==, OX_SIDE_DROP);
  g_assert_cmpint (split->sides[3].kind, ==, OX_SIDE_WALL);
  g_assert_cmpuint (split->direction.side, ==, 4); /* still the same wall */
  g_assert_cmpfloat_with_epsilon (fabs (ox_ring_area (split->ring)), 80, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/pick/item", test_item);
  g_test_add_func ("/tools/pick/areas-and-traced-plans", test_areas_and_traced_plans);
  g_test_add_func ("/tools/pick/side", test_side);
  g_test_add_func ("/tools/pick/in-box", test_in_box);
  g_test_add_func ("/tools/pick/drag-rectangle", test_drag_rectangle);
  g_test_add_func ("/tools/pick/drag-rim", test_drag_rim);
  g_test_add_func ("/tools/pick/drag-doorway-stays-in-wall", test_drag_doorway_stays_in_wall);
  g_test_add_func ("/tools/pick/side-drag", test_side_drag);
  g_test_add_func ("/tools/pick/side-set-length", test_side_set_length);
  g_test_add_func ("/tools/pick/side-split", test_side_split);
  return g_test_run ();
}
