/* Oxturn: app/dialogs/figures - figures of a struct as rows of a form, from a table.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/rows.h"
G_BEGIN_DECLS

typedef struct
{
  const char *label;  /* untranslated, with its unit and a mnemonic */
  gsize offset;       /* of the double in the struct */
  guint decimals;     /* shown */
  OxFieldRange range;
} OxFigureRow;

/* ox_figures_add: rows with the figures of @values; @fields: (out): @n of them */
void ox_figures_add (GtkGrid *rows, const OxFigureRow *table, guint n, gconstpointer values, OxField **fields);

/* ox_figures_show: other figures in the same fields */
void ox_figures_show (const OxFigureRow *table, guint n, OxField *const *fields, gconstpointer values);

/* ox_figures_read: what stands in the fields, into @values; what is out of range leaves its figure as it was */
void ox_figures_read (const OxFigureRow *table, guint n, OxField *const *fields, gpointer values);

G_END_DECLS
