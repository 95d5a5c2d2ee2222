/* Oxturn: trade/supply - cords and circuits: voltage drop, longest cord, continuous load.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For planning only. The figures of a table are for a steady load; a motor that starts draws several times as much for a
 * moment. What may be connected, and by whom, local codes and a licensed electrician say.
 *
 * NFPA 70 is named by its edition of 2023, BS 7671 by that of 2018: tables and clauses from memory; other editions number some differently.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef struct
{
  const char *id;       /* "12 AWG", "2.5 mm2" */
  double mm2;           /* copper */
  double ohm_per_km;    /* one conductor, at @celsius */
  double celsius;
  double coefficient;   /* per K, about @celsius */
  double amperes_1;     /* allowed with two live conductors; 0: the table does not say */
  double amperes_3;     /* with three */
  int typical;
  const char *source;
} OxConductor;

/* ox_supply_conductors: AWG from thin to thick, then metric, data/trade/conductors.csv; @n: (out) */
const OxConductor *ox_supply_conductors (guint *n);

/* ox_supply_find_conductor: by its id; (nullable) */
const OxConductor *ox_supply_find_conductor (const char *id);

/* ox_supply_resistance:
 * @celsius: of the conductor
 *
 *      R2 = R1 (1 + a (T2 - T1))
 *
 * Source: NFPA 70 Chapter 9 Table 8, note; IEC 60228 annex. Example: 12 AWG, 1.98 ohm/kft at 75 C, has 1.628 at 20 C.
 * Returns: ohm/km
 */
double ox_supply_resistance (const OxConductor *conductor, double celsius);

typedef struct
{
  double volts;   /* nominal, > 0 */
  double amperes; /* drawn, >= 0 */
  int phases;     /* 1 or 3 */
} OxSupply;

typedef struct
{
  double length;     /* m one way, >= 0 */
  double ohm_per_km; /* of one conductor, at its temperature */
} OxCord;

/* ox_supply_drop:
 * @cords: @n in series
 *
 *      U = k I sum (L R / 1000)        k = 2 for one phase, sqrt (3) for three
 *
 * Reactance is left out, which is small in cords of these sizes. Source: NFPA 70 Chapter 9, as commonly derived.
 * Example: 20 A over 100 ft of 12 AWG at 120 V drop by 7.92 V, 6.60 %.
 * Returns: volts
 */
double ox_supply_drop (const OxSupply *supply, const OxCord *cords, guint n);

/* ox_supply_drop_share: the drop as a share of the nominal voltage. Example: 7.92 V of 120 V are 0.066. */
double ox_supply_drop_share (const OxSupply *supply, const OxCord *cords, guint n);

/* ox_supply_longest:
 * @ohm_per_km: > 0
 * @share: limit, 0.03 for 3 %; > 0
 *
 *      L = p U 1000 / (k I R)
 *
 * Example: 16 A at 120 V over 12 AWG and 3 %: 56.8 ft.
 * Returns: m one way; G_MAXDOUBLE without a load
 */
double ox_supply_longest (const OxSupply *supply, double ohm_per_km, double share);

typedef enum
{
  OX_DROP_FINE,
  OX_DROP_HIGH,    /* over the first limit: a thicker or shorter cord is better */
  OX_DROP_TOO_HIGH /* over the second: the machine should not run on it */
} OxDropVerdict;

/* ox_supply_judge: @share against the limits @warn and @stop, a limit itself being allowed.
 * Example: at 0.03 and 0.05 of 120 V 3.6 V are fine and 3.7 V high; of 230 V 11.6 V are too high. */
OxDropVerdict ox_supply_judge (double share, double warn, double stop);

/* ox_supply_long_cord_allowance:
 * @length: m one way
 *
 *      0.005 % for each metre beyond 100 m, at most 0.5 %
 *
 * By how much the limit of a public supply may be raised on long runs. Source: BS 7671 Appendix 4.
 * Example: 150 m raise 5 % to 5.25 %.
 * Returns: a share to be added to the limit
 */
double ox_supply_long_cord_allowance (double length);

/* ox_supply_continuous_limit:
 * @circuit: rating in amperes
 * @continuous_share: 0.8: a circuit is to have 125 % of a load that lasts three hours or more
 *
 * Source: NFPA 70, continuous load. Example: 20 A carry 16 A.
 * Returns: amperes that may be drawn for hours
 */
double ox_supply_continuous_limit (double circuit, double continuous_share);

typedef enum
{
  OX_CIRCUIT_FINE,      /* may be drawn for hours */
  OX_CIRCUIT_SHORT,     /* for less than three hours only: over the share for continuous loads */
  OX_CIRCUIT_OVERLOADED /* over the rating */
} OxCircuitVerdict;

/* ox_supply_judge_circuit:
 * @amperes: drawn
 *
 * Source: NFPA 70, continuous load. Example: on 20 A at a share of 0.8, 16 A are fine, 18 A are not for hours, 21 A not at all.
 */
OxCircuitVerdict ox_supply_judge_circuit (double amperes, double circuit, double continuous_share);

G_END_DECLS
