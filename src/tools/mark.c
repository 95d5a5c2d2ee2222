/* Oxturn: tools/mark - strips and edge work marked done on the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A click marks the strip or edge area under it, or takes its mark back; where it is to be "up to here", all strips
 * before it as well. A drag from one strip to another marks the run between them.
 */
#include "session/marking.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxTool base;
  guint from; /* number of the strip that was pressed on, 0 while nothing is held */
} Mark;

static GArray *
numbers_of (guint from, guint to)
{
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = MIN (from, to); i <= MAX (from, to); i++)
    g_array_append_val (numbers, i);
  return numbers;
}

static void
mark_edge (const OxScene *scene, guint number, OxToolAnswer *answer)
{
  g_autoptr (GArray) numbers = numbers_of (number, number);
  g_autoptr (GError) error = NULL;
  gboolean done = scene->plan->edges[number - 1].done > 0;
  OxJob *job = done ? ox_unmark_edges (scene->job, scene->plan, numbers, &error)
                    : ox_mark_edges (scene->job, scene->plan, numbers, scene->mark, &error);

  ox_tool_answer_edit (answer, job, error, done ? _ ("Take Back Marks of Edge Work") : _ ("Mark Edge Work Done"), NULL);
}

/* A click on one that is done takes its mark back; in a run what is done keeps its mark. */
static void
mark_strips (const OxScene *scene, guint from, guint to, OxToolAnswer *answer)
{
  g_autoptr (GArray) numbers = numbers_of (from, to);
  g_autoptr (GError) error = NULL;
  gboolean done = from == to && scene->plan->strips[from - 1].done > 0;
  OxJob *job = done ? ox_unmark_strips (scene->job, scene->plan, numbers, &error)
                    : ox_mark_strips (scene->job, scene->plan, numbers, scene->mark, &error);

  ox_tool_answer_edit (answer, job, error, done ? _ ("Take Back Marks of Strips") : _ ("Mark Strips Done"), NULL);
}

static void
mark_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Mark *self = (Mark *) tool;
  guint edge = 0;

  self->from = 0;
  if (scene->plan == NULL || scene->mark == NULL)
    {
      answer->refusal = g_strdup (_ ("There is no plan yet whose strips could be marked"));
      return;
    }
  self->from = ox_marking_strip_at (scene->plan, pointer->at);
  if (self->from == 0)
    edge = ox_marking_edge_at (scene->plan, pointer->at);
  if (edge > 0)
    mark_edge (scene, edge, answer);
}

static void
mark_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  (void) tool;
  (void) scene;
  (void) pointer;
  (void) answer;
}

static void
mark_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Mark *self = (Mark *) tool;
  guint from = self->from, to;

  self->from = 0;
  if (from == 0 || scene->plan == NULL || scene->mark == NULL || from > scene->plan->n_strips)
    return;
  to = ox_marking_strip_at (scene->plan, pointer->at);
  if (to == 0)
    return;
  if (scene->mark_up_to && from == to)
    from = 1;
  mark_strips (scene, from, to, answer);
}

static void
mark_cancel (OxTool *tool)
{
  ((Mark *) tool)->from = 0;
}

static gboolean
mark_is_busy (const OxTool *tool)
{
  return ((const Mark *) tool)->from > 0;
}

static void
mark_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  (void) tool;
  (void) scene;
  (void) preview;
}

static const char *
mark_hint (const OxTool *tool)
{
  (void) tool;
  return _ ("Click a strip or edge work to mark it done, again to take it back. Drag from one strip to another for all "
            "between.");
}

static const char *
mark_cursor (const OxTool *tool)
{
  (void) tool;
  return "pointer";
}

const OxToolTable ox_tool_mark_table = {
  .size = sizeof (Mark),
  .press = mark_press,
  .motion = mark_motion,
  .release = mark_release,
  .cancel = mark_cancel,
  .is_busy = mark_is_busy,
  .preview = mark_preview,
  .hint = mark_hint,
  .cursor = mark_cursor,
};
