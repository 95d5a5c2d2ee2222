/* Oxturn: tools/box - rectangles between two corners: a room, an obstacle, an excluded or a condition area.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/two-point.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxTwoPoint base; /* typed: width, depth */
  OxPoint anchor;  /* the first corner */
  gboolean seen;
  OxSnap hover;
} Box;

/* The corner opposite to the anchor; a typed size runs to the side where the pointer is. */
static OxPoint
opposite (const Box *self, const OxScene *scene)
{
  OxPoint at = self->hover.at;
  double width, depth;

  if (ox_typed_length (&self->base.typed, 0, scene->job->units, &width))
    at.x = self->anchor.x + (at.x < self->anchor.x ? -width : width);
  if (ox_typed_length (&self->base.typed, 1, scene->job->units, &depth))
    at.y = self->anchor.y + (at.y < self->anchor.y ? -depth : depth);
  return ox_point_snap (at);
}

static void
corners (OxPoint a, OxPoint b, OxPoint out[4])
{
  OxBox box = OX_BOX_EMPTY;

  ox_box_add (&box, a);
  ox_box_add (&box, b);
  out[0] = (OxPoint){ box.x0, box.y0 };
  out[1] = (OxPoint){ box.x1, box.y0 };
  out[2] = (OxPoint){ box.x1, box.y1 };
  out[3] = (OxPoint){ box.x0, box.y1 };
}

static void
make_room (const OxScene *scene, const OxPoint points[4], OxToolAnswer *answer)
{
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);

  ox_tool_answer_room (answer, scene, ring);
}

static void
make_obstacle (const OxScene *scene, const OxPoint points[4], OxToolAnswer *answer)
{
  OxShape shape = { .kind = OX_SHAPE_RECTANGLE };

  shape.centre = (OxPoint){ (points[0].x + points[2].x) / 2, (points[0].y + points[2].y) / 2 };
  shape.width = points[2].x - points[0].x;
  shape.depth = points[2].y - points[0].y;
  ox_tool_answer_obstacle (answer, scene, &shape);
}

static void
make_area (OxToolKind kind, const OxScene *scene, const OxPoint points[4], OxToolAnswer *answer)
{
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);

  if (kind == OX_TOOL_EXCLUDED)
    ox_tool_answer_excluded (answer, scene, ring);
  else
    ox_tool_answer_condition (answer, scene, ring);
}

static void
box_finish (OxTool *tool, const OxScene *scene, OxToolAnswer *answer)
{
  const Box *self = (const Box *) tool;
  OxPoint points[4];

  corners (self->anchor, opposite (self, scene), points);
  if (points[2].x - points[0].x < OX_GRID || points[2].y - points[0].y < OX_GRID)
    {
      answer->refusal
          = g_strdup (_ ("That rectangle has no area. Point to the opposite corner, or type width, Tab, depth."));
      return;
    }
  if (tool->kind == OX_TOOL_ROOM_RECTANGLE)
    make_room (scene, points, answer);
  else if (tool->kind == OX_TOOL_EXCLUDED || tool->kind == OX_TOOL_CONDITION)
    make_area (tool->kind, scene, points, answer);
  else
    make_obstacle (scene, points, answer);
}

static void
box_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Box *self = (Box *) tool;

  (void) answer;
  self->seen = TRUE;
  self->hover = ox_tool_snap (scene, pointer);
}

static gboolean
box_begin (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Box *self = (Box *) tool;

  box_motion (tool, scene, pointer, answer);
  self->anchor = self->hover.at;
  return TRUE;
}

static void
box_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Box *self = (const Box *) tool;
  const char *const names[2] = { _ ("Width"), _ ("Depth") };
  g_autofree char *width = NULL;
  g_autofree char *depth = NULL;
  g_autofree char *text = NULL;
  OxPoint points[4];

  if (self->base.begun)
    {
      corners (self->anchor, opposite (self, scene), points);
      width = ox_units_length_text (scene->job->units, points[2].x - points[0].x, TRUE);
      depth = ox_units_length_text (scene->job->units, points[2].y - points[0].y, TRUE);
      text = ox_tool_typed_text (&self->base.typed, names, (const char *const[2]){ width, depth });
      ox_preview_add (preview, OX_PREVIEW_OUTLINE, points, 4);
      ox_preview_add_label (preview, (OxPoint){ (points[0].x + points[2].x) / 2, points[0].y }, text);
    }
  if (self->seen && ox_typed_is_empty (&self->base.typed))
    ox_tool_preview_snap (preview, &self->hover);
}

static const char *
box_hint (const OxTool *tool)
{
  const Box *self = (const Box *) tool;

  if (self->base.begun)
    return _ ("Click the opposite corner, or type width, Tab, depth, and press Enter. Esc starts again.");
  if (tool->kind == OX_TOOL_ROOM_RECTANGLE)
    return _ ("Click or drag from one corner of the room to the opposite one.");
  if (tool->kind == OX_TOOL_EXCLUDED)
    return _ ("Click or drag from one corner of the floor that is left out to the opposite one.");
  if (tool->kind == OX_TOOL_CONDITION)
    return _ ("Click or drag from one corner of the floor that is worked otherwise to the opposite one.");
  return _ ("Click or drag from one corner of the obstacle to the opposite one.");
}

const OxToolTable ox_tool_box_table = {
  .size = sizeof (Box),
  .press = ox_two_point_press,
  .motion = box_motion,
  .release = ox_two_point_release,
  .key = ox_two_point_key,
  .cancel = ox_two_point_cancel,
  .is_busy = ox_two_point_is_busy,
  .preview = box_preview,
  .hint = box_hint,
  .n_fields = 2,
  .begin = box_begin,
  .finish = box_finish,
};
