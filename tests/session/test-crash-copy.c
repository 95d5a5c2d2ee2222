/* Oxturn: tests/session/test-crash-copy - work that is not saved yet, kept for a crash.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/crash-copy.h"

#include "file/job-xml.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include "support/wait.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

/* Writes in a process of its own, which ends without a word: the lock goes, the copy stays. */
static void
crash (const char *folder, const OxJob *job, const char *path)
{
  pid_t child = fork ();
  int status;

  if (child == 0)
    {
      OxCrashCopy *copy = ox_crash_copy_new (folder);

      ox_crash_copy_write (copy, job, path, path != NULL ? "17 at noon" : NULL);
      while (ox_crash_copy_is_busy (copy))
        g_main_context_iteration (NULL, TRUE);
      kill (getpid (), SIGKILL);
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
}

static void
test_comes_back (void)
{
  char *folder = ox_test_folder_new ();
  g_autoptr (OxJob) job = ox_test_floor_rectangle (12.345, 8, "compact");
  g_autoptr (OxJob) back = NULL;
  g_autofree char *path = NULL;
  g_autofree char *stamp = NULL;
  g_autofree char *expected = ox_job_file_to_text (job);
  g_autofree char *got = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) files = NULL;
  GStatBuf info;

  crash (folder, job, "/somewhere/hall \342\204\226 2.oxturn");
  files = ox_crash_copy_list (folder);
  g_assert_cmpuint (g_strv_length (files), ==, 1);
  g_assert_cmpint (g_stat (files[0], &info), ==, 0);
  g_assert_cmpint (info.st_mode & 0777, ==, 0600);
  g_assert_true (ox_crash_copy_read (files[0], &back, &path, &stamp, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (path, ==, "/somewhere/hall \342\204\226 2.oxturn");
  g_assert_cmpstr (stamp, ==, "17 at noon");
  got = ox_job_file_to_text (back);
  g_assert_cmpstr (got, ==, expected);
  ox_crash_copy_discard (files[0]);
  g_assert_cmpuint (count_files (folder), ==, 0);
  ox_test_folder_free (folder);
}

static void
test_never_saved_job (void)
{
  char *folder = ox_test_folder_new ();
  g_autoptr (OxJob) job = ox_test_floor_rectangle (5, 5, "compact");
  g_autoptr (OxJob) back = NULL;
  g_autofree char *path = NULL;
  g_autofree char *stamp = NULL;
  g_auto (GStrv) files = NULL;

  crash (folder, job, NULL);
  files = ox_crash_copy_list (folder);
  g_assert_true (ox_crash_copy_read (files[0], &back, &path, &stamp, NULL));
  g_assert_null (path);
  g_assert_null (stamp);
  ox_test_folder_free (folder);
}

static void
test_living_session_is_not_offered (void)
{
  char *folder = ox_test_folder_new ();
  g_autoptr (OxCrashCopy) copy = ox_crash_copy_new (folder);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (5, 5, "compact");
  g_auto (GStrv) files = NULL;

  ox_crash_copy_write (copy, job, NULL, NULL);
  OX_WAIT_FOR (!ox_crash_copy_is_busy (copy));
  g_assert_cmpuint (count_files (folder), ==, 2);
  files = ox_crash_copy_list (folder);
  g_assert_cmpuint (g_strv_length (files), ==, 0);
  ox_crash_copy_clear (copy);
  g_assert_cmpuint (count_files (folder), ==, 0);
  ox_test_folder_free (folder);
}

/* Clearing right behind a write: whichever comes first, nothing is left that would be offered as lost work. */
static void
test_clear_beats_write (void)
{
  char *folder = ox_test_folder_new ();
  g_autoptr (OxCrashCopy) copy = ox_crash_copy_new (folder);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (5, 5, "compact");

  for (guint i = 0; i < 100; i++)
    {
      ox_crash_copy_write (copy, job, NULL, NULL);
      ox_crash_copy_write (copy, job, NULL, NULL);
      ox_crash_copy_clear (copy);
    }
  OX_WAIT_FOR (!ox_crash_copy_is_busy (copy));
  g_assert_cmpuint (count_files (folder), ==, 0);
  ox_test_folder_free (folder);
}

static void
test_adopt (void)
{
  char *folder = ox_test_folder_new ();
  g_autoptr (OxCrashCopy) copy = ox_crash_copy_new (folder);
  g_autoptr (OxCrashCopy) other = ox_crash_copy_new (folder);
  g_autoptr (OxJob) job = ox_test_floor_rectangle (5, 5, "compact");
  g_auto (GStrv) before = NULL;
  g_auto (GStrv) after = NULL;

  crash (folder, job, NULL);
  before = ox_crash_copy_list (folder);
  g_assert_true (ox_crash_copy_adopt (copy, before[0]));
  g_assert_true (g_file_test (before[0], G_FILE_TEST_EXISTS));
  after = ox_crash_copy_list (folder);
  g_assert_cmpuint (g_strv_length (after), ==, 0);
  g_assert_false (ox_crash_copy_adopt (other, before[0]));
  ox_crash_copy_clear (copy);
  g_assert_cmpuint (count_files (folder), ==, 0);
  ox_test_folder_free (folder);
}

static void
test_broken_copy (void)
{
  static const char *const texts[] = { "", "no key file", "[copy]\njob=<job", "[copy]\npath=/x" };
  char *folder = ox_test_folder_new ();
  g_autofree char *file = g_build_filename (folder, "1.work", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (OxJob) job = NULL;
      g_autofree char *path = NULL;
      g_autofree char *stamp = NULL;
      g_autoptr (GError) error = NULL;

      g_assert_true (g_file_set_contents (file, texts[i], -1, NULL));
      g_assert_false (ox_crash_copy_read (file, &job, &path, &stamp, &error));
      g_assert_nonnull (error);
      g_assert_null (job);
    }
  ox_test_folder_free (folder);
}

static void
test_no_folder (void)
{
  g_auto (GStrv) files = ox_crash_copy_list ("/nowhere/at/all");

  g_assert_cmpuint (g_strv_length (files), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  /* These fork, so they come before anything starts a thread. */
  g_test_add_func ("/session/crash-copy/comes-back", test_comes_back);
  g_test_add_func ("/session/crash-copy/never-saved-job", test_never_saved_job);
  g_test_add_func ("/session/crash-copy/adopt", test_adopt);
  g_test_add_func ("/session/crash-copy/living-session-is-not-offered", test_living_session_is_not_offered);
  g_test_add_func ("/session/crash-copy/clear-beats-write", test_clear_beats_write);
  g_test_add_func ("/session/crash-copy/broken-copy", test_broken_copy);
  g_test_add_func ("/session/crash-copy/no-folder", test_no_folder);
  return g_test_run ();
}
