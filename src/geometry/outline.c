/* Oxturn: geometry/outline - corners in a row, for rings and regions alike.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/outline-private.h"

double
ox_outline_area (const OxPoint *points, guint n)
{
  double twice = 0;
  for (guint i = 2; i < n; i++)
    twice += ox_point_cross (ox_point_sub (points[i - 1], points[0]), ox_point_sub (points[i], points[0]));
  return twice / 2;
}

double
ox_outline_perimeter (const OxPoint *points, guint n)
{
  double sum = 0;
  for (guint i = 0; i < n; i++)
    sum += ox_point_distance (points[i], points[i + 1 < n ? i + 1 : 0]);
  return sum;
}

gboolean
ox_outline_count (const OxPoint *points, guint n, OxPoint p, gboolean *inside)
{
  for (guint i = 0; i < n; i++)
    {
      OxPoint a = points[i];
      OxPoint b = points[i + 1 < n ? i + 1 : 0];
      double reach = OX_OUTLINE_TOLERANCE;
      if (p.y < MIN (a.y, b.y) - reach || p.y > MAX (a.y, b.y) + reach || p.x > MAX (a.x, b.x) + reach)
        continue;
      if (p.x >= MIN (a.x, b.x) - reach && ox_point_segment_distance (p, a, b, NULL) <= reach)
        return TRUE;
      /* Half-open in y, so that a ray through a corner crosses one of its two sides, or both, or none. */
      if ((a.y > p.y) == (b.y > p.y))
        continue;
      double side = ox_point_cross (ox_point_sub (b, a), ox_point_sub (p, a));
      if ((side > 0) == (b.y > a.y))
        *inside = !*inside;
    }
  return FALSE;
}
