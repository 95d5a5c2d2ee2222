/* Oxturn: plan/finish - what the main strips leave: further strips as long as they save more labour than they cost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Candidates are lanes along walls and obstacles (beside them and at lane spacing out to where the machine's rear lets strips begin) and
 * all lanes that are there, in both headings. On each the best stretch is the one with the greatest saving: uncovered floor at the hand rate, less
 * the time of the strip (greatest sum of consecutive steps). The candidate that covers most per second is laid, over and over. Savings only fall
 * as strips are laid, so a candidate at the head of the queue whose saving is still what it was is the best of all.
 */
#include "plan/boundary.h"
#include <stdlib.h>

#define SAME_CANDIDATE 0.004 /* m between lanes that are not worth telling apart */
#define MAX_FRAMES 40
#define NEAR_GRID 0.03       /* m: a lane that near to one of the grid would confuse more than it saves */

typedef struct
{
  guint frame;
  int sign;
  double y;
  guint first_span, n_spans; /* in Finish.spans: where the middle of the pattern may be */
  double x0, x1;             /* best stretch (middle of the pattern) */
  OxSpan span;               /* that it lies in */
  double gain;               /* m2 */
  double rate;               /* m2 a second; the queue's key */
} Candidate;

typedef struct
{
  OxLayout *layout;
  GArray *candidates; /* Candidate */
  GArray *spans;      /* OxSpan */
  OxProfile profile;
  GArray *queue;      /* guint: heap of candidates, greatest rate first */
  double move_seconds; /* what reaching a strip costs at a guess */
} Finish;

/* Best stretch of one span: the greatest sum of (saved seconds - blasting seconds) over consecutive steps. */
static void
best_stretch (Finish *finish, Candidate *c, OxSpan span)
{
  OxLayout *layout = finish->layout;
  const OxMachine *m = layout->machine;
  const OxFrame *frame = g_ptr_array_index (layout->frames, c->frame);
  OxProfile *profile = &finish->profile;
  double half = m->blast_length / 2;
  OxBand band = { frame->angle, span.lo - half, span.hi + half, c->y, m->blast_width };
  ox_cover_profile (layout->cover, &band, 0, profile);
  double worth = profile->sample_m2 * ox_layout_hand_seconds (layout), cost = profile->step / layout->speed * 60;
  double sum = 0, best = 0;
  guint start = 0, from = 0, to = 0, cells = 0, best_cells = 0;
  for (guint i = 0; i < profile->counts->len; i++)
    {
      guint n = g_array_index (profile->counts, guint, i);
      if (n == 0 && sum <= 0) /* mostly so, and nothing begins here */
        continue;
      if (sum <= 0)
        {
          sum = 0;
          start = i;
          cells = 0;
        }
      sum += n * worth - cost;
      cells += n;
      if (sum > best)
        {
          best = sum;
          best_cells = cells;
          from = start;
          to = i + 1;
        }
    }
  if (best <= 0)
    return;
  double x0 = MAX (span.lo, profile->x0 + from * profile->step + half), x1 = MIN (span.hi, profile->x0 + to * profile->step - half);
  double lack = ox_layout_least (layout) - (x1 - x0);
  if (lack > 0)
    {
      double before = MIN (lack, x0 - span.lo);
      x0 -= before;
      x1 = MIN (span.hi, x1 + lack - before);
    }
  double seconds = (x1 - x0) / layout->speed * 60 + finish->move_seconds;
  double gain = best_cells * profile->sample_m2;
  if (gain * ox_layout_hand_seconds (layout) > seconds && gain / seconds > c->rate)
    {
      c->x0 = x0;
      c->x1 = x1;
      c->span = span;
      c->gain = gain;
      c->rate = gain / seconds;
    }
}

static void
rate_candidate (Finish *finish, Candidate *c)
{
  c->rate = 0;
  for (guint i = 0; i < c->n_spans; i++)
    best_stretch (finish, c, g_array_index (finish->spans, OxSpan, c->first_span + i));
}

static double
key (const Finish *finish, guint place)
{
  return g_array_index (finish->candidates, Candidate, g_array_index (finish->queue, guint, place)).rate;
}

/* Order of the heap; ties go to the candidate made first. */
static gboolean
before (const Finish *finish, guint p, guint q)
{
  double a = key (finish, p), b = key (finish, q);
  return a != b ? a > b : g_array_index (finish->queue, guint, p) < g_array_index (finish->queue, guint, q);
}

static void
swap_places (GArray *queue, guint p, guint q)
{
  guint swap = g_array_index (queue, guint, p);
  g_array_index (queue, guint, p) = g_array_index (queue, guint, q);
  g_array_index (queue, guint, q) = swap;
}

static void
sink (Finish *finish, guint place)
{
  for (;;)
    {
      guint child = 2 * place + 1, best = place;
      if (child < finish->queue->len && before (finish, child, best))
        best = child;
      if (child + 1 < finish->queue->len && before (finish, child + 1, best))
        best = child + 1;
      if (best == place)
        return;
      swap_places (finish->queue, place, best);
      place = best;
    }
}

static void
drop_head (Finish *finish)
{
  swap_places (finish->queue, 0, finish->queue->len - 1);
  g_array_set_size (finish->queue, finish->queue->len - 1);
  sink (finish, 0);
}

static gboolean
heading_allowed (const OxLayout *layout, guint frame, int sign)
{
  if (!layout->one_heading)
    return TRUE;
  return frame == 0 && sign == (layout->work == OX_WORK_BACKWARD ? -1 : 1);
}

/* Adds the lane at @y, where its spans come near [x0, x1], in both headings. */
static void
add_lane (Finish *finish, guint frame, double y, double x0, double x1)
{
  const OxLayout *layout = finish->layout;
  for (int sign = -1; sign <= 1; sign += 2)
    {
      if (!heading_allowed (layout, frame, sign))
        continue;
      Candidate c = { frame, sign, y, finish->spans->len, 0, 0, 0, { 0, 0 }, 0, 0 };
      g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
      ox_frame_spans (g_ptr_array_index (layout->frames, frame), y, sign, spans);
      for (guint i = 0; i < spans->len; i++)
        {
          OxSpan span = g_array_index (spans, OxSpan, i);
          span = (OxSpan) { MAX (span.lo, x0), MIN (span.hi, x1) };
          if (span.hi - span.lo < ox_layout_least (layout))
            continue;
          g_array_append_val (finish->spans, span);
          c.n_spans++;
        }
      rate_candidate (finish, &c);
      if (c.rate > 0)
        g_array_append_val (finish->candidates, c);
      else
        g_array_set_size (finish->spans, c.first_span);
    }
}

/* Whether a chalk line is there already, so near that a second one would only confuse. */
static gboolean
has_lane (const OxLayout *layout, guint frame, double y)
{
  for (guint i = 0; i < layout->lanes->len; i++)
    {
      const OxLane *lane = &g_array_index (layout->lanes, OxLane, i);
      if (lane->frame == frame && fabs (lane->y - y) < (frame == 0 ? NEAR_GRID : SAME_CANDIDATE))
        return TRUE;
    }
  return FALSE;
}

/* Distances of lanes from a stretch: beside it with either side of the body, where a strip that runs square on to the stretch leaves off, and at lane
 * spacing out to where a strip that starts at it begins. */
static void
add_along (Finish *finish, const OxStretch *stretch)
{
  const OxMachine *m = finish->layout->machine;
  double spacing = m->blast_width - m->min_overlap;
  double narrow = MIN (m->left, m->right) + m->wall_gap, wide = MAX (m->left, m->right) + m->wall_gap;
  double nose = ox_boundary_reach (m, G_PI / 2, TRUE) + m->min_overlap / 2 - m->blast_width / 2;
  double depth = ox_boundary_reach (m, G_PI / 2, FALSE);
  double firsts[3] = { narrow, wide, nose };
  double around = m->rear + m->front + 2 * m->min_strip;
  for (guint f = 0; f < 3; f++)
    {
      if ((f == 1 && wide - narrow < SAME_CANDIDATE) || (f == 2 && nose - narrow < SAME_CANDIDATE))
        continue;
      for (double d = firsts[f]; d < depth + m->blast_width / 2; d += spacing)
        {
          double y = stretch->y + stretch->inside * d;
          if (!has_lane (finish->layout, stretch->frame, y))
            add_lane (finish, stretch->frame, y, stretch->x0 - around, stretch->x1 + around);
        }
    }
}

static void
gather (Finish *finish)
{
  OxLayout *layout = finish->layout;
  g_autoptr (GArray) stretches = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  for (guint i = 0, n = layout->lanes->len; i < n && !ox_run_cancelled (layout->run, NULL); i++)
    {
      OxLane lane = g_array_index (layout->lanes, OxLane, i);
      add_lane (finish, lane.frame, lane.y, -INFINITY, INFINITY);
    }
  if (!layout->one_heading)
    ox_boundary_sides (layout, 0.2, MAX_FRAMES, stretches);
  ox_boundary_boxes (layout, stretches);
  for (guint i = 0; i < stretches->len && !ox_run_cancelled (layout->run, NULL); i++)
    if (!layout->one_heading || g_array_index (stretches, OxStretch, i).frame == 0)
      add_along (finish, &g_array_index (stretches, OxStretch, i));
}

/* Moves the candidate across by @shift and rates it there; FALSE when it does not fit or is worth nothing there. */
static gboolean
shift_candidate (Finish *finish, const Candidate *c, double shift, Candidate *out)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  const OxLayout *layout = finish->layout;
  guint kept = finish->spans->len;
  ox_frame_spans (g_ptr_array_index (layout->frames, c->frame), c->y + shift, c->sign, spans);
  *out = *c;
  out->y = c->y + shift;
  out->first_span = kept;
  out->n_spans = 0;
  for (guint i = 0; i < spans->len; i++)
    {
      OxSpan span = g_array_index (spans, OxSpan, i);
      span = (OxSpan) { MAX (span.lo, c->x0 - 1), MIN (span.hi, c->x1 + 1) };
      if (span.hi - span.lo < ox_layout_least (layout))
        continue;
      g_array_append_val (finish->spans, span);
      out->n_spans++;
    }
  rate_candidate (finish, out);
  g_array_set_size (finish->spans, kept);
  return out->rate > 0;
}

static double
slot_shift (const Finish *finish, const Candidate *c)
{
  return ox_layout_slot_shift (finish->layout, c->frame, c->y, (OxSpan) { c->x0, c->x1 });
}

/* A strip on a chalk line of the lane grid is a main strip wherever it was laid. */
static gboolean
on_grid (const OxLayout *layout, const Candidate *c)
{
  double k = layout->spacing > 0 ? (c->y - layout->first_y) / layout->spacing : 0;
  return c->frame == 0 && layout->n_main_lanes > 0 && fabs (c->y - layout->first_y - round (k) * layout->spacing) < 1e-6;
}

static void
lay (Finish *finish, const Candidate *c)
{
  OxLayout *layout = finish->layout;
  OxDraft draft = { .frame = c->frame, .sign = c->sign, .y = c->y, .x0 = c->x0, .x1 = c->x1, .lo = c->span.lo, .hi = c->span.hi };
  draft.lane = ox_layout_lane (layout, c->frame, c->y);
  draft.kind = on_grid (layout, c) ? OX_STRIP_MAIN : OX_STRIP_CROSSWISE;
  ox_layout_add (layout, &draft);
}

/* Between two neighbours that are a little too far apart for one strip two are laid, one beside each. */
static gboolean
lay_pair (Finish *finish, const Candidate *first, double shift)
{
  OxLayout *layout = finish->layout;
  Candidate second = *first;
  double seconds = 2 * ((first->x1 - first->x0) / layout->speed * 60 + finish->move_seconds);
  second.y += shift;
  if (first->gain * ox_layout_hand_seconds (layout) < seconds
      || !ox_frame_find_span (g_ptr_array_index (layout->frames, second.frame), second.y, second.sign,
                              (OxSpan) { second.x0 + 0.01, second.x1 - 0.01 }, &second.span))
    return FALSE;
  second.x0 = MAX (second.x0, second.span.lo);
  second.x1 = MIN (second.x1, second.span.hi);
  if (second.x1 - second.x0 < ox_layout_least (layout))
    return FALSE;
  lay (finish, first);
  if (slot_shift (finish, &second) != 0)
    {
      ox_layout_remove (layout, layout->drafts->len - 1);
      return FALSE;
    }
  lay (finish, &second);
  return TRUE;
}

static gboolean
lay_candidate (Finish *finish, const Candidate *c)
{
  Candidate laid = *c, nearer;
  double shift = slot_shift (finish, c);
  if (shift != 0)
    {
      if (!shift_candidate (finish, c, shift, &laid))
        return FALSE;
      shift = slot_shift (finish, &laid);
      if (shift != 0)
        return lay_pair (finish, &laid, shift);
    }
  OxSpan where;
  double nose = ox_layout_nose_shift (finish->layout, laid.frame, laid.y, (OxSpan) { laid.x0, laid.x1 }, &where);
  if (nose != 0 && shift_candidate (finish, &laid, nose, &nearer) && slot_shift (finish, &nearer) == 0)
    laid = nearer;
  lay (finish, &laid);
  return TRUE;
}

gboolean
ox_layout_finish (OxLayout *layout, const OxRun *run)
{
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  g_autoptr (GArray) counts = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) queue = g_array_new (FALSE, FALSE, sizeof (guint));
  Finish finish = { layout, candidates, spans, { .counts = counts }, queue, ox_layout_move_seconds (layout) };
  gather (&finish);
  for (guint i = 0; i < candidates->len; i++)
    g_array_append_val (queue, i);
  for (guint i = queue->len / 2; i > 0; i--)
    sink (&finish, i - 1);
  while (queue->len > 0)
    {
      Candidate *head = &g_array_index (candidates, Candidate, g_array_index (queue, guint, 0));
      double rate = head->rate;
      if (ox_run_cancelled (run, NULL))
        return FALSE;
      rate_candidate (&finish, head);
      if (head->rate <= 0)
        drop_head (&finish);
      else if (head->rate < rate)
        sink (&finish, 0);
      else
        {
          /* Laid or not, it has had its turn unless it would now save something else: a stretch farther along the same lane. */
          double gain = head->gain;
          if (!lay_candidate (&finish, head))
            drop_head (&finish);
          else
            {
              rate_candidate (&finish, head);
              if (head->rate >= rate && head->gain >= gain)
                drop_head (&finish);
            }
        }
    }
  return TRUE;
}
