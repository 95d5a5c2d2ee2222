/* Oxturn: plan/repair - open slots between strips, found exactly, get a strip over them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where strips of directions a hair apart meet, or ends leave off side by side, floor can stay open that is much narrower than a strip and shows
 * as a stripe. It costs little to run over it once more, and a client sees it.
 */
#include "plan/layout.h"

#define LEAST_LENGTH 0.25 /* m */
#define LEAST_WIDTH 0.0005
#define ALONG 0.9986       /* cosine of 3 degrees */
#define MOST_LOST_M2 0.005
#define TINY_SHARE 0.05    /* of the shortest strip */

static OxRegion *
open_floor (const OxLayout *layout)
{
  guint n = layout->drafts->len;
  g_autofree OxPoint *corners = g_new (OxPoint, 4 * n + 1);
  for (guint i = 0; i < n; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
      OxBand band = ox_layout_band (layout, draft);
      double h = band.width / 2;
      OxPoint quad[4] = { { band.x0, band.y - h }, { band.x1, band.y - h }, { band.x1, band.y + h }, { band.x0, band.y + h } };
      for (guint k = 0; k < 4; k++)
        corners[4 * i + k] = ox_frame_to_floor (frame, quad[k]);
    }
  g_autoptr (OxRegion) covered = ox_region_union_quads (corners, n);
  return ox_region_difference (layout->target, covered);
}

/* What of the open floor is narrower than a quarter of a strip: the rest is what is left after shrinking and growing again. */
static OxRegion *
thin_parts (const OxLayout *layout, const OxRegion *open)
{
  double off = layout->machine->blast_width / 8;
  g_autoptr (OxRegion) core = ox_region_offset (open, -off, FALSE);
  g_autoptr (OxRegion) wide = ox_region_offset (core, off + 0.001, FALSE);
  return ox_region_difference (open, wide);
}

/* The box of a thin part in the frame in which it is flattest. */
static guint
flattest_frame (const OxLayout *layout, const OxRegion *part, OxBox *out)
{
  guint best = 0;
  double least = INFINITY;
  for (guint f = 0; f < layout->frames->len; f++)
    {
      OxBox box = OX_BOX_EMPTY;
      for (guint i = 0; i < part->n_points; i++)
        ox_box_add (&box, ox_frame_from_floor (g_ptr_array_index (layout->frames, f), part->points[i]));
      if (box.y1 - box.y0 < least)
        {
          least = box.y1 - box.y0;
          best = f;
          *out = box;
        }
    }
  return best;
}

static gboolean
covered_at (const OxLayout *layout, const OxRegion *open, const OxFrame *frame, OxPoint p)
{
  OxPoint q = ox_frame_to_floor (frame, p);
  return ox_region_contains (layout->target, q) && !ox_region_contains (open, q);
}

/* Strips on both sides along most of its length make it a slot; floor beside a wall is none. */
static gboolean
is_slot (const OxLayout *layout, const OxRegion *open, const OxFrame *frame, OxBox box)
{
  guint both = 0, all = 0;
  for (double x = box.x0 + 0.025; x < box.x1; x += 0.05, all++)
    both += covered_at (layout, open, frame, (OxPoint) { x, box.y0 - 0.01 }) && covered_at (layout, open, frame, (OxPoint) { x, box.y1 + 0.01 });
  return both * 0.05 >= LEAST_LENGTH && both * 2 > all;
}

/* Moves the draft that covers @beside towards the slot by @shift, when it is none of the lane grid, lies along the slot, and leaves less open elsewhere
 * than it closes. */
static gboolean
draw_near (OxLayout *layout, guint index, OxPoint beside, double shift)
{
  const OxMachine *m = layout->machine;
  const OxFrame *frame = g_ptr_array_index (layout->frames, index);
  OxPoint at = ox_frame_to_floor (frame, beside);
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  OxBox box = { beside.x - m->blast_width, beside.y - m->blast_width, beside.x + m->blast_width, beside.y + m->blast_width };
  ox_layout_near (layout, index, box, OX_NEAR_ALL, near);
  for (guint k = 0; k < near->len; k++)
    {
      guint i = g_array_index (near, guint, k);
      OxDraft old = g_array_index (layout->drafts, OxDraft, i), moved = old;
      const OxFrame *own = g_ptr_array_index (layout->frames, old.frame);
      OxPoint q = ox_frame_from_floor (own, at);
      double along = cos (own->angle - frame->angle);
      OxSpan span;
      if (old.grid || fabs (along) < ALONG || fabs (q.y - old.y) > m->blast_width / 2 || q.x < old.x0 || q.x > old.x1)
        continue;
      moved.y += along > 0 ? shift : -shift;
      if (!ox_frame_find_span (own, moved.y, old.sign, (OxSpan) { old.x0 + 0.02, old.x1 - 0.02 }, &span))
        continue;
      moved.x0 = MAX (old.x0, span.lo);
      moved.x1 = MIN (old.x1, span.hi);
      if (moved.x1 - moved.x0 < ox_layout_least (layout))
        continue;
      moved.lane = ox_layout_lane (layout, moved.frame, moved.y);
      moved.kind = OX_STRIP_CROSSWISE;
      double left = ox_cover_left (layout->cover);
      ox_layout_replace (layout, i, &moved);
      if (ox_layout_slot_shift (layout, moved.frame, moved.y, (OxSpan) { moved.x0, moved.x1 }) == 0
          && ox_cover_left (layout->cover) < left + (moved.x1 - moved.x0) * fabs (shift) + MOST_LOST_M2)
        return TRUE;
      ox_layout_replace (layout, i, &old);
    }
  return FALSE;
}

/* Closes a slot by moving one of the strips beside it. */
static gboolean
close_box (OxLayout *layout, guint index, OxBox box)
{
  double shift = box.y1 - box.y0 + 0.002, x = (box.x0 + box.x1) / 2;
  return draw_near (layout, index, (OxPoint) { x, box.y1 + 0.01 }, -shift) || draw_near (layout, index, (OxPoint) { x, box.y0 - 0.01 }, shift);
}

/* Lays a strip that covers the box, on the first lane beside its middle where one fits. */
static gboolean
cover_box (OxLayout *layout, guint index, OxBox box)
{
  const OxMachine *m = layout->machine;
  double half = m->blast_length / 2, room = m->blast_width / 2 - (box.y1 - box.y0) / 2 - 0.002;
  static const double tries[] = { 0, 0.5, -0.5, 0.95, -0.95 };
  for (guint t = 0; t < G_N_ELEMENTS (tries); t++)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
        double y = (box.y0 + box.y1) / 2 + tries[t] * room;
        ox_frame_spans (g_ptr_array_index (layout->frames, index), y, sign, spans);
        for (guint i = 0; i < spans->len; i++)
          {
            OxSpan span = g_array_index (spans, OxSpan, i);
            double x0 = box.x0 + half - 0.005, x1 = box.x1 - half + 0.005;
            double lack = MAX (ox_layout_least (layout) - (x1 - x0), 0);
            x0 = MAX (span.lo, x0 - lack / 2);
            x1 = MIN (span.hi, MAX (x1, x0 + ox_layout_least (layout)));
            x0 = MIN (x0, MAX (span.lo, x1 - ox_layout_least (layout)));
            if (x1 - x0 < ox_layout_least (layout) - 1e-9 || x0 - half > box.x0 + 0.01 || x1 + half < box.x1 - 0.01)
              continue;
            OxDraft draft = { index, ox_layout_lane (layout, index, y), sign, y, x0, x1, OX_STRIP_CROSSWISE, FALSE, span.lo, span.hi };
            ox_layout_add (layout, &draft);
            return TRUE;
          }
      }
  return FALSE;
}

void
ox_layout_repair (OxLayout *layout)
{
  if (ox_run_cancelled (layout->run, NULL))
    return;
  g_autoptr (OxRegion) open = open_floor (layout);
  g_autoptr (OxRegion) thin = thin_parts (layout, open);
  for (guint i = 0; i < thin->n_parts && !layout->one_heading && !ox_run_cancelled (layout->run, NULL); i++)
    {
      g_autoptr (OxRegion) part = ox_region_get_part (thin, i);
      OxBox box = OX_BOX_EMPTY;
      guint index = flattest_frame (layout, part, &box);
      if (box.x1 - box.x0 < LEAST_LENGTH || box.y1 - box.y0 > layout->machine->blast_width * 0.6 || box.y1 - box.y0 < LEAST_WIDTH)
        continue;
      if (is_slot (layout, open, g_ptr_array_index (layout->frames, index), box))
        {
          /* A strip for so little would be one that others cover. */
          gboolean tiny = (box.x1 - box.x0) * (box.y1 - box.y0) < TINY_SHARE * layout->machine->min_strip * layout->machine->blast_width;
          if (!tiny || !close_box (layout, index, box))
            cover_box (layout, index, box);
        }
    }
}
