/* Oxturn: trade/exposure - means over a working day of eight hours: dust in the air, noise.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For planning alone: what a person is exposed to is measured, and the law of the place says what is allowed.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* A stretch of a day with one level. */
typedef struct
{
  double level; /* concentration in any unit, or dB(A) */
  double hours; /* >= 0 */
} OxExposure;

/* ox_exposure_mean:
 *
 *      TWA = sum (C t) / 8      C concentration, t hours of it; the rest of the day is clean
 *
 * Source: 29 CFR 1926.1153, definitions of action level and limit (mean over 8 h). Example: 80 ug/m3 for 3 h are a mean of 30.
 * Returns: in the unit of the levels
 */
double ox_exposure_mean (const OxExposure *parts, guint n);

/* ox_exposure_hours: hours at @level, > 0, until the mean of the day is @limit, as above; 24 at most. Example: 160 against 50 take 2.5 h. */
double ox_exposure_hours (double limit, double level);

/* ox_noise_hours:
 * @level: dB(A)
 *
 *      T = 8 / 2^((L - 90) / 5)
 *
 * Source: WAC 296-817-30015, which 29 CFR 1926.52 Table D-2 rounds. Example: 98 dB(A) are allowed for 2.639 h.
 */
double ox_noise_hours (double level);

/* ox_noise_dose:
 *
 *      D = 100 sum (t / T)
 *
 * Source: 29 CFR 1926.52 (d). Example: 5 h at 98 dB(A) are 189.46 %.
 * Returns: %; over 100 is more than is allowed there
 */
double ox_noise_dose (const OxExposure *parts, guint n);

/* ox_noise_mean:
 * @dose: %, > 0
 *
 *      TWA = 16.61 log10 (D / 100) + 90
 *
 * Source: WAC 296-817-30015. Example: 189.46 % are 94.61 dB(A).
 * Returns: dB(A) that give the same dose in 8 h
 */
double ox_noise_mean (double dose);

/* ox_noise_day_level:
 *
 *      LEX,8h = 10 log10 (sum (t 10^(L / 10)) / 8)
 *
 * Source: Directive 2003/10/EC, by ISO 1999. Example: 98 dB(A) for 3 h and 88 for 5 h are 94.41 dB(A).
 * Returns: dB(A); 0 without any exposure
 */
double ox_noise_day_level (const OxExposure *parts, guint n);

G_END_DECLS
