/* Oxturn: base/shown - what somebody typed, short enough to be shown in a message.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/shown.h"
#include <string.h>

OxShown
ox_shown (const char *text)
{
  OxShown shown = { "" };
  gsize most = text ? strnlen (text, sizeof shown.text) : 0;
  /* The bytes looked at may end within a character, but not within one that is shown. */
  g_autofree char *valid = g_utf8_make_valid (text ? text : "", (gssize) most);
  const char *end = valid;
  for (guint i = 0; i < OX_SHOWN_MOST && *end; i++)
    end = g_utf8_next_char (end);
  memcpy (shown.text, valid, (gsize) (end - valid));
  if (*end)
    strcpy (shown.text + (end - valid), "…");
  return shown;
}
