/* Oxturn: tools/station - where the dust collector stands or power is taken: one click.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxTool base;
  gboolean seen;
  OxSnap hover;
} Station;

static void
station_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Station *self = (Station *) tool;

  (void) answer;
  self->seen = TRUE;
  self->hover = ox_tool_snap (scene, pointer);
}

/* The first one is the collector, since dust decides the order of work; the inspector changes the kind. */
static void
station_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Station *self = (Station *) tool;
  g_autofree char *id = ox_job_new_id (scene->job, "S");
  OxStation draft = { .id = id, .name = (char *) "", .kind = OX_STATION_COLLECTOR };
  g_autoptr (OxStation) station = NULL;
  g_autoptr (GError) error = NULL;
  OxJob *job;

  station_motion (tool, scene, pointer, answer);
  draft.at = self->hover.at;
  station = ox_station_new (&draft);
  job = ox_job_with_station (scene->job, station, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Place Station"), id);
}

static void
station_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Station *self = (const Station *) tool;

  (void) scene;
  if (self->seen)
    ox_tool_preview_snap (preview, &self->hover);
}

static const char *
station_hint (const OxTool *tool)
{
  (void) tool;
  return _ ("Click where the dust collector stands or power is taken.");
}

const OxToolTable ox_tool_station_table = {
  .size = sizeof (Station),
  .press = station_press,
  .motion = station_motion,
  .preview = station_preview,
  .hint = station_hint,
};
