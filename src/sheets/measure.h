/* Oxturn: sheets/measure - quantities as they stand in tables and tags: rounded alike, so that columns line up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Always a decimal point, in every locale. All are (transfer full). What is set out on the floor (dimensions, chalk lines) is written in
 * full with ox_units_length_text() instead.
 */
#pragma once
#include "base/units.h"
G_BEGIN_DECLS

char *ox_measure_number (double value, guint decimals) G_GNUC_WARN_UNUSED_RESULT; /* all decimals written */
char *ox_measure_length (OxUnits units, double metres) G_GNUC_WARN_UNUSED_RESULT; /* to 10 mm or to an inch */
char *ox_measure_area (OxUnits units, double square_metres) G_GNUC_WARN_UNUSED_RESULT; /* small areas with one decimal more */
char *ox_measure_area_to (OxUnits units, double square_metres, guint decimals) G_GNUC_WARN_UNUSED_RESULT;
char *ox_measure_speed (OxUnits units, double m_per_min) G_GNUC_WARN_UNUSED_RESULT; /* "6 m/min", "19.7 ft/min" */
char *ox_measure_rate (OxUnits units, double m2_per_h) G_GNUC_WARN_UNUSED_RESULT; /* "4 m²/h", "43.1 ft²/h" */
char *ox_measure_length_rate (OxUnits units, double m_per_h) G_GNUC_WARN_UNUSED_RESULT; /* "12 m/h", "39.4 ft/h" */

/* ox_measure_share: rounds @parts, all 0 or more, to multiples of @step that add up to @sum, which is their own sum rounded up or down
 * to a multiple of @step: what is printed adds up to the sum that is printed. Each is rounded down, and what is then missing goes to
 * those with the largest remainders, of equal ones to the first (method of largest remainders). None moves by a whole step. */
void ox_measure_share (double *parts, guint n, double step, double sum);

G_END_DECLS
