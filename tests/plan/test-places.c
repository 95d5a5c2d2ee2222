/* Oxturn: plan/places: against a look at every point.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/places.h"
#include "support/ox-test.h"
#include <stdlib.h>

#define POINTS 700

/* Clusters, as round obstacles make them, and strays; in every fifth round all on one line. */
static void
scatter (OxPoint *points, guint round)
{
  for (guint i = 0; i < POINTS; i++)
    {
      OxPoint middle = { i / 20 * 7 % 50, i / 20 * 11 % 30 };
      double spread = i % 10 == 0 ? 60 : 0.5;
      points[i] = (OxPoint){ middle.x + g_test_rand_double_range (0, spread), middle.y + g_test_rand_double_range (0, spread) };
      if (round % 5 == 0)
        points[i].y = 3;
    }
}

static OxPoint
random_place (void)
{
  return (OxPoint){ g_test_rand_double_range (-20, 130), g_test_rand_double_range (-20, 110) };
}

static void
within (void)
{
  OxPoint points[POINTS];
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint round = 0; round < 20; round++)
    {
      scatter (points, round);
      g_autoptr (OxPlaces) places = ox_places_new (points, POINTS);
      for (guint k = 0; k < 50; k++)
        {
          OxPoint p = random_place ();
          double radius = g_test_rand_double_range (0, 40);
          guint8 found[POINTS] = { 0 };
          ox_places_within (places, p, radius, out);
          for (guint i = 0; i < out->len; i++)
            g_assert_cmpuint (found[g_array_index (out, guint, i)]++, ==, 0);
          for (guint i = 0; i < POINTS; i++)
            g_assert_cmpint (found[i], ==, ox_point_distance (p, points[i]) <= radius);
        }
    }
}

static int
compare (const void *a, const void *b)
{
  const OxPlace *p = a, *q = b;
  if (p->distance != q->distance)
    return p->distance < q->distance ? -1 : 1;
  return (p->index > q->index) - (p->index < q->index);
}

/* All points in order of distance, of which the first @each in each sixteenth of the circle count. */
static void
expect_around (const OxPlaces *places, const OxPoint *points, OxPoint p, guint each)
{
  OxPlace all[POINTS];
  guint counts[16] = { 0 }, kept = 0;
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (OxPlace));
  for (guint i = 0; i < POINTS; i++)
    all[i] = (OxPlace){ ox_point_distance (p, points[i]), i };
  qsort (all, POINTS, sizeof (OxPlace), compare);
  ox_places_around (places, p, each, out);
  for (guint i = 0; i < POINTS; i++)
    {
      double turn = (atan2 (points[all[i].index].y - p.y, points[all[i].index].x - p.x) + G_PI) / (2 * G_PI);
      if (counts[(guint) (turn * 16) % 16]++ >= each)
        continue;
      g_assert_cmpuint (kept, <, out->len);
      g_assert_cmpuint (g_array_index (out, OxPlace, kept).index, ==, all[i].index);
      kept++;
    }
  g_assert_cmpuint (kept, ==, out->len);
}

static void
around (void)
{
  OxPoint points[POINTS];
  for (guint round = 0; round < 20; round++)
    {
      scatter (points, round);
      g_autoptr (OxPlaces) places = ox_places_new (points, POINTS);
      for (guint k = 0; k < 50; k++)
        expect_around (places, points, k % 3 == 0 ? points[k] : random_place (), 1 + k % 9);
    }
}

static void
none (void)
{
  g_autoptr (OxPlaces) places = ox_places_new (NULL, 0);
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) around_it = g_array_new (FALSE, FALSE, sizeof (OxPlace));
  ox_places_within (places, (OxPoint){ 0, 0 }, 5, out);
  g_assert_cmpuint (out->len, ==, 0);
  ox_places_around (places, (OxPoint){ 0, 0 }, 8, around_it);
  g_assert_cmpuint (around_it->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/places/within", within);
  g_test_add_func ("/plan/places/around", around);
  g_test_add_func ("/plan/places/none", none);
  return g_test_run ();
}
