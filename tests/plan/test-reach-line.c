/* Oxturn: plan/reach-line against circles, which reach is where nothing is in the way, and against the way itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/reach-line.h"
#include "plan/floor.h"
#include "support/floors.h"
#include "support/ox-test.h"

#define HOSE 30.0
#define REACH 28.5 /* of it, ox_hose_reach() */

/* plan_with: a floor with collectors at those places, its strips planned; (transfer full) */
static OxPlan *
plan_with (OxJob *floor, const OxPoint *places, guint n)
{
  OxJobBuilder *builder = ox_job_builder_new (floor);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("S%u", i + 1);
      g_autoptr (OxStation) station = ox_station_new (
          &(OxStation){ .id = id, .name = (char *) "", .kind = OX_STATION_COLLECTOR, .at = places[i], .length = HOSE });
      ox_job_builder_put_station (builder, station);
    }
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  ox_job_unref (floor);
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

static double
length_of (const GArray *line)
{
  double length = 0;
  for (guint i = 1; i < line->len; i++)
    length += ox_point_distance (g_array_index (line, OxPoint, i - 1), g_array_index (line, OxPoint, i));
  return length;
}

/* A hall of 60 m x 20 m, the collector in the middle of its left wall: the arc from wall to wall, asin (10 / 28.5) to
 * both sides. */
static void
an_arc_across_an_empty_hall (void)
{
  const OxPoint at = { 0, 10 };
  g_autoptr (OxPlan) plan = plan_with (ox_test_floor_rectangle (60, 20, "medium"), &at, 1);
  g_autoptr (OxReachLines) reach = ox_reach_lines_new (plan);
  g_assert_cmpuint (reach->n, ==, 1);
  const GArray *line = reach->lines[0].points;
  for (guint i = 0; i < line->len; i++)
    ox_test_near (ox_point_distance (g_array_index (line, OxPoint, i), at), REACH, 0.01);
  ox_test_near (length_of (line), 2 * REACH * asin (10 / REACH), 0.1);
  OxPoint first = g_array_index (line, OxPoint, 0), last = g_array_index (line, OxPoint, line->len - 1);
  ox_test_near (MIN (first.y, last.y), 0, 0.05);
  ox_test_near (MAX (first.y, last.y), 20, 0.05);
}

/* In the middle of a hall on all sides of which floor is left over: a whole circle, which ends where it begins. */
static void
a_circle_in_the_open (void)
{
  const OxPoint at = { 40, 40 };
  g_autoptr (OxPlan) plan = plan_with (ox_test_floor_rectangle (80, 80, "large"), &at, 1);
  g_autoptr (OxReachLines) reach = ox_reach_lines_new (plan);
  g_assert_cmpuint (reach->n, ==, 1);
  const GArray *line = reach->lines[0].points;
  ox_test_near (length_of (line), 2 * G_PI * REACH, 0.2);
  OxPoint first = g_array_index (line, OxPoint, 0), last = g_array_index (line, OxPoint, line->len - 1);
  ox_test_near (ox_point_distance (first, last), 0, 1e-9);
}

/* Two collectors among columns: no point of the lines is farther from both than the reach, and one of them just reaches
 * it. */
static void
the_way_to_each_point_is_the_reach (void)
{
  const OxPoint at[] = { { 12, 13 }, { 40, 30 } };
  g_autoptr (OxPlan) plan = plan_with (ox_test_floor_columns (70, 48, 0.8, 8, "large"), at, 2);
  g_autoptr (OxReachLines) lines = ox_reach_lines_new (plan);
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  g_autoptr (OxReach) reach = ox_reach_new (floor->hose, 2 * HOSE);
  g_autoptr (OxReachTree) west = ox_reach_tree_new (reach, at[0], 2 * HOSE);
  g_autoptr (OxReachTree) east = ox_reach_tree_new (reach, at[1], 2 * HOSE);
  guint points = 0;
  for (guint l = 0; l < lines->n; l++)
    for (guint i = 0; i < lines->lines[l].points->len; i++, points++)
      {
        OxPoint p = g_array_index (lines->lines[l].points, OxPoint, i);
        ox_test_near (ox_reach_tree_distance (lines->lines[l].station == 0 ? west : east, p), REACH, 0.12);
      }
  g_assert_cmpuint (points, >, 100);
}

static void
no_line_where_all_is_in_reach_or_nothing_reaches (void)
{
  const OxPoint at = { 5, 5 };
  g_autoptr (OxPlan) all = plan_with (ox_test_floor_rectangle (20, 10, "compact"), &at, 1);
  g_autoptr (OxReachLines) none = ox_reach_lines_new (all);
  g_assert_cmpuint (none->n, ==, 0);
  g_autoptr (OxPlan) without = plan_with (ox_test_floor_rectangle (20, 10, "compact"), NULL, 0);
  g_autoptr (OxReachLines) nothing = ox_reach_lines_new (without);
  g_assert_cmpuint (nothing->n, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/reach-line/an-arc-across-an-empty-hall", an_arc_across_an_empty_hall);
  g_test_add_func ("/plan/reach-line/a-circle-in-the-open", a_circle_in_the_open);
  g_test_add_func ("/plan/reach-line/the-way-to-each-point-is-the-reach", the_way_to_each_point_is_the_reach);
  g_test_add_func ("/plan/reach-line/no-line-where-all-is-in-reach-or-nothing-reaches",
                   no_line_where_all_is_in_reach_or_nothing_reaches);
  return g_test_run ();
}
