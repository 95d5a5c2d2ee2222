/* Oxturn: trade/hose - air in the dust hose: fast enough to carry the dust.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The formulas of the manual Industrial Ventilation are from memory, its speeds from copies of the table, the edition not noted; standard air.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_hose_velocity:
 * @flow: m3/h, >= 0
 * @bore: inner diameter, m; > 0
 *
 *      V = Q / (3600 pi D^2 / 4)
 *
 * Derived from the continuity of flow. Example: 1,272.3 m3/h in 150 mm are 20 m/s.
 * Returns: m/s
 */
double ox_hose_velocity (double flow, double bore);

/* ox_hose_flow: the other way round, m3/h that move at @velocity m/s. Example: 18 m/s in 100 mm are 508.9 m3/h. */
double ox_hose_flow (double velocity, double bore);

/* ox_hose_velocity_pressure:
 * @velocity: m/s
 *
 *      VP = (V / 4005)^2           V in ft/min, VP in inches of water
 *
 * Source: Industrial Ventilation, A Manual of Recommended Practice; standard air. Example: 20.32 m/s are 248.5 Pa.
 * Returns: Pa
 */
double ox_hose_velocity_pressure (double velocity);

/* ox_hose_loss:
 * @length: m of smooth, round, straight duct; a flexible hose loses two to three times as much
 *
 *      h = 0.0307 V^0.533 / Q^0.612 VP         per foot, V in ft/min, Q in ft3/min
 *
 * Source: Industrial Ventilation, A Manual of Recommended Practice, duct friction.
 * Example: 100 ft of 6 in at 4,000 ft/min lose 4.31 inches of water.
 * Returns: Pa
 */
double ox_hose_loss (double flow, double bore, double length);

/* ox_hose_reach:
 * @length: m of hose or cord, >= 0
 *
 *      reach = length - max (1 m, 5 % of length)
 *
 * What is kept back as slack: the run up to the machine and bends that are not taut. Common practice, no source. Example: 30 m reach 28.5 m.
 * Returns: m along the floor, >= 0
 */
double ox_hose_reach (double length);

typedef struct
{
  const char *id, *name;
  double least_m_per_s, most_m_per_s;
  int typical;
  const char *source;
} OxHoseDust;

/* ox_hose_dusts: kinds of dust and the speed that keeps them moving, data/trade/hose-dusts.csv; @n: (out) */
const OxHoseDust *ox_hose_dusts (guint *n);

typedef enum
{
  OX_HOSE_SLOW, /* the dust settles: a narrower hose or more air */
  OX_HOSE_FINE,
  OX_HOSE_FAST  /* more than needed: losses and wear grow */
} OxHoseVerdict;

/* ox_hose_judge: @velocity (m/s) against what @dust needs, both ends fine and a thousandth forgiven, which a flow in whole m3/h does not hit.
 * Example: heavy dust, 20 to 24 m/s: 600 ft3/min are fine in a bore of 5 in, slow in 6 in, fast in 4 in. */
OxHoseVerdict ox_hose_judge (double velocity, const OxHoseDust *dust);

G_END_DECLS
