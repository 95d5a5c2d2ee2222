/* Oxturn: app/inspector/section - what the sections of the inspector share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "session/selection.h"

gboolean
ox_section_item (OxSection *self, guint *index)
{
  const char *const *selection = ox_session_get_selection (self->session);
  g_autofree char *item = NULL;

  if (selection[0] == NULL || selection[1] != NULL)
    return FALSE;
  item = ox_selection_item (selection[0]);
  return ox_job_find (ox_session_get_job (self->session), item, index) == self->kind;
}

static void
update (OxSection *self)
{
  guint index = 0;
  gboolean mine = ox_section_item (self, &index);

  if (mine)
    self->fill (self, ox_session_get_job (self->session), index,
                ox_selection_side (ox_session_get_selection (self->session)[0]));
  gtk_widget_set_visible (self->root, mine);
}

static void
changed_cb (GtkWidget *root)
{
  update (g_object_get_data (G_OBJECT (root), "ox-section"));
}

GtkWidget *
ox_section_init (OxSection *self, OxSession *session, OxItemKind kind, const char *title)
{
  self->session = session;
  self->kind = kind;
  self->root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->rows = GTK_GRID (ox_rows_new ());
  gtk_box_append (GTK_BOX (self->root), ox_heading_new (title));
  gtk_box_append (GTK_BOX (self->root), GTK_WIDGET (self->rows));
  g_object_set_data_full (G_OBJECT (self->root), "ox-section", self, g_free);
  return self->root;
}

void
ox_section_start (OxSection *self)
{
  g_signal_connect_object (self->session, "job-changed", G_CALLBACK (changed_cb), self->root, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "selection-changed", G_CALLBACK (changed_cb), self->root, G_CONNECT_SWAPPED);
  update (self);
}

void
ox_section_take (OxSession *session, OxJob *job, const GError *error, const char *label, OxField *field)
{
  g_autoptr (OxJob) result = job;

  if (result != NULL)
    ox_session_apply (session, result, label, NULL, NULL);
  else if (field != NULL)
    ox_field_refuse (field, error->message);
}
