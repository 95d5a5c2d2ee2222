/* Oxturn: plan/plan - the plan as a value.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/plan.h"
#include "base/words.h"
#include "trade/defaults.h"
#include "trade/edge.h"

G_DEFINE_QUARK (ox-plan-error-quark, ox_plan_error)

static void
clear_plan (gpointer data)
{
  OxPlan *plan = data;
  for (guint i = 0; i < plan->n_moves; i++)
    g_free ((gpointer) plan->moves[i].path);
  for (guint i = 0; i < plan->n_zones; i++)
    {
      g_free (plan->zones[i].id);
      ox_region_unref (plan->zones[i].region);
    }
  for (guint i = 0; i < plan->n_edges; i++)
    {
      g_free (plan->edges[i].id);
      ox_region_unref (plan->edges[i].region);
    }
  for (guint i = 0; i < plan->n_coats; i++)
    ox_region_unref (plan->coats[i]);
  g_free (plan->coats);
  for (guint i = 0; i < plan->n_stations; i++)
    g_free (plan->stations[i].id);
  g_free (plan->stations);
  g_free (plan->strips);
  g_free (plan->paces);
  g_free (plan->moves);
  g_free (plan->zones);
  g_free (plan->edges);
  g_free (plan->chalks);
  g_strfreev (plan->notices);
  g_clear_pointer (&plan->target, ox_region_unref);
  g_clear_pointer (&plan->travel, ox_region_unref);
  g_clear_pointer (&plan->blasted, ox_region_unref);
  ox_job_unref (plan->job);
}

OxPlan *
ox_plan_ref (const OxPlan *plan)
{
  return g_atomic_rc_box_acquire ((gpointer) plan);
}

void
ox_plan_unref (const OxPlan *plan)
{
  if (plan != NULL)
    g_atomic_rc_box_release_full ((gpointer) plan, clear_plan);
}

double
ox_strip_length (const OxStrip *strip)
{
  return ox_point_distance (strip->a, strip->b);
}

double
ox_plan_edge_hours (const OxJob *job, const OxEdge *edge)
{
  const OxEdgeRates rates = { job->rates.edge_m2_per_hour, job->rates.edge_m_per_hour, ox_defaults_get ("edge-narrow")->value };
  return ox_edge_hours (&rates, edge->area, edge->length);
}

void
ox_strip_corners (const OxStrip *strip, double blast_length, OxPoint corners[4])
{
  double length = ox_strip_length (strip);
  OxPoint u = length > 0 ? ox_point_scale (ox_point_sub (strip->b, strip->a), 1 / length)
                         : (OxPoint) { cos (strip->heading), sin (strip->heading) };
  OxPoint along = ox_point_scale (u, blast_length / 2);
  OxPoint left = { -u.y * strip->width / 2, u.x * strip->width / 2 };
  OxPoint behind = ox_point_sub (strip->a, along), ahead = ox_point_add (strip->b, along);
  corners[0] = ox_point_sub (behind, left);
  corners[1] = ox_point_sub (ahead, left);
  corners[2] = ox_point_add (ahead, left);
  corners[3] = ox_point_add (behind, left);
}

OxRegion *
ox_strips_covered (const OxStrip *strips, guint n, OxStripsOf of, double blast_length)
{
  g_autofree OxPoint *corners = g_new (OxPoint, 4 * n + 1);
  guint quads = 0;
  for (guint i = 0; i < n; i++)
    if ((of.room < 0 || strips[i].room == (guint) of.room) && (of.coat == 0 || strips[i].coat == of.coat)
        && (of.kind < 0 || strips[i].kind == (OxStripKind) of.kind))
      ox_strip_corners (&strips[i], blast_length, corners + 4 * quads++);
  return ox_region_union_quads (corners, quads);
}

char *
ox_plan_coat_text (const OxPlan *plan, guint room, guint coat)
{
  const char *title = ox_room_title (plan->job->rooms[room]);
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].room == room && plan->strips[i].coat > 1)
      return g_strdup_printf (_ ("%s, coat %u"), title, coat);
  return g_strdup (title);
}

const char *
ox_strip_kind_name (OxStripKind kind)
{
  return kind == OX_STRIP_MAIN ? "main" : "crosswise";
}

const char *
ox_move_kind_name (OxMoveKind kind)
{
  static const char *const names[] = { "swing", "pull-back", "walk" };
  return names[kind];
}

const char *
ox_cause_name (OxCause cause)
{
  static const char *const names[] = { "wall", "corner", "obstacle", "drop", "narrow", "reach" };
  return names[cause];
}
