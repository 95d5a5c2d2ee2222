/* Oxturn: tests/app/test-record - what is done, marked in the window.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/field.h"
#include "job/edit.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

static OxWindow *window;
static OxSession *session;

static void
open_hall (const char *date)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");

  window = ox_ui_open (job);
  session = ox_window_get_session (window);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", "record");
  ox_ui_settle (window);
  if (date != NULL)
    ox_ui_fill (GTK_WIDGET (window), "Day, year-month-day", date);
  gtk_widget_grab_focus (GTK_WIDGET (ox_window_get_canvas (window)));
}

static void
press (const char *name)
{
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, name), "clicked");
  ox_ui_settle (window);
}

static void
fill (const char *name, const char *text)
{
  ox_ui_fill (GTK_WIDGET (window), name, text);
  gtk_widget_grab_focus (GTK_WIDGET (ox_window_get_canvas (window)));
}

/* Numbers of the strips that are done, "1 2 5". */
static char *
done_strips (void)
{
  const OxPlan *plan = ox_session_find_plan (session);
  g_autoptr (GString) text = g_string_new ("");

  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].done > 0)
      g_string_append_printf (text, "%s%u", text->len > 0 ? " " : "", i + 1);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
assert_done (const char *expected)
{
  g_autofree char *done = NULL;

  ox_ui_settle (window);
  done = done_strips ();
  g_assert_cmpstr (done, ==, expected);
}

static OxPixel
middle_of (guint number)
{
  const OxStrip *strip = &ox_session_find_plan (session)->strips[number - 1];
  OxPoint middle = { (strip->a.x + strip->b.x) / 2, (strip->a.y + strip->b.y) / 2 };

  return ox_view_to_pixel (ox_canvas_get_view (ox_window_get_canvas (window)), middle);
}

static void
drag (guint from, guint to)
{
  OxCanvas *canvas = ox_window_get_canvas (window);

  ox_canvas_press (canvas, middle_of (from), OX_HOLD_NONE, 1);
  ox_canvas_motion (canvas, middle_of (to), OX_HOLD_NONE);
  ox_canvas_release (canvas, middle_of (to), OX_HOLD_NONE);
}

static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget)
                   && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); !found && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = says (child, text);
  return found;
}

/* By numbers alone, as a crew says them; each time one edit with a name. */
static void
test_numbers (void)
{
  open_hall ("2026-11-30");
  fill ("Strips by number", "1-3, 5");
  press ("Mark these strips done");
  assert_done ("1 2 3 5");
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Mark Strips Done");
  g_assert_true (says (GTK_WIDGET (window), "4 strips, "));
  g_assert_true (says (GTK_WIDGET (window), "2026-11-30"));
  fill ("Strips by number", "2");
  press ("Take back the marks of these strips");
  assert_done ("1 3 5");
  ox_session_undo (session);
  assert_done ("1 2 3 5");
  ox_session_undo (session);
  assert_done ("");
  g_assert_true (says (GTK_WIDGET (window), "nothing done yet"));
  ox_ui_close (window);
}

/* A click marks and takes back, a drag marks the run, and all up to here where that is asked for. */
static void
test_pointer (void)
{
  open_hall ("2026-11-30");
  drag (3, 3);
  assert_done ("3");
  drag (3, 3);
  assert_done ("");
  drag (5, 2);
  assert_done ("2 3 4 5");
  ox_session_undo (session);
  assert_done ("");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, "A click marks")), 1);
  drag (4, 4);
  assert_done ("1 2 3 4");
  ox_ui_close (window);
}

/* The arrows lead a place over the floor, and Enter clicks there. */
static void
test_keys (void)
{
  OxCanvas *canvas;

  open_hall ("2026-11-30");
  canvas = ox_window_get_canvas (window);
  ox_canvas_motion (canvas, middle_of (2), OX_HOLD_NONE);
  g_assert_true (ox_canvas_key (canvas, &(OxKey){ .name = OX_KEY_ENTER }));
  assert_done ("2");
  g_assert_false (ox_canvas_key (canvas, &(OxKey){ .name = OX_KEY_ESCAPE }));
  g_assert_cmpint (ox_canvas_get_tool (canvas), ==, OX_TOOL_MARK);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", "floor");
  g_assert_cmpint (ox_canvas_get_tool (canvas), ==, OX_TOOL_SELECT);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.tool", "s", "mark");
  g_assert_cmpint (ox_canvas_get_tool (canvas), ==, OX_TOOL_MARK);
  ox_ui_close (window);
}

static void
test_edge_work (void)
{
  open_hall ("2026-11-30");
  fill ("Edge work by number", "E1");
  press ("Mark this edge work done");
  g_assert_cmpuint (ox_session_find_plan (session)->edges[0].done, >, 0);
  g_assert_cmpuint (ox_session_get_job (session)->record->n_edges, ==, 1);
  fill ("Edge work by number", "E1");
  press ("Take back the marks of this edge work");
  g_assert_cmpuint (ox_session_get_job (session)->record->n_edges, ==, 0);
  ox_ui_close (window);
}

/* Types notes, which may have several lines, and leaves them. */
static void
note (const char *text)
{
  GtkWidget *view = ox_ui_find (GTK_WIDGET (window), GTK_TYPE_TEXT_VIEW, "Notes");

  gtk_widget_grab_focus (view);
  ox_ui_settle (window);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (view)), text, -1);
  gtk_widget_grab_focus (GTK_WIDGET (ox_window_get_canvas (window)));
  ox_ui_settle (window);
}

/* Meter, notes and the profile read go with the day and the strips. */
static void
test_day (void)
{
  const OxRecord *record;

  open_hall ("2026-11-30");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, "Profile read")), 4);
  fill ("Depth read, mm", "0,42");
  drag (1, 4);
  fill ("Meter at the start, h", "100");
  fill ("Meter at the end, h", "105,5");
  note ("rain\nat noon");
  record = ox_session_get_job (session)->record;
  g_assert_cmpuint (record->n_strips, ==, 4);
  g_assert_cmpstr (record->strips[0].date, ==, "2026-11-30");
  g_assert_cmpuint (record->strips[0].csp, ==, 4);
  g_assert_cmpfloat (record->strips[0].depth_mm, ==, 0.42);
  g_assert_cmpuint (record->n_days, ==, 1);
  g_assert_cmpfloat (record->days[0].meter_start_h, ==, 100);
  g_assert_cmpfloat (record->days[0].meter_end_h, ==, 105.5);
  g_assert_cmpstr (record->days[0].notes, ==, "rain\nat noon");
  g_assert_true (says (GTK_WIDGET (window), "5.5 h on the meter"));
  g_assert_true (says (GTK_WIDGET (window), "CSP 4; 0.42 mm; rain\nat noon"));
  /* Another day is empty; a click on the first one in the list brings it back. */
  fill ("Day, year-month-day", "2026-12-01");
  g_assert_cmpstr (
      ox_field_get_text (OX_FIELD (ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, "Meter at the start, h"))), ==, "");
  press ("2026-11-30");
  g_assert_cmpstr (
      ox_field_get_text (OX_FIELD (ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, "Meter at the start, h"))), ==,
      "100");
  ox_ui_close (window);
}

/* A note is kept while a reading is wrong, which stays to be mended; a day that was entered by mistake can be taken
 * out. */
static void
test_day_with_a_fault (void)
{
  OxField *end;
  GtkWidget *remove;

  open_hall ("2026-11-30");
  end = OX_FIELD (ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, "Meter at the end, h"));
  remove = ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Remove Day");
  g_assert_false (gtk_widget_get_sensitive (remove));
  fill ("Meter at the end, h", "1o5");
  note ("rain at noon");
  fill ("Meter at the start, h", "100");
  ox_ui_settle (window);
  g_assert_cmpstr (ox_session_get_job (session)->record->days[0].notes, ==, "rain at noon");
  g_assert_cmpfloat (ox_session_get_job (session)->record->days[0].meter_start_h, ==, 100);
  g_assert_cmpstr (ox_field_get_text (end), ==, "1o5");
  g_assert_nonnull (ox_field_find_complaint (end));
  fill ("Meter at the end, h", "105");
  g_assert_cmpfloat (ox_session_get_job (session)->record->days[0].meter_end_h, ==, 105);
  g_assert_cmpstr (ox_session_get_job (session)->record->days[0].notes, ==, "rain at noon");
  g_assert_null (ox_field_find_complaint (end));
  g_assert_true (gtk_widget_get_sensitive (remove));
  press ("Remove Day");
  g_assert_cmpuint (ox_session_get_job (session)->record->n_days, ==, 0);
  g_assert_cmpstr (ox_field_get_text (end), ==, "");
  ox_session_undo (session);
  g_assert_cmpuint (ox_session_get_job (session)->record->n_days, ==, 1);
  ox_ui_close (window);
}

/* Where two machines are at work each has its meter and notes; with one the panel does not ask. */
static void
test_machines (void)
{
  const OxRecord *record;
  OxCalendar two;
  g_autoptr (OxCalendar) calendar = NULL;
  g_autoptr (OxJob) job = NULL;
  g_autoptr (GError) error = NULL;

  open_hall ("2026-11-30");
  two = *ox_session_get_job (session)->calendar;
  two.machines = 2;
  calendar = ox_calendar_new (&two);
  job = ox_job_with_calendar (ox_session_get_job (session), calendar, &error);
  g_assert_no_error (error);
  ox_session_apply (session, job, "Set Calendar", NULL, NULL);
  ox_ui_settle (window);
  fill ("Meter at the start, h", "100");
  fill ("Machine", "2");
  g_assert_cmpstr (
      ox_field_get_text (OX_FIELD (ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, "Meter at the start, h"))), ==, "");
  fill ("Meter at the start, h", "7");
  record = ox_session_get_job (session)->record;
  g_assert_cmpuint (record->n_days, ==, 2);
  g_assert_cmpfloat (record->days[0].meter_start_h, ==, 100);
  g_assert_cmpuint (record->days[1].machine, ==, 2);
  g_assert_cmpfloat (record->days[1].meter_start_h, ==, 7);
  ox_ui_close (window);
}

static void
assert_refused (const char *name, const char *why)
{
  GtkWidget *field = ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, name);

  if (ox_field_find_complaint (OX_FIELD (field)) == NULL
      || strstr (ox_field_find_complaint (OX_FIELD (field)), why) == NULL)
    g_error ("%s: %s", name, ox_field_find_complaint (OX_FIELD (field)));
  g_assert_false (ox_session_is_modified (session));
}

static void
test_refuses (void)
{
  open_hall (NULL);
  drag (1, 1);
  g_assert_cmpstr (ox_window_get_told (window), !=, "");
  g_assert_false (ox_session_is_modified (session));
  note ("no day yet");
  assert_refused ("Day, year-month-day", "day first");
  fill ("Day, year-month-day", "tomorrow");
  assert_refused ("Day, year-month-day", "2026-09-14");
  fill ("Day, year-month-day", "2026-11-30");
  fill ("Strips by number", "one to four");
  press ("Mark these strips done");
  assert_refused ("Strips by number", "one to four");
  fill ("Strips by number", "1-4000");
  press ("Mark these strips done");
  assert_refused ("Strips by number", "4000");
  fill ("Meter at the end, h", "late");
  assert_refused ("Meter at the end, h", "reading in hours");
  fill ("Depth read, mm", "200");
  assert_refused ("Depth read, mm", "0 to 100");
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/record/numbers", test_numbers);
  g_test_add_func ("/app/record/pointer", test_pointer);
  g_test_add_func ("/app/record/keys", test_keys);
  g_test_add_func ("/app/record/edge-work", test_edge_work);
  g_test_add_func ("/app/record/day", test_day);
  g_test_add_func ("/app/record/day-with-a-fault", test_day_with_a_fault);
  g_test_add_func ("/app/record/machines", test_machines);
  g_test_add_func ("/app/record/refuses", test_refuses);
  return g_test_run ();
}
