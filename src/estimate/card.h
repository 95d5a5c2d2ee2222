/* Oxturn: estimate/card - what stands on the set-up card of the crew.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
G_BEGIN_DECLS

typedef struct
{
  const char *id;
  const char *section; /* "before", "start", "stop", "walking", "pattern", "parts" */
  char *text;          /* translated, filled from the job */
} OxCardLine;

/* ox_card_lines: data/trade/card.csv filled from the job, then a line for each wear part whose check falls due within the job or soon after.
 * Returns: (transfer full): of OxCardLine */
GPtrArray *ox_card_lines (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
