/* Oxturn: job/edit - edits: job in, job out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each returns (transfer full) a new job that shares what did not change, or NULL with @error (OX_JOB_ERROR_REFUSED) and one translated
 * sentence when the result would break a rule of job/check.h that the old job kept, or when an obstacle, a condition
 * area or an excluded area that is drawn or moved would lie outside every room. What becomes of a drawing that was signed: job/sign-off.h.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

#define OX_JOB_ERROR (ox_job_error_quark ())
GQuark ox_job_error_quark (void);
typedef enum
{
  OX_JOB_ERROR_REFUSED, /* the edit would make a floor that cannot be; nothing was changed */
  OX_JOB_ERROR_NO_ITEM  /* no item has that id */
} OxJobError;

/* ox_job_error_place: @at: (out): where on the floor it is; FALSE when @error is of another domain or tells no place */
gboolean ox_job_error_place (const GError *error, OxPoint *at);

OxJob *ox_job_with_room (const OxJob *job, const OxRoom *room, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_obstacle (const OxJob *job, const OxObstacle *obstacle, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_excluded (const OxJob *job, const OxExcluded *excluded, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_doorway (const OxJob *job, const OxDoorway *doorway, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_joint (const OxJob *job, const OxJoint *joint, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_station (const OxJob *job, const OxStation *station, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_condition (const OxJob *job, const OxCondition *condition, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_traced (const OxJob *job, const OxTracedPlan *traced, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_patches (const OxJob *job, const OxPatches *patches, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_calendar (const OxJob *job, const OxCalendar *calendar, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_outfit (const OxJob *job, const OxOutfit *outfit, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_costs (const OxJob *job, const OxCosts *costs, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_record (const OxJob *job, const OxRecord *record, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_scope (const OxJob *job, const OxScope *scope, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_setup (const OxJob *job, const OxSheetSetup *setup, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* ox_job_signed: by @name on @date (YYYY-MM-DD), the drawing with its present number and revision */
OxJob *ox_job_signed (const OxJob *job, const char *name, const char *date, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_machine (const OxJob *job, const OxMachine *machine, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_rates (const OxJob *job, OxRates rates, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_texts (const OxJob *job, const OxTexts *texts, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_units (const OxJob *job, OxUnits units) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_side (const OxJob *job, const char *room_id, guint side, OxSide value, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_direction (const OxJob *job, const char *room_id, OxDirection direction, GError **error) G_GNUC_WARN_UNUSED_RESULT;
OxJob *ox_job_with_corner (const OxJob *job, const char *id, guint corner, OxPoint at, GError **error) G_GNUC_WARN_UNUSED_RESULT; /* room, excluded, polygon obstacle */
OxJob *ox_job_moved (const OxJob *job, const char *const *ids, OxPoint by, GError **error) G_GNUC_WARN_UNUSED_RESULT; /* NULL-ended ids */
OxJob *ox_job_without (const OxJob *job, const char *const *ids, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
