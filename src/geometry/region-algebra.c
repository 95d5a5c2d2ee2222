/* Oxturn: geometry/region - union, intersection, difference and offset.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All overlays go on a grid, by snap rounding. In plain doubles GEOS 3.11.1 now and then gives wrong areas without an
 * error where sides coincide but for rounding: of a polygon less itself moved by 1e-14 m it left the whole, of 24
 * strips that abut it lost one. Rounding the strips beforehand made that rarer, not impossible; the grid costs about
 * three times the time.
 */
#include "base/stop.h"
#include "geometry/region-private.h"

/* Segments of a quarter turn in round corners: 64 a full turn. */
#define QUARTER_SEGMENTS 16
#define MITRE_LIMIT 5.0

typedef GEOSGeometry *(*Overlay) (GEOSContextHandle_t, const GEOSGeometry *, const GEOSGeometry *, double grid);

static GEOSGeometry *
to_geos (const OxRegion *region)
{
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  ox_geos_add_parts (polygons, region);
  return ox_geos_collect (polygons, GEOS_MULTIPOLYGON);
}

static OxRegion *
overlay (Overlay function, const char *name, const OxRegion *a, const OxRegion *b)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  if (ox_stop_asked ())
    return ox_region_new_empty ();
  GEOSGeometry *ga = to_geos (a);
  GEOSGeometry *gb = to_geos (b);
  GEOSGeometry *result = function (geos, ga, gb, OX_REGION_GRID);
  if (!result)
    result = function (geos, ga, gb, OX_REGION_RETRY_GRID);
  GEOSGeom_destroy_r (geos, ga);
  GEOSGeom_destroy_r (geos, gb);
  if (!result)
    ox_geos_stop (name);
  return ox_geos_take_region (result);
}

/* Empty regions are apart from all others. */
static gboolean
are_apart (const OxRegion *a, const OxRegion *b)
{
  OxBox box_a = ox_region_box (a), box_b = ox_region_box (b);
  return !(box_a.x0 <= box_b.x1 && box_b.x0 <= box_a.x1 && box_a.y0 <= box_b.y1 && box_b.y0 <= box_a.y1);
}

OxRegion *
ox_region_union (const OxRegion *a, const OxRegion *b)
{
  if (ox_region_is_empty (a))
    return ox_region_ref (b);
  if (ox_region_is_empty (b))
    return ox_region_ref (a);
  return overlay (GEOSUnionPrec_r, "union", a, b);
}

OxRegion *
ox_region_intersection (const OxRegion *a, const OxRegion *b)
{
  return are_apart (a, b) ? ox_region_new_empty () : overlay (GEOSIntersectionPrec_r, "intersection", a, b);
}

OxRegion *
ox_region_difference (const OxRegion *a, const OxRegion *b)
{
  return are_apart (a, b) ? ox_region_ref (a) : overlay (GEOSDifferencePrec_r, "difference", a, b);
}

OxRegion *
ox_region_union_many (const OxRegion *const *regions, guint n)
{
  if (n == 1)
    return ox_region_ref (regions[0]);
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  for (guint i = 0; i < n; i++)
    ox_geos_add_parts (polygons, regions[i]);
  return ox_geos_take_union (polygons);
}

OxRegion *
ox_region_new_rings (const OxRing *outer, const OxRing *const *holes, guint n_holes)
{
  g_autoptr (OxRegion) whole = ox_region_new_ring (outer);
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  for (guint i = 0; i < n_holes; i++)
    {
      g_autoptr (OxRegion) hole = ox_region_new_ring (holes[i]);
      ox_geos_add_parts (polygons, hole);
    }
  g_autoptr (OxRegion) removed = ox_geos_take_union (polygons);
  return ox_region_difference (whole, removed);
}

/* Parts that touch at a corner or lie a hair apart can be too much for it; on a grid they are one or clear of each other. */
static GEOSGeometry *
offset_again (const GEOSGeometry *from, const GEOSBufferParams *params, double distance)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  GEOSGeometry *snapped = GEOSUnaryUnionPrec_r (geos, from, OX_REGION_RETRY_GRID);
  GEOSGeometry *result = snapped ? GEOSBufferWithParams_r (geos, snapped, params, distance) : NULL;
  GEOSGeom_destroy_r (geos, snapped);
  return result;
}

OxRegion *
ox_region_offset (const OxRegion *region, double distance, gboolean round)
{
  g_return_val_if_fail (isfinite (distance), NULL);

  if (distance == 0 || ox_region_is_empty (region))
    return ox_region_ref (region);
  if (ox_stop_asked ())
    return ox_region_new_empty ();
  GEOSContextHandle_t geos = ox_geos_context ();
  GEOSBufferParams *params = GEOSBufferParams_create_r (geos);
  GEOSBufferParams_setQuadrantSegments_r (geos, params, QUARTER_SEGMENTS);
  GEOSBufferParams_setJoinStyle_r (geos, params, round ? GEOSBUF_JOIN_ROUND : GEOSBUF_JOIN_MITRE);
  GEOSBufferParams_setMitreLimit_r (geos, params, MITRE_LIMIT);
  GEOSGeometry *from = to_geos (region);
  GEOSGeometry *result = GEOSBufferWithParams_r (geos, from, params, distance);
  if (!result)
    result = offset_again (from, params, distance);
  GEOSGeom_destroy_r (geos, from);
  GEOSBufferParams_destroy_r (geos, params);
  if (!result)
    ox_geos_stop ("offset");
  return ox_geos_take_region (result);
}
