/* Oxturn: sheets/contents - which sheets a set has, as a block of its first one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/contents.h"
#include "base/words.h"

static void
add_line (OxBlock *block, const OxDraft *first, guint from, guint to)
{
  g_autofree char *numbers
      = from == to ? g_strdup_printf ("%u", from) : g_strdup_printf ("%u \xe2\x80\x93 %u", from, to);
  ox_block_add_cells (block, FALSE, numbers, first->kind, first->form.paper->name, NULL);
}

static gboolean
belongs (const OxDraft *a, const OxDraft *b)
{
  return g_str_equal (a->kind, b->kind) && a->form.paper == b->form.paper;
}

OxBlock *
ox_contents_new (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Sheet"), 0.2, OX_ALIGN_START },
                               { _ ("Shows"), 0.55, OX_ALIGN_START },
                               { _ ("Paper"), 0.25, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("Sheets of this set"), run->form.block_mm, run->form.body_mm);
  const OxDraft *all = run->contents ? (const OxDraft *) (gpointer) run->contents->data : NULL;
  guint n = run->contents ? run->contents->len : 0, lines = 0;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint from = 0, to; from < n; from = to, lines++)
    {
      to = from + 1;
      while (to < n && belongs (&all[from], &all[to]))
        to++;
      add_line (block, &all[from], from + 1, to);
    }
  for (; lines < run->contents_lines; lines++)
    ox_block_add_cells (block, FALSE, "", "", "", NULL);
  return block;
}
