/* Oxturn: session/selection - what a selected id may name.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/selection.h"

#include <string.h>

#define SIDE_MARK '#'

char *
ox_selection_item (const char *entry)
{
  const char *mark = strchr (entry, SIDE_MARK);

  return mark != NULL ? g_strndup (entry, (gsize) (mark - entry)) : g_strdup (entry);
}

int
ox_selection_side (const char *entry)
{
  const char *mark = strchr (entry, SIDE_MARK);
  guint64 side = 0;

  if (mark == NULL || !g_ascii_string_to_unsigned (mark + 1, 10, 0, G_MAXINT, &side, NULL))
    return -1;
  return (int) side;
}

char *
ox_selection_of_side (const char *room_id, guint side)
{
  return g_strdup_printf ("%s%c%u", room_id, SIDE_MARK, side);
}

char **
ox_selection_items (const char *const *selection)
{
  g_autoptr (GStrvBuilder) items = g_strv_builder_new ();

  for (guint i = 0; selection[i] != NULL; i++)
    if (strchr (selection[i], SIDE_MARK) == NULL)
      g_strv_builder_add (items, selection[i]);
  return g_strv_builder_end (items);
}
