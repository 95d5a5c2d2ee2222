/* Oxturn: app/print-settings - which printer was chosen last, and how it was set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/print-settings.h"

#define GROUP "Print Settings"

char *
ox_print_settings_default_file (void)
{
  return g_build_filename (g_get_user_config_dir (), "oxturn", "print", NULL);
}

/* What one print has and the next has not. Paper comes from the sheets; a scale or several sheets on a page would not
 * be true. */
static void
drop_passing (GtkPrintSettings *settings)
{
  static const char *const keys[]
      = { GTK_PRINT_SETTINGS_PRINT_PAGES,      GTK_PRINT_SETTINGS_PAGE_RANGES,  GTK_PRINT_SETTINGS_PAGE_SET,
          GTK_PRINT_SETTINGS_N_COPIES,         GTK_PRINT_SETTINGS_OUTPUT_URI,   GTK_PRINT_SETTINGS_OUTPUT_BASENAME,
          GTK_PRINT_SETTINGS_OUTPUT_DIR,       GTK_PRINT_SETTINGS_SCALE,        GTK_PRINT_SETTINGS_NUMBER_UP,
          GTK_PRINT_SETTINGS_NUMBER_UP_LAYOUT, GTK_PRINT_SETTINGS_PAPER_FORMAT, GTK_PRINT_SETTINGS_PAPER_WIDTH,
          GTK_PRINT_SETTINGS_PAPER_HEIGHT,     GTK_PRINT_SETTINGS_ORIENTATION };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_print_settings_unset (settings, keys[i]);
}

GtkPrintSettings *
ox_print_settings_restore (const char *file)
{
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new_from_file (file, NULL);

  if (settings == NULL)
    return gtk_print_settings_new ();
  drop_passing (settings);
  return g_steal_pointer (&settings);
}

void
ox_print_settings_save (GtkPrintSettings *settings, const char *file)
{
  g_autoptr (GtkPrintSettings) kept = gtk_print_settings_copy (settings);
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *folder = g_path_get_dirname (file);

  drop_passing (kept);
  gtk_print_settings_to_key_file (kept, keys, GROUP);
  if (g_mkdir_with_parents (folder, 0700) == 0)
    g_key_file_save_to_file (keys, file, NULL);
}
