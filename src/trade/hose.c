/* Oxturn: trade/hose
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/hose.h"
#include <math.h>

/* The handbook's formulas are in feet, minutes and inches of water: 1 ft/min = 0.00508 m/s exactly. */
#define FPM_IN_M_PER_S 0.00508
#define CFM_IN_M3_PER_H (0.028316846592 * 60)
#define FOOT 0.3048
#define INCH_OF_WATER_PA 249.08891

#define FORGIVEN 1e-3 /* of either end of a range of air speeds */

static const OxHoseDust dusts[] = {
#include "trade/hose-dusts.inc"
};

double
ox_hose_velocity (double flow, double bore)
{
  g_return_val_if_fail (flow >= 0 && bore > 0, 0);
  return flow / (3600 * G_PI * bore * bore / 4);
}

double
ox_hose_flow (double velocity, double bore)
{
  g_return_val_if_fail (velocity >= 0 && bore > 0, 0);
  return velocity * 3600 * G_PI * bore * bore / 4;
}

double
ox_hose_velocity_pressure (double velocity)
{
  double ratio = velocity / FPM_IN_M_PER_S / 4005;
  return ratio * ratio * INCH_OF_WATER_PA;
}

double
ox_hose_loss (double flow, double bore, double length)
{
  g_return_val_if_fail (flow >= 0 && bore > 0 && length >= 0, 0);
  if (flow <= 0)
    return 0;
  double velocity = ox_hose_velocity (flow, bore);
  double per_foot = 0.0307 * pow (velocity / FPM_IN_M_PER_S, 0.533) / pow (flow / CFM_IN_M3_PER_H, 0.612);
  return length / FOOT * per_foot * ox_hose_velocity_pressure (velocity);
}

double
ox_hose_reach (double length)
{
  return MAX (length - MAX (1, 0.05 * length), 0);
}

const OxHoseDust *
ox_hose_dusts (guint *n)
{
  *n = G_N_ELEMENTS (dusts);
  return dusts;
}

OxHoseVerdict
ox_hose_judge (double velocity, const OxHoseDust *dust)
{
  if (velocity < dust->least_m_per_s * (1 - FORGIVEN))
    return OX_HOSE_SLOW;
  return velocity > dust->most_m_per_s * (1 + FORGIVEN) ? OX_HOSE_FAST : OX_HOSE_FINE;
}
