/* Oxturn: job/sign-off - a drawing that was signed stays what was signed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/sign-off.h"
#include "job/same.h"
#include "job/text.h"

/* The revisions of a job in the making; strings belong to the two jobs and to @chunk. */
typedef struct
{
  GArray *rows; /* of OxRevision */
  GStringChunk *chunk;
} Table;

static OxRevision *
find_row (const Table *table, const char *mark)
{
  for (guint i = 0; i < table->rows->len; i++)
    if (g_str_equal (g_array_index (table->rows, OxRevision, i).mark, mark))
      return &g_array_index (table->rows, OxRevision, i);
  return NULL;
}

static gboolean
was_accepted (const Table *table, const char *mark)
{
  const OxRevision *row = find_row (table, mark);
  return row && row->accepted_by[0] != '\0';
}

/* What was accepted before the edit is accepted after it. */
static void
keep_accepted (Table *table, const OxScope *old)
{
  guint place = 0;
  for (guint i = 0; i < old->n_revisions; i++)
    {
      OxRevision *row = find_row (table, old->revisions[i].mark);
      if (old->revisions[i].accepted_by[0] == '\0')
        continue;
      if (row)
        {
          row->accepted_by = old->revisions[i].accepted_by;
          row->accepted_on = old->revisions[i].accepted_on;
          continue;
        }
      g_array_insert_val (table->rows, place, old->revisions[i]);
      place++;
    }
}

static void
note_accepted (Table *table, const OxJob *old)
{
  const OxSignOff *sign_off = &old->scope->sign_off;
  OxRevision *row = find_row (table, sign_off->revision);
  if (!row)
    {
      /* What stands in the title block may be any words; a revision has a day or none. */
      OxRevision made = { .mark = sign_off->revision,
                          .date = ox_text_is_date (old->texts->date) ? old->texts->date : NULL,
                          .author = old->texts->author };
      g_array_append_val (table->rows, made);
      row = find_row (table, sign_off->revision);
    }
  row->accepted_by = sign_off->name;
  row->accepted_on = sign_off->date;
}

/* @wanted where no line has it, else the next one that none has */
static char *
free_mark (const Table *table, const char *wanted)
{
  char *mark = g_string_chunk_insert (table->chunk, wanted);
  while (find_row (table, mark))
    {
      g_autofree char *next = ox_revision_next (mark);
      mark = g_string_chunk_insert (table->chunk, next);
    }
  return mark;
}

static void
replace_texts (OxJob *job, const OxTexts *draft)
{
  OxTexts *texts = ox_texts_copy (draft);
  ox_texts_free (job->texts);
  job->texts = texts;
}

static void
replace_scope (OxJob *job, const Table *table, const OxSignOff *sign_off)
{
  OxScope draft = *job->scope;
  draft.n_revisions = table->rows->len;
  draft.revisions = (OxRevision *) (gpointer) table->rows->data;
  draft.sign_off = *sign_off;
  OxScope *scope = ox_scope_new (&draft);
  ox_scope_unref (job->scope);
  job->scope = scope;
}

/* A revision of its own for what @job has become; @changed: it was signed a moment ago */
static void
raise_revision (Table *table, const OxJob *old, OxJob *job, gboolean changed)
{
  OxTexts texts = *job->texts;
  gboolean typed = !g_str_equal (texts.revision, old->texts->revision) && !was_accepted (table, texts.revision);
  if (!typed)
    texts.revision = free_mark (table, texts.revision);
  if (!find_row (table, texts.revision))
    {
      OxRevision row = { .mark = texts.revision, .after_sign_off = changed };
      g_array_append_val (table->rows, row);
    }
  if (changed && g_str_equal (texts.date, old->texts->date))
    texts.date = NULL;
  if (changed && texts.status[0] != '\0' && g_str_equal (texts.status, old->texts->status))
    texts.status = (char *) "for approval";
  replace_scope (job, table, &(OxSignOff){ .number = NULL });
  replace_texts (job, &texts);
}

static gboolean
is_same_sign_off (const OxJob *old, const OxJob *job)
{
  const OxSignOff *a = &old->scope->sign_off, *b = &job->scope->sign_off;
  return ox_scope_is_signed (job->scope) && g_str_equal (a->number, b->number)
         && g_str_equal (a->revision, b->revision);
}

void
ox_sign_off_keep (const OxJob *old, OxJob *job)
{
  gboolean was_signed = ox_scope_is_signed (old->scope);
  if (was_signed && ox_job_same_drawing (old, job) && is_same_sign_off (old, job))
    return;
  if (!was_signed && job->scope == old->scope && g_str_equal (old->texts->revision, job->texts->revision))
    return;
  const OxSignOff kept = job->scope->sign_off;
  g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (OxRevision));
  g_autoptr (GStringChunk) chunk = g_string_chunk_new (256);
  g_array_append_vals (rows, job->scope->revisions, job->scope->n_revisions);
  Table table = { rows, chunk };
  keep_accepted (&table, old->scope);
  if (was_signed)
    note_accepted (&table, old);
  if (was_signed || was_accepted (&table, job->texts->revision))
    raise_revision (&table, old, job, was_signed);
  else
    replace_scope (job, &table, &kept);
}
