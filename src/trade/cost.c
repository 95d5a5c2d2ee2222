/* Oxturn: trade/cost
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/cost.h"

static gboolean
add (OxMoney *sum, OxMoney amount)
{
  if (__builtin_add_overflow (*sum, amount, sum))
    return FALSE;
  return ABS (*sum) <= OX_MONEY_MAX;
}

gboolean
ox_cost_sum (OxCostLine *lines, guint n, guint contingency, OxCostSum *out)
{
  OxCostSum sum = { 0 };
  for (guint i = 0; i < n; i++)
    if (!ox_money_line (lines[i].rate, lines[i].quantity, lines[i].decimals, &lines[i].amount)
        || !add (&sum.subtotal, lines[i].amount))
      return FALSE;
  if (!ox_money_share (sum.subtotal, contingency, &sum.contingency))
    return FALSE;
  sum.total = sum.subtotal;
  if (!add (&sum.total, sum.contingency))
    return FALSE;
  *out = sum;
  return TRUE;
}

OxMoney
ox_cost_room (const OxCostLine *lines, guint n, const char *room)
{
  OxMoney sum = 0;
  for (guint i = 0; i < n; i++)
    if (g_str_equal (lines[i].room, room))
      sum += lines[i].amount;
  return sum;
}
