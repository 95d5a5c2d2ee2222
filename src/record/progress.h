/* Oxturn: record/progress - what is done and what is left, against the plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Planned hours are those of the plan's own strips, of the moves that lead to them, and of edge work at the hand rate; set-up, breaks and refills
 * are not in them (estimate/work.h has those). Meter hours are the machine's, so that they are to be held against strip and move hours.
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

/* A day's work, or the sum of several. */
typedef struct
{
  char *date;          /* YYYY-MM-DD; "" for a sum */
  char *strip_numbers; /* of the plan, as ox_which_text() has them: "1–40, 52"; "" for none */
  char *edge_numbers;  /* "E1–E4, E7" */
  guint strips, edges;
  double strip_m;
  double blasted_m2;   /* of target, floor counted once a coat */
  double edge_m2;
  double strip_hours, move_hours, edge_hours; /* planned */
  double meter_hours;  /* of all machines; 0 where a reading is missing */
  gboolean metered;    /* whether both readings of one machine are there */
  char *machine_meters; /* hours machine by machine where a record has more than the first one: "1: 5.5, 2: 4"; else "" */
  guint least_csp, most_csp; /* of the strips that were measured; 0: none was */
  guint depths;        /* strips with a depth */
  double depth_mm;     /* mean of those, 0 without */
  char *notes;         /* of the day, machine by machine where there are several; lines split by \n; "" for a sum */
} OxProgressDay;

typedef struct
{
  guint n_days;
  OxProgressDay *days; /* by date: those of the record and those on which something was marked */
  OxProgressDay done;  /* the sum of the days */
  OxProgressDay left;  /* of the plan, without date; meter and profile empty */
  double target_m2;
  double finished_m2;  /* of target: blasted by all its coats, or edge work done */
  double left_m2;      /* the rest of target */
  guint lost;          /* strips of the record that the plan does not have, as of a room that is gone */
} OxProgress;

/* ox_progress_new: (transfer full); @plan is kept by the caller for as long. 10,000 strips done take about a second. */
OxProgress *ox_progress_new (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
void ox_progress_free (OxProgress *progress);

double ox_progress_hours (const OxProgressDay *day); /* strip, move and edge hours together */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxProgress, ox_progress_free)
G_END_DECLS
