/* Oxturn: sheets/ground - the floor itself: rooms and their sides, obstacles, excluded areas, joints, stations.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/picture.h"

#define THINNEST_DOORWAY 0.08 /* m: a gap in a wall without thickness would not be seen */
#define STATION_MM 4.5

static OxStyle
side_style (OxSideKind kind)
{
  switch (kind)
    {
    case OX_SIDE_OPEN:
      return OX_STYLE_OPEN;
    case OX_SIDE_DROP:
      return OX_STYLE_DROP;
    case OX_SIDE_WALL:
    default:
      return OX_STYLE_WALL;
    }
}

/* append_run: @n sides of one kind from side @from on, in one stroke, so that their corners are mitred */
static void
append_run (const OxPicture *picture, const OxRoom *room, guint from, guint n)
{
  OxStyle style = side_style (room->sides[from].kind);
  g_autofree OxPoint *points = g_new (OxPoint, n + 1);
  for (guint i = 0; i <= n; i++)
    points[i] = room->ring->points[(from + i) % room->ring->n];
  ox_drawing_builder_polyline (picture->builder, style, points, n + 1);
}

static void
append_sides (const OxPicture *picture, const OxRoom *room)
{
  guint n = room->ring->n, first = 0;
  while (first < n && room->sides[first].kind == room->sides[(first + n - 1) % n].kind)
    first++;
  if (first == n)
    {
      /* All of one kind. The last stroke overlaps the first side, for the corner where they meet. */
      append_run (picture, room, 0, n + 1);
      return;
    }
  for (guint done = 0, run; done < n; done += run)
    {
      guint from = (first + done) % n;
      for (run = 1; done + run < n && room->sides[(from + run) % n].kind == room->sides[from].kind;)
        run++;
      append_run (picture, room, from, run);
    }
}

/* append_keep_backs: how near a body may come to the drops of a room, cut to the room */
static void
append_keep_backs (const OxPicture *picture, const OxRoom *room)
{
  guint n = room->ring->n;
  double sign = ox_ring_area (room->ring) >= 0 ? 1 : -1;
  for (guint i = 0; i < n; i++)
    {
      if (room->sides[i].kind != OX_SIDE_DROP || room->sides[i].keep_back <= 0)
        continue;
      OxPoint a = room->ring->points[i], b = room->ring->points[(i + 1) % n];
      double length = ox_point_distance (a, b), d = sign * room->sides[i].keep_back;
      OxPoint in = { -(b.y - a.y) / length * d, (b.x - a.x) / length * d };
      ox_drawing_builder_line (picture->builder, OX_STYLE_KEEP_BACK, ox_point_add (a, in), ox_point_add (b, in));
    }
}

static void
append_rooms (const OxPicture *picture)
{
  ox_picture_layer (picture, "rooms");
  for (guint i = 0; i < picture->job->n_rooms; i++)
    {
      const OxRoom *room = picture->job->rooms[i];
      ox_picture_item (picture, room->id, 0);
      ox_drawing_builder_polygon (picture->builder, OX_STYLE_ROOM, room->ring->points, room->ring->n);
    }
  ox_picture_layer (picture, "outline");
  for (guint i = 0; i < picture->job->n_rooms; i++)
    {
      ox_picture_item (picture, picture->job->rooms[i]->id, 0);
      append_sides (picture, picture->job->rooms[i]);
      append_keep_backs (picture, picture->job->rooms[i]);
    }
  for (guint i = 0; i < picture->job->n_doorways; i++)
    {
      OxDoorway gap = *picture->job->doorways[i];
      gap.depth = MAX (gap.depth, THINNEST_DOORWAY);
      g_autoptr (OxRing) ring = ox_doorway_ring (&gap);
      ox_picture_item (picture, gap.id, 0);
      ox_drawing_builder_polygon (picture->builder, OX_STYLE_DOORWAY, ring->points, ring->n);
    }
}

static OxStyle
obstacle_style (OxObstacleKind kind)
{
  switch (kind)
    {
    case OX_OBSTACLE_PIT:
      return OX_STYLE_PIT;
    case OX_OBSTACLE_MASKED:
      return OX_STYLE_MASKED;
    case OX_OBSTACLE_SOLID:
    default:
      return OX_STYLE_SOLID;
    }
}

static void
append_obstacle (const OxPicture *picture, const OxObstacle *obstacle)
{
  const OxRing *ring = obstacle->shape.ring;
  ox_picture_item (picture, obstacle->id, 0);
  ox_drawing_builder_polygon (picture->builder, obstacle_style (obstacle->kind), ring->points, ring->n);
  if (obstacle->kind != OX_OBSTACLE_PIT || obstacle->keep_back <= 0)
    return;
  g_autoptr (OxRegion) region = ox_region_new_ring (ring);
  g_autoptr (OxRegion) near = ox_region_offset (region, obstacle->keep_back, TRUE);
  ox_drawing_builder_region (picture->builder, OX_STYLE_KEEP_BACK, near);
}

static void
append_obstacles (const OxPicture *picture)
{
  const OxJob *job = picture->job;
  ox_picture_layer (picture, "excluded");
  for (guint i = 0; i < job->n_excluded; i++)
    {
      ox_picture_item (picture, job->excluded[i]->id, 0);
      ox_drawing_builder_polygon (picture->builder, OX_STYLE_EXCLUDED, job->excluded[i]->ring->points,
                                  job->excluded[i]->ring->n);
    }
  ox_picture_layer (picture, "conditions");
  for (guint i = 0; i < job->n_conditions; i++)
    {
      ox_picture_item (picture, job->conditions[i]->id, 0);
      ox_drawing_builder_polygon (picture->builder, OX_STYLE_CONDITION, job->conditions[i]->ring->points,
                                  job->conditions[i]->ring->n);
    }
  ox_picture_layer (picture, "joints");
  for (guint i = 0; i < job->n_joints; i++)
    if (job->joints[i]->n >= 2)
      {
        ox_picture_item (picture, job->joints[i]->id, 0);
        ox_drawing_builder_polyline (picture->builder, OX_STYLE_JOINT, job->joints[i]->points, job->joints[i]->n);
      }
  ox_picture_layer (picture, "obstacles");
  for (guint i = 0; i < job->n_obstacles; i++)
    append_obstacle (picture, job->obstacles[i]);
}

static void
append_station (const OxPicture *picture, const char *id, OxStationKind station, gboolean proposed, OxPoint at)
{
  OxMarkKind kind = station == OX_STATION_COLLECTOR ? OX_MARK_COLLECTOR : OX_MARK_SUPPLY;
  OxStyle style = proposed ? OX_STYLE_PROPOSED : OX_STYLE_STATION;
  ox_picture_item (picture, id, 0);
  ox_drawing_builder_mark (picture->builder, (OxMarkLook){ style, kind, 0, STATION_MM }, at);
}

static void
append_stations (const OxPicture *picture)
{
  ox_picture_layer (picture, "stations");
  for (guint i = 0; i < picture->job->n_stations; i++)
    append_station (picture, picture->job->stations[i]->id, picture->job->stations[i]->kind, FALSE,
                    picture->job->stations[i]->at);
  for (guint i = 0; picture->plan != NULL && !(picture->layers & OX_FLOOR_OWN) && i < picture->plan->n_stations; i++)
    if (picture->plan->stations[i].proposed)
      append_station (picture, picture->plan->stations[i].id, picture->plan->stations[i].kind, TRUE,
                      picture->plan->stations[i].at);
}

/* append_wraps: where a strip stops whose hose or cord has wrapped round a solid */
static void
append_wraps (const OxPicture *picture)
{
  for (guint i = 0; picture->plan != NULL && !(picture->layers & OX_FLOOR_OWN) && i < picture->plan->n_strips; i++)
    {
      const OxStrip *strip = &picture->plan->strips[i];
      if (!strip->hose_wraps && !strip->cord_wraps)
        continue;
      g_autofree char *id = g_strdup_printf ("strip-%u", strip->order);
      ox_picture_item (picture, id, 0);
      ox_drawing_builder_mark (picture->builder, (OxMarkLook){ OX_STYLE_STATION, OX_MARK_CAUTION, 0, OX_WRAP_MM }, strip->b);
    }
}

void
ox_picture_ground (const OxPicture *picture)
{
  if (picture->layers & OX_FLOOR_OUTLINE)
    append_rooms (picture);
  if (picture->layers & OX_FLOOR_OBSTACLES)
    append_obstacles (picture);
  if (picture->layers & OX_FLOOR_STATIONS)
    {
      append_stations (picture);
      append_wraps (picture);
    }
}
