/* Oxturn: tools/tool - what the pointer and the keys do on the canvas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tool gets plain events in metres and answers with an edit of the job, another selection, or nothing; meanwhile it says what it
 * wants to be seen (tools/preview.h). It knows no widget and no display, so that it can be tested by a script of events.
 */
#pragma once
#include "job/job.h"
#include "record/mark.h"
#include "tools/preview.h"
G_BEGIN_DECLS

typedef enum
{
  OX_TOOL_SELECT,
  OX_TOOL_ROOM_CORNERS,
  OX_TOOL_ROOM_RECTANGLE,
  OX_TOOL_OBSTACLE_RECTANGLE,
  OX_TOOL_OBSTACLE_CIRCLE,
  OX_TOOL_OBSTACLE_CORNERS,
  OX_TOOL_EXCLUDED,
  OX_TOOL_EXCLUDED_CORNERS,
  OX_TOOL_CONDITION,
  OX_TOOL_CONDITION_CORNERS,
  OX_TOOL_JOINT,
  OX_TOOL_DOORWAY,
  OX_TOOL_STATION,
  OX_TOOL_MEASURE,
  OX_TOOL_MARK,
  OX_TOOL_SCALE,
  OX_N_TOOLS
} OxToolKind;

/* What the tool works on, as it stands at the moment of the event. Borrowed. */
typedef struct
{
  const OxJob *job;
  const char *const *selection; /* see session/selection.h; never NULL */
  double px_per_m;
  OxObstacleKind obstacle_kind; /* of obstacles that are drawn */
  const OxPlan *plan;           /* (nullable): whose strips are marked */
  const OxMark *mark;           /* (nullable): what they are marked with */
  gboolean mark_up_to;          /* a click marks all strips up to the one under it */
} OxScene;

typedef enum { OX_HOLD_NONE = 0, OX_HOLD_SHIFT = 1 << 0, OX_HOLD_CONTROL = 1 << 1 } OxHold;

typedef struct
{
  OxPoint at;   /* m, not snapped */
  OxHold hold;  /* Shift adds to the selection, or keeps to steps of 15 degrees; Control: hold on to nothing */
  guint clicks; /* of a press: 1, 2 for a double click */
} OxPointer;

typedef enum
{
  OX_KEY_SIGN, /* something printable */
  OX_KEY_ENTER,
  OX_KEY_ESCAPE,
  OX_KEY_TAB,
  OX_KEY_BACKSPACE,
  OX_KEY_DELETE,
  OX_KEY_LEFT,
  OX_KEY_RIGHT,
  OX_KEY_UP,
  OX_KEY_DOWN
} OxKeyName;

typedef struct
{
  OxKeyName name;
  gunichar sign;
  OxHold hold;
} OxKey;

/* What came of an event. The caller owns what is in it: ox_tool_answer_clear(). */
typedef struct
{
  OxJob *job;       /* (nullable): the job after an edit */
  char *label;      /* name of the edit, translated */
  char *merge_key;  /* (nullable) */
  char **selection; /* (nullable): what is selected from now on */
  char *refusal;    /* (nullable): one translated sentence why nothing was done ... */
  gboolean placed;  /* ... and whether it is so ... */
  OxPoint place;    /* ... at this place */
} OxToolAnswer;

void ox_tool_answer_clear (OxToolAnswer *answer);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (OxToolAnswer, ox_tool_answer_clear)

/* ox_tool_answer_refuse: for the reason that @error tells, and at its place */
void ox_tool_answer_refuse (OxToolAnswer *answer, const GError *error);

typedef struct _OxTool OxTool;

OxTool *ox_tool_new (OxToolKind kind) G_GNUC_WARN_UNUSED_RESULT;
void ox_tool_free (OxTool *tool);

const char *ox_tool_kind_name (OxToolKind kind);  /* "room-corners": untranslated, for actions and icons */
const char *ox_tool_kind_title (OxToolKind kind); /* translated */
OxToolKind ox_tool_get_kind (const OxTool *tool);

/* Events. @answer: an empty one, filled with what came of it. */
void ox_tool_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);
void ox_tool_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);
void ox_tool_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);

/* ox_tool_key: Returns: whether the key meant something to the tool */
gboolean ox_tool_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer);

/* ox_tool_cancel: lets go of whatever is half done; nothing of it stays */
void ox_tool_cancel (OxTool *tool);

gboolean ox_tool_is_busy (const OxTool *tool); /* something is half done: Escape means the tool, not the window */

/* ox_tool_preview: Returns: (transfer full): what is to be seen now */
OxPreview *ox_tool_preview (const OxTool *tool, const OxScene *scene) G_GNUC_WARN_UNUSED_RESULT;

/* ox_tool_find_draft: (nullable): the job as it would be if what is dragged were let go here; belongs to the tool */
const OxJob *ox_tool_find_draft (const OxTool *tool);

const char *ox_tool_hint (const OxTool *tool);   /* translated: what can be done next */
const char *ox_tool_cursor (const OxTool *tool); /* name of a CSS cursor: "crosshair", "move" ... */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxTool, ox_tool_free)
G_END_DECLS
