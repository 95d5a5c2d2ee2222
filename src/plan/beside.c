/* Oxturn: plan/beside - strips that lie beside each other: no slot between them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"

#define MOST_WEDGE 0.03 /* m */
#define LEAST_SLOT 0.25 /* m: shorter ones are crumbs */
#define NEARLY_PARALLEL (2 * G_PI / 180)

/* A draft strip seen from the frame of another direction, as far as it lies beside the stretch of @x on the lane at @y there: how far off to the side
 * it is at both ends. FALSE when it is not parallel to within two degrees or not beside it. */
static gboolean
offsets_beside (const OxLayout *layout, const OxDraft *draft, const OxFrame *frame, double y, OxSpan x, OxSpan *off)
{
  const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
  if (fabs (sin (own->angle - frame->angle)) > sin (NEARLY_PARALLEL))
    return FALSE;
  OxPoint a = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x0, draft->y }));
  OxPoint b = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x1, draft->y }));
  double lo = MAX (MIN (a.x, b.x), x.lo), hi = MIN (MAX (a.x, b.x), x.hi);
  if (hi <= lo)
    return FALSE;
  double slope = (b.y - a.y) / (b.x - a.x);
  *off = (OxSpan) { a.y + slope * (lo - a.x) - y, a.y + slope * (hi - a.x) - y };
  return TRUE;
}

double
ox_layout_slot_shift (const OxLayout *layout, guint frame, double y, OxSpan x)
{
  const OxMachine *m = layout->machine;
  double most = m->blast_width - m->min_overlap;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      OxSpan off;
      if (!offsets_beside (layout, &g_array_index (layout->drafts, OxDraft, i), g_ptr_array_index (layout->frames, frame), y, x, &off)
          || off.lo * off.hi <= 0)
        continue;
      double far = MAX (fabs (off.lo), fabs (off.hi)), near = MIN (fabs (off.lo), fabs (off.hi));
      /* Strips that draw apart along their length leave a wedge, which the next lanes fill, and no slot. */
      if (far - near < MOST_WEDGE && far > most + 1e-4 && near < m->blast_width * 1.25)
        return off.lo > 0 ? far - most : most - far;
    }
  return 0;
}

/* Strips that end square on to a stretch with a slot between, on one side of it: their widths, the widest slot, and where along the stretch they are. */
typedef struct
{
  double width, slot;
  OxSpan x;
} Noses;

static void
count_nose (Noses *noses, double gap, OxSpan shared, double most)
{
  if (gap < 1e-4 || gap > most || shared.hi <= shared.lo)
    return;
  noses->x = noses->width > 0 ? (OxSpan) { MIN (noses->x.lo, shared.lo), MAX (noses->x.hi, shared.hi) } : shared;
  noses->width += shared.hi - shared.lo;
  noses->slot = MAX (noses->slot, gap);
}

double
ox_layout_nose_shift (const OxLayout *layout, guint index, double y, OxSpan x, OxSpan *where)
{
  const OxMachine *m = layout->machine;
  const OxFrame *frame = g_ptr_array_index (layout->frames, index);
  double half = m->blast_length / 2, side = m->blast_width / 2;
  Noses above = { 0, 0, { 0, 0 } }, below = above;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
      if (fabs (cos (own->angle - frame->angle)) > sin (NEARLY_PARALLEL))
        continue;
      OxPoint a = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x0 - half, draft->y }));
      OxPoint b = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x1 + half, draft->y }));
      OxSpan shared = { MAX (a.x - side, x.lo - half), MIN (a.x + side, x.hi + half) };
      count_nose (&above, MIN (a.y, b.y) - (y + side), shared, m->blast_width / 4);
      count_nose (&below, y - side - MAX (a.y, b.y), shared, m->blast_width / 4);
    }
  const Noses *worse = above.width >= below.width ? &above : &below;
  if (worse->width < LEAST_SLOT)
    return 0;
  *where = worse->x;
  /* A hair more than the slot: the ends are rounded. */
  return worse == &above ? above.slot + 5 * OX_GRID : -below.slot - 5 * OX_GRID;
}

/* Cuts the end of @draft off where others leave off just short of it, so that a strip of its own can be laid there, nearer to them. */
static gboolean
cut_nose (const OxLayout *layout, OxDraft *draft)
{
  OxSpan where;
  double seam = layout->machine->min_overlap + layout->machine->blast_length / 2;
  double least = ox_layout_least (layout);
  if (ox_layout_nose_shift (layout, draft->frame, draft->y, (OxSpan) { draft->x0, draft->x1 }, &where) == 0)
    return FALSE;
  if (draft->x1 - where.hi < least && where.lo + seam - draft->x0 > 2 * least && where.hi - where.lo >= least / 2)
    {
      draft->x1 = MIN (draft->x1, where.lo + seam);
      return TRUE;
    }
  if (where.lo - draft->x0 < least && draft->x1 - where.hi + seam > 2 * least && where.hi - where.lo >= least / 2)
    {
      draft->x0 = MAX (draft->x0, where.hi - seam);
      return TRUE;
    }
  return FALSE;
}

gboolean
ox_layout_cut_noses (OxLayout *layout)
{
  gboolean any = FALSE;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      OxDraft cut = *draft;
      if (!cut_nose (layout, &cut))
        continue;
      OxBand before = ox_layout_band (layout, draft), after = ox_layout_band (layout, &cut);
      ox_cover_add (layout->cover, &before, -1);
      ox_cover_add (layout->cover, &after, 1);
      *draft = cut;
      any = TRUE;
    }
  return any;
}

/* Whether some strip other than @self covers @p, a point of the floor. */
static gboolean
is_covered (const OxLayout *layout, OxPoint p, guint self)
{
  double half = layout->machine->blast_length / 2, side = layout->machine->blast_width / 2;
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
      OxPoint q = ox_frame_from_floor (frame, p);
      if (i != self && fabs (q.y - draft->y) <= side && q.x >= draft->x0 - half && q.x <= draft->x1 + half)
        return TRUE;
    }
  return FALSE;
}

/* Whether floor lies open along the middle of the slot between draft @self and the strip beside it that @shift would close. */
static gboolean
is_open (const OxLayout *layout, guint self, double shift)
{
  const OxMachine *m = layout->machine;
  const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, self);
  const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
  double slot = fabs (shift) - m->min_overlap;
  double y = draft->y + (shift > 0 ? 1 : -1) * (m->blast_width / 2 + slot / 2);
  guint open = 0;
  for (double x = draft->x0; slot > 0 && x <= draft->x1; x += 0.05)
    {
      OxPoint p = ox_frame_to_floor (frame, (OxPoint) { x, y });
      open += ox_region_contains (layout->target, p) && !is_covered (layout, p, self);
    }
  return open * 0.05 >= LEAST_SLOT;
}

void
ox_layout_close_slots (OxLayout *layout)
{
  for (guint i = 0; i < layout->drafts->len; i++)
    {
      OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      OxSpan x = { draft->x0, draft->x1 };
      double shift = draft->grid ? 0 : ox_layout_slot_shift (layout, draft->frame, draft->y, x);
      if (shift == 0 || !is_open (layout, i, shift))
        continue;
      OxDraft moved = *draft;
      g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
      moved.y += shift;
      ox_frame_spans (g_ptr_array_index (layout->frames, draft->frame), moved.y, draft->sign, spans);
      for (guint k = 0; k < spans->len; k++)
        {
          OxSpan span = g_array_index (spans, OxSpan, k);
          if (span.lo > draft->x0 + 0.05 || span.hi < draft->x1 - 0.05)
            continue;
          moved.x0 = MAX (draft->x0, span.lo);
          moved.x1 = MIN (draft->x1, span.hi);
          if (moved.x1 - moved.x0 < ox_layout_least (layout))
            continue;
          OxBand before = ox_layout_band (layout, draft), after = ox_layout_band (layout, &moved);
          ox_cover_add (layout->cover, &before, -1);
          ox_cover_add (layout->cover, &after, 1);
          moved.lane = ox_layout_lane (layout, moved.frame, moved.y);
          moved.kind = OX_STRIP_CROSSWISE;
          *draft = moved;
          break;
        }
    }
}
