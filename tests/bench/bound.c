/* Oxturn: tests/bench/bound - hours that no plan of straight strips can do without.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "bound.h"
#include "plan/cover.h"

#define MOST_CELLS 4e6

/* Sum over the outline of the longer of its two shadows, along and across the lanes. */
static double
shadows (const OxRegion *region, double angle)
{
  double sum = 0;
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0, n = region->rings[r].n; i < n; i++)
      {
        const OxPoint *points = region->points + region->rings[r].start;
        OxPoint e = ox_point_turn (ox_point_sub (points[(i + 1) % n], points[i]), cos (angle), -sin (angle));
        sum += MAX (fabs (e.x), fabs (e.y));
      }
  return sum;
}

static double
transition_hours (const OxMachine *m, double length)
{
  double lane = (m->blast_width - m->min_overlap) / m->walk_speed;
  return MIN (m->swing_s / 60 + lane, length / m->walk_speed) / 60;
}

/* Integral of t (l) / (w l). */
static double
transitions (const OxPlan *plan, const OxMachine *m, double angle)
{
  double cell = MAX ((m->blast_width - m->min_overlap) / 4, sqrt (ox_region_area (plan->blasted) / MOST_CELLS)), sum = 0;
  g_autoptr (OxCover) cover = ox_cover_new (plan->blasted, angle, cell);
  g_autofree guint *rows = g_new0 (guint, cover->n_y), *columns = g_new0 (guint, cover->n_x);
  for (guint j = 0; j < cover->n_y; j++)
    for (guint i = 0; i < cover->n_x; i++)
      if (cover->cells[(gsize) j * cover->n_x + i] == 0)
        {
          rows[j]++;
          columns[i]++;
        }
  for (guint j = 0; j < cover->n_y; j++)
    for (guint i = 0; i < cover->n_x; i++)
      if (cover->cells[(gsize) j * cover->n_x + i] == 0)
        {
          double longest = MAX (rows[j], columns[i]) * cover->cell;
          sum += cover->cell * cover->cell * transition_hours (m, longest) / (m->blast_width * longest);
        }
  return sum;
}

double
bound_hours (const OxPlan *plan)
{
  const OxMachine *m = plan->job->machine;
  if (plan->n_chalks == 0)
    return plan->totals.edge_hours;
  double angle = plan->chalks[0].heading, area = ox_region_area (plan->blasted), w = m->blast_width, o = m->min_overlap;
  double length = MAX (area / w, (area - o * shadows (plan->blasted, angle) / 2) / (w - o));
  double moves = transitions (plan, m, angle) - transition_hours (m, INFINITY);
  return length / m->travel_speed / 60 + MAX (moves, 0) + plan->totals.edge_hours;
}
