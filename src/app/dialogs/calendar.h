/* Oxturn: app/dialogs/calendar - the working days, the shift and what it is made of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "session/session.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

/* ox_calendar_open: the job's calendar to be changed, as one edit. Returns: (transfer none) */
GtkWindow *ox_calendar_open (GtkWindow *parent, OxSession *session);

G_END_DECLS
