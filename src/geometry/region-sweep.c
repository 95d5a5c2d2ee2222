/* Oxturn: geometry/region - what a rectangle sweeps: hulls, erosion and dilation.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Let F be the floor, R the rectangle about its origin, which lies in R, and bd F the outline of F.
 *
 * Erosion. The rectangle at p, p + R, is connected and holds p. It lies in F if and only if p does and p + R does not
 * cross bd F. It meets the side e when p + r = q for an r in R and a q in e, so when p is in e - R. Hence F eroded by R
 * = F minus the union of (e - R) over all sides e.
 *
 * Dilation. A point q not in F is touched from an origin in F when q - R, which holds q, meets F; being connected it
 * then crosses bd F, so that q is in e + R for a side e. Hence F dilated by R = F united with the (e + R) over all
 * sides e.
 *
 * A side is a segment and R is convex, so e + R is the convex hull of the ends of e, each moved by the four corners of
 * R. In place of the sides of a convex ring the hull of the ring as a whole serves where its inside goes the same way:
 * for the hole, with no other part in it, of a floor that is eroded and for the outer ring, without holes, of one
 * dilated.
 */
#include "geometry/outline-private.h"
#include "geometry/region-private.h"
#include <stdlib.h>

/* Three corners with less than twice this area, m2, count as collinear in a hull: rounding, as of a side along the
 * heading, would else leave a corner there. */
#define COLLINEAR 1e-12

static int
compare_across (const void *a, const void *b)
{
  const OxPoint *pa = a, *pb = b;
  if (pa->x != pb->x)
    return pa->x < pb->x ? -1 : 1;
  return (pa->y > pb->y) - (pa->y < pb->y);
}

static gboolean
turns_left (OxPoint a, OxPoint b, OxPoint c)
{
  return ox_point_cross (ox_point_sub (b, a), ox_point_sub (c, a)) > COLLINEAR;
}

/* Lower, then upper chain of the points sorted by x (A. M. Andrew, Another efficient algorithm for convex hulls in two
 * dimensions, Information Processing Letters 9 (1979) 216-219). @hull has room for n + 1 points. */
static guint
convex_hull (OxPoint *points, guint n, OxPoint *hull)
{
  qsort (points, n, sizeof (OxPoint), compare_across);
  guint k = 0;
  for (guint i = 0; i < n; i++)
    {
      while (k >= 2 && !turns_left (hull[k - 2], hull[k - 1], points[i]))
        k--;
      hull[k++] = points[i];
    }
  guint lower = k + 1;
  for (guint i = n - 1; i-- > 0;)
    {
      while (k >= lower && !turns_left (hull[k - 2], hull[k - 1], points[i]))
        k--;
      hull[k++] = points[i];
    }
  return k - 1;
}

void
ox_geos_add_hull (GPtrArray *polygons, OxPoint *points, guint n)
{
  if (n < 3)
    return;
  g_autofree OxPoint *hull = g_new (OxPoint, 2 * (gsize) n);
  guint corners = convex_hull (points, n, hull);
  if (corners >= 3 && ox_outline_area (hull, corners) >= OX_REGION_MIN_RING)
    g_ptr_array_add (polygons, ox_geos_polygon (hull, corners));
}

OxRegion *
ox_region_union_hulls (const OxPoint *points, guint n, guint size)
{
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  g_autofree OxPoint *group = g_new (OxPoint, size);
  for (guint i = 0; i < n; i++)
    {
      for (guint k = 0; k < size; k++)
        group[k] = points[(gsize) i * size + k];
      ox_geos_add_hull (polygons, group, size);
    }
  return ox_geos_take_union (polygons);
}

/* A strip's four corners are their own hull, whatever their order. */
OxRegion *
ox_region_union_quads (const OxPoint *corners, guint n)
{
  return ox_region_union_hulls (corners, n, 4);
}

/* The hull of @n points, each moved by the @rectangle's corners. */
static void
add_swept (GPtrArray *polygons, const OxPoint *points, guint n, const OxPoint rectangle[4])
{
  g_autofree OxPoint *moved = g_new (OxPoint, 4 * (gsize) n);
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < 4; k++)
      moved[4 * i + k] = ox_point_add (points[i], rectangle[k]);
  ox_geos_add_hull (polygons, moved, 4 * n);
}

/* Whether @ring, seen as an area of its own, is convex. @turn: +1 for an outer ring, -1 for a hole. */
static gboolean
is_convex (const OxPoint *ring, guint n, int turn)
{
  for (guint i = 0; i < n; i++)
    {
      OxPoint before = ring[i], at = ring[(i + 1) % n], after = ring[(i + 2) % n];
      if (turn * ox_point_cross (ox_point_sub (at, before), ox_point_sub (after, at)) < 0)
        return FALSE;
    }
  return TRUE;
}

/* Whether another part of @region stands in (or touches) the hole @ring. */
static gboolean
has_island (const OxRegion *region, const OxRegionRing *ring)
{
  for (guint r = 0; r < region->n_rings; r++)
    {
      const OxRegionRing *other = &region->rings[r];
      gboolean inside = FALSE;
      if (other->hole || other->part == ring->part)
        continue;
      if (ox_outline_count (region->points + ring->start, ring->n, region->points[other->start], &inside) || inside)
        return TRUE;
    }
  return FALSE;
}

/* Whether the hull of ring @r holds nothing but what its sides sweep and what goes the same way, see above. */
static gboolean
serves_as_whole (const OxRegion *region, guint r, gboolean erode)
{
  const OxRegionRing *ring = &region->rings[r];
  if (!is_convex (region->points + ring->start, ring->n, ring->hole ? -1 : 1))
    return FALSE;
  if (erode)
    return ring->hole && !has_island (region, ring);
  gboolean has_holes = r + 1 < region->n_rings && region->rings[r + 1].hole;
  return !ring->hole && !has_holes;
}

/* What the rectangle sweeps along the outlines of @region. */
static void
add_swept_outlines (GPtrArray *polygons, const OxRegion *region, gboolean erode, const OxPoint rectangle[4])
{
  for (guint r = 0; r < region->n_rings; r++)
    {
      const OxPoint *points = region->points + region->rings[r].start;
      guint n = region->rings[r].n;
      if (serves_as_whole (region, r, erode))
        {
          add_swept (polygons, points, n, rectangle);
          continue;
        }
      for (guint i = 0; i < n; i++)
        add_swept (polygons, (const OxPoint[]){ points[i], points[(i + 1) % n] }, 2, rectangle);
    }
}

static void
rectangle_corners (OxPoint corners[4], const double extents[4], double angle)
{
  double rear = extents[0], front = extents[1], right = extents[2], left = extents[3];
  OxPoint own[4] = { { -rear, -right }, { front, -right }, { front, left }, { -rear, left } };
  for (guint k = 0; k < 4; k++)
    corners[k] = ox_point_turn (own[k], cos (angle), sin (angle));
}

OxRegion *
ox_region_erode_rectangle (const OxRegion *region, double rear, double front, double right, double left, double angle)
{
  g_return_val_if_fail (rear >= 0 && front >= 0 && right >= 0 && left >= 0, NULL);

  OxPoint reflected[4];
  rectangle_corners (reflected, (const double[]){ front, rear, left, right }, angle);
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  add_swept_outlines (polygons, region, TRUE, reflected);
  g_autoptr (OxRegion) removed = ox_geos_take_union (polygons);
  return ox_region_difference (region, removed);
}

OxRegion *
ox_region_dilate_rectangle (const OxRegion *region, double rear, double front, double right, double left, double angle)
{
  g_return_val_if_fail (rear >= 0 && front >= 0 && right >= 0 && left >= 0, NULL);

  OxPoint rectangle[4];
  rectangle_corners (rectangle, (const double[]){ rear, front, right, left }, angle);
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  add_swept_outlines (polygons, region, FALSE, rectangle);
  ox_geos_add_parts (polygons, region);
  return ox_geos_take_union (polygons);
}
