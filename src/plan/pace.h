/* Oxturn: plan/pace - the walking speed from place to place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In a condition area with a speed of its own that one holds, in all coats; where such areas overlap the slowest; elsewhere the machine's.
 */
#pragma once
#include "job/job.h"
G_BEGIN_DECLS

/* A piece of a strip that is walked at one speed. */
typedef struct
{
  double length; /* m */
  double speed;  /* m/min */
} OxPace;

/* ox_paces_cut:
 * @a, @b: start and stop of a strip
 * @out: (element-type OxPace): pieces from start to stop are appended, one at least; neighbours differ in speed
 *
 * What counts is where the middle of the pattern is: the speed changes as the blast line crosses the border of a condition area. A piece shorter than
 * OX_PACE_LEAST belongs to the piece before it, the first one to the piece after it.
 */
#define OX_PACE_LEAST 0.01 /* m: ten times what the corners of a floor are off when they were measured well */
void ox_paces_cut (const OxJob *job, OxPoint a, OxPoint b, GArray *out);

/* ox_paces_minutes:
 *
 *      t = sum of L / v      L length of a piece, v its speed
 *
 * Derived. Example: 4 m at 8 m/min and 2 m at 4 m/min take 1 min.
 */
double ox_paces_minutes (const OxPace *paces, guint n);

/* ox_paces_ideal_hours:
 * @floor: floor to be covered once
 *
 *      T = sum of A / ((w - o) v 60)      A floor at speed v, w blast width, o least overlap
 *
 * Derived (ox_production_area_per_hour(), speed by speed). Example: 230.76 m2 at 61.83 m2/h take 3.732 h.
 */
double ox_paces_ideal_hours (const OxJob *job, const OxRegion *floor);

G_END_DECLS
