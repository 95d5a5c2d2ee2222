/* Oxturn: plan/leftover - what the strips leave: edge work with its causes, and turnaround zones.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edge work is taken apart by what causes it, so that a crew can find it and an office can price it: one area for each obstacle, one for each side of
 * the room, corners, and what is too narrow for the machine or not worth a strip.
 */
#include "plan/leftover.h"

#define CRUMB_M2 0.02    /* smaller pieces of a room that belong to no wall or obstacle are reported as one area */
#define LEAST_ZONE_M2 0.5

typedef struct
{
  OxCause cause;
  GPtrArray *pieces; /* OxRegion */
} Bin;

/* Bins of one room: a bin an obstacle, a bin a side, one for crumbs; and the loose pieces, each an area of its own. */
typedef struct
{
  const OxJob *job;
  const OxRoom *room;
  guint room_index;
  Bin *obstacles;
  Bin *sides;
  Bin crumbs;
  GArray *loose; /* Bin */
  double depth;  /* m off a side or obstacle that its edge work reaches */
  const OxRegion *limit;
} Sorting;

static GPtrArray *
region_list (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
}

/* m2 of target under a strip. One that is laid lies in it; one that was kept may reach beyond a target that shrank since. */
static double
gross_area (const OxFloor *floor, const OxPlan *plan, guint i)
{
  const OxStrip *strip = &plan->strips[i];
  double blast_length = plan->job->machine->blast_length;
  if (i >= plan->n_kept)
    return strip->width * (ox_strip_length (strip) + blast_length);
  g_autoptr (OxRegion) whole = ox_strips_covered (strip, 1, (OxStripsOf){ -1, 0, -1 }, blast_length);
  g_autoptr (OxRegion) within = ox_region_intersection (whole, floor->target);
  return ox_region_area (within);
}

/* What the strips of one coat cover, within the target. */
static OxRegion *
covered_by_coat (const OxFloor *floor, const OxPlan *plan, guint coat, OxBlasted *sums)
{
  for (guint i = 0; i < plan->n_strips; i++)
    if (plan->strips[i].coat == coat)
      sums->gross_m2 += gross_area (floor, plan, i);
  g_autoptr (OxRegion) all = ox_strips_covered (plan->strips, plan->n_strips, (OxStripsOf){ -1, coat, -1 }, plan->job->machine->blast_length);
  OxRegion *within = ox_region_intersection (all, floor->target);
  sums->covered_m2 += ox_region_area (within);
  return within;
}

OxRegion *
ox_leftover_blasted (const OxFloor *floor, const OxPlan *plan, OxBlasted *sums)
{
  *sums = (OxBlasted){ 0 };
  OxRegion *blasted = covered_by_coat (floor, plan, 1, sums);
  for (guint k = 2; k <= ox_coats_most (floor->coats, floor->n_coats); k++)
    {
      g_autoptr (OxRegion) covered = covered_by_coat (floor, plan, k, sums);
      g_autoptr (OxRegion) asking = ox_coats_floor (floor->coats, floor->n_coats, k);
      g_autoptr (OxRegion) missed = ox_region_difference (asking, covered);
      OxRegion *left = ox_region_difference (blasted, missed);
      ox_region_unref (blasted);
      blasted = left;
    }
  return blasted;
}

static gboolean
boxes_meet (OxBox a, OxBox b, double grow)
{
  return a.x0 <= b.x1 + grow && b.x0 <= a.x1 + grow && a.y0 <= b.y1 + grow && b.y0 <= a.y1 + grow;
}

/* Moves what of @rest lies in @area into @bin. */
static void
take (OxRegion **rest, const OxRegion *area, Bin *bin)
{
  g_autoptr (OxRegion) piece = ox_region_intersection (*rest, area);
  if (ox_region_is_empty (piece))
    return;
  OxRegion *left = ox_region_difference (*rest, area);
  ox_region_unref (*rest);
  *rest = left;
  g_ptr_array_add (bin->pieces, g_steal_pointer (&piece));
}

static void
take_obstacles (Sorting *sorting, OxRegion **rest)
{
  for (guint i = 0; i < sorting->job->n_obstacles && !ox_region_is_empty (*rest); i++)
    {
      const OxObstacle *obstacle = sorting->job->obstacles[i];
      double depth = sorting->depth + (obstacle->kind == OX_OBSTACLE_PIT ? obstacle->keep_back : 0);
      if (!boxes_meet (ox_region_box (*rest), ox_ring_box (obstacle->shape.ring), depth))
        continue;
      g_autoptr (OxRegion) body = ox_region_new_ring (obstacle->shape.ring);
      g_autoptr (OxRegion) around = ox_region_offset (body, depth, FALSE);
      take (rest, around, &sorting->obstacles[i]);
    }
}

static void
take_sides (Sorting *sorting, OxRegion **rest)
{
  const OxRing *ring = sorting->room->ring;
  double turn = ox_ring_area (ring) < 0 ? -1 : 1;
  for (guint i = 0; i < ring->n && !ox_region_is_empty (*rest); i++)
    {
      OxPoint a = ring->points[i], b = ring->points[(i + 1) % ring->n];
      double length = ox_point_distance (a, b);
      double depth = sorting->depth + (sorting->room->sides[i].kind == OX_SIDE_DROP ? sorting->room->sides[i].keep_back : 0);
      OxBox box = OX_BOX_EMPTY;
      ox_box_add (&box, a);
      ox_box_add (&box, b);
      if (!boxes_meet (ox_region_box (*rest), box, depth))
        continue;
      OxPoint in = { -(b.y - a.y) / length * depth * turn, (b.x - a.x) / length * depth * turn };
      OxPoint corners[4] = { a, b, ox_point_add (b, in), ox_point_add (a, in) };
      g_autoptr (OxRegion) band = ox_region_new_points (corners, 4);
      take (rest, band, &sorting->sides[i]);
    }
}

static gboolean
near_corner (const Sorting *sorting, const OxRegion *piece)
{
  const OxRing *ring = sorting->room->ring;
  const OxMachine *m = sorting->job->machine;
  OxBox box = ox_region_box (piece);
  double reach = MAX (m->front + m->wall_gap, m->left + m->wall_gap) + sorting->depth;
  for (guint i = 0; i < ring->n; i++)
    {
      OxBox corner = { ring->points[i].x, ring->points[i].y, ring->points[i].x, ring->points[i].y };
      if (boxes_meet (box, corner, reach))
        return box.x1 - box.x0 < 3 * reach && box.y1 - box.y0 < 3 * reach;
    }
  return FALSE;
}

static OxCause
loose_cause (const Sorting *sorting, const OxRegion *piece)
{
  if (near_corner (sorting, piece))
    return OX_CAUSE_CORNER;
  g_autoptr (OxRegion) reachable = ox_region_intersection (piece, sorting->limit);
  return ox_region_area (reachable) < ox_region_area (piece) / 2 ? OX_CAUSE_NARROW : OX_CAUSE_REACH;
}

static void
sort_part (Sorting *sorting, OxRegion *part)
{
  OxRegion *rest = part;
  take_obstacles (sorting, &rest);
  take_sides (sorting, &rest);
  for (guint i = 0; i < rest->n_parts; i++)
    {
      OxRegion *piece = ox_region_get_part (rest, i);
      Bin bin = { OX_CAUSE_REACH, NULL };
      if (ox_region_area (piece) < CRUMB_M2)
        {
          g_ptr_array_add (sorting->crumbs.pieces, piece);
          continue;
        }
      bin.cause = loose_cause (sorting, piece);
      bin.pieces = region_list ();
      g_ptr_array_add (bin.pieces, piece);
      g_array_append_val (sorting->loose, bin);
    }
  ox_region_unref (rest);
}

/* Length of a thin area: of a rectangle L by d with this outline and area; half the outline for a closed ring. */
static double
thin_length (const OxRegion *region)
{
  double sum = 0;
  for (guint i = 0; i < region->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (region, i);
      double half = ox_region_perimeter (part) / 2, area = ox_region_area (part);
      double root = half * half - 4 * area;
      sum += part->n_rings > 1 || root < 0 ? half : (half + sqrt (root)) / 2;
    }
  return sum;
}

static void
add_edge (GArray *edges, const Sorting *sorting, Bin *bin)
{
  if (bin->pieces->len > 0)
    {
      OxEdge edge = { NULL, sorting->room_index, bin->cause, 0, 0, NULL, 0 };
      edge.id = g_strdup_printf ("E%u", edges->len + 1);
      edge.region = ox_region_union_many ((const OxRegion *const *) bin->pieces->pdata, bin->pieces->len);
      edge.area = ox_region_area (edge.region);
      edge.length = thin_length (edge.region);
      g_array_append_val (edges, edge);
    }
  g_ptr_array_unref (bin->pieces);
}

static OxCause
side_cause (const OxSide *side)
{
  switch (side->kind)
    {
    case OX_SIDE_DROP:
      return OX_CAUSE_DROP;
    case OX_SIDE_OPEN:
      return OX_CAUSE_REACH;
    case OX_SIDE_WALL:
    default:
      return OX_CAUSE_WALL;
    }
}

static void
open_bins (Sorting *sorting)
{
  sorting->obstacles = g_new0 (Bin, sorting->job->n_obstacles + 1);
  for (guint i = 0; i < sorting->job->n_obstacles; i++)
    sorting->obstacles[i] = (Bin) { sorting->job->obstacles[i]->kind == OX_OBSTACLE_PIT ? OX_CAUSE_DROP : OX_CAUSE_OBSTACLE, region_list () };
  sorting->sides = g_new0 (Bin, sorting->room->ring->n + 1);
  for (guint i = 0; i < sorting->room->ring->n; i++)
    sorting->sides[i] = (Bin) { side_cause (&sorting->room->sides[i]), region_list () };
  sorting->crumbs = (Bin) { OX_CAUSE_REACH, region_list () };
  sorting->loose = g_array_new (FALSE, FALSE, sizeof (Bin));
}

static void
close_bins (Sorting *sorting, GArray *edges)
{
  for (guint i = 0; i < sorting->room->ring->n; i++)
    add_edge (edges, sorting, &sorting->sides[i]);
  for (guint i = 0; i < sorting->job->n_obstacles; i++)
    add_edge (edges, sorting, &sorting->obstacles[i]);
  for (guint i = 0; i < sorting->loose->len; i++)
    add_edge (edges, sorting, &g_array_index (sorting->loose, Bin, i));
  add_edge (edges, sorting, &sorting->crumbs);
  g_free (sorting->obstacles);
  g_free (sorting->sides);
  g_array_unref (sorting->loose);
}

void
ox_leftover_edges (const OxFloor *floor, const OxRegion *blasted, const OxRegion *limit, OxPlan *plan)
{
  const OxMachine *m = plan->job->machine;
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (OxEdge));
  for (guint k = 0; k < floor->n_rooms; k++)
    {
      guint r = floor->by_place[k];
      g_autoptr (OxRegion) left = ox_region_difference (floor->rooms[r], blasted);
      Sorting sorting = { .job = plan->job, .room = plan->job->rooms[r], .room_index = r, .limit = limit };
      /* What a strip beside a wall leaves, and a little more, so that ragged ends do not become areas of their own. */
      sorting.depth = MAX (m->left, m->right) + m->wall_gap - m->blast_width / 2 + 0.06;
      open_bins (&sorting);
      for (guint i = 0; i < left->n_parts; i++)
        sort_part (&sorting, ox_region_get_part (left, i));
      close_bins (&sorting, edges);
    }
  plan->n_edges = edges->len;
  plan->edges = (OxEdge *) (void *) g_array_free (g_steal_pointer (&edges), FALSE);
}

/* Union of what the strips of one kind in a room's coat cover. */
static OxRegion *
covered_by (const OxPlan *plan, const OxCoat *coat, OxStripKind kind)
{
  const OxStripsOf of = { (int) coat->room, coat->coat, (int) kind };
  return ox_strips_covered (plan->strips, plan->n_strips, of, plan->job->machine->blast_length);
}

static void
add_zones (const OxPlan *plan, const OxCoat *coat, GArray *zones)
{
  g_autoptr (OxRegion) crosswise = covered_by (plan, coat, OX_STRIP_CROSSWISE);
  g_autoptr (OxRegion) mains = covered_by (plan, coat, OX_STRIP_MAIN);
  g_autoptr (OxRegion) within = ox_region_intersection (crosswise, coat->target);
  g_autoptr (OxRegion) rest = ox_region_difference (within, mains);
  /* A single strip along a wall is no zone: take away what is narrower than two lanes, then grow back. */
  double off = plan->job->machine->blast_width * 0.6;
  g_autoptr (OxRegion) core = ox_region_offset (rest, -off, FALSE);
  for (guint i = 0; i < core->n_parts; i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (core, i);
      g_autoptr (OxRegion) grown = ox_region_offset (part, off, FALSE);
      OxZone zone = { NULL, coat->room, coat->coat, 0, ox_region_intersection (grown, rest) };
      zone.area = ox_region_area (zone.region);
      if (zone.area < LEAST_ZONE_M2)
        {
          ox_region_unref (zone.region);
          continue;
        }
      zone.id = g_strdup_printf ("Z%u", zones->len + 1);
      g_array_append_val (zones, zone);
    }
}

void
ox_leftover_zones (const OxFloor *floor, OxPlan *plan)
{
  g_autoptr (GArray) zones = g_array_new (FALSE, FALSE, sizeof (OxZone));
  for (guint k = 0; k < floor->n_rooms; k++)
    for (guint i = 0; i < floor->n_coats; i++)
      if (floor->coats[i].room == floor->by_place[k])
        add_zones (plan, &floor->coats[i], zones);
  plan->n_zones = zones->len;
  plan->zones = (OxZone *) (void *) g_array_free (g_steal_pointer (&zones), FALSE);
}
