/* Oxturn: tests/record/test-wear
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/wear.h"
#include "estimate/made.h"
#include "marked.h"
#include "plan/done.h"
#include "support/ox-test.h"

/* The plan of four strips on a machine with one wear part, of which some are done and the meter ran @meter_h. */
static void
wear_of (OxWearPart part, double meter_h, const char *done, OxWearNow *now)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = made_plan (4, 2, NULL);
  g_autoptr (OxJob) begun = done != NULL ? marked_job (plan->job, plan, done, NULL, &(OxMark){ .date = "2026-09-14" })
                                         : ox_job_ref (plan->job);
  g_autoptr (OxJob) day
      = ox_mark_day (begun, &(OxRecordDay){ (char *) "2026-09-14", 100, 100 + meter_h, NULL, 1 }, &error);
  g_assert_no_error (error);
  g_autoptr (OxMachine) machine = ox_machine_copy (day->machine);
  for (guint i = 0; i < machine->n_wear; i++)
    g_free (machine->wear[i].name);
  machine->n_wear = 1;
  machine->wear[0] = (OxWearPart){ g_strdup (part.name), part.interval_h, part.run_h, part.machine };
  g_autoptr (OxJob) job = ox_job_with_machine (day, machine, &error);
  g_assert_no_error (error);
  ox_job_unref (plan->job);
  plan->job = ox_job_ref (job);
  g_autoptr (OxFloor) floor = ox_floor_new (job);
  ox_done_strips (plan, floor);
  g_autoptr (GArray) all = ox_wear_now (plan);
  g_assert_cmpuint (all->len, ==, 1);
  *now = g_array_index (all, OxWearNow, 0);
  now->name = NULL;
}

static void
test_meter (void)
{
  static const struct
  {
    double interval, run, meter, run_now, left;
    guint fell_due;
  } rows[] = {
    { 50, 40, 0, 40, 10, 0 },   { 50, 40, 5, 45, 5, 0 }, { 50, 40, 25, 15, 35, 1 },
    { 50, 40, 120, 10, 40, 3 }, { 50, 60, 0, 60, 0, 0 }, { 50, 60, 20, 20, 30, 1 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      OxWearNow now;
      wear_of ((OxWearPart){ (char *) "Wheel", rows[i].interval, rows[i].run, 0 }, rows[i].meter, NULL, &now);
      ox_test_near (now.run_h, rows[i].run_now, 1e-9);
      ox_test_near (now.left_h, rows[i].left, 1e-9);
      g_assert_cmpuint (now.fell_due, ==, rows[i].fell_due);
    }
}

/* A strip takes 1.65 min: with 2 min to go the check comes before the second strip that is left. */
static void
test_due_strip (void)
{
  OxWearNow now;
  wear_of ((OxWearPart){ (char *) "Wheel", 50, 50 - 2.0 / 60, 0 }, 0, NULL, &now);
  g_assert_cmpuint (now.due_strip, ==, 2);
  wear_of ((OxWearPart){ (char *) "Wheel", 50, 50 - 2.0 / 60, 0 }, 0, "1-2", &now);
  g_assert_cmpuint (now.due_strip, ==, 4);
  wear_of ((OxWearPart){ (char *) "Wheel", 50, 0, 0 }, 0, NULL, &now);
  g_assert_cmpuint (now.due_strip, ==, 0);
}

/* Two machines: a part of both stands for each with the hours of its own meter, one of the second there alone; the
 * checks of each come before its own strips. */
static void
test_machines (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = made_plan (4, 2, NULL);
  g_autoptr (OxMachine) machine = ox_machine_copy (plan->job->machine);
  for (guint i = 0; i < machine->n_wear; i++)
    g_free (machine->wear[i].name);
  machine->n_wear = 2;
  machine->wear[0] = (OxWearPart){ g_strdup ("Wheel"), 50, 40, 0 };
  machine->wear[1] = (OxWearPart){ g_strdup ("Liners"), 100, 10, 2 };
  OxCalendar two = *plan->job->calendar;
  two.machines = 2;
  g_autoptr (OxCalendar) calendar = ox_calendar_new (&two);
  g_autoptr (OxJob) a = ox_job_with_machine (plan->job, machine, &error);
  g_autoptr (OxJob) b = ox_job_with_calendar (a, calendar, &error);
  g_autoptr (OxJob) c = ox_mark_day (b, &(OxRecordDay){ (char *) "2026-09-14", 100, 105, NULL, 1 }, &error);
  g_autoptr (OxJob) job = ox_mark_day (c, &(OxRecordDay){ (char *) "2026-09-14", 7, 9, NULL, 2 }, &error);
  g_assert_no_error (error);
  ox_job_unref (plan->job);
  plan->job = ox_job_ref (job);
  g_autoptr (GArray) all = ox_wear_now (plan);
  static const struct
  {
    const char *name;
    guint machine;
    double run;
  } rows[] = { { "Wheel", 1, 45 }, { "Wheel", 2, 42 }, { "Liners", 2, 12 } };
  g_assert_cmpuint (all->len, ==, G_N_ELEMENTS (rows));
  for (guint i = 0; i < all->len; i++)
    {
      const OxWearNow *now = &g_array_index (all, OxWearNow, i);
      g_assert_cmpstr (now->name, ==, rows[i].name);
      g_assert_cmpuint (now->machine, ==, rows[i].machine);
      ox_test_near (now->run_h, rows[i].run, 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/wear/meter", test_meter);
  g_test_add_func ("/record/wear/due-strip", test_due_strip);
  g_test_add_func ("/record/wear/machines", test_machines);
  return g_test_run ();
}
