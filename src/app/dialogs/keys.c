/* Oxturn: app/dialogs/keys - the page of keyboard shortcuts, made from the table of actions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/keys.h"

#include "app/actions.h"
#include "app/rows.h"

#include <glib/gi18n-lib.h>

static char *
keys_text (const OxActionRow *row)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; row->keys[i] != NULL; i++)
    {
      guint keyval;
      GdkModifierType mods;
      g_autofree char *label = NULL;

      gtk_accelerator_parse (row->keys[i], &keyval, &mods);
      label = gtk_accelerator_get_label (keyval, mods);
      g_string_append_printf (text, "%s%s", i > 0 ? _ (" or ") : "", label);
    }
  return g_string_free (text, FALSE);
}

/* The groups are grids of their own; @columns keeps their columns in line. */
static void
add_row (GtkGrid *grid, int line, const OxActionRow *row, GtkSizeGroup *const columns[2])
{
  g_autofree char *keys = keys_text (row);
  g_autofree char *name = ox_without_mnemonic (_ (row->label));
  GtkWidget *texts[] = { gtk_label_new (keys), gtk_label_new (name), gtk_label_new (_ (row->help)) };

  gtk_widget_add_css_class (texts[0], "keycap");
  gtk_widget_add_css_class (texts[2], "dim-label");
  gtk_label_set_ellipsize (GTK_LABEL (texts[2]), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (texts[2], TRUE);
  for (int i = 0; i < 3; i++)
    {
      gtk_label_set_xalign (GTK_LABEL (texts[i]), 0);
      gtk_grid_attach (grid, texts[i], i, line, 1, 1);
      if (i < 2)
        gtk_size_group_add_widget (columns[i], texts[i]);
    }
}

static GtkWidget *
make_group (OxActionGroup group, GtkSizeGroup *const columns[2])
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *title = gtk_label_new (ox_action_group_title (group));
  GtkWidget *grid = g_object_new (GTK_TYPE_GRID, "row-spacing", 4, "column-spacing", 16, NULL);
  guint n;
  const OxActionRow *rows = ox_action_rows (&n);
  int line = 0;

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "section");
  for (guint i = 0; i < n; i++)
    if (rows[i].group == group && rows[i].keys[0] != NULL)
      add_row (GTK_GRID (grid), line++, &rows[i], columns);
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), grid);
  return box;
}

GtkWindow *
ox_keys_present (GtkWindow *parent)
{
  GtkWindow *window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, "title",
                                    _ ("Keyboard Shortcuts"), "default-width", 860, "default-height", 560, NULL);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkEventController *keys = gtk_shortcut_controller_new ();
  g_autoptr (GtkSizeGroup) names = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  g_autoptr (GtkSizeGroup) accels = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  gtk_widget_add_css_class (box, "page");
  for (guint i = 0; i < OX_N_GROUPS; i++)
    gtk_box_append (GTK_BOX (box), make_group (i, (GtkSizeGroup *[2]){ accels, names }));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_window_set_child (window, scrolled);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0), gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
  gtk_window_present (window);
  return window;
}

void
ox_about_present (GtkWindow *parent)
{
  GtkWidget *dialog = g_object_new (
      GTK_TYPE_ABOUT_DIALOG, "transient-for", parent, "modal", TRUE, "program-name", "Oxturn", "version", OX_VERSION,
      "comments", _ ("Plans the blasting of concrete floors. It plans; it does not certify."), "license-type",
      GTK_LICENSE_GPL_3_0, "logo-icon-name", "org.oxturn.Oxturn", "copyright", _ ("The authors of Oxturn"), NULL);

  gtk_window_present (GTK_WINDOW (dialog));
}
