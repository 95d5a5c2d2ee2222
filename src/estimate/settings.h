/* Oxturn: estimate/settings - how the machine is set up for the job, line by line.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
G_BEGIN_DECLS

typedef struct
{
  char *label; /* translated, as is @value */
  char *value;
} OxSetting;

/* ox_settings_of:
 *
 * Machine, abrasive, filling, chalk lines room by room and coat by coat where they differ, walking speeds with the seconds of a stretch walked by the clock,
 * also those that test patches give for a room and those of condition areas, current against plate and circuit, hose and cords.
 * Returns: (transfer full): of OxSetting
 */
GPtrArray *ox_settings_of (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;

/* ox_setting_distance: what is walked by the clock, m: 10 m, or 30 ft */
double ox_setting_distance (OxUnits units);

/* ox_setting_seconds: @speed: m/min, > 0. Example: 10 m at 6 m/min take 100 s */
double ox_setting_seconds (OxUnits units, double speed);

/* the rest: as text, translated; all (transfer full) */
char *ox_setting_distance_text (OxUnits units) G_GNUC_WARN_UNUSED_RESULT;
char *ox_setting_speed_text (OxUnits units, double speed) G_GNUC_WARN_UNUSED_RESULT; /* "6.0 m/min", "19.7 ft/min" */
char *ox_setting_abrasive_text (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT; /* "S330", or which size is usual where the job names none */
char *ox_setting_litres_text (double mass) G_GNUC_WARN_UNUSED_RESULT; /* "5.6 L" that 25 kg of loose shot fill, as buckets are told */
char *ox_setting_cord_text (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
char *ox_setting_circuit_text (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT; /* "20 A", "____ A" where it is not known */
char *ox_setting_limit_text (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT; /* what may be drawn of it for hours, and no more than the plate says */

/* ox_setting_spacing: of the chalk lines of the first room that has any, m; as the machine's least overlap has it where none has */
double ox_setting_spacing (const OxPlan *plan);

G_END_DECLS
