/* Oxturn: tests/app/test-patches - the form of the test patches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/dialogs/patches.h"

#include "app/dialogs/form.h"
#include "app/field.h"
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
  gtk_widget_activate_action (GTK_WIDGET (window), "win.patches", NULL);
  return ox_ui_find_dialog (window);
}

static void
press (GtkWindow *form, const char *name)
{
  g_signal_emit_by_name (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_BUTTON, name), "clicked");
}

/* Whether some label of the form has @text in it. */
static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); !found && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = says (child, text);
  return found;
}

static void
fill (GtkWindow *form, const char *name, const char *text)
{
  ox_ui_fill (GTK_WIDGET (form), name, text);
}

/* 0.6 mm at 3 and 0.3 mm at 6 m/min lie on 1.8 / v: 0.45 mm want 4 m/min, and 0.9 mm want 2, which nobody tried. What
 * is said follows every sign that is typed. */
static void
test_speed (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  OxSession *session = ox_window_get_session (window);
  GtkWindow *form = open_form (window);
  GtkWidget *use;

  g_assert_true (says (GTK_WIDGET (form), "No patch has a depth yet"));
  press (form, "Add Patch");
  fill (form, "Travel speed, m/min", "3");
  fill (form, "Depth measured, mm", "0.6");
  g_assert_true (says (GTK_WIDGET (form), "1 patch, 3.0 to 3.0 m/min; too few"));
  press (form, "Add Patch");
  fill (form, "Travel speed, m/min", "6");
  fill (form, "Depth measured, mm", "0,3");
  fill (form, "Depth wanted, mm", "0.9");
  g_assert_true (says (GTK_WIDGET (form), "0.90 mm: walk at 2.0 m/min, which was not tried"));
  fill (form, "Depth wanted, mm", "0.45");
  g_assert_true (says (GTK_WIDGET (form), "0.45 mm: walk at 4.0 m/min. 2 patches, 3.0 to 6.0 m/min"));
  use = ox_ui_find (GTK_WIDGET (form), GTK_TYPE_CHECK_BUTTON, "Use it as the travel speed");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (use), TRUE);
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_cmpuint (job_of (window)->patches->n, ==, 2);
  g_assert_cmpstr (job_of (window)->patches->items[0].id, ==, "P1");
  g_assert_cmpstr (job_of (window)->patches->items[1].id, ==, "P2");
  g_assert_cmpfloat (job_of (window)->machine->travel_speed, ==, 4);
  /* Patches and speed are one edit. */
  g_assert_cmpstr (ox_session_find_undo_label (session), ==, "Set Test Patches");
  ox_session_undo (session);
  g_assert_cmpuint (job_of (window)->patches->n, ==, 0);
  g_assert_cmpfloat (job_of (window)->machine->travel_speed, ==, job->machine->travel_speed);
  ox_ui_close (window);
}

/* 50 ml spread over 200 mm are 4 V / (pi D^2) = 1.59 mm (ASTM E965). */
static void
test_sand_patch (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  const OxPatch *patch;

  press (form, "Add Patch");
  fill (form, "Patch", "Gate");
  fill (form, "Date, year-month-day", "2026-09-10");
  fill (form, "Abrasive flow, kg/min", "90");
  fill (form, "Sand volume, ml", "50");
  fill (form, "Diameters, mm", "196; 204 198,0\t202");
  g_assert_true (says (GTK_WIDGET (form), "1.59 mm by the sand patch"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_DROP_DOWN, "Profile")), 5);
  fill (form, "Note", "by the gate");
  ox_form_accept (form);
  g_assert_cmpuint (job_of (window)->patches->n, ==, 1);
  patch = &job_of (window)->patches->items[0];
  g_assert_cmpstr (patch->id, ==, "Gate");
  g_assert_cmpstr (patch->date, ==, "2026-09-10");
  g_assert_cmpstr (patch->note, ==, "by the gate");
  g_assert_cmpfloat (patch->flow_kg_min, ==, 90);
  g_assert_cmpfloat (patch->volume_ml, ==, 50);
  g_assert_cmpuint (patch->csp, ==, 5);
  g_assert_cmpuint (patch->n_diameters, ==, 4);
  g_assert_cmpfloat (patch->diameters_mm[1], ==, 204);
  g_assert_cmpfloat (patch->diameters_mm[3], ==, 202);
  /* Opened and set again, nothing is another: no edit. */
  form = open_form (window);
  ox_form_accept (form);
  ox_session_undo (ox_window_get_session (window));
  g_assert_cmpuint (job_of (window)->patches->n, ==, 0);
  ox_ui_close (window);
}

/* 0.40 mm left and 0.60 mm right are 20 % of balance: the pattern has to go left. */
static void
test_trial (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  const OxPatch *patch;

  press (form, "Add Patch");
  g_assert_true (says (GTK_WIDGET (form), "No pattern trial"));
  fill (form, "Texture left, mm", "0,4");
  fill (form, "Texture middle, mm", "0.5");
  fill (form, "Texture right, mm", "0.6");
  g_assert_true (says (GTK_WIDGET (form), "Balance 20 %: the right side is deeper: turn the cage so that the pattern goes left."));
  fill (form, "Cage at, o'clock", "9:00");
  fill (form, "Cage turned to", "09:10");
  ox_form_accept (form);
  g_assert_cmpuint (job_of (window)->patches->n, ==, 1);
  patch = &job_of (window)->patches->items[0];
  g_assert_cmpfloat (patch->left_mm, ==, 0.4);
  g_assert_cmpfloat (patch->middle_mm, ==, 0.5);
  g_assert_cmpfloat (patch->right_mm, ==, 0.6);
  g_assert_cmpuint (patch->cage_min, ==, 540);
  g_assert_cmpuint (patch->cage_to_min, ==, 550);
  ox_ui_close (window);
}

/* A patch with something wrong in it is neither set nor left for another one. */
static void
test_refuses (void)
{
  static const struct
  {
    const char *field, *wrong, *said, *right;
  } rows[] = {
    { "Travel speed, m/min", "0", "more than 0", "5" },
    { "Depth measured, mm", "101", "101 was typed; 0 to 100", "0" },
    { "Diameters, mm", "200 wide", "wide", "" },
    { "Diameters, mm", "200 0", "numbers over 0", "" },
    { "Diameters, mm", "1 2 3 4 5 6 7 8 9 10 11 12 13", "at most 12", "" },
    { "Date, year-month-day", "10.9.2026", "no day", "" },
    { "Texture left, mm", "0.4", "left and right is needed", "0" },
    { "Cage at, o'clock", "quarter past", "“quarter past” is no place on a clock", "" },
    { "Cage turned to", "13:00", "1:00 to 12:59", "" },
    { "Patch", "1st", "a letter first", "P2" },
    { "Patch", "P1", "the id P1", "P2" },
  };
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  GtkListBox *list;

  press (form, "Add Patch");
  press (form, "Add Patch");
  list = GTK_LIST_BOX (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_LIST_BOX, "Test patches"));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      fill (form, rows[i].field, rows[i].wrong);
      ox_form_accept (form);
      g_assert_true (ox_ui_find_dialog (window) == form);
      if (strstr (ox_form_get_told (form), rows[i].said) == NULL)
        g_error ("%s: %s", rows[i].field, ox_form_get_told (form));
      if (i + 1 < G_N_ELEMENTS (rows))
        {
          gtk_list_box_select_row (list, gtk_list_box_get_row_at_index (list, 0));
          g_assert_cmpint (gtk_list_box_row_get_index (gtk_list_box_get_selected_row (list)), ==, 1);
        }
      fill (form, rows[i].field, rows[i].right);
    }
  gtk_list_box_select_row (list, gtk_list_box_get_row_at_index (list, 0));
  g_assert_cmpint (gtk_list_box_row_get_index (gtk_list_box_get_selected_row (list)), ==, 0);
  press (form, "Remove");
  press (form, "Remove");
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  g_assert_false (ox_session_is_modified (ox_window_get_session (window)));
  ox_ui_close (window);
}

static GtkListBox *
list_of (GtkWindow *form)
{
  return GTK_LIST_BOX (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_LIST_BOX, "Test patches"));
}

/* What is wrong in a patch stays there, to be mended, when another one is chosen; with the patch it goes, and the form
 * can be set. */
static void
test_wrong (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);
  g_autofree char *note = g_strdup (ox_form_get_told (form));
  OxField *diameters;

  press (form, "Add Patch");
  press (form, "Add Patch");
  diameters = OX_FIELD (ox_ui_find (GTK_WIDGET (form), OX_TYPE_FIELD, "Diameters, mm"));
  fill (form, "Diameters, mm", "196 2o4 198");
  gtk_list_box_select_row (list_of (form), gtk_list_box_get_row_at_index (list_of (form), 0));
  g_assert_cmpint (gtk_list_box_row_get_index (gtk_list_box_get_selected_row (list_of (form))), ==, 1);
  g_assert_cmpstr (ox_field_get_text (diameters), ==, "196 2o4 198");
  g_assert_nonnull (strstr (ox_form_get_told (form), "2o4"));
  press (form, "Remove");
  g_assert_cmpstr (ox_form_get_told (form), ==, note);
  fill (form, "Travel speed, m/min", "fast");
  ox_form_accept (form);
  g_assert_true (ox_ui_find_dialog (window) == form);
  press (form, "Remove");
  g_assert_cmpstr (ox_form_get_told (form), ==, note);
  ox_form_accept (form);
  g_assert_null (ox_ui_find_dialog (window));
  ox_ui_close (window);
}

/* Deeper at a higher speed: that is said, and no speed is proposed. */
static void
test_reversed (void)
{
  OxPatch items[] = { { .id = (char *) "P1", .speed_m_per_min = 3, .depth_mm = 0.3 },
                      { .id = (char *) "P2", .speed_m_per_min = 6, .depth_mm = 0.6 } };
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 2, items });
  g_autoptr (OxJob) floor = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxJob) job = ox_job_with_patches (floor, patches, NULL);
  OxWindow *window = ox_ui_open (job);
  GtkWindow *form = open_form (window);

  g_assert_true (says (GTK_WIDGET (form), "something else changed"));
  g_assert_false (
      gtk_widget_get_sensitive (ox_ui_find (GTK_WIDGET (form), GTK_TYPE_CHECK_BUTTON, "Use it as the travel speed")));
  gtk_window_destroy (form);
  ox_ui_close (window);
}

int
main (int argc, char **argv)
{
  ox_ui_init (&argc, &argv);
  g_test_add_func ("/app/patches/speed", test_speed);
  g_test_add_func ("/app/patches/sand-patch", test_sand_patch);
  g_test_add_func ("/app/patches/trial", test_trial);
  g_test_add_func ("/app/patches/refuses", test_refuses);
  g_test_add_func ("/app/patches/wrong", test_wrong);
  g_test_add_func ("/app/patches/reversed", test_reversed);
  return g_test_run ();
}
