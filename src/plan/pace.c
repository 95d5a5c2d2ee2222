/* Oxturn: plan/pace - the walking speed from place to place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/pace.h"
#include "trade/production.h"
#include <stdlib.h>

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Adds where the line from @a to @b crosses the ring, as shares of the way. */
static void
add_crossings (const OxRing *ring, OxPoint a, OxPoint b, GArray *at)
{
  OxPoint d = ox_point_sub (b, a);
  for (guint i = 0; i < ring->n; i++)
    {
      OxPoint p = ring->points[i], e = ox_point_sub (ring->points[(i + 1) % ring->n], p);
      double across = ox_point_cross (d, e);
      if (across == 0)
        continue;
      double t = ox_point_cross (ox_point_sub (p, a), e) / across, s = ox_point_cross (ox_point_sub (p, a), d) / across;
      if (t > 0 && t < 1 && s >= 0 && s <= 1)
        g_array_append_val (at, t);
    }
}

static double
speed_at (const OxJob *job, OxPoint p)
{
  double slowest = INFINITY;
  for (guint i = 0; i < job->n_conditions; i++)
    if (job->conditions[i]->speed_m_per_min > 0 && job->conditions[i]->speed_m_per_min < slowest
        && ox_ring_contains (job->conditions[i]->ring, p))
      slowest = job->conditions[i]->speed_m_per_min;
  return isinf (slowest) ? job->machine->travel_speed : slowest;
}

void
ox_paces_cut (const OxJob *job, OxPoint a, OxPoint b, GArray *out)
{
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (double));
  double length = ox_point_distance (a, b), one = 1, from = 0;
  for (guint i = 0; i < job->n_conditions; i++)
    if (job->conditions[i]->speed_m_per_min > 0)
      add_crossings (job->conditions[i]->ring, a, b, at);
  g_array_append_val (at, one);
  qsort (at->data, at->len, sizeof (double), compare_doubles);
  OxPace *last = NULL;
  for (guint i = 0; i < at->len; i++)
    {
      double to = g_array_index (at, double, i);
      OxPace pace = { (to - from) * length, speed_at (job, ox_point_add (a, ox_point_scale (ox_point_sub (b, a), (from + to) / 2))) };
      if (last == NULL && pace.length < OX_PACE_LEAST && to < 1)
        continue;
      from = to;
      if (last != NULL && (pace.speed == last->speed || pace.length < OX_PACE_LEAST))
        last->length += pace.length;
      else
        {
          g_array_append_val (out, pace);
          last = &g_array_index (out, OxPace, out->len - 1);
        }
    }
}

double
ox_paces_minutes (const OxPace *paces, guint n)
{
  double minutes = 0;
  for (guint i = 0; i < n; i++)
    minutes += ox_production_minutes (paces[i].length, paces[i].speed);
  return minutes;
}

static int
compare_speeds (gconstpointer a, gconstpointer b)
{
  const OxCondition *p = *(const OxCondition *const *) a, *q = *(const OxCondition *const *) b;
  return (p->speed_m_per_min > q->speed_m_per_min) - (p->speed_m_per_min < q->speed_m_per_min);
}

static double
hours (const OxMachine *machine, const OxRegion *floor, double speed)
{
  return ox_region_area (floor) / ox_production_area_per_hour (machine->blast_width, machine->min_overlap, speed, 1);
}

double
ox_paces_ideal_hours (const OxJob *job, const OxRegion *floor)
{
  g_autoptr (GPtrArray) slow = g_ptr_array_new ();
  g_autoptr (OxRegion) rest = ox_region_ref (floor);
  double sum = 0;
  for (guint i = 0; i < job->n_conditions; i++)
    if (job->conditions[i]->speed_m_per_min > 0)
      g_ptr_array_add (slow, job->conditions[i]);
  /* Slowest first: what lies in several areas goes to the slowest. */
  g_ptr_array_sort (slow, compare_speeds);
  for (guint i = 0; i < slow->len; i++)
    {
      const OxCondition *condition = g_ptr_array_index (slow, i);
      g_autoptr (OxRegion) area = ox_region_new_ring (condition->ring);
      g_autoptr (OxRegion) within = ox_region_intersection (rest, area);
      OxRegion *beyond = ox_region_difference (rest, area);
      sum += hours (job->machine, within, condition->speed_m_per_min);
      ox_region_unref (rest);
      rest = beyond;
    }
  return sum + hours (job->machine, rest, job->machine->travel_speed);
}
