/* Oxturn: plan/mains - the main strips of a room: an even grid of lanes, strips cut by what stands in the way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/layout.h"
#include "trade/production.h"
#include <stdlib.h>

#define SQUARE 1e-6 /* what is as good as 0 of a unit vector, or of a metre */

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Heading of lane @k; lanes worked one way all have the same. */
static int
lane_sign (const OxLayout *layout, guint k)
{
  switch (layout->work)
    {
    case OX_WORK_FORWARD:
      return 1;
    case OX_WORK_BACKWARD:
      return -1;
    case OX_WORK_SERPENTINE:
    default:
      return k % 2 == 0 ? -1 : 1;
    }
}

/* A grid of lanes: its direction, and the part of the room in which it lies. */
typedef struct
{
  guint frame;
  const OxPart *part; /* (nullable): all of the room */
} Grid;

/* Spans of a lane, as far as they lie in the part: the pattern's sides keep to it, its ends reach beyond the border by as much as a lane keeps off a wall that
 * goes on from there, and by min_overlap, so that they meet the lanes of the other part. */
static void
grid_spans (const OxLayout *layout, const Grid *grid, double y, int sign, GArray *spans)
{
  const OxFrame *frame = g_ptr_array_index (layout->frames, grid->frame);
  guint n = 0;
  ox_frame_spans (frame, y, sign, spans);
  if (grid->part == NULL)
    return;
  OxPoint normal = ox_frame_from_floor (frame, grid->part->normal);
  double room = y * normal.y - grid->part->offset;
  const OxMachine *m = layout->machine;
  double half = m->blast_width / 2, ends = MAX (m->left, m->right) + m->wall_gap - half + m->min_overlap - m->blast_length / 2;
  if (fabs (normal.x) < SQUARE)
    {
      if (room - half < -SQUARE)
        g_array_set_size (spans, 0);
      return;
    }
  for (guint i = 0; i < spans->len; i++)
    {
      OxSpan span = g_array_index (spans, OxSpan, i);
      double bound = -(room + half * fabs (normal.y)) / normal.x;
      if (normal.x > 0)
        span.lo = MAX (span.lo, bound - ends);
      else
        span.hi = MIN (span.hi, bound + ends);
      if (span.hi > span.lo)
        g_array_index (spans, OxSpan, n++) = span;
    }
  g_array_set_size (spans, n);
}

/* Metres of strips that fit on the lane at @y with this heading. */
static double
fitting_m (const OxLayout *layout, const Grid *grid, double y, int sign)
{
  double length = 0;
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  grid_spans (layout, grid, y, sign, spans);
  for (guint i = 0; i < spans->len; i++)
    {
      const OxSpan *span = &g_array_index (spans, OxSpan, i);
      if (span->hi - span->lo >= ox_layout_least (layout))
        length += span->hi - span->lo;
    }
  return length;
}

/* Metres of strips that fit on the lane at @y in the better of the headings that the work allows. */
static double
fits (const OxLayout *layout, const Grid *grid, double y)
{
  double forward = layout->work != OX_WORK_BACKWARD ? fitting_m (layout, grid, y, 1) : 0;
  double backward = layout->work != OX_WORK_FORWARD ? fitting_m (layout, grid, y, -1) : 0;
  return MAX (forward, backward);
}

static void
add_events (const OxFrame *frame, const OxRegion *region, double off_a, double off_b, GArray *events)
{
  for (guint i = 0; i < region->n_points; i++)
    {
      double y = ox_frame_from_floor (frame, region->points[i]).y;
      double candidates[2] = { y - off_a, y - off_b };
      for (guint k = 0; k < 2; k++)
        if (candidates[k] >= frame->box.y0 && candidates[k] <= frame->box.y1)
          g_array_append_val (events, candidates[k]);
    }
}

/* Beside a wall that is a hair off the direction of the lanes only a short strip fits on the very outermost lane. Of the places within one spacing
 * farther in the one is taken where the strips are longest, each metre discounted by how far in it is. */
static double
longer_lane (const OxLayout *layout, const Grid *grid, const GArray *events, int side, double outermost)
{
  double spacing = layout->machine->blast_width - layout->machine->min_overlap;
  double best = outermost, most = fits (layout, grid, outermost);
  for (guint i = 0; i < events->len; i++)
    {
      double y = g_array_index (events, double, i), in = -side * (y - outermost);
      if (in <= 0 || in >= spacing)
        continue;
      double length = fits (layout, grid, y) * (1 - in / spacing);
      if (length > most)
        {
          most = length;
          best = y;
        }
    }
  return best;
}

/* Between @before, where nothing fits, and @at, where something does: the first place where it does. Beside a wall along the lanes that is @at itself: a
 * little nearer fits only because a lane may touch. */
static double
halve_down (const OxLayout *layout, const Grid *grid, double before, double at)
{
  double inner = at;
  for (guint k = 0; k < 24 && fabs (inner - before) > 1e-5; k++)
    {
      double half = (inner + before) / 2;
      if (fits (layout, grid, half) > 0)
        inner = half;
      else
        before = half;
    }
  return fabs (at - inner) < 2 * OX_LANE_TOUCH ? at : inner + (at > inner ? OX_LANE_TOUCH : -OX_LANE_TOUCH);
}

/* The outermost lane on one side (-1: lowest y, +1: highest). Free spans appear only where the band's edge passes a corner, or between two such
 * places along a slanted wall; there the place is halved down to. NAN when nothing fits. */
static double
outermost_lane (const OxLayout *layout, const Grid *grid, int side)
{
  const OxMachine *m = layout->machine;
  g_autoptr (GArray) events = g_array_new (FALSE, FALSE, sizeof (double));
  const OxFrame *frame = g_ptr_array_index (layout->frames, grid->frame);
  add_events (frame, layout->travel, side * (m->left + m->wall_gap), side * (m->right + m->wall_gap), events);
  add_events (frame, layout->target, side * m->blast_width / 2, side * m->blast_width / 2, events);
  if (events->len == 0)
    return NAN;
  double *y = (double *) (void *) events->data;
  qsort (y, events->len, sizeof (double), compare_doubles);
  double before = NAN;
  for (guint i = 0; i < events->len; i++)
    {
      double at = side < 0 ? y[i] : y[events->len - 1 - i];
      double middle = isnan (before) ? at : (before + at) / 2;
      if (fits (layout, grid, at) == 0)
        {
          if (isnan (before) || fabs (at - before) < 0.01 || fits (layout, grid, middle) == 0)
            {
              before = at;
              continue;
            }
          at = middle;
        }
      return longer_lane (layout, grid, events, side, isnan (before) ? at : halve_down (layout, grid, before, at));
    }
  return NAN;
}

static void
lay_lane (OxLayout *layout, const Grid *grid, guint k, double y)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (OxSpan));
  int sign = lane_sign (layout, k);
  if (layout->work == OX_WORK_SERPENTINE && fitting_m (layout, grid, y, sign) == 0)
    sign = -sign;
  grid_spans (layout, grid, y, sign, spans);
  guint lane = ox_layout_lane (layout, grid->frame, y);
  for (guint i = 0; i < spans->len; i++)
    {
      const OxSpan *span = &g_array_index (spans, OxSpan, i);
      if (span->hi - span->lo < ox_layout_least (layout))
        continue;
      gboolean main = grid->frame == 0;
      OxDraft draft = { grid->frame, lane, sign, y, span->lo, span->hi, main ? OX_STRIP_MAIN : OX_STRIP_CROSSWISE, main, span->lo, span->hi };
      ox_layout_add (layout, &draft);
    }
}

/* Lays one grid and says where it lies; FALSE when no strip fits. */
static gboolean
lay_grid (OxLayout *layout, const Grid *grid, double *first_y, double *spacing, guint *n)
{
  const OxMachine *m = layout->machine;
  double lowest = outermost_lane (layout, grid, -1), highest = outermost_lane (layout, grid, 1);
  if (isnan (lowest) || isnan (highest))
    return FALSE;
  /* Where the band is a hair wider than one strip, the rest costs less by hand than a second lane. */
  if ((highest - lowest) * ox_layout_hand_seconds (layout) < 60 / layout->speed)
    lowest = highest = (lowest + highest) / 2;
  double width = highest - lowest + m->blast_width;
  *first_y = lowest;
  *n = ox_production_lanes (width, m->blast_width, m->min_overlap);
  *spacing = ox_production_spacing (width, m->blast_width, *n);
  for (guint k = 0; k < *n && !ox_run_cancelled (layout->run, NULL); k++)
    lay_lane (layout, grid, k, lowest + k * *spacing);
  return layout->drafts->len > 0;
}

gboolean
ox_layout_mains (OxLayout *layout)
{
  Grid grid = { 0, layout->wings != NULL ? &layout->wings->main : NULL };
  if (!lay_grid (layout, &grid, &layout->first_y, &layout->spacing, &layout->n_main_lanes))
    return FALSE;
  if (layout->wings == NULL)
    return TRUE;
  Grid other = { ox_layout_frame (layout, layout->wings->angle, 0), &layout->wings->other };
  guint before = layout->drafts->len;
  lay_grid (layout, &other, &layout->wing_first_y, &layout->wing_spacing, &layout->n_wing_lanes);
  if (layout->drafts->len == before)
    layout->n_wing_lanes = 0;
  layout->wing_angle = ((const OxFrame *) g_ptr_array_index (layout->frames, other.frame))->angle;
  return TRUE;
}
