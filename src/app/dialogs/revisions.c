/* Oxturn: app/dialogs/revisions - the table of revisions of the drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/revisions.h"

#include "app/dialogs/form.h"
#include "app/dialogs/lines.h"
#include "base/shown.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

#define ROW "ox-revision"
#define N_CELLS 4

enum
{
  MARK,
  DATE,
  AUTHOR,
  TEXT
};

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  const OxJob *job;   /* Owned: what the form was opened with */
  OxLines *lines;
  gboolean filling;
} Revisions;

/* --- Lines --- */

/* A line that the user adds goes on from the last one. */
static void
make_line (GtkWidget **cells, gpointer data)
{
  static const int widths[N_CELLS] = { 6, 11, 18, 30 };
  Revisions *self = data;

  for (guint i = 0; i < N_CELLS; i++)
    {
      cells[i] = ox_field_new (OX_FIELD_TEXT, "");
      gtk_editable_set_width_chars (GTK_EDITABLE (cells[i]), widths[i]);
      gtk_editable_set_max_width_chars (GTK_EDITABLE (cells[i]), widths[i]);
    }
  gtk_entry_set_placeholder_text (GTK_ENTRY (cells[DATE]), "2026-09-14");
  if (self->filling)
    return;
  {
    guint n = self->lines != NULL ? ox_lines_get_count (self->lines) : 0;
    const char *last
        = n > 0 ? ox_field_get_text (OX_FIELD (ox_lines_get (self->lines, n - 1)[MARK])) : self->job->texts->revision;
    g_autofree char *next = ox_revision_next (last);

    ox_field_set_text (OX_FIELD (cells[MARK]), next);
    ox_field_set_text (OX_FIELD (cells[AUTHOR]), self->job->texts->author);
  }
}

static void
add_line (Revisions *self, const OxRevision *row)
{
  GtkWidget **cells = ox_lines_add (self->lines);

  if (cells == NULL)
    return;
  ox_field_set_text (OX_FIELD (cells[MARK]), row->mark);
  ox_field_set_text (OX_FIELD (cells[DATE]), row->date);
  ox_field_set_text (OX_FIELD (cells[AUTHOR]), row->author);
  ox_field_set_text (OX_FIELD (cells[TEXT]), row->text);
  if (row->after_sign_off)
    gtk_entry_set_placeholder_text (GTK_ENTRY (cells[TEXT]), ox_revision_text (row));
  if (row->accepted_by[0] != '\0')
    {
      g_autofree char *tip = g_strdup_printf (_ ("Signed: %s, %s"), row->accepted_by, row->accepted_on);

      gtk_editable_set_editable (GTK_EDITABLE (cells[MARK]), FALSE);
      gtk_widget_set_tooltip_text (cells[MARK], tip);
      gtk_widget_set_sensitive (cells[N_CELLS], FALSE);
    }
  g_object_set_data (G_OBJECT (cells[MARK]), ROW, (gpointer) row);
}

static char *
text_of (GtkWidget *cell)
{
  return g_strstrip (ox_text_clean (ox_field_get_text (OX_FIELD (cell)), FALSE));
}

/* Texts of @row are to be freed, those of who accepted it are the job's. Returns: (transfer full) (nullable): why it is
 * none */
static char *
read_line (GtkWidget **cells, guint i, OxRevision *row)
{
  const OxRevision *old = g_object_get_data (G_OBJECT (cells[MARK]), ROW);

  *row = old != NULL ? *old : (OxRevision){ .mark = NULL };
  row->mark = text_of (cells[MARK]);
  row->date = text_of (cells[DATE]);
  row->author = text_of (cells[AUTHOR]);
  row->text = text_of (cells[TEXT]);
  if (*row->mark == '\0' && old == NULL)
    return g_strdup_printf (_ ("Line %u has no mark; one such as B is needed"), i + 1);
  if (ox_text_is_date (row->date))
    return NULL;
  gtk_widget_grab_focus (cells[DATE]);
  return g_strdup_printf (_ ("Date %u: “%s” is no day; one such as 2026-09-14 is needed, or nothing"), i + 1,
                          ox_shown (row->date).text);
}

/* --- All of it --- */

/* @latest: (nullable): the line that was added last, which the drawing becomes; (transfer full) */
static OxJob *
edit (Revisions *self, const OxScope *scope, const OxRevision *latest, GError **error)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxJob) raised = NULL;
  OxTexts texts = *job->texts;

  if (latest == NULL)
    return ox_job_with_scope (job, scope, error);
  texts.revision = latest->mark;
  texts.date = latest->date;
  texts.author = latest->author[0] != '\0' ? latest->author : texts.author;
  raised = ox_job_with_texts (job, &texts, error);
  if (raised == NULL)
    return NULL;
  {
    OxScope draft = *scope;
    g_autoptr (OxScope) left = NULL;

    draft.sign_off = raised->scope->sign_off;
    left = ox_scope_new (&draft);
    return ox_job_with_scope (raised, left, error);
  }
}

static char *
apply (Revisions *self, OxRevision *rows, guint n)
{
  const OxJob *job = ox_session_get_job (self->session);
  GtkWidget **last = n > 0 ? ox_lines_get (self->lines, n - 1) : NULL;
  gboolean added = last != NULL && g_object_get_data (G_OBJECT (last[MARK]), ROW) == NULL;
  OxScope draft = *job->scope;
  g_autoptr (OxScope) scope = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  draft.n_revisions = n;
  draft.revisions = rows;
  scope = ox_scope_new (&draft);
  if (ox_scope_equal (scope, job->scope))
    return NULL;
  changed = edit (self, scope, added ? &rows[n - 1] : NULL, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Change Revisions"), NULL, NULL);
  return NULL;
}

static char *
done (gpointer data)
{
  Revisions *self = data;
  guint n = ox_lines_get_count (self->lines), read = 0;
  g_autofree OxRevision *rows = g_new0 (OxRevision, MAX (n, 1));
  char *why = NULL;

  for (; read < n && why == NULL; read++)
    why = read_line (ox_lines_get (self->lines, read), read, &rows[read]);
  if (why == NULL)
    why = apply (self, rows, n);
  for (guint i = 0; i < read; i++)
    {
      g_free (rows[i].mark);
      g_free (rows[i].date);
      g_free (rows[i].author);
      g_free (rows[i].text);
    }
  return why;
}

static void
revisions_free (gpointer data)
{
  ox_job_unref (((Revisions *) data)->job);
  g_free (data);
}

GtkWindow *
ox_revisions_open (GtkWindow *parent, OxSession *session)
{
  Revisions *self = g_new0 (Revisions, 1);

  self->session = session;
  self->job = ox_job_ref (ox_session_get_job (session));
  self->lines = ox_lines_new (&(OxLinesKind){ .headings = { _ ("Mark"), _ ("Date"), _ ("Drawn by"), _ ("Change") },
                                              .add = _ ("_Add a Revision"),
                                              .most = OX_REVISIONS_MOST,
                                              .make = make_line,
                                              .data = self });
  self->filling = TRUE;
  for (guint i = 0; i < self->job->scope->n_revisions; i++)
    add_line (self, &self->job->scope->revisions[i]);
  self->filling = FALSE;
  return ox_form_open (parent,
                       &(OxForm){ .title = _ ("Revisions"),
                                  .accept = _ ("_Set"),
                                  .note = _ ("The oldest stands first. A line added here becomes the revision of "
                                             "the drawing. Lines that somebody signed stay."),
                                  .body = ox_lines_get_widget (self->lines),
                                  .done = done,
                                  .data = self,
                                  .free_data = revisions_free });
}
