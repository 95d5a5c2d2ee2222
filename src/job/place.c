/* Oxturn: job/place - items moved, turned, mirrored and copied.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/place.h"
#include "base/words.h"
#include "job/edit-private.h"
#include "job/job-private.h"

/* Quarter turns are exact, so that four of them bring everything back. */
static OxPoint
direction (double degrees)
{
  double quarters = degrees / 90;
  if (quarters == floor (quarters))
    {
      static const OxPoint exact[] = { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 } };
      return exact[(int) (quarters - 4 * floor (quarters / 4))];
    }
  return (OxPoint){ cos (degrees * G_PI / 180), sin (degrees * G_PI / 180) };
}

OxPoint
ox_placement_point (const OxPlacement *placement, OxPoint p)
{
  OxPoint turn = direction (placement->turn_deg);
  OxPoint d = ox_point_sub (p, placement->about);
  if (placement->mirrored)
    d.x = -d.x;
  return ox_point_snap (
      ox_point_add (ox_point_add (placement->about, ox_point_turn (d, turn.x, turn.y)), placement->by));
}

/* An angle of the floor after it; only its direction counts, so that half a turn is none. */
static double
placed_angle (const OxPlacement *placement, double angle_deg)
{
  double angle = (placement->mirrored ? 180 - angle_deg : angle_deg) + placement->turn_deg;
  if (!placement->mirrored && placement->turn_deg == 0)
    return angle_deg;
  return angle - 180 * floor (angle / 180);
}

/* A mirrored outline would run the other way round: it is turned, from the same first corner. */
static OxPoint *
placed_points (const OxPlacement *placement, const OxPoint *points, guint n)
{
  OxPoint *placed = g_new (OxPoint, MAX (n, 1));
  for (guint i = 0; i < n; i++)
    placed[i] = ox_placement_point (placement, points[placement->mirrored ? (n - i) % n : i]);
  return placed;
}

static OxRing *
placed_ring (const OxPlacement *placement, const OxRing *ring)
{
  g_autofree OxPoint *points = placed_points (placement, ring->points, ring->n);
  return ox_ring_new (points, ring->n);
}

static void
put_room (OxJobBuilder *builder, const OxRoom *room, const OxPlacement *placement, const char *id)
{
  OxRoom draft = *room;
  guint n = room->ring->n;
  g_autoptr (OxRing) ring = placed_ring (placement, room->ring);
  g_autofree OxSide *sides = g_memdup2 (room->sides, n * sizeof *sides);
  for (guint i = 0; placement->mirrored && i < n; i++)
    sides[i] = room->sides[n - 1 - i];
  if (placement->mirrored && draft.direction.kind == OX_DIRECTION_SIDE)
    draft.direction.side = n - 1 - draft.direction.side;
  if (draft.direction.kind == OX_DIRECTION_ANGLE)
    draft.direction.angle_deg = placed_angle (placement, draft.direction.angle_deg);
  draft.id = (char *) id;
  draft.ring = ring;
  draft.sides = sides;
  g_autoptr (OxRoom) placed = ox_room_new (&draft);
  ox_job_builder_put_room (builder, placed);
}

static void
put_obstacle (OxJobBuilder *builder, const OxObstacle *obstacle, const OxPlacement *placement, const char *id)
{
  OxObstacle draft = *obstacle;
  g_autoptr (OxRing) ring = NULL;
  if (obstacle->shape.kind == OX_SHAPE_POLYGON)
    ring = placed_ring (placement, obstacle->shape.ring);
  else
    draft.shape.centre = ox_placement_point (placement, obstacle->shape.centre);
  if (obstacle->shape.kind == OX_SHAPE_RECTANGLE)
    draft.shape.angle_deg = placed_angle (placement, obstacle->shape.angle_deg);
  draft.id = (char *) id;
  draft.shape.ring = ring;
  g_autoptr (OxObstacle) placed = ox_obstacle_new (&draft);
  ox_job_builder_put_obstacle (builder, placed);
}

static void
put_excluded (OxJobBuilder *builder, const OxExcluded *excluded, const OxPlacement *placement, const char *id)
{
  OxExcluded draft = *excluded;
  g_autoptr (OxRing) ring = placed_ring (placement, excluded->ring);
  draft.id = (char *) id;
  draft.ring = ring;
  g_autoptr (OxExcluded) placed = ox_excluded_new (&draft);
  ox_job_builder_put_excluded (builder, placed);
}

static void
put_doorway (OxJobBuilder *builder, const OxDoorway *doorway, const OxPlacement *placement, const char *id)
{
  OxDoorway draft = *doorway;
  draft.id = (char *) id;
  draft.a = ox_placement_point (placement, doorway->a);
  draft.b = ox_placement_point (placement, doorway->b);
  g_autoptr (OxDoorway) placed = ox_doorway_new (&draft);
  ox_job_builder_put_doorway (builder, placed);
}

static void
put_joint (OxJobBuilder *builder, const OxJoint *joint, const OxPlacement *placement, const char *id)
{
  OxJoint draft = *joint;
  g_autofree OxPoint *points = g_new (OxPoint, MAX (joint->n, 1));
  for (guint i = 0; i < joint->n; i++)
    points[i] = ox_placement_point (placement, joint->points[i]);
  draft.id = (char *) id;
  draft.points = points;
  g_autoptr (OxJoint) placed = ox_joint_new (&draft);
  ox_job_builder_put_joint (builder, placed);
}

static void
put_station (OxJobBuilder *builder, const OxStation *station, const OxPlacement *placement, const char *id)
{
  OxStation draft = *station;
  draft.id = (char *) id;
  draft.at = ox_placement_point (placement, station->at);
  g_autoptr (OxStation) placed = ox_station_new (&draft);
  ox_job_builder_put_station (builder, placed);
}

static void
put_condition (OxJobBuilder *builder, const OxCondition *condition, const OxPlacement *placement, const char *id)
{
  OxCondition draft = *condition;
  g_autoptr (OxRing) ring = placed_ring (placement, condition->ring);
  draft.id = (char *) id;
  draft.ring = ring;
  g_autoptr (OxCondition) placed = ox_condition_new (&draft);
  ox_job_builder_put_condition (builder, placed);
}

static void
put_traced (OxJobBuilder *builder, const OxTracedPlan *traced, const OxPlacement *placement, const char *id)
{
  OxTracedPlan draft = *traced;
  draft.id = (char *) id;
  draft.middle = ox_placement_point (placement, traced->middle);
  draft.angle_deg = traced->angle_deg + placement->turn_deg;
  draft.angle_deg -= 360 * floor (draft.angle_deg / 360);
  g_autoptr (OxTracedPlan) placed = ox_traced_plan_new (&draft);
  ox_job_builder_put_traced (builder, placed);
}

/* Puts the item @id of @from into @builder as @new_id; FALSE when there is none. */
static gboolean
put_placed (OxJobBuilder *builder, const OxJob *from, const char *id, const OxPlacement *placement, const char *new_id)
{
  guint i = 0;
  switch (ox_job_find (from, id, &i))
    {
    case OX_ITEM_ROOM:
      put_room (builder, from->rooms[i], placement, new_id);
      return TRUE;
    case OX_ITEM_OBSTACLE:
      put_obstacle (builder, from->obstacles[i], placement, new_id);
      return TRUE;
    case OX_ITEM_EXCLUDED:
      put_excluded (builder, from->excluded[i], placement, new_id);
      return TRUE;
    case OX_ITEM_DOORWAY:
      put_doorway (builder, from->doorways[i], placement, new_id);
      return TRUE;
    case OX_ITEM_JOINT:
      put_joint (builder, from->joints[i], placement, new_id);
      return TRUE;
    case OX_ITEM_STATION:
      put_station (builder, from->stations[i], placement, new_id);
      return TRUE;
    case OX_ITEM_CONDITION:
      put_condition (builder, from->conditions[i], placement, new_id);
      return TRUE;
    case OX_ITEM_TRACED:
      put_traced (builder, from->traced[i], placement, new_id);
      return TRUE;
    case OX_ITEM_NONE:
      break;
    }
  return FALSE;
}

/* Somebody's plan has writing on it: it can be turned, not mirrored. */
static gboolean
can_place (const OxJob *job, const char *id, const OxPlacement *placement, GError **error)
{
  guint i = 0;
  if (ox_job_find (job, id, &i) != OX_ITEM_TRACED)
    return TRUE;
  if (placement->mirrored)
    g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED,
                 _ ("%s is a traced plan, which can be turned but not mirrored"), id);
  else if (job->traced[i]->locked)
    g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED,
                 _ ("The traced plan %s is locked; unlock it to move or turn it"), id);
  return !placement->mirrored && !job->traced[i]->locked;
}

static OxJob *
no_item (OxJobBuilder *builder, const char *id, GError **error)
{
  ox_job_unref (ox_job_builder_end (builder));
  return ox_edit_no_item (id, error);
}

OxJob *
ox_edit_placed (const OxJob *job, const char *const *ids, const OxPlacement *placement, GError **error)
{
  for (guint i = 0; ids[i]; i++)
    if (!can_place (job, ids[i], placement, error))
      return NULL;
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; ids[i]; i++)
    if (!put_placed (builder, job, ids[i], placement, ids[i]))
      return no_item (builder, ids[i], error);
  return ox_edit_finish (job, builder, error);
}

/* --- Copies --- */

static const char *
id_prefix (OxItemKind kind)
{
  switch (kind)
    {
    case OX_ITEM_ROOM:
      return "R";
    case OX_ITEM_OBSTACLE:
      return "O";
    case OX_ITEM_EXCLUDED:
      return "X";
    case OX_ITEM_DOORWAY:
      return "D";
    case OX_ITEM_JOINT:
      return "J";
    case OX_ITEM_CONDITION:
      return "C";
    case OX_ITEM_TRACED:
      return "T";
    case OX_ITEM_STATION:
    case OX_ITEM_NONE:
      break;
    }
  return "S";
}

/* Ids in use, and for each kind the number from which on to look for a free one. */
typedef struct
{
  GHashTable *used; /* owns the ids */
  guint next[OX_ITEM_FAMILIES + 1];
} Ids;

static void
ids_init (Ids *self, const OxJob *job)
{
  *self = (Ids){ .used = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL) };
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    for (guint i = 0; i < ox_job_count (job, f); i++)
      g_hash_table_add (self->used, g_strdup (ox_item_id (ox_job_items (job, f)[i])));
}

static const char *
ids_take (Ids *self, OxItemKind kind)
{
  char *id = NULL;
  do
    {
      g_free (id);
      id = g_strdup_printf ("%s%u", id_prefix (kind), ++self->next[kind]);
    }
  while (g_hash_table_contains (self->used, id));
  g_hash_table_add (self->used, id);
  return id;
}

OxJob *
ox_edit_copied (const OxJob *job, const OxCopies *copies, char ***new_ids, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  g_autoptr (GStrvBuilder) made = g_strv_builder_new ();
  Ids ids;
  ids_init (&ids, job);
  g_autoptr (GHashTable) used = ids.used;
  for (guint k = 0; k < copies->n; k++)
    for (guint i = 0; copies->ids[i]; i++)
      {
        OxItemKind kind = ox_job_find (copies->from, copies->ids[i], NULL);
        if (kind == OX_ITEM_NONE)
          return no_item (builder, copies->ids[i], error);
        const char *id = ids_take (&ids, kind);
        put_placed (builder, copies->from, copies->ids[i], &copies->places[k], id);
        g_strv_builder_add (made, id);
      }
  OxJob *result = ox_edit_finish (job, builder, error);
  if (result && new_ids)
    *new_ids = g_strv_builder_end (made);
  return result;
}

OxJob *
ox_edit_only (const OxJob *job, const char *const *ids, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; ids[i]; i++)
    if (ox_job_find (job, ids[i], NULL) == OX_ITEM_NONE)
      return no_item (builder, ids[i], error);
  for (guint f = 0; f < OX_ITEM_FAMILIES; f++)
    for (guint i = 0; i < ox_job_count (job, f); i++)
      {
        const char *id = ox_item_id (ox_job_items (job, f)[i]);
        if (!g_strv_contains (ids, id))
          ox_job_builder_remove (builder, id);
      }
  return ox_job_builder_end (builder);
}

GArray *
ox_edit_grid_places (guint columns, guint rows, OxPoint step, double turn_deg)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (OxPlacement));
  OxPoint turn = direction (turn_deg);
  for (guint row = 0; row < rows; row++)
    for (guint column = 0; column < columns; column++)
      {
        OxPlacement place = { .by = ox_point_turn ((OxPoint){ column * step.x, row * step.y }, turn.x, turn.y) };
        g_array_append_val (places, place);
      }
  return places;
}

static void
add_points (OxBox *box, const OxPoint *points, guint n)
{
  for (guint i = 0; i < n; i++)
    ox_box_add (box, points[i]);
}

OxBox
ox_edit_box (const OxJob *job, const char *const *ids)
{
  OxBox box = OX_BOX_EMPTY;
  g_autoptr (OxJob) only = ox_edit_only (job, ids, NULL);
  if (!only)
    return box;
  box = ox_job_box (only);
  for (guint i = 0; i < only->n_excluded; i++)
    add_points (&box, only->excluded[i]->ring->points, only->excluded[i]->ring->n);
  for (guint i = 0; i < only->n_conditions; i++)
    add_points (&box, only->conditions[i]->ring->points, only->conditions[i]->ring->n);
  for (guint i = 0; i < only->n_traced; i++)
    {
      g_autoptr (OxRing) ring = ox_traced_plan_ring (only->traced[i]);
      add_points (&box, ring->points, ring->n);
    }
  for (guint i = 0; i < only->n_doorways; i++)
    {
      ox_box_add (&box, only->doorways[i]->a);
      ox_box_add (&box, only->doorways[i]->b);
    }
  for (guint i = 0; i < only->n_joints; i++)
    add_points (&box, only->joints[i]->points, only->joints[i]->n);
  for (guint i = 0; i < only->n_stations; i++)
    ox_box_add (&box, only->stations[i]->at);
  return box;
}
