/* Oxturn: tests/app/test-application - the program as a whole: its windows, the jobs it is given, its keys.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/application.h"
#include "app/window-private.h"

#include "file/job-xml.h"
#include "job/edit.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include "ui.h"

static OxApplication *application;
static char *folder;

static GFile *
make_job (const char *name, double width)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (width, 4, "compact");
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_assert_true (ox_job_file_write (job, path, NULL));
  return g_file_new_for_path (path);
}

static guint
count_windows (void)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (application)));
}

static OxWindow *
find_window (GFile *file)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (application)); l != NULL; l = l->next)
    if (g_strcmp0 (ox_session_get_path (ox_window_get_session (l->data)), g_file_peek_path (file)) == 0)
      return l->data;
  return NULL;
}

static void
close_all (void)
{
  while (count_windows () > 0)
    {
      OxWindow *window = gtk_application_get_windows (GTK_APPLICATION (application))->data;

      ox_ui_settle (window);
      gtk_window_close (GTK_WINDOW (window));
      OX_WAIT_FOR (g_list_find (gtk_application_get_windows (GTK_APPLICATION (application)), window) == NULL);
    }
}

/* Two jobs, two windows; one that is open already gets no second one. */
static void
test_a_window_a_job (void)
{
  g_autoptr (GFile) one = make_job ("one.oxturn", 6);
  g_autoptr (GFile) other = make_job ("other.oxturn", 7);
  OxWindow *first;

  g_application_open (G_APPLICATION (application), (GFile *[]){ one, other }, 2, "");
  g_assert_cmpuint (count_windows (), ==, 2);
  first = find_window (one);
  g_assert_nonnull (first);
  g_assert_nonnull (find_window (other));
  g_application_open (G_APPLICATION (application), (GFile *[]){ one }, 1, "");
  g_assert_cmpuint (count_windows (), ==, 2);
  g_assert_true (find_window (one) == first);
  close_all ();
}

/* A window in which nothing was done yet takes the job; one with work in it is left alone. */
static void
test_untouched_window_takes_the_job (void)
{
  g_autoptr (GFile) one = make_job ("one.oxturn", 6);
  g_autoptr (OxJob) drawn = ox_test_floor_rectangle (6, 4, "compact");
  OxWindow *window;

  g_application_activate (G_APPLICATION (application));
  g_assert_cmpuint (count_windows (), ==, 1);
  g_application_open (G_APPLICATION (application), (GFile *[]){ one }, 1, "");
  g_assert_cmpuint (count_windows (), ==, 1);
  g_action_group_activate_action (G_ACTION_GROUP (application), "new", NULL);
  g_assert_cmpuint (count_windows (), ==, 2);
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  ox_session_apply (ox_window_get_session (window), drawn, "Draw", NULL, NULL);
  g_application_open (G_APPLICATION (application), (GFile *[]){ make_job ("other.oxturn", 7) }, 1, "");
  g_assert_cmpuint (count_windows (), ==, 3);
  ox_session_undo (ox_window_get_session (window));
  close_all ();
}

/* Keys are found by where they are: with Russian letters Control and the key of Z is Undo all the same. */
static void
test_other_letters (void)
{
  static const guint control[] = { GDK_KEY_Control_L, 0 };
  g_autoptr (OxJob) drawn = ox_test_floor_rectangle (6, 4, "compact");
  OxWindow *window;
  GtkWidget *canvas;

  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  canvas = GTK_WIDGET (ox_window_get_canvas (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  ox_ui_settle (window);
  ox_ui_point (canvas, 200, 30);
  for (guint group = 0; group < 2; group++)
    {
      ox_session_apply (ox_window_get_session (window), drawn, "Draw", NULL, NULL);
      gtk_widget_grab_focus (canvas);
      ox_ui_layouts (canvas, "us,ru", group);
      ox_ui_chord (canvas, control, GDK_KEY_z);
      OX_WAIT_FOR (ox_session_get_job (ox_window_get_session (window))->n_rooms == 0);
    }
  ox_ui_layouts (canvas, "us", 0);
  close_all ();
}

/* The next window parts its inside as the last one did, and shows a job at the stage that was left; a new floor is to be drawn first. */
static void
test_panes_come_back (void)
{
  g_autoptr (GFile) one = make_job ("one.oxturn", 6);
  OxWindow *window;

  g_application_open (G_APPLICATION (application), (GFile *[]){ one }, 1, "");
  window = find_window (one);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", "plan");
  gtk_paned_set_position (window->parts, 420);
  close_all ();
  g_application_activate (G_APPLICATION (application));
  window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
  g_assert_cmpint (gtk_paned_get_position (window->parts), ==, 420);
  g_assert_cmpint (window->stage, ==, OX_STAGE_FLOOR);
  g_application_open (G_APPLICATION (application), (GFile *[]){ one }, 1, "");
  g_assert_cmpint (window->stage, ==, OX_STAGE_PLAN);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", "floor");
  close_all ();
}

int
main (int argc, char **argv)
{
  int status;

  folder = ox_test_folder_new ();
  for (guint i = 0; i < 4; i++)
    g_setenv ((const char *const[]){ "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME" }[i], folder, TRUE);
  ox_ui_init (&argc, &argv);
  application = ox_application_new ();
  g_application_hold (G_APPLICATION (application));
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_test_add_func ("/app/application/a-window-a-job", test_a_window_a_job);
  g_test_add_func ("/app/application/untouched-window-takes-the-job", test_untouched_window_takes_the_job);
  g_test_add_func ("/app/application/other-letters", test_other_letters);
  g_test_add_func ("/app/application/panes-come-back", test_panes_come_back);
  status = g_test_run ();
  g_object_unref (application);
  ox_test_folder_free (folder);
  return status;
}
