/* Oxturn: tools/slide - a doorway slid along the wall that it is in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/slide.h"

#include "job/edit.h"

#define SQUARE_ENOUGH 0.02 /* sine of the angle up to which side and doorway run beside one another */

static const OxDoorway *
find_doorway (const OxJob *job, const char *id)
{
  guint i = 0;

  return ox_job_find (job, id, &i) == OX_ITEM_DOORWAY ? job->doorways[i] : NULL;
}

/* FALSE when the side from @a to @b is not the one; else @wall and how far the doorway's middle is from it. */
static gboolean
runs_beside (const OxDoorway *doorway, OxPoint a, OxPoint b, OxDoorwayWall *wall, double *distance)
{
  double length = ox_point_distance (a, b);
  OxPoint along = ox_point_scale (ox_point_sub (b, a), 1 / length);
  OxPoint gap = ox_point_sub (doorway->b, doorway->a);
  double u = ox_point_dot (ox_point_sub (doorway->a, a), along);
  double v = ox_point_dot (ox_point_sub (doorway->b, a), along);

  *wall = (OxDoorwayWall){
    .start = a, .along = along, .length = length, .from = MIN (u, v), .width = hypot (gap.x, gap.y)
  };
  *distance = fabs (ox_point_cross (along, ox_point_sub (doorway->a, a)));
  return fabs (ox_point_cross (along, gap)) <= SQUARE_ENOUGH * wall->width
         && *distance <= doorway->depth / 2 + OX_DOORWAY_BESIDE && (u + v) / 2 >= 0 && (u + v) / 2 <= length;
}

gboolean
ox_doorway_wall (const OxJob *job, const char *id, OxDoorwayWall *wall)
{
  const OxDoorway *doorway = find_doorway (job, id);
  double best = INFINITY;

  for (guint r = 0; doorway != NULL && r < job->n_rooms; r++)
    for (guint i = 0; i < job->rooms[r]->ring->n; i++)
      {
        const OxRing *ring = job->rooms[r]->ring;
        OxDoorwayWall found;
        double distance;

        if (!runs_beside (doorway, ring->points[i], ring->points[(i + 1) % ring->n], &found, &distance)
            || distance >= best)
          continue;
        best = distance;
        *wall = found;
      }
  return isfinite (best);
}

OxJob *
ox_doorway_slide (const OxJob *job, const char *id, double from, GError **error)
{
  OxDoorwayWall wall;
  double by;

  if (!ox_doorway_wall (job, id, &wall))
    return ox_job_ref (job);
  by = CLAMP (from, 0, MAX (wall.length - wall.width, 0)) - wall.from;
  if (fabs (by) < OX_GRID / 2)
    return ox_job_ref (job);
  return ox_job_moved (job, (const char *const[]){ id, NULL }, ox_point_scale (wall.along, by), error);
}

OxJob *
ox_slide_or_move (const OxJob *job, const char *const *ids, OxPoint by, GError **error)
{
  OxDoorwayWall wall;

  if (ids[0] == NULL || ids[1] != NULL || !ox_doorway_wall (job, ids[0], &wall))
    return ox_job_moved (job, ids, by, error);
  return ox_doorway_slide (job, ids[0], wall.from + ox_point_dot (by, wall.along), error);
}
