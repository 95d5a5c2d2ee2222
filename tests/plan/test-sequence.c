/* Oxturn: plan/sequence - plans are worked outward from where the collector stands.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/sequence.h"
#include "judge.h"
#include "plan/station.h"
#include "plan/verify.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxJob *
and_collector (OxJob *base, OxPoint at)
{
  g_autoptr (OxJob) job = base;
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) "", .kind = OX_STATION_COLLECTOR, .at = at, .length = 60 });
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_station (builder, station);
  return ox_job_builder_end (builder);
}

static OxJob *
along_x (OxJob *base)
{
  g_autoptr (OxJob) job = base;
  OxRoom fields = *job->rooms[0];
  fields.direction = (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = 0 };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  return ox_job_builder_end (builder);
}

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  g_assert_cmpuint (breaches->len, ==, 0);
  return plan;
}

/* Lanes along x of an empty hall, from a collector by the wall at @y: how often the next lane is nearer to it than the one before. */
static guint
turns_back (double y)
{
  g_autoptr (OxJob) job = and_collector (along_x (ox_test_floor_rectangle (14, 12, "compact")), (OxPoint){ 7, y });
  g_autoptr (OxPlan) plan = plan_of (job);
  double last = -1;
  guint back = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      double off = fabs (strip->a.y - y);
      if (strip->kind != OX_STRIP_MAIN || ox_strip_length (strip) < 8) /* a short one: laid along with the turnaround zone */
        continue;
      back += off < last - 0.01;
      last = off;
    }
  return back;
}

/* From a collector at the far wall the lanes are worked from there as well as from one at the near wall; from one half way up first to one side, then to
 * the other. */
static void
lanes_outward (void)
{
  g_assert_cmpuint (turns_back (0.3), ==, 0);
  g_assert_cmpuint (turns_back (11.7), ==, 0);
  g_assert_cmpuint (turns_back (6), ==, 1);
}

/* Two rooms with a doorway between: the one with the collector comes first, whichever it is. */
static void
rooms_outward (void)
{
  for (guint side = 0; side < 2; side++)
    {
      g_autoptr (OxJob) job = and_collector (judge_two_rooms (0.5, 1.5), (OxPoint){ side == 0 ? 0.4 : 9.6, 1 });
      g_autoptr (OxPlan) plan = plan_of (job);
      g_assert_cmpuint (plan->strips[0].room, ==, side);
      g_assert_cmpuint (plan->strips[plan->n_strips - 1].room, ==, 1 - side);
    }
}

/* On thirty floors together hose and cord lie on far less floor to be blasted than in the order that knows nothing of them. */
static void
less_under_hose (void)
{
  double before = 0, after = 0;
  for (guint32 seed = 300; seed < 330; seed++)
    {
      g_autoptr (OxJob) floor = ox_test_floor_random (seed);
      OxPoint first = floor->rooms[0]->ring->points[0], next = floor->rooms[0]->ring->points[1];
      g_autoptr (OxJob) job = and_collector (ox_job_ref (floor), (OxPoint){ (first.x + next.x) / 2, (first.y + next.y) / 2 });
      g_autoptr (OxPlan) plan = plan_of (job);
      before += plan->totals.unblasted_before_m;
      after += plan->totals.unblasted_hose_m;
    }
  g_test_message ("%.1f m of hose and cord on floor to be blasted, %.1f m before", after, before);
  g_assert_cmpfloat (after, <, 0.7 * before);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/sequence/lanes-outward", lanes_outward);
  g_test_add_func ("/plan/sequence/rooms-outward", rooms_outward);
  g_test_add_func ("/plan/sequence/less-floor-under-hose", less_under_hose);
  return g_test_run ();
}
