/* Oxturn: base/words - texts in the language of the person, or in that of the sheets that are being made.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What can appear on a sheet takes its texts from here and not from <glib/gi18n-lib.h>: all modules below file/ (src/LAYERS). Where no
 * sheet is being made, texts are those of gettext. Inside a scope they are those of the scope's language, in this thread only:
 *
 *      g_auto (OxWordsScope) scope = ox_words_scope (options->language);
 */
#pragma once
#include "base/catalogue.h"
G_BEGIN_DECLS

typedef struct
{
  const char *tag;              /* "es", "es_US": language, or language and territory */
  const char *name;             /* in the language itself, not translated */
  const OxCatalogue *catalogue; /* (nullable): NULL: the texts stay as they are written in the source, English */
  const char *decimal;          /* "." or "," */
  gboolean us_paper;            /* Letter and the like are usual there */
} OxLanguage;

/* --- The languages that sheets can have --- */
guint ox_language_get_count (void);
OxLanguage ox_language_get (guint i); /* i < count */

/* ox_language_find: @tag: "es", "es_US", "es-US", also with an encoding behind; a territory that is not listed is left out
 * Returns: FALSE when there is no such language */
gboolean ox_language_find (const char *tag, OxLanguage *out) G_GNUC_WARN_UNUSED_RESULT;

/* --- The language of this thread --- */
typedef struct
{
  const OxLanguage *outer; /* of the scope around this one */
  gboolean begun;
} OxWordsScope;

/* ox_words_scope: @language: (nullable): NULL changes nothing; it must outlive the scope */
OxWordsScope ox_words_scope (const OxLanguage *language) G_GNUC_WARN_UNUSED_RESULT;
void ox_words_scope_end (OxWordsScope *scope);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (OxWordsScope, ox_words_scope_end)

/* ox_words_language: (nullable): of the innermost scope, to begin one with it in another thread */
const OxLanguage *ox_words_language (void);

/* --- Texts; in @context where the same word needs two translations --- */
const char *ox_words (const char *text) G_GNUC_FORMAT (1);
const char *ox_words_in (const char *context, const char *text) G_GNUC_FORMAT (2);
const char *ox_words_count (const char *one, const char *many, gulong n) G_GNUC_FORMAT (1) G_GNUC_FORMAT (2);

/* ox_words_number: as ox_number_text(), with the decimal sign of the language: for people, never for files; (transfer full) */
char *ox_words_number (double value, guint decimals) G_GNUC_WARN_UNUSED_RESULT;

/* ox_words_decimal: the decimal sign, "." or "," */
const char *ox_words_decimal (void);

/* ox_words_localise: decimal points between figures become the decimal sign, except in numbers of standards and papers ("Table 400.5", "310.2R", "29 CFR 1926.52");
 * for texts made with printf, which knows the locale of the process only; (transfer full) */
char *ox_words_localise (const char *text) G_GNUC_WARN_UNUSED_RESULT;

#define _(text) ox_words (text)
#define N_(text) (text)
#define C_(context, text) ox_words_in (context, text)
#define NC_(context, text) (text)

G_END_DECLS
