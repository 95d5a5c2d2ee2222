/* Oxturn: plan/reach-line - where the reach of hose and cord ends on the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The way along the floor (plan/reach.h) is measured on a square grid of samples; the line runs between those in reach and those out of
 * reach, where the way is just ox_hose_reach() of the hose or cord, by linear interpolation. Samples lie about 0.3 % of the floor's extent
 * apart, so that on paper the line is true to less than its own width, except for a sample's distance about the kinks behind a solid.
 */
#pragma once
#include "plan/plan.h"
#include "plan/reach.h"
G_BEGIN_DECLS

typedef struct
{
  guint station;   /* index in OxPlan.stations */
  GArray *points;  /* OxPoint; a closed line ends where it begins */
} OxReachLine;

typedef struct
{
  guint n;
  OxReachLine *lines; /* station by station */
} OxReachLines;

/* ox_reach_lines_new: of the job's stations, the proposed ones left out; a station that reaches all of the floor has none; (transfer full) */
OxReachLines *ox_reach_lines_new (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
void ox_reach_lines_free (OxReachLines *lines);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxReachLines, ox_reach_lines_free)
G_END_DECLS
