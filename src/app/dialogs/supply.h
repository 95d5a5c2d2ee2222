/* Oxturn: app/dialogs/supply - what the machine draws, the circuit and the cords, and what is lost on the way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_supply_open: machine and outfit are changed in one edit; loss, longest cord and circuit follow what is typed. Returns: (transfer none) */
GtkWindow *ox_supply_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
