/* Oxturn: app/dialogs/revisions - the table of revisions of the drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_revisions_open: its lines, as one edit; the last one added becomes the revision of the drawing. Returns: (transfer none) */
GtkWindow *ox_revisions_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
