/* Oxturn: base/share - work shared out over the processors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Results must go by the number of the piece of work, never by which was done first: then they are the same on any number of threads.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* OxShareFunc: does piece @i; pieces run at the same time and share nothing that any of them changes */
typedef void (*OxShareFunc) (guint i, gpointer data);

/* ox_share:
 * Calls @func for each piece 0 to @n - 1 and returns when all are done. The caller works too; a piece may share out its own work, which then
 * takes what threads are left. Texts are made in the language of the caller's scope (base/words.h); whether to stop
 * is asked of its run (base/stop.h).
 */
void ox_share (guint n, OxShareFunc func, gpointer data);

/* ox_share_set_threads: how many threads work at most in the whole program; 0, as at first: as many as there are processors */
void ox_share_set_threads (guint threads);

G_END_DECLS
