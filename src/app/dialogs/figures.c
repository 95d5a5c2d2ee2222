/* Oxturn: app/dialogs/figures - figures of a struct as rows of a form, from a table.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/figures.h"

#include <glib/gi18n-lib.h>

void
ox_figures_show (const OxFigureRow *table, guint n, OxField *const *fields, gconstpointer values)
{
  for (guint i = 0; i < n; i++)
    ox_field_set_number (fields[i], *(const double *) (gconstpointer) ((const char *) values + table[i].offset),
                         table[i].decimals);
}

void
ox_figures_add (GtkGrid *rows, const OxFigureRow *table, guint n, gconstpointer values, OxField **fields)
{
  for (guint i = 0; i < n; i++)
    {
      fields[i] = ox_rows_add_field (rows, OX_FIELD_NUMBER, _ (table[i].label));
      ox_field_set_range (fields[i], &table[i].range);
    }
  ox_figures_show (table, n, fields, values);
}

void
ox_figures_read (const OxFigureRow *table, guint n, OxField *const *fields, gpointer values)
{
  for (guint i = 0; i < n; i++)
    ox_field_peek (fields[i], (double *) (gpointer) ((char *) values + table[i].offset));
}
