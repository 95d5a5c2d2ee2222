/* Oxturn: tests/job/test-place
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/place.h"
#include "job/edit.h"
#include "job-making.h"

#define IDS(...) ((const char *const[]){ __VA_ARGS__, NULL })
#define EVERYTHING IDS ("R1", "R2", "O1", "O2", "X1", "D1", "J1", "S1")

static void
assert_point (OxPoint p, double x, double y)
{
  g_assert_cmpfloat_with_epsilon (p.x, x, 1e-9);
  g_assert_cmpfloat_with_epsilon (p.y, y, 1e-9);
}

static void
assert_same_floor (const OxJob *a, const OxJob *b)
{
  g_assert_cmpuint (a->n_rooms, ==, b->n_rooms);
  g_assert_cmpuint (a->n_obstacles, ==, b->n_obstacles);
  for (guint i = 0; i < a->n_rooms; i++)
    g_assert_true (ox_ring_equal (a->rooms[i]->ring, b->rooms[i]->ring));
  for (guint i = 0; i < a->n_obstacles; i++)
    g_assert_true (ox_ring_equal (a->obstacles[i]->shape.ring, b->obstacles[i]->shape.ring));
  assert_point (a->stations[0]->at, b->stations[0]->at.x, b->stations[0]->at.y);
  assert_point (a->doorways[0]->a, b->doorways[0]->a.x, b->doorways[0]->a.y);
  assert_point (a->joints[0]->points[1], b->joints[0]->points[1].x, b->joints[0]->points[1].y);
}

static void
test_point (void)
{
  OxPlacement placement = { .about = { 1, 2 }, .mirrored = TRUE, .turn_deg = 90, .by = { 10, 0 } };
  /* (4, 3) is (3, 1) from the middle; mirrored (-3, 1); turned by a right angle (-1, -3). */
  assert_point (ox_placement_point (&placement, (OxPoint){ 4, 3 }), 10, -1);
  placement = (OxPlacement){ .turn_deg = -270 };
  assert_point (ox_placement_point (&placement, (OxPoint){ 2, 0 }), 0, 2);
  placement = (OxPlacement){ .turn_deg = 30 };
  assert_point (ox_placement_point (&placement, (OxPoint){ 2, 0 }), 1.7321, 1);
}

static void
test_four_quarter_turns (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) start = make_job ();
  g_autoptr (OxJob) job = ox_job_ref (start);
  for (guint i = 0; i < 4; i++)
    {
      OxJob *next = ox_edit_placed (job, EVERYTHING, &(OxPlacement){ .about = { 3.3, -1.7 }, .turn_deg = 90 }, &error);
      g_assert_no_error (error);
      ox_job_unref (job);
      job = next;
    }
  assert_same_floor (job, start);
}

static void
test_mirrored_twice (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) start = make_job ();
  g_autoptr (OxJob) drop = ox_job_with_side (start, "R1", 1, (OxSide){ OX_SIDE_DROP, 0.5 }, &error);
  g_autoptr (OxJob) along = ox_job_with_direction (drop, "R1", (OxDirection){ OX_DIRECTION_SIDE, 1, 0 }, &error);
  OxPlacement mirror = { .about = { 6, 0 }, .mirrored = TRUE };
  g_autoptr (OxJob) once = ox_edit_placed (along, EVERYTHING, &mirror, &error);
  g_autoptr (OxJob) twice = ox_edit_placed (once, EVERYTHING, &mirror, &error);
  g_assert_no_error (error);
  /* The drop at x = 12 is now the one at x = 0, the outline still runs counter-clockwise, the direction follows its side. */
  const OxRoom *room = once->rooms[0];
  guint drops = 0;
  for (guint i = 0; i < room->ring->n; i++)
    if (room->sides[i].kind == OX_SIDE_DROP)
      {
        drops++;
        g_assert_cmpfloat (room->ring->points[i].x, ==, 0);
        g_assert_cmpfloat (room->ring->points[(i + 1) % room->ring->n].x, ==, 0);
        g_assert_cmpuint (room->direction.side, ==, i);
      }
  g_assert_cmpuint (drops, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (room->ring), 96, 1e-9);
  assert_same_floor (twice, along);
  g_assert_cmpuint (twice->rooms[0]->direction.side, ==, 1);
}

/* Turned, a rectangle keeps its width and depth to the last digit; what it covers turns. */
static void
test_turned_rectangle (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) turned
      = ox_edit_placed (job, IDS ("O1"), &(OxPlacement){ .about = { 5.25, 3.25 }, .turn_deg = 30 }, &error);
  g_autoptr (OxJob) mirrored
      = ox_edit_placed (turned, IDS ("O1"), &(OxPlacement){ .about = { 5.25, 3.25 }, .mirrored = TRUE }, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (turned->obstacles[0]->shape.width, ==, 0.5);
  g_assert_cmpfloat (turned->obstacles[0]->shape.angle_deg, ==, 30);
  g_assert_cmpfloat (mirrored->obstacles[0]->shape.angle_deg, ==, 150);
}

static void
test_copies (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_auto (GStrv) ids = NULL;
  g_autoptr (GArray) places = ox_edit_grid_places (3, 2, (OxPoint){ 1, 2 }, 0);
  OxCopies copies = { .from = job, .ids = IDS ("O1", "S1"), .places = (OxPlacement *) places->data, .n = places->len };
  g_autoptr (OxJob) more = ox_edit_copied (job, &copies, &ids, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (more->n_obstacles, ==, 2 + 6);
  g_assert_cmpuint (more->n_stations, ==, 1 + 6);
  g_assert_cmpuint (g_strv_length (ids), ==, 12);
  g_assert_cmpstr (ids[0], ==, "O3");
  g_assert_cmpstr (ids[1], ==, "S2");
  g_assert_cmpstr (ids[11], ==, "S7");
  assert_point (ox_job_find_obstacle (more, ids[10])->shape.centre, 5.25 + 2, 3.25 + 2);
  for (guint i = 0; ids[i]; i++)
    for (guint k = i + 1; ids[k]; k++)
      g_assert_cmpstr (ids[i], !=, ids[k]);
}

static void
test_turned_grid (void)
{
  g_autoptr (GArray) places = ox_edit_grid_places (2, 2, (OxPoint){ 3, 5 }, 90);
  const OxPlacement *place = (const OxPlacement *) places->data;
  g_assert_cmpuint (places->len, ==, 4);
  assert_point (place[0].by, 0, 0);
  assert_point (place[1].by, 0, 3);
  assert_point (place[2].by, -5, 0);
  assert_point (place[3].by, -5, 3);
}

/* A room copied onto itself would overlap: refused as a whole, and nothing of it is left. */
static void
test_copy_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  OxPlacement here = { .by = { 0.5, 0 } };
  g_autoptr (OxJob) bad
      = ox_edit_copied (job, &(OxCopies){ .from = job, .ids = IDS ("R1"), .places = &here, .n = 1 }, NULL, &error);
  g_assert_null (bad);
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_clear_error (&error);
  bad = ox_edit_copied (job, &(OxCopies){ .from = job, .ids = IDS ("Q9"), .places = &here, .n = 1 }, NULL, &error);
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM);
}

static void
test_only (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) only = ox_edit_only (job, IDS ("O2", "J1"), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (only->n_rooms + only->n_excluded + only->n_doorways + only->n_stations, ==, 0);
  g_assert_true (only->obstacles[0] == job->obstacles[1] && only->n_obstacles == 1);
  g_assert_true (only->joints[0] == job->joints[0]);
  g_autoptr (OxJob) bad = ox_edit_only (job, IDS ("O9"), &error);
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM);
}

static void
test_box (void)
{
  g_autoptr (OxJob) job = make_job ();
  OxBox box = ox_edit_box (job, IDS ("X1", "S1"));
  g_assert_cmpfloat (box.x0, ==, 1);
  g_assert_cmpfloat (box.y0, ==, 1);
  g_assert_cmpfloat (box.x1, ==, 16);
  g_assert_cmpfloat (box.y1, ==, 6);
  g_assert_true (ox_box_is_empty (ox_edit_box (job, IDS ("O9"))));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/place/point", test_point);
  g_test_add_func ("/job/place/four-quarter-turns-bring-all-back", test_four_quarter_turns);
  g_test_add_func ("/job/place/mirrored-twice-is-as-before", test_mirrored_twice);
  g_test_add_func ("/job/place/rectangle-keeps-its-size", test_turned_rectangle);
  g_test_add_func ("/job/place/copies-have-ids-of-their-own", test_copies);
  g_test_add_func ("/job/place/turned-grid", test_turned_grid);
  g_test_add_func ("/job/place/copy-refused", test_copy_refused);
  g_test_add_func ("/job/place/only", test_only);
  g_test_add_func ("/job/place/box", test_box);
  return g_test_run ();
}
