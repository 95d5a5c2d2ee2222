/* Oxturn: trade/profile - shot dose, walking speed and the surface profile they give.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A profile is a CSP number, 1 to 10, read by comparing with chips: an ordinal, no height can be computed from it. Where a
 * depth was measured it is the mean texture depth in mm. How deep a machine cuts at which speed is learned from test
 * patches; slower walking gives a deeper profile, and standing still digs a hole.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_profile_texture_depth:
 * @volume_ml: V, sand or glass spheres spread out; > 0
 * @diameters_mm: @n readings of the patch's diameter, equally spaced; > 0
 * @n: 1 or more; the standard asks for 4
 *
 *      MTD = 4 V / (pi D^2)        V in mm3, D mean diameter in mm
 *
 * Source: ASTM E965, volumetric technique. Holds above about 0.25 mm.
 * Example: 50 ml over 200 mm are 1.5915 mm.
 * Returns: mean texture depth in mm
 */
double ox_profile_texture_depth (double volume_ml, const double *diameters_mm, guint n);

/* ox_profile_dose:
 * @flow: abrasive thrown, kg/min; > 0
 * @width: m, > 0. The blast width gives the dose under the pattern, blast width less overlap the mean dose of the field
 * @speed: walking speed, m/min; > 0
 *
 *      dose = flow / (w v)
 *
 * Derived: what is thrown in a minute lies on the floor passed in a minute.
 * Example: 100 kg/min over 0.254 m at 6 m/min are 65.617 kg/m2.
 * Returns: kg/m2
 */
double ox_profile_dose (double flow, double width, double speed);

typedef struct
{
  double speed;    /* m/min, > 0 */
  double depth_mm; /* mean texture depth measured on the patch, > 0 */
} OxTestPatch;

/* depth = factor / speed ^ exponent, fitted to patches */
typedef struct
{
  double factor;            /* mm at 1 m/min */
  double exponent;          /* 1 with a single speed */
  double spread;            /* patches lie within about this factor above and below the curve, >= 1; 0 when too few to tell */
  double slowest, fastest;  /* m/min tried */
} OxProfileFit;

typedef enum
{
  OX_FIT_GOOD,
  OX_FIT_NO_PATCH, /* nothing to fit to */
  OX_FIT_REVERSED  /* the patches are no shallower at higher speed: something else changed between them */
} OxFitVerdict;

/* ox_profile_fit:
 * @patches: @n of them, in any order
 * @out: (out): filled when the verdict is OX_FIT_GOOD, else untouched
 *
 *      one speed:       depth ~ 1 / v, through the geometric mean of the depths
 *      more speeds:     ln depth = ln factor - exponent ln v, least squares
 *      spread:          exp of the residual standard deviation of ln depth, on n - 1 or n - 2 degrees of freedom
 *
 * Source: ordinary least squares; the power law is an assumption that the spread puts to the test.
 * Example: patches of 0.6 mm at 3 m/min and 0.3 mm at 6 m/min fit 1.8 / v exactly.
 */
OxFitVerdict ox_profile_fit (const OxTestPatch *patches, guint n, OxProfileFit *out);

/* ox_profile_depth: mm at @speed (m/min, > 0). Example: 1.8 / v at 4 m/min is 0.45 mm. */
double ox_profile_depth (const OxProfileFit *fit, double speed);

/* ox_profile_speed: m/min that gives @depth_mm (> 0), (factor / depth) ^ (1 / exponent). Example: 0.45 mm at 4 m/min. */
double ox_profile_speed (const OxProfileFit *fit, double depth_mm);

/* ox_profile_is_tried: whether @speed lies between the slowest and the fastest patch, a thousandth forgiven.
 * Example: with the slowest patch at 4 m/min 4 is tried, 3.9 is not. */
gboolean ox_profile_is_tried (const OxProfileFit *fit, double speed);

typedef struct
{
  const char *id, *name;
  int csp_low, csp_high;
  int hand_tool; /* 1: done by hand, as edge work is */
  int typical;   /* 1: no published source */
  const char *source;
} OxProfileMethod;

/* ox_profile_methods: ways to prepare concrete and what they reach, data/trade/methods.csv; @n: (out) */
const OxProfileMethod *ox_profile_methods (guint *n);

/* ox_profile_find_method: by its id, for example "shot"; (nullable) */
const OxProfileMethod *ox_profile_find_method (const char *id);

typedef struct
{
  const char *id, *name;
  double thick_low_mm, thick_high_mm; /* 0: no upper end */
  int csp_low, csp_high;
  int typical;
  const char *source;
} OxProfileSystem;

/* ox_profile_systems: what is laid afterwards and the profile usually asked for, data/trade/systems.csv; @n: (out) */
const OxProfileSystem *ox_profile_systems (guint *n);

typedef struct
{
  const char *id;
  int csp;
  double depth_low_mm, depth_high_mm; /* mean depth removed */
  double dose_low, dose_high;         /* shot thrown, kg/m2 */
  int typical;
  const char *source;
} OxProfileStarter;

/* ox_profile_starter:
 * @csp: 1 to 10
 *
 * What a profile step usually takes, from data/trade/starters.csv: between its rows by straight interpolation, beyond
 * its ends the last row. A figure to start an estimate with, until a test patch was blasted.
 * Example: CSP 4 lies halfway between 0.1 to 0.3 mm and 0.3 to 0.8 mm: 0.2 to 0.55 mm.
 */
OxProfileStarter ox_profile_starter (int csp);

/* ox_profile_tilt:
 * @left_mm, @right_mm: texture depth in the left and the right third of one strip, looking along the travel; > 0
 *
 *      tilt = (right - left) / (right + left)
 *
 * How unevenly the pattern cuts from side to side: 0 is even, above 0 the right side is cut deeper. Derived.
 * Example: 0.40 mm left and 0.60 mm right are 0.2, that is 20 % off the middle to either side.
 */
double ox_profile_tilt (double left_mm, double right_mm);

G_END_DECLS
