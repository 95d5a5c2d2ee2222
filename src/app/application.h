/* Oxturn: app/application - the program: its windows, the files it is given, and work that comes back after a crash.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_APPLICATION_ID "org.oxturn.Oxturn"

#define OX_TYPE_APPLICATION (ox_application_get_type ())
G_DECLARE_FINAL_TYPE (OxApplication, ox_application, OX, APPLICATION, GtkApplication)

OxApplication *ox_application_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_application_prepare_display: our icons and our style sheet; once a display */
void ox_application_prepare_display (GdkDisplay *display);

G_END_DECLS
