/* Oxturn: plan/order-fields: fewer walks between fields, and nothing else.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The compact machine: 30 m/min from strip to strip, 15 s for a swing. Strips made by hand turn where they end.
 */
#include "job/classes.h"
#include "plan/leg.h"
#include "support/floors.h"
#include "support/ox-test.h"

static void
add_leg (GArray *legs, OxPoint a, OxPoint b, gboolean grid, gboolean reversible)
{
  OxLeg leg = { .a = a, .b = b, .reversible = reversible, .grid = grid, .y = a.y };
  leg.heading = atan2 (b.y - a.y, b.x - a.x);
  leg.along = (OxPoint){ cos (leg.heading), sin (leg.heading) };
  g_array_append_val (legs, leg);
}

/* @n lanes to and fro from @x0 to @x1, the first one at @y towards +x */
static void
add_field (GArray *legs, double x0, double x1, double y, guint n)
{
  for (guint i = 0; i < n; i++)
    add_leg (legs, (OxPoint){ i % 2 ? x1 : x0, y + 0.19 * i }, (OxPoint){ i % 2 ? x0 : x1, y + 0.19 * i }, TRUE, FALSE);
}

static double
seconds_of (const GArray *legs)
{
  double sum = 0;
  for (guint i = 1; i < legs->len; i++)
    sum += ox_leg_seconds (ox_classes_find ("compact"), &g_array_index (legs, OxLeg, i - 1), &g_array_index (legs, OxLeg, i));
  return sum;
}

/* Fields at x = 0 to 2, 20 to 22 and 4 to 6 m, each of four lanes, worked in that order: the far one goes last, or first. It saves a way of 18 and one of 16 m
 * for one of 2 and one of 14. */
static void
far_field_at_an_end (void)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  add_field (legs, 0, 2, 0, 4);
  add_field (legs, 20, 22, 0, 4);
  add_field (legs, 4, 6, 0, 4);
  double before = seconds_of (legs), saved = ox_order_fields (legs, NULL, NULL, ox_classes_find ("compact"), NULL);
  ox_test_near (before - seconds_of (legs), saved, 1e-9);
  g_assert_cmpfloat (saved, >, (18 + 16 - 2 - 14 - 2) / 30.0 * 60);
  g_assert_cmpfloat (MAX (g_array_index (legs, OxLeg, 0).a.x, g_array_index (legs, OxLeg, 11).a.x), >, 19);
}

/* A machine that comes from beyond the last lane begins there. */
static void
from_where_it_comes (void)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  g_autoptr (GArray) other = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  add_field (legs, 0, 8, 0, 20);
  add_leg (other, (OxPoint){ 4, 9 }, (OxPoint){ 4, 6 }, TRUE, FALSE);
  g_assert_cmpfloat (ox_order_fields (legs, &g_array_index (other, OxLeg, 0), NULL, ox_classes_find ("compact"), NULL), >, 0);
  ox_test_near (g_array_index (legs, OxLeg, 0).a.y, 19 * 0.19, 1e-9);
  for (guint i = 1; i < legs->len; i++) /* still lane by lane */
    ox_test_near (g_array_index (legs, OxLeg, i - 1).a.y - g_array_index (legs, OxLeg, i).a.y, 0.19, 1e-9);
}

/* A strip that may be run either way is run from the end where the machine stands: a swing and 3 m, 21 s, against rolling back 14 m, 28 s. */
static void
other_way_round (void)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  add_leg (legs, (OxPoint){ 0, 0 }, (OxPoint){ 14, 0 }, TRUE, FALSE);
  add_leg (legs, (OxPoint){ 0, 3 }, (OxPoint){ 14, 3 }, FALSE, TRUE);
  ox_order_fields (legs, NULL, NULL, ox_classes_find ("compact"), NULL);
  ox_test_near (g_array_index (legs, OxLeg, 1).a.x, 14, 1e-9);
}

static int
compare_middles (gconstpointer a, gconstpointer b)
{
  const OxLeg *p = a, *q = b;
  double d[2] = { p->a.x + p->b.x - q->a.x - q->b.x, p->a.y + p->b.y - q->a.y - q->b.y };
  for (guint i = 0; i < 2; i++)
    if (fabs (d[i]) > 1e-12)
      return d[i] < 0 ? -1 : 1;
  return 0;
}

/* Whatever comes: the same strips, none run against what it allows, those of the grid first, never more time than before, and the same again. */
static void
nothing_lost (void)
{
  for (guint round = 0; round < 200; round++)
    {
      g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
      guint n = (guint) g_test_rand_int_range (1, 9);
      for (guint i = 0; i < n; i++)
        add_field (legs, i * 3, i * 3 + 2, g_test_rand_double_range (0, 20), (guint) g_test_rand_int_range (1, 5));
      guint grid = legs->len;
      for (guint i = 0; i < n; i++)
        {
          OxPoint a = { g_test_rand_double_range (0, 25), g_test_rand_double_range (0, 20) };
          add_leg (legs, a, (OxPoint){ a.x, a.y + 2 }, FALSE, g_test_rand_int_range (0, 2) == 1);
        }
      g_autoptr (GArray) was = g_array_copy (legs);
      g_autoptr (GArray) again = g_array_copy (legs);
      double saved = ox_order_fields (legs, NULL, NULL, ox_classes_find ("compact"), NULL);
      g_assert_cmpfloat (saved, >=, 0);
      ox_test_near (seconds_of (was) - seconds_of (legs), saved, 1e-6);
      ox_order_fields (again, NULL, NULL, ox_classes_find ("compact"), NULL);
      g_assert_cmpmem (legs->data, legs->len * sizeof (OxLeg), again->data, again->len * sizeof (OxLeg));
      for (guint i = 0; i < legs->len; i++)
        g_assert_cmpint (g_array_index (legs, OxLeg, i).grid, ==, i < grid);
      g_array_sort (legs, compare_middles);
      g_array_sort (was, compare_middles);
      for (guint i = 0; i < legs->len; i++)
        {
          const OxLeg *p = &g_array_index (legs, OxLeg, i), *q = &g_array_index (was, OxLeg, i);
          g_assert_cmpint (compare_middles (p, q), ==, 0);
          if (!q->reversible)
            ox_test_near (ox_point_distance (p->a, q->a), 0, 1e-12);
        }
    }
}

static void
nothing_there (void)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  g_assert_cmpfloat (ox_order_fields (legs, NULL, NULL, ox_classes_find ("compact"), NULL), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/order-fields/far-field-at-an-end", far_field_at_an_end);
  g_test_add_func ("/plan/order-fields/from-where-it-comes", from_where_it_comes);
  g_test_add_func ("/plan/order-fields/other-way-round", other_way_round);
  g_test_add_func ("/plan/order-fields/nothing-lost", nothing_lost);
  g_test_add_func ("/plan/order-fields/nothing-there", nothing_there);
  return g_test_run ();
}
