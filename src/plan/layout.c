/* Oxturn: plan/layout - a room while its strips are being laid.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"
#include "plan/pace.h"
#include "trade/production.h"

#define SAME_ANGLE 1e-7  /* radians */
#define MOST_STRAY 0.015 /* m */
#define SAME_LANE 0.0002    /* m */

/* Cells a tenth of the width that a strip adds: fine enough to see what a strip is worth. */
static double
cell_size (const OxMachine *machine)
{
  return (machine->blast_width - machine->min_overlap) / 10;
}

/* The speed at which the target takes as long as at its own speeds. */
static double
mean_speed (const OxJob *job, const OxRegion *target)
{
  const OxMachine *m = job->machine;
  double area = ox_region_area (target);
  for (guint i = 0; i < job->n_conditions; i++)
    if (job->conditions[i]->speed_m_per_min > 0 && area > 0)
      return area / ox_paces_ideal_hours (job, target) / ox_production_area_per_hour (m->blast_width, m->min_overlap, 1, 1);
  return m->travel_speed;
}

OxLayout *
ox_layout_new (const OxFloor *floor, const OxCoat *coat, const OxJob *job, double angle, OxWork work)
{
  OxLayout *layout = g_new0 (OxLayout, 1);
  layout->room = coat->room;
  layout->coat = coat->coat;
  layout->machine = job->machine;
  layout->travel = floor->travel;
  layout->target = coat->target;
  layout->speed = mean_speed (job, coat->target);
  layout->hand_rate = job->rates.edge_m2_per_hour;
  layout->work = work;
  layout->frames = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_frame_free);
  layout->cover = ox_cover_new (layout->target, angle, cell_size (job->machine));
  layout->lanes = g_array_new (FALSE, FALSE, sizeof (OxLane));
  layout->drafts = g_array_new (FALSE, FALSE, sizeof (OxDraft));
  layout->ids = g_array_new (FALSE, FALSE, sizeof (guint));
  layout->near = ox_near_new (layout->frames, job->machine->blast_width);
  ox_layout_frame (layout, angle, 0);
  return layout;
}

void
ox_layout_free (OxLayout *layout)
{
  if (layout == NULL)
    return;
  g_ptr_array_unref (layout->frames);
  ox_cover_free (layout->cover);
  g_array_unref (layout->lanes);
  g_array_unref (layout->drafts);
  g_array_unref (layout->ids);
  ox_near_free (layout->near);
  g_free (layout);
}

int
ox_layout_find_frame (const OxLayout *layout, double angle, double length)
{
  int best = -1;
  double least = length > 0 ? MIN (MOST_STRAY / length, 0.05) : SAME_ANGLE;
  for (guint i = 0; i < layout->frames->len; i++)
    {
      const OxFrame *frame = g_ptr_array_index (layout->frames, i);
      double off = fabs (remainder (frame->angle - angle, G_PI));
      if (off < least)
        {
          least = off;
          best = (int) i;
        }
    }
  return best;
}

guint
ox_layout_frame (OxLayout *layout, double angle, double length)
{
  int found = ox_layout_find_frame (layout, angle, length);
  if (found >= 0)
    return (guint) found;
  g_ptr_array_add (layout->frames, ox_frame_new (layout->travel, layout->target, layout->machine, angle));
  return layout->frames->len - 1;
}

guint
ox_layout_lane (OxLayout *layout, guint frame, double y)
{
  for (guint i = 0; i < layout->lanes->len; i++)
    {
      const OxLane *lane = &g_array_index (layout->lanes, OxLane, i);
      if (lane->frame == frame && fabs (lane->y - y) < SAME_LANE)
        return i;
    }
  OxLane lane = { frame, y };
  g_array_append_val (layout->lanes, lane);
  return layout->lanes->len - 1;
}

OxBand
ox_layout_band (const OxLayout *layout, const OxDraft *draft)
{
  const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
  double half = layout->machine->blast_length / 2;
  return (OxBand) { frame->angle, draft->x0 - half, draft->x1 + half, draft->y, layout->machine->blast_width };
}

static OxNearLine
middle_line (const OxDraft *draft, const OxBand *band)
{
  return (OxNearLine){ draft->frame, band->y, band->x0, band->x1 };
}

void
ox_layout_add (OxLayout *layout, const OxDraft *draft)
{
  OxBand band = ox_layout_band (layout, draft);
  OxNearLine line = middle_line (draft, &band);
  ox_cover_add (layout->cover, &band, 1);
  ox_near_add (layout->near, &line, layout->next_id);
  g_array_append_vals (layout->drafts, draft, 1);
  g_array_append_val (layout->ids, layout->next_id);
  layout->next_id++;
}

void
ox_layout_replace (OxLayout *layout, guint i, const OxDraft *draft)
{
  OxDraft *old = &g_array_index (layout->drafts, OxDraft, i);
  OxBand before = ox_layout_band (layout, old), after = ox_layout_band (layout, draft);
  OxNearLine line_before = middle_line (old, &before), line_after = middle_line (draft, &after);
  guint id = g_array_index (layout->ids, guint, i);
  ox_cover_replace (layout->cover, &before, &after);
  ox_near_remove (layout->near, &line_before, id);
  ox_near_add (layout->near, &line_after, id);
  *old = *draft;
}

void
ox_layout_remove (OxLayout *layout, guint i)
{
  const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
  OxBand band = ox_layout_band (layout, draft);
  OxNearLine line = middle_line (draft, &band);
  ox_cover_add (layout->cover, &band, -1);
  ox_near_remove (layout->near, &line, g_array_index (layout->ids, guint, i));
  g_array_remove_index (layout->drafts, i);
  g_array_remove_index (layout->ids, i);
}

void
ox_layout_near (const OxLayout *layout, guint frame, OxBox box, OxNearSort sort, GArray *out)
{
  ox_near_find (layout->near, frame, box, sort, out);
  const guint *ids = (const guint *) (const void *) layout->ids->data;
  guint low = 0;
  for (guint k = 0; k < out->len; k++)
    {
      guint id = g_array_index (out, guint, k), high = layout->ids->len;
      while (low + 1 < high)
        {
          guint middle = (low + high) / 2;
          if (ids[middle] <= id)
            low = middle;
          else
            high = middle;
        }
      g_array_index (out, guint, k) = low;
    }
}

double
ox_layout_least (const OxLayout *layout)
{
  return layout->machine->min_strip + 2 * OX_GRID;
}

double
ox_layout_hand_seconds (const OxLayout *layout)
{
  return 3600 / layout->hand_rate;
}

double
ox_layout_move_seconds (const OxLayout *layout)
{
  /* Most short strips are reached by rolling back, some need a swing first. */
  return 0.6 * layout->machine->swing_s + 4;
}
