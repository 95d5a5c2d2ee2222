/* Oxturn: app/rows - rows of name and widget in the side panel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/rows.h"

#include <glib/gi18n-lib.h>

char *
ox_without_mnemonic (const char *label)
{
  g_auto (GStrv) parts = g_strsplit (label, "_", -1);

  return g_strjoinv ("", parts);
}

GtkWidget *
ox_rows_new (void)
{
  return g_object_new (GTK_TYPE_GRID, "row-spacing", 4, "column-spacing", 10, NULL);
}

static int
next_row (GtkGrid *rows)
{
  int row = 0;

  while (gtk_grid_get_child_at (rows, 0, row) != NULL)
    row++;
  return row;
}

void
ox_rows_add (GtkGrid *rows, const char *name, GtkWidget *widget)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  int row = next_row (rows);

  if (*name != '\0') /* an empty label would take the widget's own name from it */
    gtk_label_set_mnemonic_widget (GTK_LABEL (label), widget);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 15);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 19);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_grid_attach (rows, label, 0, row, 1, 1);
  gtk_grid_attach (rows, widget, 1, row, 1, 1);
}

void
ox_rows_add_wide (GtkGrid *rows, GtkWidget *widget)
{
  gtk_grid_attach (rows, widget, 0, next_row (rows), 2, 1);
}

OxField *
ox_rows_add_field (GtkGrid *rows, OxFieldKind kind, const char *name)
{
  g_autofree char *plain = ox_without_mnemonic (name);
  GtkWidget *field = ox_field_new (kind, plain);

  ox_rows_add (rows, name, field);
  return OX_FIELD (field);
}

GtkDropDown *
ox_rows_add_choice (GtkGrid *rows, const char *name, const char *const *choices)
{
  g_autofree char *plain = ox_without_mnemonic (name);
  GtkWidget *choice = gtk_drop_down_new_from_strings (choices);

  gtk_accessible_update_property (GTK_ACCESSIBLE (choice), GTK_ACCESSIBLE_PROPERTY_LABEL, plain, -1);
  ox_rows_add (rows, name, choice);
  return GTK_DROP_DOWN (choice);
}

GtkDropDown *
ox_rows_add_csp (GtkGrid *rows, const char *name)
{
  const char *const names[] = { _ ("not read"), "CSP 1", "CSP 2", "CSP 3", "CSP 4",  "CSP 5",
                                "CSP 6",        "CSP 7", "CSP 8", "CSP 9", "CSP 10", NULL };

  return ox_rows_add_choice (rows, name, names);
}

void
ox_box_clear (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

void
ox_rows_set_row_visible (GtkGrid *rows, OxField *field, gboolean visible)
{
  int row;

  gtk_grid_query_child (rows, GTK_WIDGET (field), NULL, &row, NULL, NULL);
  gtk_widget_set_visible (GTK_WIDGET (field), visible);
  gtk_widget_set_visible (gtk_grid_get_child_at (rows, 0, row), visible);
}

void
ox_rows_widen_names (GtkGrid *rows, int chars)
{
  GtkWidget *name;

  for (int row = 0; (name = gtk_grid_get_child_at (rows, 0, row)) != NULL; row++)
    if (GTK_IS_LABEL (name))
      {
        gtk_label_set_max_width_chars (GTK_LABEL (name), chars);
        /* Names that fit stand on one line at any width, so that the window's height does not hang on its width. */
        gtk_label_set_wrap (GTK_LABEL (name), g_utf8_strlen (gtk_label_get_text (GTK_LABEL (name)), -1) > chars);
      }
}

GtkWidget *
ox_heading_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "section");
  return label;
}

GtkWidget *
ox_note_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 34);
  gtk_widget_add_css_class (label, "dim-label");
  return label;
}

void
ox_choice_select (GtkDropDown *choice, guint i, gpointer data)
{
  if (gtk_drop_down_get_selected (choice) == i)
    return;
  g_signal_handlers_block_matched (choice, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
  gtk_drop_down_set_selected (choice, i);
  g_signal_handlers_unblock_matched (choice, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, data);
}
