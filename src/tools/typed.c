/* Oxturn: tools/typed - lengths and angles typed while something is drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/typed.h"

#include "base/number.h"

#include <math.h>
#include <string.h>

gboolean
ox_typed_is_empty (const OxTyped *typed)
{
  return typed->text[0][0] == '\0' && typed->text[1][0] == '\0';
}

/* "6.35", "6,35", "12'-6 1/2\"", "250 cm": digits and signs, and letters of units behind a digit. */
static gboolean
can_stand (const char *before, gunichar sign)
{
  if (sign >= 0x80 || sign == '\0')
    return FALSE;
  if (g_ascii_isdigit ((char) sign) || sign == '.' || sign == ',' || sign == '-')
    return TRUE;
  return before[0] != '\0' && strchr (" /'\"mcftin", (int) sign) != NULL;
}

gboolean
ox_typed_add (OxTyped *typed, gunichar sign)
{
  char *text = typed->text[typed->field];
  gsize length = strlen (text);

  if (!can_stand (text, sign) || length + 1 >= OX_TYPED_MAX)
    return FALSE;
  text[length] = (char) sign;
  text[length + 1] = '\0';
  return TRUE;
}

gboolean
ox_typed_back (OxTyped *typed)
{
  char *text = typed->text[typed->field];
  gsize length = strlen (text);

  if (length == 0)
    return FALSE;
  text[length - 1] = '\0';
  return TRUE;
}

void
ox_typed_next (OxTyped *typed)
{
  typed->field = (typed->field + 1) % OX_TYPED_FIELDS;
}

void
ox_typed_clear (OxTyped *typed)
{
  *typed = (OxTyped){ 0 };
}

gboolean
ox_typed_length (const OxTyped *typed, guint field, OxUnits units, double *out)
{
  double metres;

  if (!ox_units_length_parse (units, typed->text[field], &metres) || !(metres > 0))
    return FALSE;
  *out = metres;
  return TRUE;
}

gboolean
ox_typed_angle (const OxTyped *typed, guint field, double *out)
{
  g_autofree char *text = g_strdelimit (g_strdup (typed->text[field]), ",", '.');

  return ox_number_parse (text, out);
}
