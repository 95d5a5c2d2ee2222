/* Oxturn: record/mark - marking strips and edge areas of a plan done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each returns (transfer full) a new job with another record, or NULL with @error (OX_JOB_ERROR_REFUSED) when the mark breaks a rule of
 * job/check.h: no date, a depth out of range. @plan is one of the job or of an earlier state of it: what is marked is the floor that its strips and
 * areas cover. @numbers are those of the plan, from 1, as record/which reads them; a number that it does not have is passed over.
 */
#pragma once
#include "job/edit.h"
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct
{
  const char *date;  /* YYYY-MM-DD */
  const char *note;  /* (nullable) */
  guint csp;         /* profile measured, 0 unknown; strips only */
  double depth_mm;   /* mean texture depth measured, 0 unknown; strips only */
} OxMark;

/* ox_mark_strips, ox_mark_edges: of several numbers those done already keep their marks, so that a run over what an earlier day did leaves that day
 * its work; one number alone is marked anew */
OxJob *ox_mark_strips (const OxJob *job, const OxPlan *plan, const GArray *numbers, const OxMark *mark,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_mark_edges (const OxJob *job, const OxPlan *plan, const GArray *numbers, const OxMark *mark,
                      GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_unmark_strips, ox_unmark_edges: as if they had never been marked */
OxJob *ox_unmark_strips (const OxJob *job, const OxPlan *plan, const GArray *numbers, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_unmark_edges (const OxJob *job, const OxPlan *plan, const GArray *numbers, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_mark_day: sets the meter and notes of a day; ox_unmark_day: takes them away, what was done on it stays */
OxJob *ox_mark_day (const OxJob *job, const OxRecordDay *day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_unmark_day (const OxJob *job, const char *date, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
