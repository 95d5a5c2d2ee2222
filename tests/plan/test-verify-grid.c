/* Oxturn: plan/verify-grid: a query finds exactly the boxes that touch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-grid.h"

static OxBox
random_box (double spread, double size)
{
  double x = g_test_rand_double_range (-spread, spread), y = g_test_rand_double_range (-spread, spread);
  return (OxBox){ x, y, x + g_test_rand_double_range (0, size), y + g_test_rand_double_range (0, size) };
}

static gboolean
touch (OxBox a, OxBox b)
{
  return MAX (a.x0, b.x0) <= MIN (a.x1, b.x1) && MAX (a.y0, b.y0) <= MIN (a.y1, b.y1);
}

/* Each query is compared with a look at every box. */
static void
query_random (void)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (guint));
  OxBox boxes[300];
  for (guint round = 0; round < 20; round++)
    {
      guint n = (guint) g_test_rand_int_range (1, G_N_ELEMENTS (boxes));
      for (guint i = 0; i < n; i++)
        boxes[i] = random_box (50, round % 2 == 0 ? 3 : 60);
      g_autoptr (OxBoxGrid) grid = ox_box_grid_new (boxes, n);
      for (guint q = 0; q < 50; q++)
        {
          OxBox box = random_box (70, 20);
          ox_box_grid_query (grid, box, found);
          guint next = 0;
          for (guint i = 0; i < n; i++)
            if (touch (boxes[i], box))
              {
                g_assert_cmpuint (next, <, found->len);
                g_assert_cmpuint (g_array_index (found, guint, next++), ==, i);
              }
          g_assert_cmpuint (next, ==, found->len);
        }
    }
}

static void
query_edges (void)
{
  const OxBox boxes[] = { { 0, 0, 1, 1 }, { 1, 1, 2, 2 }, { 5, 5, 5, 5 } };
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (OxBoxGrid) grid = ox_box_grid_new (boxes, 3);
  ox_box_grid_query (grid, (OxBox){ 1, 1, 1, 1 }, found);
  g_assert_cmpuint (found->len, ==, 2);
  ox_box_grid_query (grid, (OxBox){ 4, 4, 6, 6 }, found);
  g_assert_cmpuint (found->len, ==, 1);
  g_assert_cmpuint (g_array_index (found, guint, 0), ==, 2);
  ox_box_grid_query (grid, (OxBox){ 2.5, 0, 4, 4 }, found);
  g_assert_cmpuint (found->len, ==, 0);
}

static void
query_empty (void)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (OxBoxGrid) grid = ox_box_grid_new (NULL, 0);
  ox_box_grid_query (grid, (OxBox){ -1, -1, 1, 1 }, found);
  g_assert_cmpuint (found->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/verify-grid/query/random", query_random);
  g_test_add_func ("/plan/verify-grid/query/edges", query_edges);
  g_test_add_func ("/plan/verify-grid/query/empty", query_empty);
  return g_test_run ();
}
