/* Oxturn: base/units - lengths, areas and angles as people read and type them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stored values are metres and stay what they are whatever the display is. 1 in = 0.0254 m, 1 ft = 0.3048 m exactly
 * (16 CFR 500.19).
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef enum
{
  OX_UNITS_METRES,      /* 12.345 m */
  OX_UNITS_MILLIMETRES, /* 12345 mm */
  OX_UNITS_FEET         /* 40'-6" to 1/16 in; areas in square feet */
} OxUnits;

/* ox_units_length_text:
 * @metres: finite
 * @with_unit: whether "m" or "mm" stands behind; feet and inches always carry their marks
 *
 * Metres with 3 decimals at most and 2 at least, millimetres whole, feet-inches to the nearest 1/16 in, rounded before it
 * is split, so that 11.996" becomes 1'-0".
 * Returns: (transfer full)
 */
char *ox_units_length_text (OxUnits units, double metres, gboolean with_unit) G_GNUC_WARN_UNUSED_RESULT;

/* ox_units_area_text: 12.3 m² or 132 ft².  Returns: (transfer full) */
char *ox_units_area_text (OxUnits units, double square_metres) G_GNUC_WARN_UNUSED_RESULT;

/* ox_units_length_parse:
 * @text: "6.35", "6,35", "6350 mm", "2.5m", "250cm", "12'-6 1/2\"", "12ft 6in", "3/4\"", "-1' 2 1/2\"" and the like;
 *        a bare number is in @units (a bare number in feet mode is feet)
 * @out: (out): metres; untouched on failure
 *
 * Refuses what is ambiguous or senseless: two points, "12'-13\"", "1/0", the empty text.
 * Returns: FALSE when the text is no length
 */
gboolean ox_units_length_parse (OxUnits units, const char *text, double *out) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
