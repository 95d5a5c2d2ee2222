/* Oxturn: tests/job/test-machine
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/machine.h"
#include <math.h>
#include <string.h>
#include "job/classes.h"
#include "job/machine-fields.h"

static OxMachine *
any_machine (void)
{
  return ox_machine_copy (ox_classes_get (0));
}

static void
assert_complaint (const OxMachine *machine, const char *part)
{
  g_autofree char *complaint = ox_machine_check (machine);
  g_assert_nonnull (complaint);
  if (!strstr (complaint, part))
    g_error ("“%s” does not say “%s”", complaint, part);
}

static void
test_copy (void)
{
  g_autoptr (OxMachine) a = any_machine ();
  g_autoptr (OxMachine) b = ox_machine_copy (a);
  g_assert_true (ox_machine_equal (a, b));
  g_assert_true (a->name != b->name && a->wear[0].name != b->wear[0].name);
  b->wear[1].run_h += 1;
  g_assert_false (ox_machine_equal (a, b));
}

/* Any figure that differs makes two machines differ. */
static void
test_equal (void)
{
  g_autoptr (OxMachine) a = any_machine ();
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (OxMachine) b = ox_machine_copy (a);
      *ox_machine_field_at (b, &fields[i]) += 0.001;
      g_assert_false (ox_machine_equal (a, b));
    }
}

static void
test_ranges (void)
{
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  g_assert_cmpuint (n, ==, 24);
  for (guint i = 0; i < n; i++)
    {
      const double wrong[] = { fields[i].above ? fields[i].least : fields[i].least - 0.001,
                               fields[i].most + 0.001,
                               NAN,
                               INFINITY,
                               -INFINITY,
                               1e300 };
      for (guint k = 0; k < G_N_ELEMENTS (wrong); k++)
        {
          g_autoptr (OxMachine) machine = any_machine ();
          *ox_machine_field_at (machine, &fields[i]) = wrong[k];
          assert_complaint (machine, fields[i].label);
        }
    }
}

static void
test_says_what_was_found (void)
{
  g_autoptr (OxMachine) machine = any_machine ();
  machine->blast_width = 0;
  g_autofree char *complaint = ox_machine_check (machine);
  g_assert_cmpstr (complaint, ==, "Blast width of the machine is 0 m; more than 0 m and at most 5 m is allowed");
}

static void
test_overlap (void)
{
  g_autoptr (OxMachine) machine = any_machine ();
  machine->min_overlap = machine->blast_width;
  assert_complaint (machine, "less than the blast width of 0.21 m");
  machine->min_overlap = machine->blast_width - 0.0001;
  g_assert_null (ox_machine_check (machine));
}

static void
test_pattern_under_body (void)
{
  g_autoptr (OxMachine) machine = any_machine ();
  machine->left = 0.105;
  g_assert_null (ox_machine_check (machine));
  machine->left = 0.104;
  assert_complaint (machine, "Left of the machine is 0.104 m; at least 0.105 m");
}

static void
test_phases (void)
{
  g_autoptr (OxMachine) machine = any_machine ();
  machine->phases = 2;
  assert_complaint (machine, "2 phases");
}

static void
test_wear (void)
{
  g_autoptr (OxMachine) machine = any_machine ();
  machine->wear[0].interval_h = 0;
  assert_complaint (machine, machine->wear[0].name);
  machine->wear[0].interval_h = 10;
  machine->wear[2].run_h = -1;
  assert_complaint (machine, machine->wear[2].name);
  machine->wear[2].run_h = 0;
  machine->wear[1].machine = 21;
  assert_complaint (machine, "must be one of 1 to 20, or all");
}

static void
test_wear_of_one (void)
{
  OxWearPart all = { .machine = 0 }, second = { .machine = 2 };
  g_assert_true (ox_wear_part_is_on (&all, 1) && ox_wear_part_is_on (&all, 20) && ox_wear_part_is_on (&second, 2));
  g_assert_false (ox_wear_part_is_on (&second, 1));
  g_autoptr (OxMachine) a = any_machine (), b = ox_machine_copy (a);
  b->wear[0].machine = 2;
  g_assert_false (ox_machine_equal (a, b));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/machine/copy", test_copy);
  g_test_add_func ("/job/machine/equal", test_equal);
  g_test_add_func ("/job/machine/check/ranges", test_ranges);
  g_test_add_func ("/job/machine/check/says-what-was-found", test_says_what_was_found);
  g_test_add_func ("/job/machine/check/overlap", test_overlap);
  g_test_add_func ("/job/machine/check/pattern-under-body", test_pattern_under_body);
  g_test_add_func ("/job/machine/check/phases", test_phases);
  g_test_add_func ("/job/machine/check/wear", test_wear);
  g_test_add_func ("/job/machine/wear-of-one", test_wear_of_one);
  return g_test_run ();
}
