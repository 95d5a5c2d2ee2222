/* Oxturn: plan/beside - strips that lie beside each other: no slot between them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"

#define MOST_WEDGE 0.03 /* m */
#define MOST_ASIDE 1.5  /* blast widths: neighbours farther off are none */
#define MOST_LOST 0.05  /* m of its length that a strip may lose when it is moved across */
#define MOST_MISSED 2.0 /* shortest strips: a longer one is worth more than its neighbour's full overlap */
#define LEAST_SLOT 0.25 /* m: shorter ones are crumbs */
#define TRULY_PARALLEL 0.0017 /* m a metre */
#define NEARLY_PARALLEL (2 * G_PI / 180)

/* A draft strip seen from a stretch of a lane in another frame, as far as it lies beside it: how far off to the side it is at both ends of what they
 * share, and where that is. */
typedef struct
{
  double far, near; /* m, absolute */
  int side;         /* +1 above the stretch, -1 below */
  OxSpan shared;
} Neighbour;

/* Whether the draft is so far off the stretch, or at such an angle, that a look at its place alone tells: most of a floor's strips are, and angles and
 * turned corners take their time. */
static gboolean
is_far_off (const OxLayout *layout, const OxDraft *draft, const OxFrame *frame, double y, OxSpan x)
{
  const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
  if (own == frame)
    return fabs (draft->y - y) > MOST_ASIDE * layout->machine->blast_width || draft->x0 > x.hi + OX_GRID || draft->x1 < x.lo - OX_GRID;
  return fabs (own->sin_a * frame->cos_a - own->cos_a * frame->sin_a) > sin (NEARLY_PARALLEL) + 1e-9;
}

/* FALSE when the draft is not parallel to within two degrees, not beside the stretch, or crosses it. Nor need it say so of one farther aside than
 * anybody asks for. */
static gboolean
lies_beside (const OxLayout *layout, const OxDraft *draft, const OxFrame *frame, double y, OxSpan x, Neighbour *out)
{
  const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
  if (is_far_off (layout, draft, frame, y, x) || fabs (sin (own->angle - frame->angle)) > sin (NEARLY_PARALLEL))
    return FALSE;
  OxPoint a = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x0, draft->y }));
  OxPoint b = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x1, draft->y }));
  OxSpan shared = { MAX (MIN (a.x, b.x), x.lo), MIN (MAX (a.x, b.x), x.hi) };
  if (shared.hi <= shared.lo)
    return FALSE;
  double slope = (b.y - a.y) / (b.x - a.x);
  double p = a.y + slope * (shared.lo - a.x) - y, q = a.y + slope * (shared.hi - a.x) - y;
  *out = (Neighbour) { MAX (fabs (p), fabs (q)), MIN (fabs (p), fabs (q)), p > 0 ? 1 : -1, shared };
  /* What lies on the same line is not beside it, the strip itself least of all. */
  return p * q > 0 && out->near > OX_GRID;
}

/* Indices of the drafts that may lie beside the stretch; (transfer full) */
static GArray *
drafts_beside (const OxLayout *layout, guint frame, double y, OxSpan x)
{
  GArray *near = g_array_new (FALSE, FALSE, sizeof (guint));
  double aside = MOST_ASIDE * layout->machine->blast_width;
  ox_layout_near (layout, frame, (OxBox){ x.lo - OX_GRID, y - aside, x.hi + OX_GRID, y + aside }, OX_NEAR_ALONG, near);
  return near;
}

gboolean
ox_layout_joins (const OxLayout *layout, guint i)
{
  const OxMachine *m = layout->machine;
  const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
  g_autoptr (GArray) beside = g_array_new (FALSE, FALSE, sizeof (Neighbour));
  g_autoptr (GArray) near = drafts_beside (layout, draft->frame, draft->y, (OxSpan) { draft->x0, draft->x1 });
  for (guint j = 0; j < near->len; j++)
    {
      Neighbour n;
      guint k = g_array_index (near, guint, j);
      if (k != i
          && lies_beside (layout, &g_array_index (layout->drafts, OxDraft, k), g_ptr_array_index (layout->frames, draft->frame), draft->y,
                          (OxSpan) { draft->x0, draft->x1 }, &n)
          && n.near < m->blast_width && n.far - n.near < TRULY_PARALLEL * (n.shared.hi - n.shared.lo))
        g_array_append_val (beside, n);
    }
  for (guint a = 0; a < beside->len; a++)
    for (guint b = 0; b < beside->len; b++)
      {
        const Neighbour *p = &g_array_index (beside, Neighbour, a), *q = &g_array_index (beside, Neighbour, b);
        double apart = p->far + q->far;
        if (p->side > 0 && q->side < 0 && MIN (p->shared.hi, q->shared.hi) > MAX (p->shared.lo, q->shared.lo)
            && apart > m->blast_width - m->min_overlap + 4 * OX_GRID && apart < 1.25 * m->blast_width)
          return TRUE;
      }
  return FALSE;
}

/* Whether another strip lies between the stretch and the neighbour along all of what they share but for its ends. */
static gboolean
is_parted (const OxLayout *layout, guint frame, double y, const Neighbour *neighbour)
{
  g_autoptr (GArray) near = drafts_beside (layout, frame, y, neighbour->shared);
  for (guint i = 0; i < near->len; i++)
    {
      Neighbour other;
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, g_array_index (near, guint, i));
      if (lies_beside (layout, draft, g_ptr_array_index (layout->frames, frame), y, neighbour->shared, &other)
          && other.side == neighbour->side && other.far < neighbour->near - 1e-6
          && other.shared.lo - neighbour->shared.lo <= layout->machine->blast_length
          && neighbour->shared.hi - other.shared.hi <= layout->machine->blast_length)
        return TRUE;
    }
  return FALSE;
}

double
ox_layout_slot_shift (const OxLayout *layout, guint frame, double y, OxSpan x)
{
  const OxMachine *m = layout->machine;
  double most = m->blast_width - m->min_overlap;
  g_autoptr (GArray) near = drafts_beside (layout, frame, y, x);
  for (guint i = 0; i < near->len; i++)
    {
      Neighbour n;
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, g_array_index (near, guint, i));
      /* Strips that draw apart along their length leave a wedge, which the next lanes fill, and no slot. */
      if (lies_beside (layout, draft, g_ptr_array_index (layout->frames, frame), y, x, &n)
          && n.far - n.near < MOST_WEDGE && n.far > most + 1e-4 && n.near < m->blast_width * 1.25 && !is_parted (layout, frame, y, &n))
        return n.side * (n.far - most);
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

/* Whether a look at the draft's place alone tells that it does not run square on to the stretch and within it. */
static gboolean
is_not_across (const OxLayout *layout, const OxDraft *draft, const OxFrame *frame, OxSpan x)
{
  const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
  double c = own->cos_a * frame->cos_a + own->sin_a * frame->sin_a, s = own->sin_a * frame->cos_a - own->cos_a * frame->sin_a;
  double half = layout->machine->blast_length / 2, reach = layout->machine->blast_width / 2 + half + OX_GRID;
  double start = (draft->x0 - half) * c - draft->y * s;
  return fabs (c) > sin (NEARLY_PARALLEL) + 1e-9 || start + reach < x.lo || start - reach > x.hi;
}

double
ox_layout_nose_shift (const OxLayout *layout, guint index, double y, OxSpan x, OxSpan *where)
{
  const OxMachine *m = layout->machine;
  const OxFrame *frame = g_ptr_array_index (layout->frames, index);
  double half = m->blast_length / 2, side = m->blast_width / 2;
  Noses above = { 0, 0, { 0, 0 } }, below = above;
  double ahead = half + side + OX_GRID, off = side + m->blast_width / 4 + OX_GRID;
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  ox_layout_near (layout, index, (OxBox){ x.lo - ahead, y - off, x.hi + ahead, y + off }, OX_NEAR_ACROSS, near);
  for (guint i = 0; i < near->len; i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, g_array_index (near, guint, i));
      const OxFrame *own = g_ptr_array_index (layout->frames, draft->frame);
      if (is_not_across (layout, draft, frame, x) || fabs (cos (own->angle - frame->angle)) > sin (NEARLY_PARALLEL))
        continue;
      OxPoint a = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x0 - half, draft->y }));
      OxPoint b = ox_frame_from_floor (frame, ox_frame_to_floor (own, (OxPoint) { draft->x1 + half, draft->y }));
      const OxPoint low = a.y < b.y ? a : b, high = a.y < b.y ? b : a;
      OxSpan at_low = { MAX (low.x - side, x.lo - half), MIN (low.x + side, x.hi + half) };
      OxSpan at_high = { MAX (high.x - side, x.lo - half), MIN (high.x + side, x.hi + half) };
      count_nose (&above, low.y - (y + side), at_low, m->blast_width / 4);
      count_nose (&below, y - side - high.y, at_high, m->blast_width / 4);
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
  for (guint i = 0; i < layout->drafts->len && !ox_run_cancelled (layout->run, NULL); i++)
    {
      OxDraft cut = g_array_index (layout->drafts, OxDraft, i);
      if (!cut_nose (layout, &cut))
        continue;
      ox_layout_replace (layout, i, &cut);
      any = TRUE;
    }
  return any;
}

/* Whether some strip of those @near other than @self covers @p, a point of the floor. */
static gboolean
is_covered (const OxLayout *layout, const GArray *near, OxPoint p, guint self)
{
  double half = layout->machine->blast_length / 2, side = layout->machine->blast_width / 2;
  for (guint k = 0; k < near->len; k++)
    {
      guint i = g_array_index (near, guint, k);
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
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (guint));
  ox_layout_near (layout, draft->frame, (OxBox){ draft->x0 - m->blast_width, y - m->blast_width, draft->x1 + m->blast_width, y + m->blast_width }, OX_NEAR_ALL,
                  near);
  for (double x = draft->x0; slot > 0 && x <= draft->x1; x += 0.05)
    {
      OxPoint p = ox_frame_to_floor (frame, (OxPoint) { x, y });
      open += ox_region_contains (layout->target, p) && !is_covered (layout, near, p, self);
    }
  return open * 0.05 >= LEAST_SLOT;
}

/* The draft moved across by @shift, a little shorter where it must be; FALSE when it does not fit there. */
static gboolean
shifted (OxLayout *layout, const OxDraft *draft, double shift, OxDraft *out)
{
  OxSpan span, x = { draft->x0 + MOST_LOST, draft->x1 - MOST_LOST };
  *out = *draft;
  out->y += shift;
  if (!ox_frame_find_span (g_ptr_array_index (layout->frames, draft->frame), out->y, draft->sign, x, &span))
    return FALSE;
  out->x0 = MAX (draft->x0, span.lo);
  out->x1 = MIN (draft->x1, span.hi);
  out->lane = ox_layout_lane (layout, out->frame, out->y);
  out->kind = OX_STRIP_CROSSWISE;
  out->grid = FALSE;
  return out->x1 - out->x0 >= ox_layout_least (layout);
}

static double
shift_of (const OxLayout *layout, const OxDraft *draft)
{
  return ox_layout_slot_shift (layout, draft->frame, draft->y, (OxSpan) { draft->x0, draft->x1 });
}

/* Moves draft @i across by @shift where it fits there; FALSE when it does not, or would lie badly there too. Where it then lies too far off its other
 * neighbour and @with_second says so, a second strip is laid beside that one. */
static gboolean
move_across (OxLayout *layout, guint i, double shift, gboolean with_second)
{
  OxDraft old = g_array_index (layout->drafts, OxDraft, i), moved, second;
  if (!shifted (layout, &old, shift, &moved))
    return FALSE;
  ox_layout_replace (layout, i, &moved);
  double other = shift_of (layout, &moved);
  if (other == 0)
    return TRUE;
  if (with_second && shifted (layout, &moved, other, &second) && shift_of (layout, &second) == 0)
    {
      ox_layout_add (layout, &second);
      if (shift_of (layout, &moved) == 0)
        return TRUE;
      ox_layout_remove (layout, layout->drafts->len - 1);
    }
  ox_layout_replace (layout, i, &old);
  return FALSE;
}

void
ox_layout_close_slots (OxLayout *layout)
{
  const OxMachine *m = layout->machine;
  for (guint i = 0; i < layout->drafts->len && !ox_run_cancelled (layout->run, NULL); i++)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
      double shift = draft->grid ? 0 : shift_of (layout, draft);
      /* Neighbours that overlap by less than they must leave nothing open, but an unsteady hand would. */
      if (shift != 0 && (fabs (shift) < m->min_overlap || is_open (layout, i, shift)))
        move_across (layout, i, shift, FALSE);
    }
}

/* Mean width of what draft @i alone covers, over the length where it does. */
static double
own_width (const OxLayout *layout, guint i, OxProfile *profile)
{
  OxBand band = ox_layout_band (layout, &g_array_index (layout->drafts, OxDraft, i));
  guint cells = 0, steps = 0;
  ox_cover_profile (layout->cover, &band, 1, profile);
  for (guint k = 0; k < profile->counts->len; k++)
    {
      guint n = g_array_index (profile->counts, guint, k);
      cells += n;
      steps += n > 0;
    }
  return steps > 0 ? cells * profile->sample_m2 / (steps * profile->step) : 0;
}

gboolean
ox_layout_settle (OxLayout *layout)
{
  gboolean removed = FALSE;
  const OxMachine *m = layout->machine;
  double most = m->blast_width - m->min_overlap;
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  for (guint i = layout->drafts->len; i > 0 && !ox_run_cancelled (layout->run, NULL); i--)
    {
      const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i - 1);
      double shift = draft->grid ? 0 : shift_of (layout, draft);
      if (fabs (shift) < 4 * OX_GRID || fabs (shift) > m->min_overlap || move_across (layout, i - 1, shift, TRUE))
        continue;
      draft = &g_array_index (layout->drafts, OxDraft, i - 1);
      double width = own_width (layout, i - 1, &profile), length = draft->x1 - draft->x0;
      OxDraft between;
      gboolean is_short = length < MOST_MISSED * m->min_strip;
      gboolean fits = shifted (layout, draft, (shift + (shift > 0 ? most : -most)) / 2, &between);
      if (!fits || (is_short && (width == 0 || width > m->blast_width / 4)))
        {
          ox_layout_remove (layout, i - 1);
          removed = TRUE;
        }
      else if (fits)
        ox_layout_add (layout, &between);
    }
  return removed;
}
