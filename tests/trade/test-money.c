/* Oxturn: tests of trade/money
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/money.h"
#include <math.h>

static OxMoney
money (const char *text)
{
  OxMoney amount;
  g_assert_true (ox_money_parse (text, &amount));
  return amount;
}

static void
assert_text (OxMoney amount, const char *expected)
{
  g_autofree char *text = ox_money_text (amount);
  g_assert_cmpstr (text, ==, expected);
}

static void
test_parse (void)
{
  g_assert_cmpint (money ("12.5"), ==, 125000);
  g_assert_cmpint (money (" 12,50 "), ==, 125000);
  g_assert_cmpint (money ("-0.0475"), ==, -475);
  g_assert_cmpint (money ("+7"), ==, 70000);
  g_assert_cmpint (money ("1000000000000"), ==, OX_MONEY_MAX);
  static const char *const wrong[] = { "",
                                       " ",
                                       "-",
                                       ".5",
                                       "5.",
                                       "1.2.3",
                                       "1,000.00",
                                       "0.00001",
                                       "1e3",
                                       "12 50",
                                       "0x10",
                                       "nan",
                                       "12.50 EUR",
                                       "1000000000001",
                                       "99999999999999999999" };
  OxMoney amount = 42;
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (ox_money_parse (wrong[i], &amount));
  g_assert_cmpint (amount, ==, 42);
}

static void
test_text (void)
{
  assert_text (0, "0.00");
  assert_text (125000, "12.50");
  assert_text (-475, "-0.0475");
  assert_text (10010, "1.001");
  assert_text (-5, "-0.0005");
  assert_text (OX_MONEY_MAX, "1000000000000.00");
}

static void
test_round_trip (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      OxMoney amount = (OxMoney) g_test_rand_double_range (-1e15, 1e15);
      g_autofree char *text = ox_money_text (amount);
      g_assert_cmpint (money (text), ==, amount);
    }
}

static void
test_to_cent (void)
{
  g_assert_cmpint (ox_money_to_cent (money ("2.3450")), ==, money ("2.35"));
  g_assert_cmpint (ox_money_to_cent (money ("-2.3450")), ==, money ("-2.35"));
  g_assert_cmpint (ox_money_to_cent (money ("2.3449")), ==, money ("2.34"));
  g_assert_cmpint (ox_money_to_cent (money ("1.005")), ==, money ("1.01")); /* binary 1.005 lies below the half */
}

static void
test_line (void)
{
  OxMoney out;
  g_assert_true (ox_money_line (money ("38.50"), 7.3333, 2, &out)); /* 38.50 * 7.33 = 282.205 */
  g_assert_cmpint (out, ==, money ("282.21"));
  g_assert_true (ox_money_line (money ("0.0475"), 238.72, 2, &out)); /* 11.3392 */
  g_assert_cmpint (out, ==, money ("11.34"));
  g_assert_true (ox_money_line (money ("-12.00"), 3, 0, &out));
  g_assert_cmpint (out, ==, money ("-36.00"));
  g_assert_true (ox_money_line (money ("1000000.00"), 1000000, 0, &out));
  g_assert_cmpint (out, ==, OX_MONEY_MAX);
  out = 42;
  g_assert_false (ox_money_line (money ("1000000.01"), 1000000, 0, &out));
  g_assert_false (ox_money_line (money ("1"), (double) NAN, 2, &out));
  g_assert_false (ox_money_line (money ("1"), 1e300, 2, &out));
  g_assert_cmpint (out, ==, 42);
}

/* Against long division in whole numbers: rate (1/10000) times quantity (1/100) is in millionths, a cent is 10,000 of
 * them. */
static void
test_line_is_exact (void)
{
  for (guint i = 0; i < 5000; i++)
    {
      gint64 rate = g_test_rand_int_range (0, 20000000), quantity = g_test_rand_int_range (0, 1000000);
      gint64 millionths = rate * quantity, cents = (millionths + 5000) / 10000;
      OxMoney out;
      g_assert_true (ox_money_line (rate, (double) quantity / 100, 2, &out));
      g_assert_cmpint (out, ==, cents * 100);
    }
}

static void
test_share (void)
{
  OxMoney out;
  g_assert_true (ox_money_share (money ("199.99"), 750, &out));
  g_assert_cmpint (out, ==, money ("15.00"));
  g_assert_true (ox_money_share (money ("0.10"), 500, &out)); /* half a cent */
  g_assert_cmpint (out, ==, money ("0.01"));
  g_assert_true (ox_money_share (money ("-100"), 1900, &out));
  g_assert_cmpint (out, ==, money ("-19"));
}

/* A hundred thousand lines of 0.10 are 10,000.00, to the cent. */
static void
test_no_drift (void)
{
  OxMoney sum = 0, line;
  for (guint i = 0; i < 100000; i++)
    {
      g_assert_true (ox_money_line (money ("0.1"), 1, 0, &line));
      sum += line;
    }
  g_assert_cmpint (sum, ==, money ("10000"));
}

static void
test_split (void)
{
  OxMoney thirds[3];
  ox_money_split (money ("100"), (double[]){ 1, 1, 1 }, 3, thirds);
  g_assert_cmpint (thirds[0], ==, money ("33.34"));
  g_assert_cmpint (thirds[1], ==, money ("33.33"));
  g_assert_cmpint (thirds[2], ==, money ("33.33"));
  ox_money_split (money ("-0.05"), (double[]){ 0, 3, 1 }, 3, thirds);
  g_assert_cmpint (thirds[0], ==, 0);
  g_assert_cmpint (thirds[1], ==, money ("-0.04"));
  g_assert_cmpint (thirds[2], ==, money ("-0.01"));
}

/* Parts of a total add up to it, and none is a cent away from its fair share. */
static void
test_split_adds_up (void)
{
  for (guint i = 0; i < 500; i++)
    {
      double weights[40], all = 0;
      OxMoney parts[40], total = g_test_rand_int_range (0, G_MAXINT) * G_GINT64_CONSTANT (100), sum = 0;
      for (guint k = 0; k < 40; k++)
        all += weights[k] = g_test_rand_double_range (0, 300);
      ox_money_split (total, weights, 40, parts);
      for (guint k = 0; k < 40; k++)
        {
          sum += parts[k];
          g_assert_cmpfloat (fabs ((double) parts[k] - (double) total * weights[k] / all), <=, 100.001);
        }
      g_assert_cmpint (sum, ==, total);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/money/parse/amounts-and-others", test_parse);
  g_test_add_func ("/trade/money/text/decimals", test_text);
  g_test_add_func ("/trade/money/text/round-trip", test_round_trip);
  g_test_add_func ("/trade/money/to-cent/halves-away-from-zero", test_to_cent);
  g_test_add_func ("/trade/money/line/examples-and-limits", test_line);
  g_test_add_func ("/trade/money/line/exact", test_line_is_exact);
  g_test_add_func ("/trade/money/share/examples", test_share);
  g_test_add_func ("/trade/money/line/no-drift", test_no_drift);
  g_test_add_func ("/trade/money/split/examples", test_split);
  g_test_add_func ("/trade/money/split/adds-up", test_split_adds_up);
  return g_test_run ();
}
