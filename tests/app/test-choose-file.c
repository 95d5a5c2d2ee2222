/* Oxturn: tests/app/test-choose-file - asks for the name of a file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/choose-file.h"

#include "support/ox-test.h"
#include "ui.h"

static void
test_ending (void)
{
  static const struct
  {
    const char *path;
    OxFilePurpose purpose;
    const char *expected;
  } cases[] = {
    { "/a/hall", OX_FILE_SAVE_JOB, "/a/hall.oxturn" },        { "/a/hall.oxturn", OX_FILE_SAVE_JOB, "/a/hall.oxturn" },
    { "/a/hall.OXTURN", OX_FILE_SAVE_JOB, "/a/hall.OXTURN" }, { "/a/hall.v2", OX_FILE_SAVE_PDF, "/a/hall.v2.pdf" },
    { "/a/hall.svg", OX_FILE_SAVE_SVG, "/a/hall.svg" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = ox_file_with_ending (cases[i].path, cases[i].purpose);

      g_assert_cmpstr (path, ==, cases[i].expected);
    }
}

/* Also what a filter of the chooser lets through beside its first ending. */
static void
test_has_ending (void)
{
  g_assert_true (ox_file_has_ending ("/a/hall.PDF", OX_FILE_OPEN_TRACED));
  g_assert_true (ox_file_has_ending ("/a/hall.v2.jpeg", OX_FILE_OPEN_TRACED));
  g_assert_false (ox_file_has_ending ("/a/jpeg", OX_FILE_OPEN_TRACED));
  g_assert_false (ox_file_has_ending ("/a/hall.oxturn", OX_FILE_OPEN_TRACED));
  g_assert_false (ox_file_has_ending ("/a.svg/hall", OX_FILE_OPEN_TRACED));
}

static void
chosen_cb (const char *path, gpointer data)
{
  *(char **) data = g_strdup (path != NULL ? path : "nothing");
}

/* Without a portal the chooser is a dialog of GTK's own among the windows. */
static GtkWidget *
find_chooser (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      if (GTK_IS_FILE_CHOOSER (window))
        return window;
    }
  return NULL;
}

/* The chooser comes to a folder of its own accord. It is not told another: that of GTK 4.18 then now and then loses
 * count of the buttons of its path. */
static gboolean
has_folder (void)
{
  g_autoptr (GFile) folder = gtk_file_chooser_get_current_folder (GTK_FILE_CHOOSER (find_chooser ()));
  return folder != NULL;
}

static void
test_cancelled (void)
{
  OxWindow *window = ox_ui_open (NULL);
  g_autofree char *got = NULL;

  ox_choose_file (GTK_WINDOW (window), OX_FILE_SAVE_PDF, "hall.pdf", chosen_cb, &got);
  OX_WAIT_FOR (find_chooser () != NULL);
  gtk_dialog_response (GTK_DIALOG (find_chooser ()), GTK_RESPONSE_CANCEL);
  OX_WAIT_FOR (got != NULL);
  g_assert_cmpstr (got, ==, "nothing");
  ox_ui_close (window);
}

static void
test_chosen (void)
{
  OxWindow *window = ox_ui_open (NULL);
  g_autofree char *name = NULL;
  g_autofree char *got = NULL;

  ox_choose_file (GTK_WINDOW (window), OX_FILE_SAVE_PDF, "plan-x", chosen_cb, &got);
  OX_WAIT_FOR (find_chooser () != NULL);
  gtk_test_widget_wait_for_draw (find_chooser ());
  OX_WAIT_FOR (has_folder ());
  OX_WAIT_FOR ((g_free (name), name = gtk_file_chooser_get_current_name (GTK_FILE_CHOOSER (find_chooser ()))) != NULL
               && g_str_equal (name, "plan-x"));
  gtk_dialog_response (GTK_DIALOG (find_chooser ()), GTK_RESPONSE_ACCEPT);
  OX_WAIT_FOR (got != NULL);
  g_assert_true (g_str_has_suffix (got, "plan-x.pdf"));
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/choose-file/ending", test_ending);
  g_test_add_func ("/app/choose-file/has-ending", test_has_ending);
  g_test_add_func ("/app/choose-file/cancelled", test_cancelled);
  g_test_add_func ("/app/choose-file/chosen", test_chosen);
  return g_test_run ();
}
