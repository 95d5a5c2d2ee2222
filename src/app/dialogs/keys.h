/* Oxturn: app/dialogs/keys - the page of keyboard shortcuts, made from the table of actions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_keys_present: @parent: (nullable). Returns: (transfer none) */
GtkWindow *ox_keys_present (GtkWindow *parent);

/* ox_about_present: version and licence */
void ox_about_present (GtkWindow *parent);

G_END_DECLS
