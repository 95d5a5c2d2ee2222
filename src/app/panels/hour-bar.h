/* Oxturn: app/panels/hour-bar - labour hours as a bar: strips, moves, edge work, and where the ideal lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_HOUR_BAR (ox_hour_bar_get_type ())
G_DECLARE_FINAL_TYPE (OxHourBar, ox_hour_bar, OX, HOUR_BAR, GtkWidget)

GtkWidget *ox_hour_bar_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_hour_bar_set: hours, each 0 or more; all 0 shows an empty bar */
void ox_hour_bar_set (OxHourBar *bar, double strips, double moves, double edge_work, double ideal);

G_END_DECLS
