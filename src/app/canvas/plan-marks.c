/* Oxturn: app/canvas/plan-marks - what is shown over the plan: a strip or area that is asked about, the machine at work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/plan-marks.h"

#include "session/plan-words.h"
#include "session/work-clock.h"

static void
add_strip (OxPreview *preview, OxPreviewKind kind, const OxPlan *plan, const OxStrip *strip)
{
  OxPoint corners[4];

  ox_strip_corners (strip, plan->job->machine->blast_length, corners);
  ox_preview_add (preview, kind, corners, 4);
}

/* An area is marked by the box around it: its own outline is on the floor already. */
void
ox_plan_marks_add_pointed (OxPreview *preview, const OxPlan *plan, const char *id)
{
  const OxStrip *strip = ox_plan_strip_of (plan, id);
  OxBox box = OX_BOX_EMPTY;

  if (strip != NULL)
    add_strip (preview, OX_PREVIEW_SELECTED, plan, strip);
  for (guint i = 0; i < plan->n_edges; i++)
    if (g_str_equal (plan->edges[i].id, id))
      box = ox_region_box (plan->edges[i].region);
  for (guint i = 0; i < plan->n_zones; i++)
    if (g_str_equal (plan->zones[i].id, id))
      box = ox_region_box (plan->zones[i].region);
  if (!ox_box_is_empty (box))
    ox_preview_add (preview, OX_PREVIEW_SELECTED,
                    (const OxPoint[]){ { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } },
                    4);
}

/* The body reaches from rear to front along the heading, from right to left across it. */
static void
add_machine (OxPreview *preview, const OxMachine *machine, const OxWorkState *state)
{
  const double along[] = { -machine->rear, machine->front, machine->front, -machine->rear };
  const double across[] = { -machine->right, -machine->right, machine->left, machine->left };
  double c = cos (state->heading), s = sin (state->heading);
  OxPoint body[4], nose[2];

  for (guint i = 0; i < 4; i++)
    body[i] = (OxPoint){ state->at.x + along[i] * c - across[i] * s, state->at.y + along[i] * s + across[i] * c };
  nose[0] = state->at;
  nose[1] = (OxPoint){ state->at.x + machine->front * c, state->at.y + machine->front * s };
  ox_preview_add (preview, OX_PREVIEW_OUTLINE, body, 4);
  ox_preview_add (preview, OX_PREVIEW_LINE, nose, 2);
}

void
ox_plan_marks_add_clock (OxPreview *preview, const OxPlan *plan, double minutes)
{
  OxWorkState state;

  if (plan->n_strips == 0)
    return;
  state = ox_work_at (plan, minutes);
  for (guint i = 0; i < state.done; i++)
    add_strip (preview, OX_PREVIEW_DONE, plan, &plan->strips[i]);
  if (state.blasting)
    {
      OxStrip begun = plan->strips[state.done];

      begun.b = state.at;
      add_strip (preview, OX_PREVIEW_DONE, plan, &begun);
    }
  add_machine (preview, plan->job->machine, &state);
}
