/* Oxturn: file/job-known - which elements and attributes version 1.2 of the job file knows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-known.h"
#include "base/shown.h"
#include <glib/gi18n-lib.h>
#include <string.h>
#include "file/job-known-private.h"
#include "file/job-xml.h"

#define SHAPE "id name shape x y width depth angle radius"

/* The same grammar as data/job.rng, flattened: good messages need to know what is allowed at a place. */
static const OxKnown table[] = {
  { NULL, "job", "version units north",
    "texts machine rates calendar costs outfit patch scope sheets room solid pit masked excluded doorway joint station "
    "condition traced-plan record",
    0 },
  { "job", "texts", "", "title client site author company number revision date status notes", 0 },
  { "texts", NULL, "", "", OX_KNOWN_TEXT },
  { "job", "machine", "class name", "body pace abrasive hose supply wear", 0 },
  { "machine", "body", "blast-width blast-length front rear left right wall-gap min-overlap turn-radius min-strip", "",
    0 },
  { "machine", "pace", "travel-speed walk-speed swing-s start-s", "", 0 },
  { "machine", "abrasive", "hopper-kg flow-kg-min loss-share", "", 0 },
  { "machine", "hose", "hose-bore hose-length hose-flow", "", 0 },
  { "machine", "supply", "volts phases amperes cord-length cord-mm2", "", 0 },
  { "machine", "wear", "name interval-h run-h machine", "", OX_KNOWN_MANY },
  { "job", "rates", "edge-m2-per-hour edge-m-per-hour", "", 0 },
  { "job", "calendar",
    "first-day start shift-h break-min setup-min cleanup-min refill-min drum-change-min wear-check-min machines days "
    "noise-db silica-machine silica-hand",
    "", 0 },
  { "job", "costs", "currency validity decimals contingency", "rate", 0 },
  { "costs", "rate", "per name amount", "", OX_KNOWN_MANY },
  { "job", "outfit", "shot circuit", "cord", 0 },
  { "outfit", "cord", "length mm2", "", OX_KNOWN_MANY },
  { "job", "patch", "id date speed flow-kg-min depth-mm csp volume-ml note", "diameter trial", OX_KNOWN_MANY },
  { "patch", "diameter", "mm", "", OX_KNOWN_MANY },
  { "patch", "trial", "left-mm middle-mm right-mm cage cage-to", "", 0 },
  { "job", "scope", "", "inclusion exclusion assumption revision sign-off", 0 },
  { "scope", "inclusion", "key text", "", OX_KNOWN_MANY },
  { "scope", "exclusion", "key text", "", OX_KNOWN_MANY },
  { "scope", "assumption", "key text", "", OX_KNOWN_MANY },
  { "scope", "revision", "mark date author text after-sign-off accepted-by accepted-on", "", OX_KNOWN_MANY },
  { "scope", "sign-off", "number revision name date", "", 0 },
  { "job", "sheets", "language paper schedule-paper tiles scale orientation", "", 0 },
  { "job", "room", "id name profile along-side angle coats coat-turn", "corner", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "room", "corner", "x y side keep-back", "", OX_KNOWN_MANY },
  { "job", "solid", SHAPE, "corner", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "job", "pit", SHAPE " keep-back", "corner", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "job", "masked", SHAPE, "corner", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "job", "excluded", "id name", "corner", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { NULL, "corner", "x y", "", OX_KNOWN_MANY },
  { "job", "doorway", "id name x1 y1 x2 y2 depth", "", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "job", "joint", "id name", "point", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "joint", "point", "x y", "", OX_KNOWN_MANY },
  { "job", "station", "id name kind x y length", "", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "job", "condition", "id name speed coats profile", "corner", OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "job", "record", "", "day strip edge", 0 },
  { "record", "day", "date machine meter-start meter-end notes", "", OX_KNOWN_MANY },
  { "record", "strip", "date room kind coat x1 y1 x2 y2 width kept csp depth-mm note", "", OX_KNOWN_MANY },
  { "record", "edge", "date room wkt note", "", OX_KNOWN_MANY },
  { "job", "traced-plan", "id name kind page x y width depth angle strength locked hidden", "part",
    OX_KNOWN_MANY | OX_KNOWN_ITEM },
  { "traced-plan", "part", "", "", OX_KNOWN_MANY | OX_KNOWN_TEXT },
};

gboolean
ox_known_is_ours (const xmlNode *node, const char *name)
{
  return node && node->type == XML_ELEMENT_NODE && node->ns && xmlStrEqual (node->ns->href, BAD_CAST OX_JOB_NAMESPACE)
         && (!name || xmlStrEqual (node->name, BAD_CAST name));
}

/* whether @word is one of the words, split by blanks, of @list */
static gboolean
is_listed (const char *list, const xmlChar *word)
{
  gsize length = strlen ((const char *) word);
  for (const char *p = strstr (list, (const char *) word); p && length; p = strstr (p + 1, (const char *) word))
    if ((p == list || p[-1] == ' ') && (p[length] == ' ' || p[length] == '\0'))
      return TRUE;
  return FALSE;
}

const OxKnown *
ox_known_find (const xmlNode *node)
{
  if (!ox_known_is_ours (node, NULL))
    return NULL;
  const xmlNode *parent = ox_known_is_ours (node->parent, NULL) ? node->parent : NULL;
  const OxKnown *above = parent ? ox_known_find (parent) : NULL;
  if (parent && (!above || !is_listed (above->children, node->name)))
    return NULL;
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    if ((!table[i].name || xmlStrEqual (node->name, BAD_CAST table[i].name))
        && (!table[i].parent || (parent && xmlStrEqual (parent->name, BAD_CAST table[i].parent))))
      return &table[i];
  return NULL;
}

gboolean
ox_known_is_item (const xmlNode *node)
{
  const OxKnown *known = ox_known_find (node);
  return known && (known->flags & OX_KNOWN_ITEM);
}

gboolean
ox_known_has_attribute (const OxKnown *known, const xmlAttr *attribute)
{
  return !attribute->ns && is_listed (known->attributes, attribute->name);
}

gboolean
ox_known_is_foreign (const xmlNs *ns)
{
  return ns && !xmlStrEqual (ns->href, BAD_CAST OX_JOB_NAMESPACE);
}

typedef struct
{
  const char *file_name;
  gboolean newer;
  GError **error;
} Walk;

static gboolean refuse (const Walk *walk, const xmlNode *node, const char *format, ...) G_GNUC_PRINTF (3, 4);

static gboolean
refuse (const Walk *walk, const xmlNode *node, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (walk->error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "%s:%ld: %s", walk->file_name, xmlGetLineNo (node),
               sentence);
  return FALSE;
}

static const char *
list_or_nothing (const char *list)
{
  return *list ? list : _ ("nothing");
}

static gboolean
check_attributes (const Walk *walk, const xmlNode *node, const OxKnown *known)
{
  for (const xmlAttr *attribute = node->properties; attribute; attribute = attribute->next)
    if (!ox_known_has_attribute (known, attribute) && !ox_known_is_foreign (attribute->ns) && !walk->newer)
      /* TRANSLATORS: attribute found, element, list of the attributes that it may have */
      return refuse (walk, node, _ ("attribute “%s” is not known in <%s>; allowed are: %s"),
                     ox_shown ((const char *) attribute->name).text, node->name, list_or_nothing (known->attributes));
  return TRUE;
}

static gboolean
stands_twice (const xmlNode *node, const OxKnown *known)
{
  if (known->flags & OX_KNOWN_MANY)
    return FALSE;
  for (const xmlNode *other = node->prev; other; other = other->prev)
    if (ox_known_is_ours (other, (const char *) node->name))
      return TRUE;
  return FALSE;
}

static gboolean check_element (const Walk *walk, const xmlNode *node, const OxKnown *known);

static gboolean
check_child (const Walk *walk, const xmlNode *node, const OxKnown *above, const xmlNode *child)
{
  if (child->type == XML_ELEMENT_NODE)
    {
      const OxKnown *known = ox_known_find (child);
      if (known && stands_twice (child, known))
        return refuse (walk, child, _ ("<%s> stands twice in <%s>; once is allowed"), child->name, node->name);
      if (known)
        return check_element (walk, child, known);
      if ((walk->newer || ox_known_is_foreign (child->ns)) && !(above->flags & OX_KNOWN_TEXT))
        return TRUE;
      /* TRANSLATORS: element found, element around it, list of the elements that it may have */
      return refuse (walk, child, _ ("element <%s> is not known in <%s>; allowed are: %s"),
                     ox_shown ((const char *) child->name).text, node->name, list_or_nothing (above->children));
    }
  if (child->type == XML_TEXT_NODE && !(above->flags & OX_KNOWN_TEXT) && !xmlIsBlankNode (child))
    {
      g_autofree char *found = g_strstrip (g_strdup ((const char *) child->content));
      return refuse (walk, child, _ ("text “%s” stands in <%s>, which may hold elements only"), ox_shown (found).text,
                     node->name);
    }
  if (child->type == XML_ENTITY_REF_NODE)
    return refuse (walk, child, _ ("entity “%s” is not known"), ox_shown ((const char *) child->name).text);
  return TRUE;
}

/* The recursion is as deep as the file, which ox_xml_parse() has capped. */
static gboolean
check_element (const Walk *walk, const xmlNode *node, const OxKnown *known)
{
  if (!check_attributes (walk, node, known))
    return FALSE;
  for (const xmlNode *child = node->children; child; child = child->next)
    if (!check_child (walk, node, known, child))
      return FALSE;
  return TRUE;
}

gboolean
ox_known_check (const char *file_name, const xmlNode *root, gboolean newer, GError **error)
{
  const Walk walk = { file_name, newer, error };
  return check_element (&walk, root, ox_known_find (root));
}
