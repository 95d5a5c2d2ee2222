/* Oxturn: tools/select - choose, move, reshape, delete.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/corner.h"
#include "job/edit.h"
#include "session/selection.h"
#include "tools/pick.h"
#include "tools/slide.h"
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

#define DRAG_PX 4.0 /* a press that wanders less than this is a click */
#define HANDLE_PX 12.0
#define PICK_PX 8.0
#define NUDGE_FAR 10 /* steps with Shift held */

typedef enum
{
  IDLE,
  PRESSED, /* on an item, not moved yet */
  MOVING,
  HANDLE,
  SIDE,
  BAND
} Mode;

typedef struct
{
  OxTool base;
  Mode mode;
  Mode next;     /* what PRESSED turns into once the pointer has wandered */
  OxPoint start; /* pointer at the press */
  OxPoint now;
  char *id;       /* (nullable) item that is reshaped */
  guint index;    /* handle or side of it */
  OxPoint origin; /* of the handle, before the drag */
  OxJob *draft;   /* (nullable) what the drag would make */
  gboolean over_handle;
  gboolean over_item;
} Select;

static void
select_cancel (OxTool *tool)
{
  Select *self = (Select *) tool;

  self->mode = IDLE;
  g_clear_pointer (&self->id, g_free);
  g_clear_pointer (&self->draft, ox_job_unref);
}

/* The one item that shows handles: selected alone, as a whole or by one of its sides; (transfer full) (nullable). */
static char *
single_item (const OxScene *scene)
{
  if (scene->selection[0] == NULL || scene->selection[1] != NULL)
    return NULL;
  return ox_selection_item (scene->selection[0]);
}

static gboolean
find_handle (const OxScene *scene, OxPoint at, char **id, guint *index, OxPoint *origin)
{
  g_autofree char *item = single_item (scene);
  g_autoptr (GArray) handles = NULL;
  double best = HANDLE_PX / scene->px_per_m;
  gboolean found = FALSE;

  if (item == NULL)
    return FALSE;
  handles = ox_handles (scene->job, item);
  for (guint i = 0; i < handles->len; i++)
    {
      OxPoint p = g_array_index (handles, OxPoint, i);

      if (ox_point_distance (p, at) > best)
        continue;
      best = ox_point_distance (p, at);
      *index = i;
      *origin = p;
      found = TRUE;
    }
  if (found)
    *id = g_steal_pointer (&item);
  return found;
}

/* A side answers only in a room that is selected already; the first click means the room. */
static gboolean
find_side (const OxScene *scene, OxPoint at, char **id, guint *index)
{
  g_autofree char *item = single_item (scene);
  const OxRoom *room = item != NULL ? ox_job_find_room (scene->job, item) : NULL;
  int side = room != NULL ? ox_pick_side (room, at, PICK_PX / scene->px_per_m) : -1;
  const char *top = ox_pick_item (scene->job, at, PICK_PX / scene->px_per_m);

  if (side < 0 || g_strcmp0 (top, item) != 0)
    return FALSE;
  *id = g_steal_pointer (&item);
  *index = (guint) side;
  return TRUE;
}

static void
toggle (const OxScene *scene, const char *id, OxToolAnswer *answer)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  gboolean had = FALSE;

  for (guint i = 0; scene->selection[i] != NULL; i++)
    {
      if (g_str_equal (scene->selection[i], id))
        had = TRUE;
      else
        g_strv_builder_add (ids, scene->selection[i]);
    }
  if (!had)
    g_strv_builder_add (ids, id);
  answer->selection = g_strv_builder_end (ids);
}

static void
choose (OxToolAnswer *answer, const char *entry)
{
  answer->selection = g_strdupv ((char *[]){ (char *) entry, NULL });
}

/* What fills the view: one clicks on it all the time and hardly ever moves it. */
static gboolean
is_ground (const OxJob *job, const char *id)
{
  OxItemKind kind = ox_job_find (job, id, NULL);

  return kind == OX_ITEM_ROOM || kind == OX_ITEM_TRACED || kind == OX_ITEM_CONDITION;
}

static void
press_item (Select *self, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  const char *id = ox_pick_item (scene->job, pointer->at, PICK_PX / scene->px_per_m);
  gboolean selected = id != NULL && g_strv_contains (scene->selection, id);
  gboolean floor = id == NULL || is_ground (scene->job, id);

  self->mode = PRESSED;
  /* A drag across a room that is not selected frames what stands in it. */
  self->next = floor && !selected ? BAND : MOVING;
  if (id == NULL)
    return;
  if ((pointer->hold & OX_HOLD_SHIFT) != 0)
    toggle (scene, id, answer);
  else if (!selected)
    choose (answer, id);
}

static void
split_side (Select *self, const OxScene *scene, OxPoint at, OxToolAnswer *answer)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_side_split (scene->job, self->id, self->index, at, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Add Corner"), self->id);
  select_cancel (&self->base);
}

static void
remove_corner (Select *self, const OxScene *scene, OxToolAnswer *answer)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = ox_edit_corner_removed (scene->job, self->id, self->index, &error);

  ox_tool_answer_edit (answer, job, error, _ ("Delete Corner"), self->id);
  select_cancel (&self->base);
}

static void
select_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Select *self = (Select *) tool;

  select_cancel (tool);
  self->start = self->now = pointer->at;
  if (find_handle (scene, pointer->at, &self->id, &self->index, &self->origin))
    {
      self->mode = PRESSED;
      self->next = HANDLE;
      if (pointer->clicks == 2)
        remove_corner (self, scene, answer);
    }
  else if ((pointer->hold & OX_HOLD_SHIFT) == 0 && find_side (scene, pointer->at, &self->id, &self->index))
    {
      g_autofree char *entry = ox_selection_of_side (self->id, self->index);

      self->mode = PRESSED;
      self->next = SIDE;
      if (pointer->clicks == 2)
        split_side (self, scene, pointer->at, answer);
      else
        choose (answer, entry);
    }
  else
    press_item (self, scene, pointer, answer);
}

/* --- Dragging --- */

static OxPoint
step_vector (const OxScene *scene, const OxPointer *pointer, OxPoint from)
{
  OxPoint by = ox_point_sub (pointer->at, from);
  double step = ox_snap_step (scene->job->units, scene->px_per_m);

  if ((pointer->hold & OX_HOLD_CONTROL) != 0)
    return ox_point_snap (by);
  return ox_point_snap ((OxPoint){ round (by.x / step) * step, round (by.y / step) * step });
}

static OxJob *
draft_move (Select *self, const OxScene *scene, const OxPointer *pointer, GError **error)
{
  g_auto (GStrv) ids = ox_selection_items (scene->selection);
  OxPoint by = step_vector (scene, pointer, self->start);

  if (by.x == 0 && by.y == 0)
    return ox_job_ref (scene->job);
  if ((pointer->hold & OX_HOLD_CONTROL) != 0)
    return ox_job_moved (scene->job, (const char *const *) ids, by, error);
  return ox_slide_or_move (scene->job, (const char *const *) ids, by, error);
}

/* The neighbours of a corner give it right angles to hold on to. */
static OxJob *
draft_handle (Select *self, const OxScene *scene, const OxPointer *pointer, GError **error)
{
  g_autoptr (GArray) handles = ox_handles (scene->job, self->id);
  guint n = handles->len;
  OxPoint before = g_array_index (handles, OxPoint, (self->index + n - 1) % n);
  OxPoint after = g_array_index (handles, OxPoint, (self->index + 1) % n);
  OxSnapOptions options
      = { .px_per_m = scene->px_per_m, .skip_id = self->id, .free = (pointer->hold & OX_HOLD_CONTROL) != 0 };
  OxSnap snap;

  if (ox_job_find_room (scene->job, self->id) != NULL)
    {
      options.last = &before;
      options.first = &after;
    }
  snap = ox_snap_find (scene->job, pointer->at, &options);
  if (ox_point_distance (snap.at, self->origin) < OX_GRID)
    return ox_job_ref (scene->job);
  return ox_handles_drag (scene->job, self->id, self->index, snap.at, error);
}

static OxJob *
draft_side (Select *self, const OxScene *scene, const OxPointer *pointer, GError **error)
{
  const OxRing *ring = ox_job_find_room (scene->job, self->id)->ring;
  OxPoint a = ring->points[self->index];
  OxPoint b = ring->points[(self->index + 1) % ring->n];
  OxPoint along = ox_point_scale (ox_point_sub (b, a), 1 / ox_point_distance (a, b));
  OxPoint to = ox_point_sub (pointer->at, self->start);
  double by = to.x * along.y - to.y * along.x;
  double step = ox_snap_step (scene->job->units, scene->px_per_m);

  if ((pointer->hold & OX_HOLD_CONTROL) == 0)
    by = round (by / step) * step;
  if (fabs (by) < OX_GRID)
    return ox_job_ref (scene->job);
  return ox_side_drag (scene->job, self->id, self->index, by, error);
}

/* A key may delete what is dragged, or undo how it came to be, while the button is down. */
static gboolean
still_there (const Select *self, const OxJob *job)
{
  g_autoptr (GArray) handles = NULL;
  const OxRoom *room;

  if (self->mode == SIDE)
    {
      room = ox_job_find_room (job, self->id);
      return room != NULL && self->index < room->ring->n;
    }
  if (self->mode != HANDLE)
    return TRUE;
  handles = ox_handles (job, self->id);
  return self->index < handles->len;
}

static void
make_draft (Select *self, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->draft, ox_job_unref);
  if (!still_there (self, scene->job))
    select_cancel (&self->base);
  if (self->mode == MOVING)
    self->draft = draft_move (self, scene, pointer, &error);
  else if (self->mode == HANDLE)
    self->draft = draft_handle (self, scene, pointer, &error);
  else if (self->mode == SIDE)
    self->draft = draft_side (self, scene, pointer, &error);
  if (error != NULL)
    ox_tool_answer_refuse (answer, error);
}

static void
look_around (Select *self, const OxScene *scene, OxPoint at)
{
  g_autofree char *id = NULL;
  guint index;
  OxPoint origin;

  self->over_handle = find_handle (scene, at, &id, &index, &origin);
  self->over_item = ox_pick_item (scene->job, at, PICK_PX / scene->px_per_m) != NULL;
}

static void
select_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Select *self = (Select *) tool;

  self->now = pointer->at;
  if (self->mode == IDLE)
    look_around (self, scene, pointer->at);
  if (self->mode == PRESSED && ox_point_distance (self->start, pointer->at) * scene->px_per_m >= DRAG_PX)
    self->mode = self->next;
  make_draft (self, scene, pointer, answer);
}

static OxBox
band_box (const Select *self)
{
  OxBox box = OX_BOX_EMPTY;

  ox_box_add (&box, self->start);
  ox_box_add (&box, self->now);
  return box;
}

static const char *
drag_label (Mode mode)
{
  if (mode == HANDLE)
    return _ ("Reshape");
  return mode == SIDE ? _ ("Move Side") : _ ("Move");
}

static void
select_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Select *self = (Select *) tool;

  self->now = pointer->at;
  make_draft (self, scene, pointer, answer);
  if (self->mode == BAND)
    answer->selection = ox_pick_in_box (scene->job, band_box (self));
  else if (self->mode == PRESSED && self->next == BAND && (pointer->hold & OX_HOLD_SHIFT) == 0
           && ox_pick_item (scene->job, pointer->at, PICK_PX / scene->px_per_m) == NULL)
    answer->selection = g_new0 (char *, 1);
  else if (self->draft != NULL && self->draft != scene->job)
    {
      answer->job = g_steal_pointer (&self->draft);
      answer->label = g_strdup (drag_label (self->mode));
    }
  select_cancel (tool);
}

/* --- Keys --- */

static gboolean
nudge (const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  g_auto (GStrv) ids = ox_selection_items (scene->selection);
  double step = ox_snap_step (scene->job->units, scene->px_per_m);
  OxPoint by = { (key->name == OX_KEY_RIGHT) - (key->name == OX_KEY_LEFT),
                 (key->name == OX_KEY_UP) - (key->name == OX_KEY_DOWN) };
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (ids[0] == NULL)
    return FALSE;
  by = ox_point_scale (by, (key->hold & OX_HOLD_SHIFT) != 0 ? NUDGE_FAR * step : step);
  job = ox_slide_or_move (scene->job, (const char *const *) ids, by, &error);
  ox_tool_answer_edit (answer, job, error, _ ("Move"), NULL);
  answer->merge_key = g_strdup ("nudge");
  return TRUE;
}

static const char *
delete_label (const OxJob *job, const char *const *ids)
{
  if (ids[1] != NULL)
    return _ ("Delete");
  switch (ox_job_find (job, ids[0], NULL))
    {
    case OX_ITEM_ROOM:
      return _ ("Delete Room");
    case OX_ITEM_OBSTACLE:
      return _ ("Delete Obstacle");
    case OX_ITEM_EXCLUDED:
      return _ ("Delete Excluded Area");
    case OX_ITEM_DOORWAY:
      return _ ("Delete Doorway");
    case OX_ITEM_JOINT:
      return _ ("Delete Joint");
    case OX_ITEM_STATION:
      return _ ("Delete Station");
    case OX_ITEM_CONDITION:
      return _ ("Delete Condition Area");
    case OX_ITEM_TRACED:
      return _ ("Delete Traced Plan");
    case OX_ITEM_NONE:
      break;
    }
  return _ ("Delete");
}

static gboolean
delete_selected (const OxScene *scene, OxToolAnswer *answer)
{
  g_auto (GStrv) ids = ox_selection_items (scene->selection);
  g_autoptr (GError) error = NULL;
  OxJob *job;

  if (scene->selection[0] == NULL)
    return FALSE;
  if (ids[0] == NULL)
    {
      answer->refusal = g_strdup (_ ("A side cannot be deleted by itself. Select the room to delete all of it."));
      return TRUE;
    }
  job = ox_job_without (scene->job, (const char *const *) ids, &error);
  ox_tool_answer_edit (answer, job, error, delete_label (scene->job, (const char *const *) ids), NULL);
  if (answer->job != NULL)
    answer->selection = g_new0 (char *, 1);
  return TRUE;
}

static gboolean
select_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  Select *self = (Select *) tool;

  switch (key->name)
    {
    case OX_KEY_LEFT:
    case OX_KEY_RIGHT:
    case OX_KEY_UP:
    case OX_KEY_DOWN:
      return nudge (scene, key, answer);
    case OX_KEY_DELETE:
    case OX_KEY_BACKSPACE:
      return delete_selected (scene, answer);
    case OX_KEY_ESCAPE:
      if (self->mode != IDLE)
        select_cancel (tool);
      else if (scene->selection[0] != NULL)
        answer->selection = g_new0 (char *, 1);
      else
        return FALSE;
      return TRUE;
    case OX_KEY_SIGN:
    case OX_KEY_ENTER:
    case OX_KEY_TAB:
      break;
    }
  return FALSE;
}

static gboolean
select_is_busy (const OxTool *tool)
{
  return ((const Select *) tool)->mode != IDLE;
}

/* --- What is seen --- */

static void
preview_entry (const OxJob *job, const char *entry, OxPreview *preview)
{
  g_autofree char *id = ox_selection_item (entry);
  g_autoptr (GArray) points = ox_pick_outline (job, id);
  int side = ox_selection_side (entry);

  if (points->len == 0)
    return;
  if (side >= 0 && (guint) side < points->len)
    {
      OxPoint ends[2] = { g_array_index (points, OxPoint, side),
                          g_array_index (points, OxPoint, ((guint) side + 1) % points->len) };

      ox_preview_add (preview, OX_PREVIEW_SELECTED, ends, 2);
    }
  else
    ox_preview_add (preview, OX_PREVIEW_SELECTED, (const OxPoint *) points->data, points->len);
}

static void
preview_handles (const OxJob *job, const OxScene *scene, OxPreview *preview)
{
  g_autofree char *id = single_item (scene);
  g_autoptr (GArray) handles = id != NULL ? ox_handles (job, id) : NULL;

  for (guint i = 0; handles != NULL && i < handles->len; i++)
    ox_preview_add (preview, OX_PREVIEW_HANDLE, &g_array_index (handles, OxPoint, i), 1);
}

static void
preview_measure (const Select *self, const OxScene *scene, OxPreview *preview)
{
  const OxRoom *room = self->id != NULL ? ox_job_find_room (self->draft, self->id) : NULL;
  guint n = room != NULL ? room->ring->n : 0;
  guint first = self->index + n - 1;
  guint sides = self->mode == SIDE ? 3 : 2; /* those that change their length */

  for (guint i = 0; n > 0 && i < sides; i++)
    {
      OxPoint a = room->ring->points[(first + i) % n];
      OxPoint b = room->ring->points[(first + i + 1) % n];
      g_autofree char *text = ox_units_length_text (scene->job->units, ox_point_distance (a, b), TRUE);

      ox_preview_add_label (preview, ox_point_scale (ox_point_add (a, b), 0.5), text);
    }
}

static void
select_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Select *self = (const Select *) tool;
  const OxJob *job = self->draft != NULL ? self->draft : scene->job;
  OxBox box;

  for (guint i = 0; scene->selection[i] != NULL; i++)
    preview_entry (job, scene->selection[i], preview);
  preview_handles (job, scene, preview);
  if (self->draft != NULL)
    preview_measure (self, scene, preview);
  if (self->mode != BAND)
    return;
  box = band_box (self);
  ox_preview_add (preview, OX_PREVIEW_BAND,
                  (OxPoint[4]){ { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } }, 4);
}

static const OxJob *
select_draft (const OxTool *tool)
{
  return ((const Select *) tool)->draft;
}

static const char *
select_hint (const OxTool *tool)
{
  const Select *self = (const Select *) tool;

  switch (self->mode)
    {
    case MOVING:
    case HANDLE:
    case SIDE:
      return _ ("Release to place. Hold Ctrl to move freely, Esc puts it back.");
    case BAND:
      return _ ("Release to select what lies in the frame.");
    case IDLE:
    case PRESSED:
      break;
    }
  if (self->over_handle)
    return _ ("Drag to reshape. A double click deletes the corner.");
  return _ ("Click to select, Shift to add. Drag what is selected to move it. Double-click a side to add a corner.");
}

static const char *
select_cursor (const OxTool *tool)
{
  const Select *self = (const Select *) tool;

  if (self->mode == MOVING || self->mode == SIDE)
    return "grabbing";
  if (self->mode == HANDLE || self->over_handle)
    return "crosshair";
  return self->over_item ? "pointer" : "default";
}

const OxToolTable ox_tool_select_table = {
  .size = sizeof (Select),
  .press = select_press,
  .motion = select_motion,
  .release = select_release,
  .key = select_key,
  .cancel = select_cancel,
  .is_busy = select_is_busy,
  .preview = select_preview,
  .draft = select_draft,
  .hint = select_hint,
  .cursor = select_cursor,
  .clear = select_cancel,
};
