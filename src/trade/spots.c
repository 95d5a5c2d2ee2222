/* Oxturn: trade/spots
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/spots.h"
#include <math.h>

/* A step that rounding alone begins asks for no spot; far under a square millimetre. */
#define FORGIVEN 1e-9

static const OxSpotRule rules[] = {
#include "trade/spots.inc"
};

const OxSpotRule *
ox_spots_rules (guint *n)
{
  *n = G_N_ELEMENTS (rules);
  return rules;
}

guint
ox_spots_count (const OxSpotRule *rule, double area)
{
  g_return_val_if_fail (area >= 0 && rule->first > 0 && rule->base_m2 > 0 && rule->step_m2 > 0, 0);
  if (area <= 0)
    return 0;
  double steps = ceil ((area - rule->base_m2) / rule->step_m2 - FORGIVEN);
  return (guint) rule->first + (guint) MAX (steps, 0);
}
