/* Oxturn: tools/doorway - a gap between two points of a wall.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "tools/two-point.h"

#include <glib/gi18n-lib.h>

#define WALL_RADIUS_PX 14.0
#define WALL_DEPTH_MAX 1.0     /* m: what lies further apart is no wall but floor between two rooms */
#define WALL_DEPTH_DEFAULT 0.2 /* m: where there is no room behind the wall */

typedef struct
{
  OxPoint a, b;      /* the side, from corner to corner */
  double length;     /* m */
  OxPoint along;     /* unit vector a -> b */
  OxPoint outwards;  /* unit vector away from the room */
  const char *owner; /* id of the room; borrowed from the job of the event */
} Wall;

typedef struct
{
  OxTwoPoint base; /* typed: width */
  Wall wall;       /* of the first point, while begun; its owner is not kept */
  char *room_id;   /* (nullable) of that wall */
  double from, to; /* m along the wall */
  gboolean near;   /* whether the pointer is at a wall, before the first point */
  OxPoint hover;
} Doorway;

static Wall
wall_of (const OxRoom *room, guint side)
{
  OxPoint a = room->ring->points[side];
  OxPoint b = room->ring->points[(side + 1) % room->ring->n];
  Wall wall = { .a = a, .b = b, .length = ox_point_distance (a, b), .owner = room->id };
  double turn = ox_ring_area (room->ring) >= 0 ? 1 : -1;

  wall.along = ox_point_scale (ox_point_sub (b, a), 1 / wall.length);
  wall.outwards = (OxPoint){ turn * wall.along.y, -turn * wall.along.x };
  return wall;
}

static gboolean
find_wall (const OxScene *scene, OxPoint at, Wall *out)
{
  double best = WALL_RADIUS_PX / scene->px_per_m;
  gboolean found = FALSE;

  for (guint i = 0; i < scene->job->n_rooms; i++)
    {
      const OxRoom *room = scene->job->rooms[i];

      for (guint side = 0; side < room->ring->n; side++)
        {
          OxPoint b = room->ring->points[(side + 1) % room->ring->n];
          double d = ox_point_segment_distance (at, room->ring->points[side], b, NULL);

          if (d < best)
            {
              best = d;
              *out = wall_of (room, side);
              found = TRUE;
            }
        }
    }
  return found;
}

/* How far @at lies along the wall, on the step unless held free, within the wall. */
static double
along (const Wall *wall, const OxScene *scene, const OxPointer *pointer)
{
  double d = ox_point_dot (ox_point_sub (pointer->at, wall->a), wall->along);
  double step = ox_snap_step (scene->job->units, scene->px_per_m);

  if ((pointer->hold & OX_HOLD_CONTROL) == 0)
    d = round (d / step) * step;
  return CLAMP (d, 0, wall->length);
}

/* The nearest side of another room that faces the middle of the gap: what lies between is the wall. */
static double
wall_depth (const OxScene *scene, const Wall *wall, OxPoint middle, const char *room_id)
{
  double depth = INFINITY;

  for (guint i = 0; i < scene->job->n_rooms; i++)
    {
      const OxRing *ring = scene->job->rooms[i]->ring;

      if (g_str_equal (scene->job->rooms[i]->id, room_id))
        continue;
      for (guint k = 0; k < ring->n; k++)
        {
          OxPoint p = ox_point_sub (ring->points[k], middle);
          OxPoint q = ox_point_sub (ring->points[(k + 1) % ring->n], middle);
          double u = ox_point_dot (p, wall->along);
          double v = ox_point_dot (q, wall->along);
          double distance;

          if (u * v > 0 || fabs (u - v) < OX_GRID)
            continue;
          distance = (ox_point_dot (p, wall->outwards) * v - ox_point_dot (q, wall->outwards) * u) / (v - u);
          if (distance > -OX_GRID && distance < depth)
            depth = MAX (0, distance);
        }
    }
  return depth <= WALL_DEPTH_MAX ? ox_snap (depth) : WALL_DEPTH_DEFAULT;
}

static double
far_end (const Doorway *self, const OxScene *scene)
{
  double width;

  if (!ox_typed_length (&self->base.typed, 0, scene->job->units, &width))
    return self->to;
  return self->from + (self->to < self->from ? -width : width);
}

static void
gap (const Doorway *self, const OxScene *scene, OxPoint out[2], double *depth)
{
  double ends[2] = { self->from, far_end (self, scene) };
  OxPoint middle = ox_point_add (self->wall.a, ox_point_scale (self->wall.along, (ends[0] + ends[1]) / 2));

  *depth = wall_depth (scene, &self->wall, middle, self->room_id);
  for (guint i = 0; i < 2; i++)
    out[i] = ox_point_add (ox_point_add (self->wall.a, ox_point_scale (self->wall.along, ends[i])),
                           ox_point_scale (self->wall.outwards, *depth / 2));
}

static void
doorway_cancel (OxTool *tool)
{
  Doorway *self = (Doorway *) tool;

  ox_two_point_cancel (tool);
  g_clear_pointer (&self->room_id, g_free);
}

static void
doorway_finish (OxTool *tool, const OxScene *scene, OxToolAnswer *answer)
{
  const Doorway *self = (const Doorway *) tool;
  g_autofree char *id = ox_job_new_id (scene->job, "D");
  OxDoorway draft = { .id = id, .name = (char *) "" };
  g_autoptr (OxDoorway) doorway = NULL;
  g_autoptr (GError) error = NULL;
  OxPoint ends[2];
  OxJob *job;

  if (fabs (far_end (self, scene) - self->from) < OX_GRID)
    {
      answer->refusal = g_strdup (_ ("That doorway has no width. Point to its other end, or type its width."));
      return;
    }
  gap (self, scene, ends, &draft.depth);
  draft.a = ox_point_snap (ends[0]);
  draft.b = ox_point_snap (ends[1]);
  doorway = ox_doorway_new (&draft);
  job = ox_job_with_doorway (scene->job, doorway, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Place Doorway"), id);
}

static void
doorway_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Doorway *self = (Doorway *) tool;
  Wall wall;

  (void) answer;
  if (self->base.begun)
    {
      self->to = along (&self->wall, scene, pointer);
      return;
    }
  self->near = find_wall (scene, pointer->at, &wall);
  if (self->near)
    self->hover = ox_point_add (wall.a, ox_point_scale (wall.along, along (&wall, scene, pointer)));
}

static gboolean
doorway_begin (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Doorway *self = (Doorway *) tool;

  if (!find_wall (scene, pointer->at, &self->wall))
    {
      answer->refusal = g_strdup (_ ("A doorway lies in a wall: click on a side of a room."));
      return FALSE;
    }
  self->room_id = g_strdup (self->wall.owner);
  self->from = self->to = along (&self->wall, scene, pointer);
  return TRUE;
}

static void
doorway_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Doorway *self = (const Doorway *) tool;
  const char *const names[2] = { _ ("Width"), NULL };
  g_autofree char *width = NULL;
  g_autofree char *text = NULL;
  OxPoint ends[2];
  OxPoint across;
  double depth;

  if (!self->base.begun)
    {
      if (self->near)
        ox_preview_add (preview, OX_PREVIEW_SNAP, &self->hover, 1);
      return;
    }
  gap (self, scene, ends, &depth);
  across = ox_point_scale (self->wall.outwards, MAX (depth, 0.05) / 2);
  ox_preview_add (preview, OX_PREVIEW_OUTLINE,
                  (OxPoint[4]){ ox_point_sub (ends[0], across), ox_point_sub (ends[1], across),
                                ox_point_add (ends[1], across), ox_point_add (ends[0], across) },
                  4);
  width = ox_units_length_text (scene->job->units, ox_point_distance (ends[0], ends[1]), TRUE);
  text = ox_tool_typed_text (&self->base.typed, names, (const char *const[2]){ width, NULL });
  ox_preview_add_label (preview, (OxPoint){ (ends[0].x + ends[1].x) / 2, (ends[0].y + ends[1].y) / 2 }, text);
}

static const char *
doorway_hint (const OxTool *tool)
{
  if (ox_two_point_is_busy (tool))
    return _ ("Click the other end of the doorway, or type its width and press Enter. Esc starts again.");
  return _ ("Click one end of the doorway on a side of a room.");
}

const OxToolTable ox_tool_doorway_table = {
  .size = sizeof (Doorway),
  .press = ox_two_point_press,
  .motion = doorway_motion,
  .release = ox_two_point_release,
  .key = ox_two_point_key,
  .cancel = doorway_cancel,
  .is_busy = ox_two_point_is_busy,
  .preview = doorway_preview,
  .hint = doorway_hint,
  .clear = doorway_cancel,
  .n_fields = 1,
  .begin = doorway_begin,
  .finish = doorway_finish,
};
