/* Oxturn: tests/app/test-costs - the form of the costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/costs.h"

#include "app/dialogs/form.h"
#include "job/edit.h"
#include "base/words.h"
#include "app/field.h"
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
  gtk_widget_activate_action (GTK_WIDGET (window), "win.costs", NULL);
  return ox_ui_find_dialog (window);
}

static void
press (GtkWindow *form, const char *name)
{
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, name), "clicked");
}

static void
choose (GtkWindow *form, const char *name, guint i)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_DROP_DOWN, name)), i);
}

/* The field that holds @text; NULL when none does. */
static GtkWidget *
find_text (GtkWidget *widget, const char *text)
{
  GtkWidget *found = OX_IS_FIELD (widget) && g_str_equal (ox_field_get_text (OX_FIELD (widget)), text) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); found == NULL && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_text (child, text);
  return found;
}

/* Three lines, of which one is taken out again: what is left is the job's, amounts digit by digit as typed. */
static void
test_set (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  const OxCosts *costs;

  ox_ui_fill (GTK_WIDGET (form), "Currency", " EUR ");
  ox_ui_fill (GTK_WIDGET (form), "Contingency, %", "7.25");
  for (guint i = 0; i < 3; i++)
    press (form, "Add a Rate");
  ox_ui_fill (GTK_WIDGET (form), "Amount 1", "92");
  ox_ui_fill (GTK_WIDGET (form), "Amount 2", "1");
  choose (form, "Per 1", OX_COST_EDGE_METRE);
  choose (form, "Per 3", OX_COST_ABRASIVE_KG);
  ox_ui_fill (GTK_WIDGET (form), "Name 3", "Steel shot");
  ox_ui_fill (GTK_WIDGET (form), "Amount 3", "1.3475");
  press (form, "Remove line 2");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  costs = job_of (window)->costs;
  g_assert_cmpstr (costs->currency, ==, "EUR");
  g_assert_cmpfloat (costs->contingency, ==, 0.0725);
  g_assert_cmpuint (costs->n, ==, 2);
  g_assert_cmpint (costs->rates[0].per, ==, OX_COST_EDGE_METRE);
  g_assert_cmpstr (costs->rates[0].amount, ==, "92");
  g_assert_cmpint (costs->rates[1].per, ==, OX_COST_ABRASIVE_KG);
  g_assert_cmpstr (costs->rates[1].name, ==, "Steel shot");
  g_assert_cmpstr (costs->rates[1].amount, ==, "1.3475");
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Set Costs");
  ox_session_undo (session);
  g_assert_cmpuint (job_of (window)->costs->n, ==, 0);
  g_assert_null (ox_session_find_undo_label (session));
  ox_ui_close (window);
}

/* In the words of the language a sum has its decimal sign; in the job a point, and nothing is another when nobody
 * typed. */
static void
test_decimal_sign (void)
{
  OxCostRate rates[]
      = { { OX_COST_LABOUR_HOUR, (char *) "", (char *) "92.50" }, { OX_COST_FIXED, (char *) "", (char *) "7" } };
  g_autoptr (OxCosts) costs = ox_costs_new (
      &(OxCosts){ .currency = (char *) "EUR", .decimals = 2, .n = 2, .rates = rates, .validity = (char *) "" });
  g_autoptr (OxJob) floor = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxJob) job = ox_job_with_costs (floor, costs, NULL);
  OxWindow *window = ox_ui_open (job);
  OxLanguage german;
  GtkWindow *form;

  g_assert_true (ox_language_find ("de", &german));
  {
    g_auto (OxWordsScope) scope = ox_words_scope (&german);

    gtk_widget_activate_action (GTK_WIDGET (window), "win.costs", NULL);
    form = ox_ui_find_dialog (window);
    g_assert_nonnull (find_text (GTK_WIDGET (form), "92,50"));
    ox_form_accept (form);
    g_assert_null (ox_ui_find_dialog (window));
    g_assert_null (ox_session_find_undo_label (ox_window_get_session (window)));
    gtk_widget_activate_action (GTK_WIDGET (window), "win.costs", NULL);
    form = ox_ui_find_dialog (window);
    gtk_editable_set_text (GTK_EDITABLE (find_text (GTK_WIDGET (form), "7")), "7,25");
    ox_form_accept (form);
  }
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_cmpstr (job_of (window)->costs->rates[0].amount, ==, "92.50");
  g_assert_cmpstr (job_of (window)->costs->rates[1].amount, ==, "7.25");
  ox_ui_close (window);
}

static void
test_refuses (void)
{
  static const char *const wrong[] = { "", "1.23456", "1,000.00", "about 5", "1e3" };
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);

  press (form, "Add a Rate");
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      ox_ui_fill (GTK_WIDGET (form), "Amount 1", wrong[i]);
      ox_form_accept (form);
      g_assert_true (ox_ui_find_dialog (window) == form);
      g_assert_nonnull (strstr (ox_form_get_told (form), "Amount 1"));
      g_assert_nonnull (strstr (ox_form_get_told (form), "at most 4 decimals"));
    }
  ox_ui_fill (GTK_WIDGET (form), "Amount 1", "5");
  ox_ui_fill (GTK_WIDGET (form), "Contingency, %", "101");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "101 was typed; 0 to 100 is allowed"));
  gtk_window_destroy (form);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/costs/set", test_set);
  g_test_add_func ("/app/costs/decimal-sign", test_decimal_sign);
  g_test_add_func ("/app/costs/refuses", test_refuses);
  return g_test_run ();
}
