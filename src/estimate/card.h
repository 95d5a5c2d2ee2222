/* Oxturn: estimate/card - what stands on the set-up card of the crew.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
G_BEGIN_DECLS

typedef struct
{
  const char *id;
  const char *section; /* "before", "start", "stop", "walking", "pattern" */
  char *text;          /* translated, filled from the job */
} OxCardLine;

/* ox_card_lines: data/trade/card.csv filled from the job
 * Returns: (transfer full): of OxCardLine */
GPtrArray *ox_card_lines (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;

/* ox_card_clock_text: a place on the face of a clock: "8:30" for 8.5; (transfer full) */
char *ox_card_clock_text (double clock) G_GNUC_WARN_UNUSED_RESULT;

/* ox_card_part_run: h of the wheel that wear part @part of the machine has run since its last check, the meter hours of the record among them (trade/wear.h) */
double ox_card_part_run (const OxEstimate *estimate, guint part);

/* ox_card_brings_part: whether a spare for wear part @part of the machine is to be brought: its check falls due within what is left of the job or a shift after */
gboolean ox_card_brings_part (const OxEstimate *estimate, guint part);

G_END_DECLS
