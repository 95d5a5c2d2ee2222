/* Oxturn: trade/production
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/production.h"
#include <math.h>

/* Far above the rounding of a division, far below anything a chalk line can show: under a micrometre of overlap. */
#define FORGIVEN 1e-6
#define MOST_SPACINGS 1e6

/* Counts what is begun, without letting rounding begin one more. */
static double
ceil_forgiving (double value)
{
  return ceil (value - FORGIVEN);
}

guint
ox_production_lanes (double width, double blast_width, double min_overlap)
{
  g_return_val_if_fail (width > 0 && blast_width > 0, 1);
  g_return_val_if_fail (min_overlap >= 0 && min_overlap < blast_width, 1);
  double spacings = (width - blast_width) / (blast_width - min_overlap);
  g_return_val_if_fail (spacings <= MOST_SPACINGS, 1);

  if (spacings <= 0)
    return 1;
  return (guint) ceil_forgiving (spacings) + 1;
}

double
ox_production_spacing (double width, double blast_width, guint lanes)
{
  g_return_val_if_fail (lanes >= 1, 0);
  return lanes == 1 ? 0 : (width - blast_width) / (lanes - 1);
}

double
ox_production_overlap (double width, double blast_width, guint lanes)
{
  g_return_val_if_fail (lanes >= 1, 0);
  return lanes == 1 ? 0 : (lanes * blast_width - width) / (lanes - 1);
}

double
ox_production_minutes (double length, double speed)
{
  g_return_val_if_fail (length >= 0 && speed > 0, 0);
  return length / speed;
}

double
ox_production_field_minutes (double length, double speed, guint turns, double turn_seconds)
{
  g_return_val_if_fail (turn_seconds >= 0, 0);
  return ox_production_minutes (length, speed) + turns * turn_seconds / 60;
}

double
ox_production_area_per_hour (double blast_width, double overlap, double speed, double efficiency)
{
  g_return_val_if_fail (overlap >= 0 && overlap < blast_width, 0);
  g_return_val_if_fail (speed > 0 && efficiency > 0 && efficiency <= 1, 0);
  return (blast_width - overlap) * speed * 60 * efficiency;
}

double
ox_production_efficiency (double blast_minutes, double total_minutes)
{
  g_return_val_if_fail (blast_minutes >= 0 && total_minutes > 0 && blast_minutes <= total_minutes, 0);
  return blast_minutes / total_minutes;
}

double
ox_production_double_share (double gross, double covered)
{
  g_return_val_if_fail (covered > 0 && gross >= covered, 0);
  return (gross - covered) / covered;
}

guint
ox_production_days (double area, double area_per_day)
{
  g_return_val_if_fail (area >= 0 && area_per_day > 0, 0);
  return (guint) ceil_forgiving (area / area_per_day);
}
