/* Oxturn: tests/app/test-window-size - how large the last window was, for the next one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-size.h"

#include "support/ox-test.h"
#include "ui.h"

static GtkWindow *
restored (const char *file, int *width, int *height)
{
  GtkWindow *window = GTK_WINDOW (gtk_window_new ());
  OxWindowPanes panes;

  gtk_window_set_default_size (window, 700, 500);
  ox_window_size_restore (window, &panes, file);
  gtk_window_get_default_size (window, width, height);
  return window;
}

static void
test_comes_back (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "made", "here", "window", NULL);
  GtkWindow *window = GTK_WINDOW (gtk_window_new ());
  int width, height;

  gtk_window_set_default_size (window, 1111, 777);
  ox_window_size_save (window, &(OxWindowPanes){ 0 }, file);
  gtk_window_destroy (window);
  window = restored (file, &width, &height);
  g_assert_cmpint (width, ==, 1111);
  g_assert_cmpint (height, ==, 777);
  gtk_window_destroy (window);
  ox_test_folder_free (folder);
}

/* A window that was maximised is so again, and keeps the size that it has otherwise. */
static void
test_maximised (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "window", NULL);
  GtkWindow *window = GTK_WINDOW (gtk_window_new ());
  int width, height;

  gtk_window_set_default_size (window, 900, 600);
  gtk_window_maximize (window);
  gtk_window_present (window);
  OX_WAIT_FOR (gtk_window_is_maximized (window));
  ox_window_size_save (window, &(OxWindowPanes){ 0 }, file);
  gtk_window_destroy (window);
  window = restored (file, &width, &height);
  gtk_window_present (window);
  OX_WAIT_FOR (gtk_window_is_maximized (window));
  g_assert_cmpint (width, ==, 900);
  g_assert_cmpint (height, ==, 600);
  gtk_window_destroy (window);
  ox_test_folder_free (folder);
}

/* Nothing there, nonsense, or a size that no screen has: the window is as large as it would have been. */
static void
test_spoiled (void)
{
  static const char *const texts[] = { "", "no key file", "[window]\nwidth=wide\nheight=5\n",
                                       "[window]\nwidth=-4\nheight=800\n", "[window]\nwidth=99999999\nheight=800\n" };
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "window", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      int width, height;
      GtkWindow *window;

      g_assert_true (g_file_set_contents (file, texts[i], -1, NULL));
      window = restored (file, &width, &height);
      g_assert_cmpint (width, ==, 700);
      g_assert_cmpint (height, ==, 500);
      gtk_window_destroy (window);
    }
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/window-size/comes-back", test_comes_back);
  g_test_add_func ("/app/window-size/maximised", test_maximised);
  g_test_add_func ("/app/window-size/spoiled", test_spoiled);
  return g_test_run ();
}
