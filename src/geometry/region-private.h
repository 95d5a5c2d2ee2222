/* Oxturn: geometry/region - how regions are made and how GEOS sees them; private to this module.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "geometry/region.h"
#define GEOS_USE_ONLY_R_API
#include <geos_c.h>
G_BEGIN_DECLS

/* Rings with less area than this, m2, or thinner than this, m, are dropped: what is left between sides that should coincide. */
#define OX_REGION_MIN_RING 1e-9
#define OX_REGION_MIN_WIDTH 1e-8

/* The grid for results, m: small beside the grid of stored coordinates, large beside rounding. */
#define OX_REGION_GRID 1e-9
#define OX_REGION_RETRY_GRID 1e-6 /* m; on it a failed operation is tried again */

/* ox_region_round: the double nearest to a multiple of OX_REGION_GRID; what is on OX_GRID stays what it is */
static inline double
ox_region_round (double v)
{
  return round (v * 1e9) / 1e9 + 0.0; /* no negative zero */
}

typedef struct
{
  GArray *rings;    /* OxRegionRing */
  GArray *points;   /* OxPoint */
  guint n_parts;
  gboolean dropped; /* the outer ring of the present part was too small, so its holes are dropped too */
} OxRegionBuilder;

/* ox_region_builder_init: empty; for ox_region_builder_finish(), which alone frees what it holds */
void ox_region_builder_init (OxRegionBuilder *builder);

/* ox_region_builder_add: an outer ring begins a part, its holes follow it; any direction and start, not closed */
void ox_region_builder_add (OxRegionBuilder *builder, const OxPoint *points, guint n, gboolean hole);

/* ox_region_builder_finish: frees what @builder holds.  Returns: (transfer full): parts and holes sorted */
OxRegion *ox_region_builder_finish (OxRegionBuilder *builder) G_GNUC_WARN_UNUSED_RESULT;

/* ox_geos_context: that of this thread, freed with it */
GEOSContextHandle_t ox_geos_context (void);

/* ox_geos_stop: ends the program, telling which @operation GEOS could not do and what it said last */
void ox_geos_stop (const char *operation) G_GNUC_NORETURN;

/* ox_geos_polygon: of @n >= 3 corners, not closed */
GEOSGeometry *ox_geos_polygon (const OxPoint *points, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_geos_add_parts: each part of @region as a polygon of its own; @polygons: of GEOSGeometry, freed by none */
void ox_geos_add_parts (GPtrArray *polygons, const OxRegion *region);

/* ox_geos_collect: @polygons emptied into one collection; @type: GEOS_MULTIPOLYGON, or GEOS_GEOMETRYCOLLECTION if they overlap */
GEOSGeometry *ox_geos_collect (GPtrArray *polygons, int type) G_GNUC_WARN_UNUSED_RESULT;

/* ox_geos_take_region: the areas in @geometry, which is freed; points and lines in it are left out */
OxRegion *ox_geos_take_region (GEOSGeometry *geometry) G_GNUC_WARN_UNUSED_RESULT;

/* ox_geos_take_union: union of @polygons, which may overlap; empties the array */
OxRegion *ox_geos_take_union (GPtrArray *polygons) G_GNUC_WARN_UNUSED_RESULT;

/* ox_geos_add_hull: the convex hull of @points, which are put in order, unless it has no area */
void ox_geos_add_hull (GPtrArray *polygons, OxPoint *points, guint n);

G_END_DECLS
