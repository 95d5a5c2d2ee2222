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
 * Hours of the crew go by the strips of a room, with set-up and clean-up to the whole job; edge hours, areas and hours of the wheel by room;
 * drums are whole and the job's. Quantities are rounded to two decimals, as they are shown, before they are multiplied.
 */
OxQuote *ox_quote_new (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
void ox_quote_free (OxQuote *quote);

/* ox_cost_driver_unit, ox_cost_driver_name: "h", "kg", "m2" ..., and the usual translated name of a rate of that kind */
const char *ox_cost_driver_unit (OxCostDriver driver);
const char *ox_cost_driver_name (OxCostDriver driver);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxQuote, ox_quote_free)
G_END_DECLS
