/* Oxturn: tests/app/test-supply - the form of the supply.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/supply.h"

#include "app/dialogs/form.h"
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
  gtk_widget_activate_action (GTK_WIDGET (window), "win.supply", NULL);
  return ox_ui_find_dialog (window);
}

static void
fill (GtkWindow *form, const char *name, const char *text)
{
  ox_ui_fill (GTK_WIDGET (form), name, text);
}

static void
choose (GtkWindow *form, const char *name, guint i)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_DROP_DOWN, name)), i);
}

static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = GTK_IS_LABEL (widget) && gtk_widget_get_visible (widget)
                   && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); !found && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = says (child, text);
  return found;
}

/* 20 A over 100 ft of 12 AWG at 120 V drop by 7.92 V, 6.60 % (NFPA 70 Chapter 9 Table 8, as commonly derived): the same
 * for one cord and for two of 50 ft in series. A circuit of 20 A carries 16 A for hours (NFPA 70, continuous load). */
static void
test_set (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  const OxMachine *machine;

  g_assert_true (says (GTK_WIDGET (form), "residual-current"));
  fill (form, "Voltage, V", "120");
  fill (form, "Current, A", "20");
  choose (form, "Phases", 0);
  choose (form, "Conductor", 2);
  fill (form, "Cord length", "100'");
  g_assert_true (says (GTK_WIDGET (form), "Lost in the cord: 7.9 V, 6.6 %; too much"));
  fill (form, "Circuit, A (0: not known)", "20");
  g_assert_true (says (GTK_WIDGET (form), "A circuit of 20 A carries 16.0 A for 3 hours or longer, and the machine draws 20.0 A"));
  fill (form, "Current, A", "8");
  /* Two fifths of the current, two fifths of the drop: 2.64 %. */
  g_assert_true (says (GTK_WIDGET (form), "Lost in the cord: 3.2 V, 2.6 %; that is fine"));
  g_assert_true (says (GTK_WIDGET (form), "Least circuit for 8.0 A over 3 hours or longer: 10.0 A"));
  fill (form, "Current, A", "20");
  for (guint i = 0; i < 2; i++)
    g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, "Add a Cord"), "clicked");
  fill (form, "Length 1", "15.24");
  fill (form, "Length 2", "15.24");
  choose (form, "Conductor 1", 2);
  choose (form, "Conductor 2", 2);
  g_assert_true (says (GTK_WIDGET (form), "Lost in the cord: 7.9 V, 6.6 %"));
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  machine = job_of (window)->machine;
  g_assert_cmpfloat (machine->volts, ==, 120);
  g_assert_cmpfloat (machine->amperes, ==, 20);
  g_assert_cmpint (machine->phases, ==, 1);
  g_assert_cmpfloat (machine->cord_length, ==, 30.48);
  g_assert_cmpfloat (machine->cord_mm2, ==, 3.31);
  g_assert_cmpfloat (job_of (window)->outfit->circuit_a, ==, 20);
  g_assert_cmpuint (job_of (window)->outfit->n_cords, ==, 2);
  g_assert_cmpfloat (job_of (window)->outfit->cords[1].length, ==, 15.24);
  /* Machine and outfit are one edit. */
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Set Supply");
  ox_session_undo (session);
  g_assert_true (ox_machine_equal (job_of (window)->machine, job->machine));
  g_assert_cmpuint (job_of (window)->outfit->n_cords, ==, 0);
  g_assert_null (ox_session_find_undo_label (session));
  ox_ui_close (window);
}

/* A size of the table and its square millimetres say the same, either way. */
static void
test_conductors (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  GtkWidget *size = ox_ui_find (GTK_WIDGET (form), OX_TYPE_FIELD, "Conductor, mm\302\262");
  GtkDropDown *choice = GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_DROP_DOWN, "Conductor"));

  gtk_drop_down_set_selected (choice, 3);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (size)), ==, "5.26");
  gtk_editable_set_text (GTK_EDITABLE (size), "2.08");
  g_assert_cmpuint (gtk_drop_down_get_selected (choice), ==, 1);
  gtk_editable_set_text (GTK_EDITABLE (size), "3");
  g_assert_cmpuint (gtk_drop_down_get_selected (choice), ==, 0);
  gtk_window_destroy (form);
  ox_ui_close (window);
}

static void
test_refuses (void)
{
  static const char *const rows[][3] = {
    { "Voltage, V", "1001", "0 to 1000" },
    { "Current, A", "-1", "0 to 1000" },
    { "Circuit, A (0: not known)", "much", "no number" },
    { "Length 1", "0", "more than 0" },
    { "mm\302\262 1", "0", "more than 0" },
  };
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);

  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, "Add a Cord"), "clicked");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      fill (form, rows[i][0], rows[i][1]);
      ox_form_accept (form);
      g_assert_true (ox_ui_find_dialog (window) == form);
      if (strstr (ox_form_get_told (form), rows[i][2]) == NULL)
        g_error ("%s: %s", rows[i][0], ox_form_get_told (form));
      fill (form, rows[i][0], "5");
    }
  gtk_window_destroy (form);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/supply/set", test_set);
  g_test_add_func ("/app/supply/conductors", test_conductors);
  g_test_add_func ("/app/supply/refuses", test_refuses);
  return g_test_run ();
}
