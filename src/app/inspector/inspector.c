/* Oxturn: app/inspector/inspector - all sections, for whatever is selected.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSession *session; /* Borrowed */
  GtkLabel *several;
  GtkWidget *remove;
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
  gtk_widget_set_visible (self->remove, n > 0);
}

GtkWidget *
ox_inspector_new (OxSession *session)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  Inspector *self = g_new0 (Inspector, 1);
  GtkWidget *(*const sections[]) (OxSession *) = {
    ox_room_section_new,     ox_side_section_new,    ox_obstacle_section_new,
    ox_excluded_section_new, ox_doorway_section_new, ox_station_section_new,
  };

  self->session = session;
  self->several = GTK_LABEL (ox_heading_new (NULL));
  self->remove = gtk_button_new_with_mnemonic (_ ("D_elete"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->remove), "win.delete");
  gtk_widget_set_halign (self->remove, GTK_ALIGN_START);
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    gtk_box_append (GTK_BOX (root), sections[i](session));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->several));
  gtk_box_append (GTK_BOX (root), self->remove);
  g_object_set_data_full (G_OBJECT (root), "ox-inspector", self, g_free);
  g_signal_connect_object (session, "selection-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  update (root);
  return root;
}
