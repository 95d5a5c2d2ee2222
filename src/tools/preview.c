/* Oxturn: tools/preview - what a tool wants to be seen while it is used.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/preview.h"

static void
shape_free (gpointer data)
{
  OxPreviewShape *shape = data;

  g_free (shape->points);
  g_free (shape->text);
  g_free (shape);
}

OxPreview *
ox_preview_new (void)
{
  OxPreview *preview = g_new0 (OxPreview, 1);

  preview->shapes = g_ptr_array_new_with_free_func (shape_free);
  return preview;
}

void
ox_preview_free (OxPreview *preview)
{
  g_ptr_array_unref (preview->shapes);
  g_free (preview);
}

void
ox_preview_add (OxPreview *preview, OxPreviewKind kind, const OxPoint *points, guint n)
{
  OxPreviewShape *shape = g_new0 (OxPreviewShape, 1);

  shape->kind = kind;
  shape->n = n;
  shape->points = g_memdup2 (points, n * sizeof *points);
  g_ptr_array_add (preview->shapes, shape);
}

void
ox_preview_add_label (OxPreview *preview, OxPoint at, const char *text)
{
  OxPreviewShape *shape;

  ox_preview_add (preview, OX_PREVIEW_LABEL, &at, 1);
  shape = g_ptr_array_index (preview->shapes, preview->shapes->len - 1);
  shape->text = g_strdup (text);
}
