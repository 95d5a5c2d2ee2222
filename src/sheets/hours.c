/* Oxturn: sheets/hours - what the plan takes, and the hours shift by shift.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/cautions.h"
#include "record/which.h"
#include "sheets/cautions.h"
#include "sheets/draft.h"
#include "sheets/measure.h"
#include <math.h>

#define HOURS_STEP 0.01 /* as they are printed */

static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  const guint *p = a, *q = b;
  return *p < *q ? -1 : *p > *q;
}

char *
ox_shift_strips (const OxEstimate *estimate, const OxShift *shift)
{
  g_autoptr (GArray) orders = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < estimate->work->pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (estimate->work->pieces, OxPiece, i);
      if (piece->kind == OX_PIECE_STRIP && piece->machine == shift->machine && piece->shift == shift->shift)
        g_array_append_val (orders, estimate->plan->strips[piece->index].order);
    }
  g_array_sort (orders, compare_numbers);
  return ox_which_text ((const guint *) (gconstpointer) orders->data, orders->len, "");
}

char *
ox_shift_name (const OxShift *shift)
{
  return shift->day[0] != '\0' ? g_strdup_printf ("%u, %s", shift->shift, shift->day)
                               : g_strdup_printf ("%u", shift->shift);
}

void
ox_shift_hours (const OxEstimate *estimate, OxShiftHours *out)
{
  const GArray *shifts = estimate->work->shifts;
  g_autofree double *all = g_new (double, shifts->len + 1);
  double sum = 0;
  for (guint i = 0; i < shifts->len; i++)
    {
      all[i] = g_array_index (shifts, OxShift, i).working / 60;
      sum += all[i];
    }
  ox_measure_share (all, shifts->len, HOURS_STEP, round (sum / HOURS_STEP) * HOURS_STEP);
  for (guint i = 0; i < shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (shifts, OxShift, i);
      double parts[] = { shift->minutes[OX_PIECE_STRIP] / 60, shift->minutes[OX_PIECE_EDGE] / 60, 0 };
      parts[2] = MAX (shift->working / 60 - parts[0] - parts[1], 0);
      ox_measure_share (parts, G_N_ELEMENTS (parts), HOURS_STEP, all[i]);
      out[i] = (OxShiftHours){ parts[0], parts[1], parts[2], all[i] };
    }
}

OxBlock *
ox_shift_table_new (const OxSheetRun *run, const OxEstimate *estimate)
{
  const OxColumn columns[] = { { _ ("Shift"), 0.21, OX_ALIGN_START },      { _ ("Machine"), 0.13, OX_ALIGN_END },
                               { _ ("Strips"), 0.18, OX_ALIGN_END },       { _ ("Strips, h"), 0.12, OX_ALIGN_END },
                               { _ ("Edge work, h"), 0.13, OX_ALIGN_END }, { _ ("Other, h"), 0.12, OX_ALIGN_END },
                               { _ ("All, h"), 0.11, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Hours by shift"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  g_autofree OxShiftHours *hours = g_new (OxShiftHours, estimate->work->shifts->len + 1);
  ox_shift_hours (estimate, hours);
  double all = 0;
  for (guint i = 0; i < estimate->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (estimate->work->shifts, OxShift, i);
      g_autofree char *name = ox_shift_name (shift), *machine = g_strdup_printf ("%u", shift->machine + 1);
      g_autofree char *strips = ox_shift_strips (estimate, shift);
      g_autofree char *laid = ox_measure_number (hours[i].strips, 2);
      g_autofree char *edge = ox_measure_number (hours[i].edge, 2);
      g_autofree char *other = ox_measure_number (hours[i].other, 2), *sum = ox_measure_number (hours[i].all, 2);
      ox_block_add_cells (block, FALSE, name, machine, strips, laid, edge, other, sum, NULL);
      all += hours[i].all;
    }
  g_autofree char *sum = ox_measure_number (all, 2);
  if (ox_block_get_n_rows (block) > 1)
    ox_block_add_cells (block, TRUE, _ ("Total"), "", "", "", "", "", sum, NULL);
  if (estimate->work->shifts->len > 0)
    ox_block_add_text (block, NULL, _ ("Other: topping up the hopper, changing drums and wear parts."));
  return block;
}

/* group_title: the group's name and the numbers of the cautions that bite there; (transfer full) */
static char *
group_title (const OxEstimate *estimate, OxFigureGroup group)
{
  g_autoptr (GString) title = g_string_new (ox_estimate_group_name (group));
  for (const char *const *id = ox_cautions_of_group (group); *id != NULL; id++)
    {
      g_autofree char *tag = ox_cautions_tag (*id, estimate);
      g_string_append (title, tag);
    }
  return g_string_free (g_steal_pointer (&title), FALSE);
}

OxBlock *
ox_figure_table_new (const OxSheetRun *run, const OxEstimate *estimate, OxFigureGroup group)
{
  const OxColumn columns[]
      = { { NULL, 0.32, OX_ALIGN_START }, { NULL, 0.17, OX_ALIGN_END }, { NULL, 0.51, OX_ALIGN_START } };
  g_autofree char *title = group_title (estimate, group);
  OxBlock *block = ox_block_new (title, run->form.block_mm, run->form.body_mm);
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
