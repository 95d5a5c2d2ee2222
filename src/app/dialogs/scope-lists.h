/* Oxturn: app/dialogs/scope-lists - what is included, what is not, what is taken for granted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_scope_lists_open: the lines of the scope drawing, ours to choose from and the user's own, as one edit. Returns: (transfer none) */
GtkWindow *ox_scope_lists_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
