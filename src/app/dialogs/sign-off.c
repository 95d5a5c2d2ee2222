/* Oxturn: app/dialogs/sign-off - who signed the scope drawing, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/sign-off.h"

#include "app/dialogs/form.h"
#include "app/rows.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxField *name, *date;
} SignOff;

static const char *
or_dash (const char *text)
{
  return *text != '\0' ? text : "\342\200\223";
}

char *
ox_sign_off_words (const OxJob *job)
{
  const OxTexts *texts = job->texts;
  const OxSignOff *sign_off = &job->scope->sign_off;

  if (!ox_scope_is_signed (job->scope))
    return g_strdup_printf (_ ("Drawing %s, revision %s: not signed."), or_dash (texts->number),
                            or_dash (texts->revision));
  return g_strdup_printf (_ ("Drawing %s, revision %s: signed by %s, %s."), or_dash (texts->number),
                          or_dash (texts->revision), sign_off->name, or_dash (sign_off->date));
}

static char *
done (gpointer data)
{
  SignOff *self = data;
  const OxJob *job = ox_session_get_job (self->session);
  g_autofree char *name = g_strstrip (ox_text_clean (ox_field_get_text (self->name), FALSE));
  g_autofree char *date = g_strstrip (ox_text_clean (ox_field_get_text (self->date), FALSE));
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  if (*name == '\0')
    {
      gtk_widget_grab_focus (GTK_WIDGET (self->name));
      return g_strdup (_ ("Type the name of the person who signed."));
    }
  if (g_str_equal (name, job->scope->sign_off.name) && g_str_equal (date, job->scope->sign_off.date))
    return NULL;
  changed = ox_job_signed (job, name, date, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Note Sign-Off"), NULL, NULL);
  return NULL;
}

GtkWindow *
ox_sign_off_open (GtkWindow *parent, OxSession *session)
{
  SignOff *self = g_new0 (SignOff, 1);
  const OxJob *job = ox_session_get_job (session);
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *rows = ox_rows_new ();
  g_autofree char *words = ox_sign_off_words (job);

  self->session = session;
  gtk_box_append (GTK_BOX (body), ox_note_new (words));
  self->name = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ ("Signed _by"));
  self->date = ox_rows_add_field (GTK_GRID (rows), OX_FIELD_TEXT, _ ("_Date"));
  ox_field_set_text (self->name, job->scope->sign_off.name);
  ox_field_set_text (self->date, job->scope->sign_off.date);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->date), "2026-09-14");
  gtk_entry_set_activates_default (GTK_ENTRY (self->name), TRUE);
  gtk_entry_set_activates_default (GTK_ENTRY (self->date), TRUE);
  gtk_box_append (GTK_BOX (body), rows);
  return ox_form_open (parent,
                       &(OxForm){ .title = _ ("Sign-Off"),
                                  .accept = _ ("_Note Down"),
                                  .note = _ ("Holds for this drawing and revision. A later change of floor, machine or "
                                             "scope raises the revision and clears it."),
                                  .body = body,
                                  .done = done,
                                  .data = self,
                                  .free_data = g_free });
}
