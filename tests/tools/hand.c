/* Oxturn: tests/tools/hand - a hand that uses a tool.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "hand.h"

#include <string.h>

OxHand *
ox_hand_new (OxToolKind kind, const OxJob *job)
{
  OxHand *hand = g_new0 (OxHand, 1);

  hand->tool = ox_tool_new (kind);
  hand->job = ox_job_ref (job);
  hand->selection = g_new0 (char *, 1);
  return hand;
}

void
ox_hand_free (OxHand *hand)
{
  ox_tool_free (hand->tool);
  ox_job_unref (hand->job);
  g_strfreev (hand->selection);
  g_free (hand->label);
  g_free (hand->refusal);
  g_free (hand);
}

static OxScene
scene_of (OxHand *hand)
{
  return (OxScene){ .job = hand->job,
                    .selection = (const char *const *) hand->selection,
                    .px_per_m = OX_HAND_PX_PER_M,
                    .obstacle_kind = hand->obstacle_kind };
}

/* What the canvas and the session do with an answer. */
static void
take (OxHand *hand, OxToolAnswer *answer)
{
  g_clear_pointer (&hand->refusal, g_free);
  hand->refusal = g_steal_pointer (&answer->refusal);
  hand->placed = answer->placed;
  hand->place = answer->place;
  if (answer->selection != NULL)
    {
      g_strfreev (hand->selection);
      hand->selection = g_steal_pointer (&answer->selection);
    }
  if (answer->job != NULL)
    {
      g_assert_nonnull (answer->label);
      g_assert_null (hand->refusal);
      ox_job_unref (hand->job);
      hand->job = g_steal_pointer (&answer->job);
      g_free (hand->label);
      hand->label = g_steal_pointer (&answer->label);
      hand->edits++;
    }
  ox_tool_answer_clear (answer);
}

void
ox_hand_move (OxHand *hand, double x, double y, OxHold hold)
{
  OxToolAnswer answer = { NULL };
  OxScene scene = scene_of (hand);

  ox_tool_motion (hand->tool, &scene, &(OxPointer){ .at = { x, y }, .hold = hold }, &answer);
  take (hand, &answer);
}

void
ox_hand_press (OxHand *hand, double x, double y, OxHold hold, guint clicks)
{
  OxToolAnswer answer = { NULL };
  OxScene scene = scene_of (hand);

  ox_tool_press (hand->tool, &scene, &(OxPointer){ .at = { x, y }, .hold = hold, .clicks = clicks }, &answer);
  take (hand, &answer);
}

void
ox_hand_release (OxHand *hand, double x, double y, OxHold hold)
{
  OxToolAnswer answer = { NULL };
  OxScene scene = scene_of (hand);

  ox_tool_release (hand->tool, &scene, &(OxPointer){ .at = { x, y }, .hold = hold }, &answer);
  take (hand, &answer);
}

void
ox_hand_click (OxHand *hand, double x, double y)
{
  g_autofree char *refusal = NULL;

  ox_hand_move (hand, x, y, OX_HOLD_NONE);
  ox_hand_press (hand, x, y, OX_HOLD_NONE, 1);
  refusal = g_strdup (hand->refusal);
  ox_hand_release (hand, x, y, OX_HOLD_NONE);
  if (hand->refusal == NULL)
    hand->refusal = g_steal_pointer (&refusal);
}

void
ox_hand_drag (OxHand *hand, double x, double y, double to_x, double to_y)
{
  ox_hand_press (hand, x, y, OX_HOLD_NONE, 1);
  for (int i = 1; i <= 50; i++)
    ox_hand_move (hand, x + (to_x - x) * i / 50, y + (to_y - y) * i / 50, OX_HOLD_NONE);
  ox_hand_release (hand, to_x, to_y, OX_HOLD_NONE);
}

static gboolean
key (OxHand *hand, const OxKey *event)
{
  OxToolAnswer answer = { NULL };
  OxScene scene = scene_of (hand);
  gboolean taken = ox_tool_key (hand->tool, &scene, event, &answer);

  take (hand, &answer);
  return taken;
}

gboolean
ox_hand_key (OxHand *hand, OxKeyName name)
{
  return key (hand, &(OxKey){ .name = name });
}

void
ox_hand_type (OxHand *hand, const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      OxKey event = { .name = OX_KEY_SIGN, .sign = g_utf8_get_char (p) };

      if (*p == '\t')
        event.name = OX_KEY_TAB;
      else if (*p == '\n')
        event.name = OX_KEY_ENTER;
      key (hand, &event);
    }
}

gboolean
ox_hand_sees (OxHand *hand, const char *text)
{
  OxScene scene = scene_of (hand);
  g_autoptr (OxPreview) preview = ox_tool_preview (hand->tool, &scene);

  for (guint i = 0; i < preview->shapes->len; i++)
    {
      const OxPreviewShape *shape = g_ptr_array_index (preview->shapes, i);

      if (shape->kind == OX_PREVIEW_LABEL && strstr (shape->text, text) != NULL)
        return TRUE;
    }
  return FALSE;
}

guint
ox_hand_count (OxHand *hand, OxPreviewKind kind)
{
  OxScene scene = scene_of (hand);
  g_autoptr (OxPreview) preview = ox_tool_preview (hand->tool, &scene);
  guint n = 0;

  for (guint i = 0; i < preview->shapes->len; i++)
    n += ((const OxPreviewShape *) g_ptr_array_index (preview->shapes, i))->kind == kind;
  return n;
}
