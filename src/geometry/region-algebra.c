/* Oxturn: geometry/region - union, intersection, difference and offset.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All overlays go on a grid, by snap rounding. In plain doubles GEOS 3.11.1 now and then gives wrong areas without an
 * error where sides coincide but for rounding: of a polygon less itself moved by 1e-14 m it left the whole, of 24
 * strips that abut it lost one. Rounding the strips beforehand made that rarer, not impossible; the grid costs about
 * three times the time.
 */
#include "geometry/region-private.h"
#include <stdlib.h>

/* The grid on which a failed operation is tried again, m. */
#define RETRY_GRID 1e-6

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
  GEOSGeometry *ga = to_geos (a);
  GEOSGeometry *gb = to_geos (b);
  GEOSGeometry *result = function (geos, ga, gb, OX_REGION_GRID);
  if (!result)
    result = function (geos, ga, gb, RETRY_GRID);
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

typedef struct
{
  GEOSGeometry *polygon;
  OxBox box;
  guint group; /* towards the lowest number in its group, which points at itself */
} Member;

static guint
group_of (Member *members, guint i)
{
  while (members[i].group != i)
    i = members[i].group = members[members[i].group].group;
  return i;
}

static int
compare_members (gconstpointer a, gconstpointer b)
{
  const Member *p = a, *q = b;
  if (p->box.x0 != q->box.x0)
    return p->box.x0 < q->box.x0 ? -1 : 1;
  return (p->box.y0 > q->box.y0) - (p->box.y0 < q->box.y0);
}

/* Puts members whose boxes meet, directly or by others, into one group. They stand in order of their left ends. */
static void
group_members (Member *members, guint n)
{
  g_autofree guint *open = g_new (guint, n);
  guint n_open = 0, n_groups = n;
  for (guint i = 0; i < n && n_groups > 1; i++)
    {
      guint kept = 0;
      for (guint k = 0; k < n_open; k++)
        {
          const OxBox *box = &members[open[k]].box;
          if (box->x1 + RETRY_GRID < members[i].box.x0)
            continue;
          guint other = open[k];
          open[kept++] = other;
          if (box->y0 > members[i].box.y1 + RETRY_GRID || members[i].box.y0 > box->y1 + RETRY_GRID)
            continue;
          guint p = group_of (members, other), q = group_of (members, i);
          if (p == q)
            continue;
          members[MAX (p, q)].group = MIN (p, q);
          n_groups--;
        }
      n_open = kept;
      open[n_open++] = i;
    }
}

/* One polygon is its own union. */
static GEOSGeometry *
take_group (GPtrArray *polygons)
{
  if (polygons->len == 1)
    return g_ptr_array_steal_index (polygons, 0);
  GEOSContextHandle_t geos = ox_geos_context ();
  /* A collection, since a multipolygon promises that its parts do not overlap. */
  GEOSGeometry *all = ox_geos_collect (polygons, GEOS_GEOMETRYCOLLECTION);
  GEOSGeometry *result = GEOSUnaryUnionPrec_r (geos, all, OX_REGION_GRID);
  if (!result)
    result = GEOSUnaryUnionPrec_r (geos, all, RETRY_GRID);
  GEOSGeom_destroy_r (geos, all);
  if (!result)
    ox_geos_stop ("union of many");
  return result;
}

static Member *
take_members (GPtrArray *polygons)
{
  GEOSContextHandle_t geos = ox_geos_context ();
  Member *members = g_new (Member, polygons->len);
  for (guint i = 0; i < polygons->len; i++)
    {
      Member *member = &members[i];
      member->polygon = g_ptr_array_index (polygons, i);
      GEOSGeom_getXMin_r (geos, member->polygon, &member->box.x0);
      GEOSGeom_getYMin_r (geos, member->polygon, &member->box.y0);
      GEOSGeom_getXMax_r (geos, member->polygon, &member->box.x1);
      GEOSGeom_getYMax_r (geos, member->polygon, &member->box.y1);
    }
  if (polygons->len > 1)
    qsort (members, polygons->len, sizeof (Member), compare_members);
  for (guint i = 0; i < polygons->len; i++)
    members[i].group = i;
  g_ptr_array_set_size (polygons, 0);
  return members;
}

/* GEOS takes a fixed time for every ring that goes into a union, several times over; most of a floor's obstacles stand alone. */
OxRegion *
ox_geos_take_union (GPtrArray *polygons)
{
  guint n = polygons->len;
  if (n == 0)
    return ox_region_new_empty ();
  g_autofree Member *members = take_members (polygons);
  g_autofree GPtrArray **groups = g_new0 (GPtrArray *, n);
  group_members (members, n);
  for (guint i = 0; i < n; i++)
    {
      guint group = group_of (members, i);
      if (groups[group] == NULL)
        groups[group] = g_ptr_array_new ();
      g_ptr_array_add (groups[group], members[i].polygon);
    }
  for (guint i = 0; i < n; i++)
    if (groups[i] != NULL)
      {
        g_ptr_array_add (polygons, take_group (groups[i]));
        g_ptr_array_unref (groups[i]);
      }
  return ox_geos_take_region (ox_geos_collect (polygons, GEOS_GEOMETRYCOLLECTION));
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

OxRegion *
ox_region_offset (const OxRegion *region, double distance, gboolean round)
{
  g_return_val_if_fail (isfinite (distance), NULL);

  if (distance == 0 || ox_region_is_empty (region))
    return ox_region_ref (region);
  GEOSContextHandle_t geos = ox_geos_context ();
  GEOSBufferParams *params = GEOSBufferParams_create_r (geos);
  GEOSBufferParams_setQuadrantSegments_r (geos, params, QUARTER_SEGMENTS);
  GEOSBufferParams_setJoinStyle_r (geos, params, round ? GEOSBUF_JOIN_ROUND : GEOSBUF_JOIN_MITRE);
  GEOSBufferParams_setMitreLimit_r (geos, params, MITRE_LIMIT);
  GEOSGeometry *from = to_geos (region);
  GEOSGeometry *result = GEOSBufferWithParams_r (geos, from, params, distance);
  GEOSGeom_destroy_r (geos, from);
  GEOSBufferParams_destroy_r (geos, params);
  if (!result)
    ox_geos_stop ("offset");
  return ox_geos_take_region (result);
}
