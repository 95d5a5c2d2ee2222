/* Oxturn: tests/tools/test-scale - a traced plan brought to scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include "job/edit.h"

static OxHand *
new_hand (void)
{
  g_autoptr (GBytes) data = g_bytes_new_static ("%PDF-", 5);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  OxTracedPlan draft = { .id = (char *) "T1", .data = data, .page = 1, .middle = { 5, 4 }, .width = 10, .depth = 8, .strength = 1 };
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);
  g_autoptr (OxJob) job = ox_job_with_traced (empty, traced, NULL);

  return ox_hand_new (OX_TOOL_SCALE, job);
}

/* 2 m on the screen are 5 m in truth: everything lies 2.5 times as far from the first point. */
static void
test_two_points (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  ox_hand_click (hand, 3, 1);
  ox_hand_type (hand, "5\n");
  g_assert_cmpuint (hand->edits, ==, 1);
  g_assert_cmpfloat_with_epsilon (hand->job->traced[0]->width, 25, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->traced[0]->depth, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->traced[0]->middle.x, 1 + 2.5 * 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (hand->job->traced[0]->middle.y, 1 + 2.5 * 3, 1e-9);
  g_assert_cmpstr (hand->selection[0], ==, "T1");
}

static void
test_drag (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_drag (hand, 2, 2, 2, 6);
  g_assert_true (ox_hand_sees (hand, "4.00"));
  ox_hand_type (hand, "1cm\n");
  g_assert_cmpfloat_with_epsilon (hand->job->traced[0]->width, 0.025, 1e-9);
}

/* A third click mends the point that it is nearer to. */
static void
test_mended (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  ox_hand_click (hand, 4, 1);
  ox_hand_click (hand, 6, 1);
  ox_hand_click (hand, 2, 1);
  ox_hand_type (hand, "8\n");
  g_assert_cmpfloat_with_epsilon (hand->job->traced[0]->width, 20, 1e-9);
}

static void
test_refused (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 30, 1);
  g_assert_nonnull (hand->refusal);
  ox_hand_click (hand, 1, 1);
  ox_hand_click (hand, 1.02, 1);
  g_assert_nonnull (hand->refusal);
  ox_hand_click (hand, 3, 1);
  g_assert_null (hand->refusal);
  g_assert_true (ox_hand_key (hand, OX_KEY_ENTER));
  g_assert_nonnull (hand->refusal);
  ox_hand_type (hand, "30000\n");
  g_assert_nonnull (hand->refusal); /* larger than a floor can be */
  g_assert_cmpuint (hand->edits, ==, 0);
}

static void
test_escape (void)
{
  g_autoptr (OxHand) hand = new_hand ();

  ox_hand_click (hand, 1, 1);
  ox_hand_click (hand, 3, 1);
  ox_hand_type (hand, "5");
  for (guint i = 0; i < 3; i++)
    {
      g_assert_true (ox_tool_is_busy (hand->tool));
      g_assert_true (ox_hand_key (hand, OX_KEY_ESCAPE));
    }
  g_assert_false (ox_tool_is_busy (hand->tool));
  g_assert_false (ox_hand_key (hand, OX_KEY_ESCAPE));
  g_assert_cmpuint (hand->edits, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/scale/two-points", test_two_points);
  g_test_add_func ("/tools/scale/drag", test_drag);
  g_test_add_func ("/tools/scale/mended", test_mended);
  g_test_add_func ("/tools/scale/refused", test_refused);
  g_test_add_func ("/tools/scale/escape", test_escape);
  return g_test_run ();
}
