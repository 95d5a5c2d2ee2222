/* Oxturn: tests/job/test-edit
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include <string.h>
#include "job/job-making.h"

#define IDS(...) ((const char *const[]){ __VA_ARGS__, NULL })

static void
assert_refused (OxJob *job, GError **error, int code, const char *part)
{
  g_assert_null (job);
  g_assert_error (*error, OX_JOB_ERROR, code);
  if (!strstr ((*error)->message, part))
    g_error ("“%s” does not say “%s”", (*error)->message, part);
}

static void
test_add_and_take_away (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxObstacle) column = make_rectangle ("O3", OX_OBSTACLE_SOLID, (OxBox){ 2, 2, 2.4, 2.4 });
  g_autoptr (OxJob) more = ox_job_with_obstacle (job, column, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (more->n_obstacles, ==, 3);
  g_assert_cmpuint (job->n_obstacles, ==, 2);
  g_autoptr (OxJob) less = ox_job_without (more, IDS ("O3", "R2", "D1", "X1"), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (less->n_obstacles, ==, 2);
  g_assert_cmpuint (less->n_rooms, ==, 1);
  g_assert_cmpuint (less->n_doorways + less->n_excluded, ==, 0);
  g_assert_true (less->rooms[0] == job->rooms[0]);
}

static void
test_each_kind_of_item (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxExcluded) excluded = make_excluded ("X2", "POLYGON ((1 5, 2 5, 2 6, 1 6, 1 5))");
  g_autoptr (OxDoorway) doorway = make_doorway ("D2", (OxPoint){ -0.1, 2 }, (OxPoint){ -0.1, 4 }, 0.2);
  g_autoptr (OxJoint) joint = make_joint ("J2", (OxPoint){ 1, 0 }, (OxPoint){ 1, 8 });
  g_autoptr (OxStation) station = make_station ("S2", (OxPoint){ 11, 7 });
  g_autoptr (OxJob) a = ox_job_with_excluded (job, excluded, &error);
  g_autoptr (OxJob) b = ox_job_with_doorway (a, doorway, &error);
  g_autoptr (OxJob) c = ox_job_with_joint (b, joint, &error);
  g_autoptr (OxJob) d = ox_job_with_station (c, station, &error);
  g_assert_no_error (error);
  g_assert_true (d->excluded[1] == excluded && d->doorways[1] == doorway && d->joints[1] == joint);
  g_assert_true (d->stations[1] == station);
}

static void
test_room_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxRoom) over = make_room ("R3", "POLYGON ((10 6, 14 6, 14 10, 10 10, 10 6))");
  assert_refused (ox_job_with_room (job, over, &error), &error, OX_JOB_ERROR_REFUSED, "overlap");
}

static void
test_settings (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_classes_find ("large"));
  g_autoptr (OxJob) large = ox_job_with_machine (job, machine, &error);
  g_assert_no_error (error);
  g_assert_true (ox_machine_equal (large->machine, machine));
  g_autoptr (OxJob) rated = ox_job_with_rates (large, (OxRates){ .edge_m2_per_hour = 5 }, &error);
  g_assert_cmpfloat (rated->rates.edge_m2_per_hour, ==, 5);
  g_autoptr (OxJob) titled = ox_job_with_texts (rated, &(OxTexts){ .title = (char *) "Hall" }, &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) feet = ox_job_with_units (titled, OX_UNITS_FEET);
  g_assert_cmpstr (feet->texts->title, ==, "Hall");
  g_assert_cmpint (feet->units, ==, OX_UNITS_FEET);
  machine->min_overlap = 0.5;
  assert_refused (ox_job_with_machine (job, machine, &error), &error, OX_JOB_ERROR_REFUSED, "Least overlap");
  g_clear_error (&error);
  assert_refused (ox_job_with_rates (job, (OxRates){ .edge_m2_per_hour = -1 }, &error), &error, OX_JOB_ERROR_REFUSED,
                  "hand rate");
}

static void
test_side (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) drop = ox_job_with_side (job, "R1", 2, (OxSide){ OX_SIDE_DROP, 0.5 }, &error);
  g_assert_no_error (error);
  g_assert_cmpint (drop->rooms[0]->sides[2].kind, ==, OX_SIDE_DROP);
  g_assert_cmpint (drop->rooms[0]->sides[1].kind, ==, OX_SIDE_WALL);
  g_assert_cmpint (job->rooms[0]->sides[2].kind, ==, OX_SIDE_WALL);
  g_assert_true (drop->rooms[0]->ring == job->rooms[0]->ring);
  assert_refused (ox_job_with_side (job, "R1", 2, (OxSide){ OX_SIDE_DROP, -1 }, &error), &error, OX_JOB_ERROR_REFUSED,
                  "keep-back");
  g_clear_error (&error);
  assert_refused (ox_job_with_side (job, "O1", 0, (OxSide){ OX_SIDE_OPEN, 0 }, &error), &error, OX_JOB_ERROR_NO_ITEM,
                  "O1");
}

static void
test_direction (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) along = ox_job_with_direction (job, "R1", (OxDirection){ OX_DIRECTION_SIDE, 3, 0 }, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (along->rooms[0]->direction.side, ==, 3);
  assert_refused (ox_job_with_direction (job, "R1", (OxDirection){ OX_DIRECTION_SIDE, 4, 0 }, &error), &error,
                  OX_JOB_ERROR_REFUSED, "sides 1 to 4");
  g_clear_error (&error);
  assert_refused (ox_job_with_direction (job, "R9", (OxDirection){ OX_DIRECTION_AUTO, 0, 0 }, &error), &error,
                  OX_JOB_ERROR_NO_ITEM, "R9");
}

static void
test_corner (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) room = ox_job_with_corner (job, "R1", 3, (OxPoint){ -1.00004, 9 }, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (room->rooms[0]->ring->points[3].x, ==, -1);
  g_autoptr (OxJob) drain = ox_job_with_corner (job, "O2", 0, (OxPoint){ 7.5, 1 }, &error);
  g_assert_cmpfloat (drain->obstacles[1]->shape.ring->points[0].x, ==, 7.5);
  g_autoptr (OxJob) excluded = ox_job_with_corner (job, "X1", 0, (OxPoint){ 13, 3 }, &error);
  g_assert_cmpfloat (excluded->excluded[0]->ring->points[0].x, ==, 13);
  g_assert_no_error (error);
}

static void
test_corner_refused (void)
{
  static const struct
  {
    const char *id;
    OxPoint at;
    int code;
    const char *part;
  } rows[] = {
    { "R1", { 20, 3 }, OX_JOB_ERROR_REFUSED, "" },            /* into the neighbour */
    { "R1", { 12, 0 }, OX_JOB_ERROR_REFUSED, "" },            /* onto the next corner */
    { "R1", { 0, 8 }, OX_JOB_ERROR_REFUSED, "same place" },   /* onto the last corner */
    { "R1", { 6, 9 }, OX_JOB_ERROR_REFUSED, "meets itself" }, /* through the far side */
    { "R1", { NAN, 9 }, OX_JOB_ERROR_REFUSED, "coordinates" },
    { "O1", { 6, 9 }, OX_JOB_ERROR_REFUSED, "no corners of its own" },
    { "S1", { 6, 9 }, OX_JOB_ERROR_NO_ITEM, "S1" },
    { "Q1", { 6, 9 }, OX_JOB_ERROR_NO_ITEM, "Q1" },
  };
  g_autoptr (OxJob) job = make_job ();
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      assert_refused (ox_job_with_corner (job, rows[i].id, 0, rows[i].at, &error), &error, rows[i].code, rows[i].part);
    }
}

static void
test_moved (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  const char *const *all = IDS ("R1", "R2", "O1", "O2", "X1", "D1", "J1", "S1");
  g_autoptr (OxJob) moved = ox_job_moved (job, all, (OxPoint){ 2, -3 }, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (moved->rooms[1]->ring->points[0].x, ==, 14.2);
  g_assert_cmpfloat (moved->obstacles[0]->shape.centre.y, ==, 0.25);
  g_assert_cmpfloat (moved->obstacles[1]->shape.ring->points[0].x, ==, 10);
  g_assert_cmpfloat (moved->excluded[0]->ring->points[0].y, ==, 1);
  g_assert_cmpfloat (moved->doorways[0]->b.y, ==, 0.2);
  g_assert_cmpfloat (moved->joints[0]->points[1].x, ==, 14);
  g_assert_cmpfloat (moved->stations[0]->at.y, ==, -2);
  /* And back: the same places to the last bit. */
  g_autoptr (OxJob) back = ox_job_moved (moved, all, (OxPoint){ -2, 3 }, &error);
  for (guint i = 0; i < job->n_rooms; i++)
    g_assert_true (ox_ring_equal (back->rooms[i]->ring, job->rooms[i]->ring));
  for (guint i = 0; i < job->n_obstacles; i++)
    g_assert_true (ox_ring_equal (back->obstacles[i]->shape.ring, job->obstacles[i]->shape.ring));
}

static void
test_moved_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  assert_refused (ox_job_moved (job, IDS ("R2"), (OxPoint){ -1, 0 }, &error), &error, OX_JOB_ERROR_REFUSED, "overlap");
  g_clear_error (&error);
  assert_refused (ox_job_moved (job, IDS ("R1", "R7"), (OxPoint){ 0, 0 }, &error), &error, OX_JOB_ERROR_NO_ITEM, "R7");
  g_clear_error (&error);
  assert_refused (ox_job_without (job, IDS ("R1", "R7"), &error), &error, OX_JOB_ERROR_NO_ITEM, "R7");
}

/* What is broken already may be worked on, or nobody could mend it; what is sound may not be broken. */
static void
test_broken_job (void)
{
  g_autoptr (GError) error = NULL;
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxRoom) bow = make_room ("R1", "POLYGON ((0 0, 4 4, 4 0, 0 4, 0 0))");
  ox_job_builder_put_room (builder, bow);
  g_autoptr (OxJob) broken = ox_job_builder_end (builder);
  g_autoptr (OxJob) still = ox_job_with_corner (broken, "R1", 0, (OxPoint){ -1, -1 }, &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) mended = ox_job_with_corner (still, "R1", 2, (OxPoint){ -1, 5 }, &error);
  g_assert_no_error (error);
  g_autoptr (OxRoom) other = make_room ("R2", "POLYGON ((20 0, 24 4, 24 0, 20 4, 20 0))");
  assert_refused (ox_job_with_room (broken, other, &error), &error, OX_JOB_ERROR_REFUSED, "R2");
}

/* Columns may be drawn before there is a room; once there is one, none may be put beside it, by whatever edit. What
 * lies outside already can be changed and taken back in. */
static void
test_outside_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  g_autoptr (OxObstacle) column = make_rectangle ("O1", OX_OBSTACLE_SOLID, (OxBox){ 20, 20, 21, 21 });
  g_autoptr (OxObstacle) inside = make_rectangle ("O2", OX_OBSTACLE_SOLID, (OxBox){ 9.5, 5, 10.5, 6 });
  g_autoptr (OxRoom) room = make_room ("R1", "POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0))");
  g_autoptr (OxJob) first = ox_job_with_obstacle (empty, column, &error);
  g_autoptr (OxJob) job = ox_job_with_room (first, room, &error);
  g_autoptr (OxJob) both = ox_job_with_obstacle (job, inside, &error);
  g_autoptr (OxJob) nearer = ox_job_moved (both, IDS ("O1"), (OxPoint){ -2, 0 }, &error);
  g_autoptr (OxJob) in = ox_job_moved (nearer, IDS ("O1"), (OxPoint){ -10, -12 }, &error);
  g_autoptr (OxJob) room_gone = ox_job_moved (in, IDS ("R1"), (OxPoint){ 50, 0 }, &error);
  g_autoptr (OxJob) all_moved = ox_job_moved (in, IDS ("R1", "O1", "O2"), (OxPoint){ 50, 0 }, &error);
  g_autoptr (OxObstacle) other = make_rectangle ("O3", OX_OBSTACLE_PIT, (OxBox){ 10.1, 0, 11, 1 });
  OxPoint at = { 0, 0 };
  g_assert_no_error (error);
  g_assert_null (ox_job_with_obstacle (both, other, &error));
  g_assert_true (ox_job_error_place (error, &at));
  g_assert_true (at.x >= 10.1 && at.x <= 11 && at.y >= 0 && at.y <= 1);
  assert_refused (NULL, &error, OX_JOB_ERROR_REFUSED, "O3 would lie outside");
  g_clear_error (&error);
  assert_refused (ox_job_moved (in, IDS ("O2"), (OxPoint){ 0.6, 0 }, &error), &error, OX_JOB_ERROR_REFUSED, "O2");
  g_clear_error (&error);
  assert_refused (ox_job_moved (in, IDS ("O1"), (OxPoint){ 10, 0 }, &error), &error, OX_JOB_ERROR_REFUSED, "O1");
}

/* The same holds for condition and excluded areas, which say something of floor that is there. */
static void
test_area_outside_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  g_autoptr (OxRing) beside = ox_test_ring ("POLYGON ((20 20, 22 20, 22 22, 20 22, 20 20))");
  g_autoptr (OxRing) across = ox_test_ring ("POLYGON ((9 4, 12 4, 12 6, 9 6, 9 4))");
  g_autoptr (OxCondition) soft = ox_condition_new (&(OxCondition){ .id = (char *) "C1", .ring = beside });
  g_autoptr (OxCondition) soft_in = ox_condition_new (&(OxCondition){ .id = (char *) "C2", .ring = across });
  g_autoptr (OxCondition) soft_out = ox_condition_new (&(OxCondition){ .id = (char *) "C3", .ring = beside });
  g_autoptr (OxExcluded) left_out = ox_excluded_new (&(OxExcluded){ .id = (char *) "X1", .ring = beside });
  g_autoptr (OxExcluded) left_out_in = ox_excluded_new (&(OxExcluded){ .id = (char *) "X2", .ring = across });
  g_autoptr (OxRoom) room = make_room ("R1", "POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0))");
  g_autoptr (OxJob) early = ox_job_with_condition (empty, soft, &error);
  g_autoptr (OxJob) with_room = ox_job_with_room (early, room, &error);
  g_autoptr (OxJob) first = ox_job_with_condition (with_room, soft_in, &error);
  g_autoptr (OxJob) job = ox_job_with_excluded (first, left_out_in, &error);
  g_autoptr (OxJob) farther = ox_job_moved (job, IDS ("C1"), (OxPoint){ 5, 0 }, &error);
  OxPoint at = { 0, 0 };
  g_assert_no_error (error);
  g_assert_null (ox_job_with_condition (job, soft_out, &error));
  g_assert_true (ox_job_error_place (error, &at));
  g_assert_true (at.x >= 20 && at.x <= 22 && at.y >= 20 && at.y <= 22);
  assert_refused (NULL, &error, OX_JOB_ERROR_REFUSED, "Condition area C3 would lie outside every room");
  g_clear_error (&error);
  assert_refused (ox_job_with_excluded (job, left_out, &error), &error, OX_JOB_ERROR_REFUSED,
                  "Excluded area X1 would lie outside every room");
  g_clear_error (&error);
  assert_refused (ox_job_moved (job, IDS ("C2"), (OxPoint){ 2, 0 }, &error), &error, OX_JOB_ERROR_REFUSED, "C2");
  g_clear_error (&error);
  assert_refused (ox_job_moved (job, IDS ("X2"), (OxPoint){ 2, 0 }, &error), &error, OX_JOB_ERROR_REFUSED, "X2");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/edit/add-and-take-away", test_add_and_take_away);
  g_test_add_func ("/job/edit/each-kind", test_each_kind_of_item);
  g_test_add_func ("/job/edit/room-refused", test_room_refused);
  g_test_add_func ("/job/edit/settings", test_settings);
  g_test_add_func ("/job/edit/side", test_side);
  g_test_add_func ("/job/edit/direction", test_direction);
  g_test_add_func ("/job/edit/corner", test_corner);
  g_test_add_func ("/job/edit/corner-refused", test_corner_refused);
  g_test_add_func ("/job/edit/moved", test_moved);
  g_test_add_func ("/job/edit/moved-refused", test_moved_refused);
  g_test_add_func ("/job/edit/outside-refused", test_outside_refused);
  g_test_add_func ("/job/edit/area-outside-refused", test_area_outside_refused);
  g_test_add_func ("/job/edit/broken", test_broken_job);
  return g_test_run ();
}
