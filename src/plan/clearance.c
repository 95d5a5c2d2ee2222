/* Oxturn: plan/clearance - how far a point or a straight piece of way keeps off the outline of a region.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/clearance.h"

#define MAX_CELLS 400000

typedef struct
{
  OxPoint a, b;
} Side;

struct _OxClearance
{
  double reach;
  double cell;
  OxBox box;
  guint n_x, n_y;
  Side *sides;
  guint n_sides;
  guint *starts;
  guint *items;
};

typedef void (*CellFunc) (OxClearance *clearance, guint cell, guint side);

static guint
column (const OxClearance *clearance, double x)
{
  return (guint) CLAMP (floor ((x - clearance->box.x0) / clearance->cell), 0.0, (double) clearance->n_x - 1);
}

static guint
row (const OxClearance *clearance, double y)
{
  return (guint) CLAMP (floor ((y - clearance->box.y0) / clearance->cell), 0.0, (double) clearance->n_y - 1);
}

/* Calls @func for each cell whose square, grown by the reach, the side touches. Distance from the cell's middle is a cheap upper test. */
static void
each_cell (OxClearance *clearance, guint side, CellFunc func)
{
  const Side *s = &clearance->sides[side];
  double grow = clearance->reach + clearance->cell;
  double limit = clearance->reach + clearance->cell * 1.25; /* half a diagonal and half a cell of sampling */
  guint i0 = column (clearance, MIN (s->a.x, s->b.x) - grow), i1 = column (clearance, MAX (s->a.x, s->b.x) + grow);
  guint j0 = row (clearance, MIN (s->a.y, s->b.y) - grow), j1 = row (clearance, MAX (s->a.y, s->b.y) + grow);
  for (guint j = j0; j <= j1; j++)
    for (guint i = i0; i <= i1; i++)
      {
        OxPoint middle = { clearance->box.x0 + (i + 0.5) * clearance->cell, clearance->box.y0 + (j + 0.5) * clearance->cell };
        if (ox_point_segment_distance (middle, s->a, s->b, NULL) <= limit)
          func (clearance, j * clearance->n_x + i, side);
      }
}

static void
count_cell (OxClearance *clearance, guint cell, guint side)
{
  (void) side;
  clearance->starts[cell + 2]++;
}

static void
fill_cell (OxClearance *clearance, guint cell, guint side)
{
  clearance->items[clearance->starts[cell + 1]++] = side;
}

static void
build_cells (OxClearance *clearance)
{
  guint n = clearance->n_x * clearance->n_y;
  /* starts[c + 1] serves as the fill position of cell c and ends as its end. */
  clearance->starts = g_new0 (guint, n + 2);
  for (guint s = 0; s < clearance->n_sides; s++)
    each_cell (clearance, s, count_cell);
  for (guint c = 0; c < n; c++)
    clearance->starts[c + 1] += clearance->starts[c];
  clearance->starts[n + 1] += clearance->starts[n];
  clearance->items = g_new (guint, clearance->starts[n + 1] + 1);
  for (guint s = 0; s < clearance->n_sides; s++)
    each_cell (clearance, s, fill_cell);
}

OxClearance *
ox_clearance_new (const OxRegion *region, double reach)
{
  OxClearance *clearance = g_new0 (OxClearance, 1);
  clearance->reach = reach;
  clearance->box = ox_region_box (region);
  if (ox_box_is_empty (clearance->box))
    clearance->box = (OxBox) { 0, 0, 0, 0 };
  double width = clearance->box.x1 - clearance->box.x0, height = clearance->box.y1 - clearance->box.y0;
  clearance->cell = MAX (MAX (reach, 0.25), sqrt (width * height / MAX_CELLS));
  clearance->n_x = (guint) floor (width / clearance->cell) + 1;
  clearance->n_y = (guint) floor (height / clearance->cell) + 1;
  clearance->sides = g_new (Side, region->n_points + 1);
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0; i < region->rings[r].n; i++)
      {
        const OxPoint *points = region->points + region->rings[r].start;
        clearance->sides[clearance->n_sides++] = (Side) { points[i], points[(i + 1) % region->rings[r].n] };
      }
  build_cells (clearance);
  return clearance;
}

void
ox_clearance_free (OxClearance *clearance)
{
  if (clearance == NULL)
    return;
  g_free (clearance->sides);
  g_free (clearance->starts);
  g_free (clearance->items);
  g_free (clearance);
}

double
ox_clearance_at (const OxClearance *clearance, OxPoint p, OxPoint *nearest)
{
  guint cell = row (clearance, p.y) * clearance->n_x + column (clearance, p.x);
  double best = clearance->reach;
  for (guint k = clearance->starts[cell]; k < clearance->starts[cell + 1]; k++)
    {
      const Side *s = &clearance->sides[clearance->items[k]];
      OxPoint at;
      double d = ox_point_segment_distance (p, s->a, s->b, &at);
      if (d < best)
        {
          best = d;
          if (nearest != NULL)
            *nearest = at;
        }
    }
  return best;
}

static gboolean
cross_strictly (OxPoint a, OxPoint b, OxPoint c, OxPoint d)
{
  OxPoint ab = ox_point_sub (b, a), cd = ox_point_sub (d, c);
  double c1 = ox_point_cross (ab, ox_point_sub (c, a)), c2 = ox_point_cross (ab, ox_point_sub (d, a));
  double d1 = ox_point_cross (cd, ox_point_sub (a, c)), d2 = ox_point_cross (cd, ox_point_sub (b, c));
  return ((c1 > 0) != (c2 > 0)) && ((d1 > 0) != (d2 > 0));
}

static gboolean
side_is_off (const Side *s, OxPoint a, OxPoint b, double distance)
{
  if (MIN (a.x, b.x) > MAX (s->a.x, s->b.x) + distance || MAX (a.x, b.x) < MIN (s->a.x, s->b.x) - distance
      || MIN (a.y, b.y) > MAX (s->a.y, s->b.y) + distance || MAX (a.y, b.y) < MIN (s->a.y, s->b.y) - distance)
    return TRUE;
  if (cross_strictly (a, b, s->a, s->b))
    return FALSE;
  return ox_point_segment_distance (a, s->a, s->b, NULL) >= distance
         && ox_point_segment_distance (b, s->a, s->b, NULL) >= distance
         && ox_point_segment_distance (s->a, a, b, NULL) >= distance
         && ox_point_segment_distance (s->b, a, b, NULL) >= distance;
}

/* What the way a-b must keep off: everything nearer than @distance, or the rectangle along it. */
typedef struct
{
  OxPoint a, b;
  gboolean sided;
  double distance;
  double left, right;
} Corridor;

/* Whether the side, seen along a-b, keeps out of the rectangle from @right to @left of it. */
static gboolean
side_is_out (const Side *s, const Corridor *corridor)
{
  double length = ox_point_distance (corridor->a, corridor->b);
  if (length <= 0)
    return TRUE;
  OxPoint u = ox_point_scale (ox_point_sub (corridor->b, corridor->a), 1 / length);
  OxPoint p = ox_point_sub (s->a, corridor->a), q = ox_point_sub (s->b, corridor->a);
  OxPoint c = { ox_point_dot (u, p), ox_point_cross (u, p) }, d = { ox_point_dot (u, q), ox_point_cross (u, q) };
  double lo = 0, hi = 1; /* part of the side that lies beside the way */
  double dx = d.x - c.x;
  if (fabs (dx) < 1e-12)
    {
      if (c.x < 0 || c.x > length)
        return TRUE;
    }
  else
    {
      double t0 = (0 - c.x) / dx, t1 = (length - c.x) / dx;
      lo = MAX (lo, MIN (t0, t1));
      hi = MIN (hi, MAX (t0, t1));
    }
  if (lo >= hi)
    return TRUE;
  double y0 = c.y + (d.y - c.y) * lo, y1 = c.y + (d.y - c.y) * hi;
  return MIN (y0, y1) >= corridor->left || MAX (y0, y1) <= -corridor->right;
}

static gboolean
corridor_is_clear (const OxClearance *clearance, const Corridor *corridor)
{
  OxPoint a = corridor->a, b = corridor->b;
  double length = ox_point_distance (a, b);
  guint steps = (guint) ceil (length / (clearance->cell / 2));
  guint last = G_MAXUINT;
  for (guint i = 0; i <= steps; i++)
    {
      double t = steps > 0 ? (double) i / steps : 0;
      guint cell = row (clearance, a.y + (b.y - a.y) * t) * clearance->n_x + column (clearance, a.x + (b.x - a.x) * t);
      if (cell == last)
        continue;
      last = cell;
      for (guint k = clearance->starts[cell]; k < clearance->starts[cell + 1]; k++)
        {
          const Side *side = &clearance->sides[clearance->items[k]];
          if (corridor->sided ? !side_is_out (side, corridor) : !side_is_off (side, a, b, corridor->distance))
            return FALSE;
        }
    }
  return TRUE;
}

gboolean
ox_clearance_is_over (const OxClearance *clearance, OxPoint a, OxPoint b, double distance)
{
  Corridor corridor = { a, b, FALSE, distance, 0, 0 };
  return corridor_is_clear (clearance, &corridor);
}

gboolean
ox_clearance_is_off (const OxClearance *clearance, OxPoint a, OxPoint b, double left, double right)
{
  Corridor corridor = { a, b, TRUE, 0, left, right };
  return corridor_is_clear (clearance, &corridor);
}
