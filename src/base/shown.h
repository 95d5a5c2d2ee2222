/* Oxturn: base/shown - what somebody typed, short enough to be shown in a message.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

#define OX_SHOWN_MOST 40 /* characters; what is wrong may be megabytes long */

typedef struct
{
  char text[4 * OX_SHOWN_MOST + 4]; /* UTF-8, NUL-ended */
} OxShown;

/* ox_shown: @text (nullable), cut after OX_SHOWN_MOST whole characters with "…" where there are more; what is no UTF-8 is replaced. To be used as an
 * argument, where it lives as long as the call: printf ("%s", ox_shown (text).text) */
OxShown ox_shown (const char *text);

G_END_DECLS
