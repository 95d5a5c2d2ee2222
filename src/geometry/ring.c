/* Oxturn: geometry/ring - a closed outline of straight sides.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/ring.h"
#include "geometry/outline-private.h"

/* How far a circle and the polygon that stands for it may lie apart, m. Rounding a corner to the grid moves it by up to
 * 0.71 grid steps, which is kept apart. */
#define CIRCLE_TOLERANCE 0.001
#define CIRCLE_MIN_CORNERS 16

static OxRing *
ring_alloc (guint n)
{
  OxRing *ring = g_atomic_rc_box_alloc (sizeof (OxRing) + n * sizeof (OxPoint));
  ring->n = n;
  return ring;
}

static gboolean
same_point (OxPoint a, OxPoint b)
{
  return a.x == b.x && a.y == b.y;
}

OxRing *
ox_ring_new (const OxPoint *points, guint n)
{
  g_return_val_if_fail (points != NULL || n == 0, NULL);

  if (n > 1 && same_point (ox_point_snap (points[0]), ox_point_snap (points[n - 1])))
    n--;
  OxRing *ring = ring_alloc (n);
  for (guint i = 0; i < n; i++)
    ring->points[i] = ox_point_snap (points[i]);
  return ring;
}

OxRing *
ox_ring_ref (const OxRing *ring)
{
  return g_atomic_rc_box_acquire ((OxRing *) ring);
}

void
ox_ring_unref (const OxRing *ring)
{
  g_atomic_rc_box_release ((OxRing *) ring);
}

OxRing *
ox_ring_new_rectangle (OxPoint centre, double width, double depth, double angle)
{
  double c = cos (angle), s = sin (angle);
  OxPoint corners[4]
      = { { -width / 2, -depth / 2 }, { width / 2, -depth / 2 }, { width / 2, depth / 2 }, { -width / 2, depth / 2 } };
  for (guint i = 0; i < 4; i++)
    corners[i] = ox_point_add (centre, ox_point_turn (corners[i], c, s));
  return ox_ring_new (corners, 4);
}

/* Let q be pi / n. A polygon around a circle of radius r has its corners at r / cos q, one within it its sides' middles
 * at r cos q; both are off by at most r (1 / cos q - 1), so cos q = r / (r + tolerance) serves either. A multiple of
 * four keeps the polygon the same seen from all four sides. */
static guint
circle_corners (double radius, double tolerance)
{
  double n = ceil (G_PI / acos (radius / (radius + tolerance)));
  return MAX (CIRCLE_MIN_CORNERS, ((guint) n + 3) / 4 * 4);
}

OxRing *
ox_ring_new_circle (OxPoint centre, double radius, gboolean outside)
{
  g_return_val_if_fail (radius > 0 && radius <= OX_COORD_MAX, NULL);

  /* One grid step outward (inward), so that rounding the corners cannot cut into the circle (stick out of it). */
  double kept = outside ? radius + OX_GRID : MAX (radius - OX_GRID, radius / 2);
  guint n = circle_corners (radius, CIRCLE_TOLERANCE - 2 * OX_GRID);
  double reach = outside ? kept / cos (G_PI / n) : kept;
  OxRing *ring = ring_alloc (n);
  for (guint i = 0; i < n; i++)
    {
      double angle = 2 * G_PI * (i + 0.5) / n;
      OxPoint spoke = { reach * cos (angle), reach * sin (angle) };
      ring->points[i] = ox_point_snap (ox_point_add (centre, spoke));
    }
  return ring;
}

double
ox_ring_area (const OxRing *ring)
{
  return ox_outline_area (ring->points, ring->n);
}

double
ox_ring_perimeter (const OxRing *ring)
{
  return ox_outline_perimeter (ring->points, ring->n);
}

/* Mean of the triangles that the first corner makes with each side, weighted by their signed areas. An outline without
 * area has the mean of its corners. */
OxPoint
ox_ring_centroid (const OxRing *ring)
{
  g_return_val_if_fail (ring->n > 0, ((OxPoint){ 0, 0 }));

  OxPoint origin = ring->points[0];
  OxPoint moment = { 0, 0 };
  OxPoint sum = { 0, 0 };
  double weight = 0;
  for (guint i = 1; i < ring->n; i++)
    {
      OxPoint a = ox_point_sub (ring->points[i - 1], origin);
      OxPoint b = ox_point_sub (ring->points[i], origin);
      double cross = ox_point_cross (a, b);
      moment = ox_point_add (moment, ox_point_scale (ox_point_add (a, b), cross / 3));
      weight += cross;
      sum = ox_point_add (sum, b);
    }
  if (fabs (weight) < OX_GRID * OX_GRID)
    return ox_point_add (origin, ox_point_scale (sum, 1.0 / ring->n));
  return ox_point_add (origin, ox_point_scale (moment, 1 / weight));
}

OxBox
ox_ring_box (const OxRing *ring)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < ring->n; i++)
    ox_box_add (&box, ring->points[i]);
  return box;
}

gboolean
ox_ring_contains (const OxRing *ring, OxPoint p)
{
  gboolean inside = FALSE;
  return ox_outline_count (ring->points, ring->n, p, &inside) || inside;
}

gboolean
ox_ring_equal (const OxRing *a, const OxRing *b)
{
  if (a->n != b->n)
    return FALSE;
  for (guint i = 0; i < a->n; i++)
    if (!same_point (a->points[i], b->points[i]))
      return FALSE;
  return TRUE;
}
