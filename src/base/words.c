/* Oxturn: base/words - texts in the language of the person, or in that of the sheets that are being made.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "base/number.h"
#include <string.h>

/* Which territories write a decimal point in Spanish, and where Letter is the usual paper: after Unicode CLDR (numbers
 * of es_419 and its exceptions, measurementData paperSize), from memory. */
static const struct
{
  const char *tag, *name, *catalogue, *decimal;
  gboolean us_paper;
} languages[] = {
  { "en", "English", NULL, ".", FALSE },
  { "en_US", "English (United States)", NULL, ".", TRUE },
  { "es", "Español", "es", ",", FALSE },
  { "es_MX", "Español (México)", "es", ".", TRUE },
  { "es_US", "Español (Estados Unidos)", "es", ".", TRUE },
  { "de", "Deutsch", "de", ",", FALSE },
};

/* The language of the scope, const OxLanguage *; one a thread, so that sheets in two languages can be made at a time.
 */
static GPrivate present;

guint
ox_language_get_count (void)
{
  return G_N_ELEMENTS (languages);
}

OxLanguage
ox_language_get (guint i)
{
  g_return_val_if_fail (i < G_N_ELEMENTS (languages), ((OxLanguage){ "", "", NULL, ".", FALSE }));
  const OxCatalogue *catalogue = languages[i].catalogue != NULL ? ox_catalogue_find (languages[i].catalogue) : NULL;
  return (OxLanguage){ languages[i].tag, languages[i].name, catalogue, languages[i].decimal, languages[i].us_paper };
}

static gboolean
find_exactly (const char *tag, OxLanguage *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (languages); i++)
    if (g_ascii_strcasecmp (languages[i].tag, tag) == 0)
      {
        *out = ox_language_get (i);
        return TRUE;
      }
  return FALSE;
}

gboolean
ox_language_find (const char *tag, OxLanguage *out)
{
  g_autofree char *bare = g_strndup (tag, strcspn (tag, ".@"));
  g_strdelimit (bare, "-", '_');
  if (find_exactly (bare, out))
    return TRUE;
  bare[strcspn (bare, "_")] = '\0';
  return find_exactly (bare, out);
}

OxWordsScope
ox_words_scope (const OxLanguage *language)
{
  OxWordsScope scope = { g_private_get (&present), language != NULL };
  if (scope.begun)
    g_private_set (&present, (gpointer) language);
  return scope;
}

void
ox_words_scope_end (OxWordsScope *scope)
{
  if (scope->begun)
    g_private_set (&present, (gpointer) scope->outer);
  scope->begun = FALSE;
}

const OxLanguage *
ox_words_language (void)
{
  return g_private_get (&present);
}

static const char *
look_up (const OxLanguage *language, const char *key, guint form)
{
  return language->catalogue != NULL ? ox_catalogue_lookup (language->catalogue, key, form) : NULL;
}

const char *
ox_words (const char *text)
{
  const OxLanguage *language = g_private_get (&present);
  if (text[0] == '\0') /* gettext answers with its header */
    return text;
  if (language == NULL)
    return g_dgettext (GETTEXT_PACKAGE, text);
  const char *found = look_up (language, text, 0);
  return found != NULL ? found : text;
}

const char *
ox_words_in (const char *context, const char *text)
{
  const OxLanguage *language = g_private_get (&present);
  if (language == NULL)
    return g_dpgettext2 (GETTEXT_PACKAGE, context, text);
  g_autofree char *key = g_strconcat (context, "\004", text, NULL);
  const char *found = look_up (language, key, 0);
  return found != NULL ? found : text;
}

const char *
ox_words_count (const char *one, const char *many, gulong n)
{
  const OxLanguage *language = g_private_get (&present);
  if (language == NULL)
    return g_dngettext (GETTEXT_PACKAGE, one, many, n);
  /* All languages above have two forms, one for 1 and one for the rest; the tests see to it that their catalogues say
   * so. */
  const char *found = look_up (language, one, n == 1 ? 0 : 1);
  return found != NULL ? found : n == 1 ? one : many;
}

const char *
ox_words_decimal (void)
{
  const OxLanguage *language = g_private_get (&present);
  if (language != NULL)
    return language->decimal;
  /* Translators: the decimal sign, "." or "," */
  return g_str_equal (C_ ("decimal sign", "."), ",") ? "," : ".";
}

char *
ox_words_number (double value, guint decimals)
{
  char *text = ox_number_text (value, decimals);
  char *point = strchr (text, '.');
  if (point != NULL)
    *point = *ox_words_decimal ();
  return text;
}

/* names_clause: whether the number at @number, of @length letters, is that of a clause: a capital stands in or behind
 * it, or the word before it says so */
static gboolean
names_clause (const char *text, const char *number, gsize length)
{
  static const char *const words[] = { "Table ", "Article ", "Part ", "CFR ", "doi " };
  if (g_ascii_isupper (number[length]))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize n = strlen (words[i]);
      if ((gsize) (number - text) >= n && strncmp (number - n, words[i], n) == 0)
        return TRUE;
    }
  return FALSE;
}

char *
ox_words_localise (const char *text)
{
  char *out = g_strdup (text), *p = out;
  while (*p != '\0')
    {
      gsize length = strspn (p, "0123456789.");
      char *point = length > 0 ? memchr (p, '.', length) : NULL;
      /* One point with figures on both sides, and neither a date nor the end of a sentence. */
      if (point != NULL && point > p && point + 1 < p + length
          && memchr (point + 1, '.', (gsize) (p + length - point - 1)) == NULL && !names_clause (out, p, length))
        *point = *ox_words_decimal ();
      p += MAX (length, 1);
    }
  return out;
}
