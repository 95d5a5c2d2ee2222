/* Oxturn: file/read-value - values of attributes, or a sentence that says where, what was found and what is allowed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-value.h"
#include "base/shown.h"
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include "base/number.h"
#include "file/job-xml.h"
#include "geometry/point.h"
#include "job/text.h"

gboolean
ox_read_fail (const OxReader *reader, const xmlNode *node, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (reader->error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, "%s:%ld: %s", reader->file_name,
               xmlGetLineNo (node), sentence);
  return FALSE;
}

static char *
attribute_text (const xmlNode *node, const char *key)
{
  xmlChar *value = xmlGetNoNsProp (node, BAD_CAST key);
  char *text = g_strdup ((const char *) value);
  xmlFree (value);
  return text;
}

/* "solid O3", "corner of room R1", "machine": the names are those of the elements, so they are not translated */
static char *
place_text (const xmlNode *node)
{
  g_autofree char *id = attribute_text (node, "id");
  if (id)
    return g_strdup_printf ("%s %s", node->name, ox_shown (id).text);
  if (!node->parent || node->parent->type != XML_ELEMENT_NODE || !node->parent->parent
      || node->parent->parent->type != XML_ELEMENT_NODE)
    return g_strdup ((const char *) node->name);
  g_autofree char *parent = place_text (node->parent);
  /* TRANSLATORS: an element within another one, such as "corner of room R1" */
  return g_strdup_printf (_ ("%s of %s"), node->name, parent);
}

char *
ox_read_text (const OxReader *reader, const xmlNode *node, const char *key, const char *otherwise)
{
  g_autofree char *text = attribute_text (node, key);
  if (text && strlen (text) <= OX_TEXT_MOST)
    return g_steal_pointer (&text);
  if (!text && otherwise)
    return g_strdup (otherwise);
  g_autofree char *place = place_text (node);
  if (text)
    ox_read_fail (reader, node, _ ("%s of %s has more than %d bytes"), key, place, OX_TEXT_MOST);
  else
    ox_read_fail (reader, node, _ ("%s has no %s; one is needed"), place, key);
  return NULL;
}

static gboolean
fail_range (const OxReader *reader, const xmlNode *node, const OxRange *range, const char *text)
{
  g_autofree char *place = place_text (node);
  g_autofree char *least = ox_number_text (range->least, 6);
  g_autofree char *most = ox_number_text (range->most, 6);
  if (range->above)
    /* TRANSLATORS: attribute, value found, place, ends of what is allowed */
    return ox_read_fail (reader, node, _ ("%s “%s” of %s: a number of more than %s and at most %s is needed"),
                         range->key, ox_shown (text).text, place, least, most);
  /* TRANSLATORS: attribute, value found, place, ends of what is allowed */
  return ox_read_fail (reader, node, _ ("%s “%s” of %s: a number from %s to %s is needed"), range->key, ox_shown (text).text, place,
                       least, most);
}

gboolean
ox_read_number (const OxReader *reader, const xmlNode *node, const OxRange *range, double *out)
{
  g_autofree char *text = attribute_text (node, range->key);
  double value;
  if (!text && !isnan (range->otherwise))
    {
      *out = range->otherwise;
      return TRUE;
    }
  if (!text)
    {
      g_autofree char *place = place_text (node);
      return ox_read_fail (reader, node, _ ("%s has no %s; one is needed"), place, range->key);
    }
  /* The schema has decimal numbers only, so an exponent is refused here already, in better words. */
  if (!ox_number_parse (text, &value) || strpbrk (text, "eE"))
    return fail_range (reader, node, range, text);
  if (range->snap && fabs (value) <= range->most)
    value = ox_snap (value);
  if (value < range->least || value > range->most || (range->above && value <= range->least))
    return fail_range (reader, node, range, text);
  *out = value;
  return TRUE;
}

gboolean
ox_read_numbers (const OxReader *reader, const xmlNode *node, const OxRange *ranges, guint n, double *out)
{
  for (guint i = 0; i < n; i++)
    if (!ox_read_number (reader, node, &ranges[i], &out[i]))
      return FALSE;
  return TRUE;
}

gboolean
ox_read_choice (const OxReader *reader, const xmlNode *node, const OxChoice *choice, int *out)
{
  g_autofree char *text = attribute_text (node, choice->key);
  int found = text ? -1 : choice->otherwise;
  for (int i = 0; text && choice->words[i] && found < 0; i++)
    if (g_str_equal (text, choice->words[i]))
      found = i;
  if (found >= 0)
    {
      *out = found;
      return TRUE;
    }
  g_autofree char *place = place_text (node);
  g_autofree char *allowed = g_strjoinv (", ", (char **) choice->words);
  if (!text)
    return ox_read_fail (reader, node, _ ("%s has no %s; one of %s is needed"), place, choice->key, allowed);
  /* TRANSLATORS: attribute, value found, place, list of words */
  return ox_read_fail (reader, node, _ ("%s “%s” of %s: one of %s is needed"), choice->key, ox_shown (text).text, place,
                       allowed);
}

gboolean
ox_read_whole (const OxReader *reader, const xmlNode *node, const OxRange *range, guint *out)
{
  double value;
  if (!ox_read_number (reader, node, range, &value))
    return FALSE;
  if (value != floor (value))
    return ox_read_fail (reader, node, _ ("%s of %s: a whole number is needed"), range->key, node->name);
  *out = (guint) value;
  return TRUE;
}

char *
ox_read_date (const OxReader *reader, const xmlNode *node, const char *key, const char *otherwise)
{
  g_autofree char *date = ox_read_text (reader, node, key, otherwise);
  if (!date || (otherwise && g_str_equal (date, otherwise)) || (*date && ox_text_is_date (date)))
    return g_steal_pointer (&date);
  ox_read_fail (reader, node, _ ("%s “%s” of %s: a day such as 2026-09-14 is needed"), key, ox_shown (date).text,
                node->name);
  return NULL;
}

gboolean
ox_read_refuse_attribute (const OxReader *reader, const xmlNode *node, const char *key, const char *why)
{
  if (!xmlHasNsProp ((xmlNode *) node, BAD_CAST key, NULL))
    return TRUE;
  g_autofree char *place = place_text (node);
  /* TRANSLATORS: attribute, place, reason */
  return ox_read_fail (reader, node, _ ("%s of %s: %s"), key, place, why);
}
