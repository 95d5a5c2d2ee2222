/* Oxturn: file/job-rest - what newer versions and other namespaces put into a job file, kept over a load and a save.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-known.h"
#include <libxml/parser.h>
#include <string.h>
#include "file/job-known-private.h"
#include "file/xml-parse.h"

static void
copy_attribute (xmlNode *to, const xmlAttr *attribute)
{
  xmlNs *ns = NULL;
  if (attribute->ns)
    {
      ns = xmlSearchNsByHref (to->doc, to, attribute->ns->href);
      if (!ns || !ns->prefix)
        ns = xmlNewNs (to, attribute->ns->href, attribute->ns->prefix);
    }
  xmlChar *value = xmlNodeGetContent ((const xmlNode *) attribute);
  xmlNewNsProp (to, ns, attribute->name, value);
  xmlFree (value);
}

static void
replace_ns (xmlNode *node, const xmlNs *old, xmlNs *new)
{
  if (node->ns == old)
    node->ns = new;
  for (xmlNode *child = node->children; child; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      replace_ns (child, old, new);
}

/* A copy declares all its namespaces itself. Our own is that of the element around it, too, and is not to be written
 * again. */
static void
copy_element (xmlNode *to, xmlNode *element)
{
  xmlNode *clone = xmlDocCopyNode (element, to->doc, 1);
  xmlAddChild (to, clone);
  xmlNs **link = &clone->nsDef;
  while (*link && ((*link)->prefix || !xmlStrEqual ((*link)->href, to->ns->href)))
    link = &(*link)->next;
  if (!*link)
    return;
  xmlNs *redundant = *link;
  replace_ns (clone, redundant, to->ns);
  *link = redundant->next;
  xmlFreeNs (redundant);
}

static gboolean
is_hollow (const xmlNode *shell)
{
  return !shell->properties && !shell->children;
}

static xmlNode *
add_shell (xmlNode *to, const xmlNode *like)
{
  return xmlNewChild (to, to->ns, like->name, NULL);
}

static void
drop (xmlNode *node)
{
  xmlUnlinkNode (node);
  xmlFreeNode (node);
}

/* One of several equal elements is found again by its number only, so they stay all or none. */
static void
drop_hollow (xmlNode *node)
{
  g_autoptr (GHashTable) kept = g_hash_table_new (g_str_hash, g_str_equal);
  for (xmlNode *child = node->children; child; child = child->next)
    if (!is_hollow (child))
      g_hash_table_add (kept, (gpointer) child->name);
  for (xmlNode *child = node->children, *next; child; child = next)
    {
      next = child->next;
      if (is_hollow (child) && !g_hash_table_contains (kept, child->name))
        drop (child);
    }
}

static void
collect (xmlNode *shell, const xmlNode *node)
{
  const OxKnown *known = ox_known_find (node);
  for (const xmlAttr *attribute = node->properties; attribute; attribute = attribute->next)
    if (!ox_known_has_attribute (known, attribute))
      copy_attribute (shell, attribute);
  g_autoptr (GPtrArray) unknown = g_ptr_array_new ();
  for (xmlNode *child = node->children; child; child = child->next)
    {
      if (child->type != XML_ELEMENT_NODE || ox_known_is_item (child))
        continue;
      if (ox_known_find (child))
        collect (add_shell (shell, child), child);
      else
        g_ptr_array_add (unknown, child);
    }
  drop_hollow (shell);
  for (guint i = 0; i < unknown->len; i++)
    copy_element (shell, unknown->pdata[i]);
}

static xmlNode *
new_root (xmlDoc *doc, const xmlChar *name)
{
  xmlNode *root = xmlNewDocNode (doc, NULL, name, NULL);
  xmlSetNs (root, xmlNewNs (root, BAD_CAST OX_JOB_NAMESPACE, NULL));
  xmlDocSetRootElement (doc, root);
  return root;
}

static char *
dump (xmlDoc *doc, xmlNode *node)
{
  xmlBuffer *buffer = xmlBufferCreate ();
  xmlNodeDump (buffer, doc, node, 0, 0);
  char *text = g_strdup ((const char *) xmlBufferContent (buffer));
  xmlBufferFree (buffer);
  return text;
}

/* Most elements of most files are wholly known; it is worth knowing that before a tree is built. */
static gboolean
has_rest (const xmlNode *node)
{
  const OxKnown *known = ox_known_find (node);
  for (const xmlAttr *attribute = node->properties; attribute; attribute = attribute->next)
    if (!ox_known_has_attribute (known, attribute))
      return TRUE;
  for (const xmlNode *child = node->children; child; child = child->next)
    if (child->type == XML_ELEMENT_NODE && !ox_known_is_item (child) && (!ox_known_find (child) || has_rest (child)))
      return TRUE;
  return FALSE;
}

char *
ox_known_rest (const xmlNode *node)
{
  if (!has_rest (node))
    return NULL;
  g_autoptr (xmlDoc) doc = xmlNewDoc (BAD_CAST "1.0");
  xmlNode *root = new_root (doc, BAD_CAST "job");
  xmlNode *shell = xmlStrEqual (node->name, BAD_CAST "job") ? root : add_shell (root, node);
  collect (shell, node);
  return dump (doc, root);
}

static xmlNode *
next_named (xmlNode *from, const xmlChar *name)
{
  while (from && !ox_known_is_ours (from, (const char *) name))
    from = from->next;
  return from;
}

/* Pairs of elements of one name in two parents, walked in step. */
static gboolean
same_count (xmlNode *a, xmlNode *b, const xmlChar *name)
{
  xmlNode *p = next_named (a->children, name);
  xmlNode *q = next_named (b->children, name);
  while (p && q)
    {
      p = next_named (p->next, name);
      q = next_named (q->next, name);
    }
  return !p && !q;
}

static void merge (xmlNode *to, xmlNode *shell);

static void
merge_named (xmlNode *to, xmlNode *shell, const xmlChar *name)
{
  if (!same_count (to, shell, name))
    return;
  xmlNode *place = next_named (to->children, name);
  for (xmlNode *from = next_named (shell->children, name); from; from = next_named (from->next, name))
    {
      merge (place, from);
      place = next_named (place->next, name);
    }
}

static void
merge (xmlNode *to, xmlNode *shell)
{
  for (const xmlAttr *attribute = shell->properties; attribute; attribute = attribute->next)
    if (!xmlHasNsProp (to, attribute->name, attribute->ns ? attribute->ns->href : NULL))
      copy_attribute (to, attribute);
  g_autoptr (GHashTable) merged = g_hash_table_new (g_str_hash, g_str_equal);
  for (xmlNode *child = shell->children; child; child = child->next)
    {
      if (child->type != XML_ELEMENT_NODE)
        continue;
      if (!ox_known_find (child))
        copy_element (to, child);
      else if (g_hash_table_add (merged, (gpointer) child->name))
        merge_named (to, child->parent, child->name);
    }
}

static xmlNode *
first_element (xmlNode *node)
{
  xmlNode *child = node->children;
  while (child && child->type != XML_ELEMENT_NODE)
    child = child->next;
  return child;
}

GHashTable *
ox_known_rest_names (const char *rest)
{
  GHashTable *names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (xmlDoc) doc = rest ? ox_xml_parse ("rest", rest, strlen (rest), NULL) : NULL;
  if (!doc)
    return names;
  for (xmlNode *child = xmlDocGetRootElement (doc)->children; child; child = child->next)
    if (ox_known_find (child))
      g_hash_table_add (names, g_strdup ((const char *) child->name));
  return names;
}

void
ox_known_merge (xmlNode *node, const char *rest)
{
  g_autoptr (xmlDoc) doc = ox_xml_parse ("rest", rest, strlen (rest), NULL);
  g_return_if_fail (doc);
  xmlNode *shell = xmlDocGetRootElement (doc);
  if (!xmlStrEqual (node->name, BAD_CAST "job"))
    shell = first_element (shell);
  g_return_if_fail (shell);
  merge (node, shell);
}

void
ox_known_strip (xmlNode *node)
{
  const OxKnown *known = ox_known_find (node);
  for (xmlAttr *attribute = node->properties, *next; attribute; attribute = next)
    {
      next = attribute->next;
      if (!ox_known_has_attribute (known, attribute))
        xmlRemoveProp (attribute);
    }
  for (xmlNode *child = node->children, *next; child; child = next)
    {
      next = child->next;
      if (ox_known_find (child))
        ox_known_strip (child);
      else if (!(known->flags & OX_KNOWN_TEXT))
        drop (child);
    }
}
