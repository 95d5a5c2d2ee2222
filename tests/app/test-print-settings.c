/* Oxturn: tests/app/test-print-settings - which printer was chosen last, and how it was set, for the next print.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/print-settings.h"

#include "support/ox-test.h"
#include "ui.h"

/* Printer and how it prints come back; what was of one print does not, and no scale but the true one. */
static void
test_comes_back (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "made", "here", "print", NULL);
  g_autoptr (GtkPrintSettings) chosen = gtk_print_settings_new ();
  g_autoptr (GtkPrintSettings) back = NULL;

  gtk_print_settings_set_printer (chosen, "Plotter, first floor");
  gtk_print_settings_set_use_color (chosen, FALSE);
  gtk_print_settings_set_duplex (chosen, GTK_PRINT_DUPLEX_HORIZONTAL);
  gtk_print_settings_set_n_copies (chosen, 7);
  gtk_print_settings_set_print_pages (chosen, GTK_PRINT_PAGES_CURRENT);
  gtk_print_settings_set_scale (chosen, 70);
  gtk_print_settings_set_number_up (chosen, 4);
  gtk_print_settings_set_orientation (chosen, GTK_PAGE_ORIENTATION_LANDSCAPE);
  gtk_print_settings_set (chosen, GTK_PRINT_SETTINGS_OUTPUT_URI, "file:///tmp/before.pdf");
  ox_print_settings_save (chosen, file);
  g_assert_cmpint (gtk_print_settings_get_n_copies (chosen), ==, 7); /* of the print at hand nothing is taken */
  back = ox_print_settings_restore (file);
  g_assert_cmpstr (gtk_print_settings_get_printer (back), ==, "Plotter, first floor");
  g_assert_false (gtk_print_settings_get_use_color (back));
  g_assert_cmpint (gtk_print_settings_get_duplex (back), ==, GTK_PRINT_DUPLEX_HORIZONTAL);
  g_assert_cmpint (gtk_print_settings_get_n_copies (back), ==, 1);
  g_assert_cmpint (gtk_print_settings_get_print_pages (back), ==, GTK_PRINT_PAGES_ALL);
  g_assert_cmpfloat (gtk_print_settings_get_scale (back), ==, 100);
  g_assert_cmpint (gtk_print_settings_get_number_up (back), ==, 1);
  g_assert_false (gtk_print_settings_has_key (back, GTK_PRINT_SETTINGS_ORIENTATION));
  g_assert_null (gtk_print_settings_get (back, GTK_PRINT_SETTINGS_OUTPUT_URI));
  ox_test_folder_free (folder);
}

/* Nothing there, nonsense, or a scale written in by hand: true scale, and a printer's own settings. */
static void
test_spoiled (void)
{
  static const char *const texts[] = { "", "no key file", "[Print Settings]\nscale=70\nnumber-up=4\n" };
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "print", NULL);

  for (guint i = 0; i <= G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GtkPrintSettings) settings = ox_print_settings_restore (file); /* not there at first */

      g_assert_null (gtk_print_settings_get_printer (settings));
      g_assert_cmpfloat (gtk_print_settings_get_scale (settings), ==, 100);
      g_assert_cmpint (gtk_print_settings_get_number_up (settings), ==, 1);
      if (i < G_N_ELEMENTS (texts))
        g_assert_true (g_file_set_contents (file, texts[i], -1, NULL));
    }
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/print-settings/comes-back", test_comes_back);
  g_test_add_func ("/app/print-settings/spoiled", test_spoiled);
  return g_test_run ();
}
