/* Oxturn: job/edit - edits: job in, job out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include <glib/gi18n-lib.h>
#include "job/check.h"

G_DEFINE_QUARK (ox_job_error, ox_job_error)

/* ids at fault in the old job: an edit of something that is broken already must be allowed, or nobody could mend it */
static GHashTable *
ids_at_fault (const OxJob *job)
{
  GHashTable *ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  for (guint i = 0; i < findings->len; i++)
    {
      const OxFinding *finding = findings->pdata[i];
      if (finding->kind == OX_FINDING_ERROR)
        g_hash_table_add (ids, g_strdup (finding->id));
    }
  return ids;
}

/* Takes @builder; the old job is looked at only when something is wrong with the new one. */
static OxJob *
finish (const OxJob *old, OxJobBuilder *builder, GError **error)
{
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_autoptr (GHashTable) known = NULL;
  for (guint i = 0; i < findings->len; i++)
    {
      const OxFinding *finding = findings->pdata[i];
      if (finding->kind != OX_FINDING_ERROR)
        break;
      if (!known)
        known = ids_at_fault (old);
      if (!g_hash_table_contains (known, finding->id))
        {
          g_set_error_literal (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED, finding->text);
          return NULL;
        }
    }
  return g_steal_pointer (&job);
}

static gpointer
no_item (const char *id, GError **error)
{
  g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_NO_ITEM, _ ("There is no item %s that this could be done to"), id);
  return NULL;
}

OxJob *
ox_job_with_room (const OxJob *job, const OxRoom *room, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_obstacle (const OxJob *job, const OxObstacle *obstacle, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_obstacle (builder, obstacle);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_excluded (const OxJob *job, const OxExcluded *excluded, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_excluded (builder, excluded);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_doorway (const OxJob *job, const OxDoorway *doorway, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_doorway (builder, doorway);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_joint (const OxJob *job, const OxJoint *joint, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_joint (builder, joint);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_station (const OxJob *job, const OxStation *station, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_station (builder, station);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_machine (const OxJob *job, const OxMachine *machine, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_machine (builder, machine);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_rates (const OxJob *job, OxRates rates, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_rates (builder, rates);
  return finish (job, builder, error);
}

OxJob *
ox_job_with_texts (const OxJob *job, const OxTexts *texts)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_texts (builder, texts);
  return ox_job_builder_end (builder);
}

OxJob *
ox_job_with_units (const OxJob *job, OxUnits units)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_set_units (builder, units);
  return ox_job_builder_end (builder);
}

OxJob *
ox_job_with_side (const OxJob *job, const char *room_id, guint side, OxSide value, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  if (!room)
    return no_item (room_id, error);
  g_return_val_if_fail (side < room->ring->n, NULL);
  g_autofree OxSide *sides = g_memdup2 (room->sides, room->ring->n * sizeof *sides);
  sides[side] = value;
  OxRoom changed = *room;
  changed.sides = sides;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  return ox_job_with_room (job, made, error);
}

OxJob *
ox_job_with_direction (const OxJob *job, const char *room_id, OxDirection direction, GError **error)
{
  const OxRoom *room = ox_job_find_room (job, room_id);
  if (!room)
    return no_item (room_id, error);
  OxRoom changed = *room;
  changed.direction = direction;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  return ox_job_with_room (job, made, error);
}

/* NULL with @error when the corner would fall on its neighbour */
static OxRing *
ring_with_corner (const OxRing *ring, guint corner, OxPoint at, const char *id, GError **error)
{
  g_return_val_if_fail (corner < ring->n, NULL);
  g_autofree OxPoint *points = g_memdup2 (ring->points, ring->n * sizeof *points);
  points[corner] = at;
  g_autoptr (OxRing) made = ox_ring_new (points, ring->n);
  if (made->n == ring->n)
    return g_steal_pointer (&made);
  g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED, _ ("Two corners of %s would lie at the same place"), id);
  return NULL;
}

static OxJob *
with_room_corner (const OxJob *job, const OxRoom *room, guint corner, OxPoint at, GError **error)
{
  OxRoom changed = *room;
  g_autoptr (OxRing) ring = ring_with_corner (room->ring, corner, at, room->id, error);
  if (!ring)
    return NULL;
  changed.ring = ring;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  return ox_job_with_room (job, made, error);
}

static OxJob *
with_excluded_corner (const OxJob *job, const OxExcluded *excluded, guint corner, OxPoint at, GError **error)
{
  OxExcluded changed = *excluded;
  g_autoptr (OxRing) ring = ring_with_corner (excluded->ring, corner, at, excluded->id, error);
  if (!ring)
    return NULL;
  changed.ring = ring;
  g_autoptr (OxExcluded) made = ox_excluded_new (&changed);
  return ox_job_with_excluded (job, made, error);
}

static OxJob *
with_obstacle_corner (const OxJob *job, const OxObstacle *obstacle, guint corner, OxPoint at, GError **error)
{
  OxObstacle changed = *obstacle;
  if (obstacle->shape.kind != OX_SHAPE_POLYGON)
    {
      g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED,
                   _ ("%s has no corners of its own; only those of a polygon can be moved one by one"), obstacle->id);
      return NULL;
    }
  g_autoptr (OxRing) ring = ring_with_corner (obstacle->shape.ring, corner, at, obstacle->id, error);
  if (!ring)
    return NULL;
  changed.shape.ring = ring;
  g_autoptr (OxObstacle) made = ox_obstacle_new (&changed);
  return ox_job_with_obstacle (job, made, error);
}

OxJob *
ox_job_with_corner (const OxJob *job, const char *id, guint corner, OxPoint at, GError **error)
{
  guint i;
  OxItemKind kind = ox_job_find (job, id, &i);
  if (kind == OX_ITEM_ROOM)
    return with_room_corner (job, job->rooms[i], corner, at, error);
  if (kind == OX_ITEM_OBSTACLE)
    return with_obstacle_corner (job, job->obstacles[i], corner, at, error);
  if (kind == OX_ITEM_EXCLUDED)
    return with_excluded_corner (job, job->excluded[i], corner, at, error);
  return no_item (id, error);
}

static OxRing *
ring_moved (const OxRing *ring, OxPoint by)
{
  g_autofree OxPoint *points = g_new (OxPoint, ring->n);
  for (guint i = 0; i < ring->n; i++)
    points[i] = ox_point_add (ring->points[i], by);
  return ox_ring_new (points, ring->n);
}

static void
move_room (OxJobBuilder *builder, const OxRoom *room, OxPoint by)
{
  OxRoom changed = *room;
  g_autoptr (OxRing) ring = ring_moved (room->ring, by);
  changed.ring = ring;
  g_autoptr (OxRoom) made = ox_room_new (&changed);
  ox_job_builder_put_room (builder, made);
}

static void
move_obstacle (OxJobBuilder *builder, const OxObstacle *obstacle, OxPoint by)
{
  OxObstacle changed = *obstacle;
  g_autoptr (OxRing) ring = ring_moved (obstacle->shape.ring, by);
  changed.shape.centre = ox_point_add (obstacle->shape.centre, by);
  changed.shape.ring = ring;
  g_autoptr (OxObstacle) made = ox_obstacle_new (&changed);
  ox_job_builder_put_obstacle (builder, made);
}

static void
move_excluded (OxJobBuilder *builder, const OxExcluded *excluded, OxPoint by)
{
  OxExcluded changed = *excluded;
  g_autoptr (OxRing) ring = ring_moved (excluded->ring, by);
  changed.ring = ring;
  g_autoptr (OxExcluded) made = ox_excluded_new (&changed);
  ox_job_builder_put_excluded (builder, made);
}

static void
move_doorway (OxJobBuilder *builder, const OxDoorway *doorway, OxPoint by)
{
  OxDoorway changed = *doorway;
  changed.a = ox_point_add (doorway->a, by);
  changed.b = ox_point_add (doorway->b, by);
  g_autoptr (OxDoorway) made = ox_doorway_new (&changed);
  ox_job_builder_put_doorway (builder, made);
}

static void
move_joint (OxJobBuilder *builder, const OxJoint *joint, OxPoint by)
{
  OxJoint changed = *joint;
  g_autofree OxPoint *points = g_new (OxPoint, joint->n + 1);
  for (guint i = 0; i < joint->n; i++)
    points[i] = ox_point_add (joint->points[i], by);
  changed.points = points;
  g_autoptr (OxJoint) made = ox_joint_new (&changed);
  ox_job_builder_put_joint (builder, made);
}

static void
move_station (OxJobBuilder *builder, const OxStation *station, OxPoint by)
{
  OxStation changed = *station;
  changed.at = ox_point_add (station->at, by);
  g_autoptr (OxStation) made = ox_station_new (&changed);
  ox_job_builder_put_station (builder, made);
}

static gboolean
move_item (OxJobBuilder *builder, const OxJob *job, const char *id, OxPoint by)
{
  guint i;
  switch (ox_job_find (job, id, &i))
    {
    case OX_ITEM_ROOM:
      move_room (builder, job->rooms[i], by);
      return TRUE;
    case OX_ITEM_OBSTACLE:
      move_obstacle (builder, job->obstacles[i], by);
      return TRUE;
    case OX_ITEM_EXCLUDED:
      move_excluded (builder, job->excluded[i], by);
      return TRUE;
    case OX_ITEM_DOORWAY:
      move_doorway (builder, job->doorways[i], by);
      return TRUE;
    case OX_ITEM_JOINT:
      move_joint (builder, job->joints[i], by);
      return TRUE;
    case OX_ITEM_STATION:
      move_station (builder, job->stations[i], by);
      return TRUE;
    case OX_ITEM_NONE:
      break;
    }
  return FALSE;
}

OxJob *
ox_job_moved (const OxJob *job, const char *const *ids, OxPoint by, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; ids[i]; i++)
    if (!move_item (builder, job, ids[i], by))
      {
        ox_job_unref (ox_job_builder_end (builder));
        return no_item (ids[i], error);
      }
  return finish (job, builder, error);
}

OxJob *
ox_job_without (const OxJob *job, const char *const *ids, GError **error)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; ids[i]; i++)
    if (!ox_job_builder_remove (builder, ids[i]))
      {
        ox_job_unref (ox_job_builder_end (builder));
        return no_item (ids[i], error);
      }
  return finish (job, builder, error);
}
