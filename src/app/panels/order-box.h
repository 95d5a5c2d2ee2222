/* Oxturn: app/panels/order-box - the order of work as it goes by: where the machine is after so many hours.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
G_BEGIN_DECLS

/* ox_order_box_new: a switch that plays the work on @canvas, a slider over its hours and a line that says where the machine is; below
 * it everything in the plan as a list: a row brings its place into sight */
GtkWidget *ox_order_box_new (OxSession *session, OxCanvas *canvas) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
