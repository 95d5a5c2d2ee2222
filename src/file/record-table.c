/* Oxturn: file/tables - what is done and what is left, day by day.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/csv.h"
#include "file/tables.h"
#include "record/progress.h"

#define COMPUTED 6
#define HOURS 9 /* decimals, so that sums can be checked */

/* Runs of numbers as shifts.csv has them: "1-40 52". */
static void
add_numbers (OxCsv *csv, const char *numbers)
{
  g_autoptr (GString) text = g_string_new (numbers);
  g_string_replace (text, "–", "-", 0);
  g_string_replace (text, ",", "", 0);
  ox_csv_text (csv, text->str);
}

static void
add_if_any (OxCsv *csv, double value, gboolean any)
{
  if (any)
    ox_csv_number (csv, value, COMPUTED);
  else
    ox_csv_empty (csv);
}

static void
add_day (OxCsv *csv, const char *what, const OxProgressDay *day)
{
  ox_csv_text (csv, what);
  ox_csv_text (csv, day->date);
  ox_csv_count (csv, day->strips);
  add_numbers (csv, day->strip_numbers);
  ox_csv_count (csv, day->edges);
  add_numbers (csv, day->edge_numbers);
  ox_csv_number (csv, day->strip_m, COMPUTED);
  ox_csv_number (csv, day->blasted_m2, COMPUTED);
  ox_csv_number (csv, day->edge_m2, COMPUTED);
  ox_csv_number (csv, day->strip_hours, HOURS);
  ox_csv_number (csv, day->move_hours, HOURS);
  ox_csv_number (csv, day->edge_hours, HOURS);
  add_if_any (csv, day->meter_hours, day->metered);
  add_if_any (csv, day->least_csp, day->least_csp > 0);
  add_if_any (csv, day->most_csp, day->most_csp > 0);
  add_if_any (csv, day->depth_mm, day->depths > 0);
  ox_csv_text (csv, day->notes);
  ox_csv_text (csv, day->machine_meters);
  ox_csv_row (csv);
}

char *
ox_table_record (const OxPlan *plan)
{
  g_autoptr (OxProgress) progress = ox_progress_new (plan);
  OxCsv csv
      = ox_csv_start ("what,date,strips,strip_numbers,edge_areas,edge_numbers,strip_m,blasted_m2,edge_m2,strip_hours,"
                      "move_hours,edge_hours,meter_hours,csp_least,csp_most,depth_mm,notes,machine_meters");
  for (guint i = 0; i < progress->n_days; i++)
    add_day (&csv, "day", &progress->days[i]);
  add_day (&csv, "done", &progress->done);
  add_day (&csv, "left", &progress->left);
  return ox_csv_end (&csv);
}
