/* Oxturn: plan/way - where the machine can go with the blasting off.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/way.h"
#include "plan/clearance.h"
#include "plan/places.h"
#include <stdlib.h>

#define SLACK 0.002      /* a strip may graze a wall by that much; its way must be allowed to as well */
#define NODE_OFF 0.0005  /* corners of ways stand off by this much more, so that rounding never closes a way that a strip fits */
#define ALL_NODES 300    /* up to here every corner is tried from every other; beyond, the nearest few in each direction */
#define SECTOR_NODES 8
#define MAX_EXPANDED 4000
#define TURN_STEP 0.25   /* m along a way between places where a swing is tried */
#define HAIR 1e-9        /* m of rounding, where a circle just fits */

typedef struct
{
  guint to;
  double length;
} Link;

struct _OxWays
{
  OxClearance *clearance;
  double wide, narrow; /* half widths of the corridor to the wider and the narrower side */
  double turn_radius;
  GArray *nodes;       /* OxPoint */
  OxPlaces *places;    /* the same */
  GArray **links;      /* Link, per node; NULL until first asked for */
  OxRegion *turn_area; /* where a turning point may be */
  GPtrArray *parts;    /* OxRegion: connected parts of the floor with room for the corridor */
};

/* Corners of the free floor where a way may bend: its reflex corners. */
static void
add_nodes (OxWays *ways, const OxRegion *travel)
{
  g_autoptr (OxRegion) open = ox_region_offset (travel, -(ways->wide + NODE_OFF), FALSE);
  for (guint r = 0; r < open->n_rings; r++)
    for (guint i = 0, n = open->rings[r].n; i < n; i++)
      {
        const OxPoint *points = open->points + open->rings[r].start;
        OxPoint in = ox_point_sub (points[i], points[(i + n - 1) % n]), out = ox_point_sub (points[(i + 1) % n], points[i]);
        if (ox_point_cross (in, out) < 0)
          g_array_append_val (ways->nodes, points[i]);
      }
}

OxWays *
ox_ways_new (const OxRegion *travel, const OxMachine *machine)
{
  OxWays *ways = g_new0 (OxWays, 1);
  ways->wide = MAX (machine->left, machine->right) + machine->wall_gap - SLACK;
  ways->narrow = MIN (machine->left, machine->right) + machine->wall_gap - SLACK;
  ways->turn_radius = machine->turn_radius;
  ways->clearance = ox_clearance_new (travel, MAX (ways->wide, ways->turn_radius) + 0.05);
  ways->nodes = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  add_nodes (ways, travel);
  ways->places = ox_places_new ((const OxPoint *) (const void *) ways->nodes->data, ways->nodes->len);
  ways->links = g_new0 (GArray *, ways->nodes->len + 1);
  ways->turn_area = ox_region_offset (travel, -ways->turn_radius, TRUE);
  ways->parts = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  g_autoptr (OxRegion) open = ox_region_offset (travel, -(ways->narrow - SLACK), FALSE);
  for (guint i = 0; i < open->n_parts; i++)
    g_ptr_array_add (ways->parts, ox_region_get_part (open, i));
  return ways;
}

void
ox_ways_free (OxWays *ways)
{
  if (ways == NULL)
    return;
  for (guint i = 0; i < ways->nodes->len; i++)
    g_clear_pointer (&ways->links[i], g_array_unref);
  g_free (ways->links);
  g_array_unref (ways->nodes);
  ox_places_free (ways->places);
  ox_clearance_free (ways->clearance);
  ox_region_unref (ways->turn_area);
  g_ptr_array_unref (ways->parts);
  g_free (ways);
}

static gboolean
clear_wide (OxWays *ways, OxPoint a, OxPoint b)
{
  return ox_clearance_is_over (ways->clearance, a, b, ways->wide);
}

/* First and last pieces may lie in a lane beside a wall, the narrow side of the body towards it, rolling forward or back. */
gboolean
ox_ways_is_clear (OxWays *ways, OxPoint a, OxPoint b)
{
  if (clear_wide (ways, a, b))
    return TRUE;
  if (ways->wide - ways->narrow < SLACK || !ox_clearance_is_over (ways->clearance, a, b, ways->narrow))
    return FALSE;
  return ox_clearance_is_off (ways->clearance, a, b, ways->wide, ways->narrow)
         || ox_clearance_is_off (ways->clearance, a, b, ways->narrow, ways->wide);
}

gboolean
ox_ways_can_turn (OxWays *ways, OxPoint p)
{
  return ox_clearance_at (ways->clearance, p, NULL) >= ways->turn_radius - HAIR;
}

gboolean
ox_ways_has_turns (const OxWays *ways)
{
  return !ox_region_is_empty (ways->turn_area);
}

int
ox_ways_part (const OxWays *ways, OxPoint p)
{
  for (guint i = 0; i < ways->parts->len; i++)
    if (ox_region_contains (g_ptr_array_index (ways->parts, i), p))
      return (int) i;
  return -1;
}

static int
compare_places (const void *a, const void *b)
{
  const OxPlace *p = a, *q = b;
  if (p->distance != q->distance)
    return p->distance < q->distance ? -1 : 1;
  return (p->index > q->index) - (p->index < q->index);
}

/* The nodes worth trying from @p, nearest first; (transfer full) (element-type OxPlace) */
static GArray *
near_nodes (const OxWays *ways, OxPoint p)
{
  guint n = ways->nodes->len;
  GArray *list = g_array_new (FALSE, FALSE, sizeof (OxPlace));
  if (n > ALL_NODES)
    {
      ox_places_around (ways->places, p, SECTOR_NODES, list);
      return list;
    }
  for (guint i = 0; i < n; i++)
    {
      OxPlace place = { ox_point_distance (p, g_array_index (ways->nodes, OxPoint, i)), i };
      g_array_append_val (list, place);
    }
  if (n > 1)
    qsort (list->data, n, sizeof (OxPlace), compare_places);
  return list;
}

static const GArray *
node_links (OxWays *ways, guint node)
{
  if (ways->links[node] != NULL)
    return ways->links[node];
  OxPoint p = g_array_index (ways->nodes, OxPoint, node);
  g_autoptr (GArray) near = near_nodes (ways, p);
  GArray *links = g_array_new (FALSE, FALSE, sizeof (Link));
  for (guint i = 0; i < near->len; i++)
    {
      const OxPlace *place = &g_array_index (near, OxPlace, i);
      Link link = { place->index, place->distance };
      if (place->index != node && clear_wide (ways, p, g_array_index (ways->nodes, OxPoint, place->index)))
        g_array_append_val (links, link);
    }
  ways->links[node] = links;
  return links;
}

/* One search: A* over the nodes from a to b. */
typedef struct
{
  double *cost;    /* so far, per node */
  guint *from;     /* node before, G_MAXUINT: the start */
  guint8 *closed;
  GArray *open;    /* node numbers; short lists, so the best one is looked for */
} Search;

static guint
take_best (Search *search, const OxWays *ways, OxPoint goal)
{
  guint best = 0;
  double best_cost = INFINITY;
  for (guint i = 0; i < search->open->len; i++)
    {
      guint node = g_array_index (search->open, guint, i);
      double cost = search->cost[node] + ox_point_distance (g_array_index (ways->nodes, OxPoint, node), goal);
      if (cost < best_cost)
        {
          best = i;
          best_cost = cost;
        }
    }
  guint node = g_array_index (search->open, guint, best);
  g_array_remove_index_fast (search->open, best);
  return node;
}

static void
relax (Search *search, guint node, double cost, guint from)
{
  if (search->closed[node] || cost >= search->cost[node])
    return;
  if (isinf (search->cost[node]))
    g_array_append_val (search->open, node);
  search->cost[node] = cost;
  search->from[node] = from;
}

/* Runs the search; G_MAXUINT when b cannot be reached, else the last node before it. */
static guint
search_ways (OxWays *ways, Search *search, OxPoint a, OxPoint b)
{
  g_autoptr (GArray) near = near_nodes (ways, a);
  guint best = G_MAXUINT, expanded = 0;
  double best_cost = INFINITY;
  for (guint i = 0; i < near->len; i++)
    {
      const OxPlace *place = &g_array_index (near, OxPlace, i);
      if (ox_ways_is_clear (ways, a, g_array_index (ways->nodes, OxPoint, place->index)))
        relax (search, place->index, place->distance, G_MAXUINT);
    }
  while (search->open->len > 0 && expanded++ < MAX_EXPANDED)
    {
      guint node = take_best (search, ways, b);
      OxPoint p = g_array_index (ways->nodes, OxPoint, node);
      double rest = ox_point_distance (p, b);
      if (search->cost[node] + rest >= best_cost)
        break;
      search->closed[node] = 1;
      if (ox_ways_is_clear (ways, p, b))
        {
          best = node;
          best_cost = search->cost[node] + rest;
        }
      const GArray *links = node_links (ways, node);
      for (guint i = 0; i < links->len; i++)
        {
          const Link *link = &g_array_index (links, Link, i);
          relax (search, link->to, search->cost[node] + link->length, node);
        }
    }
  return best;
}

static void
write_path (const OxWays *ways, const Search *search, OxPoint a, OxPoint b, guint last, GArray *path)
{
  g_array_set_size (path, 0);
  g_array_append_val (path, b);
  for (guint node = last; node != G_MAXUINT; node = search->from[node])
    {
      OxPoint p = ox_point_snap (g_array_index (ways->nodes, OxPoint, node));
      g_array_append_val (path, p);
    }
  g_array_append_val (path, a);
  for (guint i = 0, j = path->len - 1; i < j; i++, j--)
    {
      OxPoint swap = g_array_index (path, OxPoint, i);
      g_array_index (path, OxPoint, i) = g_array_index (path, OxPoint, j);
      g_array_index (path, OxPoint, j) = swap;
    }
}

static double
path_length (const GArray *path)
{
  double length = 0;
  for (guint i = 1; i < path->len; i++)
    length += ox_point_distance (g_array_index (path, OxPoint, i - 1), g_array_index (path, OxPoint, i));
  return length;
}

double
ox_ways_find (OxWays *ways, OxPoint a, OxPoint b, GArray *path)
{
  g_array_set_size (path, 0);
  if (ox_ways_is_clear (ways, a, b))
    {
      g_array_append_val (path, a);
      g_array_append_val (path, b);
      return ox_point_distance (a, b);
    }
  guint n = ways->nodes->len;
  g_autofree double *cost = g_new (double, n + 1);
  g_autofree guint *from = g_new (guint, n + 1);
  g_autofree guint8 *closed = g_new0 (guint8, n + 1);
  g_autoptr (GArray) open = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < n; i++)
    cost[i] = INFINITY;
  Search search = { cost, from, closed, open };
  guint last = search_ways (ways, &search, a, b);
  if (last == G_MAXUINT)
    return INFINITY;
  write_path (ways, &search, a, b, last, path);
  return path_length (path);
}

/* Keeps @turn when going there and on, in straight pieces, is shorter than what was found so far. */
static void
try_turn (OxWays *ways, OxPoint a, OxPoint b, OxPoint turn, double *best, OxPoint *best_turn)
{
  turn = ox_point_snap (turn);
  double length = ox_point_distance (a, turn) + ox_point_distance (turn, b);
  if (length < *best && ox_ways_can_turn (ways, turn) && ox_ways_is_clear (ways, a, turn) && ox_ways_is_clear (ways, turn, b))
    {
      *best = length;
      *best_turn = turn;
    }
}

/* Pushes @p off the outline until the circle fits; FALSE when it is pushed to and fro. */
static gboolean
push_off (const OxWays *ways, OxPoint *p)
{
  for (guint i = 0; i < 12; i++)
    {
      OxPoint nearest = *p;
      double d = ox_clearance_at (ways->clearance, *p, &nearest);
      if (d >= ways->turn_radius - HAIR)
        return TRUE;
      OxPoint away = ox_point_sub (*p, nearest);
      if (d < 1e-9)
        return FALSE;
      *p = ox_point_add (*p, ox_point_scale (away, (ways->turn_radius - d + 0.0005) / d));
    }
  return FALSE;
}

double
ox_ways_turn_distance (const OxWays *ways, OxPoint p)
{
  const OxRegion *area = ways->turn_area;
  OxPoint place = p;
  if (ox_region_is_empty (area))
    return INFINITY;
  if (push_off (ways, &place))
    return ox_point_distance (p, place);
  double best = INFINITY;
  for (guint r = 0; r < area->n_rings; r++)
    for (guint i = 0, n = area->rings[r].n; i < n; i++)
      {
        const OxPoint *points = area->points + area->rings[r].start;
        best = MIN (best, ox_point_segment_distance (p, points[i], points[(i + 1) % n], NULL));
      }
  return best;
}

/* Turning points near the straight way from @a to @b. */
static double
turn_nearby (OxWays *ways, OxWayEnds ends, OxPoint *turn)
{
  double best = INFINITY;
  OxPoint a = ends.from, b = ends.to, along = { cos (ends.heading), sin (ends.heading) };
  OxPoint starts[] = { { (a.x + b.x) / 2, (a.y + b.y) / 2 }, a, b };
  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      OxPoint p = starts[i];
      if (push_off (ways, &p))
        try_turn (ways, a, b, p, &best, turn);
    }
  for (guint i = 1; i <= 8 && isinf (best); i++)
    for (guint k = 0; k < 2; k++)
      {
        OxPoint p = ox_point_add (k == 0 ? a : b, ox_point_scale (along, -0.3 * i));
        if (push_off (ways, &p))
          try_turn (ways, a, b, p, &best, turn);
      }
  return best;
}

/* The corners of the floor where a swing fits that lie nearest to a and b, tried by ways with bends. */
static double
turn_far (OxWays *ways, OxPoint a, OxPoint b, GArray *path, OxPoint *turn)
{
  enum { TRIED = 40 };
  const OxRegion *area = ways->turn_area;
  g_autofree OxPlace *near = g_new (OxPlace, area->n_points + 1);
  for (guint i = 0; i < area->n_points; i++)
    near[i] = (OxPlace) { ox_point_distance (a, area->points[i]) + ox_point_distance (area->points[i], b), i };
  qsort (near, area->n_points, sizeof (OxPlace), compare_places);
  double best = INFINITY;
  g_autoptr (GArray) there = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  g_autoptr (GArray) onward = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  for (guint i = 0; i < MIN (area->n_points, TRIED) && near[i].distance < best; i++)
    {
      OxPoint p = area->points[near[i].index];
      /* The outline of the area is an arc's chord at places: a hair inside the circle fits for certain. */
      if (!push_off (ways, &p))
        continue;
      p = ox_point_snap (p);
      double length = ox_ways_find (ways, a, p, there) + ox_ways_find (ways, p, b, onward);
      if (length >= best || !ox_ways_can_turn (ways, p))
        continue;
      best = length;
      *turn = p;
      g_array_set_size (path, 0);
      g_array_append_vals (path, there->data, there->len);
      if (onward->len > 1)
        g_array_append_vals (path, &g_array_index (onward, OxPoint, 1), onward->len - 1);
    }
  return best;
}

/* The first place on the shortest way where a swing fits. */
static double
turn_on_way (OxWays *ways, OxPoint a, OxPoint b, GArray *path, OxPoint *turn)
{
  g_autoptr (GArray) direct = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  double length = ox_ways_find (ways, a, b, direct);
  for (guint i = 1; !isinf (length) && i < direct->len; i++)
    {
      OxPoint p = g_array_index (direct, OxPoint, i - 1), q = g_array_index (direct, OxPoint, i);
      guint steps = (guint) ceil (ox_point_distance (p, q) / TURN_STEP);
      for (guint k = 1; k <= steps; k++)
        {
          OxPoint place = { p.x + (q.x - p.x) * k / steps, p.y + (q.y - p.y) * k / steps };
          if (!ox_ways_can_turn (ways, ox_point_snap (place)))
            continue;
          *turn = ox_point_snap (place);
          g_array_append_vals (path, direct->data, i);
          g_array_append_val (path, *turn);
          g_array_append_vals (path, &g_array_index (direct, OxPoint, i), direct->len - i);
          return length;
        }
    }
  return INFINITY;
}

double
ox_ways_turn (OxWays *ways, OxWayEnds ends, GArray *path, OxPoint *turn)
{
  OxPoint a = ends.from, b = ends.to;
  g_array_set_size (path, 0);
  if (!ox_ways_has_turns (ways))
    return INFINITY;
  double length = turn_nearby (ways, ends, turn);
  if (!isinf (length))
    {
      OxPoint corners[3] = { a, *turn, b };
      g_array_append_vals (path, corners, 3);
      return length;
    }
  /* On the way to a place that lies farther off there may be room already. */
  length = turn_on_way (ways, a, b, path, turn);
  if (!isinf (length))
    return length;
  return turn_far (ways, a, b, path, turn);
}
