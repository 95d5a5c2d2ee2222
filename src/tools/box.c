/* Oxturn: tools/box - rectangles between two corners: a room, an obstacle, an excluded area.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

#define DRAG_PX 5.0 /* a press and release further apart than this is a drag from corner to corner */

typedef struct
{
  OxTool base;
  gboolean begun;
  OxPoint anchor;     /* the first corner */
  OxPoint pressed_at; /* pointer, not snapped */
  gboolean seen;
  OxSnap hover;
  OxTyped typed; /* width, depth */
} Box;

/* The corner opposite to the anchor; a typed size runs to the side where the pointer is. */
static OxPoint
opposite (const Box *self, const OxScene *scene)
{
  OxPoint at = self->hover.at;
  double width, depth;

  if (ox_typed_length (&self->typed, 0, scene->job->units, &width))
    at.x = self->anchor.x + (at.x < self->anchor.x ? -width : width);
  if (ox_typed_length (&self->typed, 1, scene->job->units, &depth))
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
box_cancel (OxTool *tool)
{
  Box *self = (Box *) tool;

  self->begun = FALSE;
  ox_typed_clear (&self->typed);
}

static void
make_room (const OxScene *scene, const OxPoint points[4], OxToolAnswer *answer)
{
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  g_autofree char *id = ox_job_new_id (scene->job, "R");
  g_autofree char *name = g_strdup_printf (_ ("Room %s"), id + 1);
  OxRoom draft = { .id = id, .name = name, .ring = ring, .profile = (char *) "" };
  g_autoptr (OxRoom) room = ox_room_new (&draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_room (scene->job, room, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Draw Room"), id);
}

static void
make_obstacle (const OxScene *scene, const OxPoint points[4], OxToolAnswer *answer)
{
  g_autofree char *id = ox_job_new_id (scene->job, "O");
  OxObstacle draft = { .id = id, .name = (char *) "", .kind = scene->obstacle_kind };
  g_autoptr (OxObstacle) obstacle = NULL;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  draft.shape.kind = OX_SHAPE_RECTANGLE;
  draft.shape.centre = (OxPoint){ (points[0].x + points[2].x) / 2, (points[0].y + points[2].y) / 2 };
  draft.shape.width = points[2].x - points[0].x;
  draft.shape.depth = points[2].y - points[0].y;
  obstacle = ox_obstacle_new (&draft);
  job = ox_job_with_obstacle (scene->job, obstacle, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Draw Obstacle"), id);
}

static void
make_excluded (const OxScene *scene, const OxPoint points[4], OxToolAnswer *answer)
{
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  g_autofree char *id = ox_job_new_id (scene->job, "X");
  OxExcluded draft = { .id = id, .name = (char *) "", .ring = ring };
  g_autoptr (OxExcluded) excluded = ox_excluded_new (&draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_excluded (scene->job, excluded, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Exclude Area"), id);
}

static void
finish (Box *self, const OxScene *scene, OxToolAnswer *answer)
{
  OxPoint points[4];

  corners (self->anchor, opposite (self, scene), points);
  if (points[2].x - points[0].x < OX_GRID || points[2].y - points[0].y < OX_GRID)
    {
      answer->refusal
          = g_strdup (_ ("That rectangle has no area. Point to the opposite corner, or type width, Tab, depth."));
      return;
    }
  if (self->base.kind == OX_TOOL_ROOM_RECTANGLE)
    make_room (scene, points, answer);
  else if (self->base.kind == OX_TOOL_EXCLUDED)
    make_excluded (scene, points, answer);
  else
    make_obstacle (scene, points, answer);
  if (answer->job != NULL)
    box_cancel (&self->base);
}

static void
box_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Box *self = (Box *) tool;

  (void) answer;
  self->seen = TRUE;
  self->hover = ox_tool_snap (scene, pointer);
}

static void
box_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Box *self = (Box *) tool;

  box_motion (tool, scene, pointer, answer);
  if (self->begun)
    {
      finish (self, scene, answer);
      return;
    }
  self->begun = TRUE;
  self->anchor = self->hover.at;
  self->pressed_at = pointer->at;
  ox_typed_clear (&self->typed);
}

static void
box_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Box *self = (Box *) tool;

  if (!self->begun || ox_point_distance (self->pressed_at, pointer->at) * scene->px_per_m < DRAG_PX)
    return;
  box_motion (tool, scene, pointer, answer);
  finish (self, scene, answer);
}

static gboolean
box_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  Box *self = (Box *) tool;

  if (!self->begun)
    return FALSE;
  if (key->name == OX_KEY_ENTER)
    finish (self, scene, answer);
  else if (key->name == OX_KEY_ESCAPE && !ox_typed_is_empty (&self->typed))
    ox_typed_clear (&self->typed);
  else if (key->name == OX_KEY_ESCAPE)
    box_cancel (tool);
  else
    return ox_tool_typed_key (&self->typed, key);
  return TRUE;
}

static gboolean
box_is_busy (const OxTool *tool)
{
  return ((const Box *) tool)->begun;
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

  if (self->begun)
    {
      corners (self->anchor, opposite (self, scene), points);
      width = ox_units_length_text (scene->job->units, points[2].x - points[0].x, TRUE);
      depth = ox_units_length_text (scene->job->units, points[2].y - points[0].y, TRUE);
      text = ox_tool_typed_text (&self->typed, names, (const char *const[2]){ width, depth });
      ox_preview_add (preview, OX_PREVIEW_OUTLINE, points, 4);
      ox_preview_add_label (preview, (OxPoint){ (points[0].x + points[2].x) / 2, points[0].y }, text);
    }
  if (self->seen && ox_typed_is_empty (&self->typed))
    ox_tool_preview_snap (preview, &self->hover);
}

static const char *
box_hint (const OxTool *tool)
{
  const Box *self = (const Box *) tool;

  if (self->begun)
    return _ ("Click the opposite corner, or type width, Tab, depth, and press Enter. Esc starts again.");
  if (self->base.kind == OX_TOOL_ROOM_RECTANGLE)
    return _ ("Click or drag from one corner of the room to the opposite one.");
  if (self->base.kind == OX_TOOL_EXCLUDED)
    return _ ("Click or drag from one corner of the floor that is left out to the opposite one.");
  return _ ("Click or drag from one corner of the obstacle to the opposite one.");
}

const OxToolTable ox_tool_box_table = {
  .size = sizeof (Box),
  .press = box_press,
  .motion = box_motion,
  .release = box_release,
  .key = box_key,
  .cancel = box_cancel,
  .is_busy = box_is_busy,
  .preview = box_preview,
  .hint = box_hint,
};
