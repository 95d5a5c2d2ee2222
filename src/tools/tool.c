/* Oxturn: tools/tool - what the pointer and the keys do on the canvas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const char *name;
  const char *title;
  const OxToolTable *table;
} Row;

static const Row rows[OX_N_TOOLS] = {
  [OX_TOOL_SELECT] = { "select", N_ ("Select"), &ox_tool_select_table },
  [OX_TOOL_ROOM_CORNERS] = { "room-corners", N_ ("Room by Corners"), &ox_tool_outline_table },
  [OX_TOOL_ROOM_RECTANGLE] = { "room-rectangle", N_ ("Rectangular Room"), &ox_tool_box_table },
  [OX_TOOL_OBSTACLE_RECTANGLE] = { "obstacle-rectangle", N_ ("Rectangular Obstacle"), &ox_tool_box_table },
  [OX_TOOL_OBSTACLE_CIRCLE] = { "obstacle-circle", N_ ("Round Obstacle"), &ox_tool_round_table },
  [OX_TOOL_OBSTACLE_CORNERS] = { "obstacle-corners", N_ ("Obstacle by Corners"), &ox_tool_outline_table },
  [OX_TOOL_EXCLUDED] = { "excluded", N_ ("Excluded Area"), &ox_tool_box_table },
  [OX_TOOL_EXCLUDED_CORNERS] = { "excluded-corners", N_ ("Excluded Area by Corners"), &ox_tool_outline_table },
  [OX_TOOL_CONDITION] = { "condition", N_ ("Condition Area"), &ox_tool_box_table },
  [OX_TOOL_CONDITION_CORNERS] = { "condition-corners", N_ ("Condition Area by Corners"), &ox_tool_outline_table },
  [OX_TOOL_JOINT] = { "joint", N_ ("Joint"), &ox_tool_outline_table },
  [OX_TOOL_DOORWAY] = { "doorway", N_ ("Doorway"), &ox_tool_doorway_table },
  [OX_TOOL_STATION] = { "station", N_ ("Station"), &ox_tool_station_table },
  [OX_TOOL_MEASURE] = { "measure", N_ ("Measure"), &ox_tool_measure_table },
  [OX_TOOL_MARK] = { "mark", N_ ("Mark Done"), &ox_tool_mark_table },
  [OX_TOOL_SCALE] = { "scale", N_ ("Scale of Traced Plan"), &ox_tool_scale_table },
};

void
ox_tool_answer_clear (OxToolAnswer *answer)
{
  g_clear_pointer (&answer->job, ox_job_unref);
  g_clear_pointer (&answer->label, g_free);
  g_clear_pointer (&answer->merge_key, g_free);
  g_clear_pointer (&answer->selection, g_strfreev);
  g_clear_pointer (&answer->refusal, g_free);
}

OxTool *
ox_tool_new (OxToolKind kind)
{
  const OxToolTable *table;
  OxTool *tool;

  g_return_val_if_fail (kind < OX_N_TOOLS, NULL);
  table = rows[kind].table;
  tool = g_malloc0 (table->size);
  tool->table = table;
  tool->kind = kind;
  return tool;
}

void
ox_tool_free (OxTool *tool)
{
  if (tool->table->clear != NULL)
    tool->table->clear (tool);
  g_free (tool);
}

const char *
ox_tool_kind_name (OxToolKind kind)
{
  g_return_val_if_fail (kind < OX_N_TOOLS, NULL);
  return rows[kind].name;
}

const char *
ox_tool_kind_title (OxToolKind kind)
{
  g_return_val_if_fail (kind < OX_N_TOOLS, NULL);
  return _ (rows[kind].title);
}

OxToolKind
ox_tool_get_kind (const OxTool *tool)
{
  return tool->kind;
}

void
ox_tool_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  tool->table->press (tool, scene, pointer, answer);
}

void
ox_tool_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  tool->table->motion (tool, scene, pointer, answer);
}

void
ox_tool_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  if (tool->table->release != NULL)
    tool->table->release (tool, scene, pointer, answer);
}

gboolean
ox_tool_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  return tool->table->key != NULL && tool->table->key (tool, scene, key, answer);
}

void
ox_tool_cancel (OxTool *tool)
{
  if (tool->table->cancel != NULL)
    tool->table->cancel (tool);
}

gboolean
ox_tool_is_busy (const OxTool *tool)
{
  return tool->table->is_busy != NULL && tool->table->is_busy (tool);
}

OxPreview *
ox_tool_preview (const OxTool *tool, const OxScene *scene)
{
  OxPreview *preview = ox_preview_new ();

  tool->table->preview (tool, scene, preview);
  return preview;
}

const OxJob *
ox_tool_find_draft (const OxTool *tool)
{
  return tool->table->draft != NULL ? tool->table->draft (tool) : NULL;
}

const char *
ox_tool_hint (const OxTool *tool)
{
  return tool->table->hint (tool);
}

const char *
ox_tool_cursor (const OxTool *tool)
{
  return tool->table->cursor != NULL ? tool->table->cursor (tool) : "crosshair";
}

/* --- Shared by the tools --- */

void
ox_tool_answer_refuse (OxToolAnswer *answer, const GError *error)
{
  g_free (answer->refusal);
  answer->refusal = g_strdup (error->message);
  answer->placed = ox_job_error_place (error, &answer->place);
}

void
ox_tool_answer_edit (OxToolAnswer *answer, OxJob *job, const GError *error, const char *label, const char *id)
{
  if (job == NULL)
    {
      ox_tool_answer_refuse (answer, error);
      return;
    }
  answer->job = job;
  answer->label = g_strdup (label);
  if (id != NULL)
    answer->selection = g_strdupv ((char *[]){ (char *) id, NULL });
}

void
ox_tool_answer_room (OxToolAnswer *answer, const OxScene *scene, OxRing *ring)
{
  g_autofree char *id = ox_job_new_id (scene->job, "R");
  g_autofree char *name = g_strdup_printf (_ ("Room %s"), id + 1);
  OxRoom draft = { .id = id, .name = name, .ring = ring, .profile = (char *) "" };
  g_autoptr (OxRoom) room = ox_room_new (&draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_room (scene->job, room, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Draw Room"), id);
}

void
ox_tool_answer_obstacle (OxToolAnswer *answer, const OxScene *scene, const OxShape *shape)
{
  g_autofree char *id = ox_job_new_id (scene->job, "O");
  OxObstacle draft = { .id = id, .name = (char *) "", .kind = scene->obstacle_kind, .shape = *shape };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_obstacle (scene->job, obstacle, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Draw Obstacle"), id);
}

void
ox_tool_answer_excluded (OxToolAnswer *answer, const OxScene *scene, OxRing *ring)
{
  g_autofree char *id = ox_job_new_id (scene->job, "X");
  OxExcluded draft = { .id = id, .name = (char *) "", .ring = ring };
  g_autoptr (OxExcluded) excluded = ox_excluded_new (&draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_excluded (scene->job, excluded, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Exclude Area"), id);
}

void
ox_tool_answer_condition (OxToolAnswer *answer, const OxScene *scene, OxRing *ring)
{
  g_autofree char *id = ox_job_new_id (scene->job, "C");
  OxCondition draft = { .id = id, .name = (char *) "", .ring = ring, .profile = (char *) "" };
  g_autoptr (OxCondition) condition = ox_condition_new (&draft);
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_job_with_condition (scene->job, condition, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Draw Condition Area"), id);
}

OxSnap
ox_tool_snap (const OxScene *scene, const OxPointer *pointer)
{
  OxSnapOptions options = { .px_per_m = scene->px_per_m, .free = (pointer->hold & OX_HOLD_CONTROL) != 0 };

  return ox_snap_find (scene->job, pointer->at, &options);
}

void
ox_tool_preview_snap (OxPreview *preview, const OxSnap *snap)
{
  if (snap->guided)
    ox_preview_add (preview, OX_PREVIEW_GUIDE, snap->guide, 2);
  ox_preview_add (preview, OX_PREVIEW_SNAP, &snap->at, 1);
  if (*ox_snap_reason (snap->kind) != '\0')
    ox_preview_add_label (preview, snap->at, ox_snap_reason (snap->kind));
}

gboolean
ox_tool_typed_key (OxTyped *typed, const OxKey *key)
{
  if (key->name == OX_KEY_SIGN)
    return ox_typed_add (typed, key->sign);
  if (key->name == OX_KEY_BACKSPACE)
    return ox_typed_back (typed);
  if (key->name != OX_KEY_TAB)
    return FALSE;
  ox_typed_next (typed);
  return TRUE;
}

char *
ox_tool_typed_text (const OxTyped *typed, const char *const names[2], const char *const values[2])
{
  GString *text = g_string_new (NULL);
  gboolean typing = !ox_typed_is_empty (typed) || typed->field > 0;

  for (guint i = 0; i < 2 && names[i] != NULL; i++)
    {
      const char *value = typed->text[i][0] != '\0' ? typed->text[i] : values[i];

      g_string_append_printf (text, "%s%s %s%s", i > 0 ? "   " : "", names[i], value,
                              typing && typed->field == i ? "\342\226\217" : "");
    }
  return g_string_free (text, FALSE);
}
