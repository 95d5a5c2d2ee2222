/* Oxturn: tests/app/test-whole-floor - a floor drawn from nothing in a window, and drawn on while the planner is at
 * work. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/canvas-private.h"

#include "support/floors.h"
#include "tools/hour.h"
#include "ui.h"

/* --- Hands at the canvas: its own gestures, through its view --- */

#define CLOSE_PX_PER_M 140.0 /* even steps of 5 cm, and 9 pixels, which is how near a corner holds, are 6 cm */

typedef struct
{
  OxWindow *window;
  OxSession *session;
  OxCanvas *canvas;
  GtkWidget *widget;          /* the canvas */
  GtkGesture *click;          /* its own */
  GtkEventController *motion; /* its own */
  guint edits;                /* since the tool was taken up */
  guint refusals;
} Drawer;

static void
find_controllers (Drawer *drawer)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (drawer->widget);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) one = g_list_model_get_item (all, i);

      if (GTK_IS_EVENT_CONTROLLER_MOTION (one))
        drawer->motion = one;
      else if (GTK_IS_GESTURE_CLICK (one)
               && gtk_gesture_single_get_button (GTK_GESTURE_SINGLE (one)) == GDK_BUTTON_PRIMARY)
        drawer->click = GTK_GESTURE (one);
    }
  g_assert_nonnull (drawer->motion);
  g_assert_nonnull (drawer->click);
}

static void
edited_cb (Drawer *drawer)
{
  drawer->edits++;
}

static void
refused_cb (Drawer *drawer, const char *why)
{
  g_test_message ("refused: %s", why);
  drawer->refusals++;
}

static void
sit_down (Drawer *drawer, OxWindow *window)
{
  *drawer = (Drawer){ .window = window,
                      .session = ox_window_get_session (window),
                      .canvas = ox_window_get_canvas (window),
                      .widget = GTK_WIDGET (ox_window_get_canvas (window)) };
  find_controllers (drawer);
  g_signal_connect_swapped (drawer->session, "job-changed", G_CALLBACK (edited_cb), drawer);
  g_signal_connect_swapped (drawer->canvas, "refused", G_CALLBACK (refused_cb), drawer);
  ox_canvas_zoom (drawer->canvas, CLOSE_PX_PER_M / ox_canvas_get_view (drawer->canvas)->px_per_m);
}

static void
get_up (Drawer *drawer)
{
  g_signal_handlers_disconnect_by_data (drawer->session, drawer);
  g_signal_handlers_disconnect_by_data (drawer->canvas, drawer);
}

static void
take_up (gpointer who, OxToolKind kind, OxObstacleKind obstacle)
{
  static const char *const obstacles[]
      = { [OX_OBSTACLE_SOLID] = "solid", [OX_OBSTACLE_PIT] = "pit", [OX_OBSTACLE_MASKED] = "masked" };
  Drawer *drawer = who;

  gtk_widget_activate_action (GTK_WIDGET (drawer->window), "win.obstacle-kind", "s", obstacles[obstacle]);
  gtk_widget_activate_action (GTK_WIDGET (drawer->window), "win.tool", "s", ox_tool_kind_name (kind));
  g_assert_cmpint (ox_canvas_get_tool (drawer->canvas), ==, kind);
  drawer->edits = drawer->refusals = 0;
}

/* Where the pointer has to be; a place out of sight is brought into the middle first, as by panning. */
static OxPixel
pixel_of (Drawer *drawer, OxPoint at)
{
  const OxView *view = ox_canvas_get_view (drawer->canvas);
  OxPixel px = ox_view_to_pixel (view, at);

  if (px.x >= 0 && px.y >= 0 && px.x <= view->width_px && px.y <= view->height_px)
    return px;
  ox_canvas_show_point (drawer->canvas, at);
  return ox_view_to_pixel (view, at);
}

/* The pointer of the screen goes along, to the nearest pixel, since GTK tells of it again whenever something else
 * moves. */
static void
move (gpointer who, OxPoint at)
{
  Drawer *drawer = who;
  OxPixel px = pixel_of (drawer, at);

  ox_ui_point (drawer->widget, px.x, px.y);
  g_signal_emit_by_name (drawer->motion, "motion", px.x, px.y);
}

static void
press (gpointer who, OxPoint at, gboolean exact)
{
  OxPixel px = pixel_of (who, at);

  (void) exact; /* we look closely enough */
  g_signal_emit_by_name (((Drawer *) who)->click, "pressed", 1, px.x, px.y);
}

static void
release (gpointer who, OxPoint at, gboolean exact)
{
  OxPixel px = pixel_of (who, at);

  (void) exact;
  g_signal_emit_by_name (((Drawer *) who)->click, "released", 1, px.x, px.y);
}

static void
type (gpointer who, const char *text)
{
  ox_ui_keys (((Drawer *) who)->widget, text);
}

static void
lay_down (gpointer who)
{
  Drawer *drawer = who;

  OX_WAIT_FOR (drawer->edits > 0 || drawer->refusals > 0);
  g_assert_cmpuint (drawer->edits, ==, 1);
  g_assert_cmpuint (drawer->refusals, ==, 0);
}

static const OxJob *
get_job (gpointer who)
{
  return ox_session_get_job (((Drawer *) who)->session);
}

static void
apply (gpointer who, const OxJob *job)
{
  ox_session_apply (((Drawer *) who)->session, job, "Set Figures", NULL, NULL);
}

static gboolean
step (Drawer *drawer, const char *action, gboolean there_is_one)
{
  const OxJob *before = ox_session_get_job (drawer->session);

  if (!there_is_one)
    return FALSE;
  gtk_widget_activate_action (GTK_WIDGET (drawer->window), action, NULL);
  g_assert_true (ox_session_get_job (drawer->session) != before);
  return TRUE;
}

static gboolean
undo (gpointer who)
{
  return step (who, "win.undo", ox_session_find_undo_label (((Drawer *) who)->session) != NULL);
}

static gboolean
redo (gpointer who)
{
  return step (who, "win.redo", ox_session_find_redo_label (((Drawer *) who)->session) != NULL);
}

static const OxHourHands hands = { take_up, move, press, release, type, lay_down, get_job, apply, undo, redo };

static void
test_warehouse (void)
{
  OxWindow *window = ox_ui_open (NULL);
  Drawer drawer;

  sit_down (&drawer, window);
  ox_hour_run (&hands, &drawer);
  get_up (&drawer);
  ox_ui_close (window);
}

/* --- A planner that goes on until it is let go, whoever wants it to stop --- */

static struct
{
  GMutex mutex;
  GCond cond;
  gboolean open;
  guint begun, ended;
} gate;

static OxPlan *
held_plan (const OxJob *job, OxRun *run, GError **error)
{
  gint64 until
      = g_get_monotonic_time () + 30 * G_TIME_SPAN_SECOND; /* so that who waits for it fails and does not hang */

  g_mutex_lock (&gate.mutex);
  gate.begun++;
  while (!gate.open && g_cond_wait_until (&gate.cond, &gate.mutex, until))
    ;
  gate.ended++;
  g_mutex_unlock (&gate.mutex);
  return ox_plan_new (job, run, error);
}

static guint
count_ended (void)
{
  guint ended;

  g_mutex_lock (&gate.mutex);
  ended = gate.ended;
  g_mutex_unlock (&gate.mutex);
  return ended;
}

static void
open_gate (void)
{
  g_mutex_lock (&gate.mutex);
  gate.open = TRUE;
  g_cond_broadcast (&gate.cond);
  g_mutex_unlock (&gate.mutex);
}

static OxWindow *
open_held (const OxJob *job)
{
  g_autoptr (OxSession) session = NULL;
  OxWindow *window;

  gate.open = FALSE;
  gate.begun = gate.ended = 0;
  session = ox_session_new (job, held_plan, NULL);
  window = ox_window_new (NULL, session);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  OX_WAIT_FOR (ox_canvas_get_view (ox_window_get_canvas (window))->width_px > 0);
  return window;
}

static gboolean
shows (OxCanvas *canvas, const char *layer, OxPoint at)
{
  for (guint i = 0; canvas->drawing != NULL && i < canvas->drawing->n_elements; i++)
    {
      const OxElement *element = &canvas->drawing->elements[i];

      if (g_str_equal (canvas->drawing->layers[element->layer].id, layer) && element->box.x0 <= at.x
          && element->box.x1 >= at.x && element->box.y0 <= at.y && element->box.y1 >= at.y)
        return TRUE;
    }
  return FALSE;
}

/* Columns typed one after the other while the first plan is under way: each is there with its last key, is drawn, and
 * can be taken back, and the planner is still where it was. The last floor is planned when it is let go. */
static void
test_typing_never_waits (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (60, 40, "compact");
  OxWindow *window = open_held (job);
  Drawer drawer;

  sit_down (&drawer, window);
  for (guint i = 0; i < 5; i++)
    {
      OxPoint corner = { 10 + 5 * i, 20 };

      take_up (&drawer, OX_TOOL_OBSTACLE_RECTANGLE, OX_OBSTACLE_SOLID);
      move (&drawer, corner);
      press (&drawer, corner, TRUE);
      release (&drawer, corner, TRUE);
      move (&drawer, (OxPoint){ corner.x + 0.7, corner.y + 0.6 });
      type (&drawer, "1\t1\n");
      lay_down (&drawer);
      g_assert_cmpuint (get_job (&drawer)->n_obstacles, ==, i + 1);
      OX_WAIT_FOR (shows (drawer.canvas, "obstacles", (OxPoint){ corner.x + 0.5, corner.y + 0.5 }));
      g_assert_true (undo (&drawer) && redo (&drawer));
      g_assert_cmpuint (count_ended (), ==, 0);
      g_assert_false (ox_session_is_plan_current (drawer.session));
      g_assert_true (ox_plan_service_is_running (ox_session_get_plan_service (drawer.session)));
    }
  open_gate ();
  OX_WAIT_FOR (ox_session_is_plan_current (drawer.session));
  g_assert_true (ox_session_find_plan (drawer.session)->job == get_job (&drawer));
  g_assert_cmpuint (gate.begun, ==, 2); /* the first floor and the last */
  get_up (&drawer);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/whole-floor/warehouse", test_warehouse);
  g_test_add_func ("/app/whole-floor/typing-never-waits", test_typing_never_waits);
  return g_test_run ();
}
