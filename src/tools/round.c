/* Oxturn: tools/round - a circular obstacle: middle, then rim or typed diameter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

#define DRAG_PX 5.0

typedef struct
{
  OxTool base;
  gboolean begun;
  OxPoint centre;
  OxPoint pressed_at;
  OxPoint rim; /* pointer, not snapped */
  gboolean free;
  gboolean seen;
  OxSnap hover;
  OxTyped typed; /* diameter */
} Round;

static double
radius (const Round *self, const OxScene *scene)
{
  double diameter = 2 * ox_point_distance (self->centre, self->rim);
  double step = ox_snap_step (scene->job->units, scene->px_per_m);

  if (!self->free)
    diameter = round (diameter / step) * step;
  ox_typed_length (&self->typed, 0, scene->job->units, &diameter);
  return diameter / 2;
}

static void
round_cancel (OxTool *tool)
{
  Round *self = (Round *) tool;

  self->begun = FALSE;
  ox_typed_clear (&self->typed);
}

static void
finish (Round *self, const OxScene *scene, OxToolAnswer *answer)
{
  g_autofree char *id = ox_job_new_id (scene->job, "O");
  OxObstacle draft = { .id = id, .name = (char *) "", .kind = scene->obstacle_kind };
  g_autoptr (OxObstacle) obstacle = NULL;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  draft.shape.kind = OX_SHAPE_CIRCLE;
  draft.shape.centre = self->centre;
  draft.shape.radius = radius (self, scene);
  if (draft.shape.radius < OX_GRID)
    {
      answer->refusal = g_strdup (_ ("That circle has no size. Point to its rim, or type its diameter."));
      return;
    }
  obstacle = ox_obstacle_new (&draft);
  job = ox_job_with_obstacle (scene->job, obstacle, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Draw Obstacle"), id);
  if (job != NULL)
    round_cancel (&self->base);
}

static void
round_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Round *self = (Round *) tool;

  (void) answer;
  self->seen = TRUE;
  self->free = (pointer->hold & OX_HOLD_CONTROL) != 0;
  self->rim = pointer->at;
  if (!self->begun)
    self->hover = ox_tool_snap (scene, pointer);
}

static void
round_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Round *self = (Round *) tool;

  round_motion (tool, scene, pointer, answer);
  if (self->begun)
    {
      finish (self, scene, answer);
      return;
    }
  self->begun = TRUE;
  self->centre = self->hover.at;
  self->pressed_at = pointer->at;
  ox_typed_clear (&self->typed);
}

static void
round_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Round *self = (Round *) tool;

  if (!self->begun || ox_point_distance (self->pressed_at, pointer->at) * scene->px_per_m < DRAG_PX)
    return;
  round_motion (tool, scene, pointer, answer);
  finish (self, scene, answer);
}

static gboolean
round_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  Round *self = (Round *) tool;

  if (!self->begun)
    return FALSE;
  if (key->name == OX_KEY_ENTER)
    finish (self, scene, answer);
  else if (key->name == OX_KEY_ESCAPE && !ox_typed_is_empty (&self->typed))
    ox_typed_clear (&self->typed);
  else if (key->name == OX_KEY_ESCAPE)
    round_cancel (tool);
  else
    return key->name != OX_KEY_TAB && ox_tool_typed_key (&self->typed, key);
  return TRUE;
}

static gboolean
round_is_busy (const OxTool *tool)
{
  return ((const Round *) tool)->begun;
}

static void
round_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Round *self = (const Round *) tool;
  const char *const names[2] = { _ ("Diameter"), NULL };
  g_autofree char *diameter = NULL;
  g_autofree char *text = NULL;
  g_autoptr (OxRing) ring = NULL;
  double r;

  if (!self->begun)
    {
      if (self->seen)
        ox_tool_preview_snap (preview, &self->hover);
      return;
    }
  r = radius (self, scene);
  diameter = ox_units_length_text (scene->job->units, 2 * r, TRUE);
  text = ox_tool_typed_text (&self->typed, names, (const char *const[2]){ diameter, NULL });
  ring = ox_ring_new_circle (self->centre, MAX (r, OX_GRID), TRUE);
  ox_preview_add (preview, OX_PREVIEW_OUTLINE, ring->points, ring->n);
  ox_preview_add (preview, OX_PREVIEW_SNAP, &self->centre, 1);
  ox_preview_add_label (preview, (OxPoint){ self->centre.x, self->centre.y - r }, text);
}

static const char *
round_hint (const OxTool *tool)
{
  if (((const Round *) tool)->begun)
    return _ ("Click the rim, or type the diameter and press Enter. Esc starts again.");
  return _ ("Click the middle of the obstacle, or drag from its middle to its rim.");
}

const OxToolTable ox_tool_round_table = {
  .size = sizeof (Round),
  .press = round_press,
  .motion = round_motion,
  .release = round_release,
  .key = round_key,
  .cancel = round_cancel,
  .is_busy = round_is_busy,
  .preview = round_preview,
  .hint = round_hint,
};
