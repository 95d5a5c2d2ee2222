/* Oxturn: app/dialogs/ask - questions and bad news, the only dialogs that interrupt.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_ASK_MAX_CHOICES 3

/* Answer 0 is always the one that changes nothing: it stands first, and Escape and closing the dialog mean it. */
typedef void (*OxAskDone) (guint answer, gpointer data);

typedef struct
{
  const char *title;                             /* translated question or statement */
  const char *text;                              /* translated: what it means and what can be done */
  const char *choices[OX_ASK_MAX_CHOICES + 1];   /* translated verbs with mnemonics, NULL-ended */
  int destroys;                                  /* index of a choice that loses work, -1 when none does; never the default */
} OxQuestion;

/* ox_ask: modal to @parent; @done (nullable) is called once, with the index of the choice. Returns: (transfer none) */
GtkWindow *ox_ask (GtkWindow *parent, const OxQuestion *question, OxAskDone done, gpointer data);

/* ox_ask_choose: gives the answer that a click on choice @i would give */
void ox_ask_choose (GtkWindow *dialog, guint i);

/* ox_tell_error: @what: translated, what could not be done; @error: why */
void ox_tell_error (GtkWindow *parent, const char *what, const GError *error);

G_END_DECLS
