/* Oxturn: app/panels/estimate-box - what the plan takes, figure by figure, and what to look out for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/canvas.h"
G_BEGIN_DECLS

/* ox_estimate_box_new: follows the session's plan while it is in sight */
GtkWidget *ox_estimate_box_new (OxSession *session, OxCanvas *canvas) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
