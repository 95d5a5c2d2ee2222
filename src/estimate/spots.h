/* Oxturn: estimate/spots - where the profile is to be checked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "plan/plan.h"
G_BEGIN_DECLS

typedef struct
{
  guint room;  /* index in job->rooms */
  guint strip; /* order number of the strip on which it lies */
  OxPoint at;
} OxSpot;

/* ox_spots_of:
 *
 * As many as the rule for profile checks asks for (trade/spots.h), shared out evenly along the strips of the last coat that lies all over each room, in
 * working order, each in the middle of its share: on blasted floor, the same for the same plan, and come by in the order of the work. None without strips.
 * Returns: (transfer full): of OxSpot
 */
GArray *ox_spots_of (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
