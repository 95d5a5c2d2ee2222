/* Oxturn: tests/job/test-corner
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/corner.h"
#include "job/edit.h"
#include "job-making.h"

static void
test_added (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) drop = ox_job_with_side (job, "R1", 1, (OxSide){ OX_SIDE_DROP, 0.5 }, &error);
  g_autoptr (OxJob) along = ox_job_with_direction (drop, "R1", (OxDirection){ OX_DIRECTION_SIDE, 2, 0 }, &error);
  g_autoptr (OxJob) more = ox_edit_corner_added (along, "R1", 1, (OxPoint){ 12.05, 3 }, &error);
  g_assert_no_error (error);
  const OxRoom *room = more->rooms[0];
  g_assert_cmpuint (room->ring->n, ==, 5);
  g_assert_cmpfloat (room->ring->points[2].x, ==, 12.05);
  g_assert_true (room->sides[1].kind == OX_SIDE_DROP && room->sides[2].kind == OX_SIDE_DROP);
  g_assert_true (room->sides[3].kind == OX_SIDE_WALL && room->sides[0].kind == OX_SIDE_WALL);
  g_assert_cmpuint (room->direction.side, ==, 3);
}

static void
test_added_and_removed (void)
{
  static const char *const ids[] = { "R1", "X1", "O2", "J1" };
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      OxPoint at = { 8.5 + i, 0.5 };
      g_autoptr (OxJob) more = ox_edit_corner_added (job, ids[i], 0, at, &error);
      g_assert_no_error (error);
      g_autoptr (OxJob) same = ox_edit_corner_removed (more, ids[i], 1, &error);
      g_assert_no_error (error);
      g_assert_true (ox_ring_equal (same->rooms[0]->ring, job->rooms[0]->ring));
      g_assert_true (ox_ring_equal (same->excluded[0]->ring, job->excluded[0]->ring));
      g_assert_true (ox_ring_equal (same->obstacles[1]->shape.ring, job->obstacles[1]->shape.ring));
      g_assert_cmpuint (same->joints[0]->n, ==, 2);
    }
}

static void
test_removed_with_direction (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) along = ox_job_with_direction (job, "R1", (OxDirection){ OX_DIRECTION_SIDE, 3, 0 }, &error);
  g_autoptr (OxJob) less = ox_edit_corner_removed (along, "R1", 1, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (less->rooms[0]->ring->n, ==, 3);
  g_assert_cmpuint (less->rooms[0]->direction.side, ==, 2);
  g_assert_cmpfloat (ox_ring_area (less->rooms[0]->ring), ==, 48);
}

static void
test_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) less = ox_edit_corner_removed (job, "R1", 1, &error);
  g_assert_no_error (error);
  g_assert_null (ox_edit_corner_removed (less, "R1", 0, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (ox_edit_corner_removed (job, "J1", 0, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (ox_edit_corner_removed (job, "O1", 0, &error)); /* a rectangle */
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (ox_edit_corner_added (job, "Q7", 0, (OxPoint){ 0, 0 }, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM);
}

static void
test_with_points (void)
{
  static const OxPoint points[] = { { 0, 0 }, { 12, 0 }, { 10, 7 } };
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) drop = ox_job_with_side (job, "R1", 1, (OxSide){ OX_SIDE_DROP, 0.5 }, &error);
  g_autoptr (OxJob) other = ox_edit_with_points (drop, "R1", points, 3, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (ox_ring_area (other->rooms[0]->ring), ==, 42);
  g_assert_true (other->rooms[0]->sides[1].kind == OX_SIDE_DROP);
  g_assert_null (ox_edit_with_points (job, "S1", points, 3, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/corner/added", test_added);
  g_test_add_func ("/job/corner/added-and-removed", test_added_and_removed);
  g_test_add_func ("/job/corner/removed-with-direction", test_removed_with_direction);
  g_test_add_func ("/job/corner/refused", test_refused);
  g_test_add_func ("/job/corner/with-points", test_with_points);
  return g_test_run ();
}
