/* Oxturn: plan/verify-account - every square metre is blasted or edge work, and the totals say so.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-private.h"
#include "trade/defaults.h"

#define RELATIVE 1e-6 /* of totals that are sums of stored figures */

typedef struct
{
  OxVerify *verify;
  double allowed; /* m2 */
  OxPoint at;
} Account;

static double
area_less (const OxRegion *a, const OxRegion *b)
{
  g_autoptr (OxRegion) rest = ox_region_difference (a, b);
  return ox_region_area (rest);
}

static double
area_shared (const OxRegion *a, const OxRegion *b)
{
  g_autoptr (OxRegion) both = ox_region_intersection (a, b);
  return ox_region_area (both);
}

static void
expect_none (const Account *account, double area, const char *what)
{
  if (area > account->allowed)
    ox_verify_blame (account->verify, OX_RULE_ACCOUNT, 0, account->at, "%.6f m2 %s", area, what);
}

static void
expect_equal (const Account *account, double stored, double computed, const char *what)
{
  if (fabs (stored - computed) > account->allowed)
    ox_verify_blame (account->verify, OX_RULE_ACCOUNT, 0, account->at, "%s is %.6f, stored as %.6f", what, computed,
                     stored);
}

static void
expect_sum (OxVerify *verify, double stored, double computed, const char *what)
{
  if (fabs (stored - computed) > RELATIVE * MAX (1, fabs (computed)))
    ox_verify_blame (verify, OX_RULE_ACCOUNT, 0, (OxPoint){ 0, 0 }, "%s are %.9f, stored as %.9f", what, computed,
                     stored);
}

static OxRegion *
edge_floor (const Account *account)
{
  const OxPlan *plan = account->verify->plan;
  g_autoptr (GPtrArray) regions = g_ptr_array_new ();
  double sum = 0;
  for (guint i = 0; i < plan->n_edges; i++)
    {
      expect_equal (account, plan->edges[i].area, ox_region_area (plan->edges[i].region), plan->edges[i].id);
      g_ptr_array_add (regions, plan->edges[i].region);
      sum += plan->edges[i].area;
    }
  OxRegion *all = ox_region_union_many ((const OxRegion *const *) regions->pdata, regions->len);
  expect_equal (account, sum, ox_region_area (all), "edge work");
  return all;
}

/* Target that all its coats cover. */
static OxRegion *
blasted_floor (const OxVerify *verify)
{
  OxRegion *blasted = ox_region_intersection (verify->covered[0], verify->floor->target);
  for (guint k = 1; k < verify->n_coats; k++)
    {
      g_autoptr (OxRegion) missed = ox_region_difference (verify->asking[k], verify->covered[k]);
      OxRegion *left = ox_region_difference (blasted, missed);
      ox_region_unref (blasted);
      blasted = left;
    }
  return blasted;
}

/* m2 of target that strips cover, counted once a coat. */
static double
coats_area (const OxVerify *verify)
{
  double sum = 0;
  for (guint k = 0; k < verify->n_coats; k++)
    sum += area_shared (verify->covered[k], verify->floor->target);
  return sum;
}

static void
judge_areas (OxVerify *verify)
{
  const OxPlan *plan = verify->plan;
  const OxRegion *target = verify->floor->target;
  double whole = ox_region_area (target);
  OxBox box = ox_region_box (target);
  Account account = { verify, OX_VERIFY_ACCOUNT_TOLERANCE * MAX (whole, OX_GRID), { box.x0, box.y0 } };
  g_autoptr (OxRegion) blasted = blasted_floor (verify);
  g_autoptr (OxRegion) edge = edge_floor (&account);
  g_autoptr (OxRegion) both = ox_region_union (blasted, edge);

  expect_none (&account, area_shared (blasted, edge), "are both blasted and edge work");
  expect_none (&account, area_less (target, both), "of the target are neither blasted nor edge work");
  expect_none (&account, area_less (edge, target), "of edge work lie outside the target");
  expect_none (&account, area_less (plan->target, target) + area_less (target, plan->target), "of the target differ");
  expect_none (&account, area_less (plan->blasted, blasted) + area_less (blasted, plan->blasted),
               "of the blasted floor differ");
  expect_equal (&account, plan->totals.target_m2, whole, "the target");
  expect_equal (&account, plan->totals.blasted_m2, ox_region_area (blasted), "the blasted floor");
  expect_equal (&account, plan->totals.coats_m2, coats_area (verify), "the floor covered by coats");
  expect_equal (&account, plan->totals.edge_m2, ox_region_area (edge), "the edge work");
  for (guint i = 0; i < plan->n_zones; i++)
    {
      expect_equal (&account, plan->zones[i].area, ox_region_area (plan->zones[i].region), plan->zones[i].id);
      expect_none (&account, area_less (plan->zones[i].region, target), "of a turnaround zone lie outside the target");
    }
}

/* By hand: narrow areas by their length where the job has a rate for that, all other by area. */
static double
edge_hours (const OxPlan *plan)
{
  const OxRates *rates = &plan->job->rates;
  double narrow = ox_defaults_get ("edge-narrow")->value, area = 0, length = 0;
  for (guint i = 0; i < plan->n_edges; i++)
    if (rates->edge_m_per_hour > 0 && plan->edges[i].length > 0 && plan->edges[i].area / plan->edges[i].length <= narrow + RELATIVE)
      length += plan->edges[i].length;
    else
      area += plan->edges[i].area;
  return area / rates->edge_m2_per_hour + (length > 0 ? length / rates->edge_m_per_hour : 0);
}

static void
judge_sums (OxVerify *verify)
{
  const OxPlan *plan = verify->plan;
  const OxTotals *t = &plan->totals;
  double strip_m = 0, strip_minutes = 0, move_m = 0, move_minutes = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    {
      strip_m += verify->strips[i].length;
      strip_minutes += plan->strips[i].minutes;
    }
  for (guint i = 0; i < plan->n_moves; i++)
    {
      move_m += plan->moves[i].length;
      move_minutes += plan->moves[i].minutes;
    }
  expect_sum (verify, t->strips, plan->n_strips, "strips");
  expect_sum (verify, t->strip_m, strip_m, "metres of strips");
  expect_sum (verify, t->move_m, move_m, "metres of moves");
  expect_sum (verify, t->strip_hours, strip_minutes / 60, "hours of strips");
  expect_sum (verify, t->move_hours, move_minutes / 60, "hours of moves");
  expect_sum (verify, t->edge_hours, edge_hours (plan), "hours of edge work");
  expect_sum (verify, t->labour_hours, t->strip_hours + t->move_hours + t->edge_hours, "hours of labour");
}

void
ox_verify_account (OxVerify *verify)
{
  judge_areas (verify);
  judge_sums (verify);
}
