/* Oxturn: tools/outline - outlines and joints corner by corner: clicked, or typed as length and angle.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxTool base;
  GArray *corners; /* (nullable) of OxPoint, placed so far */
  OxTyped typed;   /* length, angle */
  gboolean seen;   /* whether @hover says anything */
  OxSnap hover;
} Outline;

static guint
count (const Outline *self)
{
  return self->corners != NULL ? self->corners->len : 0;
}

static OxPoint
corner (const Outline *self, guint i)
{
  return g_array_index (self->corners, OxPoint, i);
}

static double
heading_deg (OxPoint a, OxPoint b)
{
  double deg = atan2 (b.y - a.y, b.x - a.x) * 180 / G_PI;

  return deg < -1e-9 ? deg + 360 : fabs (deg);
}

/* Where the running side ends: what was typed counts before what is pointed at. */
static OxPoint
next_corner (const Outline *self, const OxScene *scene)
{
  OxPoint last = corner (self, count (self) - 1);
  OxPoint to = ox_point_sub (self->hover.at, last);
  double length = hypot (to.x, to.y);
  double angle = heading_deg (last, self->hover.at);
  gboolean typed_angle = ox_typed_angle (&self->typed, 1, &angle);
  double turn = angle * G_PI / 180;
  gboolean typed_length;

  if (typed_angle)
    length = MAX (0, ox_point_dot (to, (OxPoint){ cos (turn), sin (turn) }));
  typed_length = ox_typed_length (&self->typed, 0, scene->job->units, &length);
  if (!typed_angle && !typed_length)
    return self->hover.at;
  return ox_point_snap (ox_point_add (last, (OxPoint){ length * cos (turn), length * sin (turn) }));
}

static void
reset (Outline *self)
{
  g_clear_pointer (&self->corners, g_array_unref);
  ox_typed_clear (&self->typed);
}

static void
outline_cancel (OxTool *tool)
{
  reset ((Outline *) tool);
}

/* Rings run counter-clockwise, whichever way round the corners were placed. */
static OxRing *
make_ring (const Outline *self)
{
  g_autoptr (OxRing) ring = ox_ring_new ((const OxPoint *) self->corners->data, count (self));
  g_autofree OxPoint *turned = NULL;

  if (ox_ring_area (ring) >= 0)
    return g_steal_pointer (&ring);
  turned = g_new (OxPoint, ring->n);
  for (guint i = 0; i < ring->n; i++)
    turned[i] = ring->points[ring->n - 1 - i];
  return ox_ring_new (turned, ring->n);
}

static void
make_joint (const Outline *self, const OxScene *scene, OxToolAnswer *answer)
{
  g_autofree char *id = ox_job_new_id (scene->job, "J");
  OxJoint draft = { .id = id, .name = (char *) "", .n = count (self) };
  g_autoptr (OxJoint) joint = NULL;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  draft.points = (OxPoint *) self->corners->data;
  joint = ox_joint_new (&draft);
  job = ox_job_with_joint (scene->job, joint, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Draw Joint"), id);
}

static void
close_outline (Outline *self, const OxScene *scene, OxToolAnswer *answer)
{
  OxShape shape = { .kind = OX_SHAPE_POLYGON };
  g_autoptr (OxRing) ring = NULL;

  if (self->base.kind == OX_TOOL_JOINT)
    make_joint (self, scene, answer);
  else
    shape.ring = ring = make_ring (self);
  if (self->base.kind == OX_TOOL_ROOM_CORNERS)
    ox_tool_answer_room (answer, scene, ring);
  else if (self->base.kind == OX_TOOL_OBSTACLE_CORNERS)
    ox_tool_answer_obstacle (answer, scene, &shape);
  else if (self->base.kind == OX_TOOL_EXCLUDED_CORNERS)
    ox_tool_answer_excluded (answer, scene, ring);
  else if (self->base.kind == OX_TOOL_CONDITION_CORNERS)
    ox_tool_answer_condition (answer, scene, ring);
  if (answer->job != NULL)
    reset (self);
}

/* A joint is a line: it has two ends and does not come back. */
static guint
least (const Outline *self)
{
  return self->base.kind == OX_TOOL_JOINT ? 2 : 3;
}

static void
place (Outline *self, OxPoint at)
{
  if (self->corners == NULL)
    self->corners = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_typed_clear (&self->typed);
  if (count (self) == 0 || ox_point_distance (corner (self, count (self) - 1), at) >= OX_GRID)
    g_array_append_val (self->corners, at);
}

static gboolean
on_first (const Outline *self, const OxScene *scene, OxPoint at)
{
  return least (self) == 3 && count (self) >= 3
         && ox_point_distance (corner (self, 0), at) * scene->px_per_m <= OX_SNAP_RADIUS_PX;
}

static void
hover (Outline *self, const OxScene *scene, const OxPointer *pointer)
{
  guint n = count (self);
  OxPoint first, last, before;
  OxSnapOptions options = { .px_per_m = scene->px_per_m,
                            .free = (pointer->hold & OX_HOLD_CONTROL) != 0,
                            .steps = (pointer->hold & OX_HOLD_SHIFT) != 0 };

  if (n > 0)
    {
      first = corner (self, 0);
      last = corner (self, n - 1);
      options.last = &last;
    }
  if (n > 1)
    {
      before = corner (self, n - 2);
      options.before = &before;
      options.first = &first;
    }
  self->seen = TRUE;
  if (on_first (self, scene, pointer->at))
    self->hover = (OxSnap){ .kind = OX_SNAP_CORNER, .at = first };
  else
    self->hover = ox_snap_find (scene->job, pointer->at, &options);
}

static void
outline_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Outline *self = (Outline *) tool;

  hover (self, scene, pointer);
  if (ox_typed_is_empty (&self->typed) && on_first (self, scene, self->hover.at))
    close_outline (self, scene, answer);
  else if (pointer->clicks == 2 && count (self) >= least (self))
    close_outline (self, scene, answer);
  else if (count (self) == 0)
    place (self, self->hover.at);
  else
    place (self, next_corner (self, scene));
}

static void
outline_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  (void) answer;
  hover ((Outline *) tool, scene, pointer);
}

static gboolean
step_back (Outline *self)
{
  if (!ox_typed_is_empty (&self->typed) || self->typed.field > 0)
    ox_typed_clear (&self->typed);
  else if (count (self) > 1)
    g_array_set_size (self->corners, count (self) - 1);
  else if (count (self) == 1)
    reset (self);
  else
    return FALSE;
  return TRUE;
}

static gboolean
outline_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  Outline *self = (Outline *) tool;

  if (key->name == OX_KEY_ESCAPE)
    return step_back (self);
  if (count (self) == 0)
    return FALSE;
  if (key->name != OX_KEY_ENTER)
    return ox_tool_typed_key (&self->typed, key);
  if (!ox_typed_is_empty (&self->typed))
    {
      OxPoint at = next_corner (self, scene);

      place (self, at);
      /* With the pointer at rest the next side would start at nothing; it goes on from here. */
      self->hover.at = at;
      self->hover.guided = FALSE;
    }
  else if (count (self) >= least (self))
    close_outline (self, scene, answer);
  else if (least (self) == 2)
    answer->refusal = g_strdup (_ ("A joint needs two ends. Click the next one, or type a length."));
  else
    answer->refusal = g_strdup (_ ("An outline needs three corners or more. Click the next one, or type a length."));
  return TRUE;
}

static gboolean
outline_is_busy (const OxTool *tool)
{
  return count ((const Outline *) tool) > 0;
}

static void
preview_side (const Outline *self, const OxScene *scene, OxPreview *preview, OxPoint next)
{
  OxPoint last = corner (self, count (self) - 1);
  OxPoint middle = { (last.x + next.x) / 2, (last.y + next.y) / 2 };
  const char *const names[2] = { _ ("Length"), _ ("Angle") };
  g_autofree char *length = ox_units_length_text (scene->job->units, ox_point_distance (last, next), TRUE);
  g_autofree char *angle = g_strdup_printf ("%.1f\302\260", heading_deg (last, next));
  const char *const values[2] = { length, angle };
  g_autofree char *text = ox_tool_typed_text (&self->typed, names, values);

  ox_preview_add_label (preview, middle, text);
}

static void
outline_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Outline *self = (const Outline *) tool;
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  OxPoint next;

  if (count (self) > 0)
    {
      next = next_corner (self, scene);
      g_array_append_vals (all, self->corners->data, count (self));
      g_array_append_val (all, next);
      if (all->len > 2 && least (self) == 3)
        ox_preview_add (preview, OX_PREVIEW_OUTLINE, (const OxPoint *) all->data, all->len);
      ox_preview_add (preview, OX_PREVIEW_LINE, (const OxPoint *) all->data, all->len);
      for (guint i = 0; i < count (self); i++)
        ox_preview_add (preview, OX_PREVIEW_HANDLE, &g_array_index (all, OxPoint, i), 1);
      preview_side (self, scene, preview, next);
    }
  if (self->seen && ox_typed_is_empty (&self->typed))
    ox_tool_preview_snap (preview, &self->hover);
}

static const char *
first_hint (OxToolKind kind)
{
  if (kind == OX_TOOL_OBSTACLE_CORNERS)
    return _ ("Click the first corner of the obstacle.");
  if (kind == OX_TOOL_EXCLUDED_CORNERS)
    return _ ("Click the first corner of the floor that is left out.");
  if (kind == OX_TOOL_CONDITION_CORNERS)
    return _ ("Click the first corner of the floor that is worked otherwise.");
  if (kind == OX_TOOL_JOINT)
    return _ ("Click where the joint begins.");
  return _ ("Click the first corner of the room.");
}

static const char *
outline_hint (const OxTool *tool)
{
  guint n = count ((const Outline *) tool);

  if (n == 0)
    return first_hint (tool->kind);
  if (tool->kind == OX_TOOL_JOINT && n > 1)
    return _ ("Click the next bend or type it. Enter or a double click ends the joint. Esc steps back.");
  if (n < 3)
    return _ ("Click the next corner, or type its length, Tab, its angle, and press Enter. Esc steps back.");
  return _ ("Click the next corner or type it. Enter or a click on the first corner closes it. Shift keeps to steps of 15 degrees, Esc steps back.");
}

const OxToolTable ox_tool_outline_table = {
  .size = sizeof (Outline),
  .press = outline_press,
  .motion = outline_motion,
  .key = outline_key,
  .cancel = outline_cancel,
  .is_busy = outline_is_busy,
  .preview = outline_preview,
  .hint = outline_hint,
  .clear = outline_cancel,
};
