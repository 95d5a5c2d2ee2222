/* Oxturn: tests/job/test-builder
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/job.h"
#include "job/job-making.h"

static void
test_put_keeps_the_place (void)
{
  g_autoptr (OxJob) job = make_job ();
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_autoptr (OxRoom) other = make_room ("R1", "POLYGON ((0 0, 5 0, 5 5, 0 5, 0 0))");
  g_autoptr (OxRoom) third = make_room ("R3", "POLYGON ((0 20, 5 20, 5 25, 0 25, 0 20))");
  ox_job_builder_put_room (builder, third);
  ox_job_builder_put_room (builder, other);
  g_autoptr (OxJob) changed = ox_job_builder_end (builder);
  g_assert_cmpuint (changed->n_rooms, ==, 3);
  g_assert_true (changed->rooms[0] == other);
  g_assert_true (changed->rooms[1] == job->rooms[1]);
  g_assert_true (changed->rooms[2] == third);
}

static void
test_shares_what_did_not_change (void)
{
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxJob) copy = ox_job_builder_end (ox_job_builder_new (job));
  for (guint i = 0; i < job->n_obstacles; i++)
    g_assert_true (copy->obstacles[i] == job->obstacles[i]);
  g_assert_true (copy->stations[0] == job->stations[0]);
}

static void
test_remove (void)
{
  g_autoptr (OxJob) job = make_job ();
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_assert_true (ox_job_builder_remove (builder, "O1"));
  g_assert_false (ox_job_builder_remove (builder, "O1"));
  g_assert_true (ox_job_builder_remove (builder, "J1"));
  /* What followed the one that went is still found. */
  g_autoptr (OxObstacle) drain = make_polygon ("O2", "POLYGON ((1 1, 2 1, 2 2, 1 1))");
  ox_job_builder_put_obstacle (builder, drain);
  g_autoptr (OxJob) changed = ox_job_builder_end (builder);
  g_assert_cmpuint (changed->n_obstacles, ==, 1);
  g_assert_true (changed->obstacles[0] == drain);
  g_assert_cmpuint (changed->n_joints, ==, 0);
  g_assert_cmpuint (job->n_obstacles, ==, 2);
}

/* Figures are kept as a file can hold them, so that saving and opening changes nothing. */
static void
test_figures_fit_a_file (void)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_classes_get (0));
  machine->front = 0.1 + 0.2;
  machine->travel_speed = 6.00000049;
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, machine);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 1.0 / 3 });
  ox_job_builder_set_north (builder, -0.0000001);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_assert_cmpfloat (job->machine->front, ==, 0.3);
  g_assert_cmpfloat (job->machine->travel_speed, ==, 6);
  g_assert_cmpfloat (job->rates.edge_m2_per_hour, ==, 0.333333);
  g_assert_false (signbit (job->north_deg));
}

static void
test_set_again (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_texts (builder, &(OxTexts){ .title = (char *) "first" });
  ox_job_builder_set_texts (builder, &(OxTexts){ .title = (char *) "second" });
  ox_job_builder_set_extra (builder, "<job/>", "1.4");
  ox_job_builder_set_extra (builder, NULL, NULL);
  ox_job_builder_set_units (builder, OX_UNITS_FEET);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_assert_cmpstr (job->texts->title, ==, "second");
  g_assert_null (job->extra);
  g_assert_null (job->version_minor_note);
  g_assert_cmpint (job->units, ==, OX_UNITS_FEET);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/builder/put-keeps-the-place", test_put_keeps_the_place);
  g_test_add_func ("/job/builder/shares", test_shares_what_did_not_change);
  g_test_add_func ("/job/builder/remove", test_remove);
  g_test_add_func ("/job/builder/figures-fit-a-file", test_figures_fit_a_file);
  g_test_add_func ("/job/builder/set-again", test_set_again);
  return g_test_run ();
}
