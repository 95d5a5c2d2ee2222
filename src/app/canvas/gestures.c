/* Oxturn: app/canvas/gestures - pointer, scroll, pinch and keys of the canvas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/canvas-private.h"

/* What the gestures need to remember between their signals; owned by the canvas as data. */
typedef struct
{
  gboolean space; /* the space bar is held: the pointer drags the paper */
  gboolean panning;
  OxPixel pan_from; /* pan done so far in this drag */
} Hands;

static Hands *
hands_of (OxCanvas *canvas)
{
  return g_object_get_data (G_OBJECT (canvas), "ox-hands");
}

static OxHold
hold_of (GtkEventController *controller)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);

  return ((state & GDK_SHIFT_MASK) != 0 ? OX_HOLD_SHIFT : OX_HOLD_NONE)
         | ((state & GDK_CONTROL_MASK) != 0 ? OX_HOLD_CONTROL : OX_HOLD_NONE);
}

static void
pressed_cb (GtkGestureClick *gesture, int clicks, double x, double y, OxCanvas *canvas)
{
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
  if (!hands_of (canvas)->space)
    ox_canvas_press (canvas, (OxPixel){ x, y }, hold_of (GTK_EVENT_CONTROLLER (gesture)), (guint) clicks);
}

static void
released_cb (GtkGestureClick *gesture, int clicks, double x, double y, OxCanvas *canvas)
{
  (void) clicks;
  if (!hands_of (canvas)->space)
    ox_canvas_release (canvas, (OxPixel){ x, y }, hold_of (GTK_EVENT_CONTROLLER (gesture)));
}

static void
motion_cb (GtkEventControllerMotion *motion, double x, double y, OxCanvas *canvas)
{
  if (!hands_of (canvas)->panning)
    ox_canvas_motion (canvas, (OxPixel){ x, y }, hold_of (GTK_EVENT_CONTROLLER (motion)));
}

/* --- Panning with the middle button, or with the space bar held --- */

static void
pan_begin_cb (GtkGestureDrag *drag, double x, double y, OxCanvas *canvas)
{
  Hands *hands = hands_of (canvas);
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (drag));

  (void) x;
  (void) y;
  if (button != GDK_BUTTON_MIDDLE && !(button == GDK_BUTTON_PRIMARY && hands->space))
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  hands->panning = TRUE;
  hands->pan_from = (OxPixel){ 0, 0 };
  gtk_widget_set_cursor_from_name (GTK_WIDGET (canvas), "grabbing");
}

static void
pan_update_cb (GtkGestureDrag *drag, double x, double y, OxCanvas *canvas)
{
  Hands *hands = hands_of (canvas);

  (void) drag;
  if (!hands->panning)
    return;
  ox_canvas_pan (canvas, (OxPixel){ x - hands->pan_from.x, y - hands->pan_from.y });
  hands->pan_from = (OxPixel){ x, y };
}

static void
pan_end_cb (GtkGestureDrag *drag, double x, double y, OxCanvas *canvas)
{
  (void) drag;
  (void) x;
  (void) y;
  hands_of (canvas)->panning = FALSE;
}

/* --- Scrolling and pinching --- */

static gboolean
scroll_cb (GtkEventControllerScroll *scroll, double dx, double dy, OxCanvas *canvas)
{
  gboolean wheel = gtk_event_controller_scroll_get_unit (scroll) == GDK_SCROLL_UNIT_WHEEL;

  ox_canvas_scroll (canvas, (OxPixel){ dx, dy }, wheel, hold_of (GTK_EVENT_CONTROLLER (scroll)));
  return TRUE;
}

static void
pinch_begin_cb (GtkGesture *gesture, GdkEventSequence *sequence, OxCanvas *canvas)
{
  (void) gesture;
  (void) sequence;
  ox_canvas_pinch_begin (canvas);
}

static void
pinch_cb (GtkGestureZoom *zoom, double scale, OxCanvas *canvas)
{
  OxPixel about = canvas->pointer;

  gtk_gesture_get_bounding_box_center (GTK_GESTURE (zoom), &about.x, &about.y);
  ox_canvas_pinch (canvas, scale, about);
}

/* --- Keys --- */

static gboolean
name_of_key (guint keyval, OxKeyName *name)
{
  static const struct
  {
    guint keyval;
    OxKeyName name;
  } names[] = {
    { GDK_KEY_Return, OX_KEY_ENTER },        { GDK_KEY_KP_Enter, OX_KEY_ENTER },
    { GDK_KEY_Escape, OX_KEY_ESCAPE },       { GDK_KEY_Tab, OX_KEY_TAB },
    { GDK_KEY_Delete, OX_KEY_DELETE },       { GDK_KEY_KP_Delete, OX_KEY_DELETE },
    { GDK_KEY_BackSpace, OX_KEY_BACKSPACE }, { GDK_KEY_Left, OX_KEY_LEFT },
    { GDK_KEY_Right, OX_KEY_RIGHT },         { GDK_KEY_Up, OX_KEY_UP },
    { GDK_KEY_Down, OX_KEY_DOWN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (names[i].keyval == keyval)
      {
        *name = names[i].name;
        return TRUE;
      }
  return FALSE;
}

/* --- The menu of the floor, by the other button or the menu key --- */

static void
menu_pressed_cb (GtkGestureClick *gesture, int clicks, double x, double y, OxCanvas *canvas)
{
  (void) gesture;
  (void) clicks;
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
  ox_canvas_popup_menu (canvas, (OxPixel){ x, y }, TRUE);
}

static gboolean
is_menu_key (guint keyval, GdkModifierType state)
{
  return keyval == GDK_KEY_Menu || (keyval == GDK_KEY_F10 && (state & GDK_SHIFT_MASK) != 0);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state, OxCanvas *canvas)
{
  OxKey key = { .name = OX_KEY_SIGN, .hold = hold_of (GTK_EVENT_CONTROLLER (keys)) };

  (void) keycode;
  if (is_menu_key (keyval, state))
    {
      const OxView *view = ox_canvas_get_view (canvas);

      ox_canvas_popup_menu (canvas, (OxPixel){ view->width_px / 2, view->height_px / 2 }, FALSE);
      return TRUE;
    }
  /* Ctrl+Tab leaves the canvas whatever the tool does with Tab. */
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  if (!name_of_key (keyval, &key.name))
    key.sign = gdk_keyval_to_unicode (keyval);
  if (key.name == OX_KEY_SIGN && key.sign == 0)
    return FALSE;
  if (ox_canvas_key (canvas, &key))
    return TRUE;
  if (keyval != GDK_KEY_space)
    return FALSE;
  hands_of (canvas)->space = TRUE;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (canvas), "grab");
  return TRUE;
}

static void
key_released_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state, OxCanvas *canvas)
{
  (void) keys;
  (void) keycode;
  (void) state;
  if (keyval == GDK_KEY_space)
    hands_of (canvas)->space = FALSE;
}

static void
add_controller (OxCanvas *canvas, gpointer controller)
{
  gtk_widget_add_controller (GTK_WIDGET (canvas), controller);
}

static void
add_panning (OxCanvas *canvas)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (pan_begin_cb), canvas);
  g_signal_connect (drag, "drag-update", G_CALLBACK (pan_update_cb), canvas);
  g_signal_connect (drag, "drag-end", G_CALLBACK (pan_end_cb), canvas);
  add_controller (canvas, drag);
}

static void
add_zooming (OxCanvas *canvas)
{
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), canvas);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), canvas);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), canvas);
  add_controller (canvas, scroll);
  add_controller (canvas, pinch);
}

void
ox_canvas_add_gestures (OxCanvas *canvas)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *menu = gtk_gesture_click_new ();

  /* What is typed into a tool comes before the letters that choose one. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_object_set_data_full (G_OBJECT (canvas), "ox-hands", g_new0 (Hands, 1), g_free);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), canvas);
  g_signal_connect (click, "released", G_CALLBACK (released_cb), canvas);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), canvas);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), canvas);
  g_signal_connect (keys, "key-released", G_CALLBACK (key_released_cb), canvas);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu), GDK_BUTTON_SECONDARY);
  g_signal_connect (menu, "pressed", G_CALLBACK (menu_pressed_cb), canvas);
  add_controller (canvas, menu);
  add_controller (canvas, click);
  add_controller (canvas, motion);
  add_controller (canvas, keys);
  add_panning (canvas);
  add_zooming (canvas);
}
