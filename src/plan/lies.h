/* Oxturn: plan/lies - on which strips hose and cord lie while a strip is run.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Taut from the station to the machine they lie along the shortest way (plan/reach.h):
 *
 *      station o----.__              run outward, strip by strip, they lie on what is blasted already;
 *      ================`--.__=====   run inward, on what is not
 *      ======================`m==>
 *
 * They are looked at where the machine starts and where it stops, at places OX_LIE_STEP apart along them.
 */
#pragma once
#include "plan/plan.h"
#include "plan/reach.h"
G_BEGIN_DECLS

#define OX_LIE_STEP 0.5 /* m */

/* A place where hose or cord lie: on these strips of the same plan, G_MAXUINT where there are fewer. It stands for OX_LIE_METRES of one of them. */
typedef struct
{
  guint on, also;
} OxLie;

#define OX_LIE_METRES (OX_LIE_STEP / 2) /* the mean of start and stop */

/* What each m of hose or cord on floor still to be blasted costs, since it is drawn aside by hand before a strip can be run there: s, no source. Where nobody
 * has placed a station yet, less of it weighs against walks. */
#define OX_LIE_SECONDS 2.0
#define OX_LIE_SECONDS_PROPOSED 0.5

typedef struct
{
  guint n;      /* strips */
  double seconds; /* that one lie costs */
  guint *first; /* n + 1 of them: where the lies of each strip begin in @lies */
  OxLie *lies;
} OxLies;

/* ox_lies_new:
 * @plan: with its stations; they are looked at where they serve a strip
 *
 * A strip lies under its own hose at no place. Returns: (transfer full) */
OxLies *ox_lies_new (const OxPlan *plan, OxReach *reach, const OxRun *run) G_GNUC_WARN_UNUSED_RESULT;
void ox_lies_free (OxLies *lies);

/* ox_lies_unblasted:
 * @order: place in the order of work of each strip of @lies
 * @kept: how many of the strips, from the first on, were done before
 *
 * Returns: m of hose and cord on floor still to be blasted, all strips together */
double ox_lies_unblasted (const OxLies *lies, const guint *order, guint kept);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxLies, ox_lies_free)
G_END_DECLS
