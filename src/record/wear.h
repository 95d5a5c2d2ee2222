/* Oxturn: record/wear - the hours of the wear parts, moved on by the meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct
{
  const char *name;  /* belongs to the job */
  guint machine;     /* of which one, from 1, where several are at work; 0 where there is one */
  double interval_h; /* between checks */
  double run_h;      /* since the last check: see ox_wear_now() */
  double left_h;     /* until the next one, 0 when it is due now */
  guint fell_due;    /* checks that fell due in the hours of the record */
  guint due_strip;   /* number of the strip left to do before which the next check falls due; 0: none of them */
} OxWearNow;

/* ox_wear_now:
 * Each wear part of each of the machines at work in the calendar, part by part. The hours that the machine has in the job are those when the record began; the meter hours of its own days are added, and each check is taken for done
 * when it fell due (trade/wear.h). What is to come are the hours of the strips that are left and that the
 * machine lays (estimate/work), in working order. Derived. Example: 40 h run, every
 * 50 h, 25 h on the meter: one check fell due after 10 h, 15 h ago; 35 h to go.
 * Returns: (transfer full): of OxWearNow
 */
GArray *ox_wear_now (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
