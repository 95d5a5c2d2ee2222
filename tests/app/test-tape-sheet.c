/* Oxturn: tests/app/test-tape-sheet - an outline written down as a survey reads.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/tape-sheet.h"

#include "app/dialogs/form.h"
#include "ui.h"

#include <glib/gstdio.h>
#include <string.h>

static const char *given; /* path that the chooser under test gives */

static void
choose (GtkWindow *parent, OxFilePurpose purpose, const char *suggested, OxFileChosen done, gpointer data)
{
  (void) parent;
  (void) suggested;
  g_assert_cmpint (purpose, ==, OX_FILE_OPEN_CORNERS);
  done (given, data);
}

static GtkWindow *
open_sheet (OxWindow *window)
{
  ox_window_set_chooser (window, choose);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tape-sheet", NULL);
  return ox_ui_find_dialog (window);
}

static const OxJob *
job_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window));
}

static void
test_room (void)
{
  OxWindow *window = ox_ui_open (NULL);
  GtkWindow *sheet = open_sheet (window);
  GtkWidget *spread = ox_ui_find (GTK_WIDGET (sheet), GTK_TYPE_CHECK_BUTTON, "Spread the closing error");

  g_assert_false (gtk_widget_get_sensitive (spread));
  ox_tape_sheet_set_text (sheet, "10 0\n8 90\n10 180\n7.9 270");
  g_assert_nonnull (strstr (ox_form_get_told (sheet), "Closing error 0.10 m, 1 in 359, left"));
  g_assert_true (gtk_widget_get_sensitive (spread));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (spread), TRUE);
  g_assert_nonnull (strstr (ox_form_get_told (sheet), "spread"));
  ox_form_accept (sheet);
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 1);
  g_assert_cmpfloat (ox_ring_box (job_of (window)->rooms[0]->ring).y1, <, 8);
  g_assert_cmpstr (ox_session_get_selection (ox_window_get_session (window))[0], ==, "R1");
  ox_ui_close (window);
}

/* A room that is larger than what the empty canvas shows is seen as a whole once it is drawn. */
static void
test_in_sight (void)
{
  OxWindow *window = ox_ui_open (NULL);
  GtkWindow *sheet = open_sheet (window);
  OxBox shown;

  shown = ox_view_get_box (ox_canvas_get_view (ox_window_get_canvas (window)));
  g_assert_cmpfloat (shown.x1 - shown.x0, <, 80);
  ox_tape_sheet_set_text (sheet, "80 0\n60 90\n80 180\n60 270");
  ox_form_accept (sheet);
  shown = ox_view_get_box (ox_canvas_get_view (ox_window_get_canvas (window)));
  g_assert_cmpfloat (shown.x0, <, 0);
  g_assert_cmpfloat (shown.x1, >, 80);
  g_assert_cmpfloat (shown.y0, <, 0);
  g_assert_cmpfloat (shown.y1, >, 60);
  ox_ui_close (window);
}

/* A list of corners out of a file, that crosses itself: seen, refused in words, and still there to be mended. */
static void
test_file_and_refusal (void)
{
  OxWindow *window = ox_ui_open (NULL);
  g_autofree char *folder = g_dir_make_tmp ("oxturn-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "corners.csv", NULL);
  GtkWindow *sheet = open_sheet (window);
  GtkWidget *form = ox_ui_find (GTK_WIDGET (sheet), GTK_TYPE_DROP_DOWN, "Each line is");
  GtkWidget *read = ox_ui_find (GTK_WIDGET (sheet), GTK_TYPE_BUTTON, "Read from a File\342\200\246");

  g_assert_true (g_file_set_contents (path, "x,y\n0,0\n4,4\n4,0\n0,4\n", -1, NULL));
  given = path;
  g_signal_emit_by_name (read, "clicked");
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (form)), ==, 1);
  ox_form_accept (sheet);
  g_assert_nonnull (ox_ui_find_dialog (window));
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 0);
  ox_tape_sheet_set_text (sheet, "x,y\n0,0\n4,0\n4,4\n0,4\n");
  ox_form_accept (sheet);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (job_of (window)->rooms[0]->ring), 16, 1e-9);
  g_unlink (path);
  g_rmdir (folder);
  ox_ui_close (window);
}

static void
test_nothing_written (void)
{
  OxWindow *window = ox_ui_open (NULL);
  GtkWindow *sheet = open_sheet (window);

  ox_form_accept (sheet);
  g_assert_nonnull (strstr (ox_form_get_told (sheet), "no outline yet"));
  given = "/nowhere/at/all.csv";
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (sheet), GTK_TYPE_BUTTON, "Read from a File\342\200\246"), "clicked");
  g_assert_nonnull (strstr (ox_form_get_told (sheet), "/nowhere/at/all.csv"));
  gtk_window_destroy (sheet);
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 0);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/tape-sheet/room", test_room);
  g_test_add_func ("/app/tape-sheet/in-sight", test_in_sight);
  g_test_add_func ("/app/tape-sheet/file-and-refusal", test_file_and_refusal);
  g_test_add_func ("/app/tape-sheet/nothing-written", test_nothing_written);
  return g_test_run ();
}
