/* Oxturn: plan/plan: the plan as a value, names and corners.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/plan.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
names (void)
{
  g_assert_cmpstr (ox_strip_kind_name (OX_STRIP_MAIN), ==, "main");
  g_assert_cmpstr (ox_strip_kind_name (OX_STRIP_CROSSWISE), ==, "crosswise");
  g_assert_cmpstr (ox_move_kind_name (OX_MOVE_SWING), ==, "swing");
  g_assert_cmpstr (ox_move_kind_name (OX_MOVE_PULL_BACK), ==, "pull-back");
  g_assert_cmpstr (ox_move_kind_name (OX_MOVE_WALK), ==, "walk");
  g_assert_cmpstr (ox_cause_name (OX_CAUSE_WALL), ==, "wall");
  g_assert_cmpstr (ox_cause_name (OX_CAUSE_CORNER), ==, "corner");
  g_assert_cmpstr (ox_cause_name (OX_CAUSE_OBSTACLE), ==, "obstacle");
  g_assert_cmpstr (ox_cause_name (OX_CAUSE_DROP), ==, "drop");
  g_assert_cmpstr (ox_cause_name (OX_CAUSE_NARROW), ==, "narrow");
  g_assert_cmpstr (ox_cause_name (OX_CAUSE_REACH), ==, "reach");
}

/* From (1, 2) along the direction 3 : 4 for 5 m, 0.2 m wide, with 0.1 m of pattern along: 0.05 m beyond both ends. */
static void
corners (void)
{
  OxStrip strip = { .a = { 1, 2 }, .b = { 4, 6 }, .heading = atan2 (4, 3), .width = 0.2 };
  const OxPoint want[4] = { { 1 - 0.03 + 0.08, 2 - 0.04 - 0.06 },
                            { 4 + 0.03 + 0.08, 6 + 0.04 - 0.06 },
                            { 4 + 0.03 - 0.08, 6 + 0.04 + 0.06 },
                            { 1 - 0.03 - 0.08, 2 - 0.04 + 0.06 } };
  OxPoint out[4];
  ox_test_near (ox_strip_length (&strip), 5, 1e-12);
  ox_strip_corners (&strip, 0.1, out);
  for (guint i = 0; i < 4; i++)
    ox_test_near (ox_point_distance (out[i], want[i]), 0, 1e-9);
}

/* A strip of no length looks where its heading says. */
static void
spot (void)
{
  OxStrip strip = { .a = { 1, 2 }, .b = { 1, 2 }, .heading = G_PI / 2, .width = 0.2 };
  OxPoint out[4];
  ox_strip_corners (&strip, 0.1, out);
  ox_test_near (ox_point_distance (out[0], (OxPoint){ 1.1, 1.95 }), 0, 1e-9);
  ox_test_near (ox_point_distance (out[2], (OxPoint){ 0.9, 2.05 }), 0, 1e-9);
}

/* A plan holds its job and stays until the last reference goes. */
static void
references (void)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_test_floor_rectangle (5, 3, "medium");
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  ox_job_unref (job);
  OxPlan *other = ox_plan_ref (plan);
  g_assert_true (other == plan);
  ox_plan_unref (plan);
  g_assert_cmpuint (other->job->n_rooms, ==, 1);
  g_assert_cmpuint (other->totals.strips, ==, other->n_strips);
  ox_plan_unref (other);
  ox_plan_unref (NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/plan/names", names);
  g_test_add_func ("/plan/plan/corners", corners);
  g_test_add_func ("/plan/plan/spot", spot);
  g_test_add_func ("/plan/plan/references", references);
  return g_test_run ();
}
