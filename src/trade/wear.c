/* Oxturn: trade/wear
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/wear.h"
#include <math.h>

/* Sums of minutes that meet a limit but for rounding are within it; a thousandth of a second is beyond any meter. */
#define FORGIVEN_MINUTES 1e-5

static const OxWearStarter starters[] = {
#include "trade/wear-parts.inc"
};

double
ox_wear_hours_left (double interval, double run)
{
  g_return_val_if_fail (interval > 0 && run >= 0, 0);
  return MAX (interval - run, 0);
}

guint
ox_wear_due_strip (double hours_left, const double *strip_minutes, guint n)
{
  g_return_val_if_fail (hours_left >= 0, 0);
  double left = hours_left * 60 + FORGIVEN_MINUTES;
  guint i = 0;
  for (; i < n && strip_minutes[i] <= left; i++)
    left -= strip_minutes[i];
  return i;
}

guint
ox_wear_checks (double interval, double run, double hours)
{
  double left = ox_wear_hours_left (interval, run);
  g_return_val_if_fail (hours >= 0, 0);
  double forgiven = FORGIVEN_MINUTES / 60;
  return hours + forgiven < left ? 0 : 1 + (guint) floor ((hours + forgiven - left) / interval);
}

double
ox_wear_run (double interval, double run, double hours)
{
  guint checks = hours > 0 ? ox_wear_checks (interval, run, hours) : 0;
  return checks > 0 ? MAX (hours - ox_wear_hours_left (interval, run) - (checks - 1) * interval, 0) : run + hours;
}

const OxWearStarter *
ox_wear_starters (guint *n)
{
  *n = G_N_ELEMENTS (starters);
  return starters;
}
