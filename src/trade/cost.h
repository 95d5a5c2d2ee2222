/* Oxturn: trade/cost - lines of a quote and their total.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rates and currency are the user's. See trade/money.h on how amounts are rounded: a reader with a pencil gets the same.
 */
#pragma once
#include "trade/money.h"
G_BEGIN_DECLS

typedef struct
{
  const char *what;  /* borrowed: shown text */
  const char *room;  /* borrowed: id of the room, "" for the whole job */
  double quantity;
  guint decimals;    /* with which the quantity is shown and reckoned, 0 to 4 */
  const char *unit;  /* borrowed: "m2", "h" ... */
  OxMoney rate;      /* for one unit */
  OxMoney amount;    /* filled by ox_cost_sum() */
} OxCostLine;

typedef struct
{
  OxMoney subtotal;    /* of all lines */
  OxMoney contingency; /* share of the subtotal */
  OxMoney total;
} OxCostSum;

/* ox_cost_sum:
 * @lines: @n of them; the amount of each is set
 * @contingency: hundredths of a percent on the subtotal, 1000 is 10 %
 * @out: (out): untouched on failure
 *
 *      amount = quantity rate      subtotal = sum of amounts      total = subtotal + contingency
 *
 * Example: 230.76 m2 at 6.50 and 1.99 h at 48.00 are 1,499.94 and 95.52; with 10 % the total is 1,755.01.
 * Returns: FALSE when a quantity is no number or an amount is beyond OX_MONEY_MAX
 */
gboolean ox_cost_sum (OxCostLine *lines, guint n, guint contingency, OxCostSum *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_cost_room: sum of the amounts of one room's lines, after ox_cost_sum(). Example: lines of 1,499.94 and 95.52 in the same room are 1,595.46. */
OxMoney ox_cost_room (const OxCostLine *lines, guint n, const char *room);

G_END_DECLS
