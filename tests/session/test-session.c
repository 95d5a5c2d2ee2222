/* Oxturn: tests/session/test-session - the job that is worked on in a window.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/session.h"

#include "file/job-xml.h"
#include "job/edit.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include "support/wait.h"

#include <glib/gstdio.h>

typedef struct
{
  guint job, plan, selection, state;
} Counts;

static void
count_cb (guint *count)
{
  (*count)++;
}

static OxSession *
new_session (const char *folder, Counts *counts)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxSession *session = ox_session_new (job, ox_plan_new, folder);

  g_signal_connect_swapped (session, "job-changed", G_CALLBACK (count_cb), &counts->job);
  g_signal_connect_swapped (session, "plan-changed", G_CALLBACK (count_cb), &counts->plan);
  g_signal_connect_swapped (session, "selection-changed", G_CALLBACK (count_cb), &counts->selection);
  g_signal_connect_swapped (session, "state-changed", G_CALLBACK (count_cb), &counts->state);
  return session;
}

static void
move_room (OxSession *session, double x)
{
  g_autoptr (OxJob) job
      = ox_job_moved (ox_session_get_job (session), (const char *const[]){ "R1", NULL }, (OxPoint){ x, 0 }, NULL);

  ox_session_apply (session, job, "Move Room", (const char *const[]){ "R1", NULL }, NULL);
}

static void
test_new_job (void)
{
  g_autoptr (OxJob) job = ox_session_new_job (OX_UNITS_FEET);

  g_assert_cmpuint (job->n_rooms, ==, 0);
  g_assert_cmpint (job->units, ==, OX_UNITS_FEET);
  g_assert_cmpfloat (job->rates.edge_m2_per_hour, ==, OX_HAND_RATE_DEFAULT);
  g_assert_cmpfloat (job->machine->blast_width, >, 0);
}

static void
test_edit_and_plan (void)
{
  Counts counts = { 0 };
  g_autoptr (OxSession) session = new_session (NULL, &counts);

  OX_WAIT_FOR (ox_session_is_plan_current (session));
  move_room (session, 1);
  g_assert_cmpuint (counts.job, ==, 1);
  g_assert_false (ox_session_is_plan_current (session));
  g_assert_nonnull (ox_session_find_plan (session)); /* the old one, until the new one is there */
  g_assert_true (ox_session_is_selected (session, "R1"));
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Move Room");
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_cmpfloat_with_epsilon (ox_session_find_plan (session)->totals.target_m2, 80, 1e-9);
  g_assert_true (ox_session_undo (session));
  g_assert_false (ox_session_is_modified (session));
  g_assert_false (ox_session_undo (session));
  g_assert_true (ox_session_redo (session));
  g_assert_true (ox_session_is_modified (session));
  OX_WAIT_FOR (ox_session_is_plan_current (session));
}

static void
test_selection (void)
{
  Counts counts = { 0 };
  g_autoptr (OxSession) session = new_session (NULL, &counts);

  ox_session_select (session, (const char *const[]){ "R1", NULL });
  g_assert_cmpuint (counts.selection, ==, 1);
  ox_session_select (session, (const char *const[]){ "R1", NULL });
  g_assert_cmpuint (counts.selection, ==, 1);
  g_assert_cmpuint (counts.job, ==, 0);
  g_assert_false (ox_session_is_modified (session));
  ox_session_select (session, NULL);
  g_assert_cmpuint (counts.selection, ==, 2);
  OX_WAIT_FOR (ox_session_is_plan_current (session));
}

static void
test_save_and_open (void)
{
  Counts counts = { 0 };
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autoptr (OxSession) session = new_session (NULL, &counts);
  g_autoptr (OxSession) other = new_session (NULL, &counts);
  g_autofree char *name = NULL;
  g_autofree char *saved = NULL;
  g_autofree char *opened = NULL;
  g_autoptr (GError) error = NULL;

  move_room (session, 2);
  g_assert_true (ox_session_save (session, path, &error));
  g_assert_no_error (error);
  g_assert_false (ox_session_is_modified (session));
  g_assert_cmpstr (ox_session_get_path (session), ==, path);
  name = ox_session_get_display_name (session);
  g_assert_cmpstr (name, ==, "hall.oxturn");
  move_room (session, 1);
  g_assert_true (ox_session_is_modified (session));
  ox_session_undo (session);
  g_assert_false (ox_session_is_modified (session)); /* back at what is on disk */

  g_assert_true (ox_session_open (other, path, &error));
  saved = ox_job_file_to_text (ox_session_get_job (session));
  opened = ox_job_file_to_text (ox_session_get_job (other));
  g_assert_cmpstr (opened, ==, saved);
  g_assert_null (ox_session_find_undo_label (other));
  OX_WAIT_FOR (ox_session_is_plan_current (session) && ox_session_is_plan_current (other));
  ox_test_folder_free (folder);
}

static void
test_failures_change_nothing (void)
{
  Counts counts = { 0 };
  g_autoptr (OxSession) session = new_session (NULL, &counts);
  const OxJob *job;
  g_autoptr (GError) error = NULL;

  move_room (session, 1);
  job = ox_session_get_job (session);
  g_assert_false (ox_session_save (session, "/nowhere/at/all/x.oxturn", &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_false (ox_session_open (session, "/nowhere/at/all/x.oxturn", &error));
  g_assert_nonnull (error);
  g_assert_true (ox_session_get_job (session) == job);
  g_assert_true (ox_session_is_modified (session));
  g_assert_null (ox_session_get_path (session));
  OX_WAIT_FOR (ox_session_is_plan_current (session));
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_copy_follows_modified_mark (void)
{
  Counts counts = { 0 };
  char *folder = ox_test_folder_new ();
  g_autofree char *copies = g_build_filename (folder, "copies", NULL);
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autoptr (OxSession) session = new_session (copies, &counts);

  move_room (session, 1);
  OX_WAIT_FOR (count_files (copies) == 2); /* the copy and its lock */
  g_assert_true (ox_session_save (session, path, NULL));
  g_assert_cmpuint (count_files (copies), ==, 0);
  move_room (session, 1);
  OX_WAIT_FOR (count_files (copies) == 2);
  ox_session_close (session);
  g_assert_cmpuint (count_files (copies), ==, 0);
  OX_WAIT_FOR (!ox_plan_service_is_running (ox_session_get_plan_service (session)));
  g_rmdir (copies);
  ox_test_folder_free (folder);
}

static void
test_restore (void)
{
  Counts counts = { 0 };
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "1.work", NULL);
  g_autoptr (OxSession) session = new_session (folder, &counts);
  g_autoptr (OxJob) lost = ox_test_floor_rectangle (33, 4, "medium");
  g_autofree char *text = ox_job_file_to_text (lost);
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *got = NULL;

  g_key_file_set_string (keys, "copy", "path", "/somewhere/lost.oxturn");
  g_key_file_set_string (keys, "copy", "job", text);
  g_assert_true (g_key_file_save_to_file (keys, file, NULL));
  g_assert_true (ox_session_restore (session, file, NULL));
  got = ox_job_file_to_text (ox_session_get_job (session));
  g_assert_cmpstr (got, ==, text);
  g_assert_true (ox_session_is_modified (session));
  g_assert_cmpstr (ox_session_get_path (session), ==, "/somewhere/lost.oxturn");
  ox_session_close (session);
  g_assert_cmpuint (count_files (folder), ==, 0);
  OX_WAIT_FOR (!ox_plan_service_is_running (ox_session_get_plan_service (session)));
  ox_test_folder_free (folder);
}

/* A session ends badly, and its copy is taken over in another one; meanwhile somebody else may have saved the file. */
static void
restore_overtaken (gboolean saved, gboolean stamped)
{
  Counts counts = { 0 };
  char *folder = ox_test_folder_new ();
  g_autofree char *copies = g_build_filename (folder, "copies", NULL);
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autoptr (OxJob) other = ox_test_floor_rectangle (33, 4, "medium");
  g_autoptr (OxSession) lost = new_session (copies, &counts);
  g_autoptr (OxSession) session = new_session (copies, &counts);
  g_auto (GStrv) files = NULL;

  g_assert_true (ox_session_save (lost, path, NULL));
  move_room (lost, 1);
  OX_WAIT_FOR (count_files (copies) == 2);
  OX_WAIT_FOR (!ox_plan_service_is_running (ox_session_get_plan_service (lost)));
  g_clear_object (&lost);
  OX_WAIT_FOR ((g_strfreev (files), (files = ox_crash_copy_list (copies))[0] != NULL));
  if (!stamped)
    {
      g_autoptr (GKeyFile) keys = g_key_file_new ();

      g_assert_true (g_key_file_load_from_file (keys, files[0], G_KEY_FILE_NONE, NULL));
      g_assert_true (g_key_file_remove_key (keys, "copy", "stamp", NULL));
      g_assert_true (g_key_file_save_to_file (keys, files[0], NULL));
    }
  if (saved)
    g_assert_true (ox_job_file_write (other, path, NULL));
  g_assert_true (ox_session_restore (session, files[0], NULL));
  g_assert_cmpint (ox_session_is_overtaken (session), ==, saved || !stamped);
  g_assert_true (ox_session_save (session, path, NULL));
  g_assert_false (ox_session_is_overtaken (session));
  ox_session_close (session);
  OX_WAIT_FOR (!ox_plan_service_is_running (ox_session_get_plan_service (session)));
  g_rmdir (copies);
  ox_test_folder_free (folder);
}

static void
test_restore_overtaken (void)
{
  restore_overtaken (FALSE, TRUE);
  restore_overtaken (TRUE, TRUE);
  restore_overtaken (FALSE, FALSE);
}

static void
test_nothing_left_behind (void)
{
  Counts counts = { 0 };
  OxSession *session = new_session (NULL, &counts);

  move_room (session, 1);
  ox_session_close (session);
  g_object_add_weak_pointer (G_OBJECT (session), (gpointer *) &session);
  g_object_unref (session);
  g_assert_null (session);
}

/* A traced plan brought in, moved and taken away again: the plan of the floor stays, nothing is planned; with the floor it is planned anew. */
static void
test_traced_plan_is_not_planned (void)
{
  Counts counts = { 0 };
  g_autoptr (OxSession) session = new_session (NULL, &counts);
  g_autoptr (GBytes) data = g_bytes_new_static ("%PDF", 4);
  OxTracedPlan draft = { .id = (char *) "T1", .kind = OX_TRACED_PDF, .data = data, .page = 1, .width = 4, .depth = 2, .strength = 1 };
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);
  g_autoptr (OxJob) with = NULL;
  g_autoptr (OxJob) moved = NULL;
  g_autoptr (OxJob) both = NULL;
  const OxPlan *plan;

  OX_WAIT_FOR (ox_session_is_plan_current (session));
  plan = ox_session_find_plan (session);
  counts.plan = 0;
  with = ox_job_with_traced (ox_session_get_job (session), traced, NULL);
  ox_session_apply (session, with, "Bring In", NULL, NULL);
  moved = ox_job_moved (with, (const char *const[]){ "T1", NULL }, (OxPoint){ 3, 0 }, NULL);
  ox_session_apply (session, moved, "Move", NULL, NULL);
  g_assert_true (ox_session_is_plan_current (session));
  g_assert_false (ox_plan_service_is_running (ox_session_get_plan_service (session)));
  g_assert_true (ox_session_find_plan (session) == plan);
  g_assert_cmpuint (counts.plan, ==, 0);
  both = ox_job_moved (moved, (const char *const[]){ "T1", "R1", NULL }, (OxPoint){ 3, 0 }, NULL);
  ox_session_apply (session, both, "Move", NULL, NULL);
  g_assert_false (ox_session_is_plan_current (session));
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_true (ox_session_find_plan (session)->job == both);
  for (guint i = 0; i < 3; i++)
    ox_session_undo (session);
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  g_assert_cmpfloat (ox_region_box (ox_session_find_plan (session)->target).x0, ==, 0);
}

/* An edit taken back before it was planned: the plan that is there is the right one, and stays so when the other one lands. */
static void
test_undo_in_mid_plan (void)
{
  Counts counts = { 0 };
  g_autoptr (OxSession) session = new_session (NULL, &counts);
  const OxJob *job;

  OX_WAIT_FOR (ox_session_is_plan_current (session));
  job = ox_session_get_job (session);
  move_room (session, 1);
  ox_session_undo (session);
  g_assert_true (ox_session_is_plan_current (session));
  OX_WAIT_FOR (!ox_plan_service_is_running (ox_session_get_plan_service (session)));
  g_assert_true (ox_session_is_plan_current (session));
  g_assert_true (ox_session_find_plan (session)->job == job);
}

static void
test_read_only (void)
{
  Counts counts = { 0 };
  char *folder = ox_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "hall.oxturn", NULL);
  g_autoptr (OxSession) session = new_session (NULL, &counts);

  g_assert_false (ox_session_is_read_only (session));
  g_assert_true (ox_session_save (session, path, NULL));
  g_assert_false (ox_session_is_read_only (session));
  g_assert_cmpint (g_chmod (path, 0444), ==, 0);
  g_assert_true (ox_session_is_read_only (session));
  g_assert_cmpint (g_chmod (path, 0644), ==, 0);
  g_assert_false (ox_session_is_read_only (session));
  OX_WAIT_FOR (ox_session_is_plan_current (session));
  ox_test_folder_free (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/session/new-job", test_new_job);
  g_test_add_func ("/session/session/edit-and-plan", test_edit_and_plan);
  g_test_add_func ("/session/session/selection", test_selection);
  g_test_add_func ("/session/session/save-and-open", test_save_and_open);
  g_test_add_func ("/session/session/failures-change-nothing", test_failures_change_nothing);
  g_test_add_func ("/session/session/copy-follows-modified-mark", test_copy_follows_modified_mark);
  g_test_add_func ("/session/session/restore", test_restore);
  g_test_add_func ("/session/session/restore-overtaken", test_restore_overtaken);
  g_test_add_func ("/session/session/nothing-left-behind", test_nothing_left_behind);
  g_test_add_func ("/session/session/traced-plan-is-not-planned", test_traced_plan_is_not_planned);
  g_test_add_func ("/session/session/undo-in-mid-plan", test_undo_in_mid_plan);
  g_test_add_func ("/session/session/read-only", test_read_only);
  return g_test_run ();
}
