/* Oxturn: tests of estimate/card
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/card.h"
#include <string.h>
#include "made.h"

static const char *
find (GPtrArray *lines, const char *id)
{
  for (guint i = 0; i < lines->len; i++)
    if (g_str_equal (((OxCardLine *) g_ptr_array_index (lines, i))->id, id))
      return ((OxCardLine *) g_ptr_array_index (lines, i))->text;
  return NULL;
}

/* 6 m/min walk 10 m in 100 s; 16 A for hours ask for a circuit of 20 A; nothing is left to be filled in but what is
 * read on the floor. */
static void
test_filled (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  plan->job->machine->travel_speed = 6;
  plan->job->machine->amperes = 16;
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) lines = ox_card_lines (estimate);
  g_assert_nonnull (strstr (find (lines, "speed"), "100 s"));
  g_assert_nonnull (strstr (find (lines, "ammeter"), "20 A"));
  for (guint i = 0; i < lines->len; i++)
    {
      const OxCardLine *line = g_ptr_array_index (lines, i);
      g_assert_null (strpbrk (line->text, "{}"));
      g_assert_cmpint (strstr (line->text, "____") != NULL, ==,
                       g_str_equal (line->id, "trial") || g_str_equal (line->id, "balance"));
    }
}

/* Collector, motor, roll, valve; and back: the valve closes before anything stops (common practice, no source). */
static void
test_order (void)
{
  static const char *const ids[] = { "start-collector", "start-motor", "start-roll", "start-valve",
                                     "stop-valve",      "stop-roll",   "stop-motor", "stop-collector" };
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) lines = ox_card_lines (estimate);
  guint at = 0;
  for (guint i = 0; i < lines->len && at < G_N_ELEMENTS (ids); i++)
    at += g_str_equal (((OxCardLine *) g_ptr_array_index (lines, i))->id, ids[at]);
  g_assert_cmpuint (at, ==, G_N_ELEMENTS (ids));
}

static void
test_parts (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) none = ox_card_lines (estimate);
  g_assert_null (find (none, "part"));
  plan->job->machine->wear[0].run_h = plan->job->machine->wear[0].interval_h - 2;
  g_autoptr (GPtrArray) one = ox_card_lines (estimate);
  g_assert_nonnull (strstr (find (one, "part"), "2.0 h"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/card/filled-from-the-job", test_filled);
  g_test_add_func ("/estimate/card/order-of-starting-and-stopping", test_order);
  g_test_add_func ("/estimate/card/parts-by-the-hours-run", test_parts);
  return g_test_run ();
}
