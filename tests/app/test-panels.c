/* Oxturn: tests/app/test-panels - the panels of the stages and the docket.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/field.h"
#include "job/classes.h"
#include "support/floors.h"
#include "ui.h"

static OxField *
field (OxWindow *window, const char *name)
{
  return OX_FIELD (ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, name));
}

static void
type (OxWindow *window, const char *name, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field (window, name)), text);
  g_signal_emit_by_name (field (window, name), "activate");
}

static void
go_to (OxWindow *window, const char *stage)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.stage", "s", stage);
  ox_ui_settle (window);
}

static const OxMachine *
machine (OxWindow *window)
{
  return ox_session_get_job (ox_window_get_session (window))->machine;
}

static void
test_machine (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  guint strips;

  go_to (window, "machine");
  strips = ox_session_find_plan (ox_window_get_session (window))->n_strips;
  type (window, "Least overlap", "0.06");
  g_assert_cmpfloat (machine (window)->min_overlap, ==, 0.06);
  type (window, "Travel speed, m/min", "7,5");
  g_assert_cmpfloat (machine (window)->travel_speed, ==, 7.5);
  type (window, "Hand rate, m\302\262/h", "3");
  g_assert_cmpfloat (ox_session_get_job (ox_window_get_session (window))->rates.edge_m2_per_hour, ==, 3);
  ox_ui_settle (window);
  g_assert_cmpuint (ox_session_find_plan (ox_window_get_session (window))->n_strips, >, strips);
  ox_ui_close (window);
}

/* An overlap of the blast width or more cannot be: it is refused where it was typed. */
static void
test_machine_wrong_figures (void)
{
  static const char *const texts[] = { "0.21", "5", "-0.01", "nan", "1e9", "wide" };
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);

  go_to (window, "machine");
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      type (window, "Least overlap", texts[i]);
      g_assert_cmpfloat (machine (window)->min_overlap, ==, 0.02);
      g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (field (window, "Least overlap")), "error"));
      g_assert_cmpstr (ox_window_get_told (window), !=, "");
    }
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

static void
test_machine_class (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkDropDown *choice;

  go_to (window, "machine");
  choice = GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, "Class"));
  for (guint i = 0; i < ox_classes_get_count (); i++)
    {
      gtk_drop_down_set_selected (choice, i + 1);
      g_assert_cmpstr (machine (window)->class_id, ==, ox_classes_get (i)->class_id);
      g_assert_cmpfloat (machine (window)->blast_width, ==, ox_classes_get (i)->blast_width);
    }
  gtk_drop_down_set_selected (choice, 0);
  g_assert_cmpstr (machine (window)->class_id, ==, "");
  ox_session_undo (ox_window_get_session (window));
  g_assert_cmpuint (gtk_drop_down_get_selected (choice), ==, ox_classes_get_count ());
  ox_ui_close (window);
}

static void
test_sheet_texts (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);

  go_to (window, "sheets");
  type (window, "Title", "Hall 7");
  type (window, "Date", "2026-11-24");
  g_assert_cmpstr (ox_session_get_job (session)->texts->title, ==, "Hall 7");
  g_assert_cmpstr (ox_session_get_job (session)->texts->date, ==, "2026-11-24");
  type (window, "Date", "24.11.2026");
  g_assert_cmpstr (ox_session_get_job (session)->texts->date, ==, "2026-11-24");
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (field (window, "Date")), "error"));
  type (window, "Scale", "1:nothing");
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (field (window, "Scale")), "error"));
  ox_ui_close (window);
}

/* A scale at which the floor does not fit is said where the sheet would be, and does not stop anybody. */
static void
test_sheet_too_large (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (50, 30, "compact");
  OxWindow *window = ox_ui_open (job);

  go_to (window, "sheets");
  ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Next page");
  type (window, "Scale", "1:10");
  ox_ui_settle (window);
  type (window, "Scale", "auto");
  ox_ui_settle (window);
  ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Next page");
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/panels/machine", test_machine);
  g_test_add_func ("/app/panels/machine-wrong-figures", test_machine_wrong_figures);
  g_test_add_func ("/app/panels/machine-class", test_machine_class);
  g_test_add_func ("/app/panels/sheet-texts", test_sheet_texts);
  g_test_add_func ("/app/panels/sheet-too-large", test_sheet_too_large);
  return g_test_run ();
}
