/* Oxturn: geometry/region-union: many polygons at once make what they make one after another.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/share.h"
#include "base/stop.h"
#include "geometry/region.h"
#include "support/ox-test.h"

/* A strip from (x, y), @length along @angle, @width across. */
static void
add_strip (GArray *corners, OxPoint p, double angle, double length, double width)
{
  OxPoint u = { cos (angle), sin (angle) };
  for (guint k = 0; k < 4; k++)
    {
      double along = k == 1 || k == 2 ? length : 0, across = k >= 2 ? width : 0;
      OxPoint corner = { p.x + u.x * along - u.y * across, p.y + u.y * along + u.x * across };
      g_array_append_val (corners, corner);
    }
}

static OxRegion *
unite (const GArray *corners)
{
  return ox_region_union_quads ((const OxPoint *) (const void *) corners->data, corners->len / 4);
}

/* 40 lanes of 8 m, 0.21 m wide and 0.19 m apart, with three lanes across both ends: a rectangle of (39 x 0.19 + 0.21) x 8 m, whatever its direction. */
static void
lanes (void)
{
  for (guint turn = 0; turn < 12; turn++)
    {
      double angle = turn * G_PI / 7;
      g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
      OxPoint u = { cos (angle), sin (angle) }, v = { -u.y, u.x };
      for (guint i = 0; i < 40; i++)
        add_strip (corners, (OxPoint){ 100 + v.x * 0.19 * i, 50 + v.y * 0.19 * i }, angle, 8, 0.21);
      for (guint i = 0; i < 6; i++)
        {
          double along = 0.21 + (i < 3 ? 0.19 * i : 7.98 - 0.21 - 0.19 * (i - 3));
          add_strip (corners, (OxPoint){ 100 + u.x * along, 50 + u.y * along }, angle + G_PI / 2, 39 * 0.19 + 0.21, 0.21);
        }
      g_autoptr (OxRegion) region = unite (corners);
      g_assert_cmpfloat_with_epsilon (ox_region_area (region), (39 * 0.19 + 0.21) * 8, 1e-6);
      g_assert_cmpuint (region->n_parts, ==, 1);
      g_assert_cmpuint (region->n_rings, ==, 1);
    }
}

/* So many lanes that they are united in groups, with cuts in every 50th of them that the neighbours leave open 0.17 m wide: a rectangle of
 * (1399 x 0.19 + 0.21) x 30 m less 28 slots of 2 m. On any number of threads the same to the last bit. */
static void
groups (void)
{
  for (guint turn = 0; turn < 3; turn++)
    {
      double angle = turn * G_PI / 7;
      g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
      OxPoint u = { cos (angle), sin (angle) }, v = { -u.y, u.x };
      for (guint i = 0; i < 1400; i++)
        {
          OxPoint p = { v.x * 0.19 * i, v.y * 0.19 * i };
          gboolean cut = i % 50 == 25;
          add_strip (corners, p, angle, cut ? 14 : 30, 0.21);
          if (cut)
            add_strip (corners, ox_point_add (p, ox_point_scale (u, 16)), angle, 14, 0.21);
        }
      ox_share_set_threads (1);
      g_autoptr (OxRegion) alone = unite (corners);
      ox_share_set_threads (4);
      g_autoptr (OxRegion) shared = unite (corners);
      ox_share_set_threads (0);
      g_assert_cmpfloat_with_epsilon (ox_region_area (alone), (1399 * 0.19 + 0.21) * 30 - 28 * 2 * 0.17, 1e-5);
      g_assert_cmpuint (alone->n_parts, ==, 1);
      g_assert_cmpuint (alone->n_rings, ==, 29);
      g_assert_true (ox_test_same_bytes (alone, shared));
    }
}

/* What stands alone stays alone; nothing is lost and nothing is counted twice. */
static void
alone (void)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  for (guint i = 0; i < 20; i++)
    add_strip (corners, (OxPoint){ 3.0 * i, 0 }, 0, 1, 1);
  add_strip (corners, (OxPoint){ 3, 0.5 }, 0, 1, 1);
  g_autoptr (OxRegion) region = unite (corners);
  g_assert_cmpuint (region->n_parts, ==, 20);
  g_assert_cmpfloat_with_epsilon (ox_region_area (region), 20.5, 1e-9);
}

/* Strips in all directions, one by one and at once. */
static void
one_by_one (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  for (guint round = 0; round < 20; round++)
    {
      g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
      g_autoptr (OxRegion) slow = ox_region_new_empty ();
      for (guint i = 0; i < 40; i++)
        {
          OxPoint p = { g_rand_double_range (rand, 0, 10), g_rand_double_range (rand, 0, 10) };
          add_strip (corners, p, g_rand_double_range (rand, 0, 2 * G_PI), g_rand_double_range (rand, 0.5, 6), 0.3);
          g_autoptr (OxRegion) strip = ox_region_union_quads (&g_array_index (corners, OxPoint, 4 * i), 1);
          OxRegion *more = ox_region_union (slow, strip);
          ox_region_unref (slow);
          slow = more;
        }
      g_autoptr (OxRegion) fast = unite (corners);
      g_assert_cmpfloat_with_epsilon (ox_region_area (fast), ox_region_area (slow), 1e-6);
      g_autoptr (OxRegion) off = ox_region_difference (slow, fast);
      g_assert_cmpfloat (ox_region_area (off), <, 1e-6);
    }
}

/* Once the work is to stop nothing more is united, cut or offset, and nothing is lost on the way. */
static void
stopped (void)
{
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (OxRegion) a = ox_test_region ("POLYGON ((0 0, 4 0, 4 4, 0 4, 0 0))"), b = ox_test_region ("POLYGON ((2 2, 6 2, 6 6, 2 6, 2 2))");
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  OxRun run = OX_RUN_INIT;
  run.cancel = cancel;
  for (guint i = 0; i < 400; i++)
    add_strip (corners, (OxPoint){ 0, 0.19 * i }, 0, 8, 0.21);
  g_auto (OxStopScope) scope = ox_stop_scope (&run);
  g_autoptr (OxRegion) before = ox_region_union (a, b);
  g_assert_cmpfloat_with_epsilon (ox_region_area (before), 28, 1e-9);
  g_cancellable_cancel (cancel);
  g_autoptr (OxRegion) sum = ox_region_union (a, b), both = ox_region_intersection (a, b), off = ox_region_difference (a, b);
  g_autoptr (OxRegion) grown = ox_region_offset (a, 1, FALSE), part = unite (corners);
  g_assert_true (ox_region_is_empty (sum) && ox_region_is_empty (both) && ox_region_is_empty (off) && ox_region_is_empty (grown));
  g_assert_cmpfloat (ox_region_area (part), <=, 8 * (399 * 0.19 + 0.21));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/region-union/lanes", lanes);
  g_test_add_func ("/geometry/region-union/groups", groups);
  g_test_add_func ("/geometry/region-union/alone", alone);
  g_test_add_func ("/geometry/region-union/one-by-one", one_by_one);
  g_test_add_func ("/geometry/region-union/stopped", stopped);
  return g_test_run ();
}
