/* Oxturn: plan/station-places - where a station can stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/station.h"

/* Whether a main strip covers @p. */
static gboolean
is_in_lane (const OxPlan *plan, OxPoint p)
{
  double half_length = plan->job->machine->blast_length / 2;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      double reach = half_length + strip->width;
      if (strip->kind != OX_STRIP_MAIN || p.x < MIN (strip->a.x, strip->b.x) - reach
          || p.x > MAX (strip->a.x, strip->b.x) + reach || p.y < MIN (strip->a.y, strip->b.y) - reach
          || p.y > MAX (strip->a.y, strip->b.y) + reach)
        continue;
      double length = ox_strip_length (strip);
      if (length <= 0)
        continue;
      OxPoint u = ox_point_scale (ox_point_sub (strip->b, strip->a), 1 / length), off = ox_point_sub (p, strip->a);
      double along = ox_point_dot (u, off), across = ox_point_cross (u, off);
      if (along >= -half_length && along <= length + half_length && fabs (across) <= strip->width / 2)
        return TRUE;
    }
  return FALSE;
}

typedef struct
{
  const OxPlan *plan;
  const OxReach *reach;
  gboolean anywhere;
  GArray *places;
  guint ring;     /* first place of the ring that is being followed */
} Gather;

static void
add_place (const Gather *gather, OxPoint p)
{
  p = ox_point_snap (p);
  if (ox_region_contains (gather->plan->travel, p) && ox_reach_holds (gather->reach, p)
      && (gather->anywhere || !is_in_lane (gather->plan, p)))
    g_array_append_val (gather->places, p);
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
      OxPoint p = ox_point_add (ox_point_add (a, ox_point_scale (u, t)), off);
      if (!is_crowded (gather, p, step))
        add_place (gather, p);
    }
}

GArray *
ox_station_places (const OxPlan *plan, const OxReach *reach, double step, gboolean anywhere)
{
  Gather gather = { plan, reach, anywhere, g_array_new (FALSE, FALSE, sizeof (OxPoint)), 0 };
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
