/* Oxturn: app/field - an entry for one value: a length, a number or a text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is typed is taken with Enter or when the field is left; Escape brings the old value back. A text that is no value stays where it
 * is, marked, until it is mended.
 */
#pragma once
#include "base/units.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_FIELD (ox_field_get_type ())
G_DECLARE_FINAL_TYPE (OxField, ox_field, OX, FIELD, GtkEntry)

typedef enum { OX_FIELD_TEXT, OX_FIELD_LENGTH, OX_FIELD_NUMBER } OxFieldKind;

/* ox_field_new:
 * @name: translated; the accessible name
 *
 * Signal "commit" (): another value than the one that was set is there; the handler reads it and makes an edit, or refuses it. */
GtkWidget *ox_field_new (OxFieldKind kind, const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* Setting shows a value without a signal; what somebody is typing in this moment is left alone. */
void ox_field_set_text (OxField *field, const char *text);
void ox_field_set_length (OxField *field, OxUnits units, double metres);
void ox_field_set_number (OxField *field, double value, guint decimals);

/* What a value must lie within; both ends are allowed unless @above is TRUE, then @least must be exceeded. */
typedef struct
{
  double least;
  gboolean above;
  double most;
} OxFieldRange;

/* ox_field_set_range: a value beyond @range is refused with what was typed and what is allowed */
void ox_field_set_range (OxField *field, const OxFieldRange *range);

/* ox_field_set_name: another accessible name, with which refusals begin */
void ox_field_set_name (OxField *field, const char *name);

/* ox_field_peek: @out: (out): the value that stands there now, committed or not. Returns: FALSE when it is none, or beyond the range */
gboolean ox_field_peek (OxField *field, double *out);

/* ox_field_find_complaint: (nullable): why what stands there was refused */
const char *ox_field_find_complaint (OxField *field);

const char *ox_field_get_text (OxField *field);
double ox_field_get_value (OxField *field); /* length in metres, or number, as committed last */

/* ox_field_refuse: marks the value as one that cannot be, and says why (a translated sentence) */
void ox_field_refuse (OxField *field, const char *why);

G_END_DECLS
