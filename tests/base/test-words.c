/* Oxturn: tests of base/words
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "base/units.h"
#include <string.h>

static void
test_find (void)
{
  OxLanguage language;
  g_assert_true (ox_language_find ("es", &language));
  g_assert_cmpstr (language.tag, ==, "es");
  g_assert_nonnull (language.catalogue);
  /* A territory with rules of its own, in all spellings; one without falls back to the language. */
  g_assert_true (ox_language_find ("es-us", &language));
  g_assert_cmpstr (language.tag, ==, "es_US");
  g_assert_true (language.us_paper);
  g_assert_true (ox_language_find ("de_AT.UTF-8@euro", &language));
  g_assert_cmpstr (language.tag, ==, "de");
  g_assert_false (ox_language_find ("", &language));
  g_assert_false (ox_language_find ("tlh", &language));
}

/* Every listed language is there with all that it needs. */
static void
test_all (void)
{
  for (guint i = 0; i < ox_language_get_count (); i++)
    {
      OxLanguage language = ox_language_get (i);
      g_assert_true (g_str_has_prefix (language.tag, "en") || language.catalogue != NULL);
      g_assert_true (strcmp (language.decimal, ".") == 0 || strcmp (language.decimal, ",") == 0);
      /* The rule of plural forms that ox_words_count() follows. */
      const char *header = language.catalogue ? ox_catalogue_lookup (language.catalogue, "", 0) : NULL;
      g_assert_true (!header || strstr (header, "Plural-Forms: nplurals=2; plural=(n != 1);") != NULL);
    }
}

static void
test_scope (void)
{
  OxLanguage spanish, english;
  g_assert_true (ox_language_find ("es", &spanish));
  g_assert_true (ox_language_find ("en", &english));
  g_assert_cmpstr (_ ("Total"), ==, "Total");
  {
    g_auto (OxWordsScope) outer = ox_words_scope (&spanish);
    g_assert_cmpstr (_ ("Strips"), ==, "Pasadas");
    g_assert_cmpstr (_ (""), ==, "");
    g_assert_cmpstr (_ ("no text of ours"), ==, "no text of ours");
    g_assert_cmpstr (C_ ("north, on a drawing", "N"), ==, "N");
    {
      g_auto (OxWordsScope) inner = ox_words_scope (&english);
      g_assert_cmpstr (_ ("Strips"), ==, "Strips");
    }
    {
      g_auto (OxWordsScope) same = ox_words_scope (NULL);
      g_assert_cmpstr (_ ("Strips"), ==, "Pasadas");
    }
    g_assert_cmpstr (_ ("Strips"), ==, "Pasadas");
  }
  g_assert_cmpstr (_ ("Strips"), ==, "Strips");
}

static gpointer
word_of_thread (gpointer data)
{
  return g_strdup (data ? _ ("Strips") : _ ("Lane"));
}

static void
test_thread (void)
{
  OxLanguage german;
  g_assert_true (ox_language_find ("de", &german));
  g_auto (OxWordsScope) scope = ox_words_scope (&german);
  g_autofree char *other = g_thread_join (g_thread_new ("other", word_of_thread, GINT_TO_POINTER (1)));
  g_assert_cmpstr (other, ==, "Strips");
  g_assert_cmpstr (_ ("Strips"), ==, "Bahnen");
}

static void
test_numbers (void)
{
  OxLanguage german, us;
  g_assert_true (ox_language_find ("de", &german));
  g_assert_true (ox_language_find ("es_US", &us));
  g_auto (OxWordsScope) outer = ox_words_scope (&german);
  g_autofree char *number = ox_words_number (-1234.5, 2);
  g_autofree char *length = ox_units_length_text (OX_UNITS_METRES, 12.5, TRUE);
  g_autofree char *area = ox_units_area_text (OX_UNITS_METRES, 3);
  g_autofree char *feet = ox_units_length_text (OX_UNITS_FEET, 0.3048, TRUE);
  g_assert_cmpstr (number, ==, "-1234,5");
  g_assert_cmpstr (length, ==, "12,50 m");
  g_assert_cmpstr (area, ==, "3,0 m²");
  g_assert_cmpstr (feet, ==, "1'-0\"");
  g_auto (OxWordsScope) inner = ox_words_scope (&us);
  g_autofree char *point = ox_words_number (0.25, 2);
  g_assert_cmpstr (point, ==, "0.25");
}

static void
test_decimal_signs_of_made_texts (void)
{
  OxLanguage german, english;
  g_assert_true (ox_language_find ("de", &german) && ox_language_find ("en", &english));
  const char *made = "6.0 m/min, factor 1.04; NFPA 70 Chapter 9 Table 8 and Table 400.5, ICRI 310.2R-2013. 2026.10.05 "
                     "3. 29 CFR 1926.52 doi 10.1093/x";
  {
    g_auto (OxWordsScope) scope = ox_words_scope (&german);
    g_autofree char *text = ox_words_localise (made);
    g_assert_cmpstr (text, ==,
                     "6,0 m/min, factor 1,04; NFPA 70 Chapter 9 Table 8 and Table 400.5, ICRI 310.2R-2013. 2026.10.05 "
                     "3. 29 CFR 1926.52 doi 10.1093/x");
  }
  g_auto (OxWordsScope) scope = ox_words_scope (&english);
  g_autofree char *same = ox_words_localise (made);
  g_assert_cmpstr (same, ==, made);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/words/language-is-found-by-its-tag", test_find);
  g_test_add_func ("/base/words/every-language-is-complete", test_all);
  g_test_add_func ("/base/words/texts-follow-the-scope", test_scope);
  g_test_add_func ("/base/words/another-thread-keeps-its-language", test_thread);
  g_test_add_func ("/base/words/numbers-have-the-language-s-sign", test_numbers);
  g_test_add_func ("/base/words/made-texts-have-the-language-s-sign", test_decimal_signs_of_made_texts);
  return g_test_run ();
}
