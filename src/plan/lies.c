/* Oxturn: plan/lies - on which strips hose and cord lie while a strip is run.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/lies.h"
#include "plan/station.h"
#include "plan/strip-grid.h"
#include "trade/hose.h"

typedef struct
{
  const OxPlan *plan;
  const OxStripGrid *grid;
  OxReachTree **trees; /* of each station, NULL until asked for and where it stands off the floor */
  GArray *path;        /* OxPoint */
  GArray *lies;        /* OxLie */
} Looking;

/* Places along the way to strip @i that other strips of its coat lie under. */
static void
look_along (const Looking *looking, guint i)
{
  const OxStrip *strips = looking->plan->strips;
  double t = OX_LIE_STEP / 2;
  for (guint k = 1; k < looking->path->len; k++)
    {
      OxPoint a = g_array_index (looking->path, OxPoint, k - 1), b = g_array_index (looking->path, OxPoint, k);
      double length = ox_point_distance (a, b);
      for (; t < length; t += OX_LIE_STEP)
        {
          guint found[2];
          OxPoint p = ox_point_add (a, ox_point_scale (ox_point_sub (b, a), t / length));
          ox_strip_grid_at (looking->grid, p, strips[i].coat, found);
          OxLie lie = { found[0], found[1] };
          if (found[0] != i && found[1] != i && found[0] != G_MAXUINT)
            g_array_append_val (looking->lies, lie);
        }
      t -= length;
    }
}

/* Both ends of strip @i from the station with that index, if any serves it. */
static void
look_from (const Looking *looking, OxReach *reach, guint i, int station)
{
  const OxStrip *strip = &looking->plan->strips[i];
  if (station < 0)
    return;
  if (looking->trees[station] == NULL)
    {
      const OxPlanStation *at = &looking->plan->stations[station];
      OxPoint from = at->at;
      if (!ox_station_step_on (reach, &from))
        return;
      looking->trees[station] = ox_reach_tree_new (reach, from, ox_hose_reach (at->length));
    }
  ox_reach_tree_path (looking->trees[station], strip->a, looking->path);
  look_along (looking, i);
  ox_reach_tree_path (looking->trees[station], strip->b, looking->path);
  look_along (looking, i);
}

OxLies *
ox_lies_new (const OxPlan *plan, OxReach *reach, const OxRun *run)
{
  OxLies *lies = g_new0 (OxLies, 1);
  g_autoptr (OxStripGrid) grid = ox_strip_grid_new (plan->strips, plan->n_strips, plan->job->machine->blast_length);
  g_autoptr (GArray) path = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (OxLie));
  g_autofree OxReachTree **trees = g_new0 (OxReachTree *, plan->n_stations + 1);
  Looking looking = { plan, grid, trees, path, found };
  lies->n = plan->n_strips;
  lies->seconds = OX_LIE_METRES * (plan->job->n_stations > 0 ? OX_LIE_SECONDS : OX_LIE_SECONDS_PROPOSED);
  lies->first = g_new0 (guint, plan->n_strips + 1);
  for (guint i = 0; i < plan->n_strips; i++)
    {
      lies->first[i] = found->len;
      if (ox_run_cancelled (run, NULL))
        continue;
      look_from (&looking, reach, i, plan->strips[i].station);
      look_from (&looking, reach, i, plan->strips[i].supply);
    }
  lies->first[plan->n_strips] = found->len;
  for (guint s = 0; s < plan->n_stations; s++)
    ox_reach_tree_free (trees[s]);
  lies->lies = (OxLie *) (void *) g_array_free (g_steal_pointer (&found), FALSE);
  return lies;
}

void
ox_lies_free (OxLies *lies)
{
  if (lies == NULL)
    return;
  g_free (lies->first);
  g_free (lies->lies);
  g_free (lies);
}

double
ox_lies_unblasted (const OxLies *lies, const guint *order, guint kept)
{
  guint n = 0;
  for (guint i = kept; i < lies->n; i++)
    for (guint k = lies->first[i]; k < lies->first[i + 1]; k++)
      {
        OxLie lie = lies->lies[k];
        n += lie.on >= kept && order[lie.on] > order[i] && (lie.also == G_MAXUINT || order[lie.also] > order[i]);
      }
  return n * OX_LIE_METRES;
}
