/* Oxturn: sheets/sheets - the set of sheets of a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/sheets.h"
#include "sheets/contents.h"
#include "sheets/draft.h"
#include "sheets/tiles.h"

#define LARGE_SHORT_MM 300.0 /* short side: more than A3 and Tabloid have */

G_DEFINE_QUARK (ox - sheets - error - quark, ox_sheets_error)

gboolean
ox_sheet_kinds_parse (const char *text, OxSheetKinds *out)
{
  static const struct
  {
    const char *name;
    OxSheetKinds kinds;
  } names[] = {
    { "scope", OX_SHEET_SCOPE }, { "quote", OX_SHEET_QUOTE },       { "crew", OX_SHEET_CREW },
    { "setup", OX_SHEET_SETUP }, { "schedule", OX_SHEET_SCHEDULE }, { "days", OX_SHEET_DAYS },
    { "all", OX_SHEET_ALL },
  };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (text, names[i].name))
      {
        *out = names[i].kinds;
        return TRUE;
      }
  return FALSE;
}

static void
clear_draft (gpointer data)
{
  OxDraft *draft = data;
  g_clear_pointer (&draft->builder, ox_drawing_builder_free);
  g_free (draft->kind);
  g_free (draft->description);
  g_free (draft->scale);
}

static void
clear_page (gpointer data)
{
  OxPage *page = data;
  g_free (page->label);
  ox_drawing_unref (page->drawing);
}

/* finish_draft: puts the frame around it; title and description stay the draft's */
static OxPage
finish_draft (const OxSheetRun *run, OxDraft *draft, guint number)
{
  g_autofree char *sheet = g_strdup_printf ("%u / %u", number, run->drafts->len);
  OxFormTexts texts = { draft->kind, sheet, draft->scale };
  ox_form_append (&draft->form, draft->builder, run->job->texts, &texts);
  return (OxPage){ .width_mm = draft->form.width,
                   .height_mm = draft->form.height,
                   .title = draft->kind,
                   .description = draft->description,
                   .label = g_strdup_printf ("%u", number),
                   .drawing = ox_drawing_builder_end (g_steal_pointer (&draft->builder)) };
}

static OxPageSet *
finish (const OxSheetRun *run)
{
  g_autoptr (GArray) pages = g_array_new (FALSE, FALSE, sizeof (OxPage));
  g_array_set_clear_func (pages, clear_page);
  for (guint i = 0; i < run->drafts->len; i++)
    {
      OxPage page = finish_draft (run, &g_array_index (run->drafts, OxDraft, i), i + 1);
      g_array_append_val (pages, page);
    }
  const OxTexts *texts = run->job->texts;
  g_autofree char *keywords = g_strjoin (", ", texts->number, texts->revision, ox_status_text (texts->status), NULL);
  OxPageSet set = { .title = texts->title,
                    .author = texts->author,
                    .subject = texts->site,
                    .keywords = keywords,
                    .date = texts->date,
                    .n_pages = pages->len,
                    .pages = (OxPage *) (gpointer) pages->data };
  return ox_page_set_new (&set);
}

/* drafts_new: pages without their frame; (transfer full) */
static GArray *
drafts_new (void)
{
  GArray *drafts = g_array_new (FALSE, FALSE, sizeof (OxDraft));
  g_array_set_clear_func (drafts, clear_draft);
  return drafts;
}

/* add_contents: the first kind of sheets once more, now that it is known which others there are. Empty lines keep their
 * number where they would become fewer; then the numbers of the others still hold. */
static gboolean
add_contents (OxSheetRun *run, GError **error)
{
  const char *kind = g_array_index (run->drafts, OxDraft, 0).kind;
  guint n_first = 0;
  while (n_first < run->drafts->len && g_str_equal (g_array_index (run->drafts, OxDraft, n_first).kind, kind))
    n_first++;
  for (guint lines = 0; lines <= run->contents_lines; lines += run->contents_lines)
    {
      g_autoptr (GArray) again = drafts_new ();
      OxSheetRun second = *run;
      second.drafts = again;
      second.contents = run->drafts;
      second.contents_lines = lines;
      if (!ox_scope_append (&second, error))
        return FALSE;
      if (again->len != n_first)
        continue;
      for (guint i = 0; i < n_first; i++)
        {
          OxDraft old = g_array_index (run->drafts, OxDraft, i);
          g_array_index (run->drafts, OxDraft, i) = g_array_index (again, OxDraft, i);
          g_array_index (again, OxDraft, i) = old;
        }
      return TRUE;
    }
  return TRUE;
}

/* append_drawings: what stands on the paper of the drawings, and the quote, which comes between */
static gboolean
append_drawings (OxSheetRun *run, OxSheetKinds which, const OxForm *lists, GError **error)
{
  const OxForm drawings = run->form;
  if ((which & OX_SHEET_SCOPE) && !ox_scope_append (run, error))
    return FALSE;
  run->form = *lists;
  if ((which & OX_SHEET_QUOTE) && !ox_quote_append (run, error))
    return FALSE;
  run->form = drawings;
  return !(which & OX_SHEET_CREW) || ox_crew_append (run, error);
}

/* count_kinds: lines that the contents will have */
static guint
count_kinds (const OxSheetRun *run, OxSheetKinds which)
{
  guint n = 0;
  for (OxSheetKinds kind = 1; kind < OX_SHEET_ALL; kind <<= 1)
    n += (which & kind) != 0 && (kind != OX_SHEET_QUOTE || run->job->costs->n > 0);
  return n;
}

/* list_paper: of lists and forms beside drawings on @paper: nobody fills in a day sheet on a table of its own */
static const OxPaper *
list_paper (const OxPaper *paper)
{
  return paper->short_mm < LARGE_SHORT_MM ? paper : ox_paper_find (paper->imperial ? "Letter" : "A4");
}

/* append_sheets: all kinds of @options, in their order; a scope drawing among others lists them */
static gboolean
append_sheets (OxSheetRun *run, const OxSheetOptions *options, GError **error)
{
  const OxSheetKinds which = options->which;
  OxSheetOptions other = *options;
  other.paper = options->schedule_paper ? options->schedule_paper : list_paper (run->form.paper);
  const OxForm drawings = run->form, lists = ox_form_new (&other, run->job->units);
  if ((which & OX_SHEET_SCOPE) && run->several)
    run->contents_lines = count_kinds (run, which);
  if (!append_drawings (run, which, &lists, error))
    return FALSE;
  run->form = lists;
  if (which & OX_SHEET_SETUP)
    ox_setup_append (run);
  if (which & OX_SHEET_SCHEDULE)
    ox_schedule_append (run);
  if (which & OX_SHEET_DAYS)
    ox_day_sheets_append (run);
  run->form = drawings;
  return run->contents_lines == 0 || add_contents (run, error);
}

OxPageSet *
ox_sheets_new (const OxJob *job, const OxPlan *plan, const OxSheetOptions *options, GError **error)
{
  g_auto (OxWordsScope) scope = ox_words_scope (options->language);
  if (job->n_rooms == 0)
    {
      g_set_error_literal (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_NO_FLOOR,
                           _ ("The job has no room yet: draw one first."));
      return NULL;
    }
  g_autoptr (GArray) drafts = drafts_new ();
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  OxSheetRun run = { .job = job,
                     .plan = plan,
                     .form = ox_form_new (options, job->units),
                     .asked = options->scale,
                     .has_schedule = (options->which & OX_SHEET_SCHEDULE) != 0,
                     .drafts = drafts,
                     .estimate = estimate };
  g_autoptr (OxReachLines) reach = options->which & OX_SHEET_CREW ? ox_reach_lines_new (plan) : NULL;
  run.reach = reach;
  run.several = (options->which & (options->which - 1)) != 0;
  if (!append_sheets (&run, options, error))
    return NULL;
  if (options->tiles == NULL)
    return finish (&run);
  g_autoptr (OxPageSet) whole = finish (&run);
  return ox_tiles_new (whole, options->tiles, OX_TILES_OVERLAP_MM);
}
