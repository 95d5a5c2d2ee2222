/* Oxturn: geometry/region - to GEOS and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/region-private.h"
#include <string.h>

typedef struct
{
  GEOSContextHandle_t handle;
  char message[256]; /* the last one GEOS gave */
} Context;

static void
keep_message (const char *message, void *data)
{
  Context *context = data;
  g_strlcpy (context->message, message, sizeof context->message);
}

static void
context_free (gpointer data)
{
  Context *context = data;
  GEOS_finish_r (context->handle);
  g_free (context);
}

static GPrivate context_key = G_PRIVATE_INIT (context_free);

static Context *
get_context (void)
{
  Context *context = g_private_get (&context_key);
  if (context)
    return context;
  context = g_new0 (Context, 1);
  context->handle = GEOS_init_r ();
  GEOSContext_setErrorMessageHandler_r (context->handle, keep_message, context);
  GEOSContext_setNoticeMessageHandler_r (context->handle, keep_message, context);
  g_private_set (&context_key, context);
  return context;
}

GEOSContextHandle_t
ox_geos_context (void)
{
  return get_context ()->handle;
}

void
ox_geos_stop (const char *operation)
{
  g_error ("GEOS %s cannot do: %s: %s", GEOSversion (), operation, get_context ()->message);
}

/* OxPoint is two doubles, which is how GEOS wants its buffers. */
static GEOSGeometry *
linear_ring (const OxPoint *points, guint n)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  g_autofree OxPoint *closed = g_new (OxPoint, n + 1);
  memcpy (closed, points, n * sizeof (OxPoint));
  closed[n] = points[0];
  GEOSCoordSequence *sequence = GEOSCoordSeq_copyFromBuffer_r (geos, &closed[0].x, n + 1, 0, 0);
  GEOSGeometry *ring = sequence ? GEOSGeom_createLinearRing_r (geos, sequence) : NULL;
  if (!ring)
    ox_geos_stop ("ring");
  return ring;
}

static GEOSGeometry *
polygon_with_holes (GEOSGeometry *outer, GEOSGeometry **holes, guint n)
{
  GEOSGeometry *polygon = GEOSGeom_createPolygon_r (ox_geos_context (), outer, holes, n);
  if (!polygon)
    ox_geos_stop ("polygon");
  return polygon;
}

GEOSGeometry *
ox_geos_polygon (const OxPoint *points, guint n)
{
  return polygon_with_holes (linear_ring (points, n), NULL, 0);
}

void
ox_geos_add_parts (GPtrArray *polygons, const OxRegion *region)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new ();
  for (guint i = 0; i < region->n_rings; i++)
    {
      const OxRegionRing *ring = &region->rings[i];
      g_ptr_array_add (rings, linear_ring (region->points + ring->start, ring->n));
      if (i + 1 < region->n_rings && region->rings[i + 1].hole)
        continue;
      GEOSGeometry **all = (GEOSGeometry **) rings->pdata;
      g_ptr_array_add (polygons, polygon_with_holes (all[0], all + 1, rings->len - 1));
      g_ptr_array_set_size (rings, 0);
    }
}

GEOSGeometry *
ox_geos_collect (GPtrArray *polygons, int type)
{
  GEOSGeometry *all
      = GEOSGeom_createCollection_r (ox_geos_context (), type, (GEOSGeometry **) polygons->pdata, polygons->len);
  if (!all)
    ox_geos_stop ("collection");
  g_ptr_array_set_size (polygons, 0);
  return all;
}

/* GEOS keeps its grid by the reciprocal of 1e-9, which is no double, and so misses the nearest one to 0.4 by a bit. */
static void
round_corners (OxPoint *points, guint n)
{
  for (guint i = 0; i < n; i++)
    points[i] = (OxPoint){ ox_region_round (points[i].x), ox_region_round (points[i].y) };
}

static void
add_ring (OxRegionBuilder *builder, const GEOSGeometry *ring, gboolean hole)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  const GEOSCoordSequence *sequence = GEOSGeom_getCoordSeq_r (geos, ring);
  unsigned int n = 0;
  if (!sequence || !GEOSCoordSeq_getSize_r (geos, sequence, &n))
    ox_geos_stop ("corners");
  g_autofree OxPoint *points = g_new (OxPoint, n);
  if (n > 0 && !GEOSCoordSeq_copyToBuffer_r (geos, sequence, &points[0].x, 0, 0))
    ox_geos_stop ("corners");
  round_corners (points, n);
  ox_region_builder_add (builder, points, n, hole);
}

/* Overlays may give collections; none of ours are nested deeper than a few levels. */
static void
add_areas (OxRegionBuilder *builder, const GEOSGeometry *geometry)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  int type = GEOSGeomTypeId_r (geos, geometry);
  if (type == GEOS_MULTIPOLYGON || type == GEOS_GEOMETRYCOLLECTION)
    {
      int n = GEOSGetNumGeometries_r (geos, geometry);
      for (int i = 0; i < n; i++)
        add_areas (builder, GEOSGetGeometryN_r (geos, geometry, i));
      return;
    }
  if (type != GEOS_POLYGON || GEOSisEmpty_r (geos, geometry))
    return;
  add_ring (builder, GEOSGetExteriorRing_r (geos, geometry), FALSE);
  int n = GEOSGetNumInteriorRings_r (geos, geometry);
  for (int i = 0; i < n; i++)
    add_ring (builder, GEOSGetInteriorRingN_r (geos, geometry, i), TRUE);
}

OxRegion *
ox_geos_take_region (GEOSGeometry *geometry)
{
  OxRegionBuilder builder;
  ox_region_builder_init (&builder);
  add_areas (&builder, geometry);
  GEOSGeom_destroy_r (ox_geos_context (), geometry);
  return ox_region_builder_finish (&builder);
}
