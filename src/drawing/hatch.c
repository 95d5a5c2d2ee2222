/* Oxturn: drawing/hatch - the lines of a hatch, cut to an area.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In a frame turned by the angle of the hatch all lines are level, line k at y = k * spacing. Each side of the outline
 * gives one crossing with every line between its ends; sorted by line and place they pair up to what lies inside.
 */
#include "drawing/hatch.h"

typedef struct
{
  gint64 line;
  double x;
} Crossing;

static int
compare_crossings (gconstpointer a, gconstpointer b)
{
  const Crossing *p = a, *q = b;
  if (p->line != q->line)
    return p->line < q->line ? -1 : 1;
  return (p->x > q->x) - (p->x < q->x);
}

typedef struct
{
  double cos_a, sin_a, spacing;
  double low, high; /* lines of interest, in multiples of the spacing */
  GArray *crossings;
} Scan;

static void
scan_side (Scan *scan, OxPoint p, OxPoint q)
{
  p = ox_point_turn (p, scan->cos_a, -scan->sin_a);
  q = ox_point_turn (q, scan->cos_a, -scan->sin_a);
  if (p.y > q.y)
    {
      OxPoint swap = p;
      p = q;
      q = swap;
    }
  /* Half open, so that a corner on a line counts once for the two sides that meet there. */
  double from = MAX (ceil (p.y / scan->spacing), scan->low);
  double to = MIN (ceil (q.y / scan->spacing) - 1, scan->high);
  for (double k = from; k <= to; k++)
    {
      double t = (k * scan->spacing - p.y) / (q.y - p.y);
      Crossing crossing = { (gint64) k, p.x + t * (q.x - p.x) };
      g_array_append_val (scan->crossings, crossing);
    }
}

static void
limit_lines (Scan *scan, OxBox within)
{
  OxBox turned = OX_BOX_EMPTY;
  const OxPoint corners[4]
      = { { within.x0, within.y0 }, { within.x1, within.y0 }, { within.x1, within.y1 }, { within.x0, within.y1 } };
  for (int i = 0; i < 4; i++)
    ox_box_add (&turned, ox_point_turn (corners[i], scan->cos_a, -scan->sin_a));
  scan->low = floor (turned.y0 / scan->spacing);
  scan->high = ceil (turned.y1 / scan->spacing);
}

void
ox_hatch_append (GArray *out, const OxDrawing *drawing, const OxElement *element, const OxHatchGrid *grid)
{
  g_return_if_fail (element->kind == OX_ELEMENT_PATH && grid->spacing > 0);
  g_autoptr (GArray) crossings = g_array_new (FALSE, FALSE, sizeof (Crossing));
  Scan scan = { cos (grid->angle), sin (grid->angle), grid->spacing, 0, 0, crossings };
  limit_lines (&scan, grid->within);
  for (guint t = 0; t < element->path.n_traces; t++)
    {
      const OxTrace *trace = &drawing->traces[element->path.first_trace + t];
      const OxPoint *points = drawing->points + trace->start;
      for (guint i = 0; i < trace->n; i++)
        scan_side (&scan, points[i], points[(i + 1) % trace->n]);
    }
  g_array_sort (crossings, compare_crossings);
  for (guint i = 0; i + 1 < crossings->len; i += 2)
    {
      const Crossing *a = &g_array_index (crossings, Crossing, i), *b = a + 1;
      double y = (double) a->line * grid->spacing;
      OxPoint ends[2] = { ox_point_turn ((OxPoint){ a->x, y }, scan.cos_a, scan.sin_a),
                          ox_point_turn ((OxPoint){ b->x, y }, scan.cos_a, scan.sin_a) };
      g_array_append_vals (out, ends, 2);
    }
}
