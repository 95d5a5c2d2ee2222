/* Oxturn: file/csv - rows of comma-separated values after RFC 4180.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/csv.h"
#include <string.h>
#include "base/number.h"

OxCsv
ox_csv_start (const char *header)
{
  OxCsv csv = { g_string_new (header), TRUE };
  ox_csv_row (&csv);
  return csv;
}

static void
next_field (OxCsv *csv)
{
  if (csv->begun)
    g_string_append_c (csv->text, ',');
  csv->begun = TRUE;
}

void
ox_csv_quoted (OxCsv *csv, const char *text)
{
  next_field (csv);
  g_string_append_c (csv->text, '"');
  for (const char *p = text; *p; p++)
    {
      if (*p == '"')
        g_string_append_c (csv->text, '"');
      g_string_append_c (csv->text, *p);
    }
  g_string_append_c (csv->text, '"');
}

void
ox_csv_text (OxCsv *csv, const char *text)
{
  if (strpbrk (text, ",\"\r\n"))
    {
      ox_csv_quoted (csv, text);
      return;
    }
  next_field (csv);
  g_string_append (csv->text, text);
}

void
ox_csv_count (OxCsv *csv, guint count)
{
  next_field (csv);
  g_string_append_printf (csv->text, "%u", count);
}

void
ox_csv_number (OxCsv *csv, double value, guint decimals)
{
  next_field (csv);
  ox_number_append (csv->text, value, decimals);
}

void
ox_csv_point (OxCsv *csv, OxPoint p)
{
  ox_csv_number (csv, p.x, 4);
  ox_csv_number (csv, p.y, 4);
}

void
ox_csv_empty (OxCsv *csv)
{
  next_field (csv);
}

void
ox_csv_row (OxCsv *csv)
{
  g_string_append (csv->text, "\r\n");
  csv->begun = FALSE;
}

char *
ox_csv_end (OxCsv *csv)
{
  return g_string_free (g_steal_pointer (&csv->text), FALSE);
}
