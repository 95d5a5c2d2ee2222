/* Oxturn: geometry/point - points and boxes on the floor, in metres.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * x to the right, y up, angles counter-clockwise from +x. Stored coordinates lie on the grid OX_GRID within +/-OX_COORD_MAX.
 */
#pragma once
#include <glib.h>
#include <math.h>
G_BEGIN_DECLS

#define OX_GRID 0.0001      /* m */
#define OX_COORD_MAX 10000.0 /* m */

typedef struct
{
  double x;
  double y;
} OxPoint;

typedef struct
{
  double x0, y0; /* lower left */
  double x1, y1; /* upper right; x1 < x0 when empty */
} OxBox;

#define OX_BOX_EMPTY ((OxBox) { INFINITY, INFINITY, -INFINITY, -INFINITY })

/* ox_snap: the nearest multiple of OX_GRID, as the same double every time */
static inline double
ox_snap (double v)
{
  double s = round (v * 10000.0) / 10000.0;
  return s == 0 ? 0 : s; /* no negative zero */
}

static inline OxPoint
ox_point_snap (OxPoint p)
{
  return (OxPoint) { ox_snap (p.x), ox_snap (p.y) };
}

static inline OxPoint
ox_point_add (OxPoint a, OxPoint b)
{
  return (OxPoint) { a.x + b.x, a.y + b.y };
}

static inline OxPoint
ox_point_sub (OxPoint a, OxPoint b)
{
  return (OxPoint) { a.x - b.x, a.y - b.y };
}

static inline OxPoint
ox_point_scale (OxPoint a, double k)
{
  return (OxPoint) { a.x * k, a.y * k };
}

static inline double
ox_point_dot (OxPoint a, OxPoint b)
{
  return a.x * b.x + a.y * b.y;
}

static inline double
ox_point_cross (OxPoint a, OxPoint b)
{
  return a.x * b.y - a.y * b.x;
}

static inline double
ox_point_distance (OxPoint a, OxPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

/* ox_point_turn: @p turned by the angle whose cosine and sine are given, about the origin */
static inline OxPoint
ox_point_turn (OxPoint p, double cos_a, double sin_a)
{
  return (OxPoint) { p.x * cos_a - p.y * sin_a, p.x * sin_a + p.y * cos_a };
}

static inline void
ox_box_add (OxBox *box, OxPoint p)
{
  box->x0 = MIN (box->x0, p.x);
  box->y0 = MIN (box->y0, p.y);
  box->x1 = MAX (box->x1, p.x);
  box->y1 = MAX (box->y1, p.y);
}

static inline gboolean
ox_box_is_empty (OxBox b)
{
  return b.x1 < b.x0 || b.y1 < b.y0;
}

/* ox_point_segment_distance: from @p to the nearest point of the segment @a-@b; @nearest: (out) (optional) */
double ox_point_segment_distance (OxPoint p, OxPoint a, OxPoint b, OxPoint *nearest);

/* ox_point_orient:
 * @a, @b, @c: points on the grid
 *
 * Exact for points on the grid (64-bit integers of OX_GRID steps).
 * Returns: +1 when a-b-c turns left, -1 right, 0 when they are collinear
 */
int ox_point_orient (OxPoint a, OxPoint b, OxPoint c);

/* ox_segments_cross: whether the segments share any point; exact for points on the grid */
gboolean ox_segments_cross (OxPoint a, OxPoint b, OxPoint c, OxPoint d);

G_END_DECLS
