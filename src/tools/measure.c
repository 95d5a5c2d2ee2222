/* Oxturn: tools/measure - distance, angle and area between points that are clicked; the job stays as it is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/tool-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  OxTool base;
  GArray *points; /* (nullable) of OxPoint, clicked so far */
  gboolean done;  /* measured to its end: stays in sight until the next click */
  gboolean seen;
  OxSnap hover;
} Measure;

static guint
count (const Measure *self)
{
  return self->points != NULL ? self->points->len : 0;
}

static void
measure_cancel (OxTool *tool)
{
  Measure *self = (Measure *) tool;

  g_clear_pointer (&self->points, g_array_unref);
  self->done = FALSE;
}

static void
measure_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Measure *self = (Measure *) tool;
  OxPoint last = count (self) > 0 ? g_array_index (self->points, OxPoint, count (self) - 1) : (OxPoint){ 0, 0 };
  OxSnapOptions options = { .px_per_m = scene->px_per_m,
                            .last = count (self) > 0 && !self->done ? &last : NULL,
                            .steps = (pointer->hold & OX_HOLD_SHIFT) != 0,
                            .free = (pointer->hold & OX_HOLD_CONTROL) != 0 };

  (void) answer;
  self->seen = TRUE;
  self->hover = ox_snap_find (scene->job, pointer->at, &options);
}

static void
measure_press (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Measure *self = (Measure *) tool;

  measure_motion (tool, scene, pointer, answer);
  if (self->done)
    measure_cancel (tool);
  if (self->points == NULL)
    self->points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  if (pointer->clicks == 2 && count (self) > 1)
    self->done = TRUE;
  else
    g_array_append_val (self->points, self->hover.at);
}

static gboolean
measure_key (OxTool *tool, const OxScene *scene, const OxKey *key, OxToolAnswer *answer)
{
  Measure *self = (Measure *) tool;

  (void) scene;
  (void) answer;
  if (count (self) == 0)
    return FALSE;
  if (key->name == OX_KEY_ESCAPE)
    measure_cancel (tool);
  else if (key->name == OX_KEY_BACKSPACE && !self->done)
    g_array_set_size (self->points, count (self) - 1);
  else
    return FALSE;
  return TRUE;
}

static gboolean
measure_is_busy (const OxTool *tool)
{
  return count ((const Measure *) tool) > 0;
}

/* The angle between two legs at @at, 0 to 180 degrees. */
static double
angle_between (OxPoint before, OxPoint at, OxPoint after)
{
  OxPoint a = ox_point_sub (before, at);
  OxPoint b = ox_point_sub (after, at);

  return fabs (atan2 (ox_point_cross (a, b), ox_point_dot (a, b))) * 180 / G_PI;
}

static char *
words (const GArray *all, OxUnits units)
{
  const OxPoint *p = (const OxPoint *) all->data;
  guint n = all->len;
  g_autofree char *leg = ox_units_length_text (units, ox_point_distance (p[n - 2], p[n - 1]), TRUE);
  GString *text = g_string_new (leg);
  double total = 0;

  for (guint i = 1; i < n; i++)
    total += ox_point_distance (p[i - 1], p[i]);
  if (n > 2)
    {
      g_autofree char *sum = ox_units_length_text (units, total, TRUE);
      g_autoptr (OxRing) ring = ox_ring_new (p, n);
      g_autofree char *area = ox_units_area_text (units, fabs (ox_ring_area (ring)));

      g_string_append_printf (text, _ ("   angle %.1f\302\260   in all %s   area %s"),
                              angle_between (p[n - 3], p[n - 2], p[n - 1]), sum, area);
    }
  return g_string_free (text, FALSE);
}

static void
measure_preview (const OxTool *tool, const OxScene *scene, OxPreview *preview)
{
  const Measure *self = (const Measure *) tool;
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (OxPoint));

  if (count (self) > 0)
    g_array_append_vals (all, self->points->data, count (self));
  if (count (self) > 0 && !self->done
      && ox_point_distance (g_array_index (all, OxPoint, all->len - 1), self->hover.at) >= OX_GRID)
    g_array_append_val (all, self->hover.at);
  if (all->len > 2)
    ox_preview_add (preview, OX_PREVIEW_OUTLINE, (const OxPoint *) all->data, all->len);
  if (all->len > 1)
    {
      g_autofree char *text = words (all, scene->job->units);

      ox_preview_add (preview, OX_PREVIEW_LINE, (const OxPoint *) all->data, all->len);
      ox_preview_add_label (preview, g_array_index (all, OxPoint, all->len - 1), text);
    }
  if (self->seen && !self->done)
    ox_tool_preview_snap (preview, &self->hover);
}

static const char *
measure_hint (const OxTool *tool)
{
  if (count ((const Measure *) tool) == 0)
    return _ ("Click where to measure from.");
  return _ ("Click on for distance, angle and area; a double click leaves them in sight. Backspace steps back, Esc ends.");
}

const OxToolTable ox_tool_measure_table = {
  .size = sizeof (Measure),
  .press = measure_press,
  .motion = measure_motion,
  .key = measure_key,
  .cancel = measure_cancel,
  .is_busy = measure_is_busy,
  .preview = measure_preview,
  .hint = measure_hint,
  .clear = measure_cancel,
};
