/* Oxturn: job/check-record - the rules of what is marked done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check-private.h"
#include "base/words.h"
#include "job/text.h"

#define METER_MOST 1e6  /* h */
#define WIDTH_MOST 10.0 /* m */

static void
add (GPtrArray *findings, const OxPoint *at, char *text)
{
  ox_finding_add (findings, OX_FINDING_ERROR, "", at, text);
}

/* FALSE for NaN, too */
static gboolean
is_within (double value, double least, double most)
{
  return value >= least && value <= most;
}

static gboolean
point_fits (OxPoint p)
{
  return is_within (p.x, -OX_COORD_MAX, OX_COORD_MAX) && is_within (p.y, -OX_COORD_MAX, OX_COORD_MAX);
}

static void
check_date (const char *date, GPtrArray *findings)
{
  if (!*date || !ox_text_is_date (date))
    add (findings, NULL,
         g_strdup_printf (_ ("“%.40s” is no day of the record; one such as 2026-09-14 is needed"), date));
}

static gboolean
meter_fits (double hours)
{
  return hours == OX_METER_UNREAD || is_within (hours, 0, METER_MOST);
}

static void
check_day (const OxRecordDay *day, GPtrArray *findings)
{
  check_date (day->date, findings);
  if (!meter_fits (day->meter_start_h) || !meter_fits (day->meter_end_h))
    add (findings, NULL,
         g_strdup_printf (_ ("A meter reading of %.40s is out of range; 0 to 1000000 h is allowed"), day->date));
  else if (day->meter_end_h >= 0 && day->meter_end_h < day->meter_start_h)
    add (findings, NULL,
         g_strdup_printf (_ ("The meter of %.40s ends at %g h, before its start at %g h"), day->date, day->meter_end_h,
                          day->meter_start_h));
}

static void
check_strip (const OxDoneStrip *strip, GPtrArray *findings)
{
  check_date (strip->date, findings);
  if (!point_fits (strip->a) || !point_fits (strip->b))
    add (findings, NULL,
         g_strdup_printf (_ ("A strip done runs from %g, %g to %g, %g; coordinates from -10000 to 10000 m are allowed"),
                          strip->a.x, strip->a.y, strip->b.x, strip->b.y));
  else if (ox_point_distance (strip->a, strip->b) < OX_GRID)
    add (findings, &strip->a, g_strdup_printf (_ ("A strip done at %g, %g has no length"), strip->a.x, strip->a.y));
  if (!is_within (strip->width, OX_GRID, WIDTH_MOST))
    add (findings, NULL,
         g_strdup_printf (_ ("The width of a strip done on %.40s is %g m; over 0 to 10 m is allowed"), strip->date,
                          strip->width));
  if (strip->coat > 4)
    add (findings, NULL,
         g_strdup_printf (_ ("A strip done on %.40s is of coat %u; 1 to 4 is allowed"), strip->date, strip->coat));
  if (strip->csp > 10)
    add (findings, NULL,
         g_strdup_printf (_ ("A strip done on %.40s has a profile of CSP %u; 1 to 10 is allowed"), strip->date,
                          strip->csp));
  if (!is_within (strip->depth_mm, 0, 100))
    add (findings, NULL,
         g_strdup_printf (_ ("The texture depth of a strip done on %.40s is %g mm; 0 to 100 mm is allowed"), strip->date,
                          strip->depth_mm));
}

static void
check_edge (const OxDoneEdge *edge, GPtrArray *findings)
{
  check_date (edge->date, findings);
  for (guint i = 0; i < edge->n_rings; i++)
    {
      const OxRing *ring = edge->rings[i];
      OxPoint where = { 0, 0 };
      gboolean fits = TRUE;
      for (guint k = 0; k < ring->n; k++)
        fits = fits && point_fits (ring->points[k]);
      if (!fits)
        add (findings, NULL,
             g_strdup_printf (_ ("Edge work done on %.40s has corners beyond -10000 to 10000 m"), edge->date));
      else if (ring->n < 3)
        add (findings, NULL,
             g_strdup_printf (_ ("An outline of edge work done on %.40s has %u corners; 3 or more are needed"),
                              edge->date, ring->n));
      else if (!ox_ring_is_simple (ring, &where))
        add (findings, &where,
             g_strdup_printf (_ ("The outline of edge work done on %.40s meets itself at %.3f, %.3f"), edge->date,
                              where.x, where.y));
    }
}

/* Counted before anything else is looked at, which takes its time. */
static gboolean
check_counts (const OxRecord *record, GPtrArray *findings)
{
  gsize corners = 0;
  for (guint i = 0; i < record->n_edges; i++)
    for (guint k = 0; k < record->edges[i].n_rings; k++)
      corners += record->edges[i].rings[k]->n;
  if (record->n_days <= OX_RECORD_DAYS_MOST && record->n_strips <= OX_RECORD_STRIPS_MOST
      && record->n_edges <= OX_RECORD_EDGES_MOST && corners <= OX_RECORD_CORNERS_MOST)
    return TRUE;
  add (findings, NULL,
       g_strdup_printf (
           _ ("The record has %u days, %u strips and %u edge areas with %u corners; %d, %d, %d and %d are the most"),
           record->n_days, record->n_strips, record->n_edges, (guint) corners, OX_RECORD_DAYS_MOST,
           OX_RECORD_STRIPS_MOST, OX_RECORD_EDGES_MOST, OX_RECORD_CORNERS_MOST));
  return FALSE;
}

void
ox_check_record (const OxJob *job, GPtrArray *findings)
{
  const OxRecord *record = job->record;
  if (!check_counts (record, findings))
    return;
  for (guint i = 0; i < record->n_days; i++)
    check_day (&record->days[i], findings);
  for (guint i = 0; i < record->n_strips; i++)
    check_strip (&record->strips[i], findings);
  for (guint i = 0; i < record->n_edges; i++)
    check_edge (&record->edges[i], findings);
}
