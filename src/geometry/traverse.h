/* Oxturn: geometry/traverse - an outline taken as a chain of lengths and directions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

typedef struct
{
  double length;      /* m, > 0 */
  double heading_deg; /* counter-clockwise from +x */
} OxLeg;

/* ox_traverse_points: the start and the end of each of @n legs, not on OX_GRID; (transfer full): array of n + 1 OxPoint */
GArray *ox_traverse_points (OxPoint start, const OxLeg *legs, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_traverse_spread: moves the ends so that the last one comes to lie on the start
 * @points: from ox_traverse_points()
 *
 * Compass rule, as surveyors' textbooks have it (from memory): the end of leg i moves against the closing error by the share that the legs up
 * to it have of the whole length. Example: of two legs of 30 m and 10 m the first end moves by 3/4 of the error, the second by all of it. */
void ox_traverse_spread (GArray *points);

/* ox_traverse_gap: how far the last end lies from the start, m */
double ox_traverse_gap (const GArray *points);

/* ox_traverse_length: length of the whole chain, m */
double ox_traverse_length (const GArray *points);

G_END_DECLS
