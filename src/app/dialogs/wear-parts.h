/* Oxturn: app/dialogs/wear-parts - what of the machine is to be checked, after how many hours, and the hours run.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_wear_parts_open: the machine's wear parts to be changed, as one edit. Returns: (transfer none) */
GtkWindow *ox_wear_parts_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
