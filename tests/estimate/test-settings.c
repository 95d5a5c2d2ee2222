/* Oxturn: tests of estimate/settings
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/settings.h"
#include <string.h>
#include "made.h"

static const char *
find (GPtrArray *settings, const char *label)
{
  for (guint i = 0; i < settings->len; i++)
    if (g_str_equal (((OxSetting *) g_ptr_array_index (settings, i))->label, label))
      return ((OxSetting *) g_ptr_array_index (settings, i))->value;
  return NULL;
}

/* 600 / v: seconds of 10 m; 30 ft are 9.144 m. */
static void
test_clock (void)
{
  ox_test_near (ox_setting_seconds (OX_UNITS_METRES, 6), 100, 1e-9);
  ox_test_near (ox_setting_seconds (OX_UNITS_MILLIMETRES, 4), 150, 1e-9);
  ox_test_near (ox_setting_seconds (OX_UNITS_FEET, 6.096), 90, 1e-9); /* 20 ft/min */
  g_autofree char *feet = ox_setting_speed_text (OX_UNITS_FEET, 6.096);
  g_assert_cmpstr (feet, ==, "20 ft/min");
}

static void
test_list (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "CSP 3");
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ (char *) "S280", 20, 1, { { 30, 3.31 } } });
  plan->job->machine->travel_speed = 5;
  plan->job->machine->amperes = 18;
  g_autoptr (OxEstimate) bare = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) unknown = ox_settings_of (bare);
  g_assert_nonnull (strstr (find (unknown, "Abrasive"), "S330 is usual for CSP 3"));
  g_assert_nonnull (strstr (find (unknown, "Circuit"), "____ A; for 3 h or longer up to 80 %"));
  plan_set_outfit (plan, outfit);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) settings = ox_settings_of (estimate);
  g_assert_cmpstr (find (settings, "Abrasive"), ==, "S280");
  g_assert_cmpstr (find (settings, "Walking speed"), ==, "5 m/min: 10 m in 120 s");
  g_assert_cmpstr (find (settings, "Circuit"), ==, "20 A; for 3 h or longer up to 16 A");
  g_assert_cmpstr (find (settings, "Cord"), ==, "30.00 m of 3.31 mm²");
  g_assert_nonnull (find (settings, "Voltage drop"));
}

/* 0.25 m of blast width on lines 0.23 m apart overlap by 0.02 m: without chalk lines the least overlap counts. */
static void
test_spacing (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  plan->job->machine->min_overlap = 0.02;
  ox_test_near (ox_setting_spacing (plan), 0.23, 1e-12);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) settings = ox_settings_of (estimate);
  g_assert_cmpstr (find (settings, "Chalk lines"), ==, "0.23 m apart, overlap 0.02 m");
}

/* Two coats of a room without a name whose lines lie apart: a line for each, told apart, under the id of the room. */
static void
test_coats (void)
{
  g_autoptr (OxPlan) plan = made_plan (4, 1, "");
  OxRoom *room = (OxRoom *) plan->job->rooms[0];
  g_free (room->name);
  room->name = g_strdup ("");
  plan->strips[2].coat = plan->strips[3].coat = 2;
  plan->n_chalks = 2;
  plan->chalks = g_new0 (OxChalk, 2);
  plan->chalks[0] = (OxChalk){ .coat = 1, .spacing = 0.2, .lanes = 2 };
  plan->chalks[1] = (OxChalk){ .coat = 2, .spacing = 0.22, .lanes = 2 };
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) settings = ox_settings_of (estimate);
  g_assert_cmpstr (find (settings, "Chalk lines, R1, coat 1"), ==, "0.20 m apart, overlap 0.05 m");
  g_assert_cmpstr (find (settings, "Chalk lines, R1, coat 2"), ==, "0.22 m apart, overlap 0.03 m");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/settings/seconds-by-the-clock", test_clock);
  g_test_add_func ("/estimate/settings/filled-from-the-job", test_list);
  g_test_add_func ("/estimate/settings/chalk-lines", test_spacing);
  g_test_add_func ("/estimate/settings/chalk-lines-of-coats", test_coats);
  return g_test_run ();
}
