/* Oxturn: file/csv - rows of comma-separated values after RFC 4180: CRLF, quotes where they are needed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
#include "geometry/point.h"
G_BEGIN_DECLS

typedef struct
{
  GString *text;  /* all rows so far */
  gboolean begun; /* whether the present row has a field */
} OxCsv;

/* ox_csv_start: a table with the names of its columns as first row, written as they stand; ends with ox_csv_end() */
OxCsv ox_csv_start (const char *header);
void ox_csv_text (OxCsv *csv, const char *text);   /* quoted where it holds a comma, a quote or a line break */
void ox_csv_quoted (OxCsv *csv, const char *text); /* always quoted: WKT */
void ox_csv_count (OxCsv *csv, guint count);
void ox_csv_number (OxCsv *csv, double value, guint decimals);
void ox_csv_point (OxCsv *csv, OxPoint p); /* two fields, on OX_GRID */
void ox_csv_empty (OxCsv *csv);
void ox_csv_row (OxCsv *csv);              /* ends the row */
char *ox_csv_end (OxCsv *csv) G_GNUC_WARN_UNUSED_RESULT; /* (transfer full) */

G_END_DECLS
