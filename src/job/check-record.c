/* Oxturn: job/check-record - the rules of what is marked done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check-private.h"
#include "base/shown.h"
#include "base/words.h"
#include "job/text.h"
#include "job/value.h"

static void
add (GPtrArray *findings, const OxPoint *at, char *text)
{
  ox_finding_add (findings, OX_FINDING_ERROR, "", at, text);
}

static void
check_date (const char *date, GPtrArray *findings)
{
  if (!*date || !ox_text_is_date (date))
    add (findings, NULL,
         g_strdup_printf (_ ("“%s” is no day of the record; one such as 2026-09-14 is needed"), ox_shown (date).text));
}

static gboolean
meter_fits (double hours)
{
  return hours == OX_METER_UNREAD || ox_value_is_within (hours, 0, OX_METER_MOST);
}

static void
check_day (const OxRecordDay *day, GPtrArray *findings)
{
  check_date (day->date, findings);
  if (day->machine > OX_MACHINES_MOST)
    add (findings, NULL,
         g_strdup_printf (_ ("A day of the record is that of machine %u; 1 to %d is allowed"), day->machine,
                          OX_MACHINES_MOST));
  if (!meter_fits (day->meter_start_h) || !meter_fits (day->meter_end_h))
    add (findings, NULL,
         g_strdup_printf (_ ("A meter reading of %s is out of range; 0 to 1000000 h is allowed"),
                          ox_shown (day->date).text));
  else if (day->meter_end_h >= 0 && day->meter_end_h < day->meter_start_h)
    add (findings, NULL,
         g_strdup_printf (_ ("The meter of %s ends at %g h, before its start at %g h"), ox_shown (day->date).text,
                          day->meter_end_h, day->meter_start_h));
}

static void
check_strip (const OxDoneStrip *strip, GPtrArray *findings)
{
  check_date (strip->date, findings);
  if (!ox_value_is_place (strip->a) || !ox_value_is_place (strip->b))
    add (findings, NULL,
         g_strdup_printf (_ ("A strip done runs from %g, %g to %g, %g; coordinates from -10000 to 10000 m are allowed"),
                          strip->a.x, strip->a.y, strip->b.x, strip->b.y));
  else if (ox_point_distance (strip->a, strip->b) < OX_GRID)
    add (findings, &strip->a, g_strdup_printf (_ ("A strip done at %g, %g has no length"), strip->a.x, strip->a.y));
  if (!ox_value_is_within (strip->width, OX_GRID, OX_DONE_WIDTH_MOST))
    add (findings, NULL,
         g_strdup_printf (_ ("The width of a strip done on %s is %g m; over 0 to 10 m is allowed"),
                          ox_shown (strip->date).text, strip->width));
  if (strip->coat > 4)
    add (findings, NULL,
         g_strdup_printf (_ ("A strip done on %s is of coat %u; 1 to 4 is allowed"), ox_shown (strip->date).text,
                          strip->coat));
  if (strip->csp > OX_CSP_MOST)
    add (findings, NULL,
         g_strdup_printf (_ ("A strip done on %s has a profile of CSP %u; 1 to 10 is allowed"),
                          ox_shown (strip->date).text, strip->csp));
  if (!ox_value_is_within (strip->depth_mm, 0, OX_TEXTURE_MOST_MM))
    add (findings, NULL,
         g_strdup_printf (_ ("The texture depth of a strip done on %s is %g mm; 0 to 100 mm is allowed"),
                          ox_shown (strip->date).text, strip->depth_mm));
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
        fits = fits && ox_value_is_place (ring->points[k]);
      if (!fits)
        add (findings, NULL,
             g_strdup_printf (_ ("Edge work done on %s has corners beyond -10000 to 10000 m"),
                              ox_shown (edge->date).text));
      else if (ring->n < 3)
        add (findings, NULL,
             g_strdup_printf (_ ("An outline of edge work done on %s has %u corners; 3 or more are needed"),
                              ox_shown (edge->date).text, ring->n));
      else if (!ox_ring_is_simple (ring, &where))
        add (findings, &where,
             g_strdup_printf (_ ("The outline of edge work done on %s meets itself at %.3f, %.3f"),
                              ox_shown (edge->date).text, where.x, where.y));
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
