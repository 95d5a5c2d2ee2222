/* Oxturn: job/corner - corners of an outline added and taken away.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/corner.h"
#include "base/words.h"
#include "job/edit-private.h"

/* The corners of item @id, NULL for what has none of its own; @least: (out): how many there must be. */
static const OxPoint *
corners_of (const OxJob *job, const char *id, guint *n, guint *least)
{
  guint i = 0;
  const OxRing *ring = NULL;
  OxItemKind kind = ox_job_find (job, id, &i);
  *least = 3;
  if (kind == OX_ITEM_JOINT)
    {
      *least = 2;
      *n = job->joints[i]->n;
      return job->joints[i]->points;
    }
  if (kind == OX_ITEM_ROOM)
    ring = job->rooms[i]->ring;
  else if (kind == OX_ITEM_EXCLUDED)
    ring = job->excluded[i]->ring;
  else if (kind == OX_ITEM_CONDITION)
    ring = job->conditions[i]->ring;
  else if (kind == OX_ITEM_OBSTACLE && job->obstacles[i]->shape.kind == OX_SHAPE_POLYGON)
    ring = job->obstacles[i]->shape.ring;
  if (!ring)
    return NULL;
  *n = ring->n;
  return ring->points;
}

static OxJob *
no_corners (const OxJob *job, const char *id, GError **error)
{
  if (ox_job_find (job, id, NULL) == OX_ITEM_NONE)
    return ox_edit_no_item (id, error);
  g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED,
               _ ("%s has no corners of its own; its size is changed by its figures"), id);
  return NULL;
}

static OxJob *
with_joint_points (const OxJob *job, guint i, const OxPoint *points, guint n, GError **error)
{
  OxJoint draft = *job->joints[i];
  draft.points = (OxPoint *) points;
  draft.n = n;
  g_autoptr (OxJoint) joint = ox_joint_new (&draft);
  return ox_job_with_joint (job, joint, error);
}

static OxJob *
with_room_ring (const OxJob *job, guint i, OxRing *ring, const OxSide *sides, GError **error)
{
  OxRoom draft = *job->rooms[i];
  draft.ring = ring;
  draft.sides = (OxSide *) sides;
  g_autoptr (OxRoom) room = ox_room_new (&draft);
  return ox_job_with_room (job, room, error);
}

/* @sides: of a room, as many as corners */
static OxJob *
with_points (const OxJob *job, const char *id, const OxPoint *points, guint n, const OxSide *sides, GError **error)
{
  guint i = 0;
  OxItemKind kind = ox_job_find (job, id, &i);
  if (kind == OX_ITEM_JOINT)
    return with_joint_points (job, i, points, n, error);
  g_autoptr (OxRing) ring = ox_ring_new (points, n);
  if (kind == OX_ITEM_ROOM)
    return with_room_ring (job, i, ring, sides, error);
  if (kind == OX_ITEM_EXCLUDED)
    {
      OxExcluded draft = *job->excluded[i];
      draft.ring = ring;
      g_autoptr (OxExcluded) excluded = ox_excluded_new (&draft);
      return ox_job_with_excluded (job, excluded, error);
    }
  if (kind == OX_ITEM_CONDITION)
    {
      OxCondition draft = *job->conditions[i];
      draft.ring = ring;
      g_autoptr (OxCondition) condition = ox_condition_new (&draft);
      return ox_job_with_condition (job, condition, error);
    }
  OxObstacle draft = *job->obstacles[i];
  draft.shape.ring = ring;
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&draft);
  return ox_job_with_obstacle (job, obstacle, error);
}

OxJob *
ox_edit_with_points (const OxJob *job, const char *id, const OxPoint *points, guint n, GError **error)
{
  guint now, least;
  if (!corners_of (job, id, &now, &least))
    return no_corners (job, id, error);
  const OxRoom *room = ox_job_find_room (job, id);
  g_autofree OxSide *sides = g_new0 (OxSide, MAX (n, 1));
  for (guint i = 0; room && i < MIN (now, n); i++)
    sides[i] = room->sides[i];
  return with_points (job, id, points, n, sides, error);
}

/* A room with another direction; NULL as soon as @job is. Takes @job. */
static OxJob *
with_direction_side (OxJob *job, const char *id, guint side, GError **error)
{
  g_autoptr (OxJob) before = job;
  if (!job)
    return NULL;
  return ox_job_with_direction (job, id, (OxDirection){ .kind = OX_DIRECTION_SIDE, .side = side }, error);
}

OxJob *
ox_edit_corner_added (const OxJob *job, const char *id, guint corner, OxPoint at, GError **error)
{
  guint n = 0, least;
  const OxPoint *old = corners_of (job, id, &n, &least);
  if (!old)
    return no_corners (job, id, error);
  g_return_val_if_fail (corner < n, NULL);
  const OxRoom *room = ox_job_find_room (job, id);
  g_autofree OxPoint *points = g_new (OxPoint, n + 1);
  g_autofree OxSide *sides = g_new0 (OxSide, n + 1);
  for (guint i = 0; i <= n; i++)
    {
      guint from = i <= corner ? i : i - 1;
      points[i] = i == corner + 1 ? at : old[from];
      if (room)
        sides[i] = room->sides[from];
    }
  OxJob *made = with_points (job, id, points, n + 1, sides, error);
  /* A direction that names a later side must still name it. */
  if (room && room->direction.kind == OX_DIRECTION_SIDE && room->direction.side > corner)
    return with_direction_side (made, id, room->direction.side + 1, error);
  return made;
}

OxJob *
ox_edit_corner_removed (const OxJob *job, const char *id, guint corner, GError **error)
{
  guint n = 0, least;
  const OxPoint *old = corners_of (job, id, &n, &least);
  if (!old)
    return no_corners (job, id, error);
  g_return_val_if_fail (corner < n, NULL);
  if (n <= least)
    {
      g_set_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED,
                   _ ("%s needs %u corners; delete it as a whole to take it away"), id, least);
      return NULL;
    }
  const OxRoom *room = ox_job_find_room (job, id);
  g_autofree OxPoint *points = g_new (OxPoint, n);
  g_autofree OxSide *sides = g_new0 (OxSide, n);
  for (guint i = 0; i + 1 < n; i++)
    {
      guint from = i < corner ? i : i + 1;
      points[i] = old[from];
      if (room)
        sides[i] = room->sides[from];
    }
  if (room == NULL || room->direction.kind != OX_DIRECTION_SIDE)
    return with_points (job, id, points, n - 1, sides, error);
  /* First the direction, while its side is still there. */
  guint side = room->direction.side;
  OxJob *turned = with_direction_side (ox_job_ref (job), id, side > 0 && side >= corner ? side - 1 : side, error);
  g_autoptr (OxJob) before = turned;
  return turned ? with_points (turned, id, points, n - 1, sides, error) : NULL;
}
