/* Oxturn: plan/station - what is in reach, what is flagged, what is proposed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/station.h"
#include "base/notice.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include <string.h>

static OxJob *
with_station (OxJob *job, const char *id, OxStationKind kind, OxPoint at, double length)
{
  g_autoptr (OxJob) before = job;
  g_autoptr (OxStation) station = ox_station_new (
      &(OxStation){ .id = (char *) id, .name = (char *) "", .kind = kind, .at = at, .length = length });
  OxJobBuilder *builder = ox_job_builder_new (before);
  ox_job_builder_put_station (builder, station);
  return ox_job_builder_end (builder);
}

static OxJob *
with_machine_hose (OxJob *job, double length)
{
  g_autoptr (OxJob) before = job;
  g_autoptr (OxMachine) machine = ox_machine_copy (before->machine);
  machine->hose_length = length;
  OxJobBuilder *builder = ox_job_builder_new (before);
  ox_job_builder_set_machine (builder, machine);
  return ox_job_builder_end (builder);
}

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (plan->n_strips, >, 0);
  return plan;
}

static gboolean
has_notice (const OxPlan *plan, const char *words)
{
  for (guint i = 0; plan->notices[i] != NULL; i++)
    {
      g_autofree char *text = ox_notice_text (plan->notices[i]);
      if (strstr (text, words) != NULL)
        return TRUE;
    }
  return FALSE;
}

/* On an empty convex floor ways are straight, and the farther end of a strip is its farthest point. */
static double
straight_way (const OxStrip *strip, OxPoint from)
{
  return MAX (ox_point_distance (strip->a, from), ox_point_distance (strip->b, from));
}

/* Whoever serves a strip reaches it, and is the nearest of its kind that does; counts and farthest ways add up. */
static void
check_served (const OxPlan *plan, gboolean straight)
{
  for (guint s = 0; s < plan->n_stations; s++)
    {
      const OxPlanStation *station = &plan->stations[s];
      guint strips = 0;
      double farthest = 0;
      for (guint i = 0; i < plan->n_strips; i++)
        {
          const OxStrip *strip = &plan->strips[i];
          gboolean hose = station->kind == OX_STATION_COLLECTOR;
          double way = hose ? strip->hose_m : strip->cord_m;
          if ((hose ? strip->station : strip->supply) != (int) s)
            continue;
          strips++;
          farthest = MAX (farthest, way);
          g_assert_cmpfloat (way, >=, straight_way (strip, station->at) - 0.006);
          if (straight)
            ox_test_near (way, straight_way (strip, station->at), 0.006);
          g_assert_cmpfloat (way, <=, station->length - MAX (1, 0.05 * station->length) + 0.006);
        }
      g_assert_cmpuint (station->strips, ==, strips);
      ox_test_near (station->farthest_m, farthest, 1e-9);
    }
}

static void
all_in_reach (void)
{
  g_autoptr (OxJob) job = with_station (ox_test_floor_rectangle (20, 10, "compact"), "S1", OX_STATION_COLLECTOR,
                                        (OxPoint){ 10, 0.3 }, 30);
  g_autoptr (OxPlan) plan = plan_of (job);
  check_served (plan, TRUE);
  g_assert_cmpuint (plan->totals.out_of_reach, ==, 0);
  for (guint i = 0; i < plan->n_strips; i++)
    g_assert_cmpint (plan->strips[i].station, ==, 0);
}

/* A hose of 11 m reaches 10: what lies farther is flagged, and proposed places serve just that. */
static void
short_hose (void)
{
  OxPoint at = { 0.4, 5 };
  g_autoptr (OxJob) job
      = with_station (ox_test_floor_rectangle (20, 10, "compact"), "S1", OX_STATION_COLLECTOR, at, 11);
  g_autoptr (OxPlan) plan = plan_of (job);
  guint flagged = 0;
  check_served (plan, TRUE);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      gboolean far = straight_way (strip, at) > 10;
      g_assert_true (strip->out_of_reach == far);
      g_assert_true (far == (strip->station != 0));
      g_assert_cmpint (strip->station, >=, 0);
      flagged += far;
    }
  g_assert_cmpuint (flagged, >, 0);
  g_assert_cmpuint (plan->totals.out_of_reach, ==, flagged);
  g_assert_true (has_notice (plan, "out of reach of the hose"));
}

static void
no_station (void)
{
  g_autoptr (OxJob) job = with_machine_hose (ox_test_floor_columns (24, 40, 0.5, 8, "compact"), 26);
  g_autoptr (OxPlan) plan = plan_of (job);
  guint collectors = 0;
  check_served (plan, FALSE);
  g_assert_cmpuint (plan->totals.out_of_reach, ==, 0);
  g_assert_true (has_notice (plan, "No collector is placed"));
  for (guint i = 0; i < plan->n_strips; i++)
    {
      g_assert_cmpint (plan->strips[i].station, >=, 0);
      g_assert_cmpint (plan->strips[i].supply, >=, 0);
    }
  for (guint s = 0; s < plan->n_stations; s++)
    {
      const OxPlanStation *station = &plan->stations[s];
      g_assert_true (station->proposed);
      g_assert_cmpuint (station->strips, >, 0);
      g_assert_true (ox_region_contains (plan->travel, station->at));
      collectors += station->kind == OX_STATION_COLLECTOR;
    }
  g_assert_cmpuint (collectors, >, 0);
}

/* Lanes of 60 m are longer than a hose of 15 m reaches to both sides: nothing to propose for them, and said so. */
static void
long_lanes (void)
{
  OxJob *hall = ox_test_floor_rectangle (60, 3, "compact");
  g_autoptr (OxJob) job = with_machine_hose (hall, 15);
  g_autoptr (OxPlan) plan = plan_of (job);
  guint none = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      none += plan->strips[i].station < 0;
      g_assert_true (plan->strips[i].out_of_reach == (plan->strips[i].station < 0));
      if (ox_strip_length (&plan->strips[i]) > 2 * 14)
        g_assert_cmpint (plan->strips[i].station, <, 0);
    }
  g_assert_cmpuint (none, >, 0);
  g_assert_cmpuint (plan->totals.out_of_reach, ==, none);
  g_assert_true (has_notice (plan, "take a longer hose"));
}

/* In one empty room of 6 x 5 m one station of each kind does. */
static void
fewest (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 5, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->n_stations, ==, 2);
  g_assert_cmpstr (plan->stations[0].id, ==, "P1");
  g_assert_cmpstr (plan->stations[1].id, ==, "P2");
}

static void
off_the_floor (void)
{
  g_autoptr (OxJob) job
      = with_station (ox_test_floor_rectangle (8, 6, "compact"), "S1", OX_STATION_COLLECTOR, (OxPoint){ -3, 3 }, 30);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_assert_cmpuint (plan->totals.out_of_reach, ==, plan->n_strips);
  g_assert_cmpuint (plan->stations[0].strips, ==, 0);
  g_assert_true (has_notice (plan, "S1 stands off the floor"));
  /* In the wall itself it is taken for standing at it. */
  g_autoptr (OxJob) wall
      = with_station (ox_test_floor_rectangle (8, 6, "compact"), "S1", OX_STATION_COLLECTOR, (OxPoint){ -0.1, 3 }, 30);
  g_autoptr (OxPlan) plugged = plan_of (wall);
  g_assert_cmpuint (plugged->totals.out_of_reach, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/station/a-long-hose-reaches-all", all_in_reach);
  g_test_add_func ("/plan/station/what-a-short-hose-misses-is-flagged", short_hose);
  g_test_add_func ("/plan/station/without-stations-places-are-proposed", no_station);
  g_test_add_func ("/plan/station/a-small-room-needs-one", fewest);
  g_test_add_func ("/plan/station/lanes-longer-than-the-hose", long_lanes);
  g_test_add_func ("/plan/station/off-the-floor", off_the_floor);
  return g_test_run ();
}
