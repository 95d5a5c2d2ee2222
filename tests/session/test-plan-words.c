/* Oxturn: tests/session/test-plan-words - what a strip or an edge area says of itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/plan-words.h"

#include "support/floors.h"
#include "support/ox-test.h"

#include <string.h>

static OxPlan *
plan_new (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 8, 0.5, 4, "compact");

  return ox_plan_new (job, NULL, NULL);
}

/* Every id has words that carry its number, and a place on the floor; the other ids have none. */
static void
test_every_id_has_words_and_a_place (void)
{
  g_autoptr (OxPlan) plan = plan_new ();
  g_auto (GStrv) ids = ox_plan_ids (plan);
  OxPoint at;

  g_assert_cmpuint (g_strv_length (ids), ==, plan->n_strips + plan->n_edges + plan->n_zones);
  for (guint i = 0; ids[i] != NULL; i++)
    {
      g_autofree char *words = ox_plan_words (plan, ids[i]);
      const char *number = g_str_has_prefix (ids[i], "strip-") ? ids[i] + strlen ("strip-") : ids[i];

      g_assert_nonnull (words);
      g_assert_nonnull (strstr (words, number));
      g_assert_true (ox_plan_place (plan, ids[i], &at));
      g_assert_true (at.x >= 0 && at.x <= 12 && at.y >= 0 && at.y <= 8);
    }
}

static void
test_unknown_ids (void)
{
  static const char *const ids[] = { "", "strip-", "strip-0", "strip-99999", "strip-1x", "R1", "move-1", "E99999" };
  g_autoptr (OxPlan) plan = plan_new ();
  OxPoint at;

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_assert_null (ox_plan_words (plan, ids[i]));
      g_assert_false (ox_plan_place (plan, ids[i], &at));
    }
}

/* Length over speed: 60 minutes at the hand rate do as many square metres as the rate says. */
static void
test_minutes_of_an_edge_area (void)
{
  g_autoptr (OxPlan) plan = plan_new ();
  const OxEdge *edge = &plan->edges[0];
  g_autofree char *words = ox_plan_words (plan, edge->id);
  g_autofree char *minutes = g_strdup_printf ("%.1f min", edge->area * 60 / plan->job->rates.edge_m2_per_hour);

  g_assert_nonnull (strstr (words, minutes));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/plan-words/every-id-has-words-and-a-place", test_every_id_has_words_and_a_place);
  g_test_add_func ("/session/plan-words/unknown-ids", test_unknown_ids);
  g_test_add_func ("/session/plan-words/minutes-of-an-edge-area", test_minutes_of_an_edge_area);
  return g_test_run ();
}
