/* Oxturn: plan/lane - where a strip may run on a lane.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/lane.h"
#include <stdlib.h>

typedef struct
{
  double x0, y0, x1, y1; /* y0 <= y1 */
} Side;

struct _OxSideIndex
{
  Side *sides;
  guint n;
  double base, row_height;
  guint n_rows;
  guint *starts; /* n_rows + 1 */
  guint *items;
};

static guint
row_of (const OxSideIndex *index, double y)
{
  double row = floor ((y - index->base) / index->row_height);
  return (guint) CLAMP (row, 0.0, (double) index->n_rows - 1);
}

static void
fill_rows (OxSideIndex *index)
{
  index->starts = g_new0 (guint, index->n_rows + 2);
  for (guint i = 0; i < index->n; i++)
    for (guint r = row_of (index, index->sides[i].y0); r <= row_of (index, index->sides[i].y1); r++)
      index->starts[r + 1]++;
  for (guint r = 0; r < index->n_rows; r++)
    index->starts[r + 1] += index->starts[r];
  index->items = g_new (guint, index->starts[index->n_rows] + 1);
  g_autofree guint *next = g_memdup2 (index->starts, sizeof (guint) * (index->n_rows + 1));
  for (guint i = 0; i < index->n; i++)
    for (guint r = row_of (index, index->sides[i].y0); r <= row_of (index, index->sides[i].y1); r++)
      index->items[next[r]++] = i;
}

OxSideIndex *
ox_side_index_new (const OxRegion *region, double angle)
{
  OxSideIndex *index = g_new0 (OxSideIndex, 1);
  double c = cos (angle), s = -sin (angle);
  double top = -INFINITY, bottom = INFINITY;
  index->sides = g_new (Side, region->n_points + 1);
  for (guint r = 0; r < region->n_rings; r++)
    for (guint i = 0; i < region->rings[r].n; i++)
      {
        const OxPoint *points = region->points + region->rings[r].start;
        OxPoint a = ox_point_turn (points[i], c, s);
        OxPoint b = ox_point_turn (points[(i + 1) % region->rings[r].n], c, s);
        index->sides[index->n++] = a.y <= b.y ? (Side) { a.x, a.y, b.x, b.y } : (Side) { b.x, b.y, a.x, a.y };
        bottom = MIN (bottom, MIN (a.y, b.y));
        top = MAX (top, MAX (a.y, b.y));
      }
  index->base = index->n > 0 ? bottom : 0;
  double height = index->n > 0 ? top - bottom : 0;
  index->n_rows = (guint) CLAMP (height / 0.5, 1.0, 4000.0);
  index->row_height = MAX (height / index->n_rows, 1e-6);
  fill_rows (index);
  return index;
}

void
ox_side_index_free (OxSideIndex *index)
{
  if (index == NULL)
    return;
  g_free (index->sides);
  g_free (index->starts);
  g_free (index->items);
  g_free (index);
}

static int
compare_spans (const void *a, const void *b)
{
  const OxSpan *p = a, *q = b;
  if (p->lo != q->lo)
    return p->lo < q->lo ? -1 : 1;
  return (p->hi > q->hi) - (p->hi < q->hi);
}

static double
side_x_at (const Side *side, double y)
{
  return side->x0 + (side->x1 - side->x0) * (y - side->y0) / (side->y1 - side->y0);
}

/* x-extent of the part of @side in the band; FALSE when it does not enter it. */
static gboolean
side_in_band (const Side *side, double y0, double y1, OxSpan *out)
{
  double xa = side->x0, xb = side->x1;
  if (side->y1 <= y0 + OX_LANE_TOUCH || side->y0 >= y1 - OX_LANE_TOUCH)
    return FALSE;
  if (side->y0 < y0)
    xa = side_x_at (side, y0);
  if (side->y1 > y1)
    xb = side_x_at (side, y1);
  *out = (OxSpan) { MIN (xa, xb), MAX (xa, xb) };
  return TRUE;
}

static gboolean
inside_at (const OxSideIndex *index, double x, double y)
{
  gboolean inside = FALSE;
  guint row = row_of (index, y);
  for (guint k = index->starts[row]; k < index->starts[row + 1]; k++)
    {
      const Side *side = &index->sides[index->items[k]];
      if (side->y0 <= y && y < side->y1 && side_x_at (side, y) < x)
        inside = !inside;
    }
  return inside;
}

void
ox_side_index_spans (const OxSideIndex *index, double y0, double y1, GArray *out)
{
  g_autoptr (GArray) blocked = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  guint last = row_of (index, y1);
  for (guint r = row_of (index, y0); r <= last; r++)
    for (guint k = index->starts[r]; k < index->starts[r + 1]; k++)
      {
        OxSpan span;
        if (side_in_band (&index->sides[index->items[k]], y0, y1, &span))
          g_array_append_val (blocked, span);
      }
  if (blocked->len == 0)
    return;
  const OxSpan *spans = (const OxSpan *) (void *) blocked->data;
  qsort (blocked->data, blocked->len, sizeof (OxSpan), compare_spans);
  double end = spans[0].hi;
  for (guint i = 1; i < blocked->len; i++)
    {
      if (spans[i].lo > end && inside_at (index, (end + spans[i].lo) / 2, (y0 + y1) / 2))
        {
          OxSpan free_span = { end, spans[i].lo };
          g_array_append_val (out, free_span);
        }
      end = MAX (end, spans[i].hi);
    }
}

OxFrame *
ox_frame_new (const OxRegion *travel, const OxRegion *target, const OxMachine *machine, double angle)
{
  OxFrame *frame = g_new0 (OxFrame, 1);
  frame->angle = angle;
  frame->cos_a = cos (angle);
  frame->sin_a = sin (angle);
  frame->machine = machine;
  frame->travel = ox_side_index_new (travel, angle);
  frame->target = ox_side_index_new (target, angle);
  frame->box = OX_BOX_EMPTY;
  for (guint i = 0; i < target->n_points; i++)
    ox_box_add (&frame->box, ox_frame_from_floor (frame, target->points[i]));
  return frame;
}

void
ox_frame_free (OxFrame *frame)
{
  if (frame == NULL)
    return;
  ox_side_index_free (frame->travel);
  ox_side_index_free (frame->target);
  g_free (frame);
}

OxPoint
ox_frame_to_floor (const OxFrame *frame, OxPoint p)
{
  return ox_point_turn (p, frame->cos_a, frame->sin_a);
}

OxPoint
ox_frame_from_floor (const OxFrame *frame, OxPoint p)
{
  return ox_point_turn (p, frame->cos_a, -frame->sin_a);
}

void
ox_frame_spans (const OxFrame *frame, double y, int sign, GArray *out)
{
  const OxMachine *m = frame->machine;
  double up = (sign > 0 ? m->left : m->right) + m->wall_gap;
  double down = (sign > 0 ? m->right : m->left) + m->wall_gap;
  double behind = sign > 0 ? m->rear : m->front + m->wall_gap; /* towards -x */
  double ahead = sign > 0 ? m->front + m->wall_gap : m->rear;  /* towards +x */
  g_autoptr (GArray) body = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  g_autoptr (GArray) pattern = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  ox_side_index_spans (frame->travel, y - down, y + up, body);
  if (body->len == 0)
    return;
  ox_side_index_spans (frame->target, y - m->blast_width / 2, y + m->blast_width / 2, pattern);
  for (guint i = 0, j = 0; i < body->len && j < pattern->len;)
    {
      const OxSpan *b = &g_array_index (body, OxSpan, i);
      const OxSpan *p = &g_array_index (pattern, OxSpan, j);
      OxSpan both = { MAX (b->lo + behind, p->lo + m->blast_length / 2), MIN (b->hi - ahead, p->hi - m->blast_length / 2) };
      if (both.hi >= both.lo)
        g_array_append_val (out, both);
      if (b->hi < p->hi)
        i++;
      else
        j++;
    }
}

gboolean
ox_frame_find_span (const OxFrame *frame, double y, int sign, OxSpan x, OxSpan *out)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  ox_frame_spans (frame, y, sign, spans);
  for (guint i = 0; i < spans->len; i++)
    {
      const OxSpan *span = &g_array_index (spans, OxSpan, i);
      if (span->lo > x.lo || span->hi < x.hi)
        continue;
      *out = *span;
      return TRUE;
    }
  return FALSE;
}
