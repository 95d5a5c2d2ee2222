/* Oxturn: app/window-place - what is selected copied, mirrored and turned, and the forms that draw by figures.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/dialogs/repeat.h"
#include "app/dialogs/tape-sheet.h"
#include "job/edit.h"
#include "job/place.h"
#include "session/selection.h"

#include <glib/gi18n-lib.h>

#define DUPLICATE_STEP 0.5 /* m, to the right and down, so that the copy is seen */

static void
take (OxWindow *self, OxJob *job, const GError *error, const char *label, const char *const *selection)
{
  g_autoptr (OxJob) result = job;

  if (result != NULL)
    ox_session_apply (self->session, result, label, selection, NULL);
  else
    ox_window_tell (self, error->message);
}

static void
duplicate_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);
  const OxJob *job = ox_session_get_job (self->session);
  g_auto (GStrv) ids = ox_selection_items (ox_session_get_selection (self->session));
  OxPlacement place = { .by = { DUPLICATE_STEP, -DUPLICATE_STEP } };
  OxCopies copies = { .from = job, .ids = (const char *const *) ids, .places = &place, .n = 1 };
  OxBox box = ox_edit_box (job, copies.ids);
  g_auto (GStrv) new_ids = NULL;
  g_autoptr (GError) error = NULL;
  OxJob *changed;

  (void) action;
  (void) value;
  if (ids[0] == NULL)
    return;
  /* Rooms must not overlap: a copy of one stands beside it. */
  if (ox_job_find (job, ids[0], NULL) == OX_ITEM_ROOM)
    place.by = (OxPoint){ ox_snap (box.x1 - box.x0 + DUPLICATE_STEP), 0 };
  changed = ox_edit_copied (job, &copies, &new_ids, &error);
  take (self, changed, error, _ ("Duplicate"), (const char *const *) new_ids);
}

static void
place_selected (OxWindow *self, OxPlacement placement, const char *label)
{
  const OxJob *job = ox_session_get_job (self->session);
  g_auto (GStrv) ids = ox_selection_items (ox_session_get_selection (self->session));
  OxBox box = ox_edit_box (job, (const char *const *) ids);
  g_autoptr (GError) error = NULL;
  OxJob *changed;

  if (ids[0] == NULL)
    return;
  placement.about = ox_point_snap ((OxPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 });
  changed = ox_edit_placed (job, (const char *const *) ids, &placement, &error);
  take (self, changed, error, label, NULL);
}

static void
mirror_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  gboolean sideways = g_str_equal (g_variant_get_string (value, NULL), "sideways");

  (void) action;
  place_selected (data, (OxPlacement){ .mirrored = TRUE, .turn_deg = sideways ? 0 : 180 }, _ ("Mirror"));
}

static void
turn_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  gboolean left = g_str_equal (g_variant_get_string (value, NULL), "left");

  (void) action;
  place_selected (data, (OxPlacement){ .turn_deg = left ? 90 : -90 }, _ ("Turn"));
}

static void
repeat_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_repeat_open (data, OX_WINDOW (data)->session);
}

static void
tape_sheet_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  OxWindow *self = OX_WINDOW (data);

  (void) action;
  (void) value;
  ox_window_set_stage (self, OX_STAGE_FLOOR);
  ox_tape_sheet_open (GTK_WINDOW (self), self->session, self->choose_file);
}

static void
traced_plan_cb (GSimpleAction *action, GVariant *value, gpointer data)
{
  (void) action;
  (void) value;
  ox_window_ask_traced (data);
}

void
ox_window_add_place_actions (OxWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "duplicate", .activate = duplicate_cb },
    { .name = "mirror", .activate = mirror_cb, .parameter_type = "s" },
    { .name = "turn", .activate = turn_cb, .parameter_type = "s" },
    { .name = "repeat", .activate = repeat_cb },
    { .name = "tape-sheet", .activate = tape_sheet_cb },
    { .name = "traced-plan", .activate = traced_plan_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
