/* Oxturn: trade/dust
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/dust.h"
#include <math.h>

/* A drum that rounding alone would add is not ordered. */
#define FORGIVEN 1e-6

double
ox_dust_mass (double area, double depth_mm, double density)
{
  g_return_val_if_fail (area >= 0 && depth_mm >= 0 && density > 0, 0);
  return area * depth_mm / 1000 * density;
}

double
ox_dust_volume (double mass, double bulk)
{
  g_return_val_if_fail (mass >= 0 && bulk > 0, 0);
  return mass / bulk;
}

double
ox_dust_drums (double volume, double drum, double fill)
{
  g_return_val_if_fail (volume >= 0 && drum > 0 && fill > 0 && fill <= 1, 0);
  return 1000 * volume / (drum * fill);
}

guint
ox_dust_drums_to_order (double drums)
{
  g_return_val_if_fail (drums >= 0, 0);
  return (guint) ceil (MAX (drums - FORGIVEN, 0));
}

double
ox_dust_drum_mass (double drum, double fill, double bulk)
{
  g_return_val_if_fail (drum > 0 && fill > 0 && fill <= 1 && bulk > 0, 0);
  return drum / 1000 * fill * bulk;
}
