/* Oxturn: tests/fuzz/mutate - texts spoiled by chance, and made small again where they show something.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* mutate_text:
 * @other: another text of the same kind, to take lines and numbers from
 *
 * One to four changes: numbers moved by a hair, taken from elsewhere or made extreme; lines left out, doubled, exchanged or taken over;
 * more seldom bytes.
 * Returns: (transfer full): the same for the same state of @rand
 */
char *mutate_text (GRand *rand, const char *text, const char *other) G_GNUC_WARN_UNUSED_RESULT;

/* FALSE where @text does not show what it is about. */
typedef gboolean (*MutateShows) (const char *text, gpointer data);

/* mutate_shrink:
 * @text: one for which @shows is TRUE
 * @tries: how often @shows may be asked
 *
 * Leaves out lines, then what stands between commas, then decimals, as long as it still shows.
 * Returns: (transfer full)
 */
char *mutate_shrink (const char *text, MutateShows shows, gpointer data, guint tries) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
