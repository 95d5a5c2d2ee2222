/* Oxturn: sheets/dimensions - the dimensions of a floor on a page: running and overall ones outside it, others along
 * the walls. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/dimensions.h"
#include "drawing/text.h"
#include "sheets/chain.h"
#include "sheets/dimension.h"

#define CHAIN_MM 10.0
#define OVERALL_MM 18.0
#define BEYOND_MM 11.0 /* where extension lines of the overall dimension begin: beyond those of the running ones */
#define BARE_MM 10.0   /* around: where no chain stands, */
#define SLANT_MM 14.0  /* but that of a slanted wall may, */
#define ROW_MM 16.0    /* where one does, */
#define ROWS_MM 24.0   /* where two do; */
#define SHORT_MM 4.0   /* what figures take that stand beyond their line for want of room */
#define SIDE_OFFSET_MM 9.0
#define INSIDE_OFFSET_MM 4.5
#define OFF_WALLS_MM 2.0
#define MOST_BEYOND_MM 6.0
#define SAME 0.0005 /* m: corners closer than this along a chain are one stop */
#define MOST_CORNERS 2000

static const OxChainEdge edges[4] = { { TRUE, -1 }, { TRUE, 1 }, { FALSE, -1 }, { FALSE, 1 } };

/* --- Stops: corners of walls along x or y that can be seen from outside --- */

static OxChainStop
stop_at (OxChainEdge edge, OxPoint p)
{
  return edge.level ? (OxChainStop){ p.x, p.y } : (OxChainStop){ p.y, p.x };
}

static gboolean
is_parallel (OxPoint a, OxPoint b)
{
  return fabs (a.x - b.x) < SAME || fabs (a.y - b.y) < SAME;
}

/* is_hidden: whether a side of a room lies across the way from @stop out to the chain */
static gboolean
is_hidden (const OxJob *job, OxChainEdge edge, OxChainStop stop)
{
  for (guint i = 0; i < job->n_rooms; i++)
    for (guint k = 0, n = job->rooms[i]->ring->n; k < n; k++)
      {
        OxChainStop a = stop_at (edge, job->rooms[i]->ring->points[k]);
        OxChainStop b = stop_at (edge, job->rooms[i]->ring->points[(k + 1) % n]);
        if (stop.s < MIN (a.s, b.s) + SAME || stop.s > MAX (a.s, b.s) - SAME)
          continue;
        double v = a.v + (b.v - a.v) * (stop.s - a.s) / (b.s - a.s);
        if ((v - stop.v) * edge.out > SAME)
          return TRUE;
      }
  return FALSE;
}

static int
compare_stops (gconstpointer a, gconstpointer b)
{
  const OxChainStop *s = a, *t = b;
  if (s->s != t->s)
    return s->s < t->s ? -1 : 1;
  return s->v < t->v ? -1 : s->v > t->v;
}

/* unite: of the stops at one place the outermost stays */
static void
unite (GArray *stops, double out)
{
  guint n = 0;
  OxChainStop *all = (OxChainStop *) (gpointer) stops->data;
  g_array_sort (stops, compare_stops);
  for (guint i = 0; i < stops->len; i++)
    if (n > 0 && all[i].s - all[n - 1].s < SAME)
      all[n - 1].v = out * all[i].v > out * all[n - 1].v ? all[i].v : all[n - 1].v;
    else
      all[n++] = all[i];
  g_array_set_size (stops, n);
}

static GArray *
find_stops (const OxJob *job, OxChainEdge edge)
{
  GArray *stops = g_array_new (FALSE, FALSE, sizeof (OxChainStop));
  for (guint i = 0; i < job->n_rooms; i++)
    {
      const OxRing *ring = job->rooms[i]->ring;
      for (guint k = 0; k < ring->n && stops->len < MOST_CORNERS; k++)
        {
          OxPoint before = ring->points[(k + ring->n - 1) % ring->n], p = ring->points[k];
          OxChainStop stop = stop_at (edge, p);
          if ((is_parallel (before, p) || is_parallel (p, ring->points[(k + 1) % ring->n]))
              && !is_hidden (job, edge, stop))
            g_array_append_val (stops, stop);
        }
    }
  unite (stops, edge.out);
  return stops;
}

static gboolean
has_stop (const GArray *stops, double s)
{
  for (guint i = 0; i < stops->len; i++)
    if (fabs (g_array_index (stops, double, i) - s) < SAME)
      return TRUE;
  return FALSE;
}

/* says_all: whether a chain over @known has all of @stops */
static gboolean
says_all (const GArray *known, const GArray *stops)
{
  for (guint i = 0, k = 0; i < stops->len; i++)
    {
      double s = g_array_index (stops, OxChainStop, i).s;
      while (k < known->len && g_array_index (known, OxChainStop, k).s < s - SAME)
        k++;
      if (k == known->len || g_array_index (known, OxChainStop, k).s >= s + SAME)
        return FALSE;
    }
  return TRUE;
}

/* --- The chains --- */

static OxBox
rooms_box (const OxJob *job)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < job->n_rooms; i++)
    for (guint k = 0; k < job->rooms[i]->ring->n; k++)
      ox_box_add (&box, job->rooms[i]->ring->points[k]);
  return box;
}

/* is_whole: whether two stops are the whole floor along the chain */
static gboolean
is_whole (OxBox box, OxChainEdge edge, const GArray *stops)
{
  double from = edge.level ? box.x0 : box.y0, to = edge.level ? box.x1 : box.y1;
  return stops->len == 2 && fabs (g_array_index (stops, OxChainStop, 0).s - from) < SAME
         && fabs (g_array_index (stops, OxChainStop, 1).s - to) < SAME;
}

static void
append_overall (const OxChainPage *page, OxChainEdge edge, double row_mm)
{
  OxBox box = page->box;
  double v = (edge.level ? box.y0 : box.x0) - (row_mm > BEYOND_MM ? BEYOND_MM / page->plot->mm_per_m : 0);
  OxChainStop ends[2] = { { edge.level ? box.x0 : box.y0, v }, { edge.level ? box.x1 : box.y1, v } };
  g_autoptr (GArray) stops = g_array_new (FALSE, FALSE, sizeof (OxChainStop));
  g_array_append_vals (stops, ends, 2);
  (void) ox_chain_append (page, edge, stops, row_mm);
}

static gboolean
has_slanted_side (const OxJob *job)
{
  for (guint i = 0; i < job->n_rooms; i++)
    for (guint k = 0, n = job->rooms[i]->ring->n; k < n; k++)
      if (!is_parallel (job->rooms[i]->ring->points[k], job->rooms[i]->ring->points[(k + 1) % n]))
        return TRUE;
  return FALSE;
}

OxAround
ox_chains_around (const OxJob *job)
{
  OxBox box = rooms_box (job);
  double bare = has_slanted_side (job) ? SLANT_MM : BARE_MM, mm[4];
  g_autoptr (GArray) before = NULL;
  for (guint e = 0; e < 4; e++)
    {
      g_autoptr (GArray) other = g_steal_pointer (&before);
      GArray *stops = before = find_stops (job, edges[e]);
      if (edges[e].out < 0)
        mm[e] = is_whole (box, edges[e], stops) ? ROW_MM : ROWS_MM;
      else
        mm[e] = says_all (other, stops) ? bare : ROW_MM + SHORT_MM;
    }
  return (OxAround){ .below = mm[0], .above = mm[1], .left = mm[2], .right = mm[3] };
}

OxChains *
ox_chains_append (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  OxChains *chains = g_new0 (OxChains, 1);
  const OxChainPage page = { plot, run->job->units, rooms_box (run->job), builder, labels };
  ox_drawing_builder_layer (builder, "dimensions", _ ("Dimensions"));
  g_autoptr (GArray) before = NULL;
  for (guint e = 0; e < 4; e++)
    {
      g_autoptr (GArray) stops = find_stops (run->job, edges[e]), other = g_steal_pointer (&before);
      before = g_array_copy (stops);
      gboolean first = edges[e].out < 0;
      chains->stops[e] = g_array_new (FALSE, FALSE, sizeof (double));
      if (!first && says_all (other, stops))
        continue;
      gboolean drawn = ox_chain_append (&page, edges[e], stops, CHAIN_MM);
      /* Stops for which there was no room are gone now. */
      if (first && !(drawn && is_whole (page.box, edges[e], stops)))
        append_overall (&page, edges[e], drawn ? OVERALL_MM : CHAIN_MM);
      for (guint i = 0; drawn && i < stops->len; i++)
        g_array_append_val (chains->stops[e], g_array_index (stops, OxChainStop, i).s);
    }
  return chains;
}

void
ox_chains_free (OxChains *chains)
{
  for (guint e = 0; e < 4; e++)
    g_array_unref (chains->stops[e]);
  g_free (chains);
}

/* --- Along the walls --- */

typedef struct
{
  OxPoint a, b; /* the room lies to the left */
  const OxRing *ring;
} Span;

/* is_said: whether a chain has both ends of a side along x or y */
static gboolean
is_said (const OxChains *chains, Span span)
{
  gboolean level = fabs (span.a.y - span.b.y) < SAME;
  if (!is_parallel (span.a, span.b))
    return FALSE;
  for (guint e = level ? 0 : 2, end = e + 2; e < end; e++)
    if (has_stop (chains->stops[e], level ? span.a.x : span.a.y)
        && has_stop (chains->stops[e], level ? span.b.x : span.b.y))
      return TRUE;
  return FALSE;
}

/* says_same: whether the length of @t follows from that of @s: the same side, or one of the same length and direction
 * just across, as in a rectangle */
static gboolean
says_same (Span s, Span t)
{
  OxPoint along = ox_point_sub (s.b, s.a), other = ox_point_sub (t.b, t.a);
  double length = hypot (along.x, along.y), tolerance = 0.002 * length;
  if (fabs (length - hypot (other.x, other.y)) > SAME || fabs (ox_point_cross (along, other)) > tolerance)
    return FALSE;
  double from = ox_point_dot (along, ox_point_sub (t.a, s.a)), to = ox_point_dot (along, ox_point_sub (t.b, s.a));
  return MIN (fabs (from), fabs (to)) < tolerance;
}

static gboolean
is_known (const GArray *spans, Span span)
{
  for (guint i = 0; i < spans->len; i++)
    if (says_same (g_array_index (spans, Span, i), span))
      return TRUE;
  return FALSE;
}

/* is_outside: whether a band beside a-b, from 1 mm to @depth mm to its left, is clear of all rooms */
static gboolean
is_outside (const OxJob *job, const OxPlot *plot, OxPoint a, OxPoint b, double depth_mm)
{
  double length = ox_point_distance (a, b);
  OxPoint left = { -(b.y - a.y) / length, (b.x - a.x) / length };
  const double depths[] = { depth_mm * 0.12, depth_mm * 0.5, depth_mm };
  for (int k = 0; k < 3; k++)
    for (int t = 1; t <= 9; t++)
      {
        OxPoint p = ox_point_add (a, ox_point_scale (ox_point_sub (b, a), t / 10.0));
        p = ox_point_add (p, ox_point_scale (left, depths[k] / plot->mm_per_m));
        for (guint i = 0; i < job->n_rooms; i++)
          if (ox_ring_contains (job->rooms[i]->ring, p))
            return FALSE;
      }
  return TRUE;
}

/* is_in_room: whether the line of a dimension lies over its room, clear of the walls on both sides of it: elsewhere it
 * would be taken for that of a neighbour, or stand among the chains */
static gboolean
is_in_room (const OxRing *ring, const OxPlot *plot, const OxDimension *dimension)
{
  double length = ox_point_distance (dimension->a, dimension->b);
  OxPoint along = ox_point_scale (ox_point_sub (dimension->b, dimension->a), 1 / length);
  OxPoint across = { -along.y, along.x };
  for (int i = 0; i < 9; i++)
    {
      double off = dimension->offset_mm + (i / 3 - 1) * OFF_WALLS_MM;
      OxPoint p = ox_point_add (dimension->a, ox_point_scale (along, length * (0.1 + 0.4 * (i % 3))));
      p = ox_point_add (p, ox_point_scale (across, off));
      if (!ox_ring_contains (ring, ox_point_scale (ox_point_sub (p, plot->origin), 1 / plot->mm_per_m)))
        return FALSE;
    }
  return TRUE;
}

/* dimension_box: the figure and its line, as a label on the floor */
static OxLabelBox
dimension_box (const OxPlot *plot, const OxDimension *dimension)
{
  double angle;
  OxPoint at = ox_dimension_get_text (dimension, &angle);
  double w = ox_text_width (dimension->text, OX_DIMENSION_TEXT_MM, FALSE) / 2 + 1;
  OxPoint metres = ox_point_scale (ox_point_sub (at, plot->origin), 1 / plot->mm_per_m);
  return (OxLabelBox){ metres, angle, { -w, -1.2, w, OX_DIMENSION_TEXT_MM + 0.8 } };
}

/* @beyond_mm: how far the figure may reach beyond the ends of its line */
static gboolean
try_dimension (const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels, const OxDimension *dimension,
               double beyond_mm)
{
  OxLabelBox box = dimension_box (plot, dimension);
  if (ox_point_distance (dimension->a, dimension->b) + 2 * beyond_mm < box.mm.x1 - box.mm.x0 + 1
      || !ox_labels_is_free (labels, &box))
    return FALSE;
  ox_labels_take (labels, &box);
  ox_dimension_append (dimension, builder);
  return TRUE;
}

/* append_side: a slanted one outside where the floor leaves room for it, others inside; a short one with its figure
 * reaching beyond it */
static void
append_side (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels, Span span)
{
  g_autofree char *text = ox_units_length_text (run->job->units, ox_point_distance (span.a, span.b), FALSE);
  /* The room lies to the left of a side, so a dimension outside runs the other way. */
  OxDimension dimension = { ox_plot_to_page (plot, span.b), ox_plot_to_page (plot, span.a), SIDE_OFFSET_MM, text };
  if (!is_parallel (span.a, span.b) && is_outside (run->job, plot, span.b, span.a, SIDE_OFFSET_MM + 4)
      && try_dimension (plot, builder, labels, &dimension, 0))
    return;
  for (guint i = 0; i < 8; i++)
    {
      dimension.offset_mm = -INSIDE_OFFSET_MM * (1 + 1.4 * (i % 4));
      if (is_in_room (span.ring, plot, &dimension)
          && try_dimension (plot, builder, labels, &dimension, i < 4 ? 0 : MOST_BEYOND_MM))
        return;
    }
}

void
ox_chains_append_sides (const OxChains *chains, const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder,
                        OxLabels *labels)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (Span));
  ox_drawing_builder_layer (builder, "dimensions", _ ("Dimensions"));
  for (guint i = 0; i < run->job->n_rooms; i++)
    {
      const OxRing *ring = run->job->rooms[i]->ring;
      gboolean left = ox_ring_area (ring) >= 0;
      for (guint k = 0; k < ring->n; k++)
        {
          OxPoint p = ring->points[k], q = ring->points[(k + 1) % ring->n];
          Span span = { left ? p : q, left ? q : p, ring };
          if (is_said (chains, span) || is_known (spans, span))
            continue;
          g_array_append_val (spans, span);
          append_side (run, plot, builder, labels, span);
        }
    }
}
