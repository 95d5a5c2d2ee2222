/* Oxturn: app/panels/order-box - the order of work as it goes by: where the machine is after so many hours.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/panels/order-box.h"

#include "session/plan-words.h"
#include "session/work-clock.h"

#include <glib/gi18n-lib.h>

#define PLAY_S 40.0 /* the whole work goes by in this time */
#define LIST_HEIGHT_PX 150

typedef struct
{
  OxSession *session;    /* Borrowed */
  OxCanvas *canvas;      /* Borrowed */
  GtkToggleButton *play; /* Borrowed, as all below, from the box */
  GtkRange *hours;
  GtkLabel *where;
  GtkStringList *rows; /* "strip-1", ... */
  guint tick;          /* while it plays, else 0 */
  gint64 last_us;      /* frame time of the last tick, 0 before the first */
} OrderBox;

static const OxPlan *
plan_of (OrderBox *self)
{
  const OxPlan *plan = ox_session_is_plan_current (self->session) ? ox_session_find_plan (self->session) : NULL;

  return plan != NULL && plan->n_strips > 0 ? plan : NULL;
}

static void
say_where (OrderBox *self, double hours)
{
  const OxPlan *plan = plan_of (self);
  g_autofree char *text = NULL;
  OxWorkState state;

  if (plan == NULL)
    {
      gtk_label_set_text (self->where, _ ("There is no plan to play."));
      return;
    }
  state = ox_work_at (plan, hours * 60);
  if (state.done == plan->n_strips)
    text = g_strdup_printf (_ ("After %.2f h all %u strips are done."), hours, plan->n_strips);
  else if (state.blasting)
    text = g_strdup_printf (_ ("After %.2f h the machine is on strip %u of %u."), hours, state.done + 1,
                            plan->n_strips);
  else
    text = g_strdup_printf (_ ("After %.2f h the machine is on its way to strip %u of %u."), hours, state.done + 1,
                            plan->n_strips);
  gtk_label_set_text (self->where, text);
}

static void
hours_cb (OrderBox *self)
{
  double hours = gtk_range_get_value (self->hours);

  say_where (self, hours);
  ox_canvas_set_clock (self->canvas, plan_of (self) != NULL && hours > 0 ? hours * 60 : -1);
}

/* --- Playing --- */

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  OrderBox *self = data;
  double whole = gtk_adjustment_get_upper (gtk_range_get_adjustment (self->hours));
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  double step = self->last_us == 0 ? 0 : (double) (now - self->last_us) / G_USEC_PER_SEC / PLAY_S * whole;

  (void) widget;
  self->last_us = now;
  gtk_range_set_value (self->hours, gtk_range_get_value (self->hours) + step);
  if (gtk_range_get_value (self->hours) < whole)
    return G_SOURCE_CONTINUE;
  self->tick = 0;
  gtk_toggle_button_set_active (self->play, FALSE);
  return G_SOURCE_REMOVE;
}

static void
play_cb (GtkToggleButton *play, OrderBox *self)
{
  GtkAdjustment *hours = gtk_range_get_adjustment (self->hours);
  gboolean playing = gtk_toggle_button_get_active (play);

  gtk_button_set_icon_name (GTK_BUTTON (play),
                            playing ? "media-playback-pause-symbolic" : "media-playback-start-symbolic");
  if (!playing && self->tick != 0)
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (self->hours), self->tick);
      self->tick = 0;
    }
  if (!playing)
    return;
  if (gtk_adjustment_get_value (hours) >= gtk_adjustment_get_upper (hours))
    gtk_adjustment_set_value (hours, 0);
  self->last_us = 0;
  self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self->hours), tick_cb, self, NULL);
}

static void
update (GtkWidget *root)
{
  OrderBox *self = g_object_get_data (G_OBJECT (root), "ox-order");
  const OxPlan *plan = plan_of (self);
  g_auto (GStrv) ids = plan != NULL ? ox_plan_ids (plan) : g_new0 (char *, 1);

  gtk_toggle_button_set_active (self->play, FALSE);
  gtk_widget_set_sensitive (GTK_WIDGET (self->play), plan != NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->hours), plan != NULL);
  gtk_range_set_range (self->hours, 0, plan != NULL ? ox_work_minutes (plan) / 60 : 1);
  gtk_range_set_value (self->hours, 0);
  gtk_string_list_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)),
                          (const char *const *) ids);
  hours_cb (self);
}

static GtkWidget *
make_player (OrderBox *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *play = gtk_toggle_button_new ();
  GtkWidget *hours = gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0, 1, 0.01);

  self->play = GTK_TOGGLE_BUTTON (play);
  self->hours = GTK_RANGE (hours);
  gtk_button_set_icon_name (GTK_BUTTON (play), "media-playback-start-symbolic");
  gtk_widget_set_tooltip_text (play, _ ("Play the order of work"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (play), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Play the order of work"),
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (hours), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Hours of work"), -1);
  gtk_widget_set_hexpand (hours, TRUE);
  gtk_box_append (GTK_BOX (row), play);
  gtk_box_append (GTK_BOX (row), hours);
  g_signal_connect (play, "toggled", G_CALLBACK (play_cb), self);
  g_signal_connect_swapped (hours, "value-changed", G_CALLBACK (hours_cb), self);
  return row;
}

/* --- The list: what the pointer can ask about, by keyboard --- */

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
row_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, OrderBox *self)
{
  const OxPlan *plan = plan_of (self);
  const char *id = gtk_string_object_get_string (gtk_list_item_get_item (item));
  g_autofree char *words = plan != NULL ? ox_plan_words (plan, id) : NULL;

  (void) factory;
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), words != NULL ? words : id);
  gtk_widget_set_tooltip_text (gtk_list_item_get_child (item), words);
}

static void
row_activate_cb (GtkListView *view, guint position, OrderBox *self)
{
  const OxPlan *plan = plan_of (self);
  const char *id = gtk_string_list_get_string (self->rows, position);
  OxPoint at;

  (void) view;
  if (plan == NULL || !ox_plan_place (plan, id, &at))
    return;
  ox_canvas_show_point (self->canvas, at);
  ox_canvas_point_out (self->canvas, id);
}

static GtkWidget *
make_list (OrderBox *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *view;

  self->rows = gtk_string_list_new (NULL);
  view = gtk_list_view_new (GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (self->rows))), factory);
  g_signal_connect (factory, "setup", G_CALLBACK (row_setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (row_bind_cb), self);
  g_signal_connect (view, "activate", G_CALLBACK (row_activate_cb), self);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (view), TRUE);
  gtk_widget_add_css_class (view, "items");
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("In this plan"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), LIST_HEIGHT_PX);
  gtk_widget_add_css_class (scrolled, "frame");
  return scrolled;
}

GtkWidget *
ox_order_box_new (OxSession *session, OxCanvas *canvas)
{
  GtkWidget *root = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  OrderBox *self = g_new0 (OrderBox, 1);

  self->session = session;
  self->canvas = canvas;
  self->where = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->where, 0);
  gtk_label_set_wrap (self->where, TRUE);
  gtk_label_set_max_width_chars (self->where, 30);
  gtk_widget_add_css_class (GTK_WIDGET (self->where), "figure");
  g_object_set_data_full (G_OBJECT (root), "ox-order", self, g_free);
  gtk_box_append (GTK_BOX (root), make_player (self));
  gtk_box_append (GTK_BOX (root), GTK_WIDGET (self->where));
  gtk_box_append (GTK_BOX (root), make_list (self));
  g_signal_connect_object (session, "job-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (update), root, G_CONNECT_SWAPPED);
  update (root);
  return root;
}
