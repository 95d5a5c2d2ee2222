/* Oxturn: base/atomic - files that appear whole or not at all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/atomic.h"
#include "base/words.h"
#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

/* As many links on the way to one file as Linux follows. */
#define MAX_LINKS 40

static gboolean
fail (const char *path, int code, GError **error)
{
  g_autofree char *name = g_filename_display_name (path);
  g_set_error (error, G_IO_ERROR, (gint) g_io_error_from_errno (code), _ ("%s could not be written: %s"), name,
               g_strerror (code));
  return FALSE;
}

/* The file that @path means in the end, so that the rename replaces the file and not the link to it. A link to a file
 * that is not there yet counts too, which realpath() would refuse. */
static char *
follow_links (const char *path)
{
  g_autofree char *at = g_strdup (path);
  for (int i = 0; i < MAX_LINKS; i++)
    {
      g_autofree char *link = g_file_read_link (at, NULL);
      if (!link)
        return g_steal_pointer (&at);
      g_autofree char *dir = g_path_get_dirname (at);
      g_free (at);
      at = g_path_is_absolute (link) ? g_steal_pointer (&link) : g_build_filename (dir, link, NULL);
    }
  return NULL;
}

static gboolean
write_all (int fd, const char *data, gsize length)
{
  while (length > 0)
    {
      gssize n = write (fd, data, length);
      if (n < 0 && errno != EINTR)
        return FALSE;
      if (n > 0)
        {
          data += n;
          length -= (gsize) n;
        }
    }
  return fsync (fd) == 0;
}

/* The rename itself must reach the disk too. A file system that cannot flush a folder is no reason to fail: the file
 * is whole either way. */
static void
flush_folder (const char *folder)
{
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);
  if (fd < 0)
    return;
  fsync (fd);
  close (fd);
}

/* Returns: 0, or what went wrong as errno has it */
static int
check_target (const char *target, mode_t *mode)
{
  struct stat st;
  if (stat (target, &st) != 0)
    return errno == ENOENT ? 0 : errno;
  if (S_ISDIR (st.st_mode))
    return EISDIR;
  if (!S_ISREG (st.st_mode))
    return EINVAL;
  /* A rename would replace a file that somebody has protected against writing. */
  if (g_access (target, W_OK) != 0)
    return errno;
  *mode = st.st_mode & 07777;
  return 0;
}

gboolean
ox_atomic_write (const char *path, const void *data, gsize length, GError **error)
{
  g_return_val_if_fail (path != NULL && (data != NULL || length == 0), FALSE);

  g_autofree char *target = follow_links (path);
  if (!target)
    return fail (path, ELOOP, error);
  mode_t mode = 0;
  int code = check_target (target, &mode);
  if (code != 0)
    return fail (path, code, error);

  g_autofree char *folder = g_path_get_dirname (target);
  g_autofree char *temporary = g_build_filename (folder, ".oxturn-XXXXXX", NULL);
  int fd = g_mkstemp_full (temporary, O_WRONLY | O_CLOEXEC, 0666);
  if (fd < 0)
    return fail (path, errno, error);
  gboolean ok = write_all (fd, data, length) && (mode == 0 || fchmod (fd, mode) == 0);
  code = ok ? 0 : errno;
  if (close (fd) != 0 && code == 0)
    code = errno;
  if (code == 0 && g_rename (temporary, target) != 0)
    code = errno;
  if (code != 0)
    {
      g_unlink (temporary);
      return fail (path, code, error);
    }
  flush_folder (folder);
  return TRUE;
}
