/* Oxturn: app/window-size - how large the last window was, for the next one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-size.h"

#define GROUP "window"
#define LEAST_PX 320
#define MOST_PX 16384

char *
ox_window_size_default_file (void)
{
  return g_build_filename (g_get_user_config_dir (), "oxturn", "window", NULL);
}

/* 0 for a size that is no window's. */
static int
read_px (GKeyFile *keys, const char *key)
{
  int px = g_key_file_get_integer (keys, GROUP, key, NULL);

  return px >= LEAST_PX && px <= MOST_PX ? px : 0;
}

void
ox_window_size_restore (GtkWindow *window, OxWindowPanes *panes, const char *file)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *stage = NULL;
  int width, height;

  *panes = (OxWindowPanes){ 0 };
  if (!g_key_file_load_from_file (keys, file, G_KEY_FILE_NONE, NULL))
    return;
  width = read_px (keys, "width");
  height = read_px (keys, "height");
  if (width > 0 && height > 0)
    gtk_window_set_default_size (window, width, height);
  if (g_key_file_get_boolean (keys, GROUP, "maximised", NULL))
    gtk_window_maximize (window);
  panes->panel_px = read_px (keys, "panel");
  stage = g_key_file_get_string (keys, GROUP, "stage", NULL);
  g_strlcpy (panes->stage, stage != NULL ? stage : "", sizeof panes->stage);
}

/* Of a maximised window GTK tells the size that it had before. */
void
ox_window_size_save (GtkWindow *window, const OxWindowPanes *panes, const char *file)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *folder = g_path_get_dirname (file);
  int width = 0, height = 0;

  gtk_window_get_default_size (window, &width, &height);
  g_key_file_set_integer (keys, GROUP, "width", width);
  g_key_file_set_integer (keys, GROUP, "height", height);
  g_key_file_set_boolean (keys, GROUP, "maximised", gtk_window_is_maximized (window));
  g_key_file_set_integer (keys, GROUP, "panel", panes->panel_px);
  g_key_file_set_string (keys, GROUP, "stage", panes->stage);
  if (g_mkdir_with_parents (folder, 0700) == 0)
    g_key_file_save_to_file (keys, file, NULL);
}
