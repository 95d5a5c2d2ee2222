/* Oxturn: geometry/point - points and boxes on the floor, in metres.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/point.h"

double
ox_point_segment_distance (OxPoint p, OxPoint a, OxPoint b, OxPoint *nearest)
{
  OxPoint along = ox_point_sub (b, a);
  double length2 = ox_point_dot (along, along);
  double t = length2 > 0 ? CLAMP (ox_point_dot (ox_point_sub (p, a), along) / length2, 0.0, 1.0) : 0;
  /* From the nearer end, so that t = 1 gives @b to the last bit. */
  OxPoint at = t < 0.5 ? ox_point_add (a, ox_point_scale (along, t)) : ox_point_sub (b, ox_point_scale (along, 1 - t));
  if (nearest)
    *nearest = at;
  return ox_point_distance (p, at);
}

static gint64
grid_steps (double v)
{
  return (gint64) llround (v * 10000.0);
}

/* Differences are at most 2e8 steps, products 4e16 and their difference 8e16: far from the end of 64 bits. */
int
ox_point_orient (OxPoint a, OxPoint b, OxPoint c)
{
  gint64 ax = grid_steps (a.x), ay = grid_steps (a.y);
  gint64 turn = (grid_steps (b.x) - ax) * (grid_steps (c.y) - ay) - (grid_steps (b.y) - ay) * (grid_steps (c.x) - ax);
  return (turn > 0) - (turn < 0);
}

/* @p is known to be collinear with @a-@b */
static gboolean
in_span (OxPoint p, OxPoint a, OxPoint b)
{
  return p.x >= MIN (a.x, b.x) && p.x <= MAX (a.x, b.x) && p.y >= MIN (a.y, b.y) && p.y <= MAX (a.y, b.y);
}

gboolean
ox_segments_cross (OxPoint a, OxPoint b, OxPoint c, OxPoint d)
{
  int c_side = ox_point_orient (a, b, c);
  int d_side = ox_point_orient (a, b, d);
  int a_side = ox_point_orient (c, d, a);
  int b_side = ox_point_orient (c, d, b);
  if (c_side * d_side < 0 && a_side * b_side < 0)
    return TRUE;
  return (c_side == 0 && in_span (c, a, b)) || (d_side == 0 && in_span (d, a, b)) || (a_side == 0 && in_span (a, c, d))
         || (b_side == 0 && in_span (b, c, d));
}
