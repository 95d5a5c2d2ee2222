/* Oxturn: job/check-private - how the files of the check report what they find.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/check.h"
G_BEGIN_DECLS

/* ox_finding_add: @text: (transfer full); @at: (nullable): where on the floor */
void ox_finding_add (GPtrArray *findings, OxFindingKind kind, const char *id, const OxPoint *at, char *text);

/* ox_finding_date: an error of item @id where @date is neither a day nor "" */
void ox_finding_date (const char *id, const char *date, GPtrArray *findings);

/* ox_check_overlaps: errors for rooms that lie on one another; rooms with @sound[i] FALSE are passed over */
void ox_check_overlaps (const OxJob *job, const gboolean *sound, GPtrArray *findings);

/* ox_check_terms: errors of test patches, calendar, cost and outfit */
void ox_check_terms (const OxJob *job, GPtrArray *findings);

/* ox_check_record: errors of what is marked done */
void ox_check_record (const OxJob *job, GPtrArray *findings);

/* ox_check_scope: errors of the scope and of the setup of the sheets */
void ox_check_scope (const OxJob *job, GPtrArray *findings);

/* ox_check_left_rooms: errors for obstacles, condition areas and excluded areas that are new or moved and lie outside every room of @job now,
 * unless they did before or there is no room yet: not an error of a job, only of an edit */
void ox_check_left_rooms (const OxJob *old, const OxJob *job, GPtrArray *findings);

/* ox_check_notices: what does not stop a plan but somebody should know; only for jobs without an error */
void ox_check_notices (const OxJob *job, GPtrArray *findings);

G_END_DECLS
