/* Oxturn: file/read-items - items of the floor from their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-items.h"
#include "base/shown.h"
#include <glib/gi18n-lib.h>
#include "file/job-known.h"
#include "file/job-words.h"
#include "file/read-traced.h"
#include "job/text.h"

#define COORDINATE(key)                                                                                                \
  {                                                                                                                    \
    key, -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN                                                                 \
  }
#define SIZE(key)                                                                                                      \
  {                                                                                                                    \
    key, 0, TRUE, OX_COORD_MAX, TRUE, NAN                                                                              \
  }
#define ANGLE(otherwise)                                                                                               \
  {                                                                                                                    \
    "angle", -360, FALSE, 360, FALSE, otherwise                                                                        \
  }
#define KEEP_BACK(otherwise)                                                                                           \
  {                                                                                                                    \
    "keep-back", 0, FALSE, 100, TRUE, otherwise                                                                        \
  }

typedef struct
{
  char *id;
  char *name;
  char *rest;
} Head;

static void
head_clear (Head *head)
{
  g_free (head->id);
  g_free (head->name);
  g_free (head->rest);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Head, head_clear)

static gboolean
read_head (const OxReader *reader, const xmlNode *node, Head *head)
{
  head->id = ox_read_text (reader, node, "id", NULL);
  if (!head->id)
    return FALSE;
  if (!ox_text_is_id (head->id))
    return ox_read_fail (reader, node,
                         _ ("id “%s” of %s: letters, digits, “-” and “_” are allowed, a letter first, 64 at most"),
                         ox_shown (head->id).text, node->name);
  head->name = ox_read_text (reader, node, "name", "");
  head->rest = ox_known_rest (node);
  return head->name != NULL;
}

static gboolean
read_point (const OxReader *reader, const xmlNode *node, OxPoint *out)
{
  static const OxRange ranges[] = { COORDINATE ("x"), COORDINATE ("y") };
  double values[2];
  if (!ox_read_numbers (reader, node, ranges, 2, values))
    return FALSE;
  *out = (OxPoint){ values[0], values[1] };
  return TRUE;
}

static gboolean
read_side (const OxReader *reader, const xmlNode *node, OxSide *side)
{
  int kind;
  if (!ox_read_choice (reader, node, &(OxChoice){ "side", ox_words_side, OX_SIDE_WALL }, &kind))
    return FALSE;
  side->kind = (OxSideKind) kind;
  if (side->kind == OX_SIDE_DROP)
    return ox_read_number (reader, node, &(OxRange) KEEP_BACK (NAN), &side->keep_back);
  return ox_read_refuse_attribute (reader, node, "keep-back", _ ("only a side that is a drop has one"));
}

/* @sides: (nullable): gets an OxSide a corner */
static gboolean
read_points (const OxReader *reader, const xmlNode *node, const char *name, GArray *points, GArray *sides)
{
  for (const xmlNode *child = node->children; child; child = child->next)
    {
      OxPoint point;
      OxSide side = { OX_SIDE_WALL, 0 };
      if (!ox_known_is_ours (child, name))
        continue;
      if (!read_point (reader, child, &point) || (sides && !read_side (reader, child, &side)))
        return FALSE;
      g_array_append_val (points, point);
      if (sides)
        g_array_append_val (sides, side);
    }
  return TRUE;
}

/* (transfer full) (nullable) */
static OxRing *
read_ring (const OxReader *reader, const xmlNode *node, GArray *sides)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  if (!read_points (reader, node, "corner", points, sides))
    return NULL;
  g_autoptr (OxRing) ring = ox_ring_new ((const OxPoint *) (gpointer) points->data, points->len);
  if (ring->n == points->len && ring->n >= 3)
    return g_steal_pointer (&ring);
  if (ring->n < points->len)
    ox_read_fail (reader, node, _ ("the last corner of %s lies on its first; each is to be given once"), node->name);
  else
    ox_read_fail (reader, node, _ ("%s has %u corners; 3 or more are needed"), node->name, ring->n);
  return NULL;
}

static gboolean
read_direction (const OxReader *reader, const xmlNode *node, guint n_sides, OxDirection *out)
{
  const OxRange along = { "along-side", 1, FALSE, n_sides, FALSE, 0 };
  double side;
  *out = (OxDirection){ OX_DIRECTION_AUTO, 0, 0 };
  if (!ox_read_number (reader, node, &along, &side))
    return FALSE;
  if (side > 0)
    {
      if (side != floor (side))
        return ox_read_fail (reader, node, _ ("along-side of %s is the number of a side: 1, 2, 3 …"), node->name);
      *out = (OxDirection){ OX_DIRECTION_SIDE, (guint) side - 1, 0 };
      return ox_read_refuse_attribute (reader, node, "angle",
                                       _ ("strips that run along a side have no angle of their own"));
    }
  if (!xmlHasNsProp ((xmlNode *) node, BAD_CAST "angle", NULL))
    return TRUE;
  out->kind = OX_DIRECTION_ANGLE;
  return ox_read_number (reader, node, &(OxRange) ANGLE (NAN), &out->angle_deg);
}

/* @otherwise: when the attribute is missing */
static gboolean
read_coats (const OxReader *reader, const xmlNode *node, double otherwise, double *coats)
{
  if (!ox_read_number (reader, node, &(OxRange){ "coats", 1, FALSE, 4, FALSE, otherwise }, coats))
    return FALSE;
  return *coats == floor (*coats) || ox_read_fail (reader, node, _ ("coats of %s: 1, 2, 3 or 4 is needed"), node->name);
}

static gboolean
read_room (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  g_auto (Head) head = { NULL };
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (OxSide));
  if (!read_head (reader, node, &head))
    return FALSE;
  g_autoptr (OxRing) ring = read_ring (reader, node, sides);
  OxDirection direction;
  if (!ring || !read_direction (reader, node, ring->n, &direction))
    return FALSE;
  g_autofree char *profile = ox_read_text (reader, node, "profile", "");
  double coats, turn;
  if (!profile || !read_coats (reader, node, 1, &coats)
      || !ox_read_number (reader, node, &(OxRange){ "coat-turn", -360, FALSE, 360, FALSE, 90 }, &turn))
    return FALSE;
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){
      .id = head.id,
      .name = head.name,
      .ring = ring,
      .sides = (OxSide *) (gpointer) sides->data,
      .direction = direction,
      .profile = profile,
      .coats = (guint) coats,
      .coat_turn_deg = turn,
      .extra = head.rest,
  });
  ox_job_builder_put_room (builder, room);
  return TRUE;
}

static gboolean
read_rectangle (const OxReader *reader, const xmlNode *node, OxShape *shape)
{
  static const OxRange ranges[] = { SIZE ("width"), SIZE ("depth"), ANGLE (0) };
  double values[3];
  if (!read_point (reader, node, &shape->centre) || !ox_read_numbers (reader, node, ranges, 3, values)
      || !ox_read_refuse_attribute (reader, node, "radius", _ ("only a circle has one")))
    return FALSE;
  shape->width = values[0];
  shape->depth = values[1];
  shape->angle_deg = values[2];
  return TRUE;
}

static gboolean
read_circle (const OxReader *reader, const xmlNode *node, OxShape *shape)
{
  return read_point (reader, node, &shape->centre)
         && ox_read_number (reader, node, &(OxRange) SIZE ("radius"), &shape->radius);
}

/* A polygon's ring is for the caller to unref. */
static gboolean
read_shape (const OxReader *reader, const xmlNode *node, OxShape *shape)
{
  int kind;
  if (!ox_read_choice (reader, node, &(OxChoice){ "shape", ox_words_shape, -1 }, &kind))
    return FALSE;
  shape->kind = (OxShapeKind) kind;
  if (shape->kind == OX_SHAPE_RECTANGLE)
    return read_rectangle (reader, node, shape);
  if (shape->kind == OX_SHAPE_CIRCLE)
    return read_circle (reader, node, shape);
  shape->ring = read_ring (reader, node, NULL);
  return shape->ring != NULL;
}

static gboolean
read_obstacle (const OxReader *reader, const xmlNode *node, OxObstacleKind kind, OxJobBuilder *builder)
{
  g_auto (Head) head = { NULL };
  OxObstacle obstacle = { .kind = kind };
  if (!read_head (reader, node, &head) || !read_shape (reader, node, &obstacle.shape))
    return FALSE;
  g_autoptr (OxRing) ring = obstacle.shape.ring;
  if (kind == OX_OBSTACLE_PIT && !ox_read_number (reader, node, &(OxRange) KEEP_BACK (0), &obstacle.keep_back))
    return FALSE;
  obstacle.id = head.id;
  obstacle.name = head.name;
  obstacle.extra = head.rest;
  g_autoptr (OxObstacle) made = ox_obstacle_new (&obstacle);
  ox_job_builder_put_obstacle (builder, made);
  return TRUE;
}

static gboolean
read_excluded (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  g_auto (Head) head = { NULL };
  if (!read_head (reader, node, &head))
    return FALSE;
  g_autoptr (OxRing) ring = read_ring (reader, node, NULL);
  if (!ring)
    return FALSE;
  g_autoptr (OxExcluded) excluded = ox_excluded_new (&(OxExcluded){ head.id, head.name, ring, head.rest });
  ox_job_builder_put_excluded (builder, excluded);
  return TRUE;
}

static gboolean
read_doorway (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const OxRange ranges[] = {
    COORDINATE ("x1"), COORDINATE ("y1"), COORDINATE ("x2"), COORDINATE ("y2"), { "depth", 0, FALSE, 100, TRUE, NAN },
  };
  g_auto (Head) head = { NULL };
  double v[G_N_ELEMENTS (ranges)];
  if (!read_head (reader, node, &head) || !ox_read_numbers (reader, node, ranges, G_N_ELEMENTS (ranges), v))
    return FALSE;
  g_autoptr (OxDoorway) doorway
      = ox_doorway_new (&(OxDoorway){ head.id, head.name, { v[0], v[1] }, { v[2], v[3] }, v[4], head.rest });
  ox_job_builder_put_doorway (builder, doorway);
  return TRUE;
}

static gboolean
read_joint (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  g_auto (Head) head = { NULL };
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  if (!read_head (reader, node, &head) || !read_points (reader, node, "point", points, NULL))
    return FALSE;
  if (points->len < 2)
    return ox_read_fail (reader, node, _ ("joint %s has %u points; 2 or more are needed"), head.id, points->len);
  g_autoptr (OxJoint) joint
      = ox_joint_new (&(OxJoint){ head.id, head.name, points->len, (OxPoint *) (gpointer) points->data, head.rest });
  ox_job_builder_put_joint (builder, joint);
  return TRUE;
}

static gboolean
read_station (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const OxRange length_range = { "length", 0, FALSE, 1000, TRUE, 0 };
  g_auto (Head) head = { NULL };
  int kind;
  OxPoint at;
  double length;
  if (!read_head (reader, node, &head)
      || !ox_read_choice (reader, node, &(OxChoice){ "kind", ox_words_station, -1 }, &kind)
      || !read_point (reader, node, &at) || !ox_read_number (reader, node, &length_range, &length))
    return FALSE;
  g_autoptr (OxStation) station
      = ox_station_new (&(OxStation){ head.id, head.name, (OxStationKind) kind, at, length, head.rest });
  ox_job_builder_put_station (builder, station);
  return TRUE;
}

static gboolean
read_condition (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const OxRange speed_range = { "speed", 0, TRUE, 1000, FALSE, 0 };
  g_auto (Head) head = { NULL };
  double coats, speed;
  if (!read_head (reader, node, &head) || !read_coats (reader, node, 0, &coats)
      || !ox_read_number (reader, node, &speed_range, &speed))
    return FALSE;
  g_autofree char *profile = ox_read_text (reader, node, "profile", "");
  g_autoptr (OxRing) ring = profile ? read_ring (reader, node, NULL) : NULL;
  if (!ring)
    return FALSE;
  g_autoptr (OxCondition) condition
      = ox_condition_new (&(OxCondition){ head.id, head.name, ring, speed, (guint) coats, profile, head.rest });
  ox_job_builder_put_condition (builder, condition);
  return TRUE;
}

gboolean
ox_read_item (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const struct
  {
    const char *element;
    gboolean (*read) (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder);
  } rows[] = {
    { "room", read_room },
    { "excluded", read_excluded },
    { "doorway", read_doorway },
    { "joint", read_joint },
    { "station", read_station },
    { "condition", read_condition },
    { "traced-plan", ox_read_traced },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (xmlStrEqual (node->name, BAD_CAST rows[i].element))
      return rows[i].read (reader, node, builder);
  for (int kind = 0; ox_words_obstacle[kind]; kind++)
    if (xmlStrEqual (node->name, BAD_CAST ox_words_obstacle[kind]))
      return read_obstacle (reader, node, (OxObstacleKind) kind, builder);
  g_return_val_if_reached (FALSE);
}
