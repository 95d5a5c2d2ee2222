/* Oxturn: app/inspector/inspector - all sections, for whatever is selected.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSession *session; /* Borrowed */
  GtkLabel *several;
  GtkWidget *acts; /* what can be done with all of it */
} Inspector;

static void
update (GtkWidget *root)
{
  Inspector *self = g_object_get_data (G_OBJECT (root), "ox-inspector");
  guint n = g_strv_length ((char **) ox_session_get_selection (self->session));
  g_autofree char *text
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u item selected", "%u items selected", n), n);

  gtk_label_set_text (self->several, text);
  gtk_widget_set_visible (GTK_WIDGET (self->several), n > 1);
  gtk_widget_set_visible (self->acts, n > 0);
}

GtkWidget *
ox_inspector_new (OxSession *session)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  Inspector *self = g_new0 (Inspector, 1);
  GtkWidget *(*const sections[]) (OxSession *) = {
    ox_room_section_new,     ox_side_section_new,    ox_obstacle_section_new,
    ox_excluded_section_new, ox_doorway_section_new, ox_station_section_new,
    ox_traced_section_new, ox_condition_section_new, ox_joint_section_new,
  };

  static const struct
  {
    const char *label;
    const char *action;
  } ways[] = { { N_ ("D_uplicate"), "win.duplicate" },
               { N_ ("_Repeat\342\200\246"), "win.repeat" },
               { N_ ("D_elete"), "win.delete" } };

  self->session = session;
  self->several = GTK_LABEL (ox_heading_new (NULL));
  self->acts = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (_ (ways[i].label));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), ways[i].action);
      gtk_box_append (GTK_BOX (self->acts), button);
    }
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    gtk_box_append (GTK_BOX (root), sections[i](session));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->several));
  gtk_box_append (GTK_BOX (root), self->acts);
  g_object_set_data_full (G_OBJECT (root), "ox-inspector", self, g_free);
  g_signal_connect_object (session, "selection-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  update (root);
  return root;
}
