/* Oxturn: app/dialogs/scope-lists - what is included, what is not, what is taken for granted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/scope-lists.h"

#include "app/dialogs/form.h"
#include "app/dialogs/lines.h"
#include "job/edit.h"
#include "job/text.h"

#include <glib/gi18n-lib.h>

#define KEY "ox-scope-key"
#define OURS "ox-scope-ours" /* words of that line as they are ours */

enum
{
  USED,
  TEXT
};

typedef struct
{
  OxSession *session; /* Borrowed: the parent window keeps it */
  OxLines *lists[OX_SCOPE_LISTS];
} Lists;

/* --- Lines --- */

/* Only a line of ours as it is can be left unused: one in the user's own words would be gone with them, and has its
 * button for that. */
static void
worded_cb (OxField *text, GtkCheckButton *used)
{
  const char *ours = g_object_get_data (G_OBJECT (text), OURS);
  gboolean own = ours == NULL || !g_str_equal (ours, ox_field_get_text (text));

  if (own)
    gtk_check_button_set_active (used, TRUE);
  gtk_widget_set_sensitive (GTK_WIDGET (used), !own);
  gtk_widget_set_tooltip_text (GTK_WIDGET (used),
                               own ? _ ("In your own words: take it out with the button behind it") : NULL);
}

static void
make_line (GtkWidget **cells, gpointer data)
{
  (void) data;
  cells[USED] = gtk_check_button_new ();
  cells[TEXT] = ox_field_new (OX_FIELD_TEXT, "");
  g_signal_connect_object (cells[TEXT], "changed", G_CALLBACK (worded_cb), cells[USED], (GConnectFlags) 0);
  worded_cb (OX_FIELD (cells[TEXT]), GTK_CHECK_BUTTON (cells[USED]));
  gtk_editable_set_width_chars (GTK_EDITABLE (cells[TEXT]), 66);
  gtk_widget_set_hexpand (cells[TEXT], TRUE);
}

static void
add_line (OxLines *lines, OxScopeList list, const OxScopeLine *line, gboolean used)
{
  GtkWidget **cells = ox_lines_add (lines);

  if (cells == NULL)
    return;
  g_object_set_data_full (G_OBJECT (cells[TEXT]), KEY, g_strdup (line->key), g_free);
  if (*line->key != '\0')
    g_object_set_data_full (G_OBJECT (cells[TEXT]), OURS,
                            g_strdup (ox_scope_line_text (list, &(OxScopeLine){ line->key, (char *) "" })), g_free);
  ox_field_set_text (OX_FIELD (cells[TEXT]), ox_scope_line_text (list, line));
  worded_cb (OX_FIELD (cells[TEXT]), GTK_CHECK_BUTTON (cells[USED]));
  if (!used)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (cells[USED]), FALSE);
}

static gboolean
is_used (const OxScope *scope, OxScopeList list, const char *key)
{
  for (guint i = 0; i < scope->n_lines[list]; i++)
    if (g_str_equal (scope->lines[list][i].key, key))
      return TRUE;
  return FALSE;
}

/* Those of the job in their order, then those of ours that it does not have. */
static void
fill (OxLines *lines, const OxScope *scope, OxScopeList list)
{
  guint n;
  const OxScopeOurs *ours = ox_scope_ours_list (&n);

  for (guint i = 0; i < scope->n_lines[list]; i++)
    add_line (lines, list, &scope->lines[list][i], TRUE);
  for (guint i = 0; i < n; i++)
    if (ours[i].list == list && !is_used (scope, list, ours[i].key))
      add_line (lines, list, &(OxScopeLine){ (char *) ours[i].key, (char *) "" }, FALSE);
}

/* A line of ours that was left as it is follows the language of the sheets. Returns: FALSE for one that is not used or
 * empty. */
static gboolean
read_line (GtkWidget **cells, OxScopeList list, OxScopeLine *line)
{
  const char *key = g_object_get_data (G_OBJECT (cells[TEXT]), KEY);

  if (!gtk_check_button_get_active (GTK_CHECK_BUTTON (cells[USED])))
    return FALSE;
  line->key = (char *) (key != NULL ? key : "");
  line->text = g_strstrip (ox_text_clean (ox_field_get_text (OX_FIELD (cells[TEXT])), FALSE));
  if (*line->text != '\0'
      && g_str_equal (line->text, ox_scope_line_text (list, &(OxScopeLine){ line->key, (char *) "" })))
    g_clear_pointer (&line->text, g_free);
  else if (*line->text == '\0')
    {
      g_clear_pointer (&line->text, g_free);
      return FALSE;
    }
  return TRUE;
}

/* --- All of it --- */

static char *
apply (Lists *self, const OxScope *draft)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_autoptr (OxScope) scope = ox_scope_new (draft);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) changed = NULL;

  if (ox_scope_equal (scope, job->scope))
    return NULL;
  changed = ox_job_with_scope (job, scope, &error);
  if (changed == NULL)
    return g_strdup (error->message);
  ox_session_apply (self->session, changed, _ ("Change Scope"), NULL, NULL);
  return NULL;
}

static char *
done (gpointer data)
{
  Lists *self = data;
  OxScope draft = *ox_session_get_job (self->session)->scope;
  char *why;

  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      guint n = ox_lines_get_count (self->lists[list]);

      draft.n_lines[list] = 0;
      draft.lines[list] = g_new0 (OxScopeLine, MAX (n, 1));
      for (guint i = 0; i < n; i++)
        if (read_line (ox_lines_get (self->lists[list], i), list, &draft.lines[list][draft.n_lines[list]]))
          draft.n_lines[list]++;
    }
  why = apply (self, &draft);
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      for (guint i = 0; i < draft.n_lines[list]; i++)
        g_free (draft.lines[list][i].text);
      g_free (draft.lines[list]);
    }
  return why;
}

static GtkWidget *
make_body (Lists *self, const OxScope *scope)
{
  const char *const names[] = { _ ("Included"), _ ("Not included"), _ ("Assumption") };
  const char *const titles[] = { _ ("Included"), _ ("Not Included"), _ ("Assumptions") };
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *stack = gtk_stack_new ();
  GtkWidget *switcher = gtk_stack_switcher_new ();

  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (stack));
  gtk_widget_set_halign (switcher, GTK_ALIGN_CENTER);
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      self->lists[list] = ox_lines_new (&(OxLinesKind){ .headings = { _ ("Use"), names[list] },
                                                        .add = _ ("_Add a Line"),
                                                        .most = OX_SCOPE_LINES_MOST,
                                                        .make = make_line });
      fill (self->lists[list], scope, list);
      gtk_stack_add_titled (GTK_STACK (stack), ox_lines_get_widget (self->lists[list]), NULL, titles[list]);
    }
  gtk_box_append (GTK_BOX (body), switcher);
  gtk_box_append (GTK_BOX (body), stack);
  return body;
}

GtkWindow *
ox_scope_lists_open (GtkWindow *parent, OxSession *session)
{
  Lists *self = g_new0 (Lists, 1);

  self->session = session;
  return ox_form_open (parent,
                       &(OxForm){ .title = _ ("Scope of Work"),
                                  .accept = _ ("_Set"),
                                  .note = _ ("These lines stand on the scope drawing. Reword them as the job "
                                             "needs; those left as they are follow the language of the sheets."),
                                  .body = make_body (self, ox_session_get_job (session)->scope),
                                  .done = done,
                                  .data = self,
                                  .free_data = g_free });
}
