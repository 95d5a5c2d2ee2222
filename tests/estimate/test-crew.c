/* Oxturn: tests of estimate/crew
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "made.h"

static double
load_of (const OxPlan *plan, const guint *machine, guint m)
{
  double load = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    load += machine[i] == m ? plan->strips[i].minutes : 0;
  return load;
}

/* One room of 40 equal strips on two machines: 20 next to each other for each. */
static void
test_one_room (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  guint machine[40], changes = 0;
  ox_work_split (plan, 2, FALSE, machine);
  for (guint i = 1; i < 40; i++)
    changes += machine[i] != machine[i - 1];
  g_assert_cmpuint (changes, ==, 1);
  g_assert_cmpfloat (fabs (load_of (plan, machine, 0) - load_of (plan, machine, 1)), <=, 2 * MADE_MINUTES);
  ox_work_split (plan, 1, FALSE, machine);
  for (guint i = 0; i < 40; i++)
    g_assert_cmpuint (machine[i], ==, 0);
}

/* Four equal fields at two stations: each machine stays at one. */
static void
test_stays_near (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  guint machine[40];
  for (guint i = 0; i < 40; i++)
    plan->strips[i].station = (i / 10) % 2;
  ox_work_split (plan, 2, FALSE, machine);
  for (guint i = 0; i < 40; i++)
    g_assert_cmpuint (machine[i], ==, machine[plan->strips[i].station == 0 ? 0 : 10]);
  g_assert_cmpuint (machine[0], !=, machine[10]);
}

/* Every strip has a machine that exists; no machine has more than a fair share and the longest field. */
static void
test_is_fair (void)
{
  for (guint round = 0; round < 50; round++)
    {
      guint n = (guint) g_test_rand_int_range (1, 60), machines = (guint) g_test_rand_int_range (1, 6), machine[60];
      g_autoptr (OxPlan) plan = made_plan (n, 15, "");
      double all = 0;
      for (guint i = 0; i < n; i++)
        {
          plan->strips[i].station = g_test_rand_int_range (-1, 3);
          plan->strips[i].minutes = g_test_rand_double_range (0.5, 3);
          all += plan->strips[i].minutes;
        }
      ox_work_split (plan, machines, FALSE, machine);
      for (guint i = 0; i < n; i++)
        g_assert_cmpuint (machine[i], <, machines);
      for (guint m = 0; m < machines; m++)
        g_assert_cmpfloat (load_of (plan, machine, m), <=, 2.2 * (all + MADE_MOVE * n) / machines + 3 + MADE_MOVE);
    }
}

/* Two coats of 20 strips on two machines: each has half of either, so that none waits for the other's first coat. */
static void
test_coats (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "");
  guint machine[40], first[2] = { 0, 0 };
  for (guint i = 0; i < 40; i++)
    plan->strips[i].coat = i < 20 ? 1 : 2;
  ox_work_split (plan, 2, FALSE, machine);
  for (guint i = 0; i < 20; i++)
    first[machine[i]]++;
  g_assert_cmpuint (MAX (first[0], first[1]) - MIN (first[0], first[1]), <=, 2);
  g_assert_cmpfloat (fabs (load_of (plan, machine, 0) - load_of (plan, machine, 1)), <=, 4 * MADE_MINUTES);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/crew/one-room-is-cut-between-lanes", test_one_room);
  g_test_add_func ("/estimate/crew/stays-at-its-station", test_stays_near);
  g_test_add_func ("/estimate/crew/coat-by-coat", test_coats);
  g_test_add_func ("/estimate/crew/fair", test_is_fair);
  return g_test_run ();
}
