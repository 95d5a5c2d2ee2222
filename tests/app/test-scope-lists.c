/* Oxturn: tests/app/test-scope-lists - the form of what is included, what is not, what is taken for granted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/scope-lists.h"

#include "app/dialogs/form.h"
#include "app/field.h"
#include "support/floors.h"
#include "ui.h"

static const OxScope *
scope_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window))->scope;
}

static GtkWindow *
open_form (OxWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.scope-lists", NULL);
  return ox_ui_find_dialog (window);
}

static void
check (GtkWindow *form, const char *name, gboolean active)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_CHECK_BUTTON, name)), active);
}

/* A line of ours left out, one reworded, one of ours taken in, one of the user's added: one edit. */
static void
test_set (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  guint n = scope_of (window)->n_lines[OX_SCOPE_INCLUDED];
  const OxScope *scope;

  g_assert_cmpuint (n, ==, 4);
  check (form, "Use 1", FALSE);
  ox_ui_fill (GTK_WIDGET (form), "Included 2", "Edges by hand.");
  check (form, "Use 5", TRUE);
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, "Add a Line"), "clicked");
  ox_ui_fill (GTK_WIDGET (form), "Included 8", "  A broom.  ");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  scope = scope_of (window);
  g_assert_cmpuint (scope->n_lines[OX_SCOPE_INCLUDED], ==, 5);
  g_assert_cmpstr (scope->lines[OX_SCOPE_INCLUDED][0].text, ==, "Edges by hand.");
  g_assert_cmpstr (scope->lines[OX_SCOPE_INCLUDED][1].text, ==, "");
  g_assert_cmpstr (scope->lines[OX_SCOPE_INCLUDED][3].key, ==, "masking");
  g_assert_cmpstr (scope->lines[OX_SCOPE_INCLUDED][4].text, ==, "A broom.");
  g_assert_cmpuint (scope->n_lines[OX_SCOPE_EXCLUDED], ==, 4);
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Change Scope");
  ox_session_undo (session);
  g_assert_cmpuint (scope_of (window)->n_lines[OX_SCOPE_INCLUDED], ==, n);
  g_assert_null (ox_session_find_undo_label (session));
  ox_ui_close (window);
}

static GtkWidget *
use_of (GtkWindow *form, const char *name)
{
  return ox_ui_find (GTK_WIDGET (form), GTK_TYPE_CHECK_BUTTON, name);
}

/* Somebody's own words are not lost by a tick: only the button behind the line takes them out. */
static void
test_own_words (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  g_autofree char *ours = NULL;

  ours = g_strdup (gtk_editable_get_text (GTK_EDITABLE (ox_ui_find (GTK_WIDGET (form), OX_TYPE_FIELD, "Included 1"))));
  g_assert_true (gtk_widget_get_sensitive (use_of (form, "Use 1")));
  check (form, "Use 1", FALSE);
  ox_ui_fill (GTK_WIDGET (form), "Included 1", "Edges by hand.");
  g_assert_false (gtk_widget_get_sensitive (use_of (form, "Use 1")));
  g_assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (use_of (form, "Use 1"))));
  ox_ui_fill (GTK_WIDGET (form), "Included 1", ours);
  g_assert_true (gtk_widget_get_sensitive (use_of (form, "Use 1")));
  ox_ui_fill (GTK_WIDGET (form), "Included 1", "Edges by hand.");
  ox_form_accept (form);
  form = open_form (window);
  g_assert_false (gtk_widget_get_sensitive (use_of (form, "Use 1")));
  g_assert_true (gtk_widget_get_sensitive (use_of (form, "Use 2")));
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, "Add a Line"), "clicked");
  g_assert_false (gtk_widget_get_sensitive (use_of (form, "Use 8")));
  gtk_window_destroy (form);
  ox_ui_close (window);
}

/* Nothing changed is no edit. */
static void
test_nothing (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);

  ox_form_accept (open_form (window));
  g_assert_null (ox_session_find_undo_label (ox_window_get_session (window)));
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/scope-lists/set", test_set);
  g_test_add_func ("/app/scope-lists/own-words", test_own_words);
  g_test_add_func ("/app/scope-lists/nothing", test_nothing);
  return g_test_run ();
}
