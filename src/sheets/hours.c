/* Oxturn: sheets/hours - what the plan takes, the hours shift by shift, and a day sheet to fill in for each.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "sheets/draft.h"
#include "sheets/measure.h"

#define FREE_LINES 6 /* for notes on a day sheet */

/* shift_strips: "12 - 87", the strips that are laid in it, "" without one; (transfer full) */
static char *
shift_strips (const OxEstimate *estimate, const OxShift *shift)
{
  guint first = 0, last = 0;
  for (guint i = 0; i < estimate->work->pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (estimate->work->pieces, OxPiece, i);
      if (piece->kind != OX_PIECE_STRIP || piece->machine != shift->machine || piece->shift != shift->shift)
        continue;
      guint order = estimate->plan->strips[piece->index].order;
      first = first == 0 ? order : MIN (first, order);
      last = MAX (last, order);
    }
  return first == 0 ? g_strdup ("") : g_strdup_printf ("%u \xe2\x80\x93 %u", first, last);
}

static char *
shift_name (const OxShift *shift)
{
  return shift->day[0] != '\0' ? g_strdup_printf ("%u, %s", shift->shift, shift->day)
                               : g_strdup_printf ("%u", shift->shift);
}

OxBlock *
ox_shift_table_new (const OxSheetRun *run, const OxEstimate *estimate)
{
  const OxColumn columns[] = { { _ ("Shift"), 0.24, OX_ALIGN_START },      { _ ("Machine"), 0.14, OX_ALIGN_END },
                               { _ ("Strips"), 0.2, OX_ALIGN_END },        { _ ("Strips, h"), 0.14, OX_ALIGN_END },
                               { _ ("Edge work, h"), 0.14, OX_ALIGN_END }, { _ ("All, h"), 0.14, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Hours by shift"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  double all = 0;
  for (guint i = 0; i < estimate->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (estimate->work->shifts, OxShift, i);
      g_autofree char *name = shift_name (shift), *machine = g_strdup_printf ("%u", shift->machine + 1);
      g_autofree char *strips = shift_strips (estimate, shift);
      g_autofree char *laid = ox_measure_number (shift->minutes[OX_PIECE_STRIP] / 60, 2);
      g_autofree char *edge = ox_measure_number (shift->minutes[OX_PIECE_EDGE] / 60, 2);
      g_autofree char *sum = ox_measure_number (shift->working / 60, 2);
      ox_block_add_cells (block, FALSE, name, machine, strips, laid, edge, sum, NULL);
      all += shift->working / 60;
    }
  g_autofree char *sum = ox_measure_number (all, 2);
  if (ox_block_get_n_rows (block) > 1)
    ox_block_add_cells (block, TRUE, _ ("Total"), "", "", "", "", sum, NULL);
  return block;
}

OxBlock *
ox_figure_table_new (const OxSheetRun *run, const OxEstimate *estimate, OxFigureGroup group)
{
  const OxColumn columns[]
      = { { NULL, 0.34, OX_ALIGN_START }, { NULL, 0.2, OX_ALIGN_END }, { NULL, 0.46, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (ox_estimate_group_name (group), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < estimate->figures->len; i++)
    {
      const OxFigure *figure = g_ptr_array_index (estimate->figures, i);
      if (figure->group != group)
        continue;
      g_autofree char *value = ox_figure_value_text (figure, run->job->units);
      ox_block_add_cells (block, figure->verdict > OX_VERDICT_FINE, figure->label, value, figure->assumption, NULL);
    }
  return block;
}

/* --- Day sheets --- */

static OxBlock *
planned_block (const OxSheetRun *run, const OxEstimate *estimate, const OxShift *shift)
{
  const OxColumn columns[] = { { NULL, 0.6, OX_ALIGN_START }, { NULL, 0.4, OX_ALIGN_END } };
  g_autofree char *name = shift_name (shift), *title = g_strdup_printf (_ ("Planned for shift %s"), name);
  OxBlock *block = ox_block_new (title, run->form.block_mm, run->form.body_mm);
  g_autofree char *machine = g_strdup_printf ("%u", shift->machine + 1), *strips = shift_strips (estimate, shift);
  g_autofree char *laid = ox_measure_number (shift->minutes[OX_PIECE_STRIP] / 60, 2);
  g_autofree char *edge = ox_measure_number (shift->minutes[OX_PIECE_EDGE] / 60, 2);
  g_autofree char *all = ox_measure_number (shift->working / 60, 2);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_add_cells (block, FALSE, _ ("Machine"), machine, NULL);
  ox_block_add_cells (block, FALSE, _ ("Strips"), strips, NULL);
  ox_block_add_cells (block, FALSE, _ ("Strips, h"), laid, NULL);
  ox_block_add_cells (block, FALSE, _ ("Edge work, h"), edge, NULL);
  ox_block_add_cells (block, TRUE, _ ("All, h"), all, NULL);
  return block;
}

static OxBlock *
done_block (const OxSheetRun *run)
{
  const char *const pairs[][2] = { { _ ("Date"), _ ("Crew") },
                                   { _ ("Start"), _ ("End") },
                                   { _ ("Meter at the start, h"), _ ("Meter at the end, h") },
                                   { _ ("Strips done, from"), _ ("Strips done, to") },
                                   { _ ("Edge areas done"), _ ("Walking speed") },
                                   { _ ("Profile read, where"), _ ("Profile read") },
                                   { _ ("Bags of abrasive used"), _ ("Drums of dust filled") },
                                   { _ ("Parts checked or changed"), _ ("Delays and causes") } };
  OxBlock *block = ox_block_new (_ ("Done"), run->form.block_mm, run->form.body_mm);
  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      ox_block_add_blank (block, pairs[i][0], 0.5, FALSE);
      ox_block_add_blank (block, pairs[i][1], 0.5, TRUE);
    }
  for (guint i = 0; i < FREE_LINES; i++)
    ox_block_add_blank (block, i == 0 ? _ ("Notes") : "", 1, TRUE);
  ox_block_add_blank (block, _ ("Signature"), 1, TRUE);
  return block;
}

void
ox_day_sheets_append (OxSheetRun *run, const OxEstimate *estimate)
{
  for (guint i = 0; i < estimate->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (estimate->work->shifts, OxShift, i);
      g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
      g_ptr_array_add (blocks, planned_block (run, estimate, shift));
      g_ptr_array_add (blocks, done_block (run));
      OxFlow flow = { blocks, 0, 0, FALSE };
      ox_flow_finish (&flow, run, _ ("Day sheet"),
                      _ ("What is planned for a shift, and what was done, to be filled in."));
    }
}
