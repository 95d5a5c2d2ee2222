/* Oxturn: estimate/left
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/left.h"
#include <stdio.h>
#include <string.h>

static gboolean
is_begun (const OxPlan *plan)
{
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].done > 0)
      return TRUE;
  for (guint i = 0; i < plan->n_edges; i++)
    if (plan->edges[i].done > 0)
      return TRUE;
  return FALSE;
}

static const char *
later (const char *a, const char *b)
{
  return strcmp (a, b) >= 0 ? a : b;
}

/* "" without a date */
static const char *
last_day (const OxRecord *record)
{
  const char *last = "";
  for (guint i = 0; i < record->n_days; i++)
    last = later (last, record->days[i].date);
  for (guint i = 0; i < record->n_strips; i++)
    last = later (last, record->strips[i].date);
  for (guint i = 0; i < record->n_edges; i++)
    last = later (last, record->edges[i].date);
  return last;
}

OxWork *
ox_left_work (const OxPlan *plan, const OxWorkRules *rules)
{
  int year, month, date;
  OxWorkRules left = *rules;
  char next[11] = "";
  if (!is_begun (plan))
    return NULL;
  if (sscanf (last_day (plan->job->record), "%4d-%2d-%2d", &year, &month, &date) == 3 && year >= 1 && month >= 1
      && date >= 1 && g_date_valid_dmy ((GDateDay) date, month, (GDateYear) year))
    {
      g_autoptr (GDate) at = g_date_new_dmy ((GDateDay) date, month, (GDateYear) year);
      g_date_add_days (at, 1);
      g_snprintf (next, sizeof next, "%04u-%02u-%02u", (guint) g_date_get_year (at) % 10000,
                  (guint) g_date_get_month (at) % 100, (guint) g_date_get_day (at) % 100);
    }
  left.left = TRUE;
  left.first_day = later (rules->first_day, next);
  return ox_work_new (plan, &left);
}

/* Target that done strips cover with all its coats. */
static OxRegion *
done_floor (const OxPlan *plan)
{
  g_autofree OxStrip *done = g_new (OxStrip, plan->n_strips + 1);
  guint n = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].done > 0)
      done[n++] = plan->strips[i];
  OxRegion *floor = ox_region_ref (plan->target);
  for (guint k = 0; k < plan->n_coats; k++)
    {
      g_autoptr (OxRegion) covered
          = ox_strips_covered (done, n, (OxStripsOf){ -1, k + 1, -1 }, plan->job->machine->blast_length);
      g_autoptr (OxRegion) missed = ox_region_difference (plan->coats[k], covered);
      OxRegion *rest = ox_region_difference (floor, missed);
      ox_region_unref (floor);
      floor = rest;
    }
  return floor;
}

double *
ox_left_areas (const OxPlan *plan, const double *room_m2)
{
  const OxJob *job = plan->job;
  g_autoptr (OxRegion) floor = done_floor (plan);
  double *left = g_new0 (double, job->n_rooms + 1);
  for (guint i = 0; i < job->n_rooms; i++)
    {
      g_autoptr (OxRegion) ground = ox_region_new_ring (job->rooms[i]->ring);
      g_autoptr (OxRegion) within = ox_region_intersection (ground, floor);
      left[i] = room_m2[i] - ox_region_area (within);
    }
  for (guint i = 0; i < plan->n_edges; i++)
    if (plan->edges[i].done > 0)
      left[plan->edges[i].room] -= plan->edges[i].area;
  for (guint i = 0; i < job->n_rooms; i++)
    left[i] = MAX (left[i], 0);
  return left;
}
