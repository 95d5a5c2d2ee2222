/* Oxturn: tools/preview - what a tool wants to be seen while it is used.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list of simple shapes in metres of floor; the canvas paints them over the floor with widths in pixels.
 */
#pragma once
#include "geometry/point.h"
G_BEGIN_DECLS

typedef enum
{
  OX_PREVIEW_OUTLINE,  /* closed, 3 points or more: what would be placed */
  OX_PREVIEW_LINE,     /* open, 2 points or more: what is placed so far */
  OX_PREVIEW_GUIDE,    /* dashed line of 2 points: what the pointer holds on to */
  OX_PREVIEW_SELECTED, /* closed or, with 2 points, a line: outline of what is selected */
  OX_PREVIEW_HANDLE,   /* one point that can be dragged */
  OX_PREVIEW_SNAP,     /* one point: where the pointer is held */
  OX_PREVIEW_BAND,     /* closed: frame that selects what lies in it */
  OX_PREVIEW_DONE,     /* closed: floor that is worked off */
  OX_PREVIEW_TROUBLE,  /* one point: why something was refused */
  OX_PREVIEW_LABEL     /* text at one point */
} OxPreviewKind;

typedef struct
{
  OxPreviewKind kind;
  guint n;
  OxPoint *points;
  char *text; /* of a label */
} OxPreviewShape;

typedef struct
{
  GPtrArray *shapes; /* of OxPreviewShape* */
} OxPreview;

OxPreview *ox_preview_new (void) G_GNUC_WARN_UNUSED_RESULT;
void ox_preview_free (OxPreview *preview);
/* ox_preview_add: @points: @n of them, as the kind says; copied */
void ox_preview_add (OxPreview *preview, OxPreviewKind kind, const OxPoint *points, guint n);
/* ox_preview_add_label: @text: translated; copied */
void ox_preview_add_label (OxPreview *preview, OxPoint at, const char *text);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxPreview, ox_preview_free)
G_END_DECLS
