/* Oxturn: trade/money
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/money.h"
#include <math.h>

#define CENT (OX_MONEY_ONE / 100)
#define DECIMALS 4

static const gint64 powers[] = { 1, 10, 100, 1000, 10000 };

/* Digits up to a sign that is none; FALSE when there are too many to be an amount. */
static gboolean
parse_digits (const char **text, gint64 *value, guint *count)
{
  *count = 0;
  for (; g_ascii_isdigit (**text); (*text)++, (*count)++)
    {
      *value = *value * 10 + (**text - '0');
      if (*value > OX_MONEY_MAX)
        return FALSE;
    }
  return TRUE;
}

gboolean
ox_money_parse (const char *text, OxMoney *out)
{
  while (g_ascii_isspace (*text))
    text++;
  gboolean negative = *text == '-';
  if (*text == '-' || *text == '+')
    text++;

  gint64 value = 0;
  guint whole, decimals = 0;
  if (!parse_digits (&text, &value, &whole))
    return FALSE;
  if (*text == '.' || *text == ',')
    {
      text++;
      if (!parse_digits (&text, &value, &decimals) || decimals == 0 || decimals > DECIMALS)
        return FALSE;
    }
  while (g_ascii_isspace (*text))
    text++;
  if (*text != '\0' || whole == 0 || value > OX_MONEY_MAX / powers[DECIMALS - decimals])
    return FALSE;

  value *= powers[DECIMALS - decimals];
  *out = negative ? -value : value;
  return TRUE;
}

char *
ox_money_text (OxMoney amount)
{
  guint64 size = amount < 0 ? -(guint64) amount : (guint64) amount;
  guint decimals = size % 100 == 0 ? 2 : size % 10 == 0 ? 3 : 4;
  return g_strdup_printf ("%s%" G_GUINT64_FORMAT ".%0*" G_GUINT64_FORMAT, amount < 0 ? "-" : "", size / OX_MONEY_ONE,
                          (int) decimals, size % OX_MONEY_ONE / powers[DECIMALS - decimals]);
}

/* a b / divisor to the nearest cent, halves away from zero; a b may be far beyond 64 bits while the result is not.
 * With a = p divisor + q the product is p b, whole, and q b / divisor, whose numerator is small. */
static gboolean
product_to_cent (gint64 a, gint64 b, gint64 divisor, OxMoney *out)
{
  gboolean negative = (a < 0) != (b < 0);
  gint64 p = ABS (a) / divisor, q = ABS (a) % divisor, whole, part, sum;
  if (__builtin_mul_overflow (p, ABS (b), &whole) || __builtin_mul_overflow (q, ABS (b), &part)
      || __builtin_add_overflow (whole, part / divisor, &sum) || sum > OX_MONEY_MAX)
    return FALSE;
  gint64 twice_rest = 2 * (sum % CENT * divisor + part % divisor);
  gint64 cents = sum / CENT + (twice_rest >= CENT * divisor ? 1 : 0);
  *out = negative ? -cents * CENT : cents * CENT;
  return TRUE;
}

OxMoney
ox_money_to_cent (OxMoney amount)
{
  OxMoney out = amount;
  gboolean fits = product_to_cent (amount, 1, 1, &out);
  g_return_val_if_fail (fits, amount);
  return out;
}

gboolean
ox_money_line (OxMoney rate, double quantity, guint decimals, OxMoney *out)
{
  g_return_val_if_fail (decimals < G_N_ELEMENTS (powers), FALSE);
  double scaled = quantity * (double) powers[decimals];
  if (!(fabs (scaled) < 9e15)) /* where doubles still count whole numbers; no NaN either */
    return FALSE;
  return product_to_cent (rate, llround (scaled), powers[decimals], out);
}

gboolean
ox_money_share (OxMoney amount, guint hundredths, OxMoney *out)
{
  return product_to_cent (amount, hundredths, 10000, out);
}

void
ox_money_split (OxMoney total, const double *weights, guint n, OxMoney *parts)
{
  double sum = 0;
  for (guint i = 0; i < n; i++)
    sum += weights[i];
  g_return_if_fail (sum > 0 && total % CENT == 0);

  gint64 cents = ABS (total) / CENT, given = 0;
  g_autofree double *rest = g_new (double, n);
  for (guint i = 0; i < n; i++)
    {
      double exact = (double) cents * (weights[i] / sum);
      parts[i] = (gint64) floor (exact);
      rest[i] = exact - floor (exact);
      given += parts[i];
    }
  for (; given < cents; given++)
    {
      guint largest = 0;
      for (guint i = 1; i < n; i++)
        if (rest[i] > rest[largest])
          largest = i;
      parts[largest]++;
      rest[largest] = -1;
    }
  for (guint i = 0; i < n; i++)
    parts[i] *= total < 0 ? -CENT : CENT;
}
