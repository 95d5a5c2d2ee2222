/* Oxturn: tests of trade/cost
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/cost.h"
#include <math.h>

static OxMoney
money (const char *text)
{
  OxMoney amount;
  g_assert_true (ox_money_parse (text, &amount));
  return amount;
}

/* By hand: 230.76 * 6.50 = 1,499.94; 1.99 * 48 = 95.52; together 1,595.46, 10 % of it 159.546 -> 159.55, total
 * 1,755.01. */
static void
test_example (void)
{
  OxCostLine lines[] = { { "strips", "R1", 230.76, 2, "m2", money ("6.50"), 0 },
                         { "edge work", "R1", 1.99, 2, "h", money ("48"), 0 } };
  OxCostSum sum;
  g_assert_true (ox_cost_sum (lines, 2, 1000, &sum));
  g_assert_cmpint (lines[0].amount, ==, money ("1499.94"));
  g_assert_cmpint (lines[1].amount, ==, money ("95.52"));
  g_assert_cmpint (sum.subtotal, ==, money ("1595.46"));
  g_assert_cmpint (sum.contingency, ==, money ("159.55"));
  g_assert_cmpint (sum.total, ==, money ("1755.01"));
}

static void
test_no_lines (void)
{
  OxCostSum sum;
  g_assert_true (ox_cost_sum (NULL, 0, 1000, &sum));
  g_assert_cmpint (sum.total, ==, 0);
}

/* Lines by room add up to the subtotal, to the cent. */
static void
test_rooms_add_up (void)
{
  static const char *const rooms[] = { "R1", "R2", "R3", "" };
  for (guint round = 0; round < 200; round++)
    {
      OxCostLine lines[50];
      for (guint i = 0; i < 50; i++)
        lines[i] = (OxCostLine){ "x",
                                 rooms[g_test_rand_int_range (0, 4)],
                                 g_test_rand_double_range (0, 5000),
                                 2,
                                 "m2",
                                 g_test_rand_int_range (0, 2000000),
                                 0 };
      OxCostSum sum;
      g_assert_true (ox_cost_sum (lines, 50, 750, &sum));
      OxMoney together = 0;
      for (guint r = 0; r < G_N_ELEMENTS (rooms); r++)
        together += ox_cost_room (lines, 50, rooms[r]);
      g_assert_cmpint (together, ==, sum.subtotal);
      g_assert_cmpint (sum.subtotal + sum.contingency, ==, sum.total);
      g_assert_cmpint (sum.total % 100, ==, 0);
    }
}

static void
test_refused (void)
{
  OxCostSum sum = { .total = 42 };
  OxCostLine nonsense[] = { { "x", "", (double) NAN, 2, "m2", OX_MONEY_ONE, 0 } };
  g_assert_false (ox_cost_sum (nonsense, 1, 0, &sum));
  OxCostLine huge[] = { { "x", "", 1, 0, "", OX_MONEY_MAX, 0 }, { "y", "", 1, 0, "", OX_MONEY_ONE, 0 } };
  g_assert_false (ox_cost_sum (huge, 2, 0, &sum));
  g_assert_false (ox_cost_sum (huge, 1, 1, &sum));
  g_assert_cmpint (sum.total, ==, 42);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/cost/sum/by-hand", test_example);
  g_test_add_func ("/trade/cost/sum/no-lines", test_no_lines);
  g_test_add_func ("/trade/cost/room/adds-up", test_rooms_add_up);
  g_test_add_func ("/trade/cost/sum/refused", test_refused);
  return g_test_run ();
}
