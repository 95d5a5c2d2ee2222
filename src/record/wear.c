/* Oxturn: record/wear - the hours of the wear parts, moved on by the meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/wear.h"
#include "estimate/work.h"
#include "trade/wear.h"

/* The machine whose wear is asked for, and which machine lays which strip. */
typedef struct
{
  const OxPlan *plan;
  const guint *laid_by; /* from 0 */
  guint machine;        /* from 0 */
} Hand;

static guint
find_due (const Hand *hand, double left_h)
{
  const OxPlan *plan = hand->plan;
  g_autofree double *minutes = g_new (double, plan->n_strips + 1);
  g_autofree guint *numbers = g_new (guint, plan->n_strips + 1);
  guint n = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].done == 0 && hand->laid_by[i] == hand->machine)
      {
        numbers[n] = plan->strips[i].order;
        minutes[n++] = plan->strips[i].minutes;
      }
  guint due = ox_wear_due_strip (left_h, minutes, n);
  return due < n ? numbers[due] : 0;
}

static OxWearNow
part_now (const Hand *hand, const OxWearPart *part)
{
  double meter = ox_record_meter_hours (hand->plan->job->record, hand->machine + 1);
  OxWearNow now = { .name = part->name, .interval_h = part->interval_h };
  now.fell_due = meter > 0 ? ox_wear_checks (part->interval_h, part->run_h, meter) : 0;
  now.run_h = ox_wear_run (part->interval_h, part->run_h, meter);
  now.left_h = ox_wear_hours_left (part->interval_h, now.run_h);
  now.due_strip = find_due (hand, now.left_h);
  return now;
}

GArray *
ox_wear_now (const OxPlan *plan)
{
  const OxMachine *machine = plan->job->machine;
  guint machines = MAX (plan->job->calendar->machines, 1);
  GArray *all = g_array_new (FALSE, FALSE, sizeof (OxWearNow));
  g_autofree guint *laid_by = g_new0 (guint, plan->n_strips + 1);
  ox_work_split (plan, machines, TRUE, laid_by);
  for (guint i = 0; i < machine->n_wear; i++)
    for (guint m = 0; m < machines; m++)
      if (ox_wear_part_is_on (&machine->wear[i], m + 1))
        {
          OxWearNow now = part_now (&(Hand){ plan, laid_by, m }, &machine->wear[i]);
          now.machine = machines > 1 ? m + 1 : 0;
          g_array_append_val (all, now);
        }
  return all;
}
