/* Oxturn: app/dialogs/lines - a table in a form whose lines are added and removed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/lines.h"

#include "app/rows.h"

#include <glib/gi18n-lib.h>

#define TALLEST_PX 300

struct _OxLines
{
  OxLinesKind kind;
  guint n_cells;
  GtkWidget *root;
  GtkGrid *grid; /* headings in row 0 */
  GtkWidget *scrolled;
  GtkWidget *more;
  GPtrArray
      *lines; /* of GtkWidget **: cells, then the button that removes the line; owned arrays of borrowed widgets */
};

static void
name_cell (OxLines *self, guint line, guint cell, GtkWidget *widget)
{
  g_autofree char *name = g_strdup_printf ("%s %u", self->kind.headings[cell], line + 1);

  if (OX_IS_FIELD (widget))
    ox_field_set_name (OX_FIELD (widget), name);
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
number (OxLines *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      GtkWidget **cells = ox_lines_get (self, i);
      g_autofree char *name = g_strdup_printf (_ ("Remove line %u"), i + 1);

      for (guint k = 0; k < self->n_cells; k++)
        name_cell (self, i, k, cells[k]);
      gtk_accessible_update_property (GTK_ACCESSIBLE (cells[self->n_cells]), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      gtk_widget_set_tooltip_text (cells[self->n_cells], name);
    }
  gtk_widget_set_visible (self->scrolled, self->lines->len > 0);
  gtk_widget_set_sensitive (self->more, self->lines->len < self->kind.most);
}

static void
remove_cb (OxLines *self, GtkWidget *button)
{
  for (guint i = 0; i < self->lines->len; i++)
    if (ox_lines_get (self, i)[self->n_cells] == button)
      {
        gtk_widget_grab_focus (self->more);
        g_ptr_array_remove_index (self->lines, i);
        gtk_grid_remove_row (self->grid, (int) i + 1);
        number (self);
        if (self->kind.changed != NULL)
          self->kind.changed (self->kind.data);
        return;
      }
}

GtkWidget **
ox_lines_add (OxLines *self)
{
  GtkWidget **cells = g_new0 (GtkWidget *, self->n_cells + 1);
  int row = (int) self->lines->len + 1;

  if (self->lines->len >= self->kind.most)
    {
      g_free (cells);
      return NULL;
    }
  self->kind.make (cells, self->kind.data);
  cells[self->n_cells] = gtk_button_new_from_icon_name ("list-remove-symbolic");
  gtk_button_set_has_frame (GTK_BUTTON (cells[self->n_cells]), FALSE);
  g_signal_connect_swapped (cells[self->n_cells], "clicked", G_CALLBACK (remove_cb), self);
  for (guint k = 0; k <= self->n_cells; k++)
    gtk_grid_attach (self->grid, cells[k], (int) k, row, 1, 1);
  for (guint k = 0; k < self->n_cells; k++)
    if (OX_IS_FIELD (cells[k]))
      gtk_entry_set_activates_default (GTK_ENTRY (cells[k]), TRUE);
  g_ptr_array_add (self->lines, cells);
  number (self);
  return cells;
}

static void
more_cb (OxLines *self)
{
  GtkWidget **cells = ox_lines_add (self);
  GtkRoot *window = gtk_widget_get_root (self->root);

  if (cells == NULL)
    return;
  /* As high as it now wants to be: a window that is shown grows by itself to what it needs only, and the table scrolls. */
  if (GTK_IS_WINDOW (window))
    gtk_window_set_default_size (GTK_WINDOW (window), -1, -1);
  gtk_widget_grab_focus (cells[0]);
  if (self->kind.changed != NULL)
    self->kind.changed (self->kind.data);
}

guint
ox_lines_get_count (const OxLines *self)
{
  return self->lines->len;
}

GtkWidget **
ox_lines_get (const OxLines *self, guint i)
{
  return g_ptr_array_index (self->lines, i);
}

GtkWidget *
ox_lines_get_widget (OxLines *self)
{
  return self->root;
}

static void
lines_free (gpointer data)
{
  OxLines *self = data;

  g_ptr_array_unref (self->lines);
  g_free (self);
}

static void
add_headings (OxLines *self)
{
  for (guint k = 0; self->kind.headings[k] != NULL; k++)
    {
      GtkWidget *heading = gtk_label_new (self->kind.headings[k]);

      gtk_label_set_xalign (GTK_LABEL (heading), 0);
      gtk_widget_add_css_class (heading, "dim-label");
      gtk_grid_attach (self->grid, heading, (int) k, 0, 1, 1);
      self->n_cells++;
    }
}

OxLines *
ox_lines_new (const OxLinesKind *kind)
{
  OxLines *self = g_new0 (OxLines, 1);
  g_autofree char *add_name = ox_without_mnemonic (kind->add);

  self->kind = *kind;
  self->lines = g_ptr_array_new_with_free_func (g_free);
  self->root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  self->grid = GTK_GRID (gtk_grid_new ());
  self->scrolled = gtk_scrolled_window_new ();
  self->more = gtk_button_new_with_mnemonic (kind->add);
  add_headings (self);
  gtk_grid_set_column_spacing (self->grid, 6);
  gtk_grid_set_row_spacing (self->grid, 4);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), GTK_WIDGET (self->grid));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scrolled), TALLEST_PX);
  gtk_widget_set_halign (self->more, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->more), GTK_ACCESSIBLE_PROPERTY_LABEL, add_name, -1);
  g_signal_connect_swapped (self->more, "clicked", G_CALLBACK (more_cb), self);
  gtk_box_append (GTK_BOX (self->root), self->scrolled);
  gtk_box_append (GTK_BOX (self->root), self->more);
  g_object_set_data_full (G_OBJECT (self->root), "ox-lines", self, lines_free);
  number (self);
  return self;
}
