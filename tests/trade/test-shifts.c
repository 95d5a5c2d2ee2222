/* Oxturn: tests of trade/shifts
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/shifts.h"

static void
test_working (void)
{
  g_assert_cmpfloat (ox_shifts_working (&(OxShiftRules){ 480, 45, 60, 30 }), ==, 345);
  g_assert_cmpfloat (ox_shifts_working (&(OxShiftRules){ 60, 45, 60, 30 }), ==, 0);
}

static void
test_share_out (void)
{
  const OxShiftRules rules = { 100, 0, 0, 0 };
  static const double pieces[] = { 60, 30, 20, 120, 10 };
  static const guint expected[] = { 1, 1, 2, 3, 4 };
  guint shifts[5];
  g_assert_cmpuint (ox_shifts_share_out (&rules, pieces, 5, shifts), ==, 4);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpuint (shifts[i], ==, expected[i]);
  g_assert_cmpuint (ox_shifts_share_out (&rules, pieces, 0, NULL), ==, 0);
}

/* 1,000 pieces of a tenth of a minute fill a shift of 100 min, however a tenth adds up in binary. */
static void
test_share_out_rounding (void)
{
  double pieces[2000];
  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    pieces[i] = 0.1;
  g_assert_cmpuint (ox_shifts_share_out (&(OxShiftRules){ 100, 0, 0, 0 }, pieces, 1000, NULL), ==, 1);
  g_assert_cmpuint (ox_shifts_share_out (&(OxShiftRules){ 100, 0, 0, 0 }, pieces, 2000, NULL), ==, 2);
}

/* Numbers never fall nor skip, no shift with more than one piece is too full, and no piece would have fitted a shift
 * earlier. */
static void
test_share_out_properties (void)
{
  for (guint round = 0; round < 300; round++)
    {
      double pieces[60];
      guint shifts[60];
      OxShiftRules rules = { g_test_rand_double_range (100, 500), 20, 30, 10 };
      double working = ox_shifts_working (&rules), used = 0;
      for (guint i = 0; i < 60; i++)
        pieces[i] = g_test_rand_double_range (0.1, 90);
      g_assert_cmpuint (ox_shifts_share_out (&rules, pieces, 60, shifts), ==, shifts[59]);
      g_assert_cmpuint (shifts[0], ==, 1);
      for (guint i = 0; i < 60; i++)
        {
          gboolean begins = i > 0 && shifts[i] != shifts[i - 1];
          if (begins)
            {
              g_assert_cmpuint (shifts[i], ==, shifts[i - 1] + 1);
              g_assert_cmpfloat (used + pieces[i], >, working);
              used = 0;
            }
          gboolean alone = used <= 0;
          used += pieces[i];
          g_assert_true (alone || used <= working + 1e-5);
        }
    }
}

/* Strips that lose 2 kg each, 5 kg may be missing: before the third. 2.5 kg each fit twice; one of 9 kg is laid after a stop all the same. */
static void
test_is_due (void)
{
  g_assert_false (ox_shifts_is_due (2, 2, 5));
  g_assert_true (ox_shifts_is_due (4, 2, 5));
  g_assert_false (ox_shifts_is_due (2.5, 2.5, 5));
  g_assert_false (ox_shifts_is_due (0, 9, 5));
}

static void
test_split (void)
{
  static const double rooms[] = { 30, 50, 20, 40, 30 };
  static const guint expected[] = { 1, 0, 1, 1, 0 };
  guint machine[5];
  g_assert_cmpfloat (ox_shifts_split (rooms, 5, 2, machine), ==, 90);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpuint (machine[i], ==, expected[i]);
  g_assert_cmpfloat (ox_shifts_split (rooms, 5, 1, machine), ==, 170);
  g_assert_cmpfloat (ox_shifts_split (rooms, 0, 3, machine), ==, 0);
}

/* Shortest time for 9 rooms on 3 machines by trying all 3^9 ways. */
static double
shortest (const double *rooms)
{
  double best = G_MAXDOUBLE;
  for (guint way = 0; way < 19683; way++)
    {
      double load[3] = { 0 };
      guint rest = way;
      for (guint i = 0; i < 9; i++, rest /= 3)
        load[rest % 3] += rooms[i];
      best = MIN (best, MAX (load[0], MAX (load[1], load[2])));
    }
  return best;
}

static void
test_split_is_fair (void)
{
  for (guint round = 0; round < 60; round++)
    {
      double rooms[9], load[3] = { 0 };
      guint machine[9];
      for (guint i = 0; i < 9; i++)
        rooms[i] = g_test_rand_double_range (5, 200);
      double longest = ox_shifts_split (rooms, 9, 3, machine);
      for (guint i = 0; i < 9; i++)
        load[machine[i]] += rooms[i];
      g_assert_cmpfloat_with_epsilon (longest, MAX (load[0], MAX (load[1], load[2])), 1e-9);
      g_assert_cmpfloat (longest, <=, shortest (rooms) * (4.0 / 3 - 1.0 / 9) + 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/shifts/working/what-is-left", test_working);
  g_test_add_func ("/trade/shifts/share-out/example", test_share_out);
  g_test_add_func ("/trade/shifts/share-out/forgives-rounding", test_share_out_rounding);
  g_test_add_func ("/trade/shifts/share-out/fills-in-order", test_share_out_properties);
  g_test_add_func ("/trade/shifts/is-due/examples", test_is_due);
  g_test_add_func ("/trade/shifts/split/example", test_split);
  g_test_add_func ("/trade/shifts/split/within-the-bound", test_split_is_fair);
  return g_test_run ();
}
