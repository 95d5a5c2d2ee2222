/* Oxturn: app/window-actions - what the actions of the window do.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/actions.h"
#include "job/edit.h"

#include <glib/gi18n-lib.h>

#define ZOOM_STEP 1.3
#define SCREEN_PX_PER_M (96 / 0.0254) /* at 96 dots an inch, as GTK takes a screen to have */

static const struct
{
  const char *action;
  OxFloorLayers layers;
} shown[] = {
  { "show-lanes", OX_FLOOR_LANES },         { "show-reach", OX_FLOOR_REACH },     { "show-dose", OX_FLOOR_DOSE },
  { "show-strips", OX_FLOOR_STRIPS },       { "show-numbers", OX_FLOOR_NUMBERS }, { "show-zones", OX_FLOOR_ZONES },
  { "show-edge-work", OX_FLOOR_EDGE_WORK | OX_FLOOR_TAGS }, { "show-moves", OX_FLOOR_MOVES },     { "show-names", OX_FLOOR_NAMES },
};

static const char *const obstacle_kinds[] = { "solid", "pit", "masked" };
static const char *const unit_names[] = { "metres", "millimetres", "feet" };

static guint
index_of (const char *const *names, guint n, const char *name)
{
  for (guint i = 0; i < n; i++)
    if (g_str_equal (names[i], name))
      return i;
  return n;
}

/* --- Job --- */

static void
open_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_ask_open (data);
}

static void
open_recent_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  ox_window_open_recent (data, g_variant_get_string (value, NULL));
}

static void
save_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_save (data);
}

static void
save_as_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_save_as (data);
}

static void
export_pdf_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_export (data, OX_FILE_SAVE_PDF);
}

static void
export_svg_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_export (data, OX_FILE_SAVE_SVG);
}

static void
print_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_print (data);
}

static void
close_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  gtk_window_close (data);
}

/* --- Edit --- */

static void
undo_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_session_undo (OX_WINDOW (data)->session);
}

static void
redo_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_session_redo (OX_WINDOW (data)->session);
}

static void
delete_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_canvas_delete_selected (OX_WINDOW (data)->canvas);
}

static void
cut_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_cut (data);
}

static void
copy_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_copy (data);
}

static void
paste_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_paste (data);
}

static void
copy_picture_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_copy_picture (data);
}

static void
select_all_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_canvas_select_all (OX_WINDOW (data)->canvas);
}

static void
select_none_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_session_select (OX_WINDOW (data)->session, NULL);
}

static void
units_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);
  const OxJob *job = ox_session_get_job (self->session);
  guint units = index_of (unit_names, G_N_ELEMENTS (unit_names), g_variant_get_string (value, NULL));
  g_autoptr (OxJob) changed = NULL;

  (void) action;
  if (units == G_N_ELEMENTS (unit_names) || (OxUnits) units == job->units)
    return;
  changed = ox_job_with_units (job, (OxUnits) units);
  ox_session_apply (self->session, changed, _("Change Units"), NULL, NULL);
}

/* --- View --- */

static void
zoom (OxWindow *self, double factor)
{
  if (self->stage == OX_STAGE_SHEETS)
    ox_page_view_zoom (self->pages, factor);
  else
    ox_canvas_zoom (self->canvas, factor);
}

static void
zoom_in_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  zoom (data, ZOOM_STEP);
}

static void
zoom_out_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  zoom (data, 1 / ZOOM_STEP);
}

static void
zoom_fit_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  (void) action;
  (void) value;
  if (self->stage == OX_STAGE_SHEETS)
    ox_page_view_fit (self->pages);
  else
    ox_canvas_fit (self->canvas);
}

static void
zoom_selection_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_canvas_show_selected (OX_WINDOW (data)->canvas);
}

static void
zoom_scale_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxCanvas *canvas = OX_WINDOW (data)->canvas;
  double scale = g_ascii_strtod (g_variant_get_string (value, NULL), NULL);

  (void) action;
  if (scale > 0)
    ox_canvas_zoom (canvas, SCREEN_PX_PER_M / scale / ox_canvas_get_view (canvas)->px_per_m);
}

static void
update_layers (OxWindow *self)
{
  OxFloorLayers layers = OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_STATIONS;

  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    {
      g_autoptr (GVariant) state = g_action_group_get_action_state (G_ACTION_GROUP (self), shown[i].action);

      if (g_variant_get_boolean (state))
        layers |= shown[i].layers;
    }
  ox_canvas_set_layers (self->canvas, layers);
}

static void
show_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  g_simple_action_set_state (action, value);
  update_layers (data);
}

static void
stop_planning_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  (void) action;
  (void) value;
  ox_plan_service_stop (ox_session_get_plan_service (self->session));
  ox_window_tell (self, _("Planning was stopped. The plan shown is an older one; the next edit plans again."));
}

/* --- Stages, tools, panes --- */

void
ox_window_set_stage (OxWindow *self, OxStage stage)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "stage");

  self->stage = stage;
  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_string (ox_stage_name (stage)));
  gtk_stack_set_visible_child_name (self->panels, ox_stage_name (stage));
  gtk_stack_set_visible_child_name (self->middle, stage == OX_STAGE_SHEETS ? "sheets" : "floor");
  if (stage == OX_STAGE_RECORD)
    ox_canvas_set_tool (self->canvas, OX_TOOL_MARK);
  else if (stage != OX_STAGE_FLOOR || ox_canvas_get_tool (self->canvas) == OX_TOOL_MARK)
    ox_canvas_set_tool (self->canvas, OX_TOOL_SELECT);
  ox_window_show_hint (self);
  ox_window_update_pages (self);
}

gboolean
ox_window_find_stage (const char *name, OxStage *stage)
{
  for (guint i = 0; i < OX_N_STAGES; i++)
    if (g_str_equal (ox_stage_name (i), name))
      {
        *stage = i;
        return TRUE;
      }
  return FALSE;
}

static void
stage_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxStage stage;

  (void) action;
  if (ox_window_find_stage (g_variant_get_string (value, NULL), &stage))
    ox_window_set_stage (data, stage);
}

static void
tool_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  (void) action;
  for (int i = 0; i < OX_N_TOOLS; i++)
    if (g_str_equal (ox_tool_kind_name ((OxToolKind) i), g_variant_get_string (value, NULL)))
      {
        ox_window_set_stage (self, i == OX_TOOL_MARK ? OX_STAGE_RECORD : OX_STAGE_FLOOR);
        ox_canvas_set_tool (self->canvas, (OxToolKind) i);
        gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
      }
}

static void
obstacle_kind_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  guint kind = index_of (obstacle_kinds, G_N_ELEMENTS (obstacle_kinds), g_variant_get_string (value, NULL));

  if (kind == G_N_ELEMENTS (obstacle_kinds))
    return;
  g_simple_action_set_state (action, value);
  ox_canvas_set_obstacle_kind (OX_WINDOW (data)->canvas, (OxObstacleKind) kind);
}

static void
menu_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  gtk_menu_button_popup (OX_WINDOW (data)->menu);
}

/* Stages, panel, middle, and round again. */
static void
next_pane_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);
  GtkWidget *panes[] = { GTK_WIDGET (self->stages), GTK_WIDGET (self->panels), GTK_WIDGET (self->middle) };
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  guint next = 0;

  (void) action;
  (void) value;
  for (guint i = 0; i < G_N_ELEMENTS (panes); i++)
    if (focus != NULL && gtk_widget_is_ancestor (focus, panes[i]))
      next = (i + 1) % G_N_ELEMENTS (panes);
  gtk_widget_child_focus (panes[next], GTK_DIR_TAB_FORWARD);
}

static void
tell_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  ox_window_tell (data, g_variant_get_string (value, NULL));
}

static const GActionEntry entries[] = {
  { .name = "open", .activate = open_cb },
  { .name = "open-recent", .activate = open_recent_cb, .parameter_type = "s" },
  { .name = "save", .activate = save_cb },
  { .name = "save-as", .activate = save_as_cb },
  { .name = "export-pdf", .activate = export_pdf_cb },
  { .name = "export-svg", .activate = export_svg_cb },
  { .name = "print", .activate = print_cb },
  { .name = "close", .activate = close_cb },
  { .name = "undo", .activate = undo_cb },
  { .name = "redo", .activate = redo_cb },
  { .name = "cut", .activate = cut_cb },
  { .name = "copy", .activate = copy_cb },
  { .name = "paste", .activate = paste_cb },
  { .name = "copy-picture", .activate = copy_picture_cb },
  { .name = "delete", .activate = delete_cb },
  { .name = "select-all", .activate = select_all_cb },
  { .name = "select-none", .activate = select_none_cb },
  { .name = "units", .activate = units_cb, .parameter_type = "s", .state = "'metres'" },
  { .name = "zoom-in", .activate = zoom_in_cb },
  { .name = "zoom-out", .activate = zoom_out_cb },
  { .name = "zoom-fit", .activate = zoom_fit_cb },
  { .name = "zoom-selection", .activate = zoom_selection_cb },
  { .name = "zoom-scale", .activate = zoom_scale_cb, .parameter_type = "s" },
  { .name = "show-lanes", .state = "false", .change_state = show_cb },
  { .name = "show-strips", .state = "true", .change_state = show_cb },
  { .name = "show-numbers", .state = "true", .change_state = show_cb },
  { .name = "show-zones", .state = "true", .change_state = show_cb },
  { .name = "show-edge-work", .state = "true", .change_state = show_cb },
  { .name = "show-moves", .state = "false", .change_state = show_cb },
  { .name = "show-reach", .state = "false", .change_state = show_cb },
  { .name = "show-dose", .state = "false", .change_state = show_cb },
  { .name = "show-names", .state = "true", .change_state = show_cb },
  { .name = "stop-planning", .activate = stop_planning_cb },
  { .name = "stage", .activate = stage_cb, .parameter_type = "s", .state = "'floor'" },
  { .name = "tool", .activate = tool_cb, .parameter_type = "s", .state = "'select'" },
  { .name = "obstacle-kind", .activate = obstacle_kind_cb, .parameter_type = "s", .state = "'solid'" },
  { .name = "menu", .activate = menu_cb },
  { .name = "next-pane", .activate = next_pane_cb },
  { .name = "tell", .activate = tell_cb, .parameter_type = "s" },
};

void
ox_window_add_actions (OxWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  ox_window_add_place_actions (self);
  ox_window_add_form_actions (self);
}

void
ox_window_update_actions (OxWindow *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  GAction *units = g_action_map_lookup_action (G_ACTION_MAP (self), "units");
  guint there = 0;

  if (ox_session_find_undo_label (self->session) != NULL)
    there |= OX_NEEDS_UNDO;
  if (ox_session_find_redo_label (self->session) != NULL)
    there |= OX_NEEDS_REDO;
  if (ox_session_get_selection (self->session)[0] != NULL)
    there |= OX_NEEDS_SELECTION;
  if (job->n_rooms + job->n_obstacles + job->n_excluded + job->n_doorways + job->n_joints + job->n_stations
          + job->n_conditions + job->n_traced > 0)
    there |= OX_NEEDS_ITEMS;
  if (job->n_rooms > 0 && ox_session_is_plan_current (self->session))
    there |= OX_NEEDS_PLAN;
  if (ox_plan_service_is_running (ox_session_get_plan_service (self->session)))
    there |= OX_NEEDS_PLANNING;
  ox_actions_update (G_ACTION_MAP (self), there);
  g_simple_action_set_state (G_SIMPLE_ACTION (units), g_variant_new_string (unit_names[job->units]));
}
