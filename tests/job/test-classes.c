/* Oxturn: tests/job/test-classes
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/classes.h"
#include "support/ox-test.h"

/* Plans are compared with one another by these figures, so they are fixed for the class. */
static const OxMachine fixed_figures[] = {
  { .class_id = (char *) "compact",
    .blast_width = 0.210,
    .blast_length = 0.08,
    .front = 0.35,
    .rear = 1.25,
    .left = 0.19,
    .right = 0.19,
    .wall_gap = 0.02,
    .min_overlap = 0.020,
    .turn_radius = 0.75,
    .min_strip = 0.5,
    .travel_speed = 6,
    .walk_speed = 30,
    .swing_s = 15,
    .phases = 1 },
  { .class_id = (char *) "medium",
    .blast_width = 0.330,
    .blast_length = 0.10,
    .front = 0.45,
    .rear = 1.40,
    .left = 0.27,
    .right = 0.27,
    .wall_gap = 0.03,
    .min_overlap = 0.030,
    .turn_radius = 0.90,
    .min_strip = 0.6,
    .travel_speed = 8,
    .walk_speed = 30,
    .swing_s = 18,
    .phases = 3 },
  { .class_id = (char *) "large",
    .blast_width = 0.500,
    .blast_length = 0.12,
    .front = 0.55,
    .rear = 1.60,
    .left = 0.36,
    .right = 0.36,
    .wall_gap = 0.03,
    .min_overlap = 0.040,
    .turn_radius = 1.10,
    .min_strip = 0.8,
    .travel_speed = 10,
    .walk_speed = 30,
    .swing_s = 22,
    .phases = 3 },
  { .class_id = (char *) "offset",
    .blast_width = 0.250,
    .blast_length = 0.08,
    .front = 0.40,
    .rear = 1.30,
    .left = 0.16,
    .right = 0.28,
    .wall_gap = 0.02,
    .min_overlap = 0.025,
    .turn_radius = 0.85,
    .min_strip = 0.5,
    .travel_speed = 7,
    .walk_speed = 30,
    .swing_s = 16,
    .phases = 1 },
};

static void
test_fixed_figures (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (fixed_figures); i++)
    {
      const OxMachine *found = ox_classes_find (fixed_figures[i].class_id);
      g_assert_true (found == ox_classes_get (i));
      OxMachine fixed = *found;
      fixed.start_s = fixed.hopper_kg = fixed.flow_kg_min = fixed.loss_share = 0;
      fixed.hose_bore = fixed.hose_length = fixed.hose_flow = 0;
      fixed.volts = fixed.amperes = fixed.cord_length = fixed.cord_mm2 = 0;
      fixed.name = NULL;
      fixed.n_wear = 0;
      g_assert_true (ox_machine_equal (&fixed, &fixed_figures[i]));
    }
}

static void
test_all_sound (void)
{
  g_assert_cmpuint (ox_classes_get_count (), >=, 4);
  for (guint i = 0; i < ox_classes_get_count (); i++)
    {
      const OxMachine *machine = ox_classes_get (i);
      g_autofree char *complaint = ox_machine_check (machine);
      g_assert_cmpstr (complaint, ==, NULL);
      g_assert_cmpstr (machine->name, !=, "");
      g_assert_cmpuint (machine->n_wear, >, 0);
      g_assert_true (machine->start_s >= 0 && machine->start_s <= 3);
      /* A wheel throws about 14 kg/min a kilowatt, so a continuous supply must have that much at a power factor of 0.8.
       */
      double kilowatts = machine->volts * machine->amperes * (machine->phases == 3 ? sqrt (3) : 1) * 0.8 / 1000;
      g_assert_cmpfloat (machine->flow_kg_min / 14, <=, kilowatts);
      /* Dust stays in the hose from about 18 m/s on, and 30 m/s wears it out. */
      double speed = machine->hose_flow / 3600 / (G_PI / 4 * machine->hose_bore * machine->hose_bore);
      g_assert_true (speed >= 18 && speed <= 30);
    }
}

/* A socket that every building has: 120 V, 20 A, of which a load of hours may take 80 %. */
static void
test_compact_runs_from_a_socket (void)
{
  const OxMachine *machine = ox_classes_find ("compact");
  g_assert_cmpint (machine->phases, ==, 1);
  g_assert_true (machine->volts >= 110 && machine->volts <= 120);
  g_assert_cmpfloat (machine->amperes, <=, 0.8 * 20);
}

static void
test_unknown (void)
{
  g_assert_null (ox_classes_find ("colossal"));
  g_assert_null (ox_classes_find (""));
}

/* Common practice, no source: the wheel is looked at about every 50 h, the liners at every second of these checks. A
 * compact machine of single phase lays a pattern of about 8 in and draws 15 to 20 A. */
static void
test_practice (void)
{
  for (guint i = 0; i < ox_classes_get_count (); i++)
    {
      const OxMachine *machine = ox_classes_get (i);
      g_assert_cmpstr (machine->wear[0].name, ==, "Blast wheel blades");
      g_assert_cmpstr (machine->wear[2].name, ==, "Liners");
      g_assert_cmpfloat (fabs (machine->wear[0].interval_h - 50), <=, 10);
      g_assert_cmpfloat (machine->wear[2].interval_h, ==, 2 * machine->wear[0].interval_h);
    }
  const OxMachine *compact = ox_classes_find ("compact");
  ox_test_near (compact->blast_width, 8 * 0.0254, 0.01);
  g_assert_cmpint (compact->phases, ==, 1);
  g_assert_true (compact->amperes >= 15 && compact->amperes <= 20);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/classes/fixed-figures", test_fixed_figures);
  g_test_add_func ("/job/classes/all-sound", test_all_sound);
  g_test_add_func ("/job/classes/compact-runs-from-a-socket", test_compact_runs_from_a_socket);
  g_test_add_func ("/job/classes/unknown", test_unknown);
  g_test_add_func ("/job/classes/usual-practice", test_practice);
  return g_test_run ();
}
