/* Oxturn: file/summary - the machine, the rates and the totals of a plan as JSON (RFC 8259).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/number.h"
#include "file/tables.h"
#include "record/progress.h"

/* Hours keep enough decimals for sums over the tables to be checked to 1e-6 h. */
#define DECIMALS 9

typedef struct
{
  const char *key;
  double value;
} Figure;

static void
add_object (GString *json, const char *key, const Figure *figures, guint n)
{
  g_string_append_printf (json, "  \"%s\": {\n", key);
  for (guint i = 0; i < n; i++)
    {
      g_string_append_printf (json, "    \"%s\": ", figures[i].key);
      ox_number_append (json, figures[i].value, DECIMALS);
      g_string_append (json, i + 1 < n ? ",\n" : "\n");
    }
  g_string_append (json, "  },\n");
}

static void
add_machine (GString *json, const OxMachine *machine)
{
  const Figure figures[] = {
    { "blast_width_m", machine->blast_width },
    { "blast_length_m", machine->blast_length },
    { "front_m", machine->front },
    { "rear_m", machine->rear },
    { "left_m", machine->left },
    { "right_m", machine->right },
    { "wall_gap_m", machine->wall_gap },
    { "min_overlap_m", machine->min_overlap },
    { "turn_radius_m", machine->turn_radius },
    { "min_strip_m", machine->min_strip },
  };
  add_object (json, "machine", figures, G_N_ELEMENTS (figures));
}

static void
add_rates (GString *json, const OxJob *job)
{
  const Figure figures[] = {
    { "travel_speed_m_per_min", job->machine->travel_speed },
    { "walk_speed_m_per_min", job->machine->walk_speed },
    { "swing_s", job->machine->swing_s },
    { "edge_m2_per_hour", job->rates.edge_m2_per_hour },
    { "edge_m_per_hour", job->rates.edge_m_per_hour },
  };
  add_object (json, "rates", figures, G_N_ELEMENTS (figures) - (job->rates.edge_m_per_hour > 0 ? 0 : 1));
}

static void
add_totals (GString *json, const OxTotals *totals)
{
  const Figure figures[] = {
    { "target_m2", totals->target_m2 },
    { "blasted_m2", totals->blasted_m2 },
    { "double_m2", totals->double_m2 },
    { "edge_m2", totals->edge_m2 },
    { "edge_limit_m2", totals->edge_limit_m2 },
    { "strips", totals->strips },
    { "strip_m", totals->strip_m },
    { "move_m", totals->move_m },
    { "strip_hours", totals->strip_hours },
    { "move_hours", totals->move_hours },
    { "edge_hours", totals->edge_hours },
    { "labour_hours", totals->labour_hours },
    { "ideal_hours", totals->ideal_hours },
    { "coats_m2", totals->coats_m2 },
  };
  add_object (json, "totals", figures, G_N_ELEMENTS (figures));
}

static void
add_record (GString *json, const OxPlan *plan)
{
  g_autoptr (OxProgress) progress = ox_progress_new (plan);
  const Figure figures[] = {
    { "days", progress->n_days },
    { "done_strips", progress->done.strips },
    { "left_strips", progress->left.strips },
    { "done_m2", progress->finished_m2 },
    { "left_m2", progress->left_m2 },
    { "done_hours", ox_progress_hours (&progress->done) },
    { "left_hours", ox_progress_hours (&progress->left) },
    { "meter_hours", progress->done.meter_hours },
    { "lost_strips", progress->lost },
  };
  add_object (json, "record", figures, G_N_ELEMENTS (figures));
}

char *
ox_table_summary (const OxPlan *plan)
{
  g_autoptr (GString) json = g_string_new ("{\n");
  add_machine (json, plan->job->machine);
  add_rates (json, plan->job);
  add_totals (json, &plan->totals);
  add_record (json, plan);
  g_string_append_printf (json, "  \"out_of_reach\": %u\n}\n", plan->totals.out_of_reach);
  return g_string_free (g_steal_pointer (&json), FALSE);
}
