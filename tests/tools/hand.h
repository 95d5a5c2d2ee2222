/* Oxturn: tests/tools/hand - a hand that uses a tool: clicks, drags, keys, as a person would give them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "tools/tool.h"
G_BEGIN_DECLS

#define OX_HAND_PX_PER_M 100.0

typedef struct
{
  OxTool *tool;
  OxJob *job;       /* as it stands after the last edit */
  char **selection;
  char *label;      /* of the last edit, NULL before */
  char *refusal;    /* of the last event, NULL when it was not refused */
  gboolean placed;  /* whether that refusal tells a place ... */
  OxPoint place;    /* ... on the floor */
  guint edits;
  OxObstacleKind obstacle_kind;
} OxHand;

OxHand *ox_hand_new (OxToolKind kind, const OxJob *job);
void ox_hand_free (OxHand *hand);

void ox_hand_move (OxHand *hand, double x, double y, OxHold hold);
void ox_hand_press (OxHand *hand, double x, double y, OxHold hold, guint clicks);
void ox_hand_release (OxHand *hand, double x, double y, OxHold hold);
void ox_hand_click (OxHand *hand, double x, double y);
void ox_hand_drag (OxHand *hand, double x, double y, double to_x, double to_y); /* in 50 small moves */
gboolean ox_hand_key (OxHand *hand, OxKeyName name);
void ox_hand_type (OxHand *hand, const char *text); /* signs; \t and \n are Tab and Enter */

/* ox_hand_sees: whether the preview shows a label with this text in it */
gboolean ox_hand_sees (OxHand *hand, const char *text);
guint ox_hand_count (OxHand *hand, OxPreviewKind kind); /* shapes of that kind in the preview */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxHand, ox_hand_free)
G_END_DECLS
