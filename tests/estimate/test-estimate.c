/* Oxturn: tests of estimate/estimate
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "made.h"

/* Figures come group by group, each with a label of its own; what is assumed is told, and the same plan gives the same.
 */
static void
test_figures (void)
{
  g_autoptr (OxPlan) plan = made_plan (40, 9, "CSP 3");
  g_autoptr (OxEstimate) a = ox_estimate_new (plan, NULL), b = ox_estimate_new (plan, NULL);
  OxFigureGroup group = OX_FIGURE_FLOOR;
  g_assert_cmpuint (a->figures->len, ==, b->figures->len);
  for (guint i = 0; i < a->figures->len; i++)
    {
      const OxFigure *x = g_ptr_array_index (a->figures, i), *y = g_ptr_array_index (b->figures, i);
      g_assert_cmpint (x->group, >=, group);
      group = x->group;
      g_assert_cmpstr (x->label, !=, "");
      g_assert_true (isfinite (x->value));
      g_assert_cmpstr (x->id, ==, y->id);
      g_assert_cmpfloat (x->value, ==, y->value);
      g_assert_cmpstr (x->assumption, !=, ""); /* what it rests on */
    }
  for (guint g = 0; g < OX_N_FIGURE_GROUPS; g++)
    g_assert_cmpstr (ox_estimate_group_name (g), !=, "");
}

static void
test_empty (void)
{
  g_autoptr (OxPlan) plan = made_plan (0, 1, "");
  g_autoptr (OxEstimate) estimate = ox_estimate_new (plan, NULL);
  ox_test_near (ox_estimate_find (estimate, "abrasive-used")->value, 0, 1e-9);
  g_assert_null (ox_estimate_find (estimate, "no-such"));
}

static void
test_texts (void)
{
  const OxFigure area = { .unit = "m2", .value = 92.90304 }, mass = { .unit = "kg", .value = 206.13, .decimals = 1 },
                 count = { .unit = "", .value = 3 }, cord = { .unit = "m", .value = 35.4972, .decimals = 1 };
  g_autofree char *a = ox_figure_value_text (&area, OX_UNITS_METRES), *f = ox_figure_value_text (&area, OX_UNITS_FEET);
  g_autofree char *m = ox_figure_value_text (&mass, OX_UNITS_METRES),
                  *c = ox_figure_value_text (&count, OX_UNITS_METRES);
  g_assert_cmpstr (a, ==, "92.9 m²");
  g_assert_true (g_str_has_prefix (f, "1000") || g_str_has_prefix (f, "1,000"));
  g_assert_cmpstr (m, ==, "206.1 kg");
  g_assert_cmpstr (c, ==, "3");
  /* No closer than it is known. */
  g_autofree char *length = ox_figure_value_text (&cord, OX_UNITS_METRES);
  g_assert_cmpstr (length, ==, "35.50 m");
  g_assert_cmpstr (ox_verdict_name (OX_VERDICT_WARN), ==, "warning");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/estimate/estimate/figures/group-by-group", test_figures);
  g_test_add_func ("/estimate/estimate/figures/no-strips", test_empty);
  g_test_add_func ("/estimate/estimate/figures/as-text", test_texts);
  return g_test_run ();
}
