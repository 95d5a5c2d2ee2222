/* Oxturn: estimate/basis
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/basis.h"
#include <string.h>
#include "base/number.h"
#include "base/words.h"

#define CSP_MOST 10

double
ox_basis (const char *id)
{
  return ox_defaults_get (id)->value;
}

char *
ox_basis_unit (const char *unit)
{
  g_autoptr (GString) text = g_string_new (unit);
  g_string_replace (text, "m2", "m\xc2\xb2", 0);
  g_string_replace (text, "m3", "m\xc2\xb3", 0);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
ox_basis_note (const char *id)
{
  const OxDefault *row = ox_defaults_get (id);
  g_autofree char *value = ox_number_text (row->value, 4);
  g_autofree char *unit = g_str_equal (row->unit, "1") ? g_strdup ("") : ox_basis_unit (row->unit);
  return g_strdup_printf ("%s%s%s (%s)", value, *unit != '\0' ? " " : "", unit, _ (row->source));
}

/* Takes the next whole number from 1 to 10; 0 when there is none. */
static int
next_step (const char **at)
{
  const char *c = *at;
  while (*c != '\0' && !g_ascii_isdigit (*c))
    c++;
  int value = 0;
  for (; g_ascii_isdigit (*c) && value <= CSP_MOST; c++)
    value = value * 10 + (*c - '0');
  *at = c;
  return value <= CSP_MOST ? value : 0;
}

gboolean
ox_basis_csp (const char *profile, int *low, int *high)
{
  g_autofree char *upper = g_ascii_strup (profile, -1);
  const char *at = strstr (upper, "CSP");
  if (at == NULL)
    return FALSE;
  int first = next_step (&at), second = next_step (&at);
  if (first == 0)
    return FALSE;
  *low = second > 0 ? MIN (first, second) : first;
  *high = MAX (first, second);
  return TRUE;
}

gboolean
ox_basis_csp_asked (const OxJob *job, int *least, int *most)
{
  int low, high;
  *least = G_MAXINT;
  *most = 0;
  for (guint i = 0; i < job->n_rooms; i++)
    if (ox_basis_csp (job->rooms[i]->profile, &low, &high))
      {
        *least = MIN (*least, low);
        *most = MAX (*most, low);
      }
  if (*most > 0)
    return TRUE;
  *least = *most = (int) ox_basis ("csp-usual");
  return FALSE;
}
