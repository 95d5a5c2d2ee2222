/* Oxturn: job/check - what is wrong with a job, in words and with the place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

typedef enum
{
  OX_FINDING_ERROR,  /* the job cannot be planned as it stands */
  OX_FINDING_NOTICE  /* it can, but somebody should know: an obstacle outside every room, a machine wider than a room ... */
} OxFindingKind;

typedef struct
{
  OxFindingKind kind;
  char *id;        /* item at fault, "" for the job itself */
  gboolean placed; /* whether @at says where on the floor */
  OxPoint at;
  char *text;      /* one translated sentence: what was found, what is allowed */
} OxFinding;

void ox_finding_free (OxFinding *finding);

/* ox_job_check:
 * Rules: ids unique and well formed; rooms simple rings of 3 or more corners, area over 0.01 m2, coordinates within +/-10 km, no two rooms overlap
 * (shared sides are fine); shapes with positive sizes; overlap under blast width, machine figures finite and in range; rates > 0; a keep-back >= 0;
 * a direction's side exists; coats 1 to 4; dates that exist, amounts that are decimal; 10 min to work in a shift; a record whose strips and areas have places and dates. Obstacles may cross sides and one another.
 * Returns: (transfer full): array of OxFinding*, errors first, with free function; empty when nothing is wrong
 */
GPtrArray *ox_job_check (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxFinding, ox_finding_free)
G_END_DECLS
