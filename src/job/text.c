/* Oxturn: job/text - texts as they may stand in a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/text.h"
#include <string.h>

#define ID_MAX 64

static gboolean
is_xml_char (gunichar c)
{
  return c == '\t' || c == '\n' || (c >= 0x20 && c != 0x7f && c != 0xfffe && c != 0xffff);
}

char *
ox_text_clean (const char *text, gboolean lines)
{
  g_autofree char *valid = g_utf8_make_valid (text ? text : "", -1);
  g_autoptr (GString) clean = g_string_sized_new (strlen (valid));
  for (const char *p = valid; *p; p = g_utf8_next_char (p))
    {
      if (clean->len + (gsize) (g_utf8_next_char (p) - p) > OX_TEXT_MOST)
        break;
      gunichar c = g_utf8_get_char (p);
      if (c == '\r')
        {
          if (p[1] == '\n')
            continue;
          c = '\n';
        }
      if (!is_xml_char (c) || (c == '\n' && !lines))
        c = ' ';
      g_string_append_unichar (clean, c);
    }
  return g_string_free (g_steal_pointer (&clean), FALSE);
}

gboolean
ox_text_is_id (const char *text)
{
  if (!text || !g_ascii_isalpha (text[0]))
    return FALSE;
  gsize n = strspn (text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");
  return n <= ID_MAX && text[n] == '\0';
}

gboolean
ox_text_is_date (const char *text)
{
  if (!*text)
    return TRUE;
  if (strlen (text) != 10 || strspn (text, "0123456789-") != 10 || text[4] != '-' || text[7] != '-')
    return FALSE;
  for (guint i = 0; i < 10; i++)
    if (i != 4 && i != 7 && !g_ascii_isdigit (text[i]))
      return FALSE;
  guint year = (guint) g_ascii_strtoull (text, NULL, 10);
  guint month = (guint) g_ascii_strtoull (text + 5, NULL, 10);
  guint day = (guint) g_ascii_strtoull (text + 8, NULL, 10);
  return g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year);
}

gboolean
ox_text_read_clock (const char *text, guint first, guint last, guint *minutes)
{
  gsize digits = strspn (text, "0123456789");
  if (digits < 1 || digits > 2 || text[digits] != ':' || strspn (text + digits + 1, "0123456789") != 2
      || text[digits + 3] != '\0')
    return FALSE;
  guint hour = (guint) g_ascii_strtoull (text, NULL, 10),
        minute = (guint) g_ascii_strtoull (text + digits + 1, NULL, 10);
  if (hour < first || hour > last || minute > 59)
    return FALSE;
  *minutes = hour * 60 + minute;
  return TRUE;
}
