/* Oxturn: tests of base/atomic
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/atomic.h"
#include "support/ox-test.h"
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct
{
  char *folder;
  char *path; /* of a file in it */
} Fixture;

static void
set_up (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  f->folder = ox_test_folder_new ();
  f->path = g_build_filename (f->folder, "floor.oxturn", NULL);
}

static void
tear_down (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_free (f->path);
  ox_test_folder_free (f->folder);
}

static void
write_text (const char *path, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (ox_atomic_write (path, text, strlen (text), &error));
  g_assert_no_error (error);
}

static void
assert_text (const char *path, const char *text)
{
  g_autofree char *found = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &found, &length, NULL));
  g_assert_cmpmem (found, length, text, strlen (text));
}

static void
assert_files (const char *folder, guint wanted)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;
  while (g_dir_read_name (dir))
    n++;
  g_assert_cmpuint (n, ==, wanted);
}

static mode_t
mode_of (const char *path)
{
  struct stat st;
  g_assert_cmpint (lstat (path, &st), ==, 0);
  return st.st_mode;
}

static void
assert_refused (const char *path, gint code)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (ox_atomic_write (path, "new", 3, &error));
  g_assert_error (error, G_IO_ERROR, code);
  g_assert_nonnull (strstr (error->message, path));
}

static void
test_new_and_again (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  mode_t mask = umask (022);
  write_text (f->path, "one");
  assert_text (f->path, "one");
  g_assert_cmpuint (mode_of (f->path) & 07777, ==, 0644);
  write_text (f->path, "");
  assert_text (f->path, "");
  write_text (f->path, "three, longer than before");
  assert_text (f->path, "three, longer than before");
  assert_files (f->folder, 1);
  umask (mask);
}

static void
test_zero_bytes_are_kept (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *found = NULL;
  gsize length;
  g_assert_true (ox_atomic_write (f->path, "a\0b", 3, &error));
  g_assert_true (g_file_get_contents (f->path, &found, &length, NULL));
  g_assert_cmpmem (found, length, "a\0b", 3);
}

static void
test_mode_is_kept (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  write_text (f->path, "one");
  g_assert_cmpint (g_chmod (f->path, 0640), ==, 0);
  write_text (f->path, "two");
  g_assert_cmpuint (mode_of (f->path) & 07777, ==, 0640);
}

static void
test_link_is_kept (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_autofree char *first = g_build_filename (f->folder, "first", NULL);
  g_autofree char *second = g_build_filename (f->folder, "second", NULL);
  g_assert_cmpint (symlink ("floor.oxturn", first), ==, 0);
  g_assert_cmpint (symlink (first, second), ==, 0);
  /* Also while the file is not there yet. */
  write_text (second, "one");
  assert_text (f->path, "one");
  write_text (first, "two");
  assert_text (f->path, "two");
  g_assert_true (S_ISLNK (mode_of (first)));
  g_assert_true (S_ISLNK (mode_of (second)));
  g_assert_true (S_ISREG (mode_of (f->path)));
  assert_files (f->folder, 3);
}

static void
test_link_to_itself (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_assert_cmpint (symlink ("floor.oxturn", f->path), ==, 0);
  assert_refused (f->path, G_IO_ERROR_TOO_MANY_LINKS);
}

static void
test_no_such_place (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_autofree char *in_nothing = g_build_filename (f->folder, "missing", "floor.oxturn", NULL);
  g_autofree char *in_file = g_build_filename (f->path, "floor.oxturn", NULL);
  write_text (f->path, "one");
  assert_refused (in_nothing, G_IO_ERROR_NOT_FOUND);
  assert_refused (in_file, G_IO_ERROR_NOT_DIRECTORY);
  assert_refused (f->folder, G_IO_ERROR_IS_DIRECTORY);
  assert_refused ("/dev/null", G_IO_ERROR_INVALID_ARGUMENT);
  assert_text (f->path, "one");
}

/* Root may write anywhere, so the superuser steps back for a moment. */
static void
test_not_allowed (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_autofree char *other = g_build_filename (f->folder, "other.oxturn", NULL);
  uid_t user = geteuid ();
  write_text (f->path, "one");
  g_assert_cmpint (g_chmod (f->path, 0444), ==, 0);
  g_assert_cmpint (g_chmod (f->folder, 0755), ==, 0);
  if (user == 0)
    g_assert_cmpint (seteuid (65534), ==, 0);
  assert_refused (f->path, G_IO_ERROR_PERMISSION_DENIED);
  if (user == 0)
    assert_refused (other, G_IO_ERROR_PERMISSION_DENIED);
  g_assert_cmpint (seteuid (user), ==, 0);
  g_assert_cmpint (g_chmod (f->folder, 0700), ==, 0);
  assert_text (f->path, "one");
  assert_files (f->folder, 1);
}

#define LARGE (1024 * 1024)

/* A limit on the size of files stands for a full disk: the write is cut short and then fails. */
static void
limit_file_size (rlim_t bytes)
{
  struct rlimit limit;
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  limit.rlim_cur = bytes;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

static void
test_full_disk (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *large = g_malloc0 (LARGE);
  struct rlimit before;
  write_text (f->path, "old");
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &before), ==, 0);
  void (*handler) (int) = signal (SIGXFSZ, SIG_IGN);
  limit_file_size (LARGE / 2);
  g_assert_false (ox_atomic_write (f->path, large, LARGE, &error));
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &before), ==, 0);
  signal (SIGXFSZ, handler);
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, f->path));
  assert_text (f->path, "old");
  assert_files (f->folder, 1);
}

/* The same limit, its signal not ignored, kills the writer in the middle of the file. */
static void
test_killed (Fixture *f, gconstpointer unused G_GNUC_UNUSED)
{
  g_autofree char *large = g_malloc0 (LARGE);
  write_text (f->path, "old");
  pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      struct rlimit none = { 0, 0 };
      setrlimit (RLIMIT_CORE, &none);
      signal (SIGXFSZ, SIG_DFL);
      limit_file_size (LARGE / 2);
      _exit (ox_atomic_write (f->path, large, LARGE, NULL) ? 0 : 1);
    }
  int status = 0;
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status));
  assert_text (f->path, "old");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test) g_test_add ("/base/atomic/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("new-and-again", test_new_and_again);
  ADD ("zero-bytes-are-kept", test_zero_bytes_are_kept);
  ADD ("mode-is-kept", test_mode_is_kept);
  ADD ("link-is-kept", test_link_is_kept);
  ADD ("link-to-itself", test_link_to_itself);
  ADD ("no-such-place", test_no_such_place);
  ADD ("not-allowed", test_not_allowed);
  ADD ("full-disk", test_full_disk);
  ADD ("killed", test_killed);
  return g_test_run ();
}
