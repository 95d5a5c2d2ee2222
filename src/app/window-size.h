/* Oxturn: app/window-size - how large the last window was, for the next one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a window stands is the desktop's business. Kept in a file of its own, which may be missing, old or spoiled.
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

char *ox_window_size_default_file (void) G_GNUC_WARN_UNUSED_RESULT; /* in the user's folder of settings; (transfer full) */

/* How its inside is parted. */
typedef struct
{
  int panel_px;   /* width of the panel beside the floor; 0: as it comes */
  char stage[16]; /* name of the stage, "" for none */
} OxWindowPanes;

/* ox_window_size_restore: @window, not shown yet, gets the size of @file and is maximised when that one was
 * @panes: (out): all 0 where @file says nothing of them */
void ox_window_size_restore (GtkWindow *window, OxWindowPanes *panes, const char *file);

/* ox_window_size_save: what cannot be written is left: a size is worth no message */
void ox_window_size_save (GtkWindow *window, const OxWindowPanes *panes, const char *file);

G_END_DECLS
