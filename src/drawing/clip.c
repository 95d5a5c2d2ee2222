/* Oxturn: drawing/clip - outlines and lines cut to a box.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/clip.h"

/* inside_by: how far @p lies inside the @side of the box: right of the left one, above the lower one and so on */
static double
inside_by (OxPoint p, OxBox box, int side)
{
  switch (side)
    {
    case 0:
      return p.x - box.x0;
    case 1:
      return box.x1 - p.x;
    case 2:
      return p.y - box.y0;
    default:
      return box.y1 - p.y;
    }
}

void
ox_clip_ring (GArray *out, const OxPoint *points, guint n, OxBox box)
{
  g_autoptr (GArray) from = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  g_array_set_size (out, 0);
  g_array_append_vals (out, points, n);
  for (int side = 0; side < 4; side++)
    {
      g_array_set_size (from, 0);
      g_array_append_vals (from, out->data, out->len);
      g_array_set_size (out, 0);
      for (guint i = 0; i < from->len; i++)
        {
          OxPoint p = g_array_index (from, OxPoint, i), q = g_array_index (from, OxPoint, (i + 1) % from->len);
          double at_p = inside_by (p, box, side), at_q = inside_by (q, box, side);
          if (at_p >= 0)
            g_array_append_val (out, p);
          if ((at_p < 0) == (at_q < 0))
            continue;
          OxPoint cut = ox_point_add (p, ox_point_scale (ox_point_sub (q, p), at_p / (at_p - at_q)));
          g_array_append_val (out, cut);
        }
    }
  if (out->len < 3)
    g_array_set_size (out, 0);
}

gboolean
ox_clip_line (OxPoint *a, OxPoint *b, OxBox box)
{
  double from = 0, to = 1;
  for (int side = 0; side < 4; side++)
    {
      double at_a = inside_by (*a, box, side), at_b = inside_by (*b, box, side);
      if (at_a < 0 && at_b < 0)
        return FALSE;
      if (at_a < 0)
        from = MAX (from, at_a / (at_a - at_b));
      else if (at_b < 0)
        to = MIN (to, at_a / (at_a - at_b));
    }
  if (from > to)
    return FALSE;
  OxPoint start = *a, along = ox_point_sub (*b, *a);
  if (to < 1)
    *b = ox_point_add (start, ox_point_scale (along, to));
  if (from > 0)
    *a = ox_point_add (start, ox_point_scale (along, from));
  return TRUE;
}
