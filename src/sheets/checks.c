/* Oxturn: sheets/checks - the planned profile checks as a table: where they are on the floor, and what was read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "sheets/draft.h"
#include "sheets/measure.h"

char *
ox_check_name (guint i)
{
  return g_strdup_printf ("PC%u", i + 1);
}

/* from the start of its strip, m */
static double
from_start (const OxSheetRun *run, const OxSpot *spot)
{
  for (guint i = 0; i < run->plan->n_strips; i++)
    if (run->plan->strips[i].order == spot->strip)
      return ox_point_distance (run->plan->strips[i].a, spot->at);
  return 0;
}

OxBlock *
ox_checks_block_new (const OxSheetRun *run, const GArray *spots, const guint *which, guint n)
{
  const OxColumn columns[] = { { _ ("Check"), 0.15, OX_ALIGN_START },
                               { "x", 0.19, OX_ALIGN_END },
                               { "y", 0.19, OX_ALIGN_END },
                               { _ ("Strip"), 0.12, OX_ALIGN_END },
                               { _ ("Along it"), 0.19, OX_ALIGN_END },
                               { _ ("Read"), 0.16, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("Profile checks"), run->form.block_mm, run->form.body_mm);
  OxUnits units = run->job->units;
  guint room = G_MAXUINT;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_set_by_hand (block, 1);
  for (guint i = 0; i < n; i++)
    {
      const OxSpot *spot = &g_array_index (spots, OxSpot, which != NULL ? which[i] : i);
      g_autofree char *name = ox_check_name (which != NULL ? which[i] : i);
      g_autofree char *strip = g_strdup_printf ("%u", spot->strip);
      g_autofree char *x = ox_measure_length (units, spot->at.x);
      g_autofree char *y = ox_measure_length (units, spot->at.y);
      g_autofree char *along = ox_measure_length (units, from_start (run, spot));
      if (run->job->n_rooms > 1 && room != spot->room)
        ox_block_add_group (block, ox_room_title (run->job->rooms[spot->room]));
      room = spot->room;
      ox_block_add_cells (block, FALSE, name, x, y, strip, along, "", NULL);
    }
  return block;
}
