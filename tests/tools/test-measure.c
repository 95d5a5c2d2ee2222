/* Oxturn: tests/tools/test-measure - distance, angle and area.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "support/floors.h"

static OxHand *
new_hand (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (30, 20, "compact");

  return ox_hand_new (OX_TOOL_MEASURE, job);
}

/* The 3-4-5 triangle: right angle, 6 m2. */
static void
test_triangle (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 2, 2);
  ox_hand_move (hand, 6, 2, OX_HOLD_NONE);
  g_assert_true (ox_hand_sees (hand, "4.00 m"));
  ox_hand_click (hand, 6, 2);
  ox_hand_click (hand, 6, 5);
  g_assert_true (ox_hand_sees (hand, "3.00 m   angle 90.0\302\260   in all 7.00 m   area 6.0 m\302\262"));
  ox_hand_press (hand, 6, 5, OX_HOLD_NONE, 2);
  ox_hand_move (hand, 20, 15, OX_HOLD_NONE);
  g_assert_true (ox_hand_sees (hand, "area 6.0"));
  g_assert_cmpuint (hand->edits, ==, 0);
  ox_hand_click (hand, 1, 1);
  g_assert_false (ox_hand_sees (hand, "area"));
}

static void
test_steps_back (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  g_assert_false (ox_hand_key (hand, OX_KEY_ESCAPE));
  ox_hand_click (hand, 2, 2);
  ox_hand_click (hand, 6, 2);
  g_assert_true (ox_hand_key (hand, OX_KEY_BACKSPACE));
  ox_hand_move (hand, 2, 7, OX_HOLD_NONE);
  g_assert_true (ox_hand_sees (hand, "5.00 m"));
  g_assert_true (ox_tool_is_busy (hand->tool));
  g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_false (ox_tool_is_busy (hand->tool));
}

/* From the corner of the room to its middle at the far side: both are held, whatever the pointer's last pixel says. */
static void
test_holds (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 0.04, -0.03);
  ox_hand_move (hand, 15.05, 0.04, OX_HOLD_NONE);
  g_assert_true (ox_hand_sees (hand, "15.00 m"));
  g_assert_true (ox_hand_sees (hand, "middle"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/measure/triangle", test_triangle);
  g_test_add_func ("/tools/measure/steps-back", test_steps_back);
  g_test_add_func ("/tools/measure/holds", test_holds);
  return g_test_run ();
}
