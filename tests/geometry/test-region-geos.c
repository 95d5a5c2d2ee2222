/* Oxturn: tests of geometry/region-geos
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/region-private.h"
#include "support/ox-test.h"

static GEOSGeometry *
read_geometry (const char *wkt)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  GEOSWKTReader *reader = GEOSWKTReader_create_r (geos);
  GEOSGeometry *geometry = GEOSWKTReader_read_r (geos, reader, wkt);
  GEOSWKTReader_destroy_r (geos, reader);
  g_assert_nonnull (geometry);
  return geometry;
}

/* What overlays give besides areas is left out, however it is wrapped. */
static void
test_take_areas (void)
{
  static const struct
  {
    const char *wkt;
    const char *area;
  } cases[] = {
    { "POLYGON ((0 0, 0 4, 3 0, 0 0))", "POLYGON ((0 0, 3 0, 0 4, 0 0))" },
    { "POINT (1 1)", "POLYGON EMPTY" },
    { "LINESTRING (0 0, 1 1)", "POLYGON EMPTY" },
    { "GEOMETRYCOLLECTION EMPTY", "POLYGON EMPTY" },
    { "GEOMETRYCOLLECTION (POINT (9 9), POLYGON ((0 0, 0 4, 3 0, 0 0)), LINESTRING (0 0, 9 9))",
      "POLYGON ((0 0, 3 0, 0 4, 0 0))" },
    { "GEOMETRYCOLLECTION (GEOMETRYCOLLECTION (MULTIPOLYGON (((5 1, 6 2, 6 1, 5 1)), ((0 0, 0 4, 3 0, 0 0)))))",
      "MULTIPOLYGON (((0 0, 3 0, 0 4, 0 0)), ((5 1, 6 1, 6 2, 5 1)))" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (OxRegion) region = ox_geos_take_region (read_geometry (cases[i].wkt));
      g_autoptr (OxRegion) wanted = ox_test_region (cases[i].area);
      g_assert_true (ox_test_same_bytes (region, wanted));
    }
}

/* Crumbs between sides that should coincide: parts and holes go, and the holes of a part that went. */
static void
test_crumbs_are_dropped (void)
{
  g_autoptr (OxRegion) region
      = ox_geos_take_region (read_geometry ("MULTIPOLYGON (((0 0, 4 0, 4 4, 0 4, 0 0), (1 1, 1.00001 1, 1.00001 "
                                            "1.00001, 1 1)), ((9 9, 9.00001 9, 9 9.00001, 9 9)),"
                                            "((20 0, 23 0, 20 4, 20 0)))"));
  g_assert_cmpuint (region->n_parts, ==, 2);
  g_assert_cmpuint (region->n_rings, ==, 2);
  ox_test_near (ox_region_area (region), 22, 1e-9);
}

static void
test_there_and_back (void)
{
  g_autoptr (OxRegion) region
      = ox_test_region ("POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1), (4 4, 5 4, 5 5, 4 4))"
                        "POLYGON ((20 0, 23 0, 20 4, 20 0))");
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  ox_geos_add_parts (polygons, region);
  g_assert_cmpuint (polygons->len, ==, 2);
  g_autoptr (OxRegion) back = ox_geos_take_region (ox_geos_collect (polygons, GEOS_MULTIPOLYGON));
  g_assert_cmpuint (polygons->len, ==, 0);
  g_assert_true (ox_test_same_bytes (back, region));
}

static gpointer
get_context (gpointer unused G_GNUC_UNUSED)
{
  return ox_geos_context ();
}

static void
test_context_of_each_thread (void)
{
  GEOSContextHandle_t own = ox_geos_context ();
  g_assert_true (ox_geos_context () == own);
  GThread *thread = g_thread_new (NULL, get_context, NULL);
  g_assert_true (g_thread_join (thread) != own);
}

static void
test_stop (void)
{
  if (g_test_subprocess ())
    ox_geos_stop ("union");
  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*union*");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/region-geos/take/areas", test_take_areas);
  g_test_add_func ("/geometry/region-geos/take/crumbs-are-dropped", test_crumbs_are_dropped);
  g_test_add_func ("/geometry/region-geos/there-and-back", test_there_and_back);
  g_test_add_func ("/geometry/region-geos/context-of-each-thread", test_context_of_each_thread);
  g_test_add_func ("/geometry/region-geos/stop", test_stop);
  return g_test_run ();
}
