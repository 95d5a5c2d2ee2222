/* Oxturn: trade/abrasive - steel shot: what is used up, what to bring, and the size numbers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_abrasive_use:
 * @dose: shot thrown, kg/m2; >= 0
 * @cycles: throws a grain lives through; > 0
 * @floor_loss: left behind on the floor, kg/m2; >= 0
 *
 *      use = dose / cycles + floor loss
 *
 * The first part breaks down and leaves with the dust, the second is swept up with the magnet. Of kilograms thrown in all, instead of
 * a dose, it gives kilograms.
 * Derived. Example: 70 kg/m2 that live 2,500 throws use 0.028 kg/m2 besides the loss.
 * Returns: kg/m2
 */
double ox_abrasive_use (double dose, double cycles, double floor_loss);

/* ox_abrasive_lost:
 * @minutes: of strips, >= 0
 * @flow: shot thrown, kg/min; >= 0
 * @loss_share: of what is thrown, lost or broken down; 0 to 1
 *
 *      lost = t flow loss
 *
 * What is missing from the hopper after these minutes, and what a job uses up after all of its strips.
 * Derived. Example: 600 min at 20 kg/min and 0.12 % lose 14.4 kg.
 * Returns: kg
 */
double ox_abrasive_lost (double minutes, double flow, double loss_share);

typedef struct
{
  double charge;      /* kg that fill the machine, >= 0 */
  double area;        /* m2, >= 0 */
  double use;         /* kg/m2, >= 0 */
  double contingency; /* share on top, >= 0 */
  double bag;         /* kg in one, > 0 */
} OxAbrasiveOrder;

/* ox_abrasive_bags:
 *
 *      bags = ceil ((charge + area use) (1 + contingency) / bag)
 *
 * Derived. Example: 50 kg in the machine and 230 m2 at 0.08 kg/m2 with 10 % are 75.24 kg, so 4 bags of 25 kg.
 */
guint ox_abrasive_bags (const OxAbrasiveOrder *order);

/* ox_abrasive_litres:
 * @mass: kg, >= 0
 * @bulk: density of the loose shot, kg/m3; > 0
 *
 *      V = 1000 m / bulk
 *
 * What it fills of a bucket. Derived; the density is the "shot-bulk" of trade/defaults.h. Example: a bag of 25 kg at 4,485 kg/m3 is 5.574 L.
 * Returns: L
 */
double ox_abrasive_litres (double mass, double bulk);

/* ox_abrasive_grain_mg:
 * @diameter_mm, @density: g/cm3
 *
 *      m = pi / 6 d^3 rho          a sphere, mm3 times g/cm3 being mg
 *
 * Example: 0.85 mm at 7.4 g/cm3 weigh 2.3795 mg, 420,255 to the kilogram.
 */
double ox_abrasive_grain_mg (double diameter_mm, double density);

/* ox_abrasive_wheel_efficiency:
 * @flow: kg/min, @power: kW, @speed: m/s at which the grains leave the wheel
 *
 *      e = flow (v^2 / 2) / (60,000 P)
 *
 * Share of the motor's power found again in the grains. Derived from the kinetic energy.
 * Example: 1,040 kg/min at 75 m/s from 74.57 kW is 0.654.
 */
double ox_abrasive_wheel_efficiency (double flow, double power, double speed);

typedef struct
{
  const char *id;                        /* "S330" */
  double all_pass_mm;                    /* screen that everything passes */
  double most_on_mm, most_on_share;      /* at most this share stays on it; 0: no such screen */
  double nominal_mm, nominal_share;      /* at least this share stays on it, cumulative */
  double least_on_mm, least_on_share;    /* likewise, one screen finer */
  int usual_csp_low, usual_csp_high;     /* common practice, to be calibrated; 0: not usual on concrete */
  int typical;
  const char *source;
} OxShotSize;

/* ox_abrasive_sizes: from coarse to fine, data/trade/shot.csv; @n: (out) */
const OxShotSize *ox_abrasive_sizes (guint *n);

/* ox_abrasive_find_size: by its number, for example "S330"; (nullable) */
const OxShotSize *ox_abrasive_find_size (const char *id);

/* ox_abrasive_usual:
 * @csp: 1 to 10, the profile wanted
 *
 * S330 where its usual range holds @csp, else the finest size whose range does. A figure to start a test patch with, common practice,
 * no source. Example: CSP 3 to 5 start with S330, CSP 6 with S390.
 * Returns: (nullable): NULL where no size is usual for it
 */
const OxShotSize *ox_abrasive_usual (int csp);

/* ox_abrasive_opening_mm:
 * @number: of the size, 330 for S330
 *
 * Nominal opening: ten-thousandths of an inch. Source: SAE J444. Example: 330 is 0.8382 mm.
 */
double ox_abrasive_opening_mm (guint number);

G_END_DECLS
