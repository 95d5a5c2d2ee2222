/* Oxturn: app/dialogs/ask - questions and bad news, the only dialogs that interrupt.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/ask.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxAskDone done; /* (nullable) */
  gpointer data;
  gboolean answered;
  GtkWidget *buttons[OX_ASK_MAX_CHOICES];
} Ask;

static void
answer (GtkWindow *dialog, guint i)
{
  Ask *ask = g_object_get_data (G_OBJECT (dialog), "ox-ask");
  OxAskDone done = ask->done;
  gpointer data = ask->data;

  if (ask->answered)
    return;
  ask->answered = TRUE;
  gtk_window_destroy (dialog);
  if (done != NULL)
    done (i, data);
}

void
ox_ask_choose (GtkWindow *dialog, guint i)
{
  answer (dialog, i);
}

static void
clicked_cb (GtkWidget *button, GtkWindow *dialog)
{
  Ask *ask = g_object_get_data (G_OBJECT (dialog), "ox-ask");
  guint i = 0;

  while (ask->buttons[i] != button)
    i++;
  answer (dialog, i);
}

static gboolean
close_cb (GtkWindow *dialog)
{
  answer (dialog, 0);
  return TRUE;
}

static gboolean
escape_cb (GtkWidget *dialog, GVariant *args, gpointer data)
{
  (void) args;
  (void) data;
  answer (GTK_WINDOW (dialog), 0);
  return TRUE;
}

static GtkWidget *
make_text (const OxQuestion *question)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *title = gtk_label_new (question->title);
  GtkWidget *text = gtk_label_new (question->text);

  gtk_label_set_wrap (GTK_LABEL (title), TRUE);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (title), 46);
  gtk_label_set_max_width_chars (GTK_LABEL (text), 52);
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_label_set_selectable (GTK_LABEL (text), TRUE);
  gtk_widget_set_can_focus (text, FALSE);
  gtk_widget_add_css_class (title, "title-4");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), text);
  return box;
}

static GtkWidget *
make_buttons (GtkWindow *dialog, Ask *ask, const OxQuestion *question)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  guint last = 0;

  gtk_widget_set_halign (row, GTK_ALIGN_END);
  for (guint i = 0; question->choices[i] != NULL; i++)
    {
      ask->buttons[i] = gtk_button_new_with_mnemonic (question->choices[i]);
      g_signal_connect (ask->buttons[i], "clicked", G_CALLBACK (clicked_cb), dialog);
      gtk_box_append (GTK_BOX (row), ask->buttons[i]);
      last = i;
    }
  if (question->destroys >= 0)
    gtk_widget_add_css_class (ask->buttons[question->destroys], "destructive-action");
  if ((int) last != question->destroys)
    {
      gtk_widget_add_css_class (ask->buttons[last], "suggested-action");
      gtk_window_set_default_widget (dialog, ask->buttons[last]);
    }
  return row;
}

GtkWindow *
ox_ask (GtkWindow *parent, const OxQuestion *question, OxAskDone done, gpointer data)
{
  GtkWindow *dialog = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE, "resizable", FALSE,
                                    "destroy-with-parent", TRUE, "title", question->title, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *bar = gtk_header_bar_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  Ask *ask = g_new0 (Ask, 1);

  ask->done = done;
  ask->data = data;
  g_object_set_data_full (G_OBJECT (dialog), "ox-ask", ask, g_free);
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (bar), gtk_label_new (NULL));
  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  gtk_window_set_titlebar (dialog, bar);
  gtk_widget_add_css_class (GTK_WIDGET (dialog), "ask");
  gtk_window_set_child (dialog, box);
  gtk_box_append (GTK_BOX (box), make_text (question));
  gtk_box_append (GTK_BOX (box), make_buttons (dialog, ask, question));
  gtk_window_set_focus (dialog, gtk_window_get_default_widget (dialog) != NULL ? gtk_window_get_default_widget (dialog)
                                                                               : ask->buttons[0]);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0), gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (dialog), keys);
  g_signal_connect (dialog, "close-request", G_CALLBACK (close_cb), NULL);
  gtk_window_present (dialog);
  return dialog;
}

void
ox_tell_error (GtkWindow *parent, const char *what, const GError *error)
{
  ox_ask (parent, &(OxQuestion){ .title = what, .text = error->message, .choices = { _ ("_Close") }, .destroys = -1 },
          NULL, NULL);
}
