/* Oxturn: record/progress - what is done and what is left, against the plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/progress.h"
#include <string.h>
#include "base/number.h"
#include "plan/floor.h"
#include "plan/leftover.h"
#include "record/which.h"

typedef struct
{
  const OxPlan *plan;
  GArray *days;                  /* OxProgressDay */
  OxRegion *covered[OX_COATS_MOST]; /* (nullable): by the strips of the days so far */
} Tally;

static const char *
strip_date (const OxPlan *plan, const OxStrip *strip)
{
  return strip->done > 0 ? plan->job->record->strips[strip->done - 1].date : NULL;
}

static const char *
edge_date (const OxPlan *plan, const OxEdge *edge)
{
  return edge->done > 0 ? plan->job->record->edges[edge->done - 1].date : NULL;
}

static int
compare_days (gconstpointer a, gconstpointer b)
{
  return strcmp (((const OxProgressDay *) a)->date, ((const OxProgressDay *) b)->date);
}

/* What one machine's crew wrote down. */
static void
add_machine (OxProgressDay *day, const OxRecordDay *own, GString *notes, GString *meters)
{
  if (own->meter_start_h >= 0 && own->meter_end_h >= 0)
    {
      day->metered = TRUE;
      day->meter_hours += ox_record_day_hours (own);
      g_string_append_printf (meters, "%s%u: ", meters->len > 0 ? ", " : "", own->machine);
      ox_number_append (meters, ox_record_day_hours (own), 2);
    }
  if (*own->notes == '\0')
    return;
  g_string_append (notes, notes->len > 0 ? "\n" : "");
  if (own->machine > 1)
    g_string_append_printf (notes, "%u: ", own->machine);
  g_string_append (notes, own->notes);
}

static void
list_day (Tally *tally, GHashTable *seen, const char *date)
{
  if (!g_hash_table_add (seen, (gpointer) date))
    return;
  OxProgressDay day = { .date = g_strdup (date) };
  g_autoptr (GString) notes = g_string_new (NULL);
  g_autoptr (GString) meters = g_string_new (NULL);
  for (guint i = 0; i < tally->plan->job->record->n_days; i++)
    if (g_str_equal (tally->plan->job->record->days[i].date, date))
      add_machine (&day, &tally->plan->job->record->days[i], notes, meters);
  day.notes = g_string_free (g_steal_pointer (&notes), FALSE);
  day.machine_meters
      = strchr (meters->str, ',') || !g_str_has_prefix (meters->str, "1:") ? g_strdup (meters->str) : g_strdup ("");
  g_array_append_val (tally->days, day);
}

static void
list_days (Tally *tally)
{
  const OxRecord *record = tally->plan->job->record;
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < record->n_days; i++)
    list_day (tally, seen, record->days[i].date);
  for (guint i = 0; i < record->n_strips; i++)
    list_day (tally, seen, record->strips[i].date);
  for (guint i = 0; i < record->n_edges; i++)
    list_day (tally, seen, record->edges[i].date);
  g_array_sort (tally->days, compare_days);
}

static void
add_profile (OxProgressDay *day, const OxDoneStrip *mark)
{
  if (mark->csp > 0)
    {
      day->least_csp = day->least_csp > 0 ? MIN (day->least_csp, mark->csp) : mark->csp;
      day->most_csp = MAX (day->most_csp, mark->csp);
    }
  if (mark->depth_mm > 0)
    {
      day->depth_mm = (day->depth_mm * day->depths + mark->depth_mm) / (day->depths + 1);
      day->depths++;
    }
}

static gboolean
same_date (const char *a, const char *b)
{
  return a == NULL || b == NULL ? a == b : g_str_equal (a, b);
}

/* Strips and moves of one day; @date NULL: what is left. Appends the corners of the strips to those of their coat. */
static void
add_strips (const OxPlan *plan, const char *date, OxProgressDay *day, GArray *corners[OX_COATS_MOST])
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < plan->n_strips; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      OxPoint own[4];
      if (!same_date (strip_date (plan, strip), date))
        continue;
      g_array_append_val (numbers, strip->order);
      day->strip_m += ox_strip_length (strip);
      day->strip_hours += strip->minutes / 60;
      if (i > 0 && i <= plan->n_moves)
        day->move_hours += plan->moves[i - 1].minutes / 60;
      if (strip->done > 0)
        add_profile (day, &plan->job->record->strips[strip->done - 1]);
      ox_strip_corners (strip, plan->job->machine->blast_length, own);
      if (corners != NULL && strip->coat >= 1 && strip->coat <= OX_COATS_MOST)
        g_array_append_vals (corners[strip->coat - 1], own, 4);
    }
  day->strips = numbers->len;
  day->strip_numbers = ox_which_text ((const guint *) (gconstpointer) numbers->data, numbers->len, "");
}

static void
add_edges (const OxPlan *plan, const char *date, OxProgressDay *day)
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < plan->n_edges; i++)
    if (same_date (edge_date (plan, &plan->edges[i]), date))
      {
        guint number = i + 1;
        g_array_append_val (numbers, number);
        day->edge_m2 += plan->edges[i].area;
        day->edge_hours += ox_plan_edge_hours (plan->job, &plan->edges[i]);
      }
  day->edges = numbers->len;
  day->edge_numbers = ox_which_text ((const guint *) (gconstpointer) numbers->data, numbers->len, "E");
}

/* m2 of target that the quads add to what was covered before. */
static double
cover (Tally *tally, guint coat, const GArray *corners)
{
  if (corners->len == 0)
    return 0;
  g_autoptr (OxRegion) quads
      = ox_region_union_quads ((const OxPoint *) (gconstpointer) corners->data, corners->len / 4);
  OxRegion *within = ox_region_intersection (quads, tally->plan->target);
  double before = 0;
  if (tally->covered[coat] != NULL)
    {
      before = ox_region_area (tally->covered[coat]);
      OxRegion *all = ox_region_union (tally->covered[coat], within);
      ox_region_unref (within);
      ox_region_unref (tally->covered[coat]);
      within = all;
    }
  tally->covered[coat] = within;
  return ox_region_area (within) - before;
}

static void
count_day (Tally *tally, OxProgressDay *day)
{
  GArray *corners[OX_COATS_MOST];
  for (guint k = 0; k < OX_COATS_MOST; k++)
    corners[k] = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  add_strips (tally->plan, day->date, day, corners);
  add_edges (tally->plan, day->date, day);
  for (guint k = 0; k < OX_COATS_MOST; k++)
    {
      day->blasted_m2 += cover (tally, k, corners[k]);
      g_array_unref (corners[k]);
    }
}

static void
add_sum (OxProgressDay *sum, const OxProgressDay *day)
{
  sum->strips += day->strips;
  sum->edges += day->edges;
  sum->strip_m += day->strip_m;
  sum->blasted_m2 += day->blasted_m2;
  sum->edge_m2 += day->edge_m2;
  sum->strip_hours += day->strip_hours;
  sum->move_hours += day->move_hours;
  sum->edge_hours += day->edge_hours;
  sum->meter_hours += day->meter_hours;
  sum->metered = sum->metered || day->metered;
  if (day->least_csp > 0)
    sum->least_csp = sum->least_csp > 0 ? MIN (sum->least_csp, day->least_csp) : day->least_csp;
  sum->most_csp = MAX (sum->most_csp, day->most_csp);
  if (day->depths > 0)
    sum->depth_mm = (sum->depth_mm * sum->depths + day->depth_mm * day->depths) / (sum->depths + day->depths);
  sum->depths += day->depths;
}

/* Numbers of all that is done. */
static void
name_sum (const OxPlan *plan, OxProgressDay *sum)
{
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 1; i <= plan->n_strips; i++)
    if (plan->strips[i - 1].done > 0)
      g_array_append_val (strips, i);
  for (guint i = 1; i <= plan->n_edges; i++)
    if (plan->edges[i - 1].done > 0)
      g_array_append_val (edges, i);
  sum->date = g_strdup ("");
  sum->notes = g_strdup ("");
  sum->machine_meters = g_strdup ("");
  sum->strip_numbers = ox_which_text ((const guint *) (gconstpointer) strips->data, strips->len, "");
  sum->edge_numbers = ox_which_text ((const guint *) (gconstpointer) edges->data, edges->len, "E");
}

/* m2 of target that done strips blast with all the coats that it asks for */
static double
blasted_by_done (const OxPlan *plan)
{
  g_autofree OxStrip *done = g_new (OxStrip, plan->n_strips + 1);
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  OxPlan part = { .job = plan->job, .strips = done };
  OxBlasted sums;
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].done > 0)
      done[part.n_strips++] = plan->strips[i];
  if (part.n_strips == 0)
    return 0;
  g_autoptr (OxRegion) blasted = ox_leftover_blasted (floor, &part, &sums);
  return ox_region_area (blasted);
}

static guint
count_lost (const OxPlan *plan)
{
  guint found = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    found += plan->strips[i].done > 0;
  return plan->job->record->n_strips - MIN (found, plan->job->record->n_strips);
}

OxProgress *
ox_progress_new (const OxPlan *plan)
{
  OxProgress *self = g_new0 (OxProgress, 1);
  Tally tally = { .plan = plan, .days = g_array_new (FALSE, TRUE, sizeof (OxProgressDay)) };
  list_days (&tally);
  for (guint i = 0; i < tally.days->len; i++)
    {
      OxProgressDay *day = &g_array_index (tally.days, OxProgressDay, i);
      count_day (&tally, day);
      add_sum (&self->done, day);
    }
  name_sum (plan, &self->done);
  self->left.date = g_strdup ("");
  self->left.notes = g_strdup ("");
  self->left.machine_meters = g_strdup ("");
  add_strips (plan, NULL, &self->left, NULL);
  add_edges (plan, NULL, &self->left);
  self->left.blasted_m2 = MAX (plan->totals.coats_m2 - self->done.blasted_m2, 0);
  self->target_m2 = plan->totals.target_m2;
  self->finished_m2 = blasted_by_done (plan) + self->done.edge_m2;
  self->left_m2 = MAX (self->target_m2 - self->finished_m2, 0);
  self->lost = count_lost (plan);
  self->n_days = tally.days->len;
  self->days = (OxProgressDay *) (gpointer) g_array_free (tally.days, FALSE);
  for (guint k = 0; k < OX_COATS_MOST; k++)
    g_clear_pointer (&tally.covered[k], ox_region_unref);
  return self;
}

static void
clear_day (OxProgressDay *day)
{
  g_free (day->date);
  g_free (day->strip_numbers);
  g_free (day->edge_numbers);
  g_free (day->machine_meters);
  g_free (day->notes);
}

void
ox_progress_free (OxProgress *progress)
{
  if (progress == NULL)
    return;
  for (guint i = 0; i < progress->n_days; i++)
    clear_day (&progress->days[i]);
  clear_day (&progress->done);
  clear_day (&progress->left);
  g_free (progress->days);
  g_free (progress);
}

double
ox_progress_hours (const OxProgressDay *day)
{
  return day->strip_hours + day->move_hours + day->edge_hours;
}
