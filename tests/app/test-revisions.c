/* Oxturn: tests/app/test-revisions - the form of the revisions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/revisions.h"

#include "app/dialogs/form.h"
#include "job/edit.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

static const OxJob *
job_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window));
}

static GtkWindow *
open_form (OxWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.revisions", NULL);
  return ox_ui_find_dialog (window);
}

static void
press (GtkWindow *form, const char *name)
{
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, name), "clicked");
}

/* Of a signed drawing: the line added becomes its revision, not signed, and the one that was signed keeps who did. */
static void
test_add (void)
{
  g_autoptr (OxJob) bare = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxJob) named = ox_job_with_texts (bare, &(OxTexts){ .revision = (char *) "A" }, NULL);
  g_autoptr (OxJob) job = ox_job_signed (named, "P. Hollow", "2026-11-20", NULL);
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  const OxScope *scope;

  press (form, "Add a Revision");
  ox_ui_fill (GTK_WIDGET (form), "Change 1", "Gate moved");
  ox_ui_fill (GTK_WIDGET (form), "Date 1", "2026-11-32");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "2026-11-32"));
  ox_ui_fill (GTK_WIDGET (form), "Date 1", "2026-11-24");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  scope = job_of (window)->scope;
  g_assert_cmpstr (job_of (window)->texts->revision, ==, "B");
  g_assert_cmpstr (job_of (window)->texts->date, ==, "2026-11-24");
  g_assert_false (ox_scope_is_signed (scope));
  g_assert_cmpuint (scope->n_revisions, ==, 2);
  g_assert_cmpstr (scope->revisions[0].mark, ==, "A");
  g_assert_cmpstr (scope->revisions[0].accepted_by, ==, "P. Hollow");
  g_assert_cmpstr (scope->revisions[1].text, ==, "Gate moved");
  g_assert_cmpstr (ox_session_find_undo_label (ox_window_get_session (window)), ==, "Change Revisions");
  ox_session_undo (ox_window_get_session (window));
  g_assert_true (ox_scope_is_signed (job_of (window)->scope));
  ox_ui_close (window);
}

/* Lines can be mended and taken away as long as nobody signed them. */
static void
test_mend (void)
{
  g_autoptr (OxJob) bare = ox_test_floor_rectangle (10, 8, "compact");
  OxRevision rows[] = { { .mark = (char *) "A" }, { .mark = (char *) "B", .text = (char *) "Dorr" } };
  OxScope draft = *bare->scope;
  g_autoptr (OxScope) scope = NULL;
  g_autoptr (OxJob) job = NULL;
  OxWindow *window;
  GtkWindow *form;

  draft.n_revisions = 2;
  draft.revisions = rows;
  scope = ox_scope_new (&draft);
  job = ox_job_with_scope (bare, scope, NULL);
  window = ox_ui_open (job);
  form = open_form (window);
  ox_ui_fill (GTK_WIDGET (form), "Change 2", "Door");
  press (form, "Remove line 1");
  ox_form_accept (form);
  g_assert_cmpuint (job_of (window)->scope->n_revisions, ==, 1);
  g_assert_cmpstr (job_of (window)->scope->revisions[0].text, ==, "Door");
  g_assert_cmpstr (job_of (window)->texts->revision, ==, "");
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/revisions/add", test_add);
  g_test_add_func ("/app/revisions/mend", test_mend);
  return g_test_run ();
}
