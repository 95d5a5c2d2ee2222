/* Oxturn: app/panels/docket - the quantities of the job, always in sight, and how far planning is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_DOCKET (ox_docket_get_type ())
G_DECLARE_FINAL_TYPE (OxDocket, ox_docket, OX, DOCKET, GtkWidget)

GtkWidget *ox_docket_new (OxSession *session) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
