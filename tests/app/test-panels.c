/* Oxturn: tests/app/test-panels - the panels of the stages and the docket.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/field.h"
#include "job/classes.h"
#include "job/edit.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

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

static GtkDropDown *
choice_of (OxWindow *window, const char *name)
{
  return GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, name));
}

/* Paper, scale and language are the job's: another window shows them again, undo takes them back one by one. */
static void
test_sheet_setup (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxJob) kept = NULL;
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);

  go_to (window, "sheets");
  gtk_drop_down_set_selected (choice_of (window, "Paper"), 4);
  gtk_drop_down_set_selected (choice_of (window, "Schedules on"), 1);
  gtk_drop_down_set_selected (choice_of (window, "Language"), 2);
  type (window, "Scale", "1:50");
  type (window, "Status", "as done");
  kept = ox_job_ref (ox_session_get_job (session));
  g_assert_cmpstr (kept->setup->paper, ==, "A1");
  g_assert_cmpstr (kept->setup->schedule_paper, ==, "A4");
  g_assert_cmpstr (kept->setup->language, !=, "");
  g_assert_cmpfloat (kept->setup->scale, ==, 50);
  g_assert_cmpstr (kept->texts->status, ==, "as done");
  ox_session_undo (session);
  ox_session_undo (session);
  g_assert_cmpfloat (ox_session_get_job (session)->setup->scale, ==, 0);
  g_assert_cmpstr (ox_field_get_text (field (window, "Scale")), ==, "auto");
  ox_ui_close (window);

  window = ox_ui_open (kept);
  go_to (window, "sheets");
  g_assert_cmpuint (gtk_drop_down_get_selected (choice_of (window, "Paper")), ==, 4);
  g_assert_cmpuint (gtk_drop_down_get_selected (choice_of (window, "Language")), ==, 2);
  g_assert_cmpstr (ox_field_get_text (field (window, "Scale")), ==, "1:50");
  g_assert_null (ox_session_find_undo_label (ox_window_get_session (window)));
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

/* The slider says where the machine is; at its end all strips are done. */
static void
test_order_of_work (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  const OxPlan *plan = ox_session_find_plan (ox_window_get_session (window));
  GtkWidget *hours;
  g_autofree char *all = g_strdup_printf ("all %u strips are done", plan->n_strips);
  gboolean said = FALSE;

  go_to (window, "plan");
  hours = ox_ui_find (GTK_WIDGET (window), GTK_TYPE_SCALE, "Hours of work");
  g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_upper (gtk_range_get_adjustment (GTK_RANGE (hours))),
                                  plan->totals.strip_hours + plan->totals.move_hours, 1e-6);
  gtk_range_set_value (GTK_RANGE (hours), 1e3);
  for (GtkWidget *w = gtk_widget_get_next_sibling (gtk_widget_get_parent (hours)); w != NULL;
       w = gtk_widget_get_next_sibling (w))
    if (GTK_IS_LABEL (w))
      said = said || strstr (gtk_label_get_text (GTK_LABEL (w)), all) != NULL;
  g_assert_true (said);
  ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Play the order of work");
  ox_ui_close (window);
}

/* What lies under the pointer says what it is, and no longer when the pointer is elsewhere. */
static void
test_strip_under_the_pointer (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxCanvas *canvas = ox_window_get_canvas (window);
  const OxStrip *strip = &ox_session_find_plan (ox_window_get_session (window))->strips[0];
  OxPoint middle = { (strip->a.x + strip->b.x) / 2, (strip->a.y + strip->b.y) / 2 };

  go_to (window, "plan");
  ox_canvas_motion (canvas, ox_view_to_pixel (ox_canvas_get_view (canvas), middle), OX_HOLD_NONE);
  g_assert_nonnull (strstr (ox_window_get_told (window), "min"));
  ox_canvas_motion (canvas, ox_view_to_pixel (ox_canvas_get_view (canvas), (OxPoint){ -1, -1 }), OX_HOLD_NONE);
  g_assert_null (strstr (ox_window_get_told (window), "min"));
  ox_canvas_point_out (canvas, "strip-1");
  g_assert_true (g_str_has_prefix (ox_window_get_told (window), "Strip 1 "));
  ox_ui_close (window);
}

static GtkWidget *
find_expander (GtkWidget *widget, const char *start)
{
  if (GTK_IS_EXPANDER (widget) && g_str_has_prefix (gtk_expander_get_label (GTK_EXPANDER (widget)), start))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_expander (child, start);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* Whether some label below @widget has @text in it; what a closed expander holds counts. */
static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  if (GTK_IS_EXPANDER (widget))
    return says (gtk_expander_get_child (GTK_EXPANDER (widget)), text);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); !found && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = says (child, text);
  return found;
}

static guint
count_children (GtkWidget *expander)
{
  guint n = 0;
  GtkWidget *inside = gtk_widget_get_first_child (gtk_expander_get_child (GTK_EXPANDER (expander)));

  for (GtkWidget *child = gtk_widget_get_first_child (inside); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n++;
  return n;
}

/* A cord of 200 m loses far too much: the group of the supply says so, as soon as the plan with it is there. */
static void
test_estimate (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);

  go_to (window, "plan");
  g_assert_cmpuint (count_children (find_expander (GTK_WIDGET (window), "Hours")), >, 5);
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Cautions"), "Loose shot"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Supply"), "residual-current"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Dust"), "crystalline silica"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Exposure in a shift"), "crystalline silica"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Exposure in a shift"), "protect the ears"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Floor"), "dustiest work"));
  g_assert_false (says (find_expander (GTK_WIDGET (window), "Floor"), "dock edges"));
  /* five figures and the caution on isolation */
  g_assert_cmpuint (count_children (find_expander (GTK_WIDGET (window), "Wear parts")), ==, 6);
  go_to (window, "machine");
  type (window, "Cord length", "200");
  go_to (window, "plan");
  g_assert_nonnull (
      strstr (gtk_expander_get_label (GTK_EXPANDER (find_expander (GTK_WIDGET (window), "Supply"))), "to look at"));
  /* Read out as it stands there. */
  ox_ui_find (GTK_WIDGET (window), GTK_TYPE_EXPANDER,
              gtk_expander_get_label (GTK_EXPANDER (find_expander (GTK_WIDGET (window), "Supply"))));
  ox_ui_close (window);
}

/* Nobody asks for them: while the plan is looked at, figures and docket follow an edit of the floor. 10 m by 8 m become
 * 20 m by 8 m. */
static void
test_live (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxJob) wide = ox_test_floor_rectangle (20, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWidget *floor;

  go_to (window, "plan");
  floor = find_expander (GTK_WIDGET (window), "Floor");
  g_assert_true (says (floor, "80.0 m\302\262"));
  ox_session_apply (ox_window_get_session (window), wide, "Widen", NULL, NULL);
  ox_ui_settle (window);
  g_assert_true (says (floor, "160.0 m\302\262"));
  g_assert_false (says (GTK_WIDGET (window), "80.0 m\302\262"));
  ox_session_undo (ox_window_get_session (window));
  ox_ui_settle (window);
  g_assert_true (says (floor, "80.0 m\302\262"));
  ox_ui_close (window);
}

/* A job of two rooms with a rate for each m2 and a first day: each sum stands there, and no figure without what it
 * rests on. */
static OxJob *
make_priced (void)
{
  OxCostRate rates[] = { { OX_COST_AREA, (char *) "Floor", (char *) "2.50" } };
  g_autoptr (OxCosts) costs = ox_costs_new (
      &(OxCosts){ .currency = (char *) "EUR", .decimals = 2, .contingency = 0.1, .n = 1, .rates = rates });
  g_autoptr (OxJob) one = ox_test_floor_rectangle (10, 8, "compact");
  OxPoint corners[] = { { 20, 0 }, { 26, 0 }, { 26, 5 }, { 20, 5 } };
  g_autoptr (OxRing) ring = ox_ring_new (corners, 4);
  OxSide sides[4] = { { .kind = OX_SIDE_DROP, .keep_back = 0.5 } };
  g_autoptr (OxRoom) room
      = ox_room_new (&(OxRoom){ .id = (char *) "R9", .name = (char *) "Dock", .ring = ring, .sides = sides });
  g_autoptr (OxJob) two = ox_job_with_room (one, room, NULL);
  OxCalendar draft = *two->calendar;
  g_autoptr (OxCalendar) calendar = NULL;
  g_autoptr (OxJob) dated = NULL;

  draft.first_day = (char *) "2026-11-30";
  calendar = ox_calendar_new (&draft);
  dated = ox_job_with_calendar (two, calendar, NULL);
  return ox_job_with_costs (dated, costs, NULL);
}

static void
test_lists (void)
{
  g_autoptr (OxJob) job = make_priced ();
  OxWindow *window = ox_ui_open (job);
  GtkWidget *cost, *checks;

  go_to (window, "plan");
  cost = find_expander (GTK_WIDGET (window), "Cost");
  /* 80 and 30 m2 less the drop's keep-back stay in the scope: 200.00 and 75.00, with a tenth on top 302.50 in all */
  g_assert_true (says (cost, "80.00 m\302\262 at 2.50"));
  g_assert_true (says (cost, "200.00 EUR"));
  g_assert_true (says (cost, "75.00 EUR"));
  g_assert_true (says (cost, "27.50 EUR"));
  g_assert_true (says (cost, "302.50 EUR"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Hours by shift"), "Shift 1, 2026-11-30"));
  g_assert_true (says (find_expander (GTK_WIDGET (window), "Floor"), "dock edges"));
  checks = find_expander (GTK_WIDGET (window), "Profile checks");
  g_assert_true (says (checks, "1: "));
  gtk_expander_set_expanded (GTK_EXPANDER (checks), TRUE);
  gtk_expander_set_expanded (GTK_EXPANDER (cost), TRUE);
  g_signal_emit_by_name (ox_ui_find (cost, GTK_TYPE_BUTTON, "Costs\342\200\246"), "clicked");
  g_assert_nonnull (ox_ui_find_dialog (window));
  gtk_window_destroy (ox_ui_find_dialog (window));
  ox_ui_close (window);
}

static void
test_edge_rates (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);

  go_to (window, "machine");
  type (window, "Narrow edges, m/h", "11.5");
  g_assert_cmpfloat (ox_session_get_job (ox_window_get_session (window))->rates.edge_m_per_hour, ==, 11.5);
  type (window, "Abrasive size, as S330", " S280 ");
  g_assert_cmpstr (ox_session_get_job (ox_window_get_session (window))->outfit->shot, ==, "S280");
  type (window, "Narrow edges, m/h", "-1");
  g_assert_cmpfloat (ox_session_get_job (ox_window_get_session (window))->rates.edge_m_per_hour, ==, 11.5);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/panels/plan/what-it-takes", test_estimate);
  g_test_add_func ("/app/panels/live", test_live);
  g_test_add_func ("/app/panels/plan/lists", test_lists);
  g_test_add_func ("/app/panels/edge-rates", test_edge_rates);
  g_test_add_func ("/app/panels/machine", test_machine);
  g_test_add_func ("/app/panels/machine-wrong-figures", test_machine_wrong_figures);
  g_test_add_func ("/app/panels/machine-class", test_machine_class);
  g_test_add_func ("/app/panels/sheet-texts", test_sheet_texts);
  g_test_add_func ("/app/panels/sheet-setup", test_sheet_setup);
  g_test_add_func ("/app/panels/sheet-too-large", test_sheet_too_large);
  g_test_add_func ("/app/panels/order-of-work", test_order_of_work);
  g_test_add_func ("/app/panels/strip-under-the-pointer", test_strip_under_the_pointer);
  return g_test_run ();
}
