/* Oxturn: trade/money - amounts in decimal, exact to the ten-thousandth.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An amount is a whole number of ten-thousandths of the user's currency, so that nothing is lost between a rate, a line and
 * a total. A line is rounded to the cent once, from its exact value; a total is the sum of its rounded lines, so a
 * reader with a pencil gets the same. Halves are rounded away from zero, as in trade.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef gint64 OxMoney;

#define OX_MONEY_ONE G_GINT64_CONSTANT (10000)
#define OX_MONEY_MAX (G_GINT64_CONSTANT (1000000000000) * OX_MONEY_ONE) /* a million millions, either way */

/* ox_money_parse:
 * @text: digits, at most one point or comma, at most 4 decimals, a sign in front, blanks around
 * @out: (out): untouched on failure
 *
 * Example: " 12,50 " is 125,000 ten-thousandths; "1,000.00" and "0.00001" are no amounts.
 * Returns: FALSE when the text is no such amount or beyond OX_MONEY_MAX
 */
gboolean ox_money_parse (const char *text, OxMoney *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_money_text:
 * With a decimal point, two decimals, and as many more up to four as the amount needs: "12.50", "0.0475".
 * Returns: (transfer full)
 */
char *ox_money_text (OxMoney amount) G_GNUC_WARN_UNUSED_RESULT;

/* ox_money_to_cent: rounded to two decimals. Example: 2.3450 becomes 2.35, -2.3450 becomes -2.35. */
OxMoney ox_money_to_cent (OxMoney amount);

/* ox_money_line:
 * @rate: for one unit
 * @quantity: rounded to @decimals first, since that is what the paper shows
 * @decimals: 0 to 4
 * @out: (out): rate times the rounded quantity, to the cent; untouched on failure
 *
 * Example: 38.50 for 7.3333 h, shown as 7.33, is 282.21 (282.205 exactly).
 * Returns: FALSE when the quantity is no number or the amount is beyond OX_MONEY_MAX
 */
gboolean ox_money_line (OxMoney rate, double quantity, guint decimals, OxMoney *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_money_share:
 * @hundredths: of a percent: 750 is 7.5 %; >= 0
 *
 * Contingency or tax on an amount, to the cent. Example: 7.5 % of 199.99 are 15.00 (14.99925).
 * Returns: FALSE when beyond OX_MONEY_MAX
 */
gboolean ox_money_share (OxMoney amount, guint hundredths, OxMoney *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_money_split:
 * @total: whole cents
 * @weights: @n, >= 0, not all 0
 * @parts: (out): @n amounts in whole cents that add up to @total exactly
 *
 * By the largest remainders, the earlier part first among equals. Example: 100.00 over 1, 1, 1: 33.34, 33.33, 33.33.
 */
void ox_money_split (OxMoney total, const double *weights, guint n, OxMoney *parts);

G_END_DECLS
