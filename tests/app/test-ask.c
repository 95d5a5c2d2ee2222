/* Oxturn: tests/app/test-ask - questions and bad news.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/ask.h"

#include "app/dialogs/keys.h"
#include "ui.h"

static void
answer_cb (guint answer, gpointer data)
{
  *(int *) data = (int) answer;
}

static GtkWindow *
ask (int *answer)
{
  *answer = -1;
  return ox_ask (NULL,
                 &(OxQuestion){ .title = "Save the changes?",
                                .text = "What is not saved is lost.",
                                .choices = { "_Cancel", "_Discard", "_Save" },
                                .destroys = 1 },
                 answer_cb, answer);
}

static void
test_default_destroys_nothing (void)
{
  int answer;
  GtkWindow *dialog = ask (&answer);
  GtkWidget *save = gtk_window_get_default_widget (dialog);

  g_assert_true (gtk_window_get_modal (dialog));
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (save)), ==, "_Save");
  g_assert_true (gtk_window_get_focus (dialog) == save);
  ox_ask_choose (dialog, 2);
  g_assert_cmpint (answer, ==, 2);
}

static void
test_escape_changes_nothing (void)
{
  int answer;
  GtkWindow *dialog = ask (&answer);

  gtk_test_widget_wait_for_draw (GTK_WIDGET (dialog));
  ox_ui_point (GTK_WIDGET (dialog), 10, 10);
  ox_ui_keys (GTK_WIDGET (dialog), "\033");
  OX_WAIT_FOR (answer == 0);
}

static void
test_closing_means_cancel (void)
{
  int answer;
  GtkWindow *dialog = ask (&answer);

  gtk_window_close (dialog);
  g_assert_cmpint (answer, ==, 0);
}

static void
test_keys_page (void)
{
  GtkWindow *page = ox_keys_present (NULL);

  g_object_add_weak_pointer (G_OBJECT (page), (gpointer *) &page);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (page));
  ox_ui_point (GTK_WIDGET (page), 30, 30);
  ox_ui_keys (GTK_WIDGET (page), "\033");
  OX_WAIT_FOR (page == NULL);
}

/* The licence in short is a link to the whole of it. */
static void
test_about (void)
{
  GtkAboutDialog *about = NULL;

  ox_about_present (NULL);
  for (guint i = 0; i < g_list_model_get_n_items (gtk_window_get_toplevels ()); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (gtk_window_get_toplevels (), i);

      if (GTK_IS_ABOUT_DIALOG (window))
        about = GTK_ABOUT_DIALOG (window);
    }
  g_assert_nonnull (about);
  g_assert_cmpstr (gtk_about_dialog_get_program_name (about), ==, "Oxturn");
  g_assert_cmpstr (gtk_about_dialog_get_version (about), ==, OX_VERSION);
  g_assert_cmpint (gtk_about_dialog_get_license_type (about), ==, GTK_LICENSE_GPL_3_0);
  g_assert_cmpstr (gtk_about_dialog_get_comments (about), !=, "");
  gtk_window_destroy (GTK_WINDOW (about));
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/ask/default-destroys-nothing", test_default_destroys_nothing);
  g_test_add_func ("/app/ask/escape-changes-nothing", test_escape_changes_nothing);
  g_test_add_func ("/app/ask/closing-means-cancel", test_closing_means_cancel);
  g_test_add_func ("/app/ask/keys-page", test_keys_page);
  g_test_add_func ("/app/ask/about", test_about);
  return g_test_run ();
}
