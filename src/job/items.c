/* Oxturn: job/items - what lies on the floor: rooms, obstacles, excluded areas, doorways, joints, stations, condition
 * areas. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/items.h"
#include "job/text.h"
#include "job/value.h"

#define DEGREES (G_PI / 180.0)

OxRoom *
ox_room_new (const OxRoom *room)
{
  OxRoom *self = g_atomic_rc_box_new0 (OxRoom);
  self->id = g_strdup (room->id ? room->id : "");
  self->name = ox_text_clean (room->name, FALSE);
  self->ring = ox_ring_ref (room->ring);
  self->sides = g_new0 (OxSide, MAX (room->ring->n, 1));
  for (guint i = 0; room->sides && i < room->ring->n; i++)
    {
      self->sides[i] = room->sides[i];
      self->sides[i].keep_back = room->sides[i].kind == OX_SIDE_DROP ? ox_snap (room->sides[i].keep_back) : 0;
    }
  self->direction = (OxDirection){ .kind = room->direction.kind };
  if (room->direction.kind == OX_DIRECTION_SIDE)
    self->direction.side = room->direction.side;
  if (room->direction.kind == OX_DIRECTION_ANGLE)
    self->direction.angle_deg = ox_value_snap (room->direction.angle_deg);
  self->profile = ox_text_clean (room->profile, FALSE);
  self->coats = room->coats > 0 ? room->coats : 1;
  self->coat_turn_deg = room->coats > 0 ? ox_value_snap (room->coat_turn_deg) : 90;
  self->extra = g_strdup (room->extra);
  return self;
}

OxRoom *
ox_room_ref (const OxRoom *room)
{
  return g_atomic_rc_box_acquire ((gpointer) room);
}

static void
room_clear (gpointer data)
{
  OxRoom *room = data;
  g_free (room->id);
  g_free (room->name);
  ox_ring_unref (room->ring);
  g_free (room->sides);
  g_free (room->profile);
  g_free (room->extra);
}

void
ox_room_unref (const OxRoom *room)
{
  g_atomic_rc_box_release_full ((gpointer) room, room_clear);
}

const char *
ox_room_title (const OxRoom *room)
{
  return *room->name != '\0' ? room->name : room->id;
}

/* A radius that job/check.h refuses still gets an outline, but not one of a million corners. */
static double
drawable_radius (double radius)
{
  return radius > OX_GRID ? MIN (radius, OX_COORD_MAX) : OX_GRID;
}

/* Only what belongs to its kind is kept, so that two equal shapes are equal member by member. */
static OxShape
shape_make (const OxShape *shape)
{
  OxShape made = { .kind = shape->kind };
  switch (shape->kind)
    {
    case OX_SHAPE_RECTANGLE:
      made.centre = ox_point_snap (shape->centre);
      made.width = ox_snap (shape->width);
      made.depth = ox_snap (shape->depth);
      made.angle_deg = ox_value_snap (shape->angle_deg);
      made.ring = ox_ring_new_rectangle (made.centre, made.width, made.depth, made.angle_deg * DEGREES);
      break;
    case OX_SHAPE_CIRCLE:
      made.centre = ox_point_snap (shape->centre);
      made.radius = ox_snap (shape->radius);
      made.ring = ox_ring_new_circle (made.centre, drawable_radius (made.radius), TRUE);
      break;
    case OX_SHAPE_POLYGON:
      made.ring = ox_ring_ref (shape->ring);
      break;
    }
  return made;
}

OxObstacle *
ox_obstacle_new (const OxObstacle *obstacle)
{
  OxObstacle *self = g_atomic_rc_box_new0 (OxObstacle);
  self->id = g_strdup (obstacle->id ? obstacle->id : "");
  self->name = ox_text_clean (obstacle->name, FALSE);
  self->kind = obstacle->kind;
  self->shape = shape_make (&obstacle->shape);
  self->keep_back = obstacle->kind == OX_OBSTACLE_PIT ? ox_snap (obstacle->keep_back) : 0;
  self->extra = g_strdup (obstacle->extra);
  return self;
}

OxObstacle *
ox_obstacle_ref (const OxObstacle *obstacle)
{
  return g_atomic_rc_box_acquire ((gpointer) obstacle);
}

static void
obstacle_clear (gpointer data)
{
  OxObstacle *obstacle = data;
  g_free (obstacle->id);
  g_free (obstacle->name);
  ox_ring_unref (obstacle->shape.ring);
  g_free (obstacle->extra);
}

void
ox_obstacle_unref (const OxObstacle *obstacle)
{
  g_atomic_rc_box_release_full ((gpointer) obstacle, obstacle_clear);
}

OxExcluded *
ox_excluded_new (const OxExcluded *excluded)
{
  OxExcluded *self = g_atomic_rc_box_new0 (OxExcluded);
  self->id = g_strdup (excluded->id ? excluded->id : "");
  self->name = ox_text_clean (excluded->name, FALSE);
  self->ring = ox_ring_ref (excluded->ring);
  self->extra = g_strdup (excluded->extra);
  return self;
}

OxExcluded *
ox_excluded_ref (const OxExcluded *excluded)
{
  return g_atomic_rc_box_acquire ((gpointer) excluded);
}

static void
excluded_clear (gpointer data)
{
  OxExcluded *excluded = data;
  g_free (excluded->id);
  g_free (excluded->name);
  ox_ring_unref (excluded->ring);
  g_free (excluded->extra);
}

void
ox_excluded_unref (const OxExcluded *excluded)
{
  g_atomic_rc_box_release_full ((gpointer) excluded, excluded_clear);
}

OxDoorway *
ox_doorway_new (const OxDoorway *doorway)
{
  OxDoorway *self = g_atomic_rc_box_new0 (OxDoorway);
  self->id = g_strdup (doorway->id ? doorway->id : "");
  self->name = ox_text_clean (doorway->name, FALSE);
  self->a = ox_point_snap (doorway->a);
  self->b = ox_point_snap (doorway->b);
  self->depth = ox_snap (doorway->depth);
  self->extra = g_strdup (doorway->extra);
  return self;
}

OxDoorway *
ox_doorway_ref (const OxDoorway *doorway)
{
  return g_atomic_rc_box_acquire ((gpointer) doorway);
}

static void
doorway_clear (gpointer data)
{
  OxDoorway *doorway = data;
  g_free (doorway->id);
  g_free (doorway->name);
  g_free (doorway->extra);
}

void
ox_doorway_unref (const OxDoorway *doorway)
{
  g_atomic_rc_box_release_full ((gpointer) doorway, doorway_clear);
}

OxRing *
ox_doorway_ring (const OxDoorway *doorway)
{
  OxPoint along = ox_point_sub (doorway->b, doorway->a);
  OxPoint middle = ox_point_scale (ox_point_add (doorway->a, doorway->b), 0.5);
  return ox_ring_new_rectangle (middle, hypot (along.x, along.y), doorway->depth, atan2 (along.y, along.x));
}

OxJoint *
ox_joint_new (const OxJoint *joint)
{
  OxJoint *self = g_atomic_rc_box_new0 (OxJoint);
  self->id = g_strdup (joint->id ? joint->id : "");
  self->name = ox_text_clean (joint->name, FALSE);
  self->n = joint->n;
  self->points = g_new (OxPoint, MAX (joint->n, 1));
  for (guint i = 0; i < joint->n; i++)
    self->points[i] = ox_point_snap (joint->points[i]);
  self->extra = g_strdup (joint->extra);
  return self;
}

OxJoint *
ox_joint_ref (const OxJoint *joint)
{
  return g_atomic_rc_box_acquire ((gpointer) joint);
}

static void
joint_clear (gpointer data)
{
  OxJoint *joint = data;
  g_free (joint->id);
  g_free (joint->name);
  g_free (joint->points);
  g_free (joint->extra);
}

void
ox_joint_unref (const OxJoint *joint)
{
  g_atomic_rc_box_release_full ((gpointer) joint, joint_clear);
}

OxStation *
ox_station_new (const OxStation *station)
{
  OxStation *self = g_atomic_rc_box_new0 (OxStation);
  self->id = g_strdup (station->id ? station->id : "");
  self->name = ox_text_clean (station->name, FALSE);
  self->kind = station->kind;
  self->at = ox_point_snap (station->at);
  self->length = ox_snap (station->length);
  self->extra = g_strdup (station->extra);
  return self;
}

OxStation *
ox_station_ref (const OxStation *station)
{
  return g_atomic_rc_box_acquire ((gpointer) station);
}

static void
station_clear (gpointer data)
{
  OxStation *station = data;
  g_free (station->id);
  g_free (station->name);
  g_free (station->extra);
}

void
ox_station_unref (const OxStation *station)
{
  g_atomic_rc_box_release_full ((gpointer) station, station_clear);
}

OxCondition *
ox_condition_new (const OxCondition *condition)
{
  OxCondition *self = g_atomic_rc_box_new0 (OxCondition);
  self->id = g_strdup (condition->id ? condition->id : "");
  self->name = ox_text_clean (condition->name, FALSE);
  self->ring = ox_ring_ref (condition->ring);
  self->speed_m_per_min = ox_value_snap (condition->speed_m_per_min);
  self->coats = condition->coats;
  self->profile = ox_text_clean (condition->profile, FALSE);
  self->extra = g_strdup (condition->extra);
  return self;
}

OxCondition *
ox_condition_ref (const OxCondition *condition)
{
  return g_atomic_rc_box_acquire ((gpointer) condition);
}

static void
condition_clear (gpointer data)
{
  OxCondition *condition = data;
  g_free (condition->id);
  g_free (condition->name);
  ox_ring_unref (condition->ring);
  g_free (condition->profile);
  g_free (condition->extra);
}

void
ox_condition_unref (const OxCondition *condition)
{
  g_atomic_rc_box_release_full ((gpointer) condition, condition_clear);
}
