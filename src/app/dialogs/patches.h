/* Oxturn: app/dialogs/patches - the test patches of the job, and the walking speed for a wanted depth.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_patches_open:
 *
 * Patches are added, changed and removed; fit, spread and the speed for a wanted depth follow what is typed. All of it, the new travel
 * speed where it is asked for included, is one edit. Returns: (transfer none) */
GtkWindow *ox_patches_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
