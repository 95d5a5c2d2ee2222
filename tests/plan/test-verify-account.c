/* Oxturn: plan/verify-account: floor that is counted twice or not at all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * judge.h has the measures of the machine and the floors.
 */
#include "judge.h"
#include "support/floors.h"

static void
account_edge_missing (void)
{
  g_autoptr (Draft) draft = judge_corridor ();
  draft_finish (draft);
  draft->plan.n_edges = 0;
  judge_expect_among (&draft->plan, OX_RULE_ACCOUNT);
}

static void
account_edge_blasted (void)
{
  g_autoptr (Draft) draft = judge_corridor ();
  draft_finish (draft);
  ox_region_unref (draft->edge.region);
  draft->edge.region = ox_region_ref (draft->plan.target);
  draft->edge.area = draft->plan.totals.edge_m2 = 8;
  draft->plan.totals.edge_hours = 2;
  draft->plan.totals.labour_hours = draft->plan.totals.strip_hours + draft->plan.totals.move_hours + 2;
  judge_expect_among (&draft->plan, OX_RULE_ACCOUNT);
}

static void
account_totals (void)
{
  for (guint i = 0; i < 7; i++)
    {
      g_autoptr (Draft) draft = judge_corridor ();
      draft_finish (draft);
      OxTotals *t = &draft->plan.totals;
      double *const all[] = { &t->target_m2,   &t->blasted_m2, &t->strip_m,     &t->move_m,
                              &t->strip_hours, &t->move_hours, &t->labour_hours };
      *all[i] *= 1.001;
      judge_expect_among (&draft->plan, OX_RULE_ACCOUNT);
    }
}

/* The same edge work at a rate by length; hours of it by area are wrong then, and it is too wide for a rate by length where it is 8 m2 along 8 m. */
static void
account_edge_by_length (void)
{
  g_autoptr (Draft) draft = judge_corridor ();
  draft_finish (draft);
  OxPlan *plan = &draft->plan;
  ((OxJob *) plan->job)->rates.edge_m_per_hour = 10;
  plan->edges[0].length = 2 * plan->edges[0].area;
  judge_expect_among (plan, OX_RULE_ACCOUNT);
  double hours = plan->edges[0].length / 10;
  plan->totals.labour_hours += hours - plan->totals.edge_hours;
  plan->totals.edge_hours = hours;
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  g_assert_cmpuint (breaches->len, ==, 0);
  plan->edges[0].length = plan->edges[0].area;
  judge_expect_among (plan, OX_RULE_ACCOUNT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-account/account/edge-missing", account_edge_missing);
  g_test_add_func ("/plan/verify-account/account/edge-blasted", account_edge_blasted);
  g_test_add_func ("/plan/verify-account/account/edge-by-length", account_edge_by_length);
  g_test_add_func ("/plan/verify-account/account/totals", account_totals);
  return g_test_run ();
}
