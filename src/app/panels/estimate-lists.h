/* Oxturn: app/panels/estimate-lists - shifts, cost and profile checks of an estimate as rows of the side panel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
#include "estimate/estimate.h"
G_BEGIN_DECLS

/* ox_estimate_row: @name and @value on one line, what it rests on below; @verdict marks what is to be looked at */
GtkWidget *ox_estimate_row (const char *name, const char *value, const char *below, OxVerdict verdict) G_GNUC_WARN_UNUSED_RESULT;

/* ox_estimate_list_shifts: what falls in each shift of each machine */
void ox_estimate_list_shifts (GtkBox *box, const OxEstimate *estimate);

/* ox_estimate_list_cost: lines, sums by room where there are several, subtotal, contingency, total */
void ox_estimate_list_cost (GtkBox *box, const OxEstimate *estimate);

/* ox_estimate_list_checks: where the profile is to be read; a click brings the place into sight on @canvas */
void ox_estimate_list_checks (GtkBox *box, const OxEstimate *estimate, OxCanvas *canvas);

G_END_DECLS
