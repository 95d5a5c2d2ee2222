/* Oxturn: app/colour-scheme - light or dark as the desktop is set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK alone does not read that setting. Desktops tell it as "color-scheme" of "org.freedesktop.appearance" by their portal of settings:
 * 0 no preference, 1 dark, 2 light (XDG Desktop Portal, org.freedesktop.portal.Settings).
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_COLOUR_SCHEME_PORTAL "org.freedesktop.portal.Desktop"

/* ox_colour_scheme_follow: from now on, as long as @connection lives; where there is no portal, or no preference, GTK's own setting stands
 * @connection: (nullable): of the session
 * @portal: (nullable): name on the bus; NULL on a connection without a bus */
void ox_colour_scheme_follow (GDBusConnection *connection, const char *portal, GtkSettings *settings);

G_END_DECLS
