/* Oxturn: file/job-xml - job files: XML that a person can read and diff.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-xml.h"
#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include "base/atomic.h"
#include "file/job-read.h"
#include "file/job-write.h"
#include "file/xml-parse.h"

G_DEFINE_QUARK (ox - file - error - quark, ox_file_error)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FILE, fclose)

static gboolean
refuse_size (const char *name, GError **error)
{
  g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE,
               _ ("%s: the file has more than %d MB; no job is that large"), name,
               OX_JOB_FILE_MAX_BYTES / (1024 * 1024));
  return FALSE;
}

static gboolean
fail_file (const char *path, int number, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (number), _ ("%s cannot be read: %s"), shown,
               g_strerror (number));
  return FALSE;
}

/* Reads on until the end or the cap: the size of a pipe or of a file that still grows is not known before. */
static gboolean
load_capped (const char *path, GByteArray *into, GError **error)
{
  g_autoptr (FILE) file = g_fopen (path, "rbe");
  if (!file)
    return fail_file (path, errno, error);
  guint8 buffer[65536];
  gsize n;
  while ((n = fread (buffer, 1, sizeof buffer, file)) > 0)
    {
      g_byte_array_append (into, buffer, (guint) n);
      if (into->len > OX_JOB_FILE_MAX_BYTES)
        {
          g_autofree char *shown = g_filename_display_name (path);
          return refuse_size (shown, error);
        }
    }
  return ferror (file) ? fail_file (path, errno, error) : TRUE;
}

gboolean
ox_job_file_read (const char *path, OxJob **out, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autofree char *name = g_filename_display_name (path);
  return load_capped (path, bytes, error) && ox_job_file_read_data (name, bytes->data, bytes->len, out, error);
}

gboolean
ox_job_file_read_data (const char *name, const void *data, gsize length, OxJob **out, GError **error)
{
  if (length > OX_JOB_FILE_MAX_BYTES)
    return refuse_size (name, error);
  g_autoptr (xmlDoc) doc = ox_xml_parse (name, data, length, error);
  OxJob *job = doc ? ox_job_read_tree (name, doc, error) : NULL;
  if (!job)
    return FALSE;
  *out = job;
  return TRUE;
}

char *
ox_job_file_to_text (const OxJob *job)
{
  g_autoptr (xmlDoc) doc = ox_job_write_tree (job);
  xmlChar *bytes = NULL;
  int length = 0;
  xmlDocDumpFormatMemoryEnc (doc, &bytes, &length, "UTF-8", 1);
  char *text = g_strndup ((const char *) bytes, (gsize) length);
  xmlFree (bytes);
  return text;
}

gboolean
ox_job_file_write (const OxJob *job, const char *path, GError **error)
{
  g_autofree char *text = ox_job_file_to_text (job);
  return ox_atomic_write (path, text, strlen (text), error);
}
