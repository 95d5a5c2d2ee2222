/* Oxturn: tests/session/test-selection - what a selected id may name.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/selection.h"

static void
test_item_and_side (void)
{
  static const struct
  {
    const char *entry;
    const char *item;
    int side;
  } cases[] = {
    { "R1", "R1", -1 },  { "R1#0", "R1", 0 },  { "R12#345", "R12", 345 },
    { "R1#", "R1", -1 }, { "R1#x", "R1", -1 }, { "R1#-2", "R1", -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *item = ox_selection_item (cases[i].entry);

      g_assert_cmpstr (item, ==, cases[i].item);
      g_assert_cmpint (ox_selection_side (cases[i].entry), ==, cases[i].side);
    }
}

static void
test_round_trip (void)
{
  g_autofree char *entry = ox_selection_of_side ("R7", 3);
  g_autofree char *item = ox_selection_item (entry);

  g_assert_cmpstr (item, ==, "R7");
  g_assert_cmpint (ox_selection_side (entry), ==, 3);
}

static void
test_items (void)
{
  const char *const selection[] = { "R1", "R2#1", "O3", NULL };
  const char *const whole[] = { "R1", "O3", NULL };
  g_auto (GStrv) items = ox_selection_items (selection);

  g_assert_cmpstrv (items, whole);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/selection/item-and-side", test_item_and_side);
  g_test_add_func ("/session/selection/round-trip", test_round_trip);
  g_test_add_func ("/session/selection/items", test_items);
  return g_test_run ();
}
