/* Oxturn: app/dialogs/lines - a table in a form whose lines are added and removed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/field.h"
G_BEGIN_DECLS

#define OX_LINES_MOST_CELLS 4

typedef struct _OxLines OxLines;

/* Makes the cells of a new line. */
typedef void (*OxLinesMake) (GtkWidget **cells, gpointer data);

typedef struct
{
  const char *headings[OX_LINES_MOST_CELLS + 1]; /* translated, NULL-ended; also the names of the cells, with the number of their line */
  const char *add;                               /* translated, with a mnemonic: what the button for one more line says */
  guint most;                                    /* lines allowed */
  OxLinesMake make;
  void (*changed) (gpointer data); /* (nullable): a line came or went */
  gpointer data;
} OxLinesKind;

/* ox_lines_new: an empty table; owned by its widget. Returns: (transfer none) */
OxLines *ox_lines_new (const OxLinesKind *kind);
GtkWidget *ox_lines_get_widget (OxLines *lines);

/* ox_lines_add: one more line at the end. Returns: (transfer none): its cells; NULL when there are as many as are allowed */
GtkWidget **ox_lines_add (OxLines *lines);

guint ox_lines_get_count (const OxLines *lines); /* lines there are */
GtkWidget **ox_lines_get (const OxLines *lines, guint i); /* cells of one, (transfer none) */

G_END_DECLS
