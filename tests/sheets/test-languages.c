/* Oxturn: sheets in other languages than the source's: everything is translated, and longer texts are not clipped.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/sheets.h"
#include "sheets/hall.h"
#include "support/ox-test.h"
#include <string.h>

static OxJob *job;
static OxPlan *plan;

static OxPageSet *
make (const char *paper, const OxLanguage *language)
{
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = paper != NULL ? ox_paper_find (paper) : NULL;
  options.language = language;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static void
append_word (GByteArray *bytes, gsize word)
{
  guint32 little = GUINT32_TO_LE ((guint32) word);
  g_byte_array_append (bytes, (const guint8 *) &little, sizeof little);
}

/* lengthened: 40 % longer in letters, with blanks no further apart than in German */
static char *
lengthened (const char *text)
{
  g_autoptr (GString) longer = g_string_new (text);
  glong n = g_utf8_strlen (text, -1);
  for (glong i = 0; text[0] != '\0' && i < (n * 2 + 4) / 5; i++)
    g_string_append_c (longer, i % 8 == 0 && n > 8 ? ' ' : 'n');
  return g_string_free (g_steal_pointer (&longer), FALSE);
}

/* branded: with a letter of no language here behind each word, format signs left alone */
static char *
branded (const char *text)
{
  g_autoptr (GRegex) word = g_regex_new ("(?<![%a-zA-Z0-9.])[a-zA-Z]{3,}", 0, 0, NULL);
  return g_regex_replace (word, text, -1, 0, "\\0\xc5\x8b", 0, NULL);
}

/* pseudo_catalogue: all texts of the German catalogue, changed instead of translated, as a .mo file */
static GByteArray *
pseudo_catalogue (const OxCatalogue *model, char *(*change) (const char *) )
{
  guint32 head[5];
  memcpy (head, model->data, sizeof head);
  guint n = GUINT32_FROM_LE (head[2]), table = GUINT32_FROM_LE (head[3]);
  GByteArray *out = g_byte_array_new ();
  g_autoptr (GByteArray) texts = g_byte_array_new ();
  gsize base = 28 + 16 * (gsize) n;
  const guint32 fixed[7] = { 0x950412de, 0, n, 28, 28 + 8 * n, 0, 0 };
  for (guint i = 0; i < G_N_ELEMENTS (fixed); i++)
    append_word (out, fixed[i]);
  for (int half = 0; half < 2; half++)
    for (guint i = 0; i < n; i++)
      {
        guint32 at;
        memcpy (&at, model->data + table + 8 * i + 4, sizeof at);
        const char *key = (const char *) model->data + GUINT32_FROM_LE (at), *bare = strchr (key, '\004');
        g_autofree char *longer = change (bare != NULL ? bare + 1 : key);
        const char *text = half == 0 ? key : longer;
        gsize length = strlen (text);
        append_word (out, half == 0 ? length : 2 * length + 1);
        append_word (out, base + texts->len);
        /* Both forms of a plural alike. */
        g_byte_array_append (texts, (const guint8 *) text, (guint) length + 1);
        if (half == 1)
          g_byte_array_append (texts, (const guint8 *) text, (guint) length + 1);
      }
  g_byte_array_append (out, texts->data, texts->len);
  return out;
}

static void
assert_whole (const OxPage *page)
{
  const OxDrawing *drawing = page->drawing;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_TEXT)
        continue;
      if (strstr (element->text.text, "\xe2\x80\xa6") != NULL)
        g_test_message ("\"%s\" is cut off in layer %s of %s", element->text.text, drawing->layers[element->layer].id,
                        page->title);
      g_assert_null (strstr (element->text.text, "\xe2\x80\xa6"));
      OxPoint corners[4];
      ox_element_text_corners (element, 1, corners);
      for (int k = 0; k < 4; k++)
        g_assert_true (corners[k].x > 5 && corners[k].y > 2 && corners[k].x < page->width_mm - 2
                       && corners[k].y < page->height_mm - 2);
    }
  ox_test_no_texts_overlap (drawing, 1);
}

static void
test_longer (void)
{
  static const char *const papers[] = { "A4", "Letter", "A3", "A1" };
  OxLanguage language;
  g_assert_true (ox_language_find ("de", &language));
  g_autoptr (GByteArray) bytes = pseudo_catalogue (language.catalogue, lengthened);
  const OxCatalogue catalogue = { "longer", bytes->data, bytes->len };
  language.catalogue = &catalogue;
  g_autofree char *longer = lengthened ("Turnaround zone");
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autoptr (OxPageSet) set = make (papers[i], &language);
      g_assert_cmpstr (ox_catalogue_lookup (&catalogue, "Turnaround zone", 0), ==, longer);
      for (guint k = 0; k < set->n_pages; k++)
        assert_whole (&set->pages[k]);
    }
}

static void
test_every_language (void)
{
  for (guint i = 0; i < ox_language_get_count (); i++)
    {
      OxLanguage language = ox_language_get (i);
      g_autoptr (OxPageSet) small = make (language.us_paper ? "Letter" : "A4", &language);
      for (guint k = 0; k < small->n_pages; k++)
        assert_whole (&small->pages[k]);
      g_autoptr (OxPageSet) usual = make (NULL, &language);
      ox_test_near (usual->pages[0].width_mm, language.us_paper ? 17 * 25.4 : 420, 1e-9);
    }
}

/* No text that the sheets have of their own stays English, and quantities have a comma. */
static void
test_nothing_stays (void)
{
  OxLanguage german;
  g_assert_true (ox_language_find ("de", &german));
  g_autoptr (OxPageSet) set = make ("A3", &german);
  guint commas = 0;
  for (guint k = 0; k < set->n_pages; k++)
    {
      const OxDrawing *drawing = set->pages[k].drawing;
      g_assert_null (strstr (set->pages[k].title, "drawing"));
      for (guint i = 0; i < drawing->n_elements; i++)
        if (drawing->elements[i].kind == OX_ELEMENT_TEXT)
          {
            const char *text = drawing->elements[i].text.text;
            /* Sources of figures, in the tables of what the plan takes, stay as they are written. */
            if (strcmp (set->pages[k].title, "Listen") != 0)
              g_assert_null (strstr (text, "strip"));
            g_assert_null (strstr (text, "Edge work"));
            g_assert_false (g_regex_match_simple ("^-?[0-9]+\\.[0-9]+( [^ ]+)?$", text, 0, 0));
            commas += g_regex_match_simple ("[0-9],[0-9]", text, 0, 0);
          }
    }
  g_assert_cmpuint (commas, >, 20);
}

/* own_words: what the job itself says, which stays in its own language: all texts, names and labels, in one string */
static char *
own_words (void)
{
  GString *own = g_string_new ("m/min CSP AWG");
  const OxTexts *texts = job->texts;
  const char *const said[]
      = { texts->title,    texts->client, texts->site,   texts->author, texts->company,    texts->number,
          texts->revision, texts->date,   texts->status, texts->notes,  job->machine->name };
  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    g_string_append_printf (own, " %s", said[i]);
  for (guint i = 0; i < job->n_rooms; i++)
    g_string_append_printf (own, " %s %s", job->rooms[i]->name, job->rooms[i]->profile);
  for (guint i = 0; i < job->n_stations; i++)
    g_string_append_printf (own, " %s", job->stations[i]->name);
  for (guint i = 0; i < job->n_excluded; i++)
    g_string_append_printf (own, " %s", job->excluded[i]->name);
  return g_string_free (own, FALSE);
}

/* Every word on every sheet has gone through the catalogue, or is the job's own. */
static void
test_every_word_is_translated (void)
{
  OxLanguage language;
  g_assert_true (ox_language_find ("de", &language));
  g_autoptr (GByteArray) bytes = pseudo_catalogue (language.catalogue, branded);
  const OxCatalogue catalogue = { "branded", bytes->data, bytes->len };
  language.catalogue = &catalogue;
  g_autofree char *own = own_words ();
  g_autoptr (GRegex) word = g_regex_new ("(?<![a-zA-Z0-9])[a-zA-Z]{3,}(?![a-zA-Z0-9\\x{14b}])", 0, 0, NULL);
  g_autoptr (OxPageSet) set = make ("A3", &language);
  guint missing = 0;
  for (guint p = 0; p < set->n_pages; p++)
    for (guint i = 0; i < set->pages[p].drawing->n_elements; i++)
      {
        const OxElement *element = &set->pages[p].drawing->elements[i];
        g_autoptr (GMatchInfo) match = NULL;
        if (element->kind != OX_ELEMENT_TEXT)
          continue;
        for (g_regex_match (word, element->text.text, 0, &match); g_match_info_matches (match);
             g_match_info_next (match, NULL))
          {
            g_autofree char *found = g_match_info_fetch (match, 0);
            if (strstr (own, found) != NULL)
              continue;
            g_test_message ("\"%s\" in \"%s\" on page %u stays untranslated", found, element->text.text, p + 1);
            missing++;
          }
      }
  g_assert_cmpuint (missing, ==, 0);
}

/* is_word: whether it stands whole in a text, no letter before or behind it */
static gboolean
is_word (const char *text, const char *word)
{
  for (const char *p = text; (p = strstr (p, word)) != NULL; p += strlen (word))
    if ((p == text || !g_unichar_isalpha (g_utf8_get_char (g_utf8_prev_char (p))))
        && !g_unichar_isalpha (g_utf8_get_char (p + strlen (word))))
      return TRUE;
  return FALSE;
}

/* all_texts: keys and translations of a catalogue, one a line */
static char *
all_texts (const OxCatalogue *catalogue)
{
  g_autofree char *texts = g_malloc (catalogue->length + 1);
  memcpy (texts, catalogue->data, catalogue->length);
  for (gsize i = 0; i < catalogue->length; i++)
    if (texts[i] == '\0' || (guchar) texts[i] < ' ')
      texts[i] = '\n';
  texts[catalogue->length] = '\0';
  return g_utf8_make_valid (texts, -1);
}

/* No word is broken where a column is narrow: each that stands on a sheet stands like that in the catalogue, or is the
 * job's own. */
static void
test_no_word_is_broken (void)
{
  static const char *const papers[] = { "A4", "A3", "A1" }, *const tags[] = { "de", "es" };
  g_autofree char *own = own_words ();
  g_autoptr (GRegex) pattern = g_regex_new ("(?<![\\p{L}0-9])\\p{L}{3,}(?![\\p{L}0-9])", 0, 0, NULL);
  guint broken = 0;
  for (guint l = 0; l < G_N_ELEMENTS (tags); l++)
    for (guint p = 0; p < G_N_ELEMENTS (papers); p++)
      {
        OxLanguage language;
        g_assert_true (ox_language_find (tags[l], &language));
        g_autofree char *known = all_texts (language.catalogue);
        g_autoptr (OxPageSet) set = make (papers[p], &language);
        for (guint k = 0; k < set->n_pages; k++)
          for (guint i = 0; i < set->pages[k].drawing->n_elements; i++)
            {
              const OxElement *element = &set->pages[k].drawing->elements[i];
              g_autoptr (GMatchInfo) match = NULL;
              if (element->kind != OX_ELEMENT_TEXT)
                continue;
              for (g_regex_match (pattern, element->text.text, 0, &match); g_match_info_matches (match);
                   g_match_info_next (match, NULL))
                {
                  g_autofree char *found = g_match_info_fetch (match, 0);
                  if (is_word (known, found) || is_word (own, found))
                    continue;
                  g_test_message ("%s, %s, page %u: \"%s\" in \"%s\"", tags[l], papers[p], k + 1, found,
                                  element->text.text);
                  broken++;
                }
            }
      }
  g_assert_cmpuint (broken, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  job = ox_test_hall (OX_UNITS_METRES);
  plan = ox_test_plan (job);
  g_test_add_func ("/sheets/languages/forty-percent-longer-texts-stay-whole", test_longer);
  g_test_add_func ("/sheets/languages/every-language-stays-whole", test_every_language);
  g_test_add_func ("/sheets/languages/nothing-stays-untranslated", test_nothing_stays);
  g_test_add_func ("/sheets/languages/every-word-is-translated", test_every_word_is_translated);
  g_test_add_func ("/sheets/languages/no-word-is-broken", test_no_word_is_broken);
  int status = g_test_run ();
  ox_plan_unref (plan);
  ox_job_unref (job);
  return status;
}
