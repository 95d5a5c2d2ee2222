/* Oxturn: sheets/legend - what stands on a sheet, and nothing that does not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "base/words.h"

static const struct
{
  OxStyle style;
  gboolean filled;
  const char *text;
} samples[] = {
  { OX_STYLE_TO_PREPARE, TRUE, N_ ("Prepared by machine") },
  { OX_STYLE_STRIP_OUT, TRUE, N_ ("Strip, walked one way") },
  { OX_STYLE_STRIP_HOME, TRUE, N_ ("Strip, walked the other way") },
  { OX_STYLE_CROSSWISE, TRUE, N_ ("Crosswise strip") },
  { OX_STYLE_OUT_OF_REACH, TRUE, N_ ("Strip out of reach of every station") },
  { OX_STYLE_STRIP_AXIS, FALSE, N_ ("Middle of a strip, arrow at its stop") },
  { OX_STYLE_CROSS_AXIS, FALSE, N_ ("Middle of a crosswise strip") },
  { OX_STYLE_COAT_AXIS, FALSE, N_ ("Middle of a strip of a further coat") },
  { OX_STYLE_PACE, FALSE, N_ ("Walking speed changes, to what is written there") },
  { OX_STYLE_ZONE, FALSE, N_ ("Turnaround zone") },
  { OX_STYLE_EDGE, TRUE, N_ ("Edge work, by hand tools") },
  { OX_STYLE_DONE, TRUE, N_ ("Done") },
  { OX_STYLE_EXCLUDED, TRUE, N_ ("Excluded: not in the scope") },
  { OX_STYLE_MASKED, TRUE, N_ ("Masked: to be protected") },
  { OX_STYLE_SOLID, TRUE, N_ ("Column or other solid") },
  { OX_STYLE_PIT, TRUE, N_ ("Pit, channel or opening") },
  { OX_STYLE_WALL, FALSE, N_ ("Wall") },
  { OX_STYLE_OPEN, FALSE, N_ ("Open side: the floor goes on") },
  { OX_STYLE_DROP, FALSE, N_ ("Drop: an edge to fall over") },
  { OX_STYLE_KEEP_BACK, FALSE, N_ ("No machine beyond this") },
  { OX_STYLE_CONDITION, FALSE, N_ ("Condition area") },
  { OX_STYLE_JOINT, FALSE, N_ ("Joint") },
  { OX_STYLE_MOVE, FALSE, N_ ("Walk to the next strip, blasting off") },
  { OX_STYLE_HOSE_REACH, FALSE, N_ ("A hose reaches up to here") },
  { OX_STYLE_CORD_REACH, FALSE, N_ ("A cord reaches up to here") },
};

static const struct
{
  OxMarkKind kind;
  OxStyle style;
  const char *text;
} marks[] = {
  { OX_MARK_FIRST, OX_STYLE_FIRST, N_ ("First start") },
  { OX_MARK_COLLECTOR, OX_STYLE_STATION, N_ ("Station of the dust collector") },
  { OX_MARK_SUPPLY, OX_STYLE_STATION, N_ ("Power is taken here") },
  { OX_MARK_COLLECTOR, OX_STYLE_PROPOSED, N_ ("Place proposed for the dust collector") },
  { OX_MARK_SUPPLY, OX_STYLE_PROPOSED, N_ ("Place proposed for taking power") },
};

static gboolean
has_style (const OxDrawing *floor, OxStyle style)
{
  for (guint i = 0; i < floor->n_elements; i++)
    if (floor->elements[i].kind == OX_ELEMENT_PATH && floor->elements[i].style == style)
      return TRUE;
  return FALSE;
}

static gboolean
has_mark (const OxDrawing *floor, OxMarkKind kind, OxStyle style)
{
  for (guint i = 0; i < floor->n_elements; i++)
    if (floor->elements[i].kind == OX_ELEMENT_MARK && floor->elements[i].mark.kind == kind
        && floor->elements[i].style == style)
      return TRUE;
  return FALSE;
}

OxBlock *
ox_legend_new (const OxSheetRun *run, const OxDrawing *floor)
{
  OxBlock *block = ox_block_new (_ ("Legend"), run->form.block_mm, run->form.body_mm);
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    if (has_style (floor, samples[i].style))
      ox_block_add_sample (block, samples[i].style, samples[i].filled, _ (samples[i].text));
  for (guint i = 0; i < G_N_ELEMENTS (marks); i++)
    if (has_mark (floor, marks[i].kind, marks[i].style))
      ox_block_add_mark (block, marks[i].style, marks[i].kind, _ (marks[i].text));
  return block;
}
