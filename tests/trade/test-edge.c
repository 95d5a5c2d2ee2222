/* Oxturn: tests of trade/edge
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/edge.h"

#define near g_assert_cmpfloat_with_epsilon

/* 76.8 m at 12 m/h take 6.4 h, more than the 3.861 h of the field of 238.72 m2 at 61.83 m2/h that they go round. */
static void
test_by_length (void)
{
  const OxEdgeRates rates = { 4, 12, 0.6 };
  double field = 238.72 / ((0.254 - 0.025) * 6 * 60 * 0.75);
  near (ox_edge_hours (&rates, 7.68, 76.8), 6.4, 1e-12);
  near (field, 3.861, 5e-4);
  g_assert_cmpfloat (ox_edge_hours (&rates, 7.68, 76.8), >, field);
}

/* Without a rate by length, and where there is no length, the area counts. */
static void
test_by_area (void)
{
  const OxEdgeRates area = { 4, 0, 0.6 }, both = { 4, 12, 0.6 };
  near (ox_edge_hours (&area, 7.68, 76.8), 1.92, 1e-12);
  near (ox_edge_hours (&both, 7.68, 0), 1.92, 1e-12);
}

/* 600 mm of mean width is still narrow, a millimetre more is not. */
static void
test_narrow (void)
{
  const OxEdgeRates rates = { 4, 12, 0.6 };
  g_assert_true (ox_edge_is_by_length (&rates, 0.6 * 10, 10));
  g_assert_false (ox_edge_is_by_length (&rates, 0.601 * 10, 10));
  near (ox_edge_hours (&rates, 6.01, 10), 6.01 / 4, 1e-12);
}

/* More work of a kind takes longer. */
static void
test_monotone (void)
{
  const OxEdgeRates rates = { 4, 12, 0.6 };
  for (guint i = 1; i < 50; i++)
    {
      g_assert_cmpfloat (ox_edge_hours (&rates, 0.1 * i, i), >, ox_edge_hours (&rates, 0.1 * (i - 1), i - 1));
      g_assert_cmpfloat (ox_edge_hours (&rates, 2.0 * i, i), >, ox_edge_hours (&rates, 2.0 * (i - 1), i - 1));
    }
}

/* 29 CFR 1926.1153 Table 1 (xii): 25 ft3/min an inch; 7, 5 and 4.5 in are 175, 125 and 112.5; 1 ft3/min is 1.69901 m3/h. */
static void
test_shroud (void)
{
  static const double rows[][2] = { { 7, 175 }, { 5, 125 }, { 4.5, 112.5 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (ox_edge_shroud_flow (rows[i][0] * 0.0254), rows[i][1] * 1.69901, 1e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade/edge/by-length", test_by_length);
  g_test_add_func ("/trade/edge/by-area", test_by_area);
  g_test_add_func ("/trade/edge/narrow", test_narrow);
  g_test_add_func ("/trade/edge/monotone", test_monotone);
  g_test_add_func ("/trade/edge/shroud", test_shroud);
  return g_test_run ();
}
