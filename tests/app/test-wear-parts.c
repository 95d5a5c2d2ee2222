/* Oxturn: tests/app/test-wear-parts - the form of the wear parts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/wear-parts.h"

#include "app/dialogs/form.h"
#include "job/edit.h"
#include "support/floors.h"
#include "trade/wear.h"
#include "ui.h"

#include <string.h>

static const OxMachine *
machine_of (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window))->machine;
}

static GtkWindow *
open_form (OxWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.wear-parts", NULL);
  return ox_ui_find_dialog (window);
}

static void
press (GtkWindow *form, const char *name)
{
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, name), "clicked");
}

/* The example machine comes with five parts; hours run are typed, one part goes, one is new. */
static void
test_set (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  const OxMachine *machine;

  g_assert_cmpuint (machine_of (window)->n_wear, ==, 5);
  ox_ui_fill (GTK_WIDGET (form), "Run since, h 1", "31.5");
  press (form, "Remove line 2");
  press (form, "Add a Part");
  ox_ui_fill (GTK_WIDGET (form), "Part 5", "Magnet");
  ox_ui_fill (GTK_WIDGET (form), "Check every, h 5", "200");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  machine = machine_of (window);
  g_assert_cmpuint (machine->n_wear, ==, 5);
  g_assert_cmpstr (machine->wear[0].name, ==, job->machine->wear[0].name);
  g_assert_cmpfloat (machine->wear[0].run_h, ==, 31.5);
  g_assert_cmpstr (machine->wear[1].name, ==, job->machine->wear[2].name);
  g_assert_cmpstr (machine->wear[4].name, ==, "Magnet");
  g_assert_cmpfloat (machine->wear[4].interval_h, ==, 200);
  g_assert_cmpfloat (machine->wear[4].run_h, ==, 0);
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Set Wear Parts");
  ox_session_undo (session);
  g_assert_true (ox_machine_equal (machine_of (window), job->machine));
  ox_ui_close (window);
}

/* Where two machines are at work a part can be that of one of them. */
static void
test_of_one (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxCalendar two = *job->calendar;
  g_autoptr (OxCalendar) calendar = NULL;
  g_autoptr (OxJob) pair = NULL;
  OxWindow *window;
  GtkWindow *form;

  two.machines = 2;
  calendar = ox_calendar_new (&two);
  pair = ox_job_with_calendar (job, calendar, NULL);
  window = ox_ui_open (pair);
  form = open_form (window);
  ox_ui_fill (GTK_WIDGET (form), "Machine, 0: each 1", "2");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_cmpuint (machine_of (window)->wear[0].machine, ==, 2);
  g_assert_cmpuint (machine_of (window)->wear[1].machine, ==, 0);
  ox_ui_close (window);
}

static void
test_refuses (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);

  ox_ui_fill (GTK_WIDGET (form), "Check every, h 3", "0");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "Check every, h 3: 0 was typed; more than 0"));
  ox_ui_fill (GTK_WIDGET (form), "Check every, h 3", "100");
  ox_ui_fill (GTK_WIDGET (form), "Part 3", "  ");
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "Line 3: a wear part needs a name"));
  /* No more lines than a machine can have. */
  for (guint i = 0; i < OX_MACHINE_MAX_WEAR; i++)
    press (form, "Add a Part");
  g_assert_false (gtk_widget_get_sensitive (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, "Add a Part")));
  gtk_window_destroy (form);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

/* A machine without any can be given the usual ones; another one is not offered them. */
static void
test_usual (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  guint n;
  const OxWearStarter *starters = ox_wear_starters (&n);

  for (guint i = 0; i < 5; i++)
    press (form, "Remove line 1");
  ox_form_accept (form);
  g_assert_cmpuint (machine_of (window)->n_wear, ==, 0);
  form = open_form (window);
  press (form, "Add the Usual Parts");
  ox_form_accept (form);
  g_assert_cmpuint (machine_of (window)->n_wear, ==, n);
  g_assert_cmpfloat (machine_of (window)->wear[0].interval_h, ==, (starters[0].least_h + starters[0].most_h) / 2);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/wear-parts/set", test_set);
  g_test_add_func ("/app/wear-parts/of-one", test_of_one);
  g_test_add_func ("/app/wear-parts/refuses", test_refuses);
  g_test_add_func ("/app/wear-parts/usual", test_usual);
  return g_test_run ();
}
