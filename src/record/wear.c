/* Oxturn: record/wear - the hours of the wear parts, moved on by the meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/wear.h"
#include "trade/wear.h"

static guint
find_due (const OxPlan *plan, double left_h)
{
  g_autofree double *minutes = g_new (double, plan->n_strips + 1);
  g_autofree guint *numbers = g_new (guint, plan->n_strips + 1);
  guint n = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].done == 0)
      {
        numbers[n] = plan->strips[i].order;
        minutes[n++] = plan->strips[i].minutes;
      }
  guint due = ox_wear_due_strip (left_h, minutes, n);
  return due < n ? numbers[due] : 0;
}

void
ox_wear_now (const OxPlan *plan, OxWearNow *out)
{
  const OxMachine *machine = plan->job->machine;
  double meter = ox_record_meter_hours (plan->job->record);
  for (guint i = 0; i < machine->n_wear; i++)
    {
      const OxWearPart *part = &machine->wear[i];
      OxWearNow now = { .name = part->name, .interval_h = part->interval_h };
      now.fell_due = meter > 0 ? ox_wear_checks (part->interval_h, part->run_h, meter) : 0;
      now.run_h = ox_wear_run (part->interval_h, part->run_h, meter);
      now.left_h = ox_wear_hours_left (part->interval_h, now.run_h);
      now.due_strip = find_due (plan, now.left_h);
      out[i] = now;
    }
}
