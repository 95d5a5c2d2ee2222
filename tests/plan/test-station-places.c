/* Oxturn: plan/station-places - on floor that a crew can use.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/station.h"
#include "support/floors.h"
#include "support/ox-test.h"

static double
off_outline (const OxRegion *region, OxPoint p)
{
  double best = INFINITY;
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0, n = region->rings[r].n; i < n; i++)
      {
        const OxPoint *points = region->points + region->rings[r].start;
        best = MIN (best, ox_point_segment_distance (p, points[i], points[(i + 1) % n], NULL));
      }
  return best;
}

static gboolean
is_covered (const OxPlan *plan, OxPoint p)
{
  for (guint i = 0; i < plan->n_strips; i++)
    {
      OxPoint corners[4];
      ox_strip_corners (&plan->strips[i], plan->job->machine->blast_length, corners);
      g_autoptr (OxRegion) covered = ox_region_new_points (corners, 4);
      if (plan->strips[i].kind == OX_STRIP_MAIN && ox_region_contains (covered, p))
        return TRUE;
    }
  return FALSE;
}

static void
usable (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 16, 0.5, 8, "compact");
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, NULL);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  g_autoptr (OxReach) reach = ox_reach_new (floor->hose, 30);
  g_autoptr (GArray) places = ox_station_places (plan, reach, 2, FALSE);
  g_autoptr (GArray) anywhere = ox_station_places (plan, reach, 2, TRUE);
  g_assert_cmpuint (places->len, >, 0);
  g_assert_cmpuint (anywhere->len, >, places->len);
  for (guint i = 0; i < places->len; i++)
    {
      OxPoint p = g_array_index (places, OxPoint, i);
      g_assert_true (ox_region_contains (plan->travel, p));
      g_assert_cmpfloat (off_outline (plan->travel, p), <, OX_STATION_OFF + 0.001);
      g_assert_false (is_covered (plan, p));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/station-places/near-walls-and-off-the-lanes", usable);
  return g_test_run ();
}
