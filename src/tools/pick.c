/* Oxturn: tools/pick - what lies under a point, and the handles of an item.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/pick.h"

#include "job/edit.h"

static gboolean
in_grown_box (OxBox box, OxPoint at, double radius)
{
  return at.x >= box.x0 - radius && at.x <= box.x1 + radius && at.y >= box.y0 - radius && at.y <= box.y1 + radius;
}

static gboolean
near_line (const OxPoint *points, guint n, gboolean closed, OxPoint at, double radius)
{
  for (guint i = 0; i + (closed ? 0 : 1) < n; i++)
    if (ox_point_segment_distance (at, points[i], points[(i + 1) % n], NULL) <= radius)
      return TRUE;
  return FALSE;
}

static gboolean
hits_ring (const OxRing *ring, OxPoint at, double radius)
{
  return in_grown_box (ox_ring_box (ring), at, radius)
         && (ox_ring_contains (ring, at) || near_line (ring->points, ring->n, TRUE, at, radius));
}

static const char *
pick_thin (const OxJob *job, OxPoint at, double radius)
{
  for (guint i = job->n_stations; i-- > 0;)
    if (ox_point_distance (job->stations[i]->at, at) <= 1.5 * radius)
      return job->stations[i]->id;
  for (guint i = job->n_doorways; i-- > 0;)
    {
      const OxDoorway *doorway = job->doorways[i];
      double reach = MAX (radius, doorway->depth / 2);

      if (ox_point_segment_distance (at, doorway->a, doorway->b, NULL) <= reach)
        return doorway->id;
    }
  return NULL;
}

static gboolean
is_out_of_hand (const OxTracedPlan *traced)
{
  return traced->locked || traced->hidden;
}

static const char *
pick_traced (const OxJob *job, OxPoint at, double radius)
{
  for (guint i = job->n_traced; i-- > 0;)
    {
      g_autoptr (OxRing) ring = ox_traced_plan_ring (job->traced[i]);

      if (!is_out_of_hand (job->traced[i]) && hits_ring (ring, at, radius / 2))
        return job->traced[i]->id;
    }
  return NULL;
}

const char *
ox_pick_item (const OxJob *job, OxPoint at, double radius)
{
  const char *thin = pick_thin (job, at, radius);

  if (thin != NULL)
    return thin;
  for (guint i = job->n_obstacles; i-- > 0;)
    if (hits_ring (job->obstacles[i]->shape.ring, at, radius / 2))
      return job->obstacles[i]->id;
  for (guint i = job->n_joints; i-- > 0;)
    if (near_line (job->joints[i]->points, job->joints[i]->n, FALSE, at, radius))
      return job->joints[i]->id;
  for (guint i = job->n_excluded; i-- > 0;)
    if (hits_ring (job->excluded[i]->ring, at, radius / 2))
      return job->excluded[i]->id;
  for (guint i = job->n_conditions; i-- > 0;)
    if (hits_ring (job->conditions[i]->ring, at, radius / 2))
      return job->conditions[i]->id;
  for (guint i = job->n_rooms; i-- > 0;)
    if (hits_ring (job->rooms[i]->ring, at, radius))
      return job->rooms[i]->id;
  return pick_traced (job, at, radius);
}

int
ox_pick_side (const OxRoom *room, OxPoint at, double radius)
{
  double best = radius;
  int found = -1;

  for (guint i = 0; i < room->ring->n; i++)
    {
      OxPoint b = room->ring->points[(i + 1) % room->ring->n];
      double d = ox_point_segment_distance (at, room->ring->points[i], b, NULL);

      if (d < best)
        {
          best = d;
          found = (int) i;
        }
    }
  return found;
}

static gboolean
outline_in_box (const OxJob *job, const char *id, OxBox box)
{
  g_autoptr (GArray) points = ox_pick_outline (job, id);

  for (guint i = 0; i < points->len; i++)
    if (!in_grown_box (box, g_array_index (points, OxPoint, i), 0))
      return FALSE;
  return points->len > 0;
}

#define ADD_IN_BOX(ids, job, box, items, n)                                                                            \
  for (guint i_ = 0; i_ < (n); i_++)                                                                                   \
    if (outline_in_box ((job), (items)[i_]->id, (box)))                                                                \
  g_strv_builder_add ((ids), (items)[i_]->id)

char **
ox_pick_in_box (const OxJob *job, OxBox box)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();

  ADD_IN_BOX (ids, job, box, job->rooms, job->n_rooms);
  ADD_IN_BOX (ids, job, box, job->obstacles, job->n_obstacles);
  ADD_IN_BOX (ids, job, box, job->excluded, job->n_excluded);
  ADD_IN_BOX (ids, job, box, job->doorways, job->n_doorways);
  ADD_IN_BOX (ids, job, box, job->joints, job->n_joints);
  ADD_IN_BOX (ids, job, box, job->stations, job->n_stations);
  ADD_IN_BOX (ids, job, box, job->conditions, job->n_conditions);
  for (guint i = 0; i < job->n_traced; i++)
    if (!is_out_of_hand (job->traced[i]) && outline_in_box (job, job->traced[i]->id, box))
      g_strv_builder_add (ids, job->traced[i]->id);
  return g_strv_builder_end (ids);
}

GArray *
ox_pick_outline (const OxJob *job, const char *id)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  g_autoptr (OxRing) made = NULL;
  const OxRing *ring = NULL;
  guint i = 0;

  switch (ox_job_find (job, id, &i))
    {
    case OX_ITEM_ROOM:
      ring = job->rooms[i]->ring;
      break;
    case OX_ITEM_OBSTACLE:
      ring = job->obstacles[i]->shape.ring;
      break;
    case OX_ITEM_EXCLUDED:
      ring = job->excluded[i]->ring;
      break;
    case OX_ITEM_CONDITION:
      ring = job->conditions[i]->ring;
      break;
    case OX_ITEM_DOORWAY:
      ring = made = ox_doorway_ring (job->doorways[i]);
      break;
    case OX_ITEM_TRACED:
      ring = made = ox_traced_plan_ring (job->traced[i]);
      break;
    case OX_ITEM_JOINT:
      g_array_append_vals (points, job->joints[i]->points, job->joints[i]->n);
      break;
    case OX_ITEM_STATION:
      g_array_append_val (points, job->stations[i]->at);
      break;
    case OX_ITEM_NONE:
      break;
    }
  if (ring != NULL)
    g_array_append_vals (points, ring->points, ring->n);
  return points;
}

/* --- Handles --- */

static void
add_round_handles (GArray *points, const OxShape *shape)
{
  for (int i = 0; i < 4; i++)
    {
      OxPoint p
          = { shape->centre.x + shape->radius * cos (i * G_PI_2), shape->centre.y + shape->radius * sin (i * G_PI_2) };

      g_array_append_val (points, p);
    }
}

GArray *
ox_handles (const OxJob *job, const char *id)
{
  GArray *points = NULL;
  guint i = 0;
  OxItemKind kind = ox_job_find (job, id, &i);

  if (kind == OX_ITEM_ROOM || kind == OX_ITEM_EXCLUDED || kind == OX_ITEM_CONDITION)
    return ox_pick_outline (job, id);
  if (kind == OX_ITEM_OBSTACLE && job->obstacles[i]->shape.kind != OX_SHAPE_CIRCLE)
    return ox_pick_outline (job, id);
  points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  if (kind == OX_ITEM_OBSTACLE)
    add_round_handles (points, &job->obstacles[i]->shape);
  if (kind == OX_ITEM_DOORWAY)
    {
      g_array_append_val (points, job->doorways[i]->a);
      g_array_append_val (points, job->doorways[i]->b);
    }
  return points;
}

static OxJob *
put_obstacle (const OxJob *job, const OxObstacle *from, const OxShape *shape, GError **error)
{
  OxObstacle draft = *from;
  g_autoptr (OxObstacle) obstacle = NULL;

  draft.shape = *shape;
  draft.shape.ring = NULL; /* made anew from the sizes */
  obstacle = ox_obstacle_new (&draft);
  return ox_job_with_obstacle (job, obstacle, error);
}

/* The corner across stays; width and depth are measured in the rectangle's own directions. */
static OxJob *
drag_rectangle (const OxJob *job, const OxObstacle *obstacle, guint handle, OxPoint at, GError **error)
{
  OxShape shape = obstacle->shape;
  OxPoint across = shape.ring->points[(handle + 2) % 4];
  double turn = shape.angle_deg * G_PI / 180;
  OxPoint diagonal = ox_point_turn (ox_point_sub (at, across), cos (turn), -sin (turn));

  shape.width = fabs (diagonal.x);
  shape.depth = fabs (diagonal.y);
  shape.centre = ox_point_snap (ox_point_scale (ox_point_add (at, across), 0.5));
  return put_obstacle (job, obstacle, &shape, error);
}

static OxJob *
drag_rim (const OxJob *job, const OxObstacle *obstacle, OxPoint at, GError **error)
{
  OxShape shape = obstacle->shape;

  shape.radius = ox_snap (ox_point_distance (shape.centre, at));
  return put_obstacle (job, obstacle, &shape, error);
}

static OxJob *
drag_doorway (const OxJob *job, const OxDoorway *from, guint handle, OxPoint at, GError **error)
{
  OxDoorway draft = *from;
  OxPoint *end = handle == 0 ? &draft.a : &draft.b;
  OxPoint other = handle == 0 ? draft.b : draft.a;
  double length = ox_point_distance (other, *end);
  OxPoint along;
  g_autoptr (OxDoorway) doorway = NULL;

  if (length < OX_GRID)
    return ox_job_ref (job);
  along = ox_point_scale (ox_point_sub (*end, other), 1 / length);
  *end = ox_point_snap (ox_point_add (other, ox_point_scale (along, ox_point_dot (ox_point_sub (at, other), along))));
  doorway = ox_doorway_new (&draft);
  return ox_job_with_doorway (job, doorway, error);
}

OxJob *
ox_handles_drag (const OxJob *job, const char *id, guint handle, OxPoint at, GError **error)
{
  guint i = 0;
  OxItemKind kind = ox_job_find (job, id, &i);

  if (kind == OX_ITEM_DOORWAY)
    return drag_doorway (job, job->doorways[i], handle, at, error);
  if (kind == OX_ITEM_OBSTACLE && job->obstacles[i]->shape.kind == OX_SHAPE_RECTANGLE)
    return drag_rectangle (job, job->obstacles[i], handle, at, error);
  if (kind == OX_ITEM_OBSTACLE && job->obstacles[i]->shape.kind == OX_SHAPE_CIRCLE)
    return drag_rim (job, job->obstacles[i], at, error);
  return ox_job_with_corner (job, id, handle, at, error);
}

/* --- Sides of rooms --- */

static OxJob *
put_ring (const OxJob *job, const OxRoom *from, const OxPoint *points, const OxSide *sides, guint n, GError **error)
{
  g_autoptr (OxRing) ring = ox_ring_new (points, n);
  OxRoom draft = *from;
  g_autoptr (OxRoom) room = NULL;

  draft.ring = ring;
  draft.sides = (OxSide *) sides;
  room = ox_room_new (&draft);
  return ox_job_with_room (job, room, error);
}

OxJob *
ox_side_drag (const OxJob *job, const char *room_id, guint side, double by, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  guint n = room->ring->n;
  g_autofree OxPoint *points = g_memdup2 (room->ring->points, n * sizeof (OxPoint));
  OxPoint along = ox_point_sub (points[(side + 1) % n], points[side]);
  double length = hypot (along.x, along.y);
  OxPoint move = { along.y / length * by, -along.x / length * by };

  points[side] = ox_point_add (points[side], move);
  points[(side + 1) % n] = ox_point_add (points[(side + 1) % n], move);
  return put_ring (job, room, points, room->sides, n, error);
}

OxJob *
ox_side_set_length (const OxJob *job, const char *room_id, guint side, double length, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  guint n = room->ring->n;
  g_autofree OxPoint *points = g_memdup2 (room->ring->points, n * sizeof (OxPoint));
  guint b = (side + 1) % n;
  guint c = (side + 2) % n;
  double now = ox_point_distance (points[side], points[b]);
  OxPoint by = ox_point_scale (ox_point_sub (points[b], points[side]), (length - now) / now);

  points[b] = ox_point_add (points[b], by);
  /* In a triangle the side behind ends where this one begins. */
  if (n > 3)
    points[c] = ox_point_add (points[c], by);
  return put_ring (job, room, points, room->sides, n, error);
}

/* Both halves are of the kind that the side was of; a direction that names a later side must still name it. */
OxJob *
ox_side_split (const OxJob *job, const char *room_id, guint side, OxPoint at, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  guint n = room->ring->n;
  g_autofree OxPoint *points = g_new (OxPoint, n + 1);
  g_autofree OxSide *sides = g_new (OxSide, n + 1);
  OxRoom draft = *room;

  for (guint i = 0, k = 0; i < n; i++)
    {
      points[k] = room->ring->points[i];
      sides[k++] = room->sides[i];
      if (i != side)
        continue;
      ox_point_segment_distance (at, points[i], room->ring->points[(i + 1) % n], &points[k]);
      sides[k++] = room->sides[i];
    }
  if (draft.direction.kind == OX_DIRECTION_SIDE && draft.direction.side > side)
    draft.direction.side++;
  return put_ring (job, &draft, points, sides, n + 1, error);
}
