/* Oxturn: tests/app/test-inspector - what is selected, in fields that change it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/inspector/section.h"

#include "job/edit.h"
#include "support/floors.h"
#include "ui.h"

#include <string.h>

static OxWindow *window;
static OxSession *session;

/* A room of 10 m x 8 m, a rectangular column O1, a round one O2, excluded X1, doorway D1, station S1. */
static OxJob *
make_floor (void)
{
  g_autoptr (OxJob) room = ox_test_floor_rectangle (10, 8, "compact");
  OxJobBuilder *builder = ox_job_builder_new (room);
  OxObstacle column = { .id = (char *) "O1", .name = (char *) "" };
  OxObstacle tank = { .id = (char *) "O2", .name = (char *) "" };
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 9, 7 }, 1, 1, 0);
  g_autoptr (OxObstacle) one = NULL;
  g_autoptr (OxObstacle) two = NULL;
  g_autoptr (OxExcluded) excluded
      = ox_excluded_new (&(OxExcluded){ .id = (char *) "X1", .name = (char *) "", .ring = ring });
  g_autoptr (OxDoorway) doorway = ox_doorway_new (
      &(OxDoorway){ .id = (char *) "D1", .name = (char *) "", .a = { 4, 8 }, .b = { 6, 8 }, .depth = 0.2 });
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) "", .at = { 1, 1 } });

  column.shape = (OxShape){ .kind = OX_SHAPE_RECTANGLE, .centre = { 3, 3 }, .width = 0.6, .depth = 0.4 };
  tank.shape = (OxShape){ .kind = OX_SHAPE_CIRCLE, .centre = { 7, 3 }, .radius = 0.5 };
  one = ox_obstacle_new (&column);
  two = ox_obstacle_new (&tank);
  ox_job_builder_put_obstacle (builder, one);
  ox_job_builder_put_obstacle (builder, two);
  ox_job_builder_put_excluded (builder, excluded);
  ox_job_builder_put_doorway (builder, doorway);
  ox_job_builder_put_station (builder, station);
  return ox_job_builder_end (builder);
}

static void
set_up (const char *selected)
{
  g_autoptr (OxJob) job = make_floor ();

  window = ox_ui_open (job);
  session = ox_window_get_session (window);
  ox_session_select (session, (const char *const[]){ selected != NULL ? selected : job->rooms[0]->id, NULL });
}

static OxField *
field (const char *name)
{
  return OX_FIELD (ox_ui_find (GTK_WIDGET (window), OX_TYPE_FIELD, name));
}

static void
type (const char *name, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field (name)), text);
  g_signal_emit_by_name (field (name), "activate");
}

static void
choose (const char *name, guint i)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, name)), i);
}

static const OxRoom *
room (void)
{
  return ox_session_get_job (session)->rooms[0];
}

static void
test_room (void)
{
  set_up (NULL);
  type ("Name", "Hall 7");
  g_assert_cmpstr (room ()->name, ==, "Hall 7");
  type ("Target profile", "CSP 4");
  g_assert_cmpstr (room ()->profile, ==, "CSP 4");
  choose ("Direction", 2);
  type ("Angle, degrees", "30");
  g_assert_cmpint (room ()->direction.kind, ==, OX_DIRECTION_ANGLE);
  g_assert_cmpfloat (room ()->direction.angle_deg, ==, 30);
  choose ("Direction", 1);
  type ("Along side number", "3");
  g_assert_cmpuint (room ()->direction.side, ==, 2);
  type ("Along side number", "9");
  g_assert_cmpuint (room ()->direction.side, ==, 2);
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (field ("Along side number")), "error"));
  for (guint i = 0; i < 6; i++)
    ox_session_undo (session);
  g_assert_false (ox_session_is_modified (session));
  ox_ui_close (window);
}

static void
test_side (void)
{
  set_up (NULL);
  choose ("Kind", OX_SIDE_DROP);
  g_assert_cmpint (room ()->sides[0].kind, ==, OX_SIDE_DROP);
  type ("Keep-back", "0.75");
  g_assert_cmpfloat (room ()->sides[0].keep_back, ==, 0.75);
  type ("Keep-back", "-1"); /* refused by the rules of a job */
  g_assert_cmpfloat (room ()->sides[0].keep_back, ==, 0.75);
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (field ("Keep-back")), "error"));
  choose ("Kind", OX_SIDE_OPEN);
  g_assert_cmpint (room ()->sides[0].kind, ==, OX_SIDE_OPEN);
  g_assert_cmpfloat (room ()->sides[0].keep_back, ==, 0);
  type ("Length", "12");
  g_assert_cmpfloat_with_epsilon (fabs (ox_ring_area (room ()->ring)), 96, 1e-9);
  type ("Starts at x", "-1");
  g_assert_cmpfloat_with_epsilon (room ()->ring->points[0].x, -1, 1e-9);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_SPIN_BUTTON, "Side number")),
                             3);
  g_assert_true (g_str_has_suffix (ox_session_get_selection (session)[0], "#2"));
  ox_ui_close (window);
}

static void
test_obstacle (void)
{
  set_up ("O1");
  choose ("Kind", OX_OBSTACLE_PIT);
  type ("Keep-back", "0.4");
  type ("Width", "1");
  type ("Angle, degrees", "45");
  type ("Middle at x", "5");
  g_assert_cmpint (ox_job_find_obstacle (ox_session_get_job (session), "O1")->kind, ==, OX_OBSTACLE_PIT);
  g_assert_cmpfloat (ox_job_find_obstacle (ox_session_get_job (session), "O1")->keep_back, ==, 0.4);
  g_assert_cmpfloat (ox_job_find_obstacle (ox_session_get_job (session), "O1")->shape.centre.x, ==, 5);
  g_assert_cmpfloat_with_epsilon (
      fabs (ox_ring_area (ox_job_find_obstacle (ox_session_get_job (session), "O1")->shape.ring)), 0.4, 1e-3);
  type ("Width", "0");
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (field ("Width")), "error"));
  choose ("Kind", OX_OBSTACLE_MASKED);
  g_assert_cmpfloat (ox_job_find_obstacle (ox_session_get_job (session), "O1")->keep_back, ==, 0);
  ox_session_select (session, (const char *const[]){ "O2", NULL });
  type ("Diameter", "1.5");
  g_assert_cmpfloat (ox_job_find_obstacle (ox_session_get_job (session), "O2")->shape.radius, ==, 0.75);
  ox_ui_close (window);
}

static void
test_small_items (void)
{
  set_up ("D1");
  type ("Width", "1.2");
  g_assert_cmpfloat_with_epsilon (ox_session_get_job (session)->doorways[0]->a.x, 4.4, 1e-9);
  type ("Wall thickness", "0.3");
  g_assert_cmpfloat (ox_session_get_job (session)->doorways[0]->depth, ==, 0.3);
  ox_session_select (session, (const char *const[]){ "S1", NULL });
  choose ("Kind", OX_STATION_SUPPLY);
  type ("Hose or cord", "25");
  g_assert_cmpint (ox_session_get_job (session)->stations[0]->kind, ==, OX_STATION_SUPPLY);
  g_assert_cmpfloat (ox_session_get_job (session)->stations[0]->length, ==, 25);
  ox_session_select (session, (const char *const[]){ "X1", NULL });
  type ("Name", "Loading bay");
  g_assert_cmpstr (ox_session_get_job (session)->excluded[0]->name, ==, "Loading bay");
  ox_ui_close (window);
}

static void
test_doorway_slid (void)
{
  set_up ("D1");
  g_assert_cmpstr (ox_field_get_text (field ("From the corner")), ==, "4.00 m");
  type ("From the corner", "1");
  g_assert_cmpfloat_with_epsilon (ox_session_get_job (session)->doorways[0]->b.x, 9, 1e-9);
  g_assert_cmpfloat_with_epsilon (ox_session_get_job (session)->doorways[0]->a.x, 7, 1e-9);
  ox_ui_close (window);
}

static void
test_condition_and_joint (void)
{
  const OxPoint line[] = { { 0, 2 }, { 3, 2 }, { 3, 6 } };
  g_autoptr (OxJoint) joint
      = ox_joint_new (&(OxJoint){ .id = (char *) "J1", .name = (char *) "", .n = 3, .points = (OxPoint *) line });
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 3, 4 }, 2, 2, 0);
  g_autoptr (OxCondition) condition = ox_condition_new (
      &(OxCondition){ .id = (char *) "C1", .name = (char *) "", .ring = ring, .profile = (char *) "" });
  g_autoptr (OxJob) one = NULL;
  g_autoptr (OxJob) two = NULL;

  set_up (NULL);
  one = ox_job_with_joint (ox_session_get_job (session), joint, NULL);
  two = ox_job_with_condition (one, condition, NULL);
  ox_session_apply (session, two, "Add", (const char *const[]){ "C1", NULL }, NULL);
  type ("Walking speed, m/min", "3.5");
  type ("Target profile", "CSP 5");
  choose ("Coats", 2);
  g_assert_cmpfloat (ox_session_get_job (session)->conditions[0]->speed_m_per_min, ==, 3.5);
  g_assert_cmpuint (ox_session_get_job (session)->conditions[0]->coats, ==, 2);
  g_assert_cmpstr (ox_session_get_job (session)->conditions[0]->profile, ==, "CSP 5");
  type ("Walking speed, m/min", "1001");
  g_assert_cmpfloat (ox_session_get_job (session)->conditions[0]->speed_m_per_min, ==, 3.5);
  ox_session_select (session, (const char *const[]){ "J1", NULL });
  type ("Name", "Saw cut");
  g_assert_cmpstr (ox_session_get_job (session)->joints[0]->name, ==, "Saw cut");
  ox_ui_close (window);
}

/* What the fields show follows undo, and showing it makes no edit of its own. */
static void
test_follows_undo (void)
{
  guint before;

  set_up ("O1");
  type ("Width", "1");
  ox_session_undo (session);
  g_assert_cmpstr (ox_field_get_text (field ("Width")), ==, "0.60 m");
  g_assert_false (ox_session_is_modified (session));
  before = g_strv_length ((char **) ox_session_get_selection (session));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.units", "s", "feet");
  g_assert_cmpstr (ox_field_get_text (field ("Width")), !=, "0.60 m");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.units", "s", "metres");
  g_assert_cmpstr (ox_field_get_text (field ("Width")), ==, "0.60 m");
  g_assert_cmpfloat (ox_job_find_obstacle (ox_session_get_job (session), "O1")->shape.width, ==, 0.6);
  g_assert_cmpuint (before, ==, 1);
  ox_ui_close (window);
}

static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = gtk_widget_get_visible (widget) && GTK_IS_LABEL (widget)
                   && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); !found && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = gtk_widget_get_visible (child) && says (child, text);
  return found;
}

/* A caution stands where it bites, and nowhere else. */
static void
test_cautions (void)
{
  set_up ("O1");
  g_assert_false (says (GTK_WIDGET (window), "dock edges"));
  choose ("Kind", OX_OBSTACLE_PIT);
  g_assert_true (says (GTK_WIDGET (window), "dock edges"));
  ox_session_select (session, (const char *const[]){ ox_session_get_job (session)->rooms[0]->id, NULL });
  g_assert_false (says (GTK_WIDGET (window), "dock edges"));
  choose ("Kind", OX_SIDE_DROP);
  g_assert_true (says (GTK_WIDGET (window), "dock edges"));
  ox_session_select (session, (const char *const[]){ "S1", NULL });
  g_assert_false (says (GTK_WIDGET (window), "residual-current"));
  choose ("Kind", OX_STATION_SUPPLY);
  g_assert_true (says (GTK_WIDGET (window), "residual-current"));
  ox_ui_close (window);
}

/* A corner without a pointer: divided in its middle, moved by a figure, taken away again. */
static void
test_corners (void)
{
  set_up (NULL);
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Add Corner"), "clicked");
  g_assert_cmpuint (room ()->ring->n, ==, 5);
  g_assert_cmpfloat (room ()->ring->points[1].x, ==, 5);
  type ("Starts at x", "-1");
  g_assert_cmpfloat (room ()->ring->points[0].x, ==, -1);
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, "Delete Corner"), "clicked");
  g_assert_cmpuint (room ()->ring->n, ==, 4);
  g_assert_cmpfloat (room ()->ring->points[0].x, ==, 5);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/inspector/cautions", test_cautions);
  g_test_add_func ("/app/inspector/room", test_room);
  g_test_add_func ("/app/inspector/side", test_side);
  g_test_add_func ("/app/inspector/obstacle", test_obstacle);
  g_test_add_func ("/app/inspector/small-items", test_small_items);
  g_test_add_func ("/app/inspector/doorway-slid", test_doorway_slid);
  g_test_add_func ("/app/inspector/condition-and-joint", test_condition_and_joint);
  g_test_add_func ("/app/inspector/follows-undo", test_follows_undo);
  g_test_add_func ("/app/inspector/corners", test_corners);
  return g_test_run ();
}
