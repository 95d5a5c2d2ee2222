/* Oxturn: app/panels/floor-panel - tools, the inspector, and the list of what is on the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/panels.h"

#include "app/inspector/section.h"
#include "session/selection.h"

#include <glib/gi18n-lib.h>

#define LIST_HEIGHT_PX 150

static GtkWidget *
make_tool_button (OxToolKind kind, gboolean in_words)
{
  g_autofree char *icon = g_strdup_printf ("oxturn-%s-symbolic", ox_tool_kind_name (kind));
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (ox_tool_kind_title (kind));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_visible (label, in_words);
  gtk_box_append (GTK_BOX (row), gtk_image_new_from_icon_name (icon));
  gtk_box_append (GTK_BOX (row), label);
  gtk_button_set_child (GTK_BUTTON (button), row);
  gtk_widget_set_tooltip_text (button, ox_tool_kind_title (kind));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.tool");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", ox_tool_kind_name (kind));
  gtk_widget_add_css_class (button, "tool");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, ox_tool_kind_title (kind),
                                  -1);
  return button;
}

static GtkWidget *
make_form_button (const char *name, const char *tooltip, const char *action)
{
  GtkWidget *button = gtk_button_new_with_label (name);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_add_css_class (button, "tool");
  return button;
}

/* What is drawn in several ways has a line: its name, then a button for each way. */
static GtkWidget *
make_ways (const char *name, const OxToolKind *ways, guint n)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *linked = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (linked, "linked");
  gtk_box_append (GTK_BOX (row), label);
  for (guint i = 0; i < n; i++)
    gtk_box_append (GTK_BOX (linked), make_tool_button (ways[i], FALSE));
  gtk_box_append (GTK_BOX (row), linked);
  return row;
}

static GtkWidget *
make_tools (void)
{
  static const OxToolKind single[]
      = { OX_TOOL_SELECT, OX_TOOL_MEASURE, OX_TOOL_DOORWAY, OX_TOOL_STATION, OX_TOOL_JOINT };
  static const OxToolKind room[] = { OX_TOOL_ROOM_RECTANGLE, OX_TOOL_ROOM_CORNERS };
  static const OxToolKind obstacle[]
      = { OX_TOOL_OBSTACLE_RECTANGLE, OX_TOOL_OBSTACLE_CIRCLE, OX_TOOL_OBSTACLE_CORNERS };
  static const OxToolKind condition[] = { OX_TOOL_CONDITION, OX_TOOL_CONDITION_CORNERS };
  static const OxToolKind excluded[] = { OX_TOOL_EXCLUDED, OX_TOOL_EXCLUDED_CORNERS };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *grid
      = g_object_new (GTK_TYPE_GRID, "row-spacing", 4, "column-spacing", 4, "column-homogeneous", TRUE, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (single); i++)
    {
      GtkWidget *button = make_tool_button (single[i], TRUE);

      gtk_widget_set_hexpand (button, TRUE);
      gtk_grid_attach (GTK_GRID (grid), button, (int) i % 2, (int) i / 2, 1, 1);
    }
  gtk_box_append (GTK_BOX (box), grid);
  gtk_grid_attach (GTK_GRID (grid),
                   make_form_button (_ ("Tape Sheet\342\200\246"),
                                     _ ("Draw an outline from written lengths and directions"), "win.tape-sheet"),
                   1, 2, 1, 1);
  gtk_grid_attach (GTK_GRID (grid),
                   make_form_button (_ ("Plan to Trace\342\200\246"),
                                     _ ("Lay a scan, a picture or a PDF page under the floor"), "win.traced-plan"),
                   0, 3, 2, 1);
  gtk_box_append (GTK_BOX (box), make_ways (_ ("Room"), room, G_N_ELEMENTS (room)));
  gtk_box_append (GTK_BOX (box), make_ways (_ ("Excluded area"), excluded, G_N_ELEMENTS (excluded)));
  gtk_box_append (GTK_BOX (box), make_ways (_ ("Condition area"), condition, G_N_ELEMENTS (condition)));
  gtk_box_append (GTK_BOX (box), make_ways (_ ("Obstacle"), obstacle, G_N_ELEMENTS (obstacle)));
  return box;
}

static GtkWidget *
make_obstacle_kinds (void)
{
  static const char *const names[] = { "solid", "pit", "masked" };
  static const char *const titles[] = { N_ ("Solid"), N_ ("Pit"), N_ ("Masked") };
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *linked = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *label = gtk_label_new (_ ("New obstacles"));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (linked, "linked");
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      GtkWidget *button = gtk_toggle_button_new_with_label (_ (titles[i]));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.obstacle-kind");
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", names[i]);
      gtk_box_append (GTK_BOX (linked), button);
    }
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), linked);
  return row;
}

/* --- The list: another way to everything that can be clicked on the floor --- */

typedef struct
{
  OxSession *session;  /* Borrowed */
  GtkWidget *frame;    /* Borrowed: heading and list, hidden while there is nothing to list */
  GtkStringList *rows; /* Borrowed from the view: "R1 Room 1", ... */
} ItemList;

static void
add_row (GPtrArray *rows, const char *id, const char *kind, const char *name)
{
  g_ptr_array_add (rows, g_strdup_printf (*name != '\0' ? "%s  %s, %s" : "%s  %s", id, kind, name));
}

static void
list_update (GtkWidget *view)
{
  static const char *const obstacle_names[] = { N_ ("Solid"), N_ ("Pit"), N_ ("Masked") };
  ItemList *self = g_object_get_data (G_OBJECT (view), "ox-list");
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < job->n_rooms; i++)
    add_row (rows, job->rooms[i]->id, _ ("Room"), job->rooms[i]->name);
  for (guint i = 0; i < job->n_obstacles; i++)
    add_row (rows, job->obstacles[i]->id, _ (obstacle_names[job->obstacles[i]->kind]), job->obstacles[i]->name);
  for (guint i = 0; i < job->n_excluded; i++)
    add_row (rows, job->excluded[i]->id, _ ("Excluded area"), job->excluded[i]->name);
  for (guint i = 0; i < job->n_doorways; i++)
    add_row (rows, job->doorways[i]->id, _ ("Doorway"), job->doorways[i]->name);
  for (guint i = 0; i < job->n_joints; i++)
    add_row (rows, job->joints[i]->id, _ ("Joint"), job->joints[i]->name);
  for (guint i = 0; i < job->n_stations; i++)
    add_row (rows, job->stations[i]->id, _ ("Station"), job->stations[i]->name);
  for (guint i = 0; i < job->n_conditions; i++)
    add_row (rows, job->conditions[i]->id, _ ("Condition area"), job->conditions[i]->name);
  for (guint i = 0; i < job->n_traced; i++)
    add_row (rows, job->traced[i]->id, _ ("Traced plan"), job->traced[i]->name);
  g_ptr_array_add (rows, NULL);
  gtk_string_list_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)),
                          (const char *const *) rows->pdata);
  gtk_widget_set_visible (self->frame, rows->len > 1);
}

static void
row_setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  (void) factory;
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
row_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  (void) factory;
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

static void
row_activate_cb (GtkListView *view, guint position, ItemList *self)
{
  g_auto (GStrv) words = g_strsplit (gtk_string_list_get_string (self->rows, position), " ", 2);

  (void) view;
  ox_session_select (self->session, (const char *const[]){ words[0], NULL });
}

static GtkWidget *
make_list (OxSession *session)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkStringList *rows = gtk_string_list_new (NULL);
  GtkWidget *view = gtk_list_view_new (GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (rows))), factory);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  ItemList *self = g_new0 (ItemList, 1);

  *self = (ItemList){ .session = session, .frame = box, .rows = rows };
  g_signal_connect (factory, "setup", G_CALLBACK (row_setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (row_bind_cb), NULL);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (view), TRUE);
  gtk_widget_add_css_class (view, "items");
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("On this floor"), -1);
  g_object_set_data_full (G_OBJECT (view), "ox-list", self, g_free);
  g_signal_connect (view, "activate", G_CALLBACK (row_activate_cb), self);
  g_signal_connect_object (session, "job-changed", G_CALLBACK (list_update), view, G_CONNECT_SWAPPED);
  list_update (view);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), LIST_HEIGHT_PX);
  gtk_widget_add_css_class (scrolled, "frame");
  gtk_box_append (GTK_BOX (box), ox_heading_new (_ ("On this floor")));
  gtk_box_append (GTK_BOX (box), scrolled);
  return box;
}

GtkWidget *
ox_floor_panel_new (OxSession *session)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_box_append (GTK_BOX (root), make_tools ());
  gtk_box_append (GTK_BOX (root), make_obstacle_kinds ());
  gtk_box_append (GTK_BOX (root), ox_inspector_new (session));
  gtk_box_append (GTK_BOX (root), make_list (session));
  return root;
}
