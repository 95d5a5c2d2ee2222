/* Oxturn: tools/two-point - the course of whatever is drawn between two points: box, circle, doorway.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A press sets the first point. It is finished by a second press, by letting go after a drag, or by Enter, with a size typed or
 * pointed at. Escape takes back what is typed, and then the first point. What was refused stays begun, to be put right.
 *
 * A tool of this kind is a struct that begins with OxTwoPoint. Its table names the functions below as .press, .release, .key and
 * .is_busy, and has .begin, .finish, .cancel, .motion and .n_fields of its own (tools/tool-private.h).
 */
#pragma once
#include "tools/tool-private.h"
G_BEGIN_DECLS

typedef struct
{
  OxTool base;
  gboolean begun;     /* the first point is set */
  OxPoint pressed_at; /* m, of the press that set it, not snapped */
  OxTyped typed;      /* the size, empty at the first point */
} OxTwoPoint;

/* The first press begins; the second one moves there and finishes. */
void ox_two_point_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);

/* Moves there and finishes when the pointer was dragged since the press; a click stays open for its second point. */
void ox_two_point_release (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer);

/* Enter, Escape, and what can be typed into .n_fields fields, while begun.
 * Returns: whether the key meant something; FALSE for every key before the first point */
gboolean ox_two_point_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer);

/* Forgets the first point and what is typed: .cancel, or the part of it that is the same in every such tool. */
void ox_two_point_cancel (OxTool *tool);

/* Returns: whether the first point is set */
gboolean ox_two_point_is_busy (const OxTool *tool);

G_END_DECLS
