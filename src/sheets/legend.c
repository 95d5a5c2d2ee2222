/* Oxturn: sheets/legend - what stands on a sheet, and nothing that does not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "base/words.h"

#define LINE(style, text)                                                                                              \
  {                                                                                                                    \
    FALSE, OX_N_MARKS, style, FALSE, text                                                                              \
  }
#define PATCH(style, text)                                                                                             \
  {                                                                                                                    \
    FALSE, OX_N_MARKS, style, TRUE, text                                                                               \
  }
#define MARK(mark, style, text)                                                                                        \
  {                                                                                                                    \
    TRUE, mark, style, FALSE, text                                                                                     \
  }

/* clang-format off */
static const OxLegendEntry entries[] = {
  PATCH (OX_STYLE_TO_PREPARE, N_ ("Prepared by machine")),
  PATCH (OX_STYLE_STRIP_OUT, N_ ("Strip, walked one way")),
  PATCH (OX_STYLE_STRIP_HOME, N_ ("Strip, walked the other way")),
  PATCH (OX_STYLE_CROSSWISE, N_ ("Crosswise strip")),
  PATCH (OX_STYLE_OUT_OF_REACH, N_ ("Strip out of reach of every station")),
  LINE (OX_STYLE_STRIP_AXIS, N_ ("Middle of a strip, arrow at its stop")),
  LINE (OX_STYLE_CROSS_AXIS, N_ ("Middle of a crosswise strip")),
  LINE (OX_STYLE_COAT_AXIS, N_ ("Middle of a strip of a further coat")),
  LINE (OX_STYLE_PACE, N_ ("Walking speed changes, to what is written there")),
  LINE (OX_STYLE_ZONE, N_ ("Turnaround zone")),
  PATCH (OX_STYLE_EDGE, N_ ("Edge work, by hand tools")),
  PATCH (OX_STYLE_DONE, N_ ("Done")),
  PATCH (OX_STYLE_EXCLUDED, N_ ("Excluded: not in the scope")),
  PATCH (OX_STYLE_MASKED, N_ ("Masked: to be protected")),
  PATCH (OX_STYLE_SOLID, N_ ("Column or other solid")),
  PATCH (OX_STYLE_PIT, N_ ("Pit, channel or opening")),
  LINE (OX_STYLE_WALL, N_ ("Wall")),
  PATCH (OX_STYLE_DOORWAY, N_ ("Doorway")),
  LINE (OX_STYLE_OPEN, N_ ("Open side: the floor goes on")),
  LINE (OX_STYLE_DROP, N_ ("Drop: an edge to fall over")),
  LINE (OX_STYLE_KEEP_BACK, N_ ("No machine beyond this")),
  LINE (OX_STYLE_CONDITION, N_ ("Condition area")),
  LINE (OX_STYLE_JOINT, N_ ("Joint")),
  LINE (OX_STYLE_MOVE, N_ ("Walk to the next strip, blasting off")),
  LINE (OX_STYLE_HOSE_REACH, N_ ("A hose reaches up to here")),
  LINE (OX_STYLE_CORD_REACH, N_ ("A cord reaches up to here")),
  LINE (OX_STYLE_MATCH, N_ ("Match line: another sheet goes on here")),
  MARK (OX_MARK_FIRST, OX_STYLE_FIRST, N_ ("First start")),
  MARK (OX_MARK_COLLECTOR, OX_STYLE_STATION, N_ ("Station of the dust collector")),
  MARK (OX_MARK_SUPPLY, OX_STYLE_STATION, N_ ("Power is taken here")),
  MARK (OX_MARK_COLLECTOR, OX_STYLE_PROPOSED, N_ ("Place proposed for the dust collector")),
  MARK (OX_MARK_SUPPLY, OX_STYLE_PROPOSED, N_ ("Place proposed for taking power")),
  MARK (OX_MARK_CAUTION, OX_STYLE_STATION, N_ ("Hose or cord wraps round a solid: free it here")),
  MARK (OX_MARK_DOT, OX_STYLE_LEADER, N_ ("Where a tag or a number belongs")),
  MARK (OX_MARK_CHECK, OX_STYLE_LEADER, N_ ("Profile check")),
};
/* clang-format on */

const OxLegendEntry *
ox_legend_entries (guint *n)
{
  *n = G_N_ELEMENTS (entries);
  return entries;
}

static gboolean
is_in (const OxDrawing *drawing, const OxLegendEntry *entry)
{
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->style == entry->style
          && (entry->is_mark ? element->kind == OX_ELEMENT_MARK && element->mark.kind == entry->mark
                             : element->kind == OX_ELEMENT_PATH))
        return TRUE;
    }
  return FALSE;
}

/* what stands beside a floor comes after the floor */
static gboolean
may_come (const OxLegendEntry *entry)
{
  return entry->style == OX_STYLE_LEADER || entry->style == OX_STYLE_MATCH;
}

OxBlock *
ox_legend_new (const OxSheetRun *run, const OxDrawing *floor, const OxDrawing *beside)
{
  OxBlock *block = ox_block_new (_ ("Legend"), run->form.block_mm, run->form.body_mm);
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      const OxLegendEntry *entry = &entries[i];
      if (!is_in (floor, entry) && !(beside != NULL ? is_in (beside, entry) : may_come (entry)))
        continue;
      if (entry->is_mark)
        ox_block_add_mark (block, entry->style, entry->mark, _ (entry->text));
      else
        ox_block_add_sample (block, entry->style, entry->filled, _ (entry->text));
    }
  return block;
}
