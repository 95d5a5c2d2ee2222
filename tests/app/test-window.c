/* Oxturn: tests/app/test-window - one job in one window, from the first corner to the printed sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/dialogs/ask.h"
#include "file/job-xml.h"
#include "job/edit.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include "ui.h"

#include <glib/gstdio.h>
#include <string.h>

/* What the chooser answers: a test's own instead of the desktop's. */
static char *chosen;

static void
choose (GtkWindow *parent, OxFilePurpose purpose, const char *suggested, OxFileChosen done, gpointer data)
{
  (void) parent;
  (void) purpose;
  (void) suggested;
  done (chosen, data);
}

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
assert_begins (const char *path, const char *bytes)
{
  g_autofree char *data = NULL;
  gsize length = 0;

  g_assert_true (g_file_get_contents (path, &data, &length, NULL));
  g_assert_cmpuint (length, >, 1000);
  g_assert_true (g_str_has_prefix (data, bytes));
}

static OxPixel
pixel (OxWindow *window, double x, double y)
{
  return ox_view_to_pixel (ox_canvas_get_view (ox_window_get_canvas (window)), (OxPoint){ x, y });
}

static void
click_at (OxWindow *window, double x, double y)
{
  OxPixel p = pixel (window, x, y);

  ox_ui_click (GTK_WIDGET (ox_window_get_canvas (window)), p.x, p.y);
}

/* The whole way with real pointer and keys: a room by typed lengths, a column by pointer and typed diameter, the plan,
 * the file, the file again, and the sheets. */
static void
test_draw_plan_save_export (void)
{
  OxWindow *window = ox_ui_open (NULL);
  OxWindow *again;
  GtkWidget *canvas = GTK_WIDGET (ox_window_get_canvas (window));
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autofree char *svg = g_build_filename (folder, "hall.svg", NULL);
  g_autofree char *pdf = g_build_filename (folder, "hall.pdf", NULL);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  ox_window_set_chooser (window, choose);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tool", "s", "room-corners");
  click_at (window, -6, -4);
  ox_ui_keys (canvas, "12\t0\n8\t90\n12\t180\n\n");
  OX_WAIT_FOR (job_of (window)->n_rooms == 1);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tool", "s", "obstacle-circle");
  click_at (window, 0, 0);
  ox_ui_keys (canvas, "0.5\n");
  OX_WAIT_FOR (job_of (window)->n_obstacles == 1);
  ox_ui_settle (window);
  g_assert_cmpfloat_with_epsilon (ox_session_find_plan (ox_window_get_session (window))->totals.target_m2,
                                  96 - G_PI * 0.0625, 0.01);
  g_assert_cmpuint (ox_session_find_plan (ox_window_get_session (window))->n_strips, >, 20);

  chosen = path;
  act (window, "win.save");
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  chosen = svg;
  act (window, "win.export-svg");
  assert_begins (svg, "<?xml");
  chosen = pdf;
  act (window, "win.export-pdf");
  assert_begins (pdf, "%PDF");
  first = ox_job_file_to_text (job_of (window));
  ox_ui_close (window);

  again = ox_ui_open (NULL);
  g_assert_true (ox_window_open (again, path));
  second = ox_job_file_to_text (job_of (again));
  g_assert_cmpstr (first, ==, second);
  ox_ui_settle (again);
  ox_ui_close (again);
  ox_test_folder_free (folder);
}

/* Drawing with the pointer alone: a rectangle from corner to corner, an obstacle by drag, then selected, moved and
 * deleted. */
static void
test_pointer (void)
{
  OxWindow *window = ox_ui_open (NULL);
  GtkWidget *canvas = GTK_WIDGET (ox_window_get_canvas (window));
  OxPixel p;
  double x;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.tool", "s", "room-rectangle");
  click_at (window, -6, -4);
  click_at (window, 6, 4);
  OX_WAIT_FOR (job_of (window)->n_rooms == 1);
  g_assert_cmpfloat_with_epsilon (ox_ring_area (job_of (window)->rooms[0]->ring), 96, 1e-6);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tool", "s", "obstacle-rectangle");
  click_at (window, 1, 1);
  click_at (window, 2, 2);
  OX_WAIT_FOR (job_of (window)->n_obstacles == 1);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tool", "s", "select");
  ox_session_select (ox_window_get_session (window), NULL);
  x = job_of (window)->obstacles[0]->shape.centre.x;
  p = pixel (window, 1.5, 1.5);
  ox_ui_point (canvas, p.x, p.y);
  ox_ui_button (canvas, 1, TRUE);
  for (int i = 1; i <= 10; i++)
    ox_ui_point (canvas, p.x + 8 * i, p.y);
  ox_ui_button (canvas, 1, FALSE);
  OX_WAIT_FOR (job_of (window)->obstacles[0]->shape.centre.x > x + 1);
  g_assert_cmpstr (ox_session_find_undo_label (ox_window_get_session (window)), ==, "Move");
  act (window, "win.delete");
  g_assert_cmpuint (job_of (window)->n_obstacles, ==, 0);
  for (guint i = 0; i < 4; i++)
    act (window, "win.undo");
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 0);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

static void
edit (OxWindow *window)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 4, "compact");

  ox_session_apply (ox_window_get_session (window), job, "Draw Room", NULL, NULL);
  ox_ui_settle (window);
}

static void
test_asks_before_losing_changes (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  OxWindow *window = ox_ui_open (NULL);
  gpointer watched = window;

  ox_window_set_chooser (window, choose);
  edit (window);
  act (window, "win.close");
  g_assert_nonnull (ox_ui_find_dialog (window));
  ox_ask_choose (ox_ui_find_dialog (window), 0); /* Cancel */
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window)));

  gtk_window_close (GTK_WINDOW (window)); /* the close button asks too */
  chosen = NULL;
  ox_ask_choose (ox_ui_find_dialog (window), 2); /* Save, but no name */
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window)));
  g_assert_true (ox_session_is_modified (ox_window_get_session (window)));

  g_object_add_weak_pointer (G_OBJECT (window), &watched);
  act (window, "win.close");
  chosen = path;
  ox_ask_choose (ox_ui_find_dialog (window), 2); /* Save */
  OX_WAIT_FOR (watched == NULL);
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  ox_test_folder_free (folder);
}

static void
test_discard (void)
{
  OxWindow *window = ox_ui_open (NULL);
  gpointer watched = window;

  edit (window);
  g_object_add_weak_pointer (G_OBJECT (window), &watched);
  act (window, "win.close");
  ox_ask_choose (ox_ui_find_dialog (window), 1); /* Discard */
  OX_WAIT_FOR (watched == NULL);
}

static void
test_clean_window_closes_at_once (void)
{
  OxWindow *window = ox_ui_open (NULL);
  gpointer watched = window;

  g_object_add_weak_pointer (G_OBJECT (window), &watched);
  act (window, "win.close");
  OX_WAIT_FOR (watched == NULL);
}

static void
test_close_in_mid_plan (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (80, 60, 0.5, 8, "compact");
  OxWindow *window = ox_ui_open (NULL);
  gpointer watched = window;

  ox_session_apply (ox_window_get_session (window), job, "Draw Room", NULL, NULL);
  g_object_add_weak_pointer (G_OBJECT (window), &watched);
  act (window, "win.close");
  ox_ask_choose (ox_ui_find_dialog (window), 1);
  OX_WAIT_FOR (watched == NULL);
}

static void
test_errors_are_sentences (void)
{
  static const char *const texts[] = { "", "no xml", "<job xmlns='urn:oxturn:job' version='9.0'/>" };
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "bad.oxturn", NULL);
  OxWindow *window = ox_ui_open (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      const OxJob *before = job_of (window);

      g_assert_true (g_file_set_contents (path, texts[i], -1, NULL));
      g_assert_false (ox_window_open (window, path));
      g_assert_nonnull (ox_ui_find_dialog (window));
      ox_ask_choose (ox_ui_find_dialog (window), 0);
      g_assert_true (job_of (window) == before);
    }
  edit (window);
  ox_window_set_chooser (window, choose);
  chosen = (char *) "/nowhere/at/all/x.oxturn";
  act (window, "win.save");
  g_assert_nonnull (ox_ui_find_dialog (window));
  ox_ask_choose (ox_ui_find_dialog (window), 0);
  g_assert_true (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

/* Somebody else wrote the file meanwhile: asked first, and Cancel leaves their bytes alone. */
static void
test_file_changed_on_disk (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autofree char *data = NULL;
  OxWindow *window = ox_ui_open (NULL);

  ox_window_set_chooser (window, choose);
  chosen = path;
  edit (window);
  act (window, "win.save");
  act (window, "win.save"); /* nobody else wrote: not asked */
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_true (g_file_set_contents (path, "theirs", -1, NULL));
  act (window, "win.save");
  ox_ask_choose (ox_ui_find_dialog (window), 0); /* Cancel */
  g_assert_true (g_file_get_contents (path, &data, NULL, NULL));
  g_assert_cmpstr (data, ==, "theirs");
  act (window, "win.save");
  ox_ask_choose (ox_ui_find_dialog (window), 1); /* Overwrite */
  assert_begins (path, "<?xml");
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

/* A place that cannot be written: said so, still modified, and Save As leads to another place. */
static void
test_save_fails (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *nowhere = g_build_filename (folder, "missing", "hall.oxturn", NULL);
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  OxWindow *window = ox_ui_open (NULL);

  ox_window_set_chooser (window, choose);
  edit (window);
  chosen = nowhere;
  act (window, "win.save");
  g_assert_true (ox_session_is_modified (ox_window_get_session (window)));
  chosen = path;
  ox_ask_choose (ox_ui_find_dialog (window), 1); /* Save As */
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  assert_begins (path, "<?xml");
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

/* A file that may only be read says so in the title; Save leads to another name and leaves the file alone. */
static void
test_read_only (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autofree char *other = g_build_filename (folder, "mine.oxturn", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 4, "compact");
  OxWindow *window = ox_ui_open (NULL);

  ox_window_set_chooser (window, choose);
  g_assert_true (ox_job_file_write (job, path, NULL));
  g_assert_cmpint (g_chmod (path, 0444), ==, 0);
  g_assert_true (ox_window_open (window, path));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "hall.oxturn (read-only) - Oxturn");
  edit (window);
  g_assert_true (g_file_get_contents (path, &before, NULL, NULL));
  act (window, "win.save");
  chosen = other;
  ox_ask_choose (ox_ui_find_dialog (window), 1); /* Save As */
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, before);
  assert_begins (other, "<?xml");
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "mine.oxturn - Oxturn");
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

/* A job file dropped on the window opens; anything else is refused in words. */
static void
test_drop (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autofree char *other = g_build_filename (folder, "hall.txt", NULL);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (6, 4, "compact");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFile) wrong = g_file_new_for_path (other);
  OxWindow *window = ox_ui_open (NULL);

  g_assert_true (ox_job_file_write (job, path, NULL));
  g_assert_false (ox_window_drop (window, &(GSList){ .data = wrong }));
  g_assert_nonnull (strstr (ox_window_get_told (window), ".oxturn"));
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 0);
  g_assert_true (ox_window_drop (window, &(GSList){ .data = file }));
  g_assert_cmpuint (job_of (window)->n_rooms, ==, 1);
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

static void
test_title (void)
{
  OxWindow *window = ox_ui_open (NULL);

  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "New job - Oxturn");
  edit (window);
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "\342\200\242 New job - Oxturn");
  act (window, "win.undo");
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "New job - Oxturn");
  ox_ui_close (window);
}

/* --- Accessible names --- */

/* Parts of a composite widget have no name of their own: the composite has. */
static gboolean
is_part (GtkWidget *widget)
{
  GtkWidget *parent = gtk_widget_get_parent (widget);

  return GTK_IS_TEXT (widget)
         || (parent != NULL
             && (GTK_IS_SPIN_BUTTON (parent) || GTK_IS_DROP_DOWN (parent) || GTK_IS_MENU_BUTTON (parent)))
         || GTK_IS_SCROLLED_WINDOW (widget) || GTK_IS_STACK (widget) || GTK_IS_POPOVER (widget)
         || gtk_widget_get_ancestor (widget, GTK_TYPE_POPOVER) != NULL
         || gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) != NULL
         || g_str_equal (G_OBJECT_TYPE_NAME (widget), "GtkListItemWidget");
}

static guint
check_names (GtkWidget *widget)
{
  guint n = 0;

  if (!gtk_widget_get_visible (widget) || !gtk_widget_get_child_visible (widget))
    return 0;
  if (gtk_widget_get_focusable (widget) && !is_part (widget))
    {
      g_autofree char *name = ox_ui_name (widget);

      if (*name == '\0')
        g_error ("a focusable %s has no accessible name", G_OBJECT_TYPE_NAME (widget));
      n++;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += check_names (child);
  return n;
}

static void
test_accessible_names (void)
{
  static const char *const stages[] = { "floor", "machine", "plan", "sheets" };
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 6, "compact");
  OxWindow *window = ox_ui_open (job);
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", stages[i]);
      ox_session_select (ox_window_get_session (window), (const char *const[]){ job->rooms[0]->id, NULL });
      n += check_names (gtk_window_get_child (GTK_WINDOW (window)));
    }
  g_assert_cmpuint (n, >, 50);
  ox_ui_close (window);
}

/* It fits the smallest screen that is asked for. */
static void
test_fits_small_screen (void)
{
  static const char *const stages[] = { "floor", "machine", "plan", "sheets" };
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 6, "compact");
  OxWindow *window = ox_ui_open (job);
  int width, height;

  for (guint i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", stages[i]);
      ox_session_select (ox_window_get_session (window), (const char *const[]){ job->rooms[0]->id, NULL });
      gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
      gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL, NULL);
      g_assert_cmpint (width, <=, 1024);
      g_assert_cmpint (height, <=, 600);
    }
  ox_ui_close (window);
}

/* --- Targets of the pointer --- */

#define TARGET_PX 24 /* WCAG 2.2, 2.5.8 */

static gboolean
is_target (GtkWidget *widget)
{
  return gtk_widget_get_mapped (widget) && gtk_widget_get_sensitive (widget)
         && (GTK_IS_BUTTON (widget) || GTK_IS_DROP_DOWN (widget) || GTK_IS_MENU_BUTTON (widget)
             || GTK_IS_ENTRY (widget));
}

/* Parts of a target do not count by themselves. */
static guint
check_targets (GtkWidget *widget)
{
  guint n = 0;

  if (is_target (widget))
    {
      g_autofree char *name = ox_ui_name (widget);
      graphene_rect_t box; /* with borders and padding */

      g_assert_true (gtk_widget_compute_bounds (widget, widget, &box));
      if (box.size.width < TARGET_PX || box.size.height < TARGET_PX)
        g_error ("%s \"%s\" is %.0f by %.0f px", G_OBJECT_TYPE_NAME (widget), name, (double) box.size.width,
                 (double) box.size.height);
      return 1;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += check_targets (child);
  return n;
}

static void
test_targets (void)
{
  static const char *const stages[] = { "floor", "machine", "plan", "sheets", "record" };
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 6, "compact");
  OxWindow *window = ox_ui_open (job);
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", stages[i]);
      ox_session_select (ox_window_get_session (window), (const char *const[]){ job->rooms[0]->id, NULL });
      ox_ui_settle (window);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      n += check_targets (GTK_WIDGET (window));
    }
  g_assert_cmpuint (n, >, 80);
  ox_ui_close (window);
}

/* A longer word for a stage, as other languages have, is cut and does not widen the window. */
static void
lengthen_stage (OxWindow *window)
{
  GtkWidget *card = gtk_widget_get_first_child (gtk_widget_get_first_child (gtk_window_get_child (GTK_WINDOW (window))));
  GtkWidget *words = gtk_widget_get_last_child (gtk_button_get_child (GTK_BUTTON (card)));

  gtk_label_set_text (GTK_LABEL (gtk_widget_get_first_child (words)), "Arbeitsnachweis");
}

/* With text twice as large the window still fits the smallest screen that is asked for, and its panel has a way to all that is in
 * it. */
static void
test_large_text (void)
{
  static const char *const stages[] = { "floor", "machine", "plan", "sheets", "record" };
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 6, "compact");
  OxWindow *window = ox_ui_open (job);
  int dpi, usual, width, height;
  GtkWidget *docket;

  gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_HORIZONTAL, -1, &usual, NULL, NULL, NULL);
  ox_ui_close (window);
  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", 2 * 96 * 1024, NULL);
  window = ox_ui_open (job);
  lengthen_stage (window);
  docket = gtk_widget_get_last_child (gtk_window_get_child (GTK_WINDOW (window)));
  gtk_widget_set_visible (gtk_widget_get_last_child (docket), TRUE); /* the progress, as while a plan is made */
  gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  g_assert_cmpint (width, <=, 1024);
  gtk_widget_set_visible (gtk_widget_get_last_child (docket), FALSE);
  for (guint i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", stages[i]);
      ox_session_select (ox_window_get_session (window), (const char *const[]){ job->rooms[0]->id, NULL });
      gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
      gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_VERTICAL, 1024, &height, NULL, NULL, NULL);
      g_assert_cmpint (width, >, usual);
      g_assert_cmpint (width, <=, 1024);
      g_assert_cmpint (height, <=, 600);
    }
  ox_ui_close (window);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi, NULL);
}

/* An empty floor says how to begin, until something is there or being drawn; each way it names works. */
static void
test_welcome (void)
{
  OxWindow *window = ox_ui_open (NULL);
  OxCanvas *canvas = ox_window_get_canvas (window);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  GtkWidget *corners = ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Draw a Room by Corners");

  ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Draw a Rectangular Room");
  ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Open a Job\342\200\246");
  g_signal_emit_by_name (corners, "clicked");
  g_assert_cmpint (ox_canvas_get_tool (canvas), ==, OX_TOOL_ROOM_CORNERS);
  g_assert_false (gtk_widget_get_mapped (corners));
  ox_canvas_set_tool (canvas, OX_TOOL_SELECT);
  g_assert_true (gtk_widget_get_mapped (corners));
  ox_session_apply (ox_window_get_session (window), job, "Draw", NULL, NULL);
  g_assert_false (gtk_widget_get_mapped (corners));
  ox_session_undo (ox_window_get_session (window));
  g_assert_true (gtk_widget_get_mapped (corners));
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/window/draw-plan-save-export", test_draw_plan_save_export);
  g_test_add_func ("/app/window/pointer", test_pointer);
  g_test_add_func ("/app/window/asks-before-losing-changes", test_asks_before_losing_changes);
  g_test_add_func ("/app/window/discard", test_discard);
  g_test_add_func ("/app/window/clean-window-closes-at-once", test_clean_window_closes_at_once);
  g_test_add_func ("/app/window/close-in-mid-plan", test_close_in_mid_plan);
  g_test_add_func ("/app/window/errors-are-sentences", test_errors_are_sentences);
  g_test_add_func ("/app/window/file-changed-on-disk", test_file_changed_on_disk);
  g_test_add_func ("/app/window/save-fails", test_save_fails);
  g_test_add_func ("/app/window/read-only", test_read_only);
  g_test_add_func ("/app/window/drop", test_drop);
  g_test_add_func ("/app/window/title", test_title);
  g_test_add_func ("/app/window/accessible-names", test_accessible_names);
  g_test_add_func ("/app/window/fits-small-screen", test_fits_small_screen);
  g_test_add_func ("/app/window/targets", test_targets);
  g_test_add_func ("/app/window/large-text", test_large_text);
  g_test_add_func ("/app/window/welcome", test_welcome);
  return g_test_run ();
}
