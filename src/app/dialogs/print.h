/* Oxturn: app/dialogs/print - sheets onto a printer, at true scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/page.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_print:
 * @export_path: (nullable): writes what would be printed as a PDF instead of asking for a printer
 *
 * One page of the set is one page of paper of the same size; nothing is scaled to fit. The printer is set as it was for the last print. */
gboolean ox_print (GtkWindow *parent, const OxPageSet *set, const char *export_path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
