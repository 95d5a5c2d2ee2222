/* Oxturn: tests/app/test-window-clipboard - cut, copy and paste within a window, between windows and to other programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-xml.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

static void
act (OxWindow *window, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), action, NULL));
}

static const OxJob *
job_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window));
}

static void
spliced_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_assert_cmpint (g_output_stream_splice_finish (G_OUTPUT_STREAM (source), result, NULL), >, 0);
  *(GBytes **) data = g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (source));
}

static void
read_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GInputStream) in = gdk_clipboard_read_finish (GDK_CLIPBOARD (source), result, NULL, NULL);
  g_autoptr (GOutputStream) out = g_memory_output_stream_new_resizable ();

  g_assert_nonnull (in);
  g_output_stream_splice_async (out, in, G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET, G_PRIORITY_DEFAULT, NULL, spliced_cb,
                                data);
}

static GBytes *
read_clipboard (OxWindow *window, const char *type)
{
  const char *types[] = { type, NULL };
  GBytes *bytes = NULL;

  gdk_clipboard_read_async (gtk_widget_get_clipboard (GTK_WIDGET (window)), types, G_PRIORITY_DEFAULT, NULL,
                            read_done_cb, &bytes);
  OX_WAIT_FOR (bytes != NULL);
  return bytes;
}

/* Each paste is one step of undo, has an id of its own and lies off the one before; the last pasted item is selected. */
static void
test_copy_and_paste (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 8, 0.5, 4, "compact");
  OxWindow *window = ox_ui_open (job);
  guint n = job->n_obstacles;
  const OxObstacle *a, *b, *from = job->obstacles[0];

  ox_session_select (ox_window_get_session (window), (const char *const[]){ from->id, NULL });
  act (window, "win.copy");
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  act (window, "win.paste");
  OX_WAIT_FOR (job_of (window)->n_obstacles == n + 1);
  act (window, "win.paste");
  OX_WAIT_FOR (job_of (window)->n_obstacles == n + 2);
  a = job_of (window)->obstacles[n];
  b = job_of (window)->obstacles[n + 1];
  g_assert_cmpstr (a->id, !=, b->id);
  g_assert_cmpstr (a->id, !=, from->id);
  g_assert_cmpfloat_with_epsilon (b->shape.centre.x - a->shape.centre.x, a->shape.centre.x - from->shape.centre.x,
                                  1e-6);
  g_assert_cmpfloat (a->shape.centre.x, !=, from->shape.centre.x);
  g_assert_true (ox_session_is_selected (ox_window_get_session (window), b->id));
  act (window, "win.undo");
  act (window, "win.undo");
  g_assert_true (job_of (window) == job);
  ox_ui_close (window);
}

/* A whole room with its columns into an empty window: the same outlines in the same place. */
static void
test_between_windows (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 8, 0.5, 4, "compact");
  OxWindow *window = ox_ui_open (job);
  OxWindow *other = ox_ui_open (NULL);

  act (window, "win.select-all");
  act (window, "win.copy");
  act (other, "win.paste");
  OX_WAIT_FOR (job_of (other)->n_rooms == 1);
  g_assert_cmpuint (job_of (other)->n_obstacles, ==, job->n_obstacles);
  g_assert_cmpfloat (ox_ring_area (job_of (other)->rooms[0]->ring), ==, ox_ring_area (job->rooms[0]->ring));
  g_assert_cmpfloat (ox_job_box (job_of (other)).x0, ==, ox_job_box (job).x0);
  g_assert_cmpstr (ox_session_find_undo_label (ox_window_get_session (other)), ==, "Paste");
  ox_ui_settle (other);
  ox_ui_settle (window);
  gtk_window_destroy (GTK_WINDOW (other));
  ox_ui_close (window);
}

/* A column of a far wing, for a floor that is not there: it lands where one looks, on the floor. */
static void
test_paste_onto_a_smaller_floor (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (60, 8, 0.5, 4, "compact");
  g_autoptr (OxJob) small = ox_test_floor_rectangle (6, 4, "compact");
  OxWindow *window = ox_ui_open (job);
  OxWindow *other = ox_ui_open (small);
  OxBox box;

  ox_session_select (ox_window_get_session (window),
                     (const char *const[]){ job->obstacles[job->n_obstacles - 1]->id, NULL });
  act (window, "win.copy");
  act (other, "win.paste");
  OX_WAIT_FOR (job_of (other)->n_obstacles == 1);
  box = ox_ring_box (job_of (other)->obstacles[0]->shape.ring);
  g_assert_cmpfloat_with_epsilon ((box.x0 + box.x1) / 2, 3, 0.001);
  g_assert_cmpfloat_with_epsilon ((box.y0 + box.y1) / 2, 2, 0.001);
  ox_ui_settle (other);
  ox_ui_settle (window);
  gtk_window_destroy (GTK_WINDOW (other));
  ox_ui_close (window);
}

static void
test_cut_and_paste_puts_it_back (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 8, 0.5, 4, "compact");
  OxWindow *window = ox_ui_open (job);
  OxPoint at = job->obstacles[0]->shape.centre;
  guint n = job->n_obstacles;

  ox_session_select (ox_window_get_session (window), (const char *const[]){ job->obstacles[0]->id, NULL });
  act (window, "win.cut");
  g_assert_cmpuint (job_of (window)->n_obstacles, ==, n - 1);
  act (window, "win.paste");
  OX_WAIT_FOR (job_of (window)->n_obstacles == n);
  g_assert_cmpfloat (job_of (window)->obstacles[n - 1]->shape.centre.x, ==, at.x);
  g_assert_cmpfloat (job_of (window)->obstacles[n - 1]->shape.centre.y, ==, at.y);
  ox_ui_close (window);
}

/* Other programs get pictures; our own windows a job file that holds nothing but what was selected. */
static void
test_formats (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 8, 0.5, 4, "compact");
  OxWindow *window = ox_ui_open (job);
  g_autoptr (GBytes) xml = NULL;
  g_autoptr (GBytes) svg = NULL;
  g_autoptr (GBytes) png = NULL;
  g_autoptr (OxJob) copied = NULL;
  g_autoptr (GdkTexture) texture = NULL;

  ox_session_select (ox_window_get_session (window), (const char *const[]){ job->obstacles[0]->id, NULL });
  act (window, "win.copy");
  xml = read_clipboard (window, "application/x-oxturn+xml");
  g_assert_true (ox_job_file_read_data ("clip", g_bytes_get_data (xml, NULL), g_bytes_get_size (xml), &copied, NULL));
  g_assert_cmpuint (copied->n_rooms, ==, 0);
  g_assert_cmpuint (copied->n_obstacles, ==, 1);
  act (window, "win.copy-picture");
  svg = read_clipboard (window, "image/svg+xml");
  g_assert_nonnull (g_strstr_len (g_bytes_get_data (svg, NULL), (gssize) g_bytes_get_size (svg), "strip-1"));
  png = read_clipboard (window, "image/png");
  texture = gdk_texture_new_from_bytes (png, NULL);
  g_assert_cmpint (gdk_texture_get_width (texture), >, 1000);
  ox_ui_close (window);
}

/* Words on the clipboard, or a job that is none, change nothing and are answered in words. */
static void
test_junk (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 4, "compact");
  OxWindow *window = ox_ui_open (job);
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (window));
  g_autoptr (GBytes) bytes = g_bytes_new_static ("<job/>", 6);
  g_autoptr (GdkContentProvider) bad = gdk_content_provider_new_for_bytes ("application/x-oxturn+xml", bytes);

  gdk_clipboard_set_text (clipboard, "POINT (1 2)");
  act (window, "win.paste");
  OX_WAIT_FOR (strstr (ox_window_get_told (window), "nothing of a floor") != NULL);
  gdk_clipboard_set_content (clipboard, bad);
  act (window, "win.paste");
  OX_WAIT_FOR (strstr (ox_window_get_told (window), "clipboard:") != NULL);
  g_assert_true (job_of (window) == job);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/window-clipboard/copy-and-paste", test_copy_and_paste);
  g_test_add_func ("/app/window-clipboard/between-windows", test_between_windows);
  g_test_add_func ("/app/window-clipboard/paste-onto-a-smaller-floor", test_paste_onto_a_smaller_floor);
  g_test_add_func ("/app/window-clipboard/cut-and-paste-puts-it-back", test_cut_and_paste_puts_it_back);
  g_test_add_func ("/app/window-clipboard/formats", test_formats);
  g_test_add_func ("/app/window-clipboard/junk", test_junk);
  return g_test_run ();
}
