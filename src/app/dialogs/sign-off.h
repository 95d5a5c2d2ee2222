/* Oxturn: app/dialogs/sign-off - who signed the scope drawing, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_sign_off_open: notes down a signature under the present revision, or corrects one. Returns: (transfer none) */
GtkWindow *ox_sign_off_open (GtkWindow *parent, OxSession *session);

/* ox_sign_off_words: whether the present revision of @job is signed, in a sentence; (transfer full) */
char *ox_sign_off_words (const OxJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
