/* Oxturn: plan/lies - on which strips a hose lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/lies.h"
#include "plan/station.h"
#include "support/floors.h"
#include "support/ox-test.h"

#define LANES 10

/* Ten lanes of 12 m, 0.3 m wide and next to each other, and a collector on the first one's wall: above x = 6. */
typedef struct
{
  OxJob *job;
  OxPlan plan;
  OxStrip strips[LANES];
  OxPlanStation station;
  OxReach *reach;
} Hall;

static void
hall_make (Hall *hall)
{
  hall->job = ox_test_floor_rectangle (12, 3, "compact");
  g_autoptr (OxRegion) floor = ox_test_region ("POLYGON ((0 0, 12 0, 12 3, 0 3, 0 0))");
  hall->reach = ox_reach_new (floor, 40);
  hall->station = (OxPlanStation){ .id = (char *) "S1", .kind = OX_STATION_COLLECTOR, .at = { 6, 0 }, .length = 30 };
  hall->plan = (OxPlan){ .job = hall->job, .n_strips = LANES, .strips = hall->strips, .n_stations = 1, .stations = &hall->station };
  for (guint i = 0; i < LANES; i++)
    {
      double y = 0.3 * i + 0.15;
      hall->strips[i] = (OxStrip){ .order = i + 1, .coat = 1, .a = { 0.04, y }, .b = { 11.96, y }, .width = 0.3, .supply = -1 };
    }
}

static void
hall_clear (Hall *hall)
{
  ox_job_unref (hall->job);
  ox_reach_free (hall->reach);
}

/* From lane 1 on all of the hose lies on what is blasted. The other way round all of it does on what is not, but for what lies on the strip itself: of a
 * straight hose to a lane that is i lanes off, i of i + 1/2 parts. */
static void
outward_and_inward (void)
{
  Hall hall = { 0 };
  guint outward[LANES], inward[LANES];
  double sum = 0;
  hall_make (&hall);
  g_autoptr (OxLies) lies = ox_lies_new (&hall.plan, hall.reach, NULL);
  for (guint i = 0; i < LANES; i++)
    {
      outward[i] = i;
      inward[i] = LANES - 1 - i;
      sum += hypot (5.96, 0.3 * i + 0.15) * i / (i + 0.5);
    }
  ox_test_near (ox_lies_unblasted (lies, outward, 0), 0, 1e-9);
  ox_test_near (ox_lies_unblasted (lies, inward, 0), sum, LANES * OX_LIE_STEP);
  /* Strips that were there before are blasted. */
  ox_test_near (ox_lies_unblasted (lies, inward, LANES), 0, 1e-9);
  hall_clear (&hall);
}

/* What another coat covers, and a strip that nothing serves, are no matter. */
static void
apart (void)
{
  Hall hall = { 0 };
  hall_make (&hall);
  for (guint i = 0; i < LANES; i++)
    hall.strips[i].coat = i + 1;
  g_autoptr (OxLies) coats = ox_lies_new (&hall.plan, hall.reach, NULL);
  g_assert_cmpuint (coats->first[LANES], ==, 0);
  for (guint i = 0; i < LANES; i++)
    {
      hall.strips[i].coat = 1;
      hall.strips[i].station = -1;
    }
  g_autoptr (OxLies) unserved = ox_lies_new (&hall.plan, hall.reach, NULL);
  g_assert_cmpuint (unserved->first[LANES], ==, 0);
  hall_clear (&hall);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/lies/outward-and-inward", outward_and_inward);
  g_test_add_func ("/plan/lies/apart", apart);
  return g_test_run ();
}
