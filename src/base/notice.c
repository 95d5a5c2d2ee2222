/* Oxturn: base/notice - what a person must be told, kept in no language until it is shown.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The string is a text, the plural of it or nothing, and what is put in, parted by a sign that no text has.
 */
#include "base/notice.h"
#include "base/words.h"
#include <stdarg.h>
#include <string.h>

#define PART "\x1f"
#define FIRST_PUT 2

static void
append_rest (GString *notice, va_list args)
{
  for (const char *put = va_arg (args, const char *); put != NULL; put = va_arg (args, const char *))
    g_string_append_printf (notice, PART "%s", put);
}

char *
ox_notice_new (const char *text, ...)
{
  GString *notice = g_string_new (text);
  va_list args;
  va_start (args, text);
  g_string_append (notice, PART);
  append_rest (notice, args);
  va_end (args);
  return g_string_free (notice, FALSE);
}

char *
ox_notice_count (const char *one, const char *many, guint n, ...)
{
  GString *notice = g_string_new (one);
  va_list args;
  va_start (args, n);
  g_string_append_printf (notice, PART "%s" PART "%u", many, n);
  append_rest (notice, args);
  va_end (args);
  return g_string_free (notice, FALSE);
}

char *
ox_notice_text (const char *notice)
{
  g_auto (GStrv) parts = g_strsplit (notice, PART, -1);
  guint n = g_strv_length (parts), put = FIRST_PUT;
  if (n < FIRST_PUT)
    return g_strdup (notice);
  gulong count = n > FIRST_PUT && parts[1][0] != '\0' ? (gulong) g_ascii_strtoull (parts[FIRST_PUT], NULL, 10) : 0;
  const char *text = parts[1][0] != '\0' ? ox_words_count (parts[0], parts[1], count) : ox_words (parts[0]);
  GString *out = g_string_new (NULL);
  for (const char *p = text; *p != '\0'; p++)
    if (p[0] == '%' && (p[1] == 's' || p[1] == 'u') && put < n)
      {
        g_string_append (out, parts[put++]);
        p++;
      }
    else
      g_string_append_c (out, *p);
  return g_string_free (out, FALSE);
}
