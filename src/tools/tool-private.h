/* Oxturn: tools/tool-private - what each tool is made of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "tools/snap.h"
#include "tools/tool.h"
#include "tools/typed.h"
G_BEGIN_DECLS

/* A tool is a struct that begins with OxTool, and this table. Members may be NULL where a tool does not care. */
typedef struct
{
  gsize size; /* of the struct */
  void (*press) (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);
  void (*motion) (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);
  void (*release) (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);
  gboolean (*key) (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer);
  void (*cancel) (OxTool *tool);
  gboolean (*is_busy) (const OxTool *tool);
  void (*preview) (const OxTool *tool, const OxScene *scene, OxPreview *preview);
  const OxJob *(*draft) (const OxTool *tool);
  const char *(*hint) (const OxTool *tool);
  const char *(*cursor) (const OxTool *tool);
  void (*clear) (OxTool *tool);

  /* Of the tools that draw between two points, tools/two-point.h. */
  guint n_fields; /* sizes that can be typed: 1 or OX_TYPED_FIELDS */
  gboolean (*begin) (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer); /* FALSE: refused */
  void (*finish) (OxTool *tool, const OxScene *scene, OxToolAnswer *answer); /* makes the item as it stands, or refuses */
} OxToolTable;

struct _OxTool
{
  const OxToolTable *table;
  OxToolKind kind;
};

extern const OxToolTable ox_tool_select_table;
extern const OxToolTable ox_tool_outline_table; /* by corners: room, obstacle, excluded and condition area, joint */
extern const OxToolTable ox_tool_box_table;     /* rectangles: room, obstacle, excluded and condition area */
extern const OxToolTable ox_tool_round_table;   /* circular obstacle */
extern const OxToolTable ox_tool_doorway_table;
extern const OxToolTable ox_tool_station_table;
extern const OxToolTable ox_tool_measure_table;
extern const OxToolTable ox_tool_mark_table;
extern const OxToolTable ox_tool_scale_table; /* of a traced plan */

/* ox_tool_answer_edit:
 * @job: (transfer full) (nullable): result of an edit; NULL: refused
 * @error: (nullable): why, when it was refused
 * @label: translated
 * @id: (nullable): item selected afterwards */
void ox_tool_answer_edit (OxToolAnswer *answer, OxJob *job, const GError *error, const char *label, const char *id);

/* ox_tool_answer_room, ox_tool_answer_obstacle, ox_tool_answer_excluded, ox_tool_answer_condition: draws a room, an excluded area or a condition area within @ring, or an obstacle of
 * the scene's kind, under the next free id; the answer is the job with it, or why there can be none
 * @ring: counter-clockwise */
void ox_tool_answer_room (OxToolAnswer *answer, const OxScene *scene, OxRing *ring);
void ox_tool_answer_obstacle (OxToolAnswer *answer, const OxScene *scene, const OxShape *shape);
void ox_tool_answer_excluded (OxToolAnswer *answer, const OxScene *scene, OxRing *ring);
void ox_tool_answer_condition (OxToolAnswer *answer, const OxScene *scene, OxRing *ring);

/* ox_tool_snap: where the pointer is held, with nothing placed before */
OxSnap ox_tool_snap (const OxScene *scene, const OxPointer *pointer);

/* ox_tool_preview_snap: marks where the pointer is held, what it holds on to and why */
void ox_tool_preview_snap (OxPreview *preview, const OxSnap *snap);

/* ox_tool_typed_key: signs, Tab and Backspace into @typed
 * Returns: whether the key was one of them and was taken */
gboolean ox_tool_typed_key (OxTyped *typed, const OxKey *key);

/* ox_tool_typed_text: what is typed, or else the measured value; (transfer full)
 * @names: translated names of the two fields, the second NULL when there is one only
 * @values: measured, already as text */
char *ox_tool_typed_text (const OxTyped *typed, const char *const names[2], const char *const values[2]) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
