/* Oxturn: trade/exposure
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/exposure.h"
#include <math.h>

#define DAY 8.0 /* h that means are taken over */
#define CRITERION 90.0
#define EXCHANGE 5.0 /* dB that halve the time allowed */

double
ox_exposure_mean (const OxExposure *parts, guint n)
{
  double sum = 0;
  for (guint i = 0; i < n; i++)
    sum += parts[i].level * parts[i].hours;
  return sum / DAY;
}

double
ox_exposure_hours (double limit, double level)
{
  g_return_val_if_fail (limit >= 0 && level > 0, 0);
  return MIN (DAY * limit / level, 24);
}

double
ox_noise_hours (double level)
{
  return DAY / exp2 ((level - CRITERION) / EXCHANGE);
}

double
ox_noise_dose (const OxExposure *parts, guint n)
{
  double sum = 0;
  for (guint i = 0; i < n; i++)
    sum += parts[i].hours / ox_noise_hours (parts[i].level);
  return 100 * sum;
}

double
ox_noise_mean (double dose)
{
  g_return_val_if_fail (dose > 0, 0);
  return 16.61 * log10 (dose / 100) + CRITERION;
}

double
ox_noise_day_level (const OxExposure *parts, guint n)
{
  double sum = 0;
  for (guint i = 0; i < n; i++)
    sum += parts[i].hours * pow (10, parts[i].level / 10);
  return sum > 0 ? MAX (10 * log10 (sum / DAY), 0) : 0;
}
