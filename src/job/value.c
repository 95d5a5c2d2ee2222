/* Oxturn: job/value - figures as a job holds them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/value.h"

double
ox_value_snap (double value)
{
  double snapped = round (value * 1e6) / 1e6;
  return snapped == 0 ? 0 : snapped;
}

gboolean
ox_value_is_within (double value, double least, double most)
{
  return value >= least && value <= most;
}

gboolean
ox_value_is_over (double value, double most)
{
  return value > 0 && value <= most;
}

gboolean
ox_value_is_place (OxPoint p)
{
  return ox_value_is_within (p.x, -OX_COORD_MAX, OX_COORD_MAX) && ox_value_is_within (p.y, -OX_COORD_MAX, OX_COORD_MAX);
}
