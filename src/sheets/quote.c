/* Oxturn: sheets/quote - what the job costs, room by room, and what that rests on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "base/words.h"
#include "estimate/cost.h"
#include "sheets/cautions.h"
#include "sheets/draft.h"
#include "sheets/measure.h"

#define WIDE_MM 180.0 /* of its tables, about */

typedef struct
{
  const OxSheetRun *run;
  const OxForm *form;
  const OxQuote *quote;
  const char *currency;
} Page;

/* two pairs of label and value a row; rows without any value are left out */
static OxBlock *
parties_block (const Page *page)
{
  const OxColumn columns[] = { { NULL, 0.14, OX_ALIGN_START },
                               { NULL, 0.36, OX_ALIGN_START },
                               { NULL, 0.16, OX_ALIGN_START },
                               { NULL, 0.34, OX_ALIGN_START } };
  const OxTexts *texts = page->run->job->texts;
  const char *const pairs[][2] = {
    { _ ("Client"), texts->client },      { _ ("From"), texts->company },      { _ ("Site"), texts->site },
    { _ ("Prepared by"), texts->author }, { _ ("Work"), texts->title },        { _ ("Date of issue"), texts->date },
    { _ ("Number"), texts->number },      { _ ("Revision"), texts->revision },
  };
  OxBlock *block = ox_block_new (_ ("Quote"), page->form->block_mm, page->form->body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < G_N_ELEMENTS (pairs); i += 2)
    if (*pairs[i][1] != '\0' || *pairs[i + 1][1] != '\0')
      ox_block_add_cells (block, FALSE, pairs[i][0], pairs[i][1], pairs[i + 1][0], pairs[i + 1][1], NULL);
  return block;
}

/* --- Lines --- */

static void
add_line (OxBlock *block, const OxCostLine *line)
{
  g_autofree char *quantity = ox_measure_number (line->quantity, line->decimals), *rate = ox_cost_text (line->rate);
  g_autofree char *amount = ox_cost_text (line->amount);
  const char *unit = g_str_equal (line->unit, "m2") ? "m\xc2\xb2" : line->unit;
  ox_block_add_cells (block, FALSE, line->what, quantity, unit, rate, amount, NULL);
}

static void
add_sum (OxBlock *block, const char *what, OxMoney sum)
{
  g_autofree char *amount = ox_cost_text (sum);
  ox_block_add_cells (block, TRUE, what, "", "", "", amount, NULL);
}

/* add_room: lines of the room @id, "" for the whole job, under its @name, with their sum where there is more than one
 */
static void
add_room (OxBlock *block, const Page *page, const char *id, const char *name)
{
  const OxCostLine *lines = (const OxCostLine *) (gpointer) page->quote->lines->data;
  guint n = 0;
  for (guint i = 0; i < page->quote->lines->len; i++)
    {
      if (!g_str_equal (lines[i].room, id))
        continue;
      if (n++ == 0)
        ox_block_add_cells (block, TRUE, name, "", "", "", "", NULL);
      add_line (block, &lines[i]);
    }
  g_autofree char *sum = g_strdup_printf (_ ("%s, sum"), name);
  if (n > 1)
    add_sum (block, sum, ox_cost_room (lines, page->quote->lines->len, id));
}

static OxBlock *
lines_block (const Page *page)
{
  g_autofree char *amount
      = *page->currency != '\0' ? g_strdup_printf (_ ("Amount, %s"), page->currency) : g_strdup (_ ("Amount"));
  const OxColumn columns[] = { { _ ("Item"), 0.42, OX_ALIGN_START },
                               { _ ("Quantity"), 0.15, OX_ALIGN_END },
                               { _ ("Unit"), 0.09, OX_ALIGN_START },
                               { _ ("Rate"), 0.15, OX_ALIGN_END },
                               { amount, 0.19, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Lines by room"), page->form->block_mm, page->form->body_mm);
  const OxJob *job = page->run->job;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < job->n_rooms; i++)
    add_room (block, page, job->rooms[i]->id, ox_room_title (job->rooms[i]));
  add_room (block, page, "", _ ("Whole job"));
  g_autofree char *percent = ox_words_number (job->costs->contingency * 100, 2);
  g_autofree char *contingency = g_strdup_printf (_ ("Contingency, %s %%"), percent);
  g_autofree char *total
      = *page->currency != '\0' ? g_strdup_printf (_ ("Total, %s"), page->currency) : g_strdup (_ ("Total"));
  add_sum (block, _ ("Subtotal"), page->quote->sum.subtotal);
  if (job->costs->contingency > 0)
    add_sum (block, contingency, page->quote->sum.contingency);
  add_sum (block, total, page->quote->sum.total);
  return block;
}

/* --- What it rests on --- */

static void
add_figure (OxBlock *block, const Page *page, const char *id)
{
  const OxFigure *figure = ox_estimate_find (page->run->estimate, id);
  if (figure == NULL)
    return;
  g_autofree char *value = ox_figure_value_text (figure, page->run->job->units);
  const char *group = ox_estimate_group_name (figure->group);
  g_autofree char *label = figure->group == OX_FIGURE_FLOOR || g_str_equal (group, figure->label)
                               ? g_strdup (figure->label)
                               : g_strdup_printf ("%s: %s", group, figure->label);
  ox_block_add_cells (block, FALSE, label, value, figure->assumption, NULL);
}

static OxBlock *
basis_block (const Page *page)
{
  static const char *const ids[] = { "target",      "blasted",    "edge",  "edge-length",   "crew-hours", "shifts",
                                     "blast-hours", "edge-hours", "depth", "abrasive-used", "dust",       "drums" };
  const OxColumn columns[]
      = { { NULL, 0.32, OX_ALIGN_START }, { NULL, 0.13, OX_ALIGN_END }, { NULL, 0.55, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("What it rests on"), page->form->block_mm, page->form->body_mm);
  const OxTexts *texts = page->run->job->texts;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    add_figure (block, page, ids[i]);
  if (*texts->number != '\0')
    {
      g_autofree char *drawing = *texts->revision != '\0'
                                     ? g_strdup_printf (_ ("%s, revision %s"), texts->number, texts->revision)
                                     : g_strdup (texts->number);
      ox_block_add_cells (block, FALSE, _ ("Scope"), "", drawing, NULL);
    }
  return block;
}

static OxBlock *
terms_block (const Page *page)
{
  OxBlock *block = ox_block_new (_ ("Terms and cautions"), page->form->block_mm, page->form->body_mm);
  const char *validity = page->run->job->costs->validity;
  if (*validity != '\0')
    ox_block_add_text (block, "\xe2\x80\xa2", validity);
  ox_block_add_text (block, "\xe2\x80\xa2",
                     _ ("Amounts are rates times the quantities as they stand here, each rounded to the cent."));
  ox_block_add_text (block, "\xe2\x80\xa2",
                     _ ("What is prepared and what is left out, the scope drawing says; hours are estimates."));
  ox_cautions_add (block, page->run->estimate, OX_CAUTIONS_OFFICE);
  return block;
}

static OxBlock *
accepted_block (const Page *page)
{
  OxBlock *block = ox_block_new (_ ("Accepted"), page->form->block_mm, page->form->body_mm);
  if (*page->run->job->costs->validity == '\0')
    ox_block_add_blank (block, _ ("Valid until"), 1, TRUE);
  ox_block_add_blank (block, _ ("Name in print"), 0.4, FALSE);
  ox_block_add_blank (block, _ ("Date"), 0.2, FALSE);
  ox_block_add_blank (block, _ ("Signature"), 0.4, TRUE);
  return block;
}

/* refusal: why there is no quote */
static const char *
refusal (const OxJob *job, const OxQuote *quote)
{
  if (job->costs->n == 0)
    return _ ("The job has no rates of cost: a quote needs some.");
  if (quote->lines->len == 0)
    return _ ("The rates of cost come to nothing on this floor, all their quantities are 0: a quote needs others.");
  return _ ("The amounts of the quote are too large to be added up.");
}

gboolean
ox_quote_append (OxSheetRun *run, GError **error)
{
  g_autoptr (OxQuote) quote = ox_quote_new (run->estimate);
  OxSheetRun wide = *run;
  wide.form = ox_form_widened (&run->form, WIDE_MM);
  const Page page = { run, &wide.form, quote, run->job->costs->currency };
  if (quote->lines->len == 0 && run->several)
    return TRUE;
  if (quote->lines->len == 0 || !quote->valid)
    {
      g_set_error_literal (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_NO_QUOTE, refusal (run->job, quote));
      return FALSE;
    }
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (blocks, parties_block (&page));
  g_ptr_array_add (blocks, lines_block (&page));
  g_ptr_array_add (blocks, basis_block (&page));
  g_ptr_array_add (blocks, terms_block (&page));
  g_ptr_array_add (blocks, accepted_block (&page));
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  ox_flow_finish (&flow, &wide, _ ("Quote"), _ ("What the job costs, room by room, and what that rests on."));
  return TRUE;
}
