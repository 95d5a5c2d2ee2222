/* Oxturn: tests/app/test-sign-off - the form for who signed, and what a change does to it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/sign-off.h"

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
  gtk_widget_activate_action (GTK_WIDGET (window), "win.sign-off", NULL);
  return ox_ui_find_dialog (window);
}

static OxJob *
make_job (void)
{
  g_autoptr (OxJob) bare = ox_test_floor_rectangle (10, 8, "compact");

  return ox_job_with_texts (bare, &(OxTexts){ .number = (char *) "OX-7", .revision = (char *) "A" }, NULL);
}

/* Refused without a name or with a day that is none; noted; cleared by a change, which the window says; back with undo.
 */
static void
test_note_and_clear (void)
{
  g_autoptr (OxJob) job = make_job ();
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  g_autoptr (OxJob) changed = NULL;
  g_autofree char *words = NULL;

  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "name of the person"));
  ox_ui_fill (GTK_WIDGET (form), "Signed by", "P. Hollow");
  ox_ui_fill (GTK_WIDGET (form), "Date", "tomorrow");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "is no day"));
  ox_ui_fill (GTK_WIDGET (form), "Date", "2026-11-24");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  words = ox_sign_off_words (job_of (window));
  g_assert_cmpstr (words, ==, "Drawing OX-7, revision A: signed by P. Hollow, 2026-11-24.");
  changed = ox_job_with_side (job_of (window), "R1", 0, (OxSide){ OX_SIDE_OPEN, 0 }, NULL);
  ox_session_apply (session, changed, "Open Side", NULL, NULL);
  g_assert_false (ox_scope_is_signed (job_of (window)->scope));
  g_assert_nonnull (strstr (ox_window_get_told (window), "revision B"));
  ox_session_undo (session);
  g_assert_true (ox_scope_is_signed (job_of (window)->scope));
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/sign-off/note-and-clear", test_note_and_clear);
  return g_test_run ();
}
