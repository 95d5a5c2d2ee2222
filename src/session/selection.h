/* Oxturn: session/selection - what a selected id may name.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A selection is a NULL-ended array of item ids ("R1", "O3"). A side of a room is selected as "R1#2": side number 2, from 0.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* ox_selection_item: id of the item, without the side; (transfer full) */
char *ox_selection_item (const char *entry) G_GNUC_WARN_UNUSED_RESULT;

/* ox_selection_side: number of the side, -1 when the whole item is selected */
int ox_selection_side (const char *entry);

/* ox_selection_of_side: "R1#2"; (transfer full) */
char *ox_selection_of_side (const char *room_id, guint side) G_GNUC_WARN_UNUSED_RESULT;

/* ox_selection_items: ids of the items that are selected as a whole; (transfer full): NULL-ended, may be empty */
char **ox_selection_items (const char *const *selection) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
