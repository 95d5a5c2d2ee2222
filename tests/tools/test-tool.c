/* Oxturn: tests/tools/test-tool - what holds for every tool.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "support/floors.h"

static void
test_names_and_hints (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

  for (int i = 0; i < OX_N_TOOLS; i++)
    {
      g_autoptr (OxTool) tool = ox_tool_new ((OxToolKind) i);

      g_assert_true (g_hash_table_add (names, (char *) ox_tool_kind_name ((OxToolKind) i)));
      g_assert_cmpstr (ox_tool_kind_title ((OxToolKind) i), !=, "");
      g_assert_cmpstr (ox_tool_hint (tool), !=, "");
      g_assert_cmpstr (ox_tool_cursor (tool), !=, "");
      g_assert_cmpint (ox_tool_get_kind (tool), ==, i);
      g_assert_false (ox_tool_is_busy (tool));
    }
}

/* Random clicks, moves and keys in any order: the job stays one that can be, and cancelling always brings the tool to
 * rest. */
static void
test_random_events (void)
{
  static const char signs[] = "0123456789.,'\"-/ cmfxs";

  for (guint run = 0; run < 200; run++)
    {
      OxToolKind kind = (OxToolKind) g_test_rand_int_range (0, OX_N_TOOLS);
      g_autoptr (OxJob) job = ox_test_floor_random ((guint32) g_test_rand_int_range (0, 60));
      g_autoptr (OxHand) hand = ox_hand_new (kind, job);

      for (guint i = 0; i < 60; i++)
        {
          double x = g_test_rand_double_range (-2, 12);
          double y = g_test_rand_double_range (-2, 12);
          char sign[2] = { signs[g_test_rand_int_range (0, sizeof signs - 1)], '\0' };
          int event = g_test_rand_int_range (0, 7);

          if (event == 0)
            ox_hand_press (hand, x, y, (OxHold) g_test_rand_int_range (0, 4), (guint) g_test_rand_int_range (1, 3));
          else if (event == 1)
            ox_hand_release (hand, x, y, OX_HOLD_NONE);
          else if (event == 2)
            ox_hand_type (hand, sign);
          else if (event == 3)
            ox_hand_key (hand, (OxKeyName) g_test_rand_int_range (OX_KEY_ENTER, OX_KEY_DOWN + 1));
          else
            ox_hand_move (hand, x, y, OX_HOLD_NONE);
          ox_hand_sees (hand, "m");
        }
      ox_tool_cancel (hand->tool);
      g_assert_false (ox_tool_is_busy (hand->tool));
    }
}

/* Cancelling in mid-drag leaves the job as it was. */
static void
test_cancel_changes_nothing (void)
{
  for (int i = 0; i < OX_N_TOOLS; i++)
    {
      g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
      g_autoptr (OxHand) hand = ox_hand_new ((OxToolKind) i, job);

      if (i == OX_TOOL_STATION) /* done with the press already */
        continue;
      ox_hand_press (hand, 10, 3, OX_HOLD_NONE, 1);
      ox_hand_move (hand, 10, 5, OX_HOLD_NONE);
      ox_tool_cancel (hand->tool);
      ox_hand_release (hand, 10, 5, OX_HOLD_NONE);
      g_assert_true (hand->job == job);
      g_assert_cmpuint (hand->edits, ==, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/tool/names-and-hints", test_names_and_hints);
  g_test_add_func ("/tools/tool/random-events", test_random_events);
  g_test_add_func ("/tools/tool/cancel-changes-nothing", test_cancel_changes_nothing);
  return g_test_run ();
}
