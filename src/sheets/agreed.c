/* Oxturn: sheets/agreed - what client and contractor agree on, as blocks of the scope drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/agreed.h"
#include "base/words.h"

#define NOTHING "\xe2\x80\x93"

static const char *
or_dash (const char *text)
{
  return text[0] != '\0' ? text : NOTHING;
}

static void
add_numbered (OxBlock *block, guint *number, const char *text)
{
  g_autofree char *mark = g_strdup_printf ("%u", ++*number);
  ox_block_add_text (block, mark, text);
}

OxBlock *
ox_agreed_lines_new (const OxSheetRun *run, OxScopeList list)
{
  static const char *const titles[OX_SCOPE_LISTS]
      = { N_ ("Included"), N_ ("Not included"), N_ ("Assumptions and notes") };
  OxBlock *block = ox_block_new (_ (titles[list]), run->form.block_mm, run->form.body_mm);
  const OxScope *scope = run->job->scope;
  guint number = 0;
  for (guint i = 0; i < scope->n_lines[list]; i++)
    add_numbered (block, &number, ox_scope_line_text (list, &scope->lines[list][i]));
  g_auto (GStrv) own = g_strsplit (list == OX_SCOPE_ASSUMED ? run->job->texts->notes : "", "\n", -1);
  for (guint i = 0; own[i] != NULL; i++)
    if (g_strstrip (own[i])[0] != '\0')
      add_numbered (block, &number, own[i]);
  return block;
}

static void
add_revision (OxBlock *block, const OxRevision *row)
{
  g_autofree char *accepted = row->accepted_on[0] != '\0'
                                  ? g_strdup_printf ("%s, %s", row->accepted_by, row->accepted_on)
                                  : g_strdup (row->accepted_by);
  ox_block_add_cells (block, FALSE, or_dash (row->mark), or_dash (row->date), ox_revision_text (row), row->author,
                      accepted, NULL);
}

OxBlock *
ox_agreed_revisions_new (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Rev."), 0.08, OX_ALIGN_START },
                               { _ ("Date"), 0.23, OX_ALIGN_START },
                               { _ ("Change"), 0.25, OX_ALIGN_START },
                               { _ ("Drawn by"), 0.21, OX_ALIGN_START },
                               { _ ("Accepted"), 0.23, OX_ALIGN_START } };
  const OxTexts *texts = run->job->texts;
  const OxScope *scope = run->job->scope;
  OxBlock *block = ox_block_new (_ ("Revisions"), run->form.block_mm, run->form.body_mm);
  OxRevision present
      = { texts->revision, texts->date, texts->author, (char *) "", FALSE, scope->sign_off.name, scope->sign_off.date };
  gboolean listed = FALSE;
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < scope->n_revisions; i++)
    {
      OxRevision row = scope->revisions[i];
      if (g_str_equal (row.mark, texts->revision))
        {
          listed = TRUE;
          row.date = row.date[0] != '\0' ? row.date : present.date;
          row.author = row.author[0] != '\0' ? row.author : present.author;
          row.accepted_by = present.accepted_by;
          row.accepted_on = present.accepted_on;
        }
      add_revision (block, &row);
    }
  if (!listed)
    add_revision (block, &present);
  return block;
}

OxBlock *
ox_agreed_sign_off_new (const OxSheetRun *run)
{
  const OxTexts *texts = run->job->texts;
  const OxSignOff *sign_off = &run->job->scope->sign_off;
  OxBlock *block = ox_block_new (_ ("Sign-off"), run->form.block_mm, run->form.body_mm);
  g_autofree char *accepted
      = texts->revision[0] != '\0'
            ? g_strdup_printf (_ ("Accepted as the scope of work: drawing %s, revision %s."), or_dash (texts->number),
                               texts->revision)
            : g_strdup_printf (_ ("Accepted as the scope of work: drawing %s."), or_dash (texts->number));
  ox_block_add_text (block, NULL, accepted);
  if (ox_scope_is_signed (run->job->scope))
    {
      g_autofree char *who = g_strdup_printf (_ ("Signed: %s, %s"), sign_off->name, or_dash (sign_off->date));
      ox_block_add_text (block, NULL, who);
    }
  else
    {
      ox_block_add_text (block, NULL, "");
      ox_block_add_blank (block, _ ("Name in print"), 0.6, FALSE);
      ox_block_add_blank (block, _ ("Date"), 0.4, TRUE);
      ox_block_add_blank (block, _ ("Signature"), 1.0, TRUE);
    }
  ox_block_set_foot (block);
  return block;
}
