/* Oxturn: app/window-size - how large the last window was, for the next one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a window stands is the desktop's business. Kept in a file of its own, which may be missing, old or spoiled.
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

char *ox_window_size_default_file (void) G_GNUC_WARN_UNUSED_RESULT; /* in the user's folder of settings; (transfer full) */

/* ox_window_size_restore: @window, not shown yet, gets the size of @file and is maximised when that one was */
void ox_window_size_restore (GtkWindow *window, const char *file);

/* ox_window_size_save: what cannot be written is left: a size is worth no message */
void ox_window_size_save (GtkWindow *window, const char *file);

G_END_DECLS
