/* Oxturn: trade/edge
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/edge.h"

#define FORGIVEN 1e-9 /* m of width */
#define INCH 0.0254
#define SHROUD_CFM 25 /* for an inch of the cup */
#define CFM_IN_M3_PER_H (0.028316846592 * 60)

gboolean
ox_edge_is_by_length (const OxEdgeRates *rates, double area, double length)
{
  return rates->m_per_h > 0 && length > 0 && area <= (rates->narrow + FORGIVEN) * length;
}

double
ox_edge_hours (const OxEdgeRates *rates, double area, double length)
{
  g_return_val_if_fail (rates->m2_per_h > 0, 0);
  return ox_edge_is_by_length (rates, area, length) ? length / rates->m_per_h : area / rates->m2_per_h;
}

double
ox_edge_shroud_flow (double cup)
{
  return cup / INCH * SHROUD_CFM * CFM_IN_M3_PER_H;
}
