/* Oxturn: tests/app/test-window-traced - somebody's plan brought in, put to scale, changed and taken away.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/field.h"
#include "app/window-private.h"

#include "file/job-xml.h"
#include "job/edit.h"
#include "plans.h"
#include "support/ox-test.h"
#include "ui.h"

static const OxJob *
job_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window));
}

static char *
write_plan (const char *folder, const char *name, OxTracedKind kind)
{
  g_autoptr (GBytes) data = ox_plan_file (kind);
  char *path = g_build_filename (folder, name, NULL);

  g_assert_true (g_file_set_contents (path, g_bytes_get_data (data, NULL), (gssize) g_bytes_get_size (data), NULL));
  return path;
}

static void
drop (OxWindow *window, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_assert_true (ox_window_drop (window, &(GSList){ .data = file }));
}

/* Dropped, it lies in the middle of what is seen at 1:100, is selected, and the scale is asked for at once. */
static void
test_drop (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = write_plan (folder, "Ground floor.PDF", OX_TRACED_PDF);
  OxWindow *window = ox_ui_open (NULL);
  OxCanvas *canvas = ox_window_get_canvas (window);

  drop (window, path);
  OX_WAIT_FOR (job_of (window)->n_traced == 1);
  g_assert_cmpstr (job_of (window)->traced[0]->name, ==, "Ground floor.PDF");
  ox_test_near (job_of (window)->traced[0]->width, 4, 0.001);
  ox_test_near (job_of (window)->traced[0]->depth, 2, 0.001);
  g_assert_cmpint (ox_canvas_get_tool (canvas), ==, OX_TOOL_SCALE);
  g_assert_true (ox_session_is_selected (ox_window_get_session (window), "T1"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.undo", NULL);
  g_assert_cmpuint (job_of (window)->n_traced, ==, 0);
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

/* Closed while a plan is still being read: nothing is brought in, and the window goes. */
static void
test_closed_meanwhile (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = write_plan (folder, "a.pdf", OX_TRACED_PDF);
  OxWindow *window = ox_ui_open (NULL);
  g_autoptr (OxSession) session = g_object_ref (ox_window_get_session (window));

  drop (window, path);
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  gtk_window_destroy (GTK_WINDOW (window));
  OX_WAIT_FOR (window == NULL);
  g_assert_cmpuint (ox_session_get_job (session)->n_traced, ==, 0);
  ox_session_close (session);
  ox_test_folder_free (folder);
}

/* In the job file, and back on the floor from there. */
static void
test_saved (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = write_plan (folder, "a.png", OX_TRACED_PNG);
  g_autofree char *saved = g_build_filename (folder, "a.oxturn", NULL);
  OxWindow *window = ox_ui_open (NULL);
  g_autoptr (OxJob) back = NULL;

  drop (window, path);
  OX_WAIT_FOR (job_of (window)->n_traced == 1);
  g_assert_true (ox_session_save (ox_window_get_session (window), saved, NULL));
  g_assert_true (ox_job_file_read (saved, &back, NULL));
  g_assert_true (g_bytes_equal (back->traced[0]->data, job_of (window)->traced[0]->data));
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

static guint32
pixel_at (OxWindow *window, OxPoint at)
{
  GtkWidget *canvas = GTK_WIDGET (ox_window_get_canvas (window));
  OxPixel p = ox_view_to_pixel (ox_canvas_get_view (OX_CANVAS (canvas)), at);
  g_autoptr (GdkTexture) texture = ox_ui_picture (canvas);
  gsize width = (gsize) gdk_texture_get_width (texture);
  g_autofree guint32 *pixels = g_new (guint32, width * (gsize) gdk_texture_get_height (texture));

  gdk_texture_download (texture, (guchar *) pixels, width * 4);
  return pixels[(gsize) p.y * width + (gsize) p.x] & 0xff;
}

static OxJob *
job_with_plan (gboolean hidden)
{
  g_autoptr (GBytes) data = ox_plan_file (OX_TRACED_PNG);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  OxTracedPlan draft = { .id = (char *) "T1", .kind = OX_TRACED_PNG, .data = data, .page = 1, .width = 10, .depth = 5,
                         .strength = 1, .hidden = hidden };
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);

  return ox_job_with_traced (empty, traced, NULL);
}

/* It is seen, dimmed by its strength, through a room that is drawn over it too, and not at all when hidden. */
static void
test_seen (void)
{
  g_autoptr (OxJob) job = job_with_plan (FALSE);
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  guint bare;

  ox_session_select (session, (const char *const[]){ NULL });
  ox_ui_settle (window);
  g_assert_cmpuint (pixel_at (window, (OxPoint){ -2.37, 1.13 }), <, 10);
  bare = pixel_at (window, (OxPoint){ 2.37, 1.13 });
  g_assert_cmpuint (bare, >, 200);
  OxTracedPlan draft = *job->traced[0];
  draft.strength = 0.3;
  g_autoptr (OxTracedPlan) dim = ox_traced_plan_new (&draft);
  g_autoptr (OxJob) dimmed = ox_job_with_traced (job, dim, NULL);
  ox_session_apply (session, dimmed, "Dim", NULL, NULL);
  ox_ui_settle (window);
  ox_test_near (pixel_at (window, (OxPoint){ -2.37, 1.13 }), 0.7 * bare, 6);
  draft.hidden = TRUE;
  g_autoptr (OxTracedPlan) gone = ox_traced_plan_new (&draft);
  g_autoptr (OxJob) hidden = ox_job_with_traced (job, gone, NULL);
  ox_session_apply (session, hidden, "Hide", NULL, NULL);
  ox_ui_settle (window);
  g_assert_cmpuint (pixel_at (window, (OxPoint){ -2.37, 1.13 }), ==, bare);
  ox_ui_close (window);
}

/* While it is dragged it lies where the pointer has it, not where it was; let go or given up, it is where that says. */
static void
test_dragged (void)
{
  g_autoptr (OxJob) job = job_with_plan (FALSE);
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  OxPixel from = ox_view_to_pixel (ox_canvas_get_view (canvas), (OxPoint){ 2.37, 1.13 });
  OxPixel to = ox_view_to_pixel (ox_canvas_get_view (canvas), (OxPoint){ 4.37, 1.13 });

  ox_session_select (ox_window_get_session (window), (const char *const[]){ "T1", NULL });
  ox_canvas_press (canvas, from, OX_HOLD_NONE, 1);
  ox_canvas_motion (canvas, to, OX_HOLD_NONE);
  ox_ui_settle (window);
  g_assert_cmpuint (pixel_at (window, (OxPoint){ 1.37, 1.13 }), <, 10);
  g_assert_true (job_of (window) == job);
  ox_canvas_key (canvas, &(OxKey){ .name = OX_KEY_ESCAPE });
  ox_canvas_release (canvas, to, OX_HOLD_NONE);
  ox_ui_settle (window);
  g_assert_cmpuint (pixel_at (window, (OxPoint){ 1.37, 1.13 }), >, 200);
  g_assert_cmpuint (pixel_at (window, (OxPoint){ -2.37, 1.13 }), <, 10);
  ox_ui_close (window);
}

/* What looks like a plan and is none: told so, nothing brought in. */
static void
test_refused (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "plan.pdf", NULL);
  OxWindow *window = ox_ui_open (NULL);

  g_assert_true (g_file_set_contents (path, "%PDF-1.7 and nothing else", -1, NULL));
  drop (window, path);
  OX_WAIT_FOR (ox_ui_find_dialog (window) != NULL);
  g_assert_cmpuint (job_of (window)->n_traced, ==, 0);
  gtk_window_destroy (ox_ui_find_dialog (window));
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

/* A job whose picture cannot be decoded opens all the same, and says which one is not shown. */
static void
test_spoiled_in_job (void)
{
  g_autoptr (GBytes) data = g_bytes_new_static ("%PDF-1.7 and nothing else", 25);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  OxTracedPlan draft = { .id = (char *) "T7", .kind = OX_TRACED_PDF, .data = data, .page = 1, .width = 10, .depth = 5, .strength = 1 };
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);
  g_autoptr (OxJob) job = ox_job_with_traced (empty, traced, NULL);
  OxWindow *window = ox_ui_open (NULL);

  ox_session_apply (ox_window_get_session (window), job, "Spoil", NULL, NULL);
  OX_WAIT_FOR (strstr (ox_window_get_told (window), "T7") != NULL);
  ox_ui_close (window);
}

static void
type (OxWindow *window, const char *name, const char *text)
{
  GtkWidget *field = ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, name);

  gtk_editable_set_text (GTK_EDITABLE (field), text);
  g_signal_emit_by_name (field, "activate");
}

/* The field of this name that is in sight; NULL while there is none. */
static GtkWidget *
find_field (GtkWidget *root, const char *name)
{
  g_autofree char *other = NULL;

  if (!gtk_widget_get_mapped (root))
    return NULL;
  if (OX_IS_FIELD (root))
    {
      other = gtk_test_accessible_check_property (GTK_ACCESSIBLE (root), GTK_ACCESSIBLE_PROPERTY_LABEL, name);
      return other == NULL ? root : NULL;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_field (child, name);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
find_check (GtkWidget *root, const char *label)
{
  if (GTK_IS_CHECK_BUTTON (root) && g_strcmp0 (gtk_check_button_get_label (GTK_CHECK_BUTTON (root)), label) == 0)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_check (child, label);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
test_figures (void)
{
  char *folder = ox_test_folder_new ();
  g_autofree char *path = write_plan (folder, "a.pdf", OX_TRACED_PDF);
  OxWindow *window = ox_ui_open (NULL);
  GtkWidget *locked;

  drop (window, path);
  OX_WAIT_FOR (job_of (window)->n_traced == 1);
  type (window, "Width", "10");
  ox_test_near (job_of (window)->traced[0]->width, 10, 1e-9);
  ox_test_near (job_of (window)->traced[0]->depth, 5, 1e-3);
  OX_WAIT_FOR (find_field (GTK_WIDGET (window), "Drawn at 1 :") != NULL);
  type (window, "Drawn at 1 :", "50");
  ox_test_near (job_of (window)->traced[0]->width, 2, 1e-3);
  type (window, "Strength, %", "25");
  ox_test_near (job_of (window)->traced[0]->strength, 0.25, 1e-9);
  type (window, "Angle, degrees", "1,5");
  ox_test_near (job_of (window)->traced[0]->angle_deg, 1.5, 1e-9);
  type (window, "Page", "2");
  OX_WAIT_FOR (job_of (window)->traced[0]->page == 2);
  OX_WAIT_FOR (find_field (GTK_WIDGET (window), "Page") != NULL);
  type (window, "Page", "3");
  g_assert_cmpuint (job_of (window)->traced[0]->page, ==, 2);
  locked = find_check (GTK_WIDGET (window), "_Locked");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (locked), TRUE);
  g_assert_true (job_of (window)->traced[0]->locked);
  ox_canvas_set_tool (ox_window_get_canvas (window), OX_TOOL_SELECT);
  ox_canvas_key (ox_window_get_canvas (window), &(OxKey){ .name = OX_KEY_LEFT });
  g_assert_nonnull (strstr (ox_window_get_told (window), "locked"));
  ox_ui_close (window);
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/window-traced/drop", test_drop);
  g_test_add_func ("/app/window-traced/closed-meanwhile", test_closed_meanwhile);
  g_test_add_func ("/app/window-traced/saved", test_saved);
  g_test_add_func ("/app/window-traced/seen", test_seen);
  g_test_add_func ("/app/window-traced/dragged", test_dragged);
  g_test_add_func ("/app/window-traced/refused", test_refused);
  g_test_add_func ("/app/window-traced/spoiled-in-job", test_spoiled_in_job);
  g_test_add_func ("/app/window-traced/figures", test_figures);
  return g_test_run ();
}
