/* Oxturn: app/window - one job in one window: stages above, panel and floor in the middle, quantities below.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/actions.h"
#include "app/rows.h"
#include "app/panels/docket.h"
#include "app/window-size.h"

#include <glib/gi18n-lib.h>

#define WIDTH_PX 1280
#define HEIGHT_PX 800
#define PANEL_PX 356
#define TOLD_MS 8000

G_DEFINE_FINAL_TYPE (OxWindow, ox_window, GTK_TYPE_APPLICATION_WINDOW)

OxSession *
ox_window_get_session (OxWindow *self)
{
  return self->session;
}

OxCanvas *
ox_window_get_canvas (OxWindow *self)
{
  return self->canvas;
}

void
ox_window_set_chooser (OxWindow *self, OxChooseFile chooser)
{
  self->choose_file = chooser;
}

gboolean
ox_window_is_untouched (OxWindow *self)
{
  return ox_session_get_path (self->session) == NULL && !ox_session_is_modified (self->session)
         && ox_session_get_job (self->session)->n_rooms == 0;
}

/* --- The line of words over the floor --- */

void
ox_window_show_hint (OxWindow *self)
{
  gtk_widget_remove_css_class (GTK_WIDGET (self->told), "refusal");
  gtk_label_set_text (self->told, self->stage == OX_STAGE_SHEETS
                                      ? _ ("What is seen here is what is printed. Ctrl and the wheel zoom.")
                                      : ox_canvas_get_hint (self->canvas));
}

static gboolean
forget_cb (gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  self->told_id = 0;
  ox_window_show_hint (self);
  return G_SOURCE_REMOVE;
}

void
ox_window_tell (OxWindow *self, const char *text)
{
  g_clear_handle_id (&self->told_id, g_source_remove);
  if (*text == '\0')
    {
      ox_window_show_hint (self);
      return;
    }
  gtk_label_set_text (self->told, text);
  gtk_widget_add_css_class (GTK_WIDGET (self->told), "refusal");
  self->told_id = g_timeout_add (TOLD_MS, forget_cb, self);
}

const char *
ox_window_get_told (OxWindow *self)
{
  return gtk_label_get_text (self->told);
}

static void
hint_changed_cb (OxWindow *self)
{
  if (self->told_id == 0)
    ox_window_show_hint (self);
}

static void
refused_cb (OxWindow *self, const char *why)
{
  ox_window_tell (self, why);
}

/* --- What follows from the session --- */

static void
update_title (OxWindow *self)
{
  g_autofree char *name = ox_session_get_display_name (self->session);
  gboolean modified = ox_session_is_modified (self->session);
  g_autofree char *marked = g_strdup_printf (modified ? "\342\200\242 %s" : "%s", name);
  g_autofree char *title
      = ox_session_is_read_only (self->session) ? g_strdup_printf (_ ("%s (read-only)"), marked) : g_strdup (marked);
  g_autofree char *full = g_strdup_printf (_ ("%s - Oxturn"), title);

  gtk_label_set_text (self->title, title);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->title), ox_session_get_path (self->session) != NULL
                                                             ? ox_session_get_path (self->session)
                                                             : _ ("Not saved yet"));
  gtk_window_set_title (GTK_WINDOW (self), full);
}

/* Logging out must not lose work that nobody was asked about. */
static void
update_inhibit (OxWindow *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  gboolean modified = ox_session_is_modified (self->session);

  if (application == NULL || modified == (self->inhibit_cookie != 0))
    return;
  if (modified)
    self->inhibit_cookie = gtk_application_inhibit (application, GTK_WINDOW (self), GTK_APPLICATION_INHIBIT_LOGOUT,
                                                    _ ("The job is not saved."));
  else
    {
      gtk_application_uninhibit (application, self->inhibit_cookie);
      self->inhibit_cookie = 0;
    }
}

static void
update_undo_tooltips (OxWindow *self)
{
  const char *undo = ox_session_find_undo_label (self->session);
  const char *redo = ox_session_find_redo_label (self->session);
  g_autofree char *undo_text = undo != NULL ? g_strdup_printf (_ ("Undo: %s"), undo) : g_strdup (_ ("Undo"));
  g_autofree char *redo_text = redo != NULL ? g_strdup_printf (_ ("Redo: %s"), redo) : g_strdup (_ ("Redo"));

  gtk_widget_set_tooltip_text (self->undo, undo_text);
  gtk_widget_set_tooltip_text (self->redo, redo_text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->undo), GTK_ACCESSIBLE_PROPERTY_LABEL, undo_text, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->redo), GTK_ACCESSIBLE_PROPERTY_LABEL, redo_text, -1);
}

static void
update_welcome (OxWindow *self)
{
  const OxJob *job = ox_session_get_job (self->session);

  gtk_widget_set_visible (self->welcome, job->n_rooms == 0 && job->n_obstacles == 0
                                             && ox_canvas_get_tool (self->canvas) == OX_TOOL_SELECT);
}

static void
state_changed_cb (OxWindow *self)
{
  update_title (self);
  update_inhibit (self);
  update_undo_tooltips (self);
  ox_window_update_actions (self);
}

/* tell_cleared: says so when the edit that was just made took the sign-off from the drawing, which nobody may miss */
static void
tell_cleared (OxWindow *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxJob) before = (OxJob *) g_steal_pointer (&self->job);
  g_autofree char *text = NULL;

  self->job = ox_job_ref (job);
  if (!ox_scope_is_signed (before->scope) || ox_scope_is_signed (job->scope)
      || g_str_equal (before->texts->revision, job->texts->revision))
    return;
  text = g_strdup_printf (_ ("The drawing is revision %s now; the sign-off of revision %s, by %s, is cleared."),
                          job->texts->revision, before->texts->revision, before->scope->sign_off.name);
  ox_window_tell (self, text);
}

/* An edit that went through makes the refusal before it old news. */
static void
job_changed_cb (OxWindow *self)
{
  if (self->told_id != 0)
    {
      g_clear_handle_id (&self->told_id, g_source_remove);
      ox_window_show_hint (self);
    }
  tell_cleared (self);
  update_welcome (self);
}

static void
plan_changed_cb (OxWindow *self)
{
  self->pages_stale = TRUE;
  ox_window_update_pages (self);
  ox_window_update_actions (self);
}

static void
tool_changed_cb (OxWindow *self)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "tool");

  g_simple_action_set_state (G_SIMPLE_ACTION (action),
                             g_variant_new_string (ox_tool_kind_name (ox_canvas_get_tool (self->canvas))));
  update_welcome (self);
}

static void
sheets_changed_cb (OxWindow *self)
{
  g_autofree char *summary = ox_sheets_panel_get_summary (self->sheets);

  ox_stage_bar_set_sheets (self->stages, summary);
  self->pages_stale = TRUE;
  ox_window_update_pages (self);
}

/* --- Building --- */

static GtkWidget *
make_button (const char *icon, const char *name, const char *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  return button;
}

static GtkWidget *
make_header (OxWindow *self)
{
  GtkWidget *bar = gtk_header_bar_new ();
  GtkWidget *menu = gtk_menu_button_new ();
  g_autoptr (GMenuModel) model = NULL;

  self->recent = g_menu_new ();
  model = ox_actions_new_menu (G_MENU_MODEL (self->recent));

  self->title = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_ellipsize (self->title, PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_add_css_class (GTK_WIDGET (self->title), "title");
  self->undo = make_button ("edit-undo-symbolic", _ ("Undo"), "win.undo");
  self->redo = make_button ("edit-redo-symbolic", _ ("Redo"), "win.redo");
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (bar), GTK_WIDGET (self->title));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), make_button ("document-open-symbolic", _ ("Open"), "win.open"));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), make_button ("document-save-symbolic", _ ("Save"), "win.save"));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), self->undo);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), self->redo);
  self->menu = GTK_MENU_BUTTON (menu);
  gtk_menu_button_set_icon_name (self->menu, "open-menu-symbolic");
  gtk_menu_button_set_menu_model (self->menu, model);
  gtk_menu_button_set_primary (self->menu, TRUE);
  gtk_widget_set_tooltip_text (menu, _ ("Main menu"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (menu), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Main menu"), -1);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), menu);
  return bar;
}

static void
add_panel (OxWindow *self, OxStage stage, GtkWidget *panel)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_widget_add_css_class (panel, "panel");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), panel);
  gtk_stack_add_named (self->panels, scrolled, ox_stage_name (stage));
}

static GtkWidget *
make_panels (OxWindow *self)
{
  self->panels = GTK_STACK (gtk_stack_new ());
  gtk_stack_set_hhomogeneous (self->panels, TRUE);
  gtk_stack_set_vhomogeneous (self->panels, FALSE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->panels), FALSE);
  gtk_widget_set_size_request (GTK_WIDGET (self->panels), PANEL_PX, -1);
  gtk_widget_add_css_class (GTK_WIDGET (self->panels), "panels");
  self->sheets = OX_SHEETS_PANEL (ox_sheets_panel_new (self->session));
  add_panel (self, OX_STAGE_FLOOR, ox_floor_panel_new (self->session));
  add_panel (self, OX_STAGE_MACHINE, ox_machine_panel_new (self->session));
  add_panel (self, OX_STAGE_PLAN, ox_plan_panel_new (self->session, self->canvas));
  add_panel (self, OX_STAGE_SHEETS, GTK_WIDGET (self->sheets));
  add_panel (self, OX_STAGE_RECORD, ox_record_panel_new (self->session, self->canvas));
  return GTK_WIDGET (self->panels);
}

static GtkWidget *
make_welcome (OxWindow *self)
{
  static const struct
  {
    const char *label;
    const char *action;
    const char *target;
  } ways[] = {
    { N_ ("Draw a Room by Corners"), "win.tool", "room-corners" },
    { N_ ("Draw a Rectangular Room"), "win.tool", "room-rectangle" },
    { N_ ("Open a Job\342\200\246"), "win.open", NULL },
  };
  GtkWidget *title = gtk_label_new (_ ("Draw the floor first"));
  GtkWidget *text = ox_note_new (_ ("Type lengths while you draw. The plan follows as soon as there is a room."));

  self->welcome = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  gtk_widget_set_halign (self->welcome, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (self->welcome, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->welcome, "welcome");
  gtk_widget_add_css_class (title, "title-4");
  gtk_label_set_justify (GTK_LABEL (text), GTK_JUSTIFY_CENTER);
  gtk_box_append (GTK_BOX (self->welcome), title);
  gtk_box_append (GTK_BOX (self->welcome), text);
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (ways[i].label));

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), ways[i].action);
      if (ways[i].target != NULL)
        gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", ways[i].target);
      gtk_box_append (GTK_BOX (self->welcome), button);
    }
  return self->welcome;
}

static GtkWidget *
make_zoom_buttons (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_add_css_class (box, "linked");
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), make_button ("zoom-out-symbolic", _ ("Zoom out"), "win.zoom-out"));
  gtk_box_append (GTK_BOX (box), make_button ("zoom-fit-best-symbolic", _ ("Zoom to fit"), "win.zoom-fit"));
  gtk_box_append (GTK_BOX (box), make_button ("zoom-in-symbolic", _ ("Zoom in"), "win.zoom-in"));
  return box;
}

/* Below the floor and not over it: a hint must not cover what it is about. */
static GtkWidget *
make_foot (OxWindow *self)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->told = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (self->told, TRUE);
  gtk_label_set_lines (self->told, 2);
  gtk_label_set_ellipsize (self->told, PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (self->told, 0);
  gtk_widget_set_hexpand (GTK_WIDGET (self->told), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->told), "told");
  gtk_widget_add_css_class (foot, "foot");
  gtk_box_append (GTK_BOX (foot), GTK_WIDGET (self->told));
  gtk_box_append (GTK_BOX (foot), make_zoom_buttons ());
  return foot;
}

static GtkWidget *
make_middle (OxWindow *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *overlay = gtk_overlay_new ();

  self->middle = GTK_STACK (gtk_stack_new ());
  self->pages = OX_PAGE_VIEW (ox_page_view_new ());
  gtk_overlay_set_child (GTK_OVERLAY (overlay), GTK_WIDGET (self->canvas));
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), make_welcome (self));
  gtk_stack_add_named (self->middle, overlay, "floor");
  gtk_stack_add_named (self->middle, GTK_WIDGET (self->pages), "sheets");
  gtk_widget_set_hexpand (GTK_WIDGET (self->middle), TRUE);
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->middle));
  gtk_box_append (GTK_BOX (column), make_foot (self));
  return column;
}

static void
build (OxWindow *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *parts = gtk_paned_new (GTK_ORIENTATION_HORIZONTAL);

  self->parts = GTK_PANED (parts);
  self->canvas = OX_CANVAS (ox_canvas_new (self->session));
  self->stages = OX_STAGE_BAR (ox_stage_bar_new (self->session));
  ox_actions_add_canvas_keys (GTK_WIDGET (self->canvas));
  gtk_window_set_titlebar (GTK_WINDOW (self), make_header (self));
  gtk_widget_set_vexpand (parts, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (parts), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Panel and floor"), -1);
  gtk_paned_set_start_child (self->parts, make_panels (self));
  gtk_paned_set_end_child (self->parts, make_middle (self));
  gtk_paned_set_resize_start_child (self->parts, FALSE);
  gtk_paned_set_shrink_start_child (self->parts, FALSE);
  gtk_paned_set_shrink_end_child (self->parts, FALSE);
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->stages));
  gtk_box_append (GTK_BOX (column), parts);
  gtk_box_append (GTK_BOX (column), ox_docket_new (self->session));
  gtk_window_set_child (GTK_WINDOW (self), column);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH_PX, HEIGHT_PX);
  if (gtk_window_get_application (GTK_WINDOW (self)) != NULL)
    {
      g_autofree char *file = ox_window_size_default_file ();
      OxWindowPanes panes;

      ox_window_size_restore (GTK_WINDOW (self), &panes, file);
      if (panes.panel_px > 0)
        gtk_paned_set_position (self->parts, panes.panel_px);
      ox_window_find_stage (panes.stage, &self->last_stage);
    }
}

static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, OxWindow *self)
{
  (void) target;
  (void) x;
  (void) y;
  return ox_window_drop (self, g_value_get_boxed (value));
}

static void
connect (OxWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
  g_signal_connect_object (self->session, "state-changed", G_CALLBACK (state_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "job-changed", G_CALLBACK (job_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "plan-changed", G_CALLBACK (plan_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "selection-changed", G_CALLBACK (ox_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->canvas, "hint-changed", G_CALLBACK (hint_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->canvas, "refused", G_CALLBACK (refused_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->canvas, "tool-changed", G_CALLBACK (tool_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->sheets, "changed", G_CALLBACK (sheets_changed_cb), self, G_CONNECT_SWAPPED);
  if (gtk_window_get_application (GTK_WINDOW (self)) != NULL)
    g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (ox_window_update_recent), self,
                             G_CONNECT_SWAPPED);
  ox_window_update_recent (self);
  g_signal_connect (self, "close-request", G_CALLBACK (ox_window_close_request), NULL);
}

static void
ox_window_dispose (GObject *object)
{
  OxWindow *self = OX_WINDOW (object);

  g_clear_handle_id (&self->told_id, g_source_remove);
  g_cancellable_cancel (self->gone);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  G_OBJECT_CLASS (ox_window_parent_class)->dispose (object);
}

/* The panels borrow the session, so it goes when they are gone. */
static void
ox_window_finalize (GObject *object)
{
  OxWindow *self = OX_WINDOW (object);

  g_clear_object (&self->gone);
  g_clear_object (&self->clip);
  g_clear_object (&self->recent);
  g_clear_pointer (&self->job, ox_job_unref);
  g_clear_object (&self->session);
  g_clear_pointer (&self->page_set, ox_page_set_unref);
  G_OBJECT_CLASS (ox_window_parent_class)->finalize (object);
}

static void
ox_window_class_init (OxWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ox_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = ox_window_finalize;
}

static void
ox_window_init (OxWindow *self)
{
  self->choose_file = ox_choose_file;
  self->gone = g_cancellable_new ();
}

OxWindow *
ox_window_new (GtkApplication *application, OxSession *session)
{
  OxWindow *self = g_object_new (OX_TYPE_WINDOW, "application", application, "icon-name", "org.oxturn.Oxturn", NULL);

  self->session = g_object_ref (session);
  self->job = ox_job_ref (ox_session_get_job (session));
  ox_window_add_actions (self);
  build (self);
  connect (self);
  tool_changed_cb (self);
  sheets_changed_cb (self);
  state_changed_cb (self);
  ox_window_show_hint (self);
  ox_window_set_stage (self, OX_STAGE_FLOOR);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  return self;
}
