/* Oxturn: tests/support/ox-test - what tests of several modules share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "support/ox-test.h"
#include "geometry/wkt.h"
#include <glib/gstdio.h>
#include <string.h>

static GPtrArray *
read_polygons (const char *wkt)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *polygons = NULL;
  if (!ox_wkt_parse_polygons (wkt, &polygons, &error))
    g_error ("%s: %s", wkt, error->message);
  return polygons;
}

OxRegion *
ox_test_region (const char *wkt)
{
  g_autoptr (GPtrArray) polygons = read_polygons (wkt);
  g_autoptr (OxRegion) all = ox_region_new_empty ();
  for (guint i = 0; i < polygons->len; i++)
    {
      const OxWktPolygon *polygon = polygons->pdata[i];
      const OxRing *const *rings = (const OxRing *const *) polygon->rings;
      g_autoptr (OxRegion) region = ox_region_new_rings (rings[0], rings + 1, polygon->n_rings - 1);
      OxRegion *sum = ox_region_union (all, region);
      ox_region_unref (all);
      all = sum;
    }
  return g_steal_pointer (&all);
}

OxRing *
ox_test_ring (const char *wkt)
{
  g_autoptr (GPtrArray) polygons = read_polygons (wkt);
  g_assert_cmpuint (polygons->len, >, 0);
  const OxWktPolygon *polygon = polygons->pdata[0];
  return ox_ring_ref (polygon->rings[0]);
}

/* Seen from its middle, each corner at another angle: simple, since no two of them are half a turn apart. */
static guint
make_star (OxPoint *points, double size)
{
  guint n = (guint) g_test_rand_int_range (4, 41);
  for (guint i = 0; i < n; i++)
    {
      double angle = 2 * G_PI * (i + g_test_rand_double_range (0, 0.9)) / n;
      double reach = size / 2 * g_test_rand_double_range (0.3, 1);
      points[i] = (OxPoint){ reach * cos (angle), reach * sin (angle) };
    }
  return n;
}

/* Two chains from left to right, one over the other; straight-angled, as halls are, or slanted. */
static guint
make_chains (OxPoint *points, double size)
{
  gboolean straight = g_test_rand_bit ();
  guint steps = (guint) g_test_rand_int_range (2, 10);
  guint n = 0;
  for (guint chain = 0; chain < 2; chain++)
    for (guint i = 0; i < steps; i++)
      {
        guint column = chain == 0 ? i : steps - 1 - i;
        double y = size * (chain == 0 ? g_test_rand_double_range (-0.5, -0.1) : g_test_rand_double_range (0.1, 0.5));
        double x0 = size * column / steps, x1 = size * (column + 1) / steps;
        points[n++] = (OxPoint){ chain == 0 || !straight ? x0 : x1, y };
        if (straight)
          points[n++] = (OxPoint){ chain == 0 ? x1 : x0, y };
      }
  return n;
}

OxRing *
ox_test_random_ring (void)
{
  for (;;)
    {
      OxPoint points[48];
      double size = g_test_rand_double_range (2, 60);
      guint n = g_test_rand_bit () ? make_star (points, size) : make_chains (points, size);
      double turn = g_test_rand_bit () ? 0 : g_test_rand_double_range (0, 2 * G_PI);
      OxPoint middle = { g_test_rand_double_range (-30, 30), g_test_rand_double_range (-30, 30) };
      gboolean clockwise = g_test_rand_bit ();
      OxPoint placed[48];
      for (guint i = 0; i < n; i++)
        placed[clockwise ? n - 1 - i : i] = ox_point_add (middle, ox_point_turn (points[i], cos (turn), sin (turn)));
      g_autoptr (OxRing) ring = ox_ring_new (placed, n);
      /* Rounding to the grid may make two corners one. */
      if (ox_ring_is_simple (ring, NULL))
        return g_steal_pointer (&ring);
    }
}

gboolean
ox_test_same_bytes (const OxRegion *a, const OxRegion *b)
{
  return a->n_parts == b->n_parts && a->n_rings == b->n_rings && a->n_points == b->n_points
         && memcmp (a->rings, b->rings, a->n_rings * sizeof (OxRegionRing)) == 0
         && memcmp (a->points, b->points, a->n_points * sizeof (OxPoint)) == 0;
}

double
ox_test_difference_area (const OxRegion *a, const OxRegion *b)
{
  g_autoptr (OxRegion) only_a = ox_region_difference (a, b);
  g_autoptr (OxRegion) only_b = ox_region_difference (b, a);
  return ox_region_area (only_a) + ox_region_area (only_b);
}

char *
ox_test_folder_new (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("oxturn-test-XXXXXX", &error);
  g_assert_no_error (error);
  return folder;
}

void
ox_test_folder_free (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir && (name = g_dir_read_name (dir)))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
    }
  g_rmdir (folder);
  g_free (folder);
}
