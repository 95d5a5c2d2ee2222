/* Oxturn: sheets/schedule - tables of strips, edge work and quantities, on as many pages as they take.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/notice.h"
#include "base/words.h"
#include "sheets/cautions.h"
#include "sheets/draft.h"
#include "sheets/measure.h"

/* A quantity, and what it rests on, "" where there is nothing to say. */
static void
add_figure (OxBlock *block, const char *what, const char *figure, const char *basis)
{
  ox_block_add_cells (block, FALSE, what, figure, basis, NULL);
}

/* What the figure @id of the estimate rests on. */
static const char *
basis_of (const OxSheetRun *run, const char *id)
{
  const OxFigure *figure = ox_estimate_find (run->estimate, id);
  return figure != NULL ? figure->assumption : "";
}

static char *
hours_text (double hours)
{
  g_autofree char *number = ox_measure_number (hours, 2);
  return g_strdup_printf (_ ("%s h"), number);
}

static void
add_hours (OxBlock *block, const char *what, double hours, const char *basis)
{
  g_autofree char *figure = hours_text (hours);
  add_figure (block, what, figure, basis);
}

static void
add_area (OxBlock *block, OxUnits units, const char *what, double area, const char *basis)
{
  g_autofree char *figure = ox_measure_area (units, area);
  add_figure (block, what, figure, basis);
}

/* The rates that the hours of edge work rest on; (transfer full) */
static char *
hand_text (const OxJob *job)
{
  g_autofree char *rate = ox_measure_rate (job->units, job->rates.edge_m2_per_hour);
  g_autofree char *narrow = ox_measure_length_rate (job->units, job->rates.edge_m_per_hour);
  return job->rates.edge_m_per_hour > 0 ? g_strdup_printf (_ ("narrow at %s, wider at %s"), narrow, rate)
                                        : g_strdup_printf (_ ("at %s"), rate);
}

/* The speeds that the hours of strips rest on; (transfer full) */
static char *
blasting_text (const OxJob *job, const OxTotals *totals)
{
  double speed = job->machine->travel_speed;
  g_autofree char *text = ox_measure_speed (job->units, speed);
  gboolean one_speed = fabs (totals->strip_m - totals->strip_hours * 60 * speed) < 1e-6 * totals->strip_m;
  return one_speed ? g_strdup_printf (_ ("at %s"), text) : g_strdup (_ ("at the speed of each area"));
}

static void
add_floor (OxBlock *block, const OxSheetRun *run)
{
  const OxTotals *totals = &run->plan->totals;
  OxUnits units = run->job->units;
  gboolean coats = totals->coats_m2 > totals->blasted_m2 * (1 + 1e-9);
  add_area (block, units, _ ("Floor in scope"), totals->target_m2, basis_of (run, "target"));
  add_area (block, units, _ ("Prepared by machine"), totals->blasted_m2, basis_of (run, "blasted"));
  if (coats)
    add_area (block, units, _ ("Floor covered, each coat counted"), totals->coats_m2, basis_of (run, "coats"));
  add_area (block, units, coats ? _ ("of it covered twice by one coat") : _ ("of it covered twice"), totals->double_m2, "");
  add_area (block, units, _ ("Edge work"), totals->edge_m2, basis_of (run, "edge"));
}

static OxBlock *
quantities_block (const OxSheetRun *run)
{
  const OxColumn columns[]
      = { { NULL, 0.32, OX_ALIGN_START }, { NULL, 0.17, OX_ALIGN_END }, { NULL, 0.51, OX_ALIGN_START } };
  const OxTotals *totals = &run->plan->totals;
  OxBlock *block = ox_block_new (_ ("Quantities"), run->form.block_mm, run->form.body_mm);
  g_autofree char *strips = g_strdup_printf ("%u", totals->strips);
  g_autofree char *length = ox_measure_length (run->job->units, totals->strip_m);
  g_autofree char *blasting = blasting_text (run->job, totals);
  g_autofree char *hand = hand_text (run->job);
  g_autofree char *labour = hours_text (totals->labour_hours);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  add_floor (block, run);
  add_figure (block, _ ("Strips"), strips, "");
  add_figure (block, _ ("Length of all strips"), length, basis_of (run, "strip-length"));
  add_hours (block, _ ("Blasting"), totals->strip_hours, blasting);
  add_hours (block, _ ("Moves between strips"), totals->move_hours, basis_of (run, "move-hours"));
  add_hours (block, _ ("Edge work"), totals->edge_hours, hand);
  ox_block_add_cells (block, TRUE, _ ("Labour"), labour, _ ("blasting, moves and edge work"), NULL);
  return block;
}

static OxBlock *
notices_block (const OxSheetRun *run)
{
  OxBlock *block = ox_block_new (_ ("To be looked at"), run->form.block_mm, run->form.body_mm);
  for (char **notice = run->plan->notices; notice != NULL && *notice != NULL; notice++)
    {
      g_autofree char *text = ox_notice_text (*notice);
      ox_block_add_text (block, "\xe2\x80\xa2", text);
    }
  return block;
}

static OxBlock *
strips_block (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Strip"), 0.13, OX_ALIGN_END }, { _ ("Room"), 0.26, OX_ALIGN_START },
                               { _ ("Lane"), 0.12, OX_ALIGN_END },  { _ ("Heading"), 0.17, OX_ALIGN_END },
                               { _ ("Length"), 0.2, OX_ALIGN_END }, { _ ("min"), 0.12, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Strips in working order"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < run->plan->n_strips; i++)
    {
      const OxStrip *strip = &run->plan->strips[i];
      double turn = strip->heading * 180 / G_PI;
      g_autofree char *order = g_strdup_printf (strip->kind == OX_STRIP_CROSSWISE ? "%u \xc3\x97" : "%u", strip->order);
      g_autofree char *lane = g_strdup_printf ("%u", strip->lane);
      g_autofree char *degrees = ox_words_number (turn < -1e-9 ? turn + 360 : turn, 1);
      g_autofree char *heading = g_strconcat (degrees, "\xc2\xb0", NULL);
      g_autofree char *length = ox_measure_length (run->job->units, ox_strip_length (strip));
      g_autofree char *minutes = ox_measure_number (strip->minutes, 1);
      ox_block_add_cells (block, FALSE, order, ox_room_title (run->job->rooms[strip->room]), lane, heading, length,
                          minutes, NULL);
    }
  return block;
}

static OxBlock *
reading_block (const OxSheetRun *run)
{
  OxBlock *block = ox_block_new (_ ("How to read the tables"), run->form.block_mm, run->form.body_mm);
  ox_block_add_text (block, "\xc3\x97", _ ("A crosswise strip."));
  ox_block_add_text (block, "\xe2\x80\xa2", _ ("Headings are counter-clockwise from the drawing's right."));
  ox_block_add_text (block, "\xe2\x80\xa2",
                     _ ("Labour under Quantities is blasting, edge work and moves; the table Hours adds the rest."));
  g_autofree char *tag = ox_cautions_tag ("silica", run->estimate);
  g_autofree char *text
      = g_strdup_printf (_ ("%s beside a title: the caution of that number applies."), g_strstrip (tag));
  if (*tag != '\0')
    ox_block_add_text (block, "\xe2\x80\xa2", text);
  return block;
}

void
ox_schedule_append (OxSheetRun *run)
{
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_autoptr (GArray) spots = ox_spots_of (run->plan);
  g_ptr_array_add (blocks, quantities_block (run));
  g_ptr_array_add (blocks, notices_block (run));
  g_ptr_array_add (blocks, reading_block (run));
  g_ptr_array_add (blocks, ox_cautions_block_new (&run->form, run->estimate, OX_CAUTIONS_BRIEF));
  g_ptr_array_add (blocks, ox_edge_table_new (run));
  g_ptr_array_add (blocks, ox_checks_block_new (run, spots, NULL, spots->len));
  g_ptr_array_add (blocks, strips_block (run));
  for (OxFigureGroup group = OX_FIGURE_TIME; group < OX_N_FIGURE_GROUPS; group++)
    g_ptr_array_insert (blocks, 2 + (gint) group, ox_figure_table_new (run, run->estimate, group));
  g_ptr_array_insert (blocks, 3, ox_shift_table_new (run, run->estimate));
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  ox_flow_finish (&flow, run, _ ("Schedule"), _ ("Quantities, edge work and all strips in working order."));
}
