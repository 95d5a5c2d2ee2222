/* Oxturn: tools/typed - lengths and angles typed while something is drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One or two fields; digits and signs go into the current one, Tab changes to the other, Backspace takes the last sign away.
 */
#pragma once
#include "base/units.h"
G_BEGIN_DECLS

#define OX_TYPED_FIELDS 2
#define OX_TYPED_MAX 24 /* bytes in a field, the ending NUL included */

typedef struct
{
  guint field; /* which one the keys go to */
  char text[OX_TYPED_FIELDS][OX_TYPED_MAX];
} OxTyped;

gboolean ox_typed_is_empty (const OxTyped *typed); /* nothing typed in any field */

/* ox_typed_add: appends @sign when it can stand in a number or a length; a unit's letter only behind something else
 * Returns: whether the key was taken */
gboolean ox_typed_add (OxTyped *typed, gunichar sign);

/* ox_typed_back: Returns: FALSE when there was nothing to take away */
gboolean ox_typed_back (OxTyped *typed);
void ox_typed_next (OxTyped *typed);
void ox_typed_clear (OxTyped *typed);

/* ox_typed_length: metres, > 0; ox_typed_angle: degrees
 * Returns: FALSE when the field is empty or says nothing of the kind; @out is untouched then */
gboolean ox_typed_length (const OxTyped *typed, guint field, OxUnits units, double *out);
gboolean ox_typed_angle (const OxTyped *typed, guint field, double *out);

G_END_DECLS
