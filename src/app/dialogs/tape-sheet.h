/* Oxturn: app/dialogs/tape-sheet - an outline written down as a survey reads, and seen before it is drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/dialogs/choose-file.h"
#include "session/session.h"
G_BEGIN_DECLS

/* ox_tape_sheet_open: lengths and directions, or corners by x and y, typed or read from a file; closing error and outline are shown at once.
 * @choose: asks for a file. Returns: (transfer none) */
GtkWindow *ox_tape_sheet_open (GtkWindow *parent, OxSession *session, OxChooseFile choose);

/* ox_tape_sheet_set_text: as if it had been typed */
void ox_tape_sheet_set_text (GtkWindow *window, const char *text);

G_END_DECLS
