/* Oxturn: job/items - what lies on the floor: rooms, obstacles, excluded areas, doorways, joints, stations, condition areas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every item is an immutable counted value with an id that is unique in its job ("R1", "O3", "X1", "D2", "J1", "S1": letters,
 * digits, '-' and '_', a letter first). Make one with its _new function from a filled struct, which is copied deeply; change one by
 * copying it into a struct on the stack, changing a member and making a new one. @extra of each holds, as XML
 * text that only file/ makes and reads, what a newer minor version or another namespace put into the item; it is written back.
 */
#pragma once
#include "geometry/region.h"
G_BEGIN_DECLS

typedef enum { OX_SIDE_WALL, OX_SIDE_OPEN, OX_SIDE_DROP } OxSideKind;

typedef struct
{
  OxSideKind kind;
  double keep_back; /* m, for a drop; 0 otherwise */
} OxSide;

typedef enum
{
  OX_DIRECTION_AUTO, /* try each distinct wall direction */
  OX_DIRECTION_SIDE, /* along side number @side */
  OX_DIRECTION_ANGLE /* @angle_deg, counter-clockwise from +x */
} OxDirectionKind;

typedef struct
{
  OxDirectionKind kind;
  guint side;
  double angle_deg;
} OxDirection;

#define OX_COATS_MOST 4

typedef struct
{
  char *id;
  char *name;
  OxRing *ring;
  OxSide *sides;     /* ring->n of them: side i runs from corner i to corner i + 1 */
  OxDirection direction;
  char *profile;     /* target profile as written on the scope drawing, e.g. "CSP 3"; "" when none */
  guint coats;          /* full coverings of strips, 1 to OX_COATS_MOST; 0 in a struct stands for 1 coat and a turn of 90 */
  double coat_turn_deg; /* from one coat to the next */
  char *extra;       /* (nullable) */
} OxRoom;

typedef enum { OX_OBSTACLE_SOLID, OX_OBSTACLE_PIT, OX_OBSTACLE_MASKED } OxObstacleKind;
typedef enum { OX_SHAPE_RECTANGLE, OX_SHAPE_CIRCLE, OX_SHAPE_POLYGON } OxShapeKind;

typedef struct
{
  OxShapeKind kind;
  OxPoint centre;      /* rectangle, circle */
  double width, depth; /* rectangle, along and across angle_deg */
  double angle_deg;    /* rectangle */
  double radius;       /* circle */
  OxRing *ring;        /* polygon; for the other kinds made by ox_obstacle_new(), counter-clockwise */
} OxShape;

typedef struct
{
  char *id;
  char *name;
  OxObstacleKind kind;
  OxShape shape;     /* shape.ring is always there in a finished obstacle */
  double keep_back;  /* m, for a pit */
  char *extra;
} OxObstacle;

typedef struct
{
  char *id;
  char *name;
  OxRing *ring;
  char *extra;
} OxExcluded;

typedef struct
{
  char *id;
  char *name;
  OxPoint a, b;  /* the gap along the middle of the wall */
  double depth;  /* m: thickness of the wall that it passes through, >= 0 */
  char *extra;
} OxDoorway;

typedef struct
{
  char *id;
  char *name;
  guint n;
  OxPoint *points;
  char *extra;
} OxJoint;

typedef enum { OX_STATION_COLLECTOR, OX_STATION_SUPPLY } OxStationKind;

typedef struct
{
  char *id;
  char *name;
  OxStationKind kind;
  OxPoint at;
  double length; /* m of hose or cord; 0: the machine's */
  char *extra;
} OxStation;

/* Part of a room with figures of its own. */
typedef struct
{
  char *id;
  char *name;
  OxRing *ring;
  double speed_m_per_min; /* 0: as the machine */
  guint coats;            /* 1 to OX_COATS_MOST; 0: as the room */
  char *profile;          /* as that of a room; "" the room's */
  char *extra;
} OxCondition;

OxRoom *ox_room_new (const OxRoom *room) G_GNUC_WARN_UNUSED_RESULT; /* sides may be NULL: all walls */
OxRoom *ox_room_ref (const OxRoom *room);
void ox_room_unref (const OxRoom *room);
const char *ox_room_title (const OxRoom *room); /* its name, its id where it has none */
OxObstacle *ox_obstacle_new (const OxObstacle *obstacle) G_GNUC_WARN_UNUSED_RESULT;
OxObstacle *ox_obstacle_ref (const OxObstacle *obstacle);
void ox_obstacle_unref (const OxObstacle *obstacle);
OxExcluded *ox_excluded_new (const OxExcluded *excluded) G_GNUC_WARN_UNUSED_RESULT;
OxExcluded *ox_excluded_ref (const OxExcluded *excluded);
void ox_excluded_unref (const OxExcluded *excluded);
OxDoorway *ox_doorway_new (const OxDoorway *doorway) G_GNUC_WARN_UNUSED_RESULT;
OxDoorway *ox_doorway_ref (const OxDoorway *doorway);
void ox_doorway_unref (const OxDoorway *doorway);
OxJoint *ox_joint_new (const OxJoint *joint) G_GNUC_WARN_UNUSED_RESULT;
OxJoint *ox_joint_ref (const OxJoint *joint);
void ox_joint_unref (const OxJoint *joint);
OxStation *ox_station_new (const OxStation *station) G_GNUC_WARN_UNUSED_RESULT;
OxStation *ox_station_ref (const OxStation *station);
void ox_station_unref (const OxStation *station);
OxCondition *ox_condition_new (const OxCondition *condition) G_GNUC_WARN_UNUSED_RESULT;
OxCondition *ox_condition_ref (const OxCondition *condition);
void ox_condition_unref (const OxCondition *condition);

/* ox_doorway_ring: the floor of the doorway: the gap a-b, depth/2 to each side; counter-clockwise; (transfer full) */
OxRing *ox_doorway_ring (const OxDoorway *doorway) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxRoom, ox_room_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxObstacle, ox_obstacle_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxExcluded, ox_excluded_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxDoorway, ox_doorway_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxJoint, ox_joint_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxStation, ox_station_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxCondition, ox_condition_unref)
G_END_DECLS
