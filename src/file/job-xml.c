/* Oxturn: file/job-xml - job files: XML that a person can read and diff.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-xml.h"
#include <glib/gi18n-lib.h>
#include <string.h>
#include "base/atomic.h"
#include "file/job-read.h"
#include "file/job-write.h"
#include "file/load.h"
#include "file/xml-parse.h"

G_DEFINE_QUARK (ox_file_error, ox_file_error)

gboolean
ox_job_file_read (const char *path, OxJob **out, GError **error)
{
  g_autoptr (GByteArray) bytes = ox_load_file (path, OX_JOB_FILE_MAX_BYTES, error);
  g_autofree char *name = g_filename_display_name (path);
  return bytes && ox_job_file_read_data (name, bytes->data, bytes->len, out, error);
}

gboolean
ox_job_file_read_data (const char *name, const void *data, gsize length, OxJob **out, GError **error)
{
  if (length > OX_JOB_FILE_MAX_BYTES)
    {
      g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE, _ ("%s has more than %d MB; no more is read"), name,
                   OX_JOB_FILE_MAX_BYTES / (1024 * 1024));
      return FALSE;
    }
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
  gsize length = strlen (text);
  if (length <= OX_JOB_FILE_MAX_BYTES)
    return ox_atomic_write (path, text, length, error);
  g_autofree char *name = g_filename_display_name (path);
  g_set_error (
      error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE,
      _ ("%s would have %.1f MB, and no more than %d MB are read; nothing was written. Leave a traced plan out, "
         "or shorten the notes of the record"),
      name, (double) length / (1024 * 1024), OX_JOB_FILE_MAX_BYTES / (1024 * 1024));
  return FALSE;
}
