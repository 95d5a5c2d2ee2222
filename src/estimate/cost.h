/* Oxturn: estimate/cost - what the plan costs at the rates of the job, room by room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
#include "trade/cost.h"
G_BEGIN_DECLS

typedef struct
{
  GArray *lines; /* OxCostLine: rate by rate, room by room, what belongs to no room last; texts borrowed from job and estimate */
  OxCostSum sum;
  gboolean valid; /* FALSE where an amount is beyond what can be reckoned; then there are no sums */
} OxQuote;

/* ox_quote_new:
 * @estimate: with its plan must live as long as the quote
 *
 * Hours of the crew are those of a room's strips with their starts and moves, and of the refills, drum changes and wear checks that fall due in it; those of
 * setting up and cleaning up are the whole job's. Edge hours and metres, areas, hours of the wheel and abrasive by its share of them go by room;
 * drums are whole and the job's. Quantities are rounded to two decimals, as they are shown, before they are multiplied.
 */
OxQuote *ox_quote_new (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;

/* ox_quote_left_new: the same of what is left (estimate/left.h), without what is paid once; (nullable): NULL where nothing of the plan is done */
OxQuote *ox_quote_left_new (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
void ox_quote_free (OxQuote *quote);

/* ox_cost_driver_name: the usual translated name of a rate of that kind */
const char *ox_cost_driver_name (OxCostDriver driver);

/* ox_cost_text: as ox_money_text(), with the decimal sign of the language: for people; (transfer full) */
char *ox_cost_text (OxMoney amount) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxQuote, ox_quote_free)
G_END_DECLS
