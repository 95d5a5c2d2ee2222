/* Oxturn: app/dialogs/repeat - what is selected, again and again in a row or a grid.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_repeat_open: asks how often and how far apart, then repeats the selected items as one edit. Returns: (transfer none) */
GtkWindow *ox_repeat_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
