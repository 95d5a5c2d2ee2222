/* Oxturn: base/catalogue - translated texts in the form that msgfmt writes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/catalogue.h"
#include <string.h>

/* Seven words of 32 bits: magic, revision, number of texts, offsets of the two tables, size and offset of a hash that
 * is not needed. */
#define HEAD_SIZE 28
#define MAGIC 0x950412deu

static gboolean
read_word (const OxCatalogue *catalogue, guint64 at, guint32 *out)
{
  if (at + 4 > catalogue->length)
    return FALSE;
  guint32 word;
  memcpy (&word, catalogue->data + at, sizeof word);
  *out = GUINT32_FROM_LE (word);
  return TRUE;
}

/* read_text: text number @i of the table at @table; *length without the end mark */
static const char *
read_text (const OxCatalogue *catalogue, guint32 table, guint32 i, guint32 *length)
{
  guint32 at;
  guint64 entry = (guint64) table + 8 * (guint64) i;
  if (!read_word (catalogue, entry, length) || !read_word (catalogue, entry + 4, &at))
    return NULL;
  guint64 end = (guint64) at + *length;
  return end < catalogue->length && catalogue->data[end] == '\0' ? (const char *) catalogue->data + at : NULL;
}

/* take_form: form number @form of texts that stand one after another, each with its end mark */
static const char *
take_form (const char *text, guint32 length, guint form)
{
  const char *end = text + length;
  for (; form > 0; form--)
    {
      text += strlen (text) + 1;
      if (text > end)
        return NULL;
    }
  return *text != '\0' ? text : NULL;
}

const char *
ox_catalogue_lookup (const OxCatalogue *catalogue, const char *key, guint form)
{
  guint32 magic, n, originals, translations, length;
  if (catalogue->length < HEAD_SIZE || !read_word (catalogue, 0, &magic) || magic != MAGIC
      || !read_word (catalogue, 8, &n) || !read_word (catalogue, 12, &originals)
      || !read_word (catalogue, 16, &translations))
    return NULL;
  /* The originals are sorted; one with a plural is found by its singular, which stands first. */
  guint32 low = 0, high = n;
  while (low < high)
    {
      guint32 middle = low + (high - low) / 2;
      const char *text = read_text (catalogue, originals, middle, &length);
      if (text == NULL)
        return NULL;
      int order = strcmp (key, text);
      if (order == 0)
        {
          text = read_text (catalogue, translations, middle, &length);
          return text != NULL ? take_form (text, length, form) : NULL;
        }
      if (order < 0)
        high = middle;
      else
        low = middle + 1;
    }
  return NULL;
}

const OxCatalogue *
ox_catalogue_find (const char *name)
{
  for (guint i = 0; i < ox_n_catalogues; i++)
    if (g_str_equal (ox_catalogues[i].name, name))
      return &ox_catalogues[i];
  return NULL;
}
