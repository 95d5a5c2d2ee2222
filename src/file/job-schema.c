/* Oxturn: file/job-schema - the RELAX NG schema of data/job.rng, built in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-schema.h"
#include <glib/gi18n-lib.h>
#include <libxml/relaxng.h>
#include "file/job-schema-data.h"
#include "file/job-xml.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNG, xmlRelaxNGFree)

typedef struct
{
  const char *file_name;
  GError *error; /* of the deepest place, which libxml2 reports first */
} Report;

static void
note_error (void *user_data, xmlError *found)
{
  Report *report = user_data;
  if (report->error || found->level < XML_ERR_ERROR || found->line <= 0)
    return;
  g_autofree char *what = g_strstrip (g_utf8_make_valid (found->message ? found->message : "", -1));
  report->error
      = g_error_new (OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("%s:%d: not as the schema of job files has it: %s"),
                     report->file_name, found->line, what);
}

static xmlRelaxNG *
load_schema (void)
{
  xmlRelaxNGParserCtxt *context = xmlRelaxNGNewMemParserCtxt (ox_job_schema_data, (int) ox_job_schema_length);
  xmlRelaxNG *schema = xmlRelaxNGParse (context);
  xmlRelaxNGFreeParserCtxt (context);
  return schema;
}

gboolean
ox_job_schema_check (const char *file_name, xmlDoc *doc, GError **error)
{
  g_autoptr (xmlRelaxNG) schema = load_schema ();
  g_return_val_if_fail (schema, FALSE);
  Report report = { .file_name = file_name };
  xmlRelaxNGValidCtxt *context = xmlRelaxNGNewValidCtxt (schema);
  xmlRelaxNGSetValidStructuredErrors (context, (xmlStructuredErrorFunc) note_error, &report);
  gboolean valid = xmlRelaxNGValidateDoc (context, doc) == 0;
  xmlRelaxNGFreeValidCtxt (context);
  if (valid)
    {
      g_clear_error (&report.error);
      return TRUE;
    }
  if (!report.error)
    report.error = g_error_new (OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("%s:1: not as the schema of job files has it"),
                                file_name);
  g_propagate_error (error, report.error);
  return FALSE;
}
