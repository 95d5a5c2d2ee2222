/* Oxturn: geometry/traverse - an outline taken as a chain of lengths and directions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/traverse.h"

GArray *
ox_traverse_points (OxPoint start, const OxLeg *legs, guint n)
{
  GArray *points = g_array_sized_new (FALSE, FALSE, sizeof (OxPoint), n + 1);
  OxPoint at = start;
  g_array_append_val (points, at);
  for (guint i = 0; i < n; i++)
    {
      double turn = legs[i].heading_deg * G_PI / 180;
      at = ox_point_add (at, (OxPoint){ legs[i].length * cos (turn), legs[i].length * sin (turn) });
      g_array_append_val (points, at);
    }
  return points;
}

void
ox_traverse_spread (GArray *points)
{
  OxPoint *p = (OxPoint *) points->data;
  double whole = ox_traverse_length (points);
  if (points->len < 2 || whole <= 0)
    return;
  OxPoint error = ox_point_sub (p[points->len - 1], p[0]);
  OxPoint last = p[0];
  double so_far = 0;
  for (guint i = 1; i < points->len; i++)
    {
      so_far += ox_point_distance (last, p[i]);
      last = p[i];
      p[i] = ox_point_sub (p[i], ox_point_scale (error, so_far / whole));
    }
}

double
ox_traverse_gap (const GArray *points)
{
  if (points->len == 0)
    return 0;
  return ox_point_distance (g_array_index (points, OxPoint, 0), g_array_index (points, OxPoint, points->len - 1));
}

double
ox_traverse_length (const GArray *points)
{
  double length = 0;
  for (guint i = 1; i < points->len; i++)
    length += ox_point_distance (g_array_index (points, OxPoint, i - 1), g_array_index (points, OxPoint, i));
  return length;
}
