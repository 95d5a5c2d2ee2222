/* Oxturn: tests/tools/test-snap - where a pointer is held, and why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/snap.h"

#include "job/edit.h"
#include "support/floors.h"

#define PX_PER_M 100.0 /* the radius is 0.09 m */

static void
assert_snap (OxSnap snap, OxSnapKind kind, double x, double y)
{
  g_assert_cmpint (snap.kind, ==, kind);
  g_assert_cmpfloat_with_epsilon (snap.at.x, x, 1e-9);
  g_assert_cmpfloat_with_epsilon (snap.at.y, y, 1e-9);
}

static void
test_corner_side_grid (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxSnapOptions options = { .px_per_m = PX_PER_M };

  assert_snap (ox_snap_find (job, (OxPoint){ 10.05, 7.96 }, &options), OX_SNAP_CORNER, 10, 8);
  assert_snap (ox_snap_find (job, (OxPoint){ 3.333, 0.08 }, &options), OX_SNAP_SIDE, 3.333, 0);
  assert_snap (ox_snap_find (job, (OxPoint){ 3.3333, 4.0211 }, &options), OX_SNAP_GRID, 3.3, 4);
  options.free = TRUE;
  assert_snap (ox_snap_find (job, (OxPoint){ 10.05, 7.96 }, &options), OX_SNAP_NONE, 10.05, 7.96);
}

static void
test_square (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (1, 1, "compact");
  OxPoint before = { 20, 20 };
  OxPoint last = { 24, 23 }; /* a side of 5 m along (4, 3) */
  OxSnapOptions options = { .px_per_m = PX_PER_M, .last = &last, .before = &before };

  /* along the floor's own axes */
  assert_snap (ox_snap_find (job, (OxPoint){ 30.02, 23.05 }, &options), OX_SNAP_SQUARE, 30, 23);
  /* at a right angle to the last side: 5 m along (-3, 4) */
  assert_snap (ox_snap_find (job, (OxPoint){ 21.03, 27.01 }, &options), OX_SNAP_SQUARE, 21, 27);
  /* along the last side: 10 m */
  assert_snap (ox_snap_find (job, (OxPoint){ 31.98, 29.03 }, &options), OX_SNAP_SQUARE, 32, 29);
}

static void
test_in_line_with_first (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (1, 1, "compact");
  OxPoint first = { 20.05, 20.05 };
  OxPoint last = { 27, 30 };
  OxSnapOptions options = { .px_per_m = PX_PER_M, .last = &last, .first = &first };

  /* square to the side before and above the first corner: both at once, off the even lengths */
  assert_snap (ox_snap_find (job, (OxPoint){ 20.1, 30.04 }, &options), OX_SNAP_SQUARE_BOTH, 20.05, 30);
  assert_snap (ox_snap_find (job, (OxPoint){ 20.1, 33.33 }, &options), OX_SNAP_IN_LINE, 20.05, 33.3);
}

static void
test_skips_what_is_dragged (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxSnapOptions options = { .px_per_m = PX_PER_M, .skip_id = job->rooms[0]->id };

  assert_snap (ox_snap_find (job, (OxPoint){ 10.02, 8.01 }, &options), OX_SNAP_GRID, 10, 8);
}

static void
test_steps (void)
{
  g_assert_cmpfloat (ox_snap_step (OX_UNITS_METRES, 1000), ==, 0.01);
  g_assert_cmpfloat (ox_snap_step (OX_UNITS_METRES, 100), ==, 0.1);
  g_assert_cmpfloat (ox_snap_step (OX_UNITS_METRES, 10), ==, 1);
  g_assert_cmpfloat (ox_snap_step (OX_UNITS_METRES, 0.001), ==, 1000);
  g_assert_cmpfloat (ox_snap_step (OX_UNITS_FEET, 1000), ==, 0.0254);
  g_assert_cmpfloat (ox_snap_step (OX_UNITS_FEET, 20), ==, 0.3048);
  for (double px = 0.01; px < 10000; px *= 1.7)
    g_assert_true (ox_snap_step (OX_UNITS_METRES, px) * px >= 6 || px < 0.006);
}

/* Whatever is asked, the answer lies on the grid of stored coordinates, and no further away than radius or half a step.
 */
static void
test_random (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      g_autoptr (OxJob) job = ox_test_floor_random ((guint32) g_test_rand_int_range (0, 200));
      OxPoint at = { g_test_rand_double_range (-5, 30), g_test_rand_double_range (-5, 30) };
      double px = g_test_rand_double_range (5, 500);
      OxSnap snap = ox_snap_find (job, at, &(OxSnapOptions){ .px_per_m = px });
      double most = MAX (OX_SNAP_RADIUS_PX / px, ox_snap_step (job->units, px) * G_SQRT2 / 2);

      g_assert_cmpfloat (snap.at.x, ==, ox_snap (snap.at.x));
      g_assert_cmpfloat (snap.at.y, ==, ox_snap (snap.at.y));
      g_assert_cmpfloat (ox_point_distance (snap.at, at), <=, most + OX_GRID);
    }
}

static void
test_reasons (void)
{
  g_assert_cmpstr (ox_snap_reason (OX_SNAP_GRID), ==, "");
  g_assert_cmpstr (ox_snap_reason (OX_SNAP_NONE), ==, "");
  for (int kind = OX_SNAP_CORNER; kind < OX_SNAP_GRID; kind++)
    g_assert_cmpstr (ox_snap_reason ((OxSnapKind) kind), !=, "");
}

/* A room of 10 m x 8 m with a joint across it: each hold where geometry says it is, and the stronger one wins. */
static void
test_points_of_sides (void)
{
  g_autoptr (OxJob) room = ox_test_floor_rectangle (10, 8, "compact");
  OxPoint ends[] = { { 3, -1 }, { 3, 9 } };
  g_autoptr (OxJoint) joint = ox_joint_new (&(OxJoint){ .id = (char *) "J1", .n = 2, .points = ends });
  g_autoptr (OxJob) job = ox_job_with_joint (room, joint, NULL);
  OxPoint last = { 7.3, 5.2 };
  const struct
  {
    OxPoint at;
    OxSnapKind kind;
    OxPoint to;
  } cases[] = {
    { { 3.05, 0.04 }, OX_SNAP_INTERSECTION, { 3, 0 } }, { { 5.04, 0.05 }, OX_SNAP_MIDDLE, { 5, 0 } },
    { { 10.05, 4.05 }, OX_SNAP_MIDDLE, { 10, 4 } },     { { 2.96, -1.03 }, OX_SNAP_CORNER, { 3, -1 } },
    { { 3.05, 5.17 }, OX_SNAP_PERPENDICULAR, { 3, 5.2 } }, { { 3.05, 6.61 }, OX_SNAP_SIDE, { 3, 6.61 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      OxSnapOptions options = { .px_per_m = 100, .last = &last };
      OxSnap snap = ox_snap_find (job, cases[i].at, &options);

      g_assert_cmpint (snap.kind, ==, cases[i].kind);
      g_assert_cmpfloat_with_epsilon (snap.at.x, cases[i].to.x, 1e-9);
      g_assert_cmpfloat_with_epsilon (snap.at.y, cases[i].to.y, 1e-9);
      g_assert_cmpstr (ox_snap_reason (snap.kind), !=, "");
    }
}

static void
test_steps_of_15_degrees (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxPoint last = { 1, 1 };

  for (guint deg = 0; deg < 360; deg++)
    {
      OxSnapOptions options = { .px_per_m = 100, .last = &last, .steps = TRUE };
      OxPoint at = { 1 + 4 * cos (deg * G_PI / 180), 1 + 4 * sin (deg * G_PI / 180) };
      OxPoint to = ox_point_sub (ox_snap_find (job, at, &options).at, last);
      double turned = atan2 (to.y, to.x) * 180 / G_PI;

      g_assert_cmpfloat_with_epsilon (turned, 15 * round (turned / 15), 0.01);
      g_assert_cmpfloat (fabs (remainder (turned - deg, 360)), <=, 7.51);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/snap/corner-side-grid", test_corner_side_grid);
  g_test_add_func ("/tools/snap/square", test_square);
  g_test_add_func ("/tools/snap/in-line-with-first", test_in_line_with_first);
  g_test_add_func ("/tools/snap/skips-what-is-dragged", test_skips_what_is_dragged);
  g_test_add_func ("/tools/snap/steps", test_steps);
  g_test_add_func ("/tools/snap/points-of-sides", test_points_of_sides);
  g_test_add_func ("/tools/snap/steps-of-15-degrees", test_steps_of_15_degrees);
  g_test_add_func ("/tools/snap/random", test_random);
  g_test_add_func ("/tools/snap/reasons", test_reasons);
  return g_test_run ();
}
