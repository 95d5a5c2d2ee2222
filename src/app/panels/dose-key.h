/* Oxturn: app/panels/dose-key - what the looks of the dose map mean, and how much floor has them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_dose_key_new: seen while the action "win.show-dose" of its window is on */
GtkWidget *ox_dose_key_new (OxSession *session) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
