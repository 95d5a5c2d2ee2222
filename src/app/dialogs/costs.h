/* Oxturn: app/dialogs/costs - currency, rates of cost, contingency.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_costs_open: what a unit of each kind costs in this job, as one edit; amounts are decimal and kept as typed. Returns: (transfer none) */
GtkWindow *ox_costs_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
