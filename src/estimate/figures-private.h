/* Oxturn: estimate/figures - the groups of figures; private to this module.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/estimate.h"
G_BEGIN_DECLS

/* ox_figure_add: @figure.label and @figure.assumption (NULL for none) are taken over */
void ox_figure_add (OxEstimate *estimate, OxFigure figure);

void ox_figures_floor (OxEstimate *estimate);
void ox_figures_time (OxEstimate *estimate);
void ox_figures_profile (OxEstimate *estimate);
void ox_figures_abrasive (OxEstimate *estimate);
void ox_figures_dust (OxEstimate *estimate);
void ox_figures_supply (OxEstimate *estimate);
void ox_figures_hose (OxEstimate *estimate);
void ox_figures_exposure (OxEstimate *estimate);
void ox_figures_wear (OxEstimate *estimate);
void ox_figures_tests (OxEstimate *estimate);

G_END_DECLS
