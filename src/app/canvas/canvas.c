/* Oxturn: app/canvas/canvas - the floor on screen: layers, view, and the tool that is in hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/canvas-private.h"

#include "app/canvas/floor-layer.h"
#include "app/canvas/overlay-layer.h"
#include "app/canvas/plan-marks.h"
#include "app/traced/store.h"
#include "job/place.h"
#include "session/plan-words.h"
#include "session/selection.h"
#include "tools/pick.h"
#include "tools/snap.h"

#include <glib/gi18n-lib.h>

#define RESIZED_PX 60.0 /* more than that, and what showed the whole floor does so again */
#define START_PX_PER_M 40.0 /* of an empty floor */

G_DEFINE_FINAL_TYPE (OxCanvas, ox_canvas, GTK_TYPE_WIDGET)

enum
{
  TOOL_CHANGED,
  HINT_CHANGED,
  VIEW_CHANGED,
  REFUSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static OxScene
scene_of (OxCanvas *self)
{
  return (OxScene){ .job = ox_session_get_job (self->session),
                    .selection = ox_session_get_selection (self->session),
                    .px_per_m = self->view.px_per_m,
                    .obstacle_kind = self->obstacle_kind,
                    .plan = ox_session_find_plan (self->session),
                    .mark = &self->mark,
                    .mark_up_to = self->mark_up_to };
}

static void
describe (OxCanvas *self)
{
  const OxJob *job = ox_session_get_job (self->session);
  const char *const *selection = ox_session_get_selection (self->session);
  g_autofree char *selected = g_strjoinv (", ", (char **) selection);
  g_autofree char *text = g_strdup_printf (_ ("%u rooms, %u obstacles; selected: %s; tool: %s"), job->n_rooms,
                                           job->n_obstacles, *selected != '\0' ? selected : _ ("nothing"),
                                           ox_tool_kind_title (ox_tool_get_kind (self->tool)));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* --- What is shown --- */

void
ox_canvas_update_overlay (OxCanvas *self)
{
  OxScene scene = scene_of (self);
  OxPreview *preview = ox_tool_preview (self->tool, &scene);
  const OxJob *draft = ox_tool_find_draft (self->tool);

  /* A traced plan is dragged as itself, not as an outline. */
  ox_traced_store_set_job (self->traced, draft != NULL ? draft : scene.job);
  if (ox_session_is_plan_current (self->session))
    {
      if (self->clock >= 0)
        ox_plan_marks_add_clock (preview, ox_session_find_plan (self->session), self->clock);
      if (self->pointed != NULL)
        ox_plan_marks_add_pointed (preview, ox_session_find_plan (self->session), self->pointed);
    }
  if (self->in_trouble)
    ox_preview_add (preview, OX_PREVIEW_TROUBLE, &self->trouble, 1);
  ox_overlay_layer_set (OX_OVERLAY_LAYER (self->overlay), &self->view, preview);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), ox_tool_cursor (self->tool));
  g_signal_emit (self, signals[HINT_CHANGED], 0);
}

/* Lines of reach are there only when they are asked for, and a moment later. */
static const OxReachLines *
find_reach (OxCanvas *self)
{
  if ((self->layers & OX_FLOOR_REACH) == 0 || !ox_session_is_plan_current (self->session))
    return NULL;
  return ox_reach_keeper_find (self->reach, ox_session_find_plan (self->session));
}

static gboolean
redraw_cb (gpointer data)
{
  OxCanvas *self = OX_CANVAS (data);
  const OxFloorPart part = { .layers = self->layers, .box = OX_FLOOR_WHOLE, .reach = find_reach (self) };
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new_part (ox_session_get_job (self->session),
                                                             ox_session_find_plan (self->session), &part, NULL);

  self->redraw_id = 0;
  g_clear_pointer (&self->drawing, ox_drawing_unref);
  self->drawing = ox_drawing_ref (drawing);
  ox_floor_layer_set_drawing (OX_FLOOR_LAYER (self->floor), drawing);
  return G_SOURCE_REMOVE;
}

/* A plan often lands right behind the edit that it belongs to: one drawing serves both. */
static void
queue_redraw (OxCanvas *self)
{
  if (self->redraw_id == 0)
    self->redraw_id = g_idle_add (redraw_cb, self);
}

static void
reach_found_cb (gpointer data)
{
  queue_redraw (data);
}

static void
job_changed_cb (OxCanvas *self)
{
  self->in_trouble = FALSE;
  queue_redraw (self);
  ox_canvas_update_overlay (self);
  describe (self);
}

static void
traced_changed_cb (gpointer data)
{
  OxCanvas *self = data;

  ox_floor_layer_set_traced (OX_FLOOR_LAYER (self->floor), ox_traced_store_get_set (self->traced));
}

static void
traced_failed_cb (const char *why, gpointer data)
{
  g_signal_emit (data, signals[REFUSED], 0, why);
}

void
ox_canvas_add_picture (OxCanvas *self, GBytes *data, guint page, const OxTracedPicture *picture)
{
  ox_traced_store_add (self->traced, data, page, picture);
}

static void
selection_changed_cb (OxCanvas *self)
{
  ox_canvas_update_overlay (self);
  describe (self);
}

/* --- What the pointer rests on --- */

void
ox_canvas_point_out (OxCanvas *self, const char *id)
{
  const OxPlan *plan = ox_session_is_plan_current (self->session) ? ox_session_find_plan (self->session) : NULL;
  char *words = plan != NULL && id != NULL ? ox_plan_words (plan, id) : NULL;
  char *pointed = words != NULL ? g_strdup (id) : NULL;

  g_free (self->words);
  g_free (self->pointed);
  self->words = words;
  self->pointed = pointed;
  ox_canvas_update_overlay (self);
  if (words != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  else
    describe (self);
}

static gboolean
asks (OxCanvas *self)
{
  OxToolKind kind = ox_tool_get_kind (self->tool);

  return kind == OX_TOOL_SELECT || kind == OX_TOOL_MARK;
}

/* Only while nothing is drawn or dragged: then the pointer asks, it does not act. */
static void
look_under (OxCanvas *self, OxPoint at)
{
  const char *id = NULL;

  if (asks (self) && !ox_tool_is_busy (self->tool) && self->drawing != NULL)
    id = ox_drawing_hit (self->drawing, at, 0);
  if (g_strcmp0 (id, self->pointed) != 0)
    ox_canvas_point_out (self, id);
}

void
ox_canvas_set_clock (OxCanvas *self, double minutes)
{
  if (self->clock == minutes)
    return;
  self->clock = minutes;
  ox_canvas_update_overlay (self);
}

static void
plan_changed_cb (OxCanvas *self)
{
  queue_redraw (self);
  ox_canvas_point_out (self, NULL);
}

/* --- The tool --- */

/* @lasting: what was refused stays marked while the pointer is only moved. */
static void
take_answer (OxCanvas *self, OxToolAnswer *answer, gboolean lasting)
{
  const char *const *selection = (const char *const *) answer->selection;

  if (answer->job != NULL)
    ox_session_apply (self->session, answer->job, answer->label, selection, answer->merge_key);
  else if (selection != NULL)
    ox_session_select (self->session, selection);
  if (answer->refusal != NULL)
    {
      self->in_trouble = answer->placed;
      self->trouble = answer->place;
      g_signal_emit (self, signals[REFUSED], 0, answer->refusal);
    }
  else if (lasting)
    self->in_trouble = FALSE;
  ox_canvas_update_overlay (self);
}

static OxPointer
pointer_at (OxCanvas *self, OxPixel at, OxHold hold, guint clicks)
{
  self->pointer = at;
  return (OxPointer){ .at = ox_view_to_point (&self->view, at), .hold = hold, .clicks = clicks };
}

void
ox_canvas_press (OxCanvas *self, OxPixel at, OxHold hold, guint clicks)
{
  g_auto (OxToolAnswer) answer = { NULL };
  OxScene scene = scene_of (self);
  OxPointer pointer = pointer_at (self, at, hold, clicks);

  ox_tool_press (self->tool, &scene, &pointer, &answer);
  take_answer (self, &answer, TRUE);
}

void
ox_canvas_motion (OxCanvas *self, OxPixel at, OxHold hold)
{
  g_auto (OxToolAnswer) answer = { NULL };
  OxScene scene = scene_of (self);
  OxPointer pointer = pointer_at (self, at, hold, 0);

  ox_tool_motion (self->tool, &scene, &pointer, &answer);
  take_answer (self, &answer, ox_tool_is_busy (self->tool) && ox_tool_get_kind (self->tool) == OX_TOOL_SELECT);
  look_under (self, pointer.at);
}

void
ox_canvas_release (OxCanvas *self, OxPixel at, OxHold hold)
{
  g_auto (OxToolAnswer) answer = { NULL };
  OxScene scene = scene_of (self);
  OxPointer pointer = pointer_at (self, at, hold, 0);

  ox_tool_release (self->tool, &scene, &pointer, &answer);
  take_answer (self, &answer, TRUE);
}

/* Without a pointer the arrows move a place along and Enter clicks there. */
static gboolean
key_as_pointer (OxCanvas *self, const OxKey *key)
{
  double step = ox_snap_step (ox_session_get_job (self->session)->units, self->view.px_per_m) * self->view.px_per_m;
  OxPixel at = self->pointer;

  if ((key->hold & OX_HOLD_SHIFT) != 0)
    step *= 10;
  if (key->name == OX_KEY_ENTER)
    {
      ox_canvas_press (self, at, OX_HOLD_NONE, 1);
      ox_canvas_release (self, at, OX_HOLD_NONE);
      return TRUE;
    }
  if (key->name == OX_KEY_LEFT || key->name == OX_KEY_RIGHT)
    at.x += key->name == OX_KEY_RIGHT ? step : -step;
  else if (key->name == OX_KEY_UP || key->name == OX_KEY_DOWN)
    at.y += key->name == OX_KEY_DOWN ? step : -step;
  else
    return FALSE;
  at.x = CLAMP (at.x, 0, self->view.width_px);
  at.y = CLAMP (at.y, 0, self->view.height_px);
  ox_canvas_motion (self, at, OX_HOLD_NONE);
  return TRUE;
}

gboolean
ox_canvas_key (OxCanvas *self, const OxKey *key)
{
  g_auto (OxToolAnswer) answer = { NULL };
  OxScene scene = scene_of (self);
  gboolean taken = ox_tool_key (self->tool, &scene, key, &answer);

  take_answer (self, &answer, TRUE);
  if (taken || key_as_pointer (self, key))
    return TRUE;
  if (key->name != OX_KEY_ESCAPE || asks (self))
    return FALSE;
  ox_canvas_set_tool (self, OX_TOOL_SELECT);
  return TRUE;
}

void
ox_canvas_select_all (OxCanvas *self)
{
  static const OxBox everywhere = { -INFINITY, -INFINITY, INFINITY, INFINITY };
  g_auto (GStrv) ids = ox_pick_in_box (ox_session_get_job (self->session), everywhere);

  ox_session_select (self->session, (const char *const *) ids);
}

void
ox_canvas_delete_selected (OxCanvas *self)
{
  g_autoptr (OxTool) select = ox_tool_new (OX_TOOL_SELECT);
  g_auto (OxToolAnswer) answer = { NULL };
  OxScene scene = scene_of (self);

  ox_tool_cancel (self->tool);
  ox_tool_key (select, &scene, &(OxKey){ .name = OX_KEY_DELETE }, &answer);
  take_answer (self, &answer, TRUE);
}

void
ox_canvas_set_tool (OxCanvas *self, OxToolKind kind)
{
  g_return_if_fail (OX_IS_CANVAS (self));

  ox_tool_cancel (self->tool);
  if (ox_tool_get_kind (self->tool) != kind)
    {
      ox_tool_free (self->tool);
      self->tool = ox_tool_new (kind);
      g_signal_emit (self, signals[TOOL_CHANGED], 0);
    }
  ox_canvas_update_overlay (self);
  describe (self);
}

OxToolKind
ox_canvas_get_tool (OxCanvas *self)
{
  return ox_tool_get_kind (self->tool);
}

const char *
ox_canvas_get_hint (OxCanvas *self)
{
  return self->words != NULL ? self->words : ox_tool_hint (self->tool);
}

void
ox_canvas_set_obstacle_kind (OxCanvas *self, OxObstacleKind kind)
{
  self->obstacle_kind = kind;
}

OxObstacleKind
ox_canvas_get_obstacle_kind (OxCanvas *self)
{
  return self->obstacle_kind;
}

OxFloorLayers
ox_canvas_get_layers (OxCanvas *self)
{
  return self->layers;
}

void
ox_canvas_set_mark (OxCanvas *self, const OxMark *mark, gboolean up_to)
{
  char *date = g_strdup (mark->date);

  g_free (self->mark_date);
  self->mark_date = date;
  self->mark = *mark;
  self->mark.date = date;
  self->mark.note = NULL;
  self->mark_up_to = up_to;
}

void
ox_canvas_set_layers (OxCanvas *self, OxFloorLayers layers)
{
  if (self->layers == layers)
    return;
  self->layers = layers;
  queue_redraw (self);
}

gboolean
ox_canvas_is_settled (OxCanvas *self)
{
  return self->redraw_id == 0 && ox_floor_layer_is_settled (OX_FLOOR_LAYER (self->floor))
         && ox_traced_store_is_settled (self->traced) && ox_reach_keeper_is_settled (self->reach)
         && (ox_session_is_plan_current (self->session) || ox_session_find_plan_error (self->session) != NULL);
}

/* --- The widget --- */

static void
ox_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  OxCanvas *self = OX_CANVAS (widget);
  gboolean resized;

  gtk_widget_allocate (self->floor, width, height, baseline, NULL);
  gtk_widget_allocate (self->overlay, width, height, baseline, NULL);
  if (width == (int) self->view.width_px && height == (int) self->view.height_px)
    return;
  /* A line more or less below the floor is no reason to draw it at another scale. */
  resized = fabs (width - self->view.width_px) > RESIZED_PX || fabs (height - self->view.height_px) > RESIZED_PX;
  self->view = ox_view_with_size (&self->view, width, height);
  self->pointer = (OxPixel){ width / 2.0, height / 2.0 };
  if (self->fitted && !(self->whole && resized))
    ox_canvas_set_view (self, self->view);
  else
    ox_canvas_fit (self);
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
ox_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  OxCanvas *self = OX_CANVAS (widget);
  GskRoundedRect frame;
  GdkRGBA colour;

  gtk_widget_snapshot_child (widget, self->floor, snapshot);
  gtk_widget_snapshot_child (widget, self->overlay, snapshot);
  if (!gtk_widget_has_visible_focus (widget))
    return;
  if (!gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), "theme_selected_bg_color", &colour))
    gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  gsk_rounded_rect_init_from_rect (
      &frame, &GRAPHENE_RECT_INIT (1, 1, (float) self->view.width_px - 2, (float) self->view.height_px - 2), 0);
  gtk_snapshot_append_border (snapshot, &frame, (float[4]){ 2, 2, 2, 2 },
                              (GdkRGBA[4]){ colour, colour, colour, colour });
}

static void
ox_canvas_dispose (GObject *object)
{
  OxCanvas *self = OX_CANVAS (object);

  g_clear_handle_id (&self->redraw_id, g_source_remove);
  g_clear_pointer (&self->traced, ox_traced_store_free);
  g_clear_pointer (&self->reach, ox_reach_keeper_free);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->floor, gtk_widget_unparent);
  g_clear_pointer (&self->overlay, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (ox_canvas_parent_class)->dispose (object);
}

static void
ox_canvas_finalize (GObject *object)
{
  OxCanvas *self = OX_CANVAS (object);

  g_clear_pointer (&self->tool, ox_tool_free);
  g_clear_pointer (&self->drawing, ox_drawing_unref);
  g_free (self->pointed);
  g_free (self->words);
  g_free (self->mark_date);
  G_OBJECT_CLASS (ox_canvas_parent_class)->finalize (object);
}

static void
ox_canvas_class_init (OxCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = ox_canvas_dispose;
  G_OBJECT_CLASS (klass)->finalize = ox_canvas_finalize;
  widget_class->size_allocate = ox_canvas_size_allocate;
  widget_class->snapshot = ox_canvas_snapshot;
  gtk_widget_class_set_css_name (widget_class, "canvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  signals[TOOL_CHANGED]
      = g_signal_new ("tool-changed", OX_TYPE_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[HINT_CHANGED]
      = g_signal_new ("hint-changed", OX_TYPE_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[VIEW_CHANGED]
      = g_signal_new ("view-changed", OX_TYPE_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REFUSED]
      = g_signal_new ("refused", OX_TYPE_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
ox_canvas_init (OxCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->floor = ox_floor_layer_new ();
  self->overlay = ox_overlay_layer_new ();
  gtk_widget_set_parent (self->floor, widget);
  gtk_widget_set_parent (self->overlay, widget);
  self->tool = ox_tool_new (OX_TOOL_SELECT);
  self->layers = OX_FLOOR_SCREEN;
  self->clock = -1;
  self->view = (OxView){ .centre = { 0, 0 }, .px_per_m = START_PX_PER_M };
  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Floor"), -1);
  ox_canvas_add_gestures (self);
}

GtkWidget *
ox_canvas_new (OxSession *session)
{
  OxCanvas *self = g_object_new (OX_TYPE_CANVAS, NULL);

  self->session = g_object_ref (session);
  self->reach = ox_reach_keeper_new (reach_found_cb, self);
  self->traced = ox_traced_store_new (
      &(OxTracedListener){ .changed = traced_changed_cb, .failed = traced_failed_cb, .user_data = self });
  g_signal_connect_object (session, "job-changed", G_CALLBACK (job_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "selection-changed", G_CALLBACK (selection_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "plan-changed", G_CALLBACK (plan_changed_cb), self, G_CONNECT_SWAPPED);
  job_changed_cb (self);
  return GTK_WIDGET (self);
}
