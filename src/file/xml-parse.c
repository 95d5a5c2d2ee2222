/* Oxturn: file/xml-parse - XML that nobody has vouched for, as a tree.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/xml-parse.h"
#include <glib/gi18n-lib.h>
#include <libxml/SAX2.h>
#include <libxml/parser.h>
#include <libxml/parserInternals.h>
#include <libxml/xmlerror.h>
#include "file/job-xml.h"

typedef struct
{
  const char *name;
  GError *error; /* the first thing that is wrong */
} Parse;

static void
stop (xmlParserCtxt *context, const char *sentence)
{
  Parse *parse = context->_private;
  if (!parse->error)
    parse->error = g_error_new (OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "%s:%d: %s", parse->name,
                                context->input ? context->input->line : 1, sentence);
  xmlStopParser (context);
}

/* Called when "<!DOCTYPE" has been read and before anything in it is, so that no entity ever comes into being. */
static void
refuse_doctype (void *user_data, const xmlChar *name G_GNUC_UNUSED, const xmlChar *public_id G_GNUC_UNUSED,
                const xmlChar *system_id G_GNUC_UNUSED)
{
  stop (user_data, _ ("a document type declaration (DOCTYPE) stands here; a job file may have none"));
}

static void
start_element (void *user_data, const xmlChar *local, const xmlChar *prefix, const xmlChar *uri, int n_namespaces,
               const xmlChar **namespaces, int n_attributes, int n_defaulted, const xmlChar **attributes)
{
  xmlParserCtxt *context = user_data;
  if (context->nameNr >= OX_JOB_FILE_MAX_DEPTH)
    {
      g_autofree char *sentence
          = g_strdup_printf (_ ("elements are nested too deep; %d deep is allowed"), OX_JOB_FILE_MAX_DEPTH);
      stop (context, sentence);
      return;
    }
  xmlSAX2StartElementNs (context, local, prefix, uri, n_namespaces, namespaces, n_attributes, n_defaulted, attributes);
}

/* The tree is of no use after the first error, so only that one is kept. */
static void
note_error (void *user_data, xmlError *report)
{
  xmlParserCtxt *context = user_data;
  Parse *parse = context->_private;
  if (parse->error || report->level < XML_ERR_ERROR)
    return;
  g_autofree char *what = g_strstrip (g_utf8_make_valid (report->message ? report->message : "", -1));
  parse->error = g_error_new (OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("%s:%d: no well-formed XML: %s"), parse->name,
                              MAX (report->line, 1), what);
}

xmlDoc *
ox_xml_parse (const char *name, const void *data, gsize length, GError **error)
{
  Parse parse = { .name = name };
  if (length == 0)
    {
      g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("%s:1: the file is empty; a job is needed"), name);
      return NULL;
    }
  xmlParserCtxt *context = xmlNewParserCtxt ();
  context->_private = &parse;
  context->sax->internalSubset = refuse_doctype;
  context->sax->startElementNs = start_element;
  context->sax->serror = (xmlStructuredErrorFunc) note_error;
  g_autoptr (xmlDoc) doc = xmlCtxtReadMemory (context, data, (int) length, NULL, NULL,
                                              XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING
                                                  | XML_PARSE_BIG_LINES | XML_PARSE_NOCDATA);
  gboolean whole = context->wellFormed && context->nsWellFormed;
  xmlFreeParserCtxt (context);
  if (!parse.error && (!doc || !whole || !xmlDocGetRootElement (doc) || doc->intSubset))
    parse.error = g_error_new (OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("%s:1: no well-formed XML"), name);
  if (!parse.error)
    return g_steal_pointer (&doc);
  g_propagate_error (error, parse.error);
  return NULL;
}
