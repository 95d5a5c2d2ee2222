/* Oxturn: tools/round - a circular obstacle: middle, then rim or typed diameter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/two-point.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxTwoPoint base; /* typed: diameter */
  OxPoint centre;
  OxPoint rim; /* pointer, not snapped */
  gboolean free;
  gboolean seen;
  OxSnap hover;
} Round;

static double
radius (const Round *self, const OxScene *scene)
{
  double diameter = 2 * ox_point_distance (self->centre, self->rim);
  double step = ox_snap_step (scene->job->units, scene->px_per_m);

  if (!self->free)
    diameter = round (diameter / step) * step;
  ox_typed_length (&self->base.typed, 0, scene->job->units, &diameter);
  return diameter / 2;
}

static void
round_finish (OxTool *tool, const OxScene *scene, OxToolAnswer *answer)
{
  const Round *self = (const Round *) tool;
  OxShape shape = { .kind = OX_SHAPE_CIRCLE, .centre = self->centre, .radius = radius (self, scene) };

  if (shape.radius < OX_GRID)
    answer->refusal = g_strdup (_ ("That circle has no size. Point to its rim, or type its diameter."));
  else
    ox_tool_answer_obstacle (answer, scene, &shape);
}

static void
round_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Round *self = (Round *) tool;

  (void) answer;
  self->seen = TRUE;
  self->free = (pointer->hold & OX_HOLD_CONTROL) != 0;
  self->rim = pointer->at;
  if (!self->base.begun)
    self->hover = ox_tool_snap (scene, pointer);
}

static gboolean
round_begin (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Round *self = (Round *) tool;

  round_motion (tool, scene, pointer, answer);
  self->centre = self->hover.at;
  return TRUE;
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

  if (!self->base.begun)
    {
      if (self->seen)
        ox_tool_preview_snap (preview, &self->hover);
      return;
    }
  r = radius (self, scene);
  diameter = ox_units_length_text (scene->job->units, 2 * r, TRUE);
  text = ox_tool_typed_text (&self->base.typed, names, (const char *const[2]){ diameter, NULL });
  ring = ox_ring_new_circle (self->centre, CLAMP (r, OX_GRID, OX_COORD_MAX), TRUE);
  ox_preview_add (preview, OX_PREVIEW_OUTLINE, ring->points, ring->n);
  ox_preview_add (preview, OX_PREVIEW_SNAP, &self->centre, 1);
  ox_preview_add_label (preview, (OxPoint){ self->centre.x, self->centre.y - r }, text);
}

static const char *
round_hint (const OxTool *tool)
{
  if (ox_two_point_is_busy (tool))
    return _ ("Click the rim, or type the diameter and press Enter. Esc starts again.");
  return _ ("Click the middle of the obstacle, or drag from its middle to its rim.");
}

const OxToolTable ox_tool_round_table = {
  .size = sizeof (Round),
  .press = ox_two_point_press,
  .motion = round_motion,
  .release = ox_two_point_release,
  .key = ox_two_point_key,
  .cancel = ox_two_point_cancel,
  .is_busy = ox_two_point_is_busy,
  .preview = round_preview,
  .hint = round_hint,
  .n_fields = 1,
  .begin = round_begin,
  .finish = round_finish,
};
