/* Oxturn: trade/supply
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/supply.h"
#include <math.h>

/* A share of a hundred millionth above a limit is rounding. */
#define FORGIVEN 1e-8

static const OxConductor conductors[] = {
#include "trade/conductors.inc"
};

const OxConductor *
ox_supply_conductors (guint *n)
{
  *n = G_N_ELEMENTS (conductors);
  return conductors;
}

const OxConductor *
ox_supply_find_conductor (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (conductors); i++)
    if (g_str_equal (conductors[i].id, id))
      return &conductors[i];
  return NULL;
}

double
ox_supply_resistance (const OxConductor *conductor, double celsius)
{
  return conductor->ohm_per_km * (1 + conductor->coefficient * (celsius - conductor->celsius));
}

/* One phase: the current goes out and comes back. Three phases: the line voltage lies across two conductors at 120
 * degrees. */
static double
way_factor (const OxSupply *supply)
{
  return supply->phases == 3 ? sqrt (3) : 2;
}

double
ox_supply_drop (const OxSupply *supply, const OxCord *cords, guint n)
{
  g_return_val_if_fail (supply->phases == 1 || supply->phases == 3, 0);
  double ohms = 0;
  for (guint i = 0; i < n; i++)
    ohms += cords[i].length * cords[i].ohm_per_km / 1000;
  return way_factor (supply) * supply->amperes * ohms;
}

double
ox_supply_drop_share (const OxSupply *supply, const OxCord *cords, guint n)
{
  g_return_val_if_fail (supply->volts > 0, 0);
  return ox_supply_drop (supply, cords, n) / supply->volts;
}

double
ox_supply_longest (const OxSupply *supply, double ohm_per_km, double share)
{
  g_return_val_if_fail (supply->phases == 1 || supply->phases == 3, 0);
  g_return_val_if_fail (supply->volts > 0 && ohm_per_km > 0 && share > 0, 0);
  if (supply->amperes <= 0)
    return G_MAXDOUBLE;
  return share * supply->volts * 1000 / (way_factor (supply) * supply->amperes * ohm_per_km);
}

OxDropVerdict
ox_supply_judge (double share, double warn, double stop)
{
  if (share > stop + FORGIVEN)
    return OX_DROP_TOO_HIGH;
  return share > warn + FORGIVEN ? OX_DROP_HIGH : OX_DROP_FINE;
}

double
ox_supply_long_cord_allowance (double length)
{
  return CLAMP ((length - 100) * 0.00005, 0, 0.005);
}

double
ox_supply_continuous_limit (double circuit, double continuous_share)
{
  g_return_val_if_fail (circuit >= 0 && continuous_share > 0, 0);
  return circuit * continuous_share;
}

OxCircuitVerdict
ox_supply_judge_circuit (double amperes, double circuit, double continuous_share)
{
  if (amperes > circuit * (1 + FORGIVEN))
    return OX_CIRCUIT_OVERLOADED;
  return amperes > ox_supply_continuous_limit (circuit, continuous_share) * (1 + FORGIVEN) ? OX_CIRCUIT_SHORT
                                                                                             : OX_CIRCUIT_FINE;
}
