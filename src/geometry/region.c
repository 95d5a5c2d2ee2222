/* Oxturn: geometry/region - areas of any shape: the values, their normal form and their measures.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/outline-private.h"
#include "geometry/region-private.h"
#include <string.h>

OxRegion *
ox_region_ref (const OxRegion *region)
{
  return g_atomic_rc_box_acquire ((OxRegion *) region);
}

void
ox_region_unref (const OxRegion *region)
{
  g_atomic_rc_box_release ((OxRegion *) region);
}

/* --- normal form ------------------------------------------------------------------------------------------------ */

static int
compare_points (OxPoint a, OxPoint b)
{
  if (a.y != b.y)
    return a.y < b.y ? -1 : 1;
  return (a.x > b.x) - (a.x < b.x);
}

/* By their corners one after another; a total order, since no two rings of a region are the same. */
static int
compare_rings (gconstpointer a, gconstpointer b, gpointer points)
{
  const OxRegionRing *ra = a, *rb = b;
  const OxPoint *pa = (const OxPoint *) points + ra->start, *pb = (const OxPoint *) points + rb->start;
  for (guint i = 0; i < MIN (ra->n, rb->n); i++)
    {
      int order = compare_points (pa[i], pb[i]);
      if (order != 0)
        return order;
    }
  return (ra->n > rb->n) - (ra->n < rb->n);
}

static guint
drop_repeated (OxPoint *points, guint n)
{
  guint kept = 0;
  for (guint i = 0; i < n; i++)
    if (kept == 0 || compare_points (points[kept - 1], points[i]) != 0)
      points[kept++] = points[i];
  while (kept > 1 && compare_points (points[0], points[kept - 1]) == 0)
    kept--;
  return kept;
}

static void
reverse (OxPoint *points, guint n)
{
  for (guint i = 0; i < n / 2; i++)
    {
      OxPoint other = points[i];
      points[i] = points[n - 1 - i];
      points[n - 1 - i] = other;
    }
}

static guint
lowest_corner (const OxPoint *points, guint n)
{
  guint lowest = 0;
  for (guint i = 1; i < n; i++)
    if (compare_points (points[i], points[lowest]) < 0)
      lowest = i;
  return lowest;
}

void
ox_region_builder_init (OxRegionBuilder *builder)
{
  *builder = (OxRegionBuilder){ g_array_new (FALSE, FALSE, sizeof (OxRegionRing)),
                                g_array_new (FALSE, FALSE, sizeof (OxPoint)), 0, FALSE };
}

void
ox_region_builder_add (OxRegionBuilder *builder, const OxPoint *points, guint n, gboolean hole)
{
  if (hole && builder->dropped)
    return;
  guint start = builder->points->len;
  g_array_append_vals (builder->points, points, n);
  OxPoint *own = &g_array_index (builder->points, OxPoint, start);
  n = drop_repeated (own, n);
  double area = n >= 3 ? ox_outline_area (own, n) : 0;
  gboolean dropped
      = fabs (area) < OX_REGION_MIN_RING || 2 * fabs (area) < OX_REGION_MIN_WIDTH * ox_outline_perimeter (own, n);
  if (!hole)
    builder->dropped = dropped;
  if (dropped)
    {
      g_array_set_size (builder->points, start);
      return;
    }
  if ((area > 0) == hole)
    reverse (own, n);
  /* Turned about so that the lowest corner comes first, by three reversals. */
  guint lowest = lowest_corner (own, n);
  reverse (own, lowest);
  reverse (own + lowest, n - lowest);
  reverse (own, n);
  g_array_set_size (builder->points, start + n);
  builder->n_parts += !hole;
  OxRegionRing ring = { start, n, builder->n_parts - 1, hole };
  g_array_append_val (builder->rings, ring);
}

/* One block holds the region, its rings and its corners, so that a reference count is all there is to free. */
static OxRegion *
region_alloc (guint n_rings, guint n_points, OxRegionRing **rings, OxPoint **points)
{
  gsize rings_at = sizeof (OxRegion);
  gsize points_at = rings_at + n_rings * sizeof (OxRegionRing);
  char *block = g_atomic_rc_box_alloc (points_at + n_points * sizeof (OxPoint));
  OxRegion *region = (OxRegion *) (gpointer) block;
  *rings = (OxRegionRing *) (gpointer) (block + rings_at);
  *points = (OxPoint *) (gpointer) (block + points_at);
  *region = (OxRegion){ 0, n_rings, *rings, *points, n_points };
  return region;
}

/* The outer rings in their order; @builder's rings are put in order within their parts. */
static GArray *
sort_rings (OxRegionBuilder *builder)
{
  GArray *outers = g_array_sized_new (FALSE, FALSE, sizeof (OxRegionRing), builder->n_parts);
  OxRegionRing *rings = (OxRegionRing *) (gpointer) builder->rings->data;
  for (guint i = 0; i < builder->rings->len;)
    {
      g_array_append_val (outers, rings[i]);
      /* Until the copying below, @part of an outer ring tells where it stands among the unsorted rings. */
      g_array_index (outers, OxRegionRing, outers->len - 1).part = i;
      guint end = i + 1;
      while (end < builder->rings->len && rings[end].hole)
        end++;
      g_qsort_with_data (rings + i + 1, (gint) (end - i - 1), sizeof (OxRegionRing), compare_rings,
                         builder->points->data);
      i = end;
    }
  g_array_sort_with_data (outers, compare_rings, builder->points->data);
  return outers;
}

OxRegion *
ox_region_builder_finish (OxRegionBuilder *builder)
{
  g_autoptr (GArray) outers = sort_rings (builder);
  const OxRegionRing *from = (const OxRegionRing *) (gconstpointer) builder->rings->data;
  OxRegionRing *rings;
  OxPoint *points;
  OxRegion *region = region_alloc (builder->rings->len, builder->points->len, &rings, &points);
  region->n_parts = outers->len;
  guint n_rings = 0, n_points = 0;
  for (guint part = 0; part < outers->len; part++)
    {
      guint i = g_array_index (outers, OxRegionRing, part).part;
      do
        {
          const OxPoint *corners = &g_array_index (builder->points, OxPoint, from[i].start);
          memcpy (points + n_points, corners, from[i].n * sizeof (OxPoint));
          rings[n_rings++] = (OxRegionRing){ n_points, from[i].n, part, from[i].hole };
          n_points += from[i].n;
          i++;
        }
      while (i < builder->rings->len && from[i].hole);
    }
  g_array_unref (builder->rings);
  g_array_unref (builder->points);
  return region;
}

/* --- simple ways to make one ------------------------------------------------------------------------------------ */

OxRegion *
ox_region_new_empty (void)
{
  OxRegionRing *rings;
  OxPoint *points;
  return region_alloc (0, 0, &rings, &points);
}

OxRegion *
ox_region_new_points (const OxPoint *points, guint n)
{
  OxRegionBuilder builder;
  ox_region_builder_init (&builder);
  ox_region_builder_add (&builder, points, n, FALSE);
  return ox_region_builder_finish (&builder);
}

OxRegion *
ox_region_new_ring (const OxRing *ring)
{
  return ox_region_new_points (ring->points, ring->n);
}

OxRegion *
ox_region_turn (const OxRegion *region, double angle)
{
  double c = cos (angle), s = sin (angle);
  g_autofree OxPoint *turned = g_new (OxPoint, region->n_points);
  for (guint i = 0; i < region->n_points; i++)
    turned[i] = ox_point_turn (region->points[i], c, s);
  OxRegionBuilder builder;
  ox_region_builder_init (&builder);
  for (guint i = 0; i < region->n_rings; i++)
    ox_region_builder_add (&builder, turned + region->rings[i].start, region->rings[i].n, region->rings[i].hole);
  return ox_region_builder_finish (&builder);
}

OxRegion *
ox_region_get_part (const OxRegion *region, guint i)
{
  g_return_val_if_fail (i < region->n_parts, NULL);

  OxRegionBuilder builder;
  ox_region_builder_init (&builder);
  for (guint r = 0; r < region->n_rings; r++)
    {
      const OxRegionRing *ring = &region->rings[r];
      if (ring->part == i)
        ox_region_builder_add (&builder, region->points + ring->start, ring->n, ring->hole);
    }
  return ox_region_builder_finish (&builder);
}

OxRegion *
ox_region_fill_holes (const OxRegion *region, const gboolean *fill)
{
  OxRegionBuilder builder;
  ox_region_builder_init (&builder);
  for (guint r = 0; r < region->n_rings; r++)
    {
      const OxRegionRing *ring = &region->rings[r];
      if (!ring->hole || !fill[r])
        ox_region_builder_add (&builder, region->points + ring->start, ring->n, ring->hole);
    }
  return ox_region_builder_finish (&builder);
}

/* --- measures --------------------------------------------------------------------------------------------------- */

double
ox_region_area (const OxRegion *region)
{
  double sum = 0;
  for (guint i = 0; i < region->n_rings; i++)
    sum += ox_outline_area (region->points + region->rings[i].start, region->rings[i].n);
  return sum;
}

double
ox_region_perimeter (const OxRegion *region)
{
  double sum = 0;
  for (guint i = 0; i < region->n_rings; i++)
    sum += ox_outline_perimeter (region->points + region->rings[i].start, region->rings[i].n);
  return sum;
}

OxBox
ox_region_box (const OxRegion *region)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < region->n_points; i++)
    ox_box_add (&box, region->points[i]);
  return box;
}

gboolean
ox_region_is_empty (const OxRegion *region)
{
  return region->n_parts == 0;
}

gboolean
ox_region_contains (const OxRegion *region, OxPoint p)
{
  gboolean inside = FALSE;
  for (guint i = 0; i < region->n_rings; i++)
    if (ox_outline_count (region->points + region->rings[i].start, region->rings[i].n, p, &inside))
      return TRUE;
  return inside;
}
