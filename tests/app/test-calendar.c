/* Oxturn: tests/app/test-calendar - the form of the calendar.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/calendar.h"

#include "app/dialogs/form.h"
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
  gtk_widget_activate_action (GTK_WIDGET (window), "win.calendar", NULL);
  return ox_ui_find_dialog (window);
}

static void
tick (GtkWindow *form, const char *day, gboolean on)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_CHECK_BUTTON, day)), on);
}

/* Every figure reaches the job, as one edit with a name, and undo brings the old calendar back. */
static void
test_set (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  const OxCalendar *calendar;

  ox_ui_fill (GTK_WIDGET (form), "First day, year-month-day", "2026-11-30");
  ox_ui_fill (GTK_WIDGET (form), "Start of the shift", "6:30");
  ox_ui_fill (GTK_WIDGET (form), "Shift, h", "9,5");
  ox_ui_fill (GTK_WIDGET (form), "Breaks in it, min", "40");
  ox_ui_fill (GTK_WIDGET (form), "Set-up, min", "50");
  ox_ui_fill (GTK_WIDGET (form), "Clean-up, min", "25");
  ox_ui_fill (GTK_WIDGET (form), "Refill of the hopper, min", "4");
  ox_ui_fill (GTK_WIDGET (form), "Drum change, min", "12");
  ox_ui_fill (GTK_WIDGET (form), "Wear check, min", "15");
  ox_ui_fill (GTK_WIDGET (form), "Noise, dB(A) (0: not measured)", "92,5");
  ox_ui_fill (GTK_WIDGET (form), "Silica at the machine, µg/m³", "18");
  ox_ui_fill (GTK_WIDGET (form), "Silica at edge work, µg/m³", "240");
  ox_ui_fill (GTK_WIDGET (form), "Machines at work together", "2");
  tick (form, "Fri", FALSE);
  tick (form, "Sat", TRUE);
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  calendar = job_of (window)->calendar;
  g_assert_cmpstr (calendar->first_day, ==, "2026-11-30");
  g_assert_cmpuint (calendar->start_min, ==, 6 * 60 + 30);
  g_assert_cmpfloat (calendar->shift_h, ==, 9.5);
  g_assert_cmpfloat (calendar->break_min, ==, 40);
  g_assert_cmpfloat (calendar->noise_db, ==, 92.5);
  g_assert_cmpfloat (calendar->silica_machine, ==, 18);
  g_assert_cmpfloat (calendar->silica_hand, ==, 240);
  g_assert_cmpfloat (calendar->setup_min, ==, 50);
  g_assert_cmpfloat (calendar->cleanup_min, ==, 25);
  g_assert_cmpfloat (calendar->refill_min, ==, 4);
  g_assert_cmpfloat (calendar->drum_change_min, ==, 12);
  g_assert_cmpfloat (calendar->wear_check_min, ==, 15);
  g_assert_cmpuint (calendar->machines, ==, 2);
  g_assert_cmpuint (calendar->days, ==, 0x2f);
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Set Calendar");
  ox_session_undo (session);
  g_assert_true (ox_calendar_equal (job_of (window)->calendar, job->calendar));
  g_assert_null (ox_session_find_undo_label (session));
  ox_ui_close (window);
}

/* What is out of range is refused with what was typed and what is allowed; the form stays, and nothing is changed. */
static void
test_refuses (void)
{
  static const struct
  {
    const char *field, *wrong, *said, *right;
  } rows[] = {
    { "Shift, h", "25", "Shift, h: 25 was typed; more than 0 and at most 24 is allowed", "8" },
    { "Breaks in it, min", "-1", "-1 was typed; 0 to 1440", "45" },
    { "Wear check, min", "soon", "no number", "20" },
    { "Machines at work together", "21", "1 to 20", "1" },
    { "Machines at work together", "1.5", "whole number", "1" },
    { "Start of the shift", "24:00", "0:00 to 23:59", "7" },
    { "Start of the shift", "7:61", "0:00 to 23:59", "7:00" },
    { "First day, year-month-day", "2026-02-30", "no day", "" },
  };
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      ox_ui_fill (GTK_WIDGET (form), rows[i].field, rows[i].wrong);
      ox_form_accept (form);
      g_assert_true (ox_ui_find_dialog (window) == form);
      if (strstr (ox_form_get_told (form), rows[i].said) == NULL)
        g_error ("%s: %s", rows[i].field, ox_form_get_told (form));
      ox_ui_fill (GTK_WIDGET (form), rows[i].field, rows[i].right);
    }
  for (guint i = 0; i < 5; i++)
    tick (form, (const char *const[]){ "Mon", "Tue", "Wed", "Thu", "Fri" }[i], FALSE);
  ox_form_accept (form);
  g_assert_nonnull (strstr (ox_form_get_told (form), "one at least"));
  gtk_window_destroy (form);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

/* Set with nothing changed is no edit. By keys alone: Enter sets, Escape leaves. */
static void
test_keys (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);

  gtk_test_widget_wait_for_draw (GTK_WIDGET (form));
  ox_ui_keys (GTK_WIDGET (form), "\n");
  OX_WAIT_FOR (ox_ui_find_dialog (window) == NULL);
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  form = open_form (window);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (form));
  ox_ui_keys (GTK_WIDGET (form), "2026-12-01\n");
  OX_WAIT_FOR (ox_ui_find_dialog (window) == NULL);
  g_assert_cmpstr (job_of (window)->calendar->first_day, ==, "2026-12-01");
  form = open_form (window);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (form));
  ox_ui_keys (GTK_WIDGET (form), "\033");
  OX_WAIT_FOR (ox_ui_find_dialog (window) == NULL);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/calendar/set", test_set);
  g_test_add_func ("/app/calendar/refuses", test_refuses);
  g_test_add_func ("/app/calendar/keys", test_keys);
  return g_test_run ();
}
