/* Oxturn: tests of geometry/outline
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/outline-private.h"
#include "support/ox-test.h"

/* Ten kilometres out, a plain shoelace sum would lose the last four digits of a column's area. */
static void
test_area_far_away (void)
{
  OxPoint p[4] = { { 9999, 9999 }, { 9999.4, 9999 }, { 9999.4, 9999.4 }, { 9999, 9999.4 } };
  ox_test_near (ox_outline_area (p, 4), 0.16, 1e-11);
  ox_test_near (ox_outline_perimeter (p, 4), 1.6, 1e-11);
}

static void
test_area_of_little (void)
{
  OxPoint p[2] = { { 1, 2 }, { 4, 6 } };
  g_assert_cmpfloat (ox_outline_area (p, 0), ==, 0);
  g_assert_cmpfloat (ox_outline_area (p, 2), ==, 0);
  ox_test_near (ox_outline_perimeter (p, 2), 10, 1e-12);
}

/* Two outlines one in the other, counted together, are a floor with a hole. */
static void
test_count_together (void)
{
  OxPoint outer[4] = { { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 } };
  OxPoint inner[4] = { { 3, 3 }, { 6, 3 }, { 6, 6 }, { 3, 6 } };
  static const struct
  {
    OxPoint p;
    gboolean inside;
  } cases[]
      = { { { 1, 1 }, TRUE }, { { 4, 4 }, FALSE }, { { 1, 4 }, TRUE }, { { 10, 4 }, FALSE }, { { -1, 3 }, FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean inside = FALSE;
      g_assert_false (ox_outline_count (outer, 4, cases[i].p, &inside));
      g_assert_false (ox_outline_count (inner, 4, cases[i].p, &inside));
      g_assert_true (inside == cases[i].inside);
    }
}

static void
test_count_on_outline (void)
{
  OxPoint p[3] = { { 0, 0 }, { 0.3, 0.1 }, { 0, 0.7 } };
  gboolean inside = FALSE;
  g_assert_true (ox_outline_count (p, 3, (OxPoint){ 0, 0 }, &inside));
  g_assert_true (ox_outline_count (p, 3, (OxPoint){ 0.3, 0.1 }, &inside));
  g_assert_true (ox_outline_count (p, 3, (OxPoint){ 0.15, 0.05 }, &inside));
  g_assert_true (ox_outline_count (p, 3, (OxPoint){ 0, 0.33 }, &inside));
  inside = FALSE;
  g_assert_false (ox_outline_count (p, 3, (OxPoint){ -1e-7, 0.33 }, &inside));
  g_assert_false (inside);
}

/* A ray that runs through corners, touches one and runs along a side. */
static void
test_count_through_corners (void)
{
  OxPoint p[8] = { { 0, 0 }, { 2, 2 }, { 4, 0 }, { 6, 2 }, { 8, 2 }, { 8, 4 }, { 4, 2 }, { 0, 4 } };
  static const struct
  {
    OxPoint p;
    gboolean inside;
  } cases[] = { { { -1, 2 }, FALSE }, { { 1, 2 }, TRUE },   { { 5, 2 }, TRUE }, { { -1, 0 }, FALSE },
                { { 2, 0 }, FALSE },  { { -1, 4 }, FALSE }, { { 3, 4 }, FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean inside = FALSE;
      g_test_message ("(%g, %g)", cases[i].p.x, cases[i].p.y);
      g_assert_false (ox_outline_count (p, 8, cases[i].p, &inside));
      g_assert_true (inside == cases[i].inside);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/outline/area/far-away", test_area_far_away);
  g_test_add_func ("/geometry/outline/area/of-little", test_area_of_little);
  g_test_add_func ("/geometry/outline/count/together", test_count_together);
  g_test_add_func ("/geometry/outline/count/on-outline", test_count_on_outline);
  g_test_add_func ("/geometry/outline/count/through-corners", test_count_through_corners);
  return g_test_run ();
}
