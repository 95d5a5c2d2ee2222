/* Oxturn: plan/prune - takes strips back that others cover: the last word, by exact areas.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The raster is too coarse to tell a strip that covers a little of its own from one that covers nothing; those few are measured.
 */
#include "plan/layout.h"
#include <stdlib.h>

#define DOUBTFUL_SHARE 0.25 /* on the raster */
#define LEAST_SHARE 0.0205  /* exactly */
#define SLABS 64            /* along a strip, at least */

typedef struct
{
  OxPoint corners[4];
  OxBox box;
} Quad;

static Quad
draft_quad (const OxLayout *layout, guint i)
{
  const OxDraft *draft = &g_array_index (layout->drafts, OxDraft, i);
  const OxFrame *frame = g_ptr_array_index (layout->frames, draft->frame);
  OxBand band = ox_layout_band (layout, draft);
  double h = band.width / 2;
  OxPoint corners[4] = { { band.x0, band.y - h }, { band.x1, band.y - h }, { band.x1, band.y + h }, { band.x0, band.y + h } };
  Quad quad = { .box = OX_BOX_EMPTY };
  for (guint k = 0; k < 4; k++)
    {
      quad.corners[k] = ox_frame_to_floor (frame, corners[k]);
      ox_box_add (&quad.box, quad.corners[k]);
    }
  return quad;
}

/* The span that a convex quadrilateral covers of the line at height @y; FALSE when it does not reach there. */
static gboolean
quad_span (const OxPoint q[4], double y, OxSpan *out)
{
  gboolean any = FALSE;
  for (guint i = 0; i < 4; i++)
    {
      OxPoint a = q[i], b = q[(i + 1) % 4];
      if ((a.y <= y) == (b.y <= y))
        continue;
      double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
      *out = any ? (OxSpan) { MIN (out->lo, x), MAX (out->hi, x) } : (OxSpan) { x, x };
      any = TRUE;
    }
  return any;
}

static int
compare_spans (const void *a, const void *b)
{
  const OxSpan *p = a, *q = b;
  if (p->lo != q->lo)
    return p->lo < q->lo ? -1 : 1;
  return (p->hi > q->hi) - (p->hi < q->hi);
}

/* Metres of @x that none of the spans holds; sorts them. */
static double
open_length (GArray *spans, OxSpan x)
{
  double open = 0, end = x.lo;
  if (spans->len > 1)
    qsort (spans->data, spans->len, sizeof (OxSpan), compare_spans);
  for (guint i = 0; i < spans->len; i++)
    {
      const OxSpan *span = &g_array_index (spans, OxSpan, i);
      open += MAX (MIN (span->lo, x.hi) - end, 0);
      end = MAX (end, span->hi);
    }
  return open + MAX (x.hi - end, 0);
}

/* Corners of all other drafts near draft @i, four each, in its frame. */
static GArray *
quads_near (const OxLayout *layout, guint i)
{
  const OxFrame *frame = g_ptr_array_index (layout->frames, g_array_index (layout->drafts, OxDraft, i).frame);
  Quad own = draft_quad (layout, i);
  GArray *near = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  g_autoptr (GArray) drafts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxBand band = ox_layout_band (layout, &g_array_index (layout->drafts, OxDraft, i));
  OxBox box = { band.x0 - band.width, band.y - band.width, band.x1 + band.width, band.y + band.width };
  ox_layout_near (layout, g_array_index (layout->drafts, OxDraft, i).frame, box, OX_NEAR_ALL, drafts);
  for (guint d = 0; d < drafts->len; d++)
    {
      guint k = g_array_index (drafts, guint, d);
      Quad quad = draft_quad (layout, k);
      if (k == i || quad.box.x0 >= own.box.x1 || quad.box.x1 <= own.box.x0 || quad.box.y0 >= own.box.y1 || quad.box.y1 <= own.box.y0)
        continue;
      for (guint c = 0; c < 4; c++)
        quad.corners[c] = ox_frame_from_floor (frame, quad.corners[c]);
      g_array_append_vals (near, quad.corners, 4);
    }
  return near;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Heights between which what others cover changes little or, where they lie along or across, not at all: evenly spaced ones and those of corners. */
static GArray *
slab_heights (const OxBand *band, const GArray *near)
{
  GArray *heights = g_array_new (FALSE, FALSE, sizeof (double));
  double low = band->y - band->width / 2, high = band->y + band->width / 2;
  for (guint i = 0; i <= SLABS; i++)
    {
      double y = low + band->width * i / SLABS;
      g_array_append_val (heights, y);
    }
  for (guint i = 0; i < near->len; i++)
    {
      double y = g_array_index (near, OxPoint, i).y;
      if (y > low && y < high)
        g_array_append_val (heights, y);
    }
  qsort (heights->data, heights->len, sizeof (double), compare_doubles);
  return heights;
}

/* Share of what draft @i covers that no other draft covers, measured in slabs along it. */
static double
exact_share (const OxLayout *layout, guint i)
{
  OxBand band = ox_layout_band (layout, &g_array_index (layout->drafts, OxDraft, i));
  g_autoptr (GArray) near = quads_near (layout, i);
  g_autoptr (GArray) heights = slab_heights (&band, near);
  g_autoptr (GArray) spans = g_array_new (FALSE, TRUE, sizeof (OxSpan));
  double open = 0;
  for (guint slab = 0; slab + 1 < heights->len; slab++)
    {
      double y0 = g_array_index (heights, double, slab), y1 = g_array_index (heights, double, slab + 1);
      g_array_set_size (spans, 0);
      for (guint k = 0; k + 3 < near->len; k += 4)
        {
          OxSpan span;
          if (quad_span (&g_array_index (near, OxPoint, k), (y0 + y1) / 2, &span))
            g_array_append_val (spans, span);
        }
      open += (y1 - y0) * open_length (spans, (OxSpan) { band.x0, band.x1 });
    }
  return open / (band.width * (band.x1 - band.x0));
}

static double
raster_share (const OxLayout *layout, guint i, OxProfile *profile)
{
  OxBand band = ox_layout_band (layout, &g_array_index (layout->drafts, OxDraft, i));
  guint cells = 0;
  ox_cover_profile (layout->cover, &band, 1, profile);
  for (guint k = 0; k < profile->counts->len; k++)
    cells += g_array_index (profile->counts, guint, k);
  return cells * profile->sample_m2 / ((band.x1 - band.x0) * band.width);
}

void
ox_layout_prune (OxLayout *layout)
{
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  OxProfile profile = { .counts = counts };
  for (guint i = layout->drafts->len; i > 0 && !ox_run_cancelled (layout->run, NULL); i--)
    if (raster_share (layout, i - 1, &profile) < DOUBTFUL_SHARE && exact_share (layout, i - 1) < LEAST_SHARE && !ox_layout_joins (layout, i - 1))
      ox_layout_remove (layout, i - 1);
}
