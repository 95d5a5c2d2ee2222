/* Oxturn: plan/verify-bounds - does a shape lie in a region; where does a line run inside it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/verify-bounds.h"
#include "plan/verify-grid.h"

typedef struct
{
  OxPoint a, b;
} Side;

struct _OxBounds
{
  guint n;
  Side *sides;
  double x1; /* nothing of the region lies to the right of it */
  OxBoxGrid *grid;
  GArray *near; /* guint, scratch */
  GArray *xs;   /* double, scratch */
};

OxAxes
ox_axes_along (OxPoint a, OxPoint b)
{
  OxPoint d = ox_point_sub (b, a);
  double length = hypot (d.x, d.y);
  if (length <= 0)
    return (OxAxes){ a, { 1, 0 } };
  return (OxAxes){ a, { d.x / length, d.y / length } };
}

OxPoint
ox_axes_to (OxAxes axes, OxPoint p)
{
  OxPoint d = ox_point_sub (p, axes.origin);
  return (OxPoint){ ox_point_dot (axes.u, d), ox_point_cross (axes.u, d) };
}

OxPoint
ox_axes_from (OxAxes axes, OxPoint p)
{
  return ox_point_add (axes.origin, ox_point_turn (p, axes.u.x, axes.u.y));
}

OxBox
ox_axes_box (OxAxes axes, OxBox box)
{
  OxBox bounds = OX_BOX_EMPTY;
  ox_box_add (&bounds, ox_axes_from (axes, (OxPoint){ box.x0, box.y0 }));
  ox_box_add (&bounds, ox_axes_from (axes, (OxPoint){ box.x1, box.y0 }));
  ox_box_add (&bounds, ox_axes_from (axes, (OxPoint){ box.x1, box.y1 }));
  ox_box_add (&bounds, ox_axes_from (axes, (OxPoint){ box.x0, box.y1 }));
  return bounds;
}

void
ox_pieces_subtract (GArray *pieces, OxPiece cut)
{
  for (guint i = 0; i < pieces->len;)
    {
      OxPiece s = g_array_index (pieces, OxPiece, i);
      if (s.b <= cut.a || s.a >= cut.b)
        {
          i++;
          continue;
        }
      g_array_remove_index (pieces, i);
      OxPiece before = { s.a, cut.a }, after = { cut.b, s.b };
      if (before.a < before.b)
        g_array_insert_val (pieces, i++, before);
      if (after.a < after.b)
        g_array_insert_val (pieces, i++, after);
    }
}

OxBounds *
ox_bounds_new (const OxRegion *region)
{
  OxBounds *bounds = g_new0 (OxBounds, 1);
  bounds->n = region->n_points;
  bounds->sides = g_new (Side, MAX (bounds->n, 1));
  g_autofree OxBox *boxes = g_new (OxBox, MAX (bounds->n, 1));
  guint n = 0;
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0; i < region->rings[r].n; i++, n++)
      {
        const OxPoint *ring = region->points + region->rings[r].start;
        bounds->sides[n] = (Side){ ring[i], ring[(i + 1) % region->rings[r].n] };
        boxes[n] = OX_BOX_EMPTY;
        ox_box_add (&boxes[n], bounds->sides[n].a);
        ox_box_add (&boxes[n], bounds->sides[n].b);
      }
  bounds->x1 = ox_region_box (region).x1;
  bounds->grid = ox_box_grid_new (boxes, n);
  bounds->near = g_array_new (FALSE, FALSE, sizeof (guint));
  bounds->xs = g_array_new (FALSE, FALSE, sizeof (double));
  return bounds;
}

void
ox_bounds_free (OxBounds *bounds)
{
  if (bounds == NULL)
    return;
  g_free (bounds->sides);
  ox_box_grid_free (bounds->grid);
  g_array_unref (bounds->near);
  g_array_unref (bounds->xs);
  g_free (bounds);
}

/* Counts the sides that a ray to the right crosses; a side holds its lower end and not its upper one, so that a corner
 * counts once. */
gboolean
ox_bounds_holds_point (OxBounds *bounds, OxPoint p)
{
  if (bounds->n == 0 || p.x > bounds->x1)
    return FALSE;
  gboolean inside = FALSE;
  ox_box_grid_query (bounds->grid, (OxBox){ p.x, p.y, bounds->x1, p.y }, bounds->near);
  for (guint k = 0; k < bounds->near->len; k++)
    {
      Side s = bounds->sides[g_array_index (bounds->near, guint, k)];
      if ((s.a.y > p.y) == (s.b.y > p.y))
        continue;
      double x = s.a.x + (p.y - s.a.y) / (s.b.y - s.a.y) * (s.b.x - s.a.x);
      if (x > p.x)
        inside = !inside;
    }
  return inside;
}

/* Narrows @t to where a + t d lies strictly between @low and @high; FALSE when that is nowhere. */
static gboolean
clip (double a, double d, double low, double high, OxPiece *t)
{
  if (d == 0)
    return a > low && a < high;
  double t0 = (low - a) / d, t1 = (high - a) / d;
  t->a = MAX (t->a, MIN (t0, t1));
  t->b = MIN (t->b, MAX (t0, t1));
  return t->a < t->b;
}

/* Whether the segment @a-@b enters the inside of @box, and where it does so first. */
static gboolean
enters_box (OxPoint a, OxPoint b, OxBox box, OxPoint *where)
{
  OxPoint d = ox_point_sub (b, a);
  OxPiece t = { 0, 1 };
  if (!clip (a.x, d.x, box.x0, box.x1, &t) || !clip (a.y, d.y, box.y0, box.y1, &t))
    return FALSE;
  *where = ox_point_add (a, ox_point_scale (d, (t.a + t.b) / 2));
  return TRUE;
}

gboolean
ox_bounds_holds_box (OxBounds *bounds, OxAxes axes, OxBox box, OxPoint *where)
{
  ox_box_grid_query (bounds->grid, ox_axes_box (axes, box), bounds->near);
  for (guint k = 0; k < bounds->near->len; k++)
    {
      Side s = bounds->sides[g_array_index (bounds->near, guint, k)];
      OxPoint at;
      if (enters_box (ox_axes_to (axes, s.a), ox_axes_to (axes, s.b), box, &at))
        {
          *where = ox_axes_from (axes, at);
          return FALSE;
        }
    }
  *where = ox_axes_from (axes, (OxPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 });
  return ox_bounds_holds_point (bounds, *where);
}

gboolean
ox_bounds_holds_circle (OxBounds *bounds, OxPoint centre, double radius, OxPoint *where)
{
  OxBox box = { centre.x - radius, centre.y - radius, centre.x + radius, centre.y + radius };
  ox_box_grid_query (bounds->grid, box, bounds->near);
  for (guint k = 0; k < bounds->near->len; k++)
    {
      Side s = bounds->sides[g_array_index (bounds->near, guint, k)];
      if (ox_point_segment_distance (centre, s.a, s.b, where) < radius)
        return FALSE;
    }
  *where = centre;
  return ox_bounds_holds_point (bounds, centre);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

void
ox_bounds_cut (OxBounds *bounds, OxAxes axes, double y, OxPiece x, GArray *pieces)
{
  g_array_set_size (pieces, 0);
  g_array_set_size (bounds->xs, 0);
  g_array_append_val (bounds->xs, x.a);
  g_array_append_val (bounds->xs, x.b);
  ox_box_grid_query (bounds->grid, ox_axes_box (axes, (OxBox){ x.a, y, x.b, y }), bounds->near);
  for (guint k = 0; k < bounds->near->len; k++)
    {
      Side s = bounds->sides[g_array_index (bounds->near, guint, k)];
      OxPoint a = ox_axes_to (axes, s.a), b = ox_axes_to (axes, s.b);
      if ((a.y > y) == (b.y > y))
        continue;
      double at = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
      if (at > x.a && at < x.b)
        g_array_append_val (bounds->xs, at);
    }
  g_array_sort (bounds->xs, compare_doubles);
  for (guint i = 0; i + 1 < bounds->xs->len; i++)
    {
      OxPiece s = { g_array_index (bounds->xs, double, i), g_array_index (bounds->xs, double, i + 1) };
      if (s.a >= s.b || !ox_bounds_holds_point (bounds, ox_axes_from (axes, (OxPoint){ (s.a + s.b) / 2, y })))
        continue;
      OxPiece *last = pieces->len > 0 ? &g_array_index (pieces, OxPiece, pieces->len - 1) : NULL;
      if (last != NULL && last->b >= s.a)
        last->b = s.b;
      else
        g_array_append_val (pieces, s);
    }
}
