/* Oxturn: app/caution-box - the cautions for one place of the window.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "estimate/cautions.h"

#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_caution_box_new: @where: as in estimate/cautions.h: "drops", "supply" ...; each caution with the kind of rule that it rests on */
GtkWidget *ox_caution_box_new (const char *where) G_GNUC_WARN_UNUSED_RESULT;

/* ox_caution_line_new: one of them by itself */
GtkWidget *ox_caution_line_new (const OxCaution *caution) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
