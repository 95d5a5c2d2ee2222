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

/* 6 m/min walk 10 m in 100 s; of 18 A on the plate 16 A may be drawn for hours on a circuit of 20 A (NFPA 70, continuous
 * load); nothing is left to be filled in. */
static void
test_filled (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "");
  plan->job->machine->travel_speed = 6;
  plan->job->machine->amperes = 18;
  plan->job->machine->hopper_kg = 45; /* 10.03 l at 4,485 kg/m3 */
  g_autoptr (OxOutfit) outfit = ox_outfit_new (&(OxOutfit){ (char *) "S330", 20, 0, { { 0, 0 } } });
  plan_set_outfit (plan, outfit);
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_autoptr (GPtrArray) lines = ox_card_lines (estimate);
  g_assert_nonnull (strstr (find (lines, "speed"), "100 s"));
  g_assert_nonnull (strstr (find (lines, "speed"), "10 m"));
  g_assert_nonnull (strstr (find (lines, "ammeter"), "18 A"));
  g_assert_nonnull (strstr (find (lines, "ammeter"), "16 A"));
  g_assert_nonnull (strstr (find (lines, "machine"), "S330"));
  g_assert_nonnull (strstr (find (lines, "cage"), "8:30"));
  g_assert_nonnull (strstr (find (lines, "charge"), "45 kg, about 10 L"));
  for (guint i = 0; i < lines->len; i++)
    {
      const OxCardLine *line = g_ptr_array_index (lines, i);
      g_assert_null (strpbrk (line->text, "{}"));
      g_assert_null (strstr (line->text, "____"));
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
  for (guint i = 0; i < plan->job->machine->n_wear; i++)
    g_assert_false (ox_card_brings_part (estimate, i));
  plan->job->machine->wear[0].run_h = plan->job->machine->wear[0].interval_h - 2;
  g_assert_true (ox_card_brings_part (estimate, 0));
  g_assert_false (ox_card_brings_part (estimate, 1));
  /* due 9 h on: not within the job and a shift of 8 h, but of 10 h */
  plan->job->machine->wear[0].run_h = plan->job->machine->wear[0].interval_h - 9;
  g_assert_false (ox_card_brings_part (estimate, 0));
  OxWorkRules rules = estimate->rules;
  rules.shift_min = 600;
  g_autoptr (OxEstimate) longer = ox_estimate_new (plan, &rules);
  g_assert_true (ox_card_brings_part (longer, 0));
}

static void
test_clock (void)
{
  static const struct
  {
    double clock;
    const char *text;
  } places[] = { { 8.5, "8:30" }, { 10.25, "10:15" }, { 12, "12:00" }, { 1 + 5 / 60.0, "1:05" } };
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autofree char *text = ox_card_clock_text (places[i].clock);
      g_assert_cmpstr (text, ==, places[i].text);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/card/filled-from-the-job", test_filled);
  g_test_add_func ("/estimate/card/order-of-starting-and-stopping", test_order);
  g_test_add_func ("/estimate/card/parts-by-the-hours-run", test_parts);
  g_test_add_func ("/estimate/card/clock", test_clock);
  return g_test_run ();
}
