/* Oxturn: plan/station-places - where a station can stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/station.h"
#include "plan/lane.h"
#include "plan/strip-grid.h"

#define ASIDE 0.25 /* m between the places that are tried beside one that lies in a lane */

/* The main strips alone, as if all were of the first coat. */
static GArray *
main_strips (const OxPlan *plan)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (OxStrip));
  for (guint i = 0; i < plan->n_strips; i++)
    {
      OxStrip strip = plan->strips[i];
      strip.coat = 1;
      if (strip.kind == OX_STRIP_MAIN)
        g_array_append_val (list, strip);
    }
  return list;
}

typedef struct
{
  const OxPlan *plan;
  const OxReach *reach;
  gboolean anywhere;
  GArray *places;
  const OxStripGrid *lanes; /* main strips */
  guint ring;     /* first place of the ring that is being followed */
} Gather;

static gboolean
is_usable (const Gather *gather, OxPoint p)
{
  guint found[2] = { G_MAXUINT, G_MAXUINT };
  if (!gather->anywhere)
    ox_strip_grid_at (gather->lanes, p, 1, found);
  return found[0] == G_MAXUINT && ox_region_contains (gather->plan->travel, p) && ox_reach_holds (gather->reach, p);
}

static gboolean
add_place (const Gather *gather, OxPoint p)
{
  p = ox_point_snap (p);
  if (!is_usable (gather, p))
    return FALSE;
  g_array_append_val (gather->places, p);
  return TRUE;
}

/* Whether another place of the same ring is as near as half a step: a column has one or two, not one a side. */
static gboolean
is_crowded (const Gather *gather, OxPoint p, double step)
{
  for (guint i = gather->ring; i < gather->places->len; i++)
    if (ox_point_distance (g_array_index (gather->places, OxPoint, i), p) < step / 2)
      return TRUE;
  return FALSE;
}

/* The place t.lo m on from @p along @u, or the nearest one to it that can be used: up to half a step to either side, and no farther on than t.hi. */
static void
add_near (const Gather *gather, OxPoint p, OxPoint u, OxSpan t, double step)
{
  for (double off = 0; off < MAX (step / 2, ASIDE / 2); off += ASIDE)
    for (int way = 1; way >= (off > 0 ? -1 : 1); way -= 2)
      {
        double at = t.lo + way * off;
        if (at >= 0 && at <= t.hi && add_place (gather, ox_point_add (p, ox_point_scale (u, at))))
          return;
      }
}

/* Places along the side @a-@b with the floor on its left: at both ends and in between. */
static void
add_along (const Gather *gather, OxPoint a, OxPoint b, double step)
{
  double length = ox_point_distance (a, b), margin = MIN (OX_STATION_OFF, length / 2);
  if (length < 0.2)
    return;
  OxPoint u = ox_point_scale (ox_point_sub (b, a), 1 / length);
  OxPoint off = { -u.y * OX_STATION_OFF, u.x * OX_STATION_OFF };
  guint n = (guint) ceil (MAX (length - 2 * margin, 0) / step);
  for (guint i = 0; i <= n; i++)
    {
      double t = n > 0 ? margin + (length - 2 * margin) * i / n : length / 2;
      OxPoint start = ox_point_add (a, off);
      if (!is_crowded (gather, ox_point_add (start, ox_point_scale (u, t)), step))
        add_near (gather, start, u, (OxSpan){ t, length }, step);
    }
}

GArray *
ox_station_places (const OxPlan *plan, const OxReach *reach, double step, gboolean anywhere)
{
  g_autoptr (GArray) mains = main_strips (plan);
  g_autoptr (OxStripGrid) lanes
      = ox_strip_grid_new ((const OxStrip *) (const void *) mains->data, mains->len, plan->job->machine->blast_length);
  Gather gather = { plan, reach, anywhere, g_array_new (FALSE, FALSE, sizeof (OxPoint)), lanes, 0 };
  const OxRegion *travel = plan->travel;
  for (guint r = 0; r < travel->n_rings; r++)
    {
      const OxPoint *points = travel->points + travel->rings[r].start;
      gather.ring = gather.places->len;
      for (guint i = 0, n = travel->rings[r].n; i < n; i++)
        add_along (&gather, points[i], points[(i + 1) % n], step);
    }
  OxBox box = ox_region_box (travel);
  for (double y = box.y0 + step / 2; anywhere && y < box.y1; y += step)
    for (double x = box.x0 + step / 2; x < box.x1; x += step)
      add_place (&gather, (OxPoint){ x, y });
  return gather.places;
}
