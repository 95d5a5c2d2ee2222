/* Oxturn: plan/floor - the floor as the planner sees it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/floor.h"
#include <string.h>

static void
add_region (GPtrArray *list, OxRegion *region)
{
  g_ptr_array_add (list, region);
}

static GPtrArray *
region_list (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
}

static OxRegion *
union_list (GPtrArray *list)
{
  return ox_region_union_many ((const OxRegion *const *) list->pdata, list->len);
}

double
ox_floor_apron_depth (const OxMachine *machine)
{
  double depth = MAX (machine->rear, machine->front + machine->wall_gap);
  depth = MAX (depth, 2 * machine->turn_radius);
  depth = MAX (depth, MAX (machine->left, machine->right) + machine->wall_gap);
  return depth + 0.5;
}

/* A quadrilateral along the side from @a to @b, from @in metres inside to @out metres outside; the inside is on the left when @ccw. */
static OxRegion *
side_slab (OxPoint a, OxPoint b, double in, double out)
{
  OxPoint d = ox_point_sub (b, a);
  double length = hypot (d.x, d.y);
  OxPoint left = { -d.y / length, d.x / length };
  OxPoint corners[4] = {
    ox_point_add (a, ox_point_scale (left, -out)),
    ox_point_add (b, ox_point_scale (left, -out)),
    ox_point_add (b, ox_point_scale (left, in)),
    ox_point_add (a, ox_point_scale (left, in)),
  };
  return ox_region_new_points (corners, 4);
}

/* Everything within @distance of the side: a slab with round ends, so that a drop is kept off round its ends too. */
static OxRegion *
side_capsule (OxPoint a, OxPoint b, double distance)
{
  enum { STEPS = 16 };
  OxPoint corners[2 * (STEPS + 2)];
  /* Arcs circumscribed between the flanks: never nearer than @distance, and exactly that along the side. */
  double heading = atan2 (b.y - a.y, b.x - a.x), step = G_PI / STEPS;
  for (guint i = 0; i < STEPS + 2; i++)
    {
      gboolean flank = i == 0 || i == STEPS + 1;
      double reach = flank ? distance : distance / cos (step / 2);
      double angle = heading - G_PI / 2 + (flank ? (i == 0 ? 0 : G_PI) : (i - 0.5) * step);
      OxPoint off = { reach * cos (angle), reach * sin (angle) };
      corners[i] = ox_point_add (b, off);
      corners[STEPS + 2 + i] = ox_point_sub (a, off);
    }
  return ox_region_new_points (corners, G_N_ELEMENTS (corners));
}

/* Side @i of @room with the room on its left. */
static void
side_ends (const OxRoom *room, guint i, OxPoint *a, OxPoint *b)
{
  *a = room->ring->points[i];
  *b = room->ring->points[(i + 1) % room->ring->n];
  if (ox_ring_area (room->ring) < 0)
    {
      OxPoint swap = *a;
      *a = *b;
      *b = swap;
    }
}

/* The floor beyond open sides. Between two open sides that meet in an outward corner the wedge is filled by round ends. */
static void
add_aprons (const OxJob *job, GPtrArray *list)
{
  double depth = ox_floor_apron_depth (job->machine);
  for (guint r = 0; r < job->n_rooms; r++)
    {
      const OxRoom *room = job->rooms[r];
      guint n = room->ring->n;
      for (guint i = 0; i < n; i++)
        {
          OxPoint a, b;
          if (room->sides[i].kind != OX_SIDE_OPEN)
            continue;
          side_ends (room, i, &a, &b);
          add_region (list, side_slab (a, b, 0.001, depth));
          if (room->sides[(i + 1) % n].kind == OX_SIDE_OPEN)
            {
              g_autoptr (OxRing) end = ox_ring_new_circle (room->ring->points[(i + 1) % n], depth, FALSE);
              add_region (list, ox_region_new_ring (end));
            }
        }
    }
}

static void
add_keep_backs (const OxJob *job, GPtrArray *list)
{
  for (guint r = 0; r < job->n_rooms; r++)
    {
      const OxRoom *room = job->rooms[r];
      for (guint i = 0; i < room->ring->n; i++)
        {
          OxPoint a, b;
          if (room->sides[i].kind != OX_SIDE_DROP || room->sides[i].keep_back <= 0)
            continue;
          side_ends (room, i, &a, &b);
          add_region (list, side_capsule (a, b, room->sides[i].keep_back));
        }
    }
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      const OxObstacle *obstacle = job->obstacles[i];
      if (obstacle->kind == OX_OBSTACLE_MASKED)
        continue;
      OxRegion *body = ox_region_new_ring (obstacle->shape.ring);
      add_region (list, body);
      if (obstacle->kind == OX_OBSTACLE_PIT && obstacle->keep_back > 0)
        add_region (list, ox_region_offset (body, obstacle->keep_back, TRUE));
    }
}

/* What a hose goes round. */
static void
add_hose_obstacles (const OxJob *job, GPtrArray *list)
{
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      const OxObstacle *obstacle = job->obstacles[i];
      if (obstacle->kind == OX_OBSTACLE_MASKED)
        continue;
      g_autoptr (OxRegion) body = ox_region_new_ring (obstacle->shape.ring);
      g_autoptr (OxRegion) core = ox_region_offset (body, -OX_FLOOR_SPAN / 2, FALSE);
      if (obstacle->kind == OX_OBSTACLE_SOLID || !ox_region_is_empty (core))
        add_region (list, ox_region_ref (body));
    }
}

/* Walls whose far side is travel as well: a thin slab of that far side, doorways left free. */
static OxRegion *
shared_walls (const OxJob *job, const OxRegion *travel, const OxRegion *doorways)
{
  g_autoptr (GPtrArray) slabs = region_list ();
  for (guint r = 0; r < job->n_rooms; r++)
    for (guint i = 0; i < job->rooms[r]->ring->n; i++)
      {
        OxPoint a, b;
        if (job->rooms[r]->sides[i].kind == OX_SIDE_OPEN)
          continue;
        side_ends (job->rooms[r], i, &a, &b);
        add_region (slabs, side_slab (a, b, 0, OX_WALL_SLAB));
      }
  g_autoptr (OxRegion) all = union_list (slabs);
  g_autoptr (OxRegion) shared = ox_region_intersection (all, travel);
  return ox_region_difference (shared, doorways);
}

/* Floor that is walked on, and of it what a hose may lie on. */
static void
make_travel (const OxJob *job, OxFloor *floor)
{
  g_autoptr (GPtrArray) floors = region_list ();
  g_autoptr (GPtrArray) doors = region_list ();
  g_autoptr (GPtrArray) taken = region_list ();
  g_autoptr (GPtrArray) round = region_list ();
  gboolean plain = job->n_rooms == 1;
  for (guint i = 0; i < job->n_rooms; i++)
    {
      add_region (floors, ox_region_new_ring (job->rooms[i]->ring));
      for (guint s = 0; s < job->rooms[i]->ring->n; s++)
        plain = plain && job->rooms[i]->sides[s].kind != OX_SIDE_OPEN;
    }
  for (guint i = 0; i < job->n_doorways; i++)
    {
      const OxDoorway *doorway = job->doorways[i];
      /* A little deeper than the wall, so that it joins the rooms on both sides for certain. */
      double deep = doorway->depth / 2 + 0.002;
      OxRegion *door = side_slab (doorway->a, doorway->b, deep, deep);
      add_region (doors, door);
      add_region (floors, ox_region_ref (door));
    }
  add_aprons (job, floors);
  add_keep_backs (job, taken);
  add_hose_obstacles (job, round);
  g_autoptr (OxRegion) all = union_list (floors);
  if (!plain)
    {
      g_autoptr (OxRegion) doorways = union_list (doors);
      g_autoptr (OxRegion) walls = shared_walls (job, all, doorways);
      add_region (taken, ox_region_ref (walls));
      add_region (round, ox_region_ref (walls));
    }
  g_autoptr (OxRegion) less = union_list (taken);
  g_autoptr (OxRegion) less_for_hose = union_list (round);
  floor->travel = ox_region_difference (all, less);
  floor->hose = ox_region_difference (all, less_for_hose);
}

/* By their boxes, from the lowest on; ids part rooms of the same box. */
static gboolean
stands_before (const OxRoom *a, const OxRoom *b)
{
  OxBox p = ox_ring_box (a->ring), q = ox_ring_box (b->ring);
  double first[4] = { p.y0, p.x0, p.y1, p.x1 }, second[4] = { q.y0, q.x0, q.y1, q.x1 };
  for (guint k = 0; k < 4; k++)
    if (first[k] != second[k])
      return first[k] < second[k];
  return strcmp (a->id, b->id) < 0;
}

static guint *
rooms_by_place (const OxJob *job)
{
  guint *order = g_new (guint, job->n_rooms + 1);
  for (guint i = 0; i < job->n_rooms; i++)
    {
      guint at = i;
      for (; at > 0 && stands_before (job->rooms[i], job->rooms[order[at - 1]]); at--)
        order[at] = order[at - 1];
      order[at] = i;
    }
  return order;
}

OxFloor *
ox_floor_new (const OxJob *job)
{
  g_autoptr (GPtrArray) out = region_list ();
  OxFloor *floor = g_new0 (OxFloor, 1);
  for (guint i = 0; i < job->n_obstacles; i++)
    add_region (out, ox_region_new_ring (job->obstacles[i]->shape.ring));
  for (guint i = 0; i < job->n_excluded; i++)
    add_region (out, ox_region_new_ring (job->excluded[i]->ring));
  g_autoptr (OxRegion) less = union_list (out);
  floor->n_rooms = job->n_rooms;
  floor->by_place = rooms_by_place (job);
  floor->rooms = g_new0 (OxRegion *, job->n_rooms + 1);
  for (guint i = 0; i < job->n_rooms; i++)
    {
      g_autoptr (OxRegion) room = ox_region_new_ring (job->rooms[i]->ring);
      floor->rooms[i] = ox_region_difference (room, less);
    }
  floor->target = ox_region_union_many ((const OxRegion *const *) floor->rooms, job->n_rooms);
  floor->coats = ox_coats_new (job, floor->rooms, &floor->n_coats);
  make_travel (job, floor);
  return floor;
}

void
ox_floor_free (OxFloor *floor)
{
  if (floor == NULL)
    return;
  for (guint i = 0; i < floor->n_rooms; i++)
    ox_region_unref (floor->rooms[i]);
  ox_coats_free (floor->coats, floor->n_coats);
  g_free (floor->rooms);
  g_free (floor->by_place);
  ox_region_unref (floor->target);
  ox_region_unref (floor->travel);
  ox_region_unref (floor->hose);
  g_free (floor);
}
