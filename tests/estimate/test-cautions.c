/* Oxturn: tests of estimate/cautions
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/cautions.h"
#include "made.h"

static const OxCaution *
find (const char *id)
{
  guint n;
  const OxCaution *rows = ox_cautions_list (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (rows[i].id, id))
      return &rows[i];
  g_assert_not_reached ();
}

static void
test_rows (void)
{
  static const char *const places[] = { "always", "edges", "drops", "supply", "drums", "coated", NULL };
  static const char *const rules[] = { "law", "standard", "maker", "practice", "note", NULL };
  guint n;
  const OxCaution *rows = ox_cautions_list (&n);
  g_assert_cmpuint (n, >=, 10);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (g_strv_contains (places, rows[i].where));
      g_assert_true (g_strv_contains (rules, rows[i].rule));
      g_assert_cmpstr (rows[i].source, !=, "");
      g_assert_true (g_str_has_suffix (rows[i].text, "."));
    }
}

/* A hall with walls all round has no drop, one strip's dust is light, and edge work is there. */
static void
test_where (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 1, "CSP 3");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_assert_true (ox_caution_applies (find ("certificate"), estimate));
  g_assert_true (ox_caution_applies (find ("hand-dust"), estimate));
  g_assert_true (ox_caution_applies (find ("load"), estimate));
  g_assert_false (ox_caution_applies (find ("drop"), estimate));
  g_assert_cmpuint (ox_caution_number ("drop", estimate), ==, 0);
  guint before = ox_caution_number ("residual", estimate);
  g_assert_false (ox_caution_applies (find ("drum"), estimate));
  plan->job->rooms[0]->sides[1].kind = OX_SIDE_DROP;
  g_assert_true (ox_caution_applies (find ("drop"), estimate));
  g_assert_cmpuint (ox_caution_number ("drop", estimate), ==, before); /* it stands before that one, which moves on by one */
  g_assert_cmpuint (ox_caution_number ("residual", estimate), ==, before + 1);
}

/* 1,000 m2 with 0.2 mm taken off weigh 470 kg: a drum of it is nothing to carry. */
static void
test_heavy (void)
{
  g_autoptr (OxPlan) plan = made_plan (3, 100, "CSP 3");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  g_assert_true (ox_caution_applies (find ("drum"), estimate));
}

/* Every caution named beside a group is one of the table; dust and noise stand where they are reckoned. */
static void
test_groups (void)
{
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    for (const char *const *id = ox_cautions_of_group (g); *id != NULL; id++)
      g_assert_true (ox_caution_find (*id) == find (*id));
  g_assert_true (g_strv_contains (ox_cautions_of_group (OX_FIGURE_DUST), "silica"));
  g_assert_true (g_strv_contains (ox_cautions_of_group (OX_FIGURE_EXPOSURE), "silica"));
  g_assert_true (g_strv_contains (ox_cautions_of_group (OX_FIGURE_EXPOSURE), "noise"));
  g_assert_null (ox_caution_find ("nothing"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/cautions/list/each-says-its-rule", test_rows);
  g_test_add_func ("/estimate/cautions/applies/where-it-bites", test_where);
  g_test_add_func ("/estimate/cautions/applies/heavy-drums", test_heavy);
  g_test_add_func ("/estimate/cautions/groups", test_groups);
  return g_test_run ();
}
