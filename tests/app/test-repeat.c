/* Oxturn: tests/app/test-repeat - copies, mirrored, turned and in a grid.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/repeat.h"

#include "app/dialogs/form.h"
#include "job/edit.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

/* A hall of 40 m x 25 m with a column of 0.5 m about (8, 8.25), selected. */
static OxWindow *
open_hall (void)
{
  g_autoptr (OxJob) hall = ox_test_floor_rectangle (40, 25, "compact");
  OxShape shape = { .kind = OX_SHAPE_RECTANGLE, .centre = { 8, 8.25 }, .width = 0.5, .depth = 0.3 };
  g_autoptr (OxObstacle) column
      = ox_obstacle_new (&(OxObstacle){ .id = (char *) "O1", .name = (char *) "Column", .shape = shape });
  g_autoptr (OxJob) job = ox_job_with_obstacle (hall, column, NULL);
  OxWindow *window = ox_ui_open (job);

  ox_session_select (ox_window_get_session (window), (const char *const[]){ "O1", NULL });
  return window;
}

static const OxJob *
job_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window));
}

static void
fill (GtkWindow *form, const char *name, const char *text)
{
  ox_ui_fill (GTK_WIDGET (form), name, text);
}

/* Eight columns from one, as one step that undo takes back. */
static void
test_grid (void)
{
  OxWindow *window = open_hall ();
  GtkWindow *form;
  const OxObstacle *last;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.repeat", NULL);
  form = ox_ui_find_dialog (window);
  fill (form, "Number across", "4");
  fill (form, "Spacing across", "8");
  fill (form, "Number up", "2");
  fill (form, "Spacing up", "8.5 m");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_cmpuint (job_of (window)->n_obstacles, ==, 8);
  last = job_of (window)->obstacles[7];
  g_assert_cmpfloat_with_epsilon (last->shape.centre.x, 32, 1e-9);
  g_assert_cmpfloat_with_epsilon (last->shape.centre.y, 16.75, 1e-9);
  g_assert_cmpuint (g_strv_length ((char **) ox_session_get_selection (ox_window_get_session (window))), ==, 7);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
  g_assert_cmpuint (job_of (window)->n_obstacles, ==, 1);
  ox_ui_close (window);
}

static void
test_refuses (void)
{
  OxWindow *window = open_hall ();
  GtkWindow *form;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.repeat", NULL);
  form = ox_ui_find_dialog (window);
  /* What is no number at all is told and not passed over. */
  fill (form, "Number across", "four");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "no number"));
  g_assert_nonnull (ox_ui_find_dialog (window));
  fill (form, "Number across", "2.5");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "whole numbers"));
  fill (form, "Number across", "1");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "already"));
  fill (form, "Number across", "3");
  fill (form, "Spacing across", "0");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "upon each other"));
  g_assert_cmpuint (job_of (window)->n_obstacles, ==, 1);
  gtk_window_destroy (form);
  ox_ui_close (window);
}

static void
test_duplicate_mirror_turn (void)
{
  OxWindow *window = open_hall ();

  gtk_widget_activate_action (GTK_WIDGET (window), "win.duplicate", NULL);
  g_assert_cmpuint (job_of (window)->n_obstacles, ==, 2);
  g_assert_cmpstr (ox_session_get_selection (ox_window_get_session (window))[0], ==, "O2");
  g_assert_cmpstr (job_of (window)->obstacles[1]->name, ==, "Column");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.turn", "s", "left");
  g_assert_cmpfloat (job_of (window)->obstacles[1]->shape.angle_deg, ==, 90);
  ox_session_select (ox_window_get_session (window), (const char *const[]){ "O1", "O2", NULL });
  gtk_widget_activate_action (GTK_WIDGET (window), "win.mirror", "s", "sideways");
  /* They lie within 7.75 .. 8.65 m: the first one now ends at the right, the other one begins at the left. */
  g_assert_cmpfloat_with_epsilon (job_of (window)->obstacles[0]->shape.centre.x, 8.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (job_of (window)->obstacles[1]->shape.centre.x, 7.9, 1e-9);
  g_assert_cmpfloat_with_epsilon (job_of (window)->obstacles[1]->shape.centre.y, 7.75, 1e-9);
  ox_ui_close (window);
}

/* A room is copied beside itself, as rooms must not overlap. */
static void
test_duplicate_room (void)
{
  OxWindow *window = open_hall ();
  const char *room = job_of (window)->rooms[0]->id;

  ox_session_select (ox_window_get_session (window), (const char *const[]){ room, NULL });
  gtk_widget_activate_action (GTK_WIDGET (window), "win.duplicate", NULL);
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 2);
  g_assert_cmpfloat (ox_ring_box (job_of (window)->rooms[1]->ring).x0, ==, 40.5);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/repeat/grid", test_grid);
  g_test_add_func ("/app/repeat/refuses", test_refuses);
  g_test_add_func ("/app/repeat/duplicate-mirror-turn", test_duplicate_mirror_turn);
  g_test_add_func ("/app/repeat/duplicate-room", test_duplicate_room);
  return g_test_run ();
}
