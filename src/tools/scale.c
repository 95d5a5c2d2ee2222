/* Oxturn: tools/scale - a traced plan brought to scale: two points on it and how far apart they are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first point stays where it is on the floor. Once both are set another click moves the nearer one, until Enter takes the distance
 * that was typed.
 */
#include "job/edit.h"
#include "session/selection.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

#define LEAST_PX 8.0 /* between the points: closer together the scale would be a guess */
#define DRAG_PX 5.0

typedef struct
{
  OxTool base;
  char *id;          /* (nullable) of the traced plan, while there is a point */
  guint n;           /* points set */
  OxPoint points[2]; /* m, as the plan lies now */
  gboolean seen;
  OxPoint hover;
  OxTyped typed;
} Scale;

static void
scale_cancel (OxTool *tool)
{
  Scale *self = (Scale *) tool;

  self->n = 0;
  g_clear_pointer (&self->id, g_free);
  ox_typed_clear (&self->typed);
}

static const OxTracedPlan *
find_traced (const OxJob *job, const char *id)
{
  guint i = 0;

  return id != NULL && ox_job_find (job, id, &i) == OX_ITEM_TRACED ? job->traced[i] : NULL;
}

/* The one that is selected, else the topmost one at @at that is shown. */
static const OxTracedPlan *
choose_traced (const OxScene *scene, OxPoint at)
{
  g_autofree char *item = scene->selection[0] != NULL ? ox_selection_item (scene->selection[0]) : NULL;
  const OxTracedPlan *selected = find_traced (scene->job, item);

  if (selected != NULL)
    return selected;
  for (guint i = scene->job->n_traced; i-- > 0;)
    {
      g_autoptr (OxRing) ring = ox_traced_plan_ring (scene->job->traced[i]);

      if (!scene->job->traced[i]->hidden && ox_ring_contains (ring, at))
        return scene->job->traced[i];
    }
  return NULL;
}

static gboolean
too_close (const Scale *self, const OxScene *scene, OxPoint at)
{
  return ox_point_distance (self->points[0], at) * scene->px_per_m < LEAST_PX;
}

static void
set_second (Scale *self, const OxScene *scene, OxPoint at, OxToolAnswer *answer)
{
  if (too_close (self, scene, at))
    {
      answer->refusal = g_strdup (_ ("The two points lie too close together. The further apart, the better the scale."));
      return;
    }
  self->points[1] = at;
  self->n = 2;
}

static void
set_first (Scale *self, const OxScene *scene, OxPoint at, OxToolAnswer *answer)
{
  const OxTracedPlan *traced = choose_traced (scene, at);

  if (traced == NULL)
    {
      answer->refusal = g_strdup (_ ("There is no traced plan here. Bring one in first, or click on one that is shown."));
      return;
    }
  self->id = g_strdup (traced->id);
  self->points[0] = at;
  self->n = 1;
}

static void
scale_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Scale *self = (Scale *) tool;

  (void) scene;
  (void) answer;
  self->seen = TRUE;
  self->hover = pointer->at;
}

static void
scale_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Scale *self = (Scale *) tool;
  OxPoint at = pointer->at;

  scale_motion (tool, scene, pointer, answer);
  if (self->n == 0)
    set_first (self, scene, at, answer);
  else if (self->n == 1)
    set_second (self, scene, at, answer);
  else if (ox_point_distance (at, self->points[0]) >= ox_point_distance (at, self->points[1]))
    set_second (self, scene, at, answer);
  else if (ox_point_distance (at, self->points[1]) * scene->px_per_m >= LEAST_PX)
    self->points[0] = at;
}

static void
scale_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Scale *self = (Scale *) tool;

  if (self->n == 1 && ox_point_distance (self->points[0], pointer->at) * scene->px_per_m >= DRAG_PX)
    set_second (self, scene, pointer->at, answer);
}

static void
finish (Scale *self, const OxScene *scene, OxToolAnswer *answer)
{
  const OxTracedPlan *traced = find_traced (scene->job, self->id);
  g_autoptr (OxTracedPlan) scaled = NULL;
  g_autoptr (GError) error = NULL;
  OxTracedPlan draft;
  double distance, factor;
  OxJob *job;

  if (traced == NULL)
    {
      scale_cancel (&self->base);
      return;
    }
  if (!ox_typed_length (&self->typed, 0, scene->job->units, &distance))
    {
      answer->refusal = g_strdup (_ ("Type how far apart the two points are in truth, then press Enter."));
      return;
    }
  factor = distance / ox_point_distance (self->points[0], self->points[1]);
  draft = *traced;
  draft.width *= factor;
  draft.depth *= factor;
  draft.middle = ox_point_add (self->points[0], ox_point_scale (ox_point_sub (draft.middle, self->points[0]), factor));
  scaled = ox_traced_plan_new (&draft);
  job = ox_job_with_traced (scene->job, scaled, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Set Scale of Traced Plan"), self->id);
  if (answer->job != NULL)
    scale_cancel (&self->base);
}

static gboolean
step_back (Scale *self)
{
  if (!ox_typed_is_empty (&self->typed))
    ox_typed_clear (&self->typed);
  else if (self->n == 2)
    self->n = 1;
  else if (self->n == 1)
    scale_cancel (&self->base);
  else
    return FALSE;
  return TRUE;
}

static gboolean
scale_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  Scale *self = (Scale *) tool;

  if (key->name == OX_KEY_ESCAPE)
    return step_back (self);
  if (self->n < 2)
    return FALSE;
  if (key->name != OX_KEY_ENTER)
    return key->name != OX_KEY_TAB && ox_tool_typed_key (&self->typed, key);
  finish (self, scene, answer);
  return TRUE;
}

static gboolean
scale_is_busy (const OxTool *tool)
{
  return ((const Scale *) tool)->n > 0;
}

static void
scale_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Scale *self = (const Scale *) tool;
  OxPoint ends[2] = { self->points[0], self->n == 2 ? self->points[1] : self->hover };
  const char *const names[2] = { _ ("Distance"), NULL };
  g_autofree char *now = NULL;
  g_autofree char *text = NULL;

  if (self->seen && self->n < 2)
    ox_preview_add (preview, OX_PREVIEW_SNAP, &self->hover, 1);
  if (self->n == 0)
    return;
  ox_preview_add (preview, OX_PREVIEW_LINE, ends, 2);
  for (guint i = 0; i < self->n; i++)
    ox_preview_add (preview, OX_PREVIEW_SNAP, &ends[i], 1);
  if (self->n < 2)
    return;
  now = ox_units_length_text (scene->job->units, ox_point_distance (ends[0], ends[1]), TRUE);
  text = ox_tool_typed_text (&self->typed, names, (const char *const[2]){ now, NULL });
  ox_preview_add_label (preview, ox_point_scale (ox_point_add (ends[0], ends[1]), 0.5), text);
}

static const char *
scale_hint (const OxTool *tool)
{
  switch (((const Scale *) tool)->n)
    {
    case 0:
      return _ ("Click a point of the traced plan that you know the distance from.");
    case 1:
      return _ ("Click the other point, as far away as you can. Esc steps back.");
    default:
      return _ ("Type how far apart the two points are in truth and press Enter. A click moves the nearer point, Esc steps back.");
    }
}

const OxToolTable ox_tool_scale_table = {
  .size = sizeof (Scale),
  .press = scale_press,
  .motion = scale_motion,
  .release = scale_release,
  .key = scale_key,
  .cancel = scale_cancel,
  .is_busy = scale_is_busy,
  .preview = scale_preview,
  .hint = scale_hint,
  .clear = scale_cancel,
};
