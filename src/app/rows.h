/* Oxturn: app/rows - rows of name and widget in the side panel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/field.h"
G_BEGIN_DECLS

/* ox_without_mnemonic: @label as it is read out; (transfer full) */
char *ox_without_mnemonic (const char *label) G_GNUC_WARN_UNUSED_RESULT;

/* ox_rows_new: a grid for ox_rows_add() */
GtkWidget *ox_rows_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_rows_add: @name: translated, with a mnemonic where it has '_'; @widget gets it as label */
void ox_rows_add (GtkGrid *rows, const char *name, GtkWidget *widget);

/* ox_rows_add_wide: @widget over both columns */
void ox_rows_add_wide (GtkGrid *rows, GtkWidget *widget);

/* ox_rows_add_field: a new field in a new row; (transfer none) */
OxField *ox_rows_add_field (GtkGrid *rows, OxFieldKind kind, const char *name);

/* ox_rows_add_choice: a new drop-down of @choices (NULL-ended, translated) in a new row; (transfer none) */
GtkDropDown *ox_rows_add_choice (GtkGrid *rows, const char *name, const char *const *choices);

/* ox_rows_set_row_visible: shows or hides @field with its name */
void ox_rows_set_row_visible (GtkGrid *rows, OxField *field, gboolean visible);

/* ox_rows_widen_names: room for names of @chars in all rows, where there is more of it than in the side panel */
void ox_rows_widen_names (GtkGrid *rows, int chars);

/* ox_rows_add_csp: a choice of what profile was read: 0 not read, 1 to 10 the CSP; (transfer none) */
GtkDropDown *ox_rows_add_csp (GtkGrid *rows, const char *name);

/* ox_box_clear: takes out all that is in @box */
void ox_box_clear (GtkBox *box);

/* ox_heading_new: heading of a section of the side panel */
GtkWidget *ox_heading_new (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* ox_note_new: a wrapped paragraph of lesser weight */
GtkWidget *ox_note_new (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* ox_choice_select: @i in @choice without its "notify::selected" reaching @handler's data */
void ox_choice_select (GtkDropDown *choice, guint i, gpointer data);

G_END_DECLS
