/* Oxturn: session/plan-words - what a strip, an edge area or a turnaround zone of a plan says of itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/plan-words.h"

#include <glib/gi18n-lib.h>

#define STRIP_PREFIX "strip-"

const OxStrip *
ox_plan_strip_of (const OxPlan *plan, const char *id)
{
  guint64 order;

  if (!g_str_has_prefix (id, STRIP_PREFIX)
      || !g_ascii_string_to_unsigned (id + strlen (STRIP_PREFIX), 10, 1, plan->n_strips, &order, NULL))
    return NULL;
  return &plan->strips[order - 1];
}

static const OxEdge *
edge_of (const OxPlan *plan, const char *id)
{
  for (guint i = 0; i < plan->n_edges; i++)
    if (g_str_equal (plan->edges[i].id, id))
      return &plan->edges[i];
  return NULL;
}

static const OxZone *
zone_of (const OxPlan *plan, const char *id)
{
  for (guint i = 0; i < plan->n_zones; i++)
    if (g_str_equal (plan->zones[i].id, id))
      return &plan->zones[i];
  return NULL;
}

static char *
strip_words (const OxPlan *plan, const OxStrip *strip)
{
  g_autofree char *length = ox_units_length_text (plan->job->units, ox_strip_length (strip), TRUE);
  const char *room = plan->job->rooms[strip->room]->name;

  if (strip->coat > 1)
    return g_strdup_printf (_ ("Strip %u of coat %u in %s, lane %u: %s, %.1f min"), strip->order, strip->coat, room, strip->lane,
                            length, strip->minutes);
  if (strip->kind == OX_STRIP_MAIN)
    return g_strdup_printf (_ ("Strip %u in %s, lane %u: %s, %.1f min"), strip->order, room, strip->lane, length,
                            strip->minutes);
  return g_strdup_printf (_ ("Crosswise strip %u in %s, lane %u: %s, %.1f min"), strip->order, room, strip->lane,
                          length, strip->minutes);
}

static char *
edge_words (const OxPlan *plan, const OxEdge *edge)
{
  static const char *const causes[] = {
    [OX_CAUSE_WALL] = N_ ("along a wall"),    [OX_CAUSE_CORNER] = N_ ("in a corner"),
    [OX_CAUSE_OBSTACLE] = N_ ("at an obstacle"), [OX_CAUSE_DROP] = N_ ("at a drop"),
    [OX_CAUSE_NARROW] = N_ ("where the machine does not fit"), [OX_CAUSE_REACH] = N_ ("out of reach of the stations"),
  };
  g_autofree char *area = ox_units_area_text (plan->job->units, edge->area);
  g_autofree char *length = ox_units_length_text (plan->job->units, edge->length, TRUE);

  return g_strdup_printf (_ ("Edge work %s, %s: %s, %s long, %.1f min by hand"), edge->id, _ (causes[edge->cause]),
                          area, length, ox_plan_edge_hours (plan->job, edge) * 60);
}

char *
ox_plan_words (const OxPlan *plan, const char *id)
{
  const OxStrip *strip = ox_plan_strip_of (plan, id);
  const OxEdge *edge = edge_of (plan, id);
  const OxZone *zone = zone_of (plan, id);
  g_autofree char *area = zone != NULL ? ox_units_area_text (plan->job->units, zone->area) : NULL;

  if (strip != NULL)
    return strip_words (plan, strip);
  if (edge != NULL)
    return edge_words (plan, edge);
  return zone != NULL ? g_strdup_printf (_ ("Turnaround zone %s: %s"), zone->id, area) : NULL;
}

gboolean
ox_plan_place (const OxPlan *plan, const char *id, OxPoint *at)
{
  const OxStrip *strip = ox_plan_strip_of (plan, id);
  const OxEdge *edge = edge_of (plan, id);
  const OxZone *zone = zone_of (plan, id);

  if (strip != NULL)
    *at = (OxPoint){ (strip->a.x + strip->b.x) / 2, (strip->a.y + strip->b.y) / 2 };
  else if (edge != NULL || zone != NULL)
    *at = ox_region_label_point (edge != NULL ? edge->region : zone->region, NULL);
  return strip != NULL || edge != NULL || zone != NULL;
}

char **
ox_plan_ids (const OxPlan *plan)
{
  GPtrArray *ids = g_ptr_array_new ();

  for (guint i = 0; i < plan->n_strips; i++)
    g_ptr_array_add (ids, g_strdup_printf (STRIP_PREFIX "%u", plan->strips[i].order));
  for (guint i = 0; i < plan->n_edges; i++)
    g_ptr_array_add (ids, g_strdup (plan->edges[i].id));
  for (guint i = 0; i < plan->n_zones; i++)
    g_ptr_array_add (ids, g_strdup (plan->zones[i].id));
  g_ptr_array_add (ids, NULL);
  return (char **) g_ptr_array_free (ids, FALSE);
}
