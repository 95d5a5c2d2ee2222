/* Oxturn: tools/two-point - the course of whatever is drawn between two points: box, circle, doorway.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/two-point.h"

#define DRAG_PX 5.0 /* a press and release this far apart or further are a drag from point to point */

static void
finish (OxTool *tool, const OxScene *scene, OxToolAnswer *answer)
{
  tool->table->finish (tool, scene, answer);
  if (answer->job != NULL)
    tool->table->cancel (tool);
}

void
ox_two_point_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  OxTwoPoint *self = (OxTwoPoint *) tool;

  if (self->begun)
    {
      tool->table->motion (tool, scene, pointer, answer);
      finish (tool, scene, answer);
      return;
    }
  if (!tool->table->begin (tool, scene, pointer, answer))
    return;
  self->begun = TRUE;
  self->pressed_at = pointer->at;
  ox_typed_clear (&self->typed);
}

void
ox_two_point_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  const OxTwoPoint *self = (const OxTwoPoint *) tool;

  if (!self->begun || ox_point_distance (self->pressed_at, pointer->at) * scene->px_per_m < DRAG_PX)
    return;
  tool->table->motion (tool, scene, pointer, answer);
  finish (tool, scene, answer);
}

gboolean
ox_two_point_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  OxTwoPoint *self = (OxTwoPoint *) tool;

  if (!self->begun)
    return FALSE;
  if (key->name == OX_KEY_ENTER)
    finish (tool, scene, answer);
  else if (key->name == OX_KEY_ESCAPE && !ox_typed_is_empty (&self->typed))
    ox_typed_clear (&self->typed);
  else if (key->name == OX_KEY_ESCAPE)
    tool->table->cancel (tool);
  else
    return (key->name != OX_KEY_TAB || tool->table->n_fields > 1) && ox_tool_typed_key (&self->typed, key);
  return TRUE;
}

void
ox_two_point_cancel (OxTool *tool)
{
  OxTwoPoint *self = (OxTwoPoint *) tool;

  self->begun = FALSE;
  ox_typed_clear (&self->typed);
}

gboolean
ox_two_point_is_busy (const OxTool *tool)
{
  return ((const OxTwoPoint *) tool)->begun;
}
