/* Oxturn: app/dialogs/form - a small window that asks for figures and then does one thing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/form.h"

#include "app/field.h"

#include <glib/gi18n-lib.h>

#define TOLD_CHARS 60

typedef struct
{
  OxForm form;
  char *note; /* Owned: what is told while nothing is wrong */
  GtkLabel *told;
} Open;

static Open *
open_of (GtkWindow *window)
{
  return g_object_get_data (G_OBJECT (window), "ox-form");
}

void
ox_form_tell (GtkWindow *window, const char *text, gboolean problem)
{
  Open *self = open_of (window);
  GtkLabel *told = self->told;

  if (!problem)
    {
      char *note = g_strdup (text); /* which may be the old one itself */

      g_free (self->note);
      self->note = note;
    }
  gtk_label_set_text (told, problem ? text : self->note);
  gtk_widget_set_visible (GTK_WIDGET (told), *gtk_label_get_text (told) != '\0');
  if (problem)
    gtk_widget_add_css_class (GTK_WIDGET (told), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (told), "error");
}

void
ox_form_settle (GtkWindow *window)
{
  ox_form_tell (window, open_of (window)->note, FALSE);
}

const char *
ox_form_get_told (GtkWindow *window)
{
  return gtk_label_get_text (open_of (window)->told);
}

/* The first field below @widget that holds what was refused; NULL when there is none. */
static OxField *
find_wrong (GtkWidget *widget)
{
  if (OX_IS_FIELD (widget) && ox_field_find_complaint (OX_FIELD (widget)) != NULL)
    return OX_FIELD (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      OxField *found = gtk_widget_get_visible (child) ? find_wrong (child) : NULL;

      if (found != NULL)
        return found;
    }
  return NULL;
}

gboolean
ox_form_is_right (GtkWindow *window, GtkWidget *root)
{
  OxField *wrong = NULL;

  /* What is still being typed is taken when its field loses the focus. */
  gtk_window_set_focus (window, NULL);
  wrong = find_wrong (root);
  if (wrong == NULL)
    return TRUE;
  ox_form_tell (window, ox_field_find_complaint (wrong), TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (wrong));
  return FALSE;
}

void
ox_form_accept (GtkWindow *window)
{
  Open *self = open_of (window);
  g_autofree char *why = NULL;

  if (!ox_form_is_right (window, GTK_WIDGET (window)))
    return;
  why = self->form.done (self->form.data);
  if (why != NULL)
    ox_form_tell (window, why, TRUE);
  else
    gtk_window_destroy (window);
}

static gboolean
escape_cb (GtkWidget *window, GVariant *args, gpointer data)
{
  (void) args;
  (void) data;
  gtk_window_destroy (GTK_WINDOW (window));
  return TRUE;
}

/* Fields tell the window what is wrong with them; in a form they tell the form. */
static void
tell_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  const char *text = g_variant_get_string (value, NULL);

  (void) action;
  if (*text != '\0')
    ox_form_tell (data, text, TRUE);
  else
    ox_form_settle (data);
}

static void
add_tell (GtkWindow *window)
{
  static const GActionEntry entries[] = { { .name = "tell", .activate = tell_cb, .parameter_type = "s" } };
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();

  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), window);
  gtk_widget_insert_action_group (GTK_WIDGET (window), "win", G_ACTION_GROUP (group));
}

/* Enter in any field does what the form is for. */
static void
make_fields_activate (GtkWidget *widget)
{
  if (OX_IS_FIELD (widget))
    gtk_entry_set_activates_default (GTK_ENTRY (widget), TRUE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    make_fields_activate (child);
}

static GtkWidget *
make_bar (GtkWindow *window, const char *accept)
{
  GtkWidget *bar = gtk_header_bar_new ();
  GtkWidget *cancel = gtk_button_new_with_mnemonic (_ ("_Cancel"));
  GtkWidget *done = gtk_button_new_with_mnemonic (accept);

  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), cancel);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), done);
  gtk_widget_add_css_class (done, "suggested-action");
  gtk_window_set_default_widget (window, done);
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), window);
  g_signal_connect_swapped (done, "clicked", G_CALLBACK (ox_form_accept), window);
  return bar;
}

static void
open_free (gpointer data)
{
  Open *self = data;

  if (self->form.free_data != NULL)
    self->form.free_data (self->form.data);
  g_free (self->note);
  g_free (self);
}

GtkWindow *
ox_form_open (GtkWindow *parent, const OxForm *form)
{
  GtkWindow *window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "modal", TRUE, "destroy-with-parent",
                                    TRUE, "title", form->title, NULL);
  GtkEventController *keys = gtk_shortcut_controller_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  Open *self = g_new0 (Open, 1);

  self->form = *form;
  self->told = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (self->told, TRUE);
  gtk_label_set_xalign (self->told, 0);
  /* As wide as it would like to be: a window whose height went by another width would be too low at first. */
  gtk_label_set_width_chars (self->told, TOLD_CHARS);
  gtk_label_set_max_width_chars (self->told, TOLD_CHARS);
  gtk_widget_add_css_class (box, "panel");
  gtk_box_append (GTK_BOX (box), form->body);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->told));
  g_object_set_data_full (G_OBJECT (window), "ox-form", self, open_free);
  ox_form_tell (window, form->note != NULL ? form->note : "", FALSE);
  add_tell (window);
  make_fields_activate (form->body);
  gtk_window_set_titlebar (window, make_bar (window, form->accept));
  gtk_window_set_child (window, box);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0), gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
  gtk_window_present (window);
  return window;
}
