/* Oxturn: file/tables - what a plan takes, as tables for other programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/number.h"
#include "estimate/cost.h"
#include "estimate/spots.h"
#include "file/csv.h"
#include "file/job-words.h"
#include "file/tables.h"

#define COMPUTED 6
#define SHARE 4 /* decimals of the part of an edge area that is done in a shift */

char *
ox_table_quantities (const OxEstimate *estimate)
{
  OxCsv csv = ox_csv_start ("item,room,quantity,unit,verdict,basis");
  for (guint i = 0; i < estimate->figures->len; i++)
    {
      const OxFigure *figure = g_ptr_array_index (estimate->figures, i);
      ox_csv_text (&csv, figure->id);
      ox_csv_text (&csv, figure->room);
      ox_csv_number (&csv, figure->value, COMPUTED);
      ox_csv_text (&csv, figure->unit);
      ox_csv_text (&csv, ox_verdict_name (figure->verdict));
      ox_csv_text (&csv, figure->basis);
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

/* Strips of a shift as runs of their numbers, "1-40 52", in working order. */
static char *
strips_text (const OxEstimate *estimate, const OxShift *shift)
{
  g_autoptr (GString) text = g_string_new (NULL);
  guint first = 0, last = 0;
  for (guint i = 0; i <= estimate->work->pieces->len; i++)
    {
      const OxPiece *piece
          = i < estimate->work->pieces->len ? &g_array_index (estimate->work->pieces, OxPiece, i) : NULL;
      if (piece != NULL
          && (piece->kind != OX_PIECE_STRIP || piece->shift != shift->shift || piece->machine != shift->machine))
        continue;
      guint number = piece != NULL ? estimate->plan->strips[piece->index].order : 0;
      if (last > 0 && number == last + 1)
        {
          last = number;
          continue;
        }
      if (last > 0)
        g_string_append_printf (text, first < last ? "%s%u-%u" : "%s%u", text->len > 0 ? " " : "", first, last);
      first = last = number;
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* Edge areas of a shift, "E1 E2:0.35" where only a part of one is done in it. */
static char *
edge_text (const OxEstimate *estimate, const OxShift *shift)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (guint i = 0; i < estimate->work->pieces->len; i++)
    {
      const OxPiece *piece = &g_array_index (estimate->work->pieces, OxPiece, i);
      if (piece->kind != OX_PIECE_EDGE || piece->shift != shift->shift || piece->machine != shift->machine)
        continue;
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", estimate->plan->edges[piece->index].id);
      if (piece->share < 1)
        {
          g_string_append_c (text, ':');
          ox_number_append (text, piece->share, SHARE);
        }
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
ox_table_shifts (const OxEstimate *estimate)
{
  const OxWorkRules *rules = &estimate->rules;
  OxCsv csv = ox_csv_start (
      "shift,date,machine,strips,edge,strip_minutes,move_minutes,start_minutes,refill_minutes,drum_minutes,"
      "wear_minutes,edge_minutes,setup_minutes,cleanup_minutes,break_minutes,total_minutes");
  for (guint i = 0; i < estimate->work->shifts->len; i++)
    {
      const OxShift *shift = &g_array_index (estimate->work->shifts, OxShift, i);
      g_autofree char *strips = strips_text (estimate, shift), *edge = edge_text (estimate, shift);
      const double minutes[] = {
        shift->blast_minutes,
        shift->move_minutes,
        shift->start_minutes,
        shift->minutes[OX_PIECE_REFILL],
        shift->minutes[OX_PIECE_DRUM],
        shift->minutes[OX_PIECE_WEAR],
        shift->minutes[OX_PIECE_EDGE],
        rules->setup_min,
        rules->cleanup_min,
        rules->break_min,
        shift->working + rules->setup_min + rules->cleanup_min + rules->break_min,
      };
      ox_csv_count (&csv, shift->shift);
      ox_csv_text (&csv, shift->day);
      ox_csv_count (&csv, shift->machine + 1);
      ox_csv_text (&csv, strips);
      ox_csv_text (&csv, edge);
      for (guint k = 0; k < G_N_ELEMENTS (minutes); k++)
        ox_csv_number (&csv, minutes[k], COMPUTED);
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

/* As in job files, but for the one that has been "area" here from the first. */
static const char *
driver_word (OxCostDriver driver)
{
  return driver == OX_COST_AREA ? "area" : ox_words_cost[driver];
}

static void
add_sum (OxCsv *csv, const char *what, OxMoney amount)
{
  g_autofree char *text = ox_money_text (amount);
  ox_csv_text (csv, what);
  for (guint i = 0; i < 4; i++)
    ox_csv_empty (csv);
  ox_csv_text (csv, text);
  ox_csv_row (csv);
}

/* A rate without a name of its own has that of its kind, untranslated. */
static const char *
line_name (const OxJob *job, const OxCostLine *line)
{
  for (guint i = 0; i < job->costs->n; i++)
    if (*job->costs->rates[i].name == '\0' && line->what == ox_cost_driver_name (job->costs->rates[i].per))
      return driver_word (job->costs->rates[i].per);
  return line->what;
}

char *
ox_table_cost (const OxEstimate *estimate)
{
  g_autoptr (OxQuote) quote = ox_quote_new (estimate), left = ox_quote_left_new (estimate);
  OxCsv csv = ox_csv_start ("what,room,quantity,unit,rate,amount");
  for (guint i = 0; quote->valid && i < quote->lines->len; i++)
    {
      const OxCostLine *line = &g_array_index (quote->lines, OxCostLine, i);
      g_autofree char *rate = ox_money_text (line->rate), *amount = ox_money_text (line->amount);
      ox_csv_text (&csv, line_name (estimate->plan->job, line));
      ox_csv_text (&csv, line->room);
      ox_csv_number (&csv, line->quantity, line->decimals);
      ox_csv_text (&csv, line->unit);
      ox_csv_text (&csv, rate);
      ox_csv_text (&csv, amount);
      ox_csv_row (&csv);
    }
  if (quote->valid)
    {
      add_sum (&csv, "subtotal", quote->sum.subtotal);
      add_sum (&csv, "contingency", quote->sum.contingency);
      add_sum (&csv, "total", quote->sum.total);
      if (left != NULL && left->valid)
        add_sum (&csv, "left", left->sum.total);
    }
  return ox_csv_end (&csv);
}

char *
ox_table_checks (const OxPlan *plan)
{
  g_autoptr (GArray) spots = ox_spots_of (plan);
  OxCsv csv = ox_csv_start ("check,room,x,y,strip");
  for (guint i = 0; i < spots->len; i++)
    {
      const OxSpot *spot = &g_array_index (spots, OxSpot, i);
      ox_csv_count (&csv, i + 1);
      ox_csv_text (&csv, plan->job->rooms[spot->room]->id);
      ox_csv_point (&csv, spot->at);
      ox_csv_count (&csv, spot->strip);
      ox_csv_row (&csv);
    }
  return ox_csv_end (&csv);
}

/* What the record has of a strip or an edge area; nothing for what is left to do. */
static void
add_done (OxCsv *csv, const char *date, const OxDoneStrip *strip, const char *note)
{
  ox_csv_text (csv, date);
  if (strip != NULL && strip->csp > 0)
    ox_csv_count (csv, strip->csp);
  else
    ox_csv_empty (csv);
  if (strip != NULL && strip->depth_mm > 0)
    ox_csv_number (csv, strip->depth_mm, COMPUTED);
  else
    ox_csv_empty (csv);
  ox_csv_text (csv, note);
}

static void
add_strip_of_day (OxCsv *csv, const OxPlan *plan, const OxPiece *piece)
{
  const OxStrip *strip = &plan->strips[piece->index];
  const OxDoneStrip *done = strip->done > 0 ? &plan->job->record->strips[strip->done - 1] : NULL;
  ox_csv_text (csv, "strip");
  ox_csv_count (csv, strip->order);
  ox_csv_text (csv, plan->job->rooms[strip->room]->id);
  ox_csv_number (csv, ox_strip_length (strip), COMPUTED);
  ox_csv_number (csv, ox_strip_length (strip) * strip->width, COMPUTED);
  ox_csv_number (csv, piece->minutes, COMPUTED);
  add_done (csv, done != NULL ? done->date : "", done, done != NULL ? done->note : "");
}

static void
add_edge_of_day (OxCsv *csv, const OxPlan *plan, const OxPiece *piece)
{
  const OxEdge *edge = &plan->edges[piece->index];
  const OxDoneEdge *done = edge->done > 0 ? &plan->job->record->edges[edge->done - 1] : NULL;
  ox_csv_text (csv, "edge");
  ox_csv_text (csv, edge->id);
  ox_csv_text (csv, plan->job->rooms[edge->room]->id);
  ox_csv_number (csv, edge->length * piece->share, COMPUTED);
  ox_csv_number (csv, edge->area * piece->share, COMPUTED);
  ox_csv_number (csv, piece->minutes, COMPUTED);
  add_done (csv, done != NULL ? done->date : "", NULL, done != NULL ? done->note : "");
}

char *
ox_table_days (const OxEstimate *estimate)
{
  OxCsv csv = ox_csv_start ("shift,date,machine,kind,id,room,length_m,area_m2,minutes,done,csp,depth_mm,note");
  for (guint s = 0; s < estimate->work->shifts->len; s++)
    {
      const OxShift *shift = &g_array_index (estimate->work->shifts, OxShift, s);
      for (guint i = 0; i < estimate->work->pieces->len; i++)
        {
          const OxPiece *piece = &g_array_index (estimate->work->pieces, OxPiece, i);
          if (piece->shift != shift->shift || piece->machine != shift->machine
              || (piece->kind != OX_PIECE_STRIP && piece->kind != OX_PIECE_EDGE))
            continue;
          ox_csv_count (&csv, shift->shift);
          ox_csv_text (&csv, shift->day);
          ox_csv_count (&csv, shift->machine + 1);
          if (piece->kind == OX_PIECE_STRIP)
            add_strip_of_day (&csv, estimate->plan, piece);
          else
            add_edge_of_day (&csv, estimate->plan, piece);
          ox_csv_row (&csv);
        }
    }
  return ox_csv_end (&csv);
}
