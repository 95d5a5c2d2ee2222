/* Oxturn: base/number - numbers as text for files and tables, the same in every locale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_number_append:
 * @text: appended to
 * @value: a finite number
 * @decimals: most digits after the point, 0 to 12; trailing zeros are left out
 *
 * Always a decimal point, never an exponent, never "-0".
 */
void ox_number_append (GString *text, double value, guint decimals);

/* ox_number_text:
 * Returns: (transfer full): as ox_number_append(), in a new string
 */
char *ox_number_text (double value, guint decimals) G_GNUC_WARN_UNUSED_RESULT;

/* ox_number_parse:
 * @text: the whole text must be one number with a decimal point, blanks around it allowed
 * @out: (out): finite; untouched on failure
 *
 * Returns: FALSE for anything else, also for NaN, infinity, hexadecimal and the empty text
 */
gboolean ox_number_parse (const char *text, double *out) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
