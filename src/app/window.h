/* Oxturn: app/window - one job in one window: stages above, panel and floor in the middle, quantities below.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
#include "app/dialogs/choose-file.h"
G_BEGIN_DECLS

#define OX_TYPE_WINDOW (ox_window_get_type ())
G_DECLARE_FINAL_TYPE (OxWindow, ox_window, OX, WINDOW, GtkApplicationWindow)

/* ox_window_new: @application: (nullable): NULL in tests. Returns: (transfer none): owned by GTK */
OxWindow *ox_window_new (GtkApplication *application, OxSession *session);

/* What the window shows; owned by it. */
OxSession *ox_window_get_session (OxWindow *window);
OxCanvas *ox_window_get_canvas (OxWindow *window);

/* ox_window_set_chooser: what asks for names of files from now on */
void ox_window_set_chooser (OxWindow *window, OxChooseFile chooser);

/* ox_window_is_untouched: never saved, nothing drawn: opening a file may take its place */
gboolean ox_window_is_untouched (OxWindow *window);

/* ox_window_open: opens @path here; tells the user when it cannot. Returns: whether it did */
gboolean ox_window_open (OxWindow *window, const char *path);

/* ox_window_tell: shows a translated sentence for a while */
void ox_window_tell (OxWindow *window, const char *text);

const char *ox_window_get_told (OxWindow *window); /* what is shown there now: the sentence, or the tool's hint */

G_END_DECLS
