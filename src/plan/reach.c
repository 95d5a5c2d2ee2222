/* Oxturn: plan/reach - how far it is along the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/reach.h"
#include "plan/places.h"
#include "plan/sight.h"
#include <stdlib.h>

#define TOUCH 1e-6 /* m by which a corner's sides may lie beyond a line that touches it */
#define FARTHEST_WITHIN 0.005

typedef struct
{
  guint to;
  double length;
} Link;

struct _OxReach
{
  OxRegion *floor;
  OxSight *sight;
  double limit;
  OxReachCorner *corners;
  guint n_corners;
  OxPlaces *places; /* of the corners */
  GArray **links; /* Link, per corner; NULL until first asked for */
};

typedef struct
{
  double length; /* m from the tree's root */
  guint corner;
  int before;    /* place in OxReachTree.reached of the corner that it is reached by, -1: straight from the root */
} Reached;

struct _OxReachTree
{
  OxReach *reach;
  OxPoint root;
  double limit;
  GArray *reached; /* Reached, nearest first */
};

/* The next corner of the ring in that direction that is not at the same place: unions leave sides of a few nanometres.
 */
static OxPoint
neighbour (const OxPoint *points, guint n, guint i, guint step)
{
  guint k = (i + step) % n;
  while (k != i && ox_point_distance (points[k], points[i]) < OX_GRID / 2)
    k = (k + step) % n;
  return points[k];
}

static void
add_corners (OxReach *reach)
{
  const OxRegion *region = reach->floor;
  reach->corners = g_new (OxReachCorner, region->n_points + 1);
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0, n = region->rings[r].n; i < n; i++)
      {
        const OxPoint *points = region->points + region->rings[r].start;
        OxReachCorner corner = { points[i], neighbour (points, n, i, n - 1), neighbour (points, n, i, 1) };
        OxPoint in = ox_point_sub (corner.at, corner.before), out = ox_point_sub (corner.after, corner.at);
        if (ox_point_cross (in, out) < -1e-9 * sqrt (ox_point_dot (in, in) * ox_point_dot (out, out)))
          reach->corners[reach->n_corners++] = corner;
      }
}

OxReach *
ox_reach_new (const OxRegion *floor, double limit)
{
  OxReach *reach = g_new0 (OxReach, 1);
  /* Opened by a square brush: narrow gaps close, everything else keeps its corners. */
  g_autoptr (OxRegion) shrunk = ox_region_offset (floor, -OX_REACH_GAP / 2, FALSE);
  g_autoptr (OxRegion) opened = ox_region_offset (shrunk, OX_REACH_GAP / 2, FALSE);
  reach->floor = ox_region_intersection (opened, floor);
  reach->sight = ox_sight_new (reach->floor);
  reach->limit = limit;
  add_corners (reach);
  g_autofree OxPoint *corners = g_new (OxPoint, reach->n_corners + 1);
  for (guint i = 0; i < reach->n_corners; i++)
    corners[i] = reach->corners[i].at;
  reach->places = ox_places_new (corners, reach->n_corners);
  reach->links = g_new0 (GArray *, reach->n_corners + 1);
  return reach;
}

void
ox_reach_free (OxReach *reach)
{
  if (reach == NULL)
    return;
  for (guint i = 0; i < reach->n_corners; i++)
    g_clear_pointer (&reach->links[i], g_array_unref);
  g_free (reach->links);
  g_free (reach->corners);
  ox_places_free (reach->places);
  ox_sight_free (reach->sight);
  ox_region_unref (reach->floor);
  g_free (reach);
}

const OxReachCorner *
ox_reach_corners (const OxReach *reach, guint *n)
{
  *n = reach->n_corners;
  return reach->corners;
}

gboolean
ox_reach_sees (const OxReach *reach, OxPoint a, OxPoint b)
{
  return ox_sight_is_free (reach->sight, a, b);
}

gboolean
ox_reach_holds (const OxReach *reach, OxPoint p)
{
  return ox_region_contains (reach->floor, p);
}

/* Whether the line from the corner to @p touches it without cutting: both of its sides lie on one side of the line. */
static gboolean
touches (const OxReachCorner *corner, OxPoint p)
{
  OxPoint d = ox_point_sub (p, corner->at);
  double slack = TOUCH * sqrt (ox_point_dot (d, d));
  double u = ox_point_cross (d, ox_point_sub (corner->before, corner->at));
  double v = ox_point_cross (d, ox_point_sub (corner->after, corner->at));
  return (u > -slack && v > -slack) || (u < slack && v < slack);
}

static const GArray *
corner_links (OxReach *reach, guint from)
{
  if (reach->links[from] != NULL)
    return reach->links[from];
  const OxReachCorner *a = &reach->corners[from];
  GArray *links = g_array_new (FALSE, FALSE, sizeof (Link));
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  ox_places_within (reach->places, a->at, reach->limit, near);
  for (guint k = 0; k < near->len; k++)
    {
      guint i = g_array_index (near, guint, k);
      const OxReachCorner *b = &reach->corners[i];
      Link link = { i, ox_point_distance (a->at, b->at) };
      if (i != from && touches (a, b->at) && touches (b, a->at)
          && ox_sight_is_free (reach->sight, a->at, b->at))
        g_array_append_val (links, link);
    }
  reach->links[from] = links;
  return links;
}

/* A binary heap of what was reached, least length first; entries that were bettered since are left in it and passed
 * over. */
static gboolean
is_nearer (const Reached *a, const Reached *b)
{
  return a->length < b->length || (a->length == b->length && a->corner < b->corner);
}

static void
heap_push (GArray *heap, Reached item)
{
  g_array_append_val (heap, item);
  guint i = heap->len - 1;
  while (i > 0 && is_nearer (&item, &g_array_index (heap, Reached, (i - 1) / 2)))
    {
      g_array_index (heap, Reached, i) = g_array_index (heap, Reached, (i - 1) / 2);
      i = (i - 1) / 2;
    }
  g_array_index (heap, Reached, i) = item;
}

static Reached
heap_pop (GArray *heap)
{
  Reached top = g_array_index (heap, Reached, 0), item = g_array_index (heap, Reached, heap->len - 1);
  g_array_set_size (heap, heap->len - 1);
  guint i = 0;
  for (guint child = 1; child < heap->len; child = 2 * i + 1)
    {
      if (child + 1 < heap->len
          && is_nearer (&g_array_index (heap, Reached, child + 1), &g_array_index (heap, Reached, child)))
        child++;
      if (!is_nearer (&g_array_index (heap, Reached, child), &item))
        break;
      g_array_index (heap, Reached, i) = g_array_index (heap, Reached, child);
      i = child;
    }
  if (heap->len > 0)
    g_array_index (heap, Reached, i) = item;
  return top;
}

OxReachTree *
ox_reach_tree_new (OxReach *reach, OxPoint from, double limit)
{
  OxReachTree *tree = g_new0 (OxReachTree, 1);
  tree->reach = reach;
  tree->root = from;
  tree->limit = MIN (limit, reach->limit);
  tree->reached = g_array_new (FALSE, FALSE, sizeof (Reached));
  g_autofree guint8 *done = g_new0 (guint8, reach->n_corners + 1);
  g_autoptr (GArray) heap = g_array_new (FALSE, FALSE, sizeof (Reached));
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  ox_places_within (reach->places, from, tree->limit, near);
  for (guint k = 0; k < near->len; k++)
    {
      guint i = g_array_index (near, guint, k);
      Reached item = { ox_point_distance (from, reach->corners[i].at), i, -1 };
      if (touches (&reach->corners[i], from)
          && ox_sight_is_free (reach->sight, from, reach->corners[i].at))
        heap_push (heap, item);
    }
  while (heap->len > 0)
    {
      Reached item = heap_pop (heap);
      if (done[item.corner])
        continue;
      done[item.corner] = 1;
      g_array_append_val (tree->reached, item);
      const GArray *links = corner_links (reach, item.corner);
      for (guint i = 0; i < links->len; i++)
        {
          const Link *link = &g_array_index (links, Link, i);
          Reached next = { item.length + link->length, link->to, (int) tree->reached->len - 1 };
          if (!done[next.corner] && next.length <= tree->limit)
            heap_push (heap, next);
        }
    }
  return tree;
}

void
ox_reach_tree_free (OxReachTree *tree)
{
  if (tree == NULL)
    return;
  g_array_unref (tree->reached);
  g_free (tree);
}

/* Way to @p; @via: place in OxReachTree.reached of the corner where it bends last, -1 when it does not bend. The corners are
 * looked at nearest first, so that those after the first one farther off than the best way cannot better it. */
static double
way_to (const OxReachTree *tree, OxPoint p, int *via)
{
  const OxReach *reach = tree->reach;
  double best = ox_point_distance (tree->root, p);
  *via = -1;
  if (best > tree->limit)
    return INFINITY; /* as the crow flies already */
  if (ox_sight_is_free (reach->sight, tree->root, p))
    return best;
  best = INFINITY;
  for (guint i = 0; i < tree->reached->len; i++)
    {
      const Reached *item = &g_array_index (tree->reached, Reached, i);
      const OxReachCorner *corner = &reach->corners[item->corner];
      if (item->length >= MIN (best, tree->limit))
        break;
      double length = item->length + ox_point_distance (corner->at, p);
      if (length < best && length <= tree->limit && touches (corner, p)
          && ox_sight_is_free (reach->sight, corner->at, p))
        {
          best = length;
          *via = (int) i;
        }
    }
  return best;
}

double
ox_reach_tree_distance (const OxReachTree *tree, OxPoint p)
{
  int via;
  return way_to (tree, p, &via);
}

double
ox_reach_tree_path (const OxReachTree *tree, OxPoint p, GArray *path)
{
  int via;
  double length = way_to (tree, p, &via);
  g_array_set_size (path, 0);
  if (isinf (length))
    return length;
  g_array_append_val (path, p);
  for (; via >= 0; via = g_array_index (tree->reached, Reached, via).before)
    g_array_append_val (path, tree->reach->corners[g_array_index (tree->reached, Reached, via).corner].at);
  g_array_append_val (path, tree->root);
  for (guint i = 0; i < path->len / 2; i++)
    {
      OxPoint swap = g_array_index (path, OxPoint, i);
      g_array_index (path, OxPoint, i) = g_array_index (path, OxPoint, path->len - 1 - i);
      g_array_index (path, OxPoint, path->len - 1 - i) = swap;
    }
  return length;
}

/* Whether no corner lies inside the triangle: then all of the side @a-@b is seen from @top when its ends are. Of a solid inside it the corner that
 * the outermost line of sight from @top touches has been reached, since nothing in the triangle is farther off than its ends. */
static gboolean
triangle_is_free (const OxReachTree *tree, OxPoint top, OxPoint a, OxPoint b)
{
  double turn = ox_point_cross (ox_point_sub (a, top), ox_point_sub (b, top)) < 0 ? -1 : 1;
  OxBox box = OX_BOX_EMPTY;
  ox_box_add (&box, top);
  ox_box_add (&box, a);
  ox_box_add (&box, b);
  for (guint i = 0; i < tree->reached->len; i++)
    {
      OxPoint p = tree->reach->corners[g_array_index (tree->reached, Reached, i).corner].at;
      if (p.x < box.x0 || p.x > box.x1 || p.y < box.y0 || p.y > box.y1)
        continue;
      if (turn * ox_point_cross (ox_point_sub (a, top), ox_point_sub (p, top)) > 0
          && turn * ox_point_cross (ox_point_sub (b, a), ox_point_sub (p, a)) > 0
          && turn * ox_point_cross (ox_point_sub (top, b), ox_point_sub (p, b)) > 0)
        return FALSE;
    }
  return TRUE;
}

typedef struct
{
  OxPoint at;
  int via;
  double way;
} Probe;

static OxPoint
bend_at (const OxReachTree *tree, int via)
{
  return via < 0 ? tree->root : tree->reach->corners[g_array_index (tree->reached, Reached, via).corner].at;
}

/* Raises @best to the farthest point between two probes. A way grows by no more than the step along the line, which
 * bounds what lies between; and where both bend last at one point that sees all between, the ends are farthest. */
static void
search_between (const OxReachTree *tree, const Probe *a, const Probe *b, double *best)
{
  double step = ox_point_distance (a->at, b->at);
  if (isinf (*best) || (a->way + b->way + step) / 2 <= *best + FARTHEST_WITHIN)
    return;
  OxPoint top = bend_at (tree, a->via), other = bend_at (tree, b->via);
  if (top.x == other.x && top.y == other.y && triangle_is_free (tree, top, a->at, b->at))
    return;
  Probe middle = { .at = { (a->at.x + b->at.x) / 2, (a->at.y + b->at.y) / 2 }, .via = -1 };
  middle.way = way_to (tree, middle.at, &middle.via);
  *best = MAX (*best, middle.way);
  search_between (tree, a, &middle, best);
  search_between (tree, &middle, b, best);
}

double
ox_reach_tree_farthest (const OxReachTree *tree, OxPoint a, OxPoint b)
{
  Probe first = { .at = a, .via = -1 }, last = { .at = b, .via = -1 };
  first.way = way_to (tree, a, &first.via);
  if (isinf (first.way))
    return INFINITY;
  last.way = way_to (tree, b, &last.via);
  double best = MAX (first.way, last.way);
  search_between (tree, &first, &last, &best);
  return best;
}
