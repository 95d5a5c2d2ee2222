/* Oxturn: base/number - numbers as text for files and tables, the same in every locale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/number.h"
#include <math.h>
#include <string.h>

/* Sign, the 309 digits of the largest double, point, 12 decimals, end mark. */
#define TEXT_SIZE 328

void
ox_number_append (GString *text, double value, guint decimals)
{
  g_return_if_fail (text != NULL && isfinite (value) && decimals <= 12);

  char format[8];
  char digits[TEXT_SIZE];
  g_snprintf (format, sizeof format, "%%.%uf", decimals);
  g_ascii_formatd (digits, sizeof digits, format, value);
  gsize length = strlen (digits);
  if (decimals > 0)
    {
      while (digits[length - 1] == '0')
        length--;
      if (digits[length - 1] == '.')
        length--;
    }
  gboolean negative_zero = length == 2 && digits[0] == '-' && digits[1] == '0';
  g_string_append_len (text, digits + negative_zero, (gssize) (length - negative_zero));
}

char *
ox_number_text (double value, guint decimals)
{
  g_autoptr (GString) text = g_string_new (NULL);
  ox_number_append (text, value, decimals);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static const char *
skip_digits (const char *s)
{
  while (g_ascii_isdigit (*s))
    s++;
  return s;
}

/* The end of the number at @s, or NULL. strtod() alone would also take names, hexadecimal and leading blanks. */
static const char *
scan_number (const char *s)
{
  if (*s == '-' || *s == '+')
    s++;
  const char *whole_end = skip_digits (s);
  gboolean has_digits = whole_end > s;
  s = whole_end;
  if (*s == '.')
    {
      const char *end = skip_digits (s + 1);
      has_digits = has_digits || end > s + 1;
      s = end;
    }
  if (!has_digits)
    return NULL;
  if (*s != 'e' && *s != 'E')
    return s;
  s++;
  if (*s == '-' || *s == '+')
    s++;
  const char *end = skip_digits (s);
  return end > s ? end : NULL;
}

gboolean
ox_number_parse (const char *text, double *out)
{
  g_return_val_if_fail (text != NULL && out != NULL, FALSE);

  const char *blanks = " \t\r\n";
  const char *start = text + strspn (text, blanks);
  const char *end = scan_number (start);
  if (!end || end[strspn (end, blanks)] != '\0')
    return FALSE;
  double value = g_ascii_strtod (start, NULL);
  if (!isfinite (value))
    return FALSE;
  *out = value;
  return TRUE;
}
