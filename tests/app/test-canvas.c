/* Oxturn: tests/app/test-canvas - the floor on screen: view, pointer, keys.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/canvas-private.h"

#include "job/edit.h"
#include "support/floors.h"
#include "ui.h"

static void
test_fit (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  const OxView *view = ox_canvas_get_view (ox_window_get_canvas (window));
  OxBox box = ox_view_get_box (view);

  g_assert_true (box.x0 < 0 && box.y0 < 0 && box.x1 > 30 && box.y1 > 20);
  g_assert_cmpfloat (30 * view->px_per_m, >, 0.5 * MIN (view->width_px, view->height_px));
  ox_ui_close (window);
}

/* Who looks at the whole floor sees the whole floor when there is less or more room for it; who zoomed keeps the scale. */
static void
test_fit_after_resize (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 10, "compact");
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  GtkPaned *parts = GTK_PANED (gtk_widget_get_ancestor (GTK_WIDGET (canvas), GTK_TYPE_PANED));
  const OxView *view = ox_canvas_get_view (canvas);
  double width = view->width_px, scale = view->px_per_m;
  OxBox box;

  gtk_paned_set_position (parts, 700);
  OX_WAIT_FOR (view->width_px < width - 200);
  box = ox_view_get_box (view);
  g_assert_true (box.x0 < 0 && box.x1 > 30);
  g_assert_cmpfloat (view->px_per_m, <, scale);
  ox_canvas_zoom (canvas, 2);
  scale = view->px_per_m;
  gtk_paned_set_position (parts, 400);
  OX_WAIT_FOR (view->width_px > width - 100);
  g_assert_cmpfloat (view->px_per_m, ==, scale);
  ox_ui_close (window);
}

static void
test_fit_of_nothing (void)
{
  OxWindow *window = ox_ui_open (NULL);
  const OxView *view = ox_canvas_get_view (ox_window_get_canvas (window));

  gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-fit", NULL);
  g_assert_true (isfinite (view->px_per_m) && view->px_per_m > 0);
  g_assert_true (isfinite (view->centre.x) && isfinite (view->centre.y));
  ox_ui_close (window);
}

/* The point of the floor under the pointer stays under it. */
static void
test_wheel_zooms_at_pointer (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  OxPixel at = { 300, 200 };
  OxPoint under = ox_view_to_point (ox_canvas_get_view (canvas), at);
  double before = ox_canvas_get_view (canvas)->px_per_m;
  OxPixel after;

  for (guint i = 0; i < 10; i++)
    ox_canvas_zoom_at (canvas, 1.15, at);
  after = ox_view_to_pixel (ox_canvas_get_view (canvas), under);
  g_assert_cmpfloat_with_epsilon (after.x, at.x, 0.5);
  g_assert_cmpfloat_with_epsilon (after.y, at.y, 0.5);
  g_assert_cmpfloat (ox_canvas_get_view (canvas)->px_per_m, >, 3 * before);
  ox_ui_close (window);
}

static void
test_wheel_and_middle_button_pan (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  GtkWidget *widget = GTK_WIDGET (canvas);
  OxPoint before = ox_canvas_get_view (canvas)->centre;
  double scale = ox_canvas_get_view (canvas)->px_per_m;

  ox_ui_point (widget, 300, 200);
  ox_ui_button (widget, 5, TRUE);
  ox_ui_button (widget, 5, FALSE);
  OX_WAIT_FOR (ox_canvas_get_view (canvas)->centre.y < before.y - 0.1);
  g_assert_cmpfloat (ox_canvas_get_view (canvas)->px_per_m, ==, scale);
  before = ox_canvas_get_view (canvas)->centre;
  ox_ui_button (widget, 2, TRUE);
  ox_ui_point (widget, 350, 260);
  ox_ui_point (widget, 400, 300);
  ox_ui_button (widget, 2, FALSE);
  OX_WAIT_FOR (fabs (ox_canvas_get_view (canvas)->centre.x - (before.x - 100 / scale)) < 0.5 / scale);
  OX_WAIT_FOR (fabs (ox_canvas_get_view (canvas)->centre.y - (before.y + 100 / scale)) < 0.5 / scale);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

/* A letter chooses a tool only while the floor has the focus; typed into a tool it stays a unit. */
static void
test_letters (void)
{
  OxWindow *window = ox_ui_open (NULL);
  OxCanvas *canvas = ox_window_get_canvas (window);
  GtkWidget *widget = GTK_WIDGET (canvas);

  gtk_widget_grab_focus (widget);
  ox_ui_point (widget, 300, 20);
  ox_ui_keys (widget, "r");
  OX_WAIT_FOR (ox_canvas_get_tool (canvas) == OX_TOOL_ROOM_CORNERS);
  ox_ui_click (widget, 200, 300);
  ox_ui_keys (widget, "250cm\t0\n");
  g_assert_cmpint (ox_canvas_get_tool (canvas), ==, OX_TOOL_ROOM_CORNERS);
  ox_ui_keys (widget, "2\t90\n\n");
  OX_WAIT_FOR (ox_session_get_job (ox_window_get_session (window))->n_rooms == 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (ox_session_get_job (ox_window_get_session (window))->rooms[0]->ring),
                                  2.5, 1e-9);
  ox_ui_keys (widget, "\033");
  OX_WAIT_FOR (ox_canvas_get_tool (canvas) == OX_TOOL_SELECT);
  ox_ui_close (window);
}

/* A room without a pointer: the arrows move a place, Enter clicks there, sizes are typed. */
static void
test_keyboard_alone (void)
{
  OxWindow *window = ox_ui_open (NULL);
  OxCanvas *canvas = ox_window_get_canvas (window);
  static const char sizes[] = "6\t4\n";

  ox_canvas_set_tool (canvas, OX_TOOL_ROOM_RECTANGLE);
  ox_canvas_key (canvas, &(OxKey){ .name = OX_KEY_LEFT });
  ox_canvas_key (canvas, &(OxKey){ .name = OX_KEY_ENTER });
  for (const char *p = sizes; *p != '\0'; p++)
    ox_canvas_key (canvas, &(OxKey){ .name = *p == '\t'   ? OX_KEY_TAB
                                             : *p == '\n' ? OX_KEY_ENTER
                                                          : OX_KEY_SIGN,
                                     .sign = (gunichar) *p });
  g_assert_cmpuint (ox_session_get_job (ox_window_get_session (window))->n_rooms, ==, 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (ox_session_get_job (ox_window_get_session (window))->rooms[0]->ring),
                                  24, 1e-9);
  ox_ui_close (window);
}

/* The plan is seen: the middle of a blasted room has not the colour of the empty canvas beside it. */
static void
test_picture (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWidget *canvas = GTK_WIDGET (ox_window_get_canvas (window));
  g_autoptr (GdkTexture) texture = ox_ui_picture (canvas);
  gsize width = (gsize) gdk_texture_get_width (texture);
  gsize height = (gsize) gdk_texture_get_height (texture);
  g_autofree guint32 *pixels = g_new (guint32, width * height);
  guint other = 0;

  gdk_texture_download (texture, (guchar *) pixels, width * 4);
  for (gsize y = height / 2 - 40; y < height / 2 + 40; y++)
    for (gsize x = width / 2 - 40; x < width / 2 + 40; x++)
      other += pixels[y * width + x] != pixels[3 * width + 3];
  g_assert_cmpuint (other, >, 80 * 80 / 2);
  ox_ui_close (window);
}

static guint
count_in_layer (OxCanvas *canvas, const char *layer)
{
  guint n = 0;

  for (guint i = 0; i < canvas->drawing->n_elements; i++)
    n += g_str_equal (canvas->drawing->layers[canvas->drawing->elements[i].layer].id, layer);
  return n;
}

/* Each layer comes and goes with its switch; a station that does not reach all of the floor has a line. */
static void
test_layers (void)
{
  static const struct
  {
    const char *action, *layer;
    gboolean at_first;
  } rows[] = { { "win.show-lanes", "lanes", FALSE },         { "win.show-strips", "strips", TRUE },
               { "win.show-numbers", "numbers", TRUE },      { "win.show-zones", "zone-outlines", TRUE },
               { "win.show-edge-work", "edge-work", TRUE },  { "win.show-moves", "moves", FALSE },
               { "win.show-reach", "reach", FALSE },         { "win.show-dose", "dose", FALSE } };
  g_autoptr (OxJob) floor = ox_test_floor_columns (30, 12, 0.5, 6, "compact");
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) "", .at = { 1, 1 }, .length = 12 });
  g_autoptr (OxJob) job = ox_job_with_station (floor, station, NULL);
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_test_message ("%s", rows[i].layer);
      for (guint k = 0; k < 2; k++)
        {
          g_assert_cmpint (count_in_layer (canvas, rows[i].layer) > 0, ==, rows[i].at_first == (k == 0));
          gtk_widget_activate_action (GTK_WIDGET (window), rows[i].action, NULL);
          ox_ui_settle (window);
        }
      g_assert_cmpint (count_in_layer (canvas, rows[i].layer) > 0, ==, rows[i].at_first);
    }
  ox_ui_close (window);
}

static GtkWidget *
find_popover (GtkWidget *canvas)
{
  for (GtkWidget *child = gtk_widget_get_first_child (canvas); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER (child) && gtk_widget_get_mapped (child))
      return child;
  return NULL;
}

/* The other button means what lies under the pointer and opens the menu. */
static void
test_context_menu (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWidget *canvas = GTK_WIDGET (ox_window_get_canvas (window));
  OxPixel middle = ox_view_to_pixel (ox_canvas_get_view (OX_CANVAS (canvas)), (OxPoint){ 15, 10 });

  ox_ui_point (canvas, middle.x, middle.y);
  ox_ui_button (canvas, 3, TRUE);
  ox_ui_button (canvas, 3, FALSE);
  OX_WAIT_FOR (find_popover (canvas) != NULL);
  g_assert_true (ox_session_is_selected (ox_window_get_session (window), job->rooms[0]->id));
  gtk_popover_popdown (GTK_POPOVER (find_popover (canvas)));
  OX_WAIT_FOR (find_popover (canvas) == NULL);
  ox_ui_close (window);
}

/* The menu key and Shift+F10 open it too, for what is selected already. */
static void
test_context_menu_by_keys (void)
{
  static const guint shift[] = { GDK_KEY_Shift_L, 0 };
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 6, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWidget *canvas = GTK_WIDGET (ox_window_get_canvas (window));

  ox_session_select (session, (const char *const[]){ job->obstacles[0]->id, NULL });
  for (guint i = 0; i < 2; i++)
    {
      gtk_widget_grab_focus (canvas);
      ox_ui_chord (canvas, i == 0 ? NULL : shift, i == 0 ? GDK_KEY_Menu : GDK_KEY_F10);
      OX_WAIT_FOR (find_popover (canvas) != NULL);
      g_assert_true (ox_session_is_selected (session, job->obstacles[0]->id));
      ox_ui_keys (canvas, "\033");
      OX_WAIT_FOR (find_popover (canvas) == NULL);
    }
  ox_ui_close (window);
}

/* Two fingers apart by 1.5, then by 3 of where they began; then another pinch, together by half: 1.5 in all. The point between them stays.
 * Servers for tests have no touchpad: the gesture's answer to its signals is called. */
static void
test_pinch (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  OxPixel at = { 320, 190 }, after;
  OxPoint under = ox_view_to_point (ox_canvas_get_view (canvas), at);
  double before = ox_canvas_get_view (canvas)->px_per_m;

  ox_canvas_pinch_begin (canvas);
  ox_canvas_pinch (canvas, 1.5, at);
  ox_canvas_pinch (canvas, 3, at);
  g_assert_cmpfloat_with_epsilon (ox_canvas_get_view (canvas)->px_per_m, 3 * before, 1e-6);
  ox_canvas_pinch_begin (canvas);
  ox_canvas_pinch (canvas, 0.5, at);
  g_assert_cmpfloat_with_epsilon (ox_canvas_get_view (canvas)->px_per_m, 1.5 * before, 1e-6);
  after = ox_view_to_pixel (ox_canvas_get_view (canvas), under);
  g_assert_cmpfloat_with_epsilon (after.x, at.x, 0.5);
  g_assert_cmpfloat_with_epsilon (after.y, at.y, 0.5);
  ox_ui_close (window);
}

/* A notch of a wheel is a step, two fingers on a touchpad move the paper as far as they go; neither takes the focus. */
static void
test_wheel_is_not_touchpad (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  const OxView *view = ox_canvas_get_view (canvas);
  GtkWidget *focus;
  double scale = view->px_per_m;
  OxPoint before = view->centre;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.next-pane", NULL);
  focus = gtk_window_get_focus (GTK_WINDOW (window));
  g_assert_true (focus != GTK_WIDGET (canvas));
  ox_canvas_scroll (canvas, (OxPixel){ 12, 30 }, FALSE, OX_HOLD_NONE);
  g_assert_cmpfloat_with_epsilon (view->centre.x, before.x + 12 / scale, 1e-9);
  g_assert_cmpfloat_with_epsilon (view->centre.y, before.y - 30 / scale, 1e-9);
  before = view->centre;
  ox_canvas_scroll (canvas, (OxPixel){ 0, 1 }, TRUE, OX_HOLD_NONE);
  g_assert_cmpfloat (before.y - view->centre.y, >, 20 / scale);
  before = view->centre;
  ox_canvas_scroll (canvas, (OxPixel){ 0, 1 }, TRUE, OX_HOLD_SHIFT);
  g_assert_cmpfloat (view->centre.x - before.x, >, 20 / scale);
  g_assert_cmpfloat (view->centre.y, ==, before.y);
  g_assert_cmpfloat (view->px_per_m, ==, scale);
  ox_canvas_scroll (canvas, (OxPixel){ 0, -1 }, TRUE, OX_HOLD_CONTROL);
  g_assert_cmpfloat (view->px_per_m, >, 1.1 * scale);
  ox_canvas_scroll (canvas, (OxPixel){ 0, 1 }, TRUE, OX_HOLD_CONTROL);
  g_assert_cmpfloat_with_epsilon (view->px_per_m, scale, 1e-9);
  ox_canvas_scroll (canvas, (OxPixel){ 0, -1 }, FALSE, OX_HOLD_CONTROL); /* a pixel is no notch */
  g_assert_cmpfloat (view->px_per_m, >, scale);
  g_assert_cmpfloat (view->px_per_m, <, 1.01 * scale);
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (window)) == focus);
  ox_ui_close (window);
}

static void
test_zoom_to_selected_and_scale (void)
{
  g_autoptr (OxJob) floor = ox_test_floor_rectangle (30, 20, "compact");
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) "", .at = { 29, 1 } });
  g_autoptr (OxJob) job = ox_job_with_station (floor, station, NULL);
  OxWindow *window = ox_ui_open (job);
  const OxView *view = ox_canvas_get_view (ox_window_get_canvas (window));
  OxBox box;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-scale", "s", "100");
  /* 1 m is 10 mm of a screen of 96 dots to 25.4 mm. */
  g_assert_cmpfloat_with_epsilon (view->px_per_m, 10 * 96 / 25.4, 1e-9);
  ox_session_select (ox_window_get_session (window), (const char *const[]){ "S1", NULL });
  gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-selection", NULL);
  g_assert_cmpfloat_with_epsilon (view->centre.x, 29, 1e-9);
  ox_session_select (ox_window_get_session (window), (const char *const[]){ job->rooms[0]->id, NULL });
  gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-selection", NULL);
  box = ox_view_get_box (view);
  g_assert_true (box.x0 < 0 && box.y0 < 0 && box.x1 > 30 && box.y1 > 20);
  ox_ui_close (window);
}

static void
test_accessible_description (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkAccessible *canvas = GTK_ACCESSIBLE (ox_window_get_canvas (window));
  g_autofree char *other = NULL;

  gtk_test_accessible_assert_property (canvas, GTK_ACCESSIBLE_PROPERTY_LABEL, "Floor");
  gtk_test_accessible_assert_property (canvas, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "1 rooms, 0 obstacles; selected: nothing; tool: Select");
  ox_session_select (ox_window_get_session (window), (const char *const[]){ job->rooms[0]->id, NULL });
  other = gtk_test_accessible_check_property (canvas, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                              "1 rooms, 0 obstacles; selected: nothing; tool: Select");
  g_assert_nonnull (other);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/canvas/fit", test_fit);
  g_test_add_func ("/app/canvas/fit-after-resize", test_fit_after_resize);
  g_test_add_func ("/app/canvas/fit-of-nothing", test_fit_of_nothing);
  g_test_add_func ("/app/canvas/wheel-zooms-at-pointer", test_wheel_zooms_at_pointer);
  g_test_add_func ("/app/canvas/wheel-and-middle-button-pan", test_wheel_and_middle_button_pan);
  g_test_add_func ("/app/canvas/letters", test_letters);
  g_test_add_func ("/app/canvas/keyboard-alone", test_keyboard_alone);
  g_test_add_func ("/app/canvas/layers", test_layers);
  g_test_add_func ("/app/canvas/context-menu", test_context_menu);
  g_test_add_func ("/app/canvas/context-menu-by-keys", test_context_menu_by_keys);
  g_test_add_func ("/app/canvas/pinch", test_pinch);
  g_test_add_func ("/app/canvas/wheel-is-not-touchpad", test_wheel_is_not_touchpad);
  g_test_add_func ("/app/canvas/zoom-to-selected-and-scale", test_zoom_to_selected_and_scale);
  g_test_add_func ("/app/canvas/picture", test_picture);
  g_test_add_func ("/app/canvas/accessible-description", test_accessible_description);
  return g_test_run ();
}
