/* Oxturn: file/job-schema - the RELAX NG schema of data/job.rng, built in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-schema.h"
#include <glib/gi18n-lib.h>
#include <libxml/relaxng.h>
#include "file/job-known.h"
#include "file/job-schema-data.h"
#include "file/job-xml.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNG, xmlRelaxNGFree)

/* Elements that are checked at a time. */
#define BITE 200

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

static gboolean
check_doc (xmlRelaxNGValidCtxt *context, xmlDoc *doc)
{
  return xmlRelaxNGValidateDoc (context, doc) == 0;
}

/* (transfer container): the children of @node for which @pick holds, taken out of the tree */
static GPtrArray *
take_out (xmlNode *node, gboolean (*pick) (const xmlNode *child))
{
  GPtrArray *taken = g_ptr_array_new ();
  for (xmlNode *child = node->children, *next; child; child = next)
    {
      next = child->next;
      if (!pick (child))
        continue;
      xmlUnlinkNode (child);
      g_ptr_array_add (taken, child);
    }
  return taken;
}

static void
put_back (xmlNode *node, GPtrArray *taken, guint start, guint end)
{
  for (guint i = start; i < end; i++)
    xmlAddChild (node, taken->pdata[i]);
}

/* what there may be thousands of in one element */
static gboolean
is_listed (const xmlNode *child)
{
  static const char *const names[] = { "corner", "point", "day", "strip", "edge" };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (ox_known_is_ours (child, names[i]))
      return TRUE;
  return FALSE;
}

static gboolean
is_piece (const xmlNode *child)
{
  return ox_known_is_item (child) || ox_known_is_ours (child, "record");
}

/* @node alone stands in the root; a list of nothing is left to the check of the whole item. */
static gboolean
check_long_item (xmlRelaxNGValidCtxt *context, xmlNode *node)
{
  g_autoptr (GPtrArray) listed = take_out (node, is_listed);
  gboolean valid = TRUE;
  for (guint i = 0; valid && i < listed->len; i += BITE)
    {
      guint end = MIN (i + BITE, listed->len);
      put_back (node, listed, i, end);
      valid = check_doc (context, node->doc);
      for (guint k = i; k < end; k++)
        xmlUnlinkNode (listed->pdata[k]);
    }
  put_back (node, listed, 0, listed->len);
  return valid;
}

static gulong
count_elements (xmlNode *item)
{
  return 1 + xmlChildElementCount (item);
}

/* Items are gathered as long as they are no more than a bite of elements together. */
static gboolean
check_items (xmlRelaxNGValidCtxt *context, xmlNode *root, GPtrArray *items)
{
  gboolean valid = TRUE;
  for (guint i = 0, end; valid && i < items->len; i = end)
    {
      gulong elements = count_elements (items->pdata[i]);
      for (end = i + 1; end < items->len && elements + count_elements (items->pdata[end]) <= BITE; end++)
        elements += count_elements (items->pdata[end]);
      put_back (root, items, i, end);
      valid = end == i + 1 && elements > BITE ? check_long_item (context, items->pdata[i])
                                              : check_doc (context, root->doc);
      for (guint k = i; k < end; k++)
        xmlUnlinkNode (items->pdata[k]);
    }
  return valid;
}

static gboolean
check_in_bites (xmlRelaxNGValidCtxt *context, xmlDoc *doc)
{
  xmlNode *root = xmlDocGetRootElement (doc);
  g_autoptr (GPtrArray) items = take_out (root, is_piece);
  gboolean valid = check_doc (context, doc) && check_items (context, root, items);
  put_back (root, items, 0, items->len);
  return valid;
}

gboolean
ox_job_schema_check (const char *file_name, xmlDoc *doc, GError **error)
{
  g_autoptr (xmlRelaxNG) schema = load_schema ();
  g_return_val_if_fail (schema, FALSE);
  Report report = { .file_name = file_name };
  xmlRelaxNGValidCtxt *context = xmlRelaxNGNewValidCtxt (schema);
  xmlRelaxNGSetValidStructuredErrors (context, (xmlStructuredErrorFunc) note_error, &report);
  gboolean valid = check_in_bites (context, doc);
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
