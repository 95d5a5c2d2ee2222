/* Oxturn: file/load - a whole file in memory, unless it is too large.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/load.h"
#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include "file/job-xml.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FILE, fclose)

static gboolean
fail_errno (const char *path, int number, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_set_error (error, G_FILE_ERROR, (gint) g_file_error_from_errno (number), _ ("%s could not be read: %s"), shown,
               g_strerror (number));
  return FALSE;
}

/* The size of a pipe or of a file that still grows is not known before its end. */
static gboolean
read_all (FILE *file, const char *path, gsize most, GByteArray *into, GError **error)
{
  guint8 buffer[65536];
  gsize n;
  while ((n = fread (buffer, 1, sizeof buffer, file)) > 0)
    {
      if (into->len + n > most)
        {
          g_autofree char *shown = g_filename_display_name (path);
          g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE, _ ("%s has more than %u MB; no more is read"),
                       shown, (guint) (most / (1024 * 1024)));
          return FALSE;
        }
      g_byte_array_append (into, buffer, (guint) n);
    }
  return ferror (file) ? fail_errno (path, errno, error) : TRUE;
}

GByteArray *
ox_load_file (const char *path, gsize most, GError **error)
{
  g_autoptr (FILE) file = g_fopen (path, "rbe");
  if (!file)
    {
      fail_errno (path, errno, error);
      return NULL;
    }
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  if (!read_all (file, path, most, bytes, error))
    return NULL;
  g_byte_array_append (bytes, (const guint8 *) "", 1);
  bytes->len--;
  return g_steal_pointer (&bytes);
}
