/* Oxturn: tests/app/ui - a window under test, and hands that use it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/window.h"
#include "support/wait.h"
G_BEGIN_DECLS

/* ox_ui_init: in place of g_test_init() */
void ox_ui_init (int *argc, char ***argv);

/* ox_ui_open: a window of our own, shown and drawn; @job (nullable): an empty floor */
OxWindow *ox_ui_open (const OxJob *job);

/* ox_ui_settle: waits until floor and plan on screen are those of now */
void ox_ui_settle (OxWindow *window);

/* ox_ui_close: closes without asking, and asserts that window and session are gone */
void ox_ui_close (OxWindow *window);

/* ox_ui_find: the visible widget of @type below @root with this accessible label; fails when there is none */
GtkWidget *ox_ui_find (GtkWidget *root, GType type, const char *label);

/* ox_ui_fill: types @text into the field of this name below @root, and leaves it there */
void ox_ui_fill (GtkWidget *root, const char *name, const char *text);

/* ox_ui_find_dialog: the one window besides @window; NULL when there is none */
GtkWindow *ox_ui_find_dialog (OxWindow *window);

/* ox_ui_name: what a screen reader would call @widget: its label or those that label it, "" when nothing; (transfer full) */
char *ox_ui_name (GtkWidget *widget) G_GNUC_WARN_UNUSED_RESULT;

/* Real events of the X server (XTEST), in pixels of @widget. */
void ox_ui_point (GtkWidget *widget, double x, double y);
void ox_ui_button (GtkWidget *widget, guint button, gboolean down);
void ox_ui_click (GtkWidget *widget, double x, double y);
void ox_ui_keys (GtkWidget *widget, const char *keys); /* signs; \n, \t and \033 are Enter, Tab and Escape */

/* ox_ui_chord: one key with others held down: X11 keysyms, @held (nullable) ends with 0 */
void ox_ui_chord (GtkWidget *widget, const guint *held, guint keysym);

/* ox_ui_layouts: @layouts: "us,ru"; the one of number @group is in use from now on */
void ox_ui_layouts (GtkWidget *widget, const char *layouts, guint group);

/* ox_ui_picture: what @widget looks like */
GdkTexture *ox_ui_picture (GtkWidget *widget) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
