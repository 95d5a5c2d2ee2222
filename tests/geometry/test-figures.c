/* Oxturn: tests of geometry by figures whose areas are known, made for the purpose or published
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Grown by a disc (Steiner): A' = A + P r + pi r^2. Shrunk, with c corners and k inner corners of 270 degrees, while
 * nothing pinches off: by a disc A' = A - P r + c r^2 - k pi r^2 / 4, mitred A' = A - P r + (c - k) r^2. Discs are
 * polygons here, which takes up to 0.2 % of r^2 a corner.
 */
#include "geometry/region.h"
#include "support/ox-test.h"

#define L "POLYGON ((0 0, 12 0, 12 5, 7 5, 7 9, 0 9, 0 0))"
#define U "POLYGON ((0 0, 10 0, 10 8, 7 8, 7 3, 3 3, 3 8, 0 8, 0 0))"
#define TRIANGLE "POLYGON ((0 0, 3 0, 0 4, 0 0))"
#define HALL "POLYGON ((0 0, 20 0, 20 12, 0 12, 0 0))"

static void
test_areas (void)
{
  static const struct
  {
    const char *wkt;
    double area, perimeter;
  } rows[] = { { L, 88, 42 }, { U, 60, 46 }, { TRIANGLE, 6, 12 }, { HALL, 240, 64 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxRing) ring = ox_test_ring (rows[i].wkt);
      ox_test_near (ox_ring_area (ring), rows[i].area, 1e-9);
      ox_test_near (ox_ring_perimeter (ring), rows[i].perimeter, 1e-9);
    }
  g_autoptr (OxRing) ell = ox_test_ring (L), hall = ox_test_ring (HALL);
  OxPoint centre = ox_ring_centroid (ell), middle = ox_ring_centroid (hall);
  ox_test_near (centre.x, 5.204545, 1e-6);
  ox_test_near (centre.y, 3.931818, 1e-6);
  ox_test_near (middle.x, 10, 1e-9);
}

static void
test_grown (void)
{
  static const struct
  {
    const char *wkt;
    double r, area;
  } rows[]
      = { { HALL, 0.1, 246.431416 },   { HALL, 0.3, 259.482743 },    { HALL, 0.5, 272.785398 }, { HALL, 1, 307.141593 },
          { TRIANGLE, 0.1, 7.231416 }, { TRIANGLE, 0.5, 12.785398 }, { TRIANGLE, 1, 21.141593 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxRegion) region = ox_test_region (rows[i].wkt);
      g_autoptr (OxRegion) grown = ox_region_offset (region, rows[i].r, TRUE);
      ox_test_near (ox_region_area (grown), rows[i].area, 0.01 * rows[i].r * rows[i].r * G_PI + 1e-3);
    }
}

static void
test_shrunk (void)
{
  static const struct
  {
    const char *wkt;
    double r, disc, mitred;
  } rows[] = { { HALL, 0.3, 221.16, 221.16 }, { HALL, 0.5, 209.00, 209.00 }, { L, 0.1, 83.842146, 83.84 },
               { L, 0.3, 75.779314, 75.76 },  { L, 0.5, 68.053650, 68.00 },  { U, 0.1, 55.444292, 55.44 },
               { U, 0.3, 46.598628, 46.56 },  { U, 0.5, 38.107301, 38.00 },  { TRIANGLE, 0.3, 2.94, 2.94 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxRegion) region = ox_test_region (rows[i].wkt);
      g_autoptr (OxRegion) disc = ox_region_offset (region, -rows[i].r, TRUE);
      g_autoptr (OxRegion) mitred = ox_region_offset (region, -rows[i].r, FALSE);
      ox_test_near (ox_region_area (disc), rows[i].disc, 0.005 * rows[i].r * rows[i].r + 2e-3);
      ox_test_near (ox_region_area (mitred), rows[i].mitred, 2e-3);
    }
}

/* What a disc leaves in the corners: c (1 - pi / 4) r^2. And the band along the walls and about eight columns of 0.4
 * m: 6.36 and 1.60 m2. */
static void
test_left_over (void)
{
  static const struct
  {
    const char *wkt;
    double r, corners;
  } rows[] = { { HALL, 0.3, 0.077257 }, { HALL, 0.5, 0.214602 }, { L, 0.3, 0.096571 }, { U, 0.3, 0.115885 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxRegion) region = ox_test_region (rows[i].wkt);
      g_autoptr (OxRegion) shrunk = ox_region_offset (region, -rows[i].r, TRUE);
      g_autoptr (OxRegion) opened = ox_region_offset (shrunk, rows[i].r, TRUE);
      ox_test_near (ox_region_area (region) - ox_region_area (opened), rows[i].corners, 2e-3 + 0.02 * rows[i].corners);
    }
  g_autoptr (OxRegion) hall = ox_test_region (HALL);
  g_autoptr (OxRegion) inner = ox_region_offset (hall, -0.1, FALSE);
  double band = ox_region_area (hall) - ox_region_area (inner);
  for (guint i = 0; i < 8; i++)
    {
      g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 2.5 + 2 * i, 6 }, 0.4, 0.4, 0);
      g_autoptr (OxRegion) column = ox_region_new_ring (ring);
      g_autoptr (OxRegion) grown = ox_region_offset (column, 0.1, FALSE);
      band += ox_region_area (grown) - ox_region_area (column);
    }
  ox_test_near (band, 7.96, 1e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/figures/areas", test_areas);
  g_test_add_func ("/geometry/figures/grown", test_grown);
  g_test_add_func ("/geometry/figures/shrunk", test_shrunk);
  g_test_add_func ("/geometry/figures/left-over", test_left_over);
  return g_test_run ();
}
