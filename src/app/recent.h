/* Oxturn: app/recent - the jobs that were open or saved last, for the menu.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list is the desktop's, shared with its file choosers; nothing is kept here.
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_RECENT_MOST 6

/* ox_recent_note: @path was opened or saved just now */
void ox_recent_note (GtkRecentManager *manager, const char *path);

/* ox_recent_forget: @path could not be opened: it is offered no more */
void ox_recent_forget (GtkRecentManager *manager, const char *path);

/* ox_recent_list: paths of jobs that are still there, the newest first, OX_RECENT_MOST at most; NULL-ended; (transfer full) */
char **ox_recent_list (GtkRecentManager *manager) G_GNUC_WARN_UNUSED_RESULT;

/* ox_recent_fill: an entry of @menu for each of them that activates "win.open-recent" with its path */
void ox_recent_fill (GMenu *menu, GtkRecentManager *manager);

G_END_DECLS
