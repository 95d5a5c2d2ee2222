/* Oxturn: sheets/days - a day sheet for each shift: what is planned, to be ticked off and filled in by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/words.h"
#include "estimate/cost.h"
#include "estimate/spots.h"
#include "record/progress.h"
#include "sheets/draft.h"
#include "sheets/measure.h"
#include <string.h>

#define FREE_LINES 4 /* for notes */
#define YEAR 5       /* bytes of "2026-" */
#define YEAR_TO_DAY 10
#define HAND_MM 2.5 /* height of capitals in rows that are filled in by hand: rows of 5.5 mm */

typedef struct
{
  const OxSheetRun *run;
  const OxShift *shift;
  const OxShiftHours *hours; /* of the shift */
  GArray *spots; /* of OxSpot: of the whole plan */
} Day;

/* month_and_day: month and day of YYYY-MM-DD, as far as that is what @date is */
static const char *
month_and_day (const char *date)
{
  return strlen (date) == YEAR_TO_DAY ? date + YEAR : date;
}

/* strip_notes: "CSP 3, 0.35 mm, by the gate": what the record has of a strip; (transfer full) */
static char *
strip_notes (const OxDoneStrip *done)
{
  g_autoptr (GString) text = g_string_new (NULL);
  if (done->csp > 0)
    g_string_append_printf (text, "CSP %u", done->csp);
  if (done->depth_mm > 0)
    {
      g_autofree char *depth = ox_words_number (done->depth_mm, 2);
      g_string_append_printf (text, "%s%s mm", text->len > 0 ? ", " : "", depth);
    }
  if (*done->note != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", done->note);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The next piece of the shift from @i on; the number of pieces when there is none. */
static guint
next_piece (const Day *day, guint i)
{
  const GArray *pieces = day->run->estimate->work->pieces;
  for (; i < pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (pieces, OxPiece, i);
      if (piece->machine == day->shift->machine && piece->shift == day->shift->shift)
        break;
    }
  return i;
}

static OxBlock *
planned_block (const Day *day)
{
  const OxColumn columns[] = { { NULL, 0.6, OX_ALIGN_START }, { NULL, 0.4, OX_ALIGN_END } };
  const OxForm *form = &day->run->form;
  g_autofree char *name = ox_shift_name (day->shift), *title = g_strdup_printf (_ ("Planned for shift %s"), name);
  OxBlock *block = ox_block_new (title, form->block_mm, form->body_mm);
  g_autofree char *machine = g_strdup_printf ("%u", day->shift->machine + 1);
  g_autofree char *strips = ox_shift_strips (day->run->estimate, day->shift);
  g_autofree char *laid = ox_measure_number (day->hours->strips, 2);
  g_autofree char *edge = ox_measure_number (day->hours->edge, 2);
  g_autofree char *other = ox_measure_number (day->hours->other, 2), *all = ox_measure_number (day->hours->all, 2);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_add_cells (block, FALSE, _ ("Machine"), machine, NULL);
  ox_block_add_cells (block, FALSE, _ ("Strips"), *strips != '\0' ? strips : "\xe2\x80\x93", NULL);
  ox_block_add_cells (block, FALSE, _ ("Strips, h"), laid, NULL);
  ox_block_add_cells (block, FALSE, _ ("Edge work, h"), edge, NULL);
  ox_block_add_cells (block, FALSE, _ ("Hopper, drums, wear parts, h"), other, NULL);
  ox_block_add_cells (block, TRUE, _ ("All, h"), all, NULL);
  return block;
}

static OxBlock *
done_block (const Day *day)
{
  const char *const pairs[][2] = { { _ ("Date"), _ ("Crew") },
                                   { _ ("Start"), _ ("End") },
                                   { _ ("Meter at the start, h"), _ ("Meter at the end, h") },
                                   { _ ("Walking speed"), _ ("Ammeter, A") },
                                   { _ ("Bags of abrasive used"), _ ("Drums of dust filled") },
                                   { _ ("Parts checked or changed"), _ ("Delays and causes") } };
  OxBlock *block = ox_block_new (_ ("Done"), day->run->form.block_mm, day->run->form.body_mm);
  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      ox_block_add_blank (block, pairs[i][0], 0.5, FALSE);
      ox_block_add_blank (block, pairs[i][1], 0.5, TRUE);
    }
  return block;
}

static OxBlock *
strips_block (const Day *day)
{
  const OxColumn columns[] = { { _ ("Strip"), 0.17, OX_ALIGN_END },
                               { _ ("Length"), 0.21, OX_ALIGN_END },
                               { C_ ("head of a column", "Done"), 0.16, OX_ALIGN_START },
                               { C_ ("day sheet", "Meter"), 0.13, OX_ALIGN_START },
                               { C_ ("head of a column", "Init."), 0.11, OX_ALIGN_START },
                               { C_ ("day sheet", "Notes"), 0.22, OX_ALIGN_START } };
  const OxSheetRun *run = day->run;
  const GArray *pieces = run->estimate->work->pieces;
  OxBlock *block = ox_block_new (_ ("Strips"), run->form.block_mm, HAND_MM);
  guint room = G_MAXUINT;
  gboolean cross = FALSE;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_set_by_hand (block, 4);
  for (guint i = next_piece (day, 0); i < pieces->len; i = next_piece (day, i + 1))
    {
      const OxPiece *piece = &g_array_index (pieces, OxPiece, i);
      if (piece->kind != OX_PIECE_STRIP)
        continue;
      const OxStrip *strip = &run->plan->strips[piece->index];
      g_autofree char *order = g_strdup_printf (strip->kind == OX_STRIP_CROSSWISE ? "%u \xc3\x97" : "%u", strip->order);
      g_autofree char *length = ox_measure_length (run->job->units, ox_strip_length (strip));
      cross |= strip->kind == OX_STRIP_CROSSWISE;
      if (run->job->n_rooms > 1 && room != strip->room)
        ox_block_add_group (block, ox_room_title (run->job->rooms[strip->room]));
      room = strip->room;
      const OxDoneStrip *done = strip->done > 0 ? &run->job->record->strips[strip->done - 1] : NULL;
      g_autofree char *notes = done != NULL ? strip_notes (done) : g_strdup ("");
      ox_block_add_cells (block, FALSE, order, length, done != NULL ? month_and_day (done->date) : "", "", "", notes,
                          NULL);
    }
  if (cross)
    ox_block_add_text (block, "\xc3\x97", _ ("A crosswise strip."));
  return block;
}

static OxBlock *
edges_block (const Day *day)
{
  const OxColumn columns[] = { { _ ("Id"), 0.12, OX_ALIGN_START },
                               { _ ("Area"), 0.2, OX_ALIGN_END },
                               { _ ("Length"), 0.21, OX_ALIGN_END },
                               { C_ ("head of a column", "Done"), 0.16, OX_ALIGN_START },
                               { C_ ("head of a column", "Init."), 0.11, OX_ALIGN_START },
                               { C_ ("day sheet", "Notes"), 0.2, OX_ALIGN_START } };
  const OxSheetRun *run = day->run;
  const GArray *pieces = run->estimate->work->pieces;
  OxBlock *block = ox_block_new (_ ("Edge work"), run->form.block_mm, HAND_MM);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_set_by_hand (block, 3);
  for (guint i = next_piece (day, 0); i < pieces->len; i = next_piece (day, i + 1))
    {
      const OxPiece *piece = &g_array_index (pieces, OxPiece, i);
      if (piece->kind != OX_PIECE_EDGE)
        continue;
      const OxEdge *edge = &run->plan->edges[piece->index];
      g_autofree char *area = ox_measure_area (run->job->units, edge->area * piece->share);
      g_autofree char *length = ox_measure_length (run->job->units, edge->length * piece->share);
      const OxDoneEdge *done = edge->done > 0 ? &run->job->record->edges[edge->done - 1] : NULL;
      ox_block_add_cells (block, FALSE, edge->id, area, length, done != NULL ? month_and_day (done->date) : "", "",
                          done != NULL ? done->note : "", NULL);
    }
  return block;
}

/* is_here: whether @spot lies on a strip of the shift */
static gboolean
is_here (const Day *day, const OxSpot *spot)
{
  const GArray *pieces = day->run->estimate->work->pieces;
  for (guint i = next_piece (day, 0); i < pieces->len; i = next_piece (day, i + 1))
    {
      const OxPiece *piece = &g_array_index (pieces, OxPiece, i);
      if (piece->kind == OX_PIECE_STRIP && day->run->plan->strips[piece->index].order == spot->strip)
        return TRUE;
    }
  return FALSE;
}

static OxBlock *
checks_block (const Day *day)
{
  g_autofree guint *which = g_new (guint, day->spots->len + 1);
  guint n = 0;
  for (guint i = 0; i < day->spots->len; i++)
    if (is_here (day, &g_array_index (day->spots, OxSpot, i)))
      which[n++] = i;
  return ox_checks_block_new (day->run, day->spots, which, n);
}

static OxBlock *
notes_block (const Day *day)
{
  OxBlock *block = ox_block_new (_ ("Notes"), day->run->form.block_mm, day->run->form.body_mm);
  for (guint i = 0; i < FREE_LINES; i++)
    ox_block_add_blank (block, "", 1, TRUE);
  ox_block_add_blank (block, _ ("Signature"), 1, TRUE);
  return block;
}

/* --- From the record --- */

static void
add_pair (OxBlock *block, const char *label, const char *value)
{
  if (*value != '\0')
    ox_block_add_cells (block, FALSE, label, value, NULL);
}

static char *
profile_text (const OxProgressDay *day)
{
  g_autoptr (GString) text = g_string_new (NULL);
  if (day->least_csp > 0)
    g_string_append_printf (text, day->least_csp < day->most_csp ? "CSP %u \xe2\x80\x93 %u" : "CSP %u", day->least_csp,
                            day->most_csp);
  if (day->depths > 0)
    {
      g_autofree char *depth = ox_words_number (day->depth_mm, 2);
      g_string_append_printf (text, "%s%s mm", text->len > 0 ? ", " : "", depth);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* "9.5", of several machines "9.5 (1: 5.5; 2: 4.0)" */
static char *
meter_text (const OxRecord *record, const OxProgressDay *day)
{
  g_autoptr (GString) text = g_string_new (NULL);
  if (!day->metered)
    return g_strdup ("");
  g_autofree char *hours = ox_measure_number (day->meter_hours, 2);
  for (guint i = 0; *day->machine_meters != '\0' && i < record->n_days; i++)
    {
      const OxRecordDay *own = &record->days[i];
      g_autofree char *each = ox_measure_number (ox_record_day_hours (own), 2);
      if (g_str_equal (own->date, day->date) && own->meter_start_h >= 0 && own->meter_end_h >= 0)
        g_string_append_printf (text, "%s%u: %s", text->len > 0 ? "; " : "", own->machine, each);
    }
  return text->len > 0 ? g_strdup_printf ("%s (%s)", hours, text->str) : g_steal_pointer (&hours);
}

/* what was done on a day, and what it was planned to take; the sum of all days, and what is left, look alike */
static OxBlock *
recorded_block (const OxSheetRun *run, const OxProgressDay *day, const char *title)
{
  const OxColumn columns[] = { { NULL, 0.45, OX_ALIGN_START }, { NULL, 0.55, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (title, run->form.block_mm, run->form.body_mm);
  g_autofree char *blasted = ox_measure_area (run->job->units, day->blasted_m2);
  g_autofree char *edge = ox_measure_area (run->job->units, day->edge_m2);
  g_autofree char *count = g_strdup_printf ("%u", day->strips);
  g_autofree char *planned = ox_measure_number (ox_progress_hours (day), 2);
  g_autofree char *meter = meter_text (run->job->record, day);
  g_autofree char *profile = profile_text (day);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  add_pair (block, _ ("Strips"), *day->strip_numbers != '\0' ? day->strip_numbers : count);
  add_pair (block, _ ("Edge work"), day->edge_numbers);
  add_pair (block, _ ("Blasted"), blasted);
  add_pair (block, _ ("Edge work, area"), edge);
  add_pair (block, _ ("Planned for it, h"), planned);
  add_pair (block, _ ("On the meter, h"), meter);
  add_pair (block, _ ("Profile read"), profile);
  add_pair (block, _ ("Notes"), day->notes);
  return block;
}

/* Hours and shifts of what is left, with their days, where the plan is begun. */
static void
add_left (const OxSheetRun *run, OxBlock *block)
{
  const OxFigure *hours = ox_estimate_find (run->estimate, "left-hours"),
                 *shifts = ox_estimate_find (run->estimate, "left-shifts");
  if (hours == NULL || shifts == NULL)
    return;
  g_autofree char *crew = ox_figure_value_text (hours, run->job->units),
                  *count = ox_figure_value_text (shifts, run->job->units);
  g_autofree char *days = g_strdup_printf ("%s: %s", count, shifts->assumption);
  add_pair (block, _ ("All hours of the crew"), crew);
  add_pair (block, _ ("Shifts"), days);
  g_autoptr (OxQuote) quote = ox_quote_left_new (run->estimate);
  if (!quote->valid || quote->lines->len == 0)
    return;
  g_autofree char *total = ox_cost_text (quote->sum.total);
  g_autofree char *cost = g_strdup_printf ("%s %s", total, run->job->costs->currency);
  add_pair (block, _ ("Cost, without fixed sums"), cost);
}

/* one sheet for all days of the record, and what is left */
static void
append_record (OxSheetRun *run)
{
  if (ox_record_is_empty (run->job->record))
    return;
  g_autoptr (OxProgress) progress = ox_progress_new (run->plan);
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  for (guint i = 0; i < progress->n_days; i++)
    {
      g_autofree char *title = g_strdup_printf (_ ("Done on %s"), progress->days[i].date);
      g_ptr_array_add (blocks, recorded_block (run, &progress->days[i], title));
    }
  g_ptr_array_add (blocks, recorded_block (run, &progress->done, _ ("Done so far")));
  OxBlock *left = recorded_block (run, &progress->left, _ ("Left to do"));
  add_left (run, left);
  g_ptr_array_add (blocks, left);
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  ox_flow_finish (&flow, run, _ ("Day sheet"), _ ("What the record says was done, day by day, and what is left."));
}

void
ox_day_sheets_append (OxSheetRun *run)
{
  append_record (run);
  g_autoptr (GArray) spots = ox_spots_of (run->plan);
  g_autofree OxShiftHours *hours = g_new (OxShiftHours, run->estimate->work->shifts->len + 1);
  ox_shift_hours (run->estimate, hours);
  for (guint i = 0; i < run->estimate->work->shifts->len; i++)
    {
      const Day day = { run, &g_array_index (run->estimate->work->shifts, OxShift, i), &hours[i], spots };
      g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
      g_ptr_array_add (blocks, planned_block (&day));
      g_ptr_array_add (blocks, done_block (&day));
      g_ptr_array_add (blocks, checks_block (&day));
      g_ptr_array_add (blocks, edges_block (&day));
      g_ptr_array_add (blocks, strips_block (&day));
      g_ptr_array_add (blocks, notes_block (&day));
      OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
      ox_flow_finish (&flow, run, _ ("Day sheet"),
                      _ ("What is planned for a shift, and what was done, to be filled in."));
    }
}
