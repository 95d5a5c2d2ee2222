/* Oxturn: geometry/region - where a label stands best.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Squares over the region are taken best first and cut in four. A square can hold no point farther from the outline
 * than its middle is, plus half its diagonal; one that promises no more than what is known already is left alone.
 */
#include "geometry/outline-private.h"
#include "geometry/region-private.h"

/* A square that promises less than this much more is not cut, as a share of the best distance so far. */
#define GAIN 0.05

/* Squares looked at before the best so far is taken. Only parts some hundred times as long as wide come so far. */
#define MAX_SQUARES 4000

typedef struct
{
  OxPoint middle;
  double half;    /* half the side, m */
  double reach;   /* distance of the middle from the outline, m; negative outside */
  double promise; /* no point of the square has a greater distance */
} Square;

/* A heap with the greatest promise at the top. */
typedef struct
{
  const OxRegion *part;
  GArray *heap; /* Square */
  guint seen;
  OxPoint best;
  double best_reach;
} Search;

static double
signed_reach (const OxRegion *part, OxPoint p)
{
  double nearest = INFINITY;
  for (guint r = 0; r < part->n_rings; r++)
    {
      const OxPoint *points = part->points + part->rings[r].start;
      guint n = part->rings[r].n;
      for (guint i = 0; i < n; i++)
        nearest = MIN (nearest, ox_point_segment_distance (p, points[i], points[i + 1 < n ? i + 1 : 0], NULL));
    }
  return ox_region_contains (part, p) ? nearest : -nearest;
}

static void
consider (Search *search, OxPoint p, double reach)
{
  if (reach <= search->best_reach)
    return;
  search->best = p;
  search->best_reach = reach;
}

static void
heap_push (GArray *heap, const Square *square)
{
  g_array_append_val (heap, *square);
  Square *at = (Square *) (gpointer) heap->data;
  guint i = heap->len - 1;
  for (; i > 0 && at[(i - 1) / 2].promise < square->promise; i = (i - 1) / 2)
    at[i] = at[(i - 1) / 2];
  at[i] = *square;
}

static Square
heap_pop (GArray *heap)
{
  Square *at = (Square *) (gpointer) heap->data;
  Square top = at[0];
  Square last = at[heap->len - 1];
  g_array_set_size (heap, heap->len - 1);
  guint i = 0;
  for (guint child = 1; child < heap->len; child = 2 * i + 1)
    {
      if (child + 1 < heap->len && at[child + 1].promise > at[child].promise)
        child++;
      if (at[child].promise <= last.promise)
        break;
      at[i] = at[child];
      i = child;
    }
  if (heap->len > 0)
    at[i] = last;
  return top;
}

static void
look_at (Search *search, OxPoint middle, double half)
{
  Square square = { middle, half, signed_reach (search->part, middle), 0 };
  square.promise = square.reach + half * G_SQRT2;
  search->seen++;
  consider (search, middle, square.reach);
  if (square.promise > search->best_reach * (1 + GAIN) && square.promise > 0)
    heap_push (search->heap, &square);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double da = *(const double *) a, db = *(const double *) b;
  return (da > db) - (da < db);
}

/* The middle of the longest cut of the horizontal at @y with the part: a point inside, however thin the part is. */
static void
consider_cut (Search *search, double y)
{
  const OxRegion *part = search->part;
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint r = 0; r < part->n_rings; r++)
    for (guint i = 0; i < part->rings[r].n; i++)
      {
        const OxPoint *points = part->points + part->rings[r].start;
        OxPoint a = points[i], b = points[(i + 1) % part->rings[r].n];
        if ((a.y > y) == (b.y > y))
          continue;
        double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
        g_array_append_val (cuts, x);
      }
  g_array_sort (cuts, compare_doubles);
  double longest = -1;
  OxPoint p = { 0, y };
  for (guint i = 0; i + 1 < cuts->len; i += 2)
    {
      double x0 = g_array_index (cuts, double, i), x1 = g_array_index (cuts, double, i + 1);
      if (x1 - x0 <= longest)
        continue;
      longest = x1 - x0;
      p.x = (x0 + x1) / 2;
    }
  consider (search, p, signed_reach (part, p));
}

static OxRegion *
largest_part (const OxRegion *region)
{
  OxRegion *largest = NULL;
  double area = 0;
  for (guint i = 0; i < region->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (region, i);
      double part_area = ox_region_area (part);
      if (largest && part_area <= area)
        continue;
      g_clear_pointer (&largest, ox_region_unref);
      largest = g_steal_pointer (&part);
      area = part_area;
    }
  return largest;
}

OxPoint
ox_region_label_point (const OxRegion *region, double *radius)
{
  g_return_val_if_fail (!ox_region_is_empty (region), ((OxPoint){ 0, 0 }));

  g_autoptr (OxRegion) part = largest_part (region);
  OxBox box = ox_region_box (part);
  OxPoint middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  g_autoptr (GArray) heap = g_array_new (FALSE, FALSE, sizeof (Square));
  Search search = { part, heap, 0, middle, -INFINITY };
  consider_cut (&search, middle.y);
  look_at (&search, middle, MAX (box.x1 - box.x0, box.y1 - box.y0) / 2);
  while (heap->len > 0 && search.seen < MAX_SQUARES)
    {
      Square square = heap_pop (heap);
      if (square.promise <= search.best_reach * (1 + GAIN))
        break;
      double half = square.half / 2;
      for (int k = 0; k < 4; k++)
        look_at (&search, ox_point_add (square.middle, (OxPoint){ k % 2 ? half : -half, k / 2 ? half : -half }), half);
    }
  if (radius)
    *radius = search.best_reach;
  return search.best;
}
