/* Oxturn: sheets/tags - tags beside what they name.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/tags.h"
#include "base/words.h"
#include "drawing/clip.h"
#include "drawing/text.h"
#include "sheets/cautions.h"
#include "sheets/measure.h"
#include "sheets/naming.h"
#include "sheets/picture.h"

#define TAG_GROUND_MM 0.7
#define SIDE_OFFSET_MM 2.6
#define DIRECTIONS 16
#define SMALL_M2 0.1 /* edge areas that are found without a tag, by their hatch */
#define ROOMY_MM_PER_M 10
#define OFF_DOT_MM 1.5 /* leaders from dots that are close together may touch there */
#define CROSS_MM 1.0   /* arm of the cross of a profile check */
#define LEAST_SHOWN_M2 0.01
#define CHECK_MM2 400.0 /* of floor on paper for each name of a profile check */
#define WORDS_MM_PER_M                                                                                                 \
  2.0 /* from which on a proposed place is called so beside it; below, the legend alone says it                        \
       */

static const double reaches_mm[] = { 6, 8, 11, 14, 18, 23, 29 };

typedef struct
{
  const OxSheetRun *run;
  const OxPlot *plot;
  OxDrawingBuilder *builder;
  OxLabels *labels;
  OxBox keep_off; /* mm of the page: where no tag may lie; empty: anywhere */
} Tagger;

static OxPoint
to_metres (const Tagger *tagger, OxPoint page)
{
  return ox_point_scale (ox_point_sub (page, tagger->plot->origin), 1 / tagger->plot->mm_per_m);
}

static gboolean
in_area (const Tagger *tagger, OxBox box)
{
  OxBox area = tagger->plot->area;
  return box.x0 > area.x0 + 2 && box.x1 < area.x1 - 2 && box.y0 > area.y0 + 17 && box.y1 < area.y1 - 2;
}

static gboolean
lies_on (OxBox tag, OxBox box)
{
  return tag.x0 < box.x1 && tag.x1 > box.x0 && tag.y0 < box.y1 && tag.y1 > box.y0;
}

/* is_on_floor: whether a corner or the middle of a box on the page lies in a room */
static gboolean
is_on_floor (const Tagger *tagger, OxBox box)
{
  const double xs[] = { box.x0, (box.x0 + box.x1) / 2, box.x1 }, ys[] = { box.y0, (box.y0 + box.y1) / 2, box.y1 };
  const OxJob *job = tagger->run->job;
  for (int i = 0; i < 9; i++)
    for (guint r = 0; r < job->n_rooms; r++)
      if (ox_ring_contains (job->rooms[r]->ring, to_metres (tagger, (OxPoint){ xs[i % 3], ys[i / 3] })))
        return TRUE;
  return FALSE;
}

/* a tag at the end of a leader */
typedef struct
{
  OxPoint from, to; /* mm: dot, and where the leader meets the tag */
  OxAlign align;
  OxLabelBox box, leader;
} Tag;

static Tag
lay_tag (const Tagger *tagger, OxPoint from, double angle, double reach, double width)
{
  Tag tag = { .from = from, .to = { from.x + reach * cos (angle), from.y + reach * sin (angle) } };
  double w = width + 2 * TAG_GROUND_MM, h = tagger->run->form.body_mm / 2 + TAG_GROUND_MM + 0.4;
  tag.align = cos (angle) > 0.3 ? OX_ALIGN_START : cos (angle) < -0.3 ? OX_ALIGN_END : OX_ALIGN_MIDDLE;
  double x = tag.align == OX_ALIGN_START ? 0 : tag.align == OX_ALIGN_END ? -w : -w / 2;
  tag.box = (OxLabelBox){ to_metres (tagger, tag.to), 0, { x - 0.4, -h, x + w + 0.4, h } };
  /* The leader's own place ends short of the tag, which would block it otherwise, and begins off its dot. */
  tag.leader = (OxLabelBox){ to_metres (tagger, from), angle, { OFF_DOT_MM, -0.3, MAX (reach - h, OFF_DOT_MM), 0.3 } };
  return tag;
}

static OxBox
page_box (const Tag *tag)
{
  OxBox mm = tag->box.mm;
  return (OxBox){ tag->to.x + mm.x0, tag->to.y + mm.y0, tag->to.x + mm.x1, tag->to.y + mm.y1 };
}

static void
append_tag (const Tagger *tagger, const Tag *tag, const char *text)
{
  ox_labels_take (tagger->labels, &tag->box);
  ox_labels_take (tagger->labels, &tag->leader);
  ox_drawing_builder_line (tagger->builder, OX_STYLE_LEADER, tag->from, tag->to);
  ox_drawing_builder_mark (tagger->builder, (OxMarkLook){ OX_STYLE_LEADER, OX_MARK_DOT, 0, OX_LEADER_DOT_MM },
                           tag->from);
  double shift = tag->align == OX_ALIGN_START ? TAG_GROUND_MM : tag->align == OX_ALIGN_END ? -TAG_GROUND_MM : 0;
  OxTextLook look = { OX_STYLE_TAG, tagger->run->form.body_mm, 0, tag->align, TRUE, FALSE, TAG_GROUND_MM, FALSE };
  ox_drawing_builder_text (tagger->builder, look, (OxPoint){ tag->to.x + shift, tag->to.y }, text);
}

/* try_leaders: the nearest free place around @from; @outside: off the floor only */
static gboolean
try_leaders (const Tagger *tagger, OxPoint from, const char *text, gboolean outside, guint n_reaches)
{
  double width = ox_text_width (text, tagger->run->form.body_mm, FALSE);
  for (guint r = 0; r < n_reaches; r++)
    for (guint i = 0; i < DIRECTIONS; i++)
      {
        /* Level and upright leaders first, then the slanted ones. */
        guint step = (i * 4) % DIRECTIONS + (i * 4) / DIRECTIONS;
        Tag tag = lay_tag (tagger, from, step * 2 * G_PI / DIRECTIONS, reaches_mm[r], width);
        OxBox box = page_box (&tag);
        if (!in_area (tagger, box) || (outside && is_on_floor (tagger, box)) || lies_on (box, tagger->keep_off)
            || !ox_labels_is_free (tagger->labels, &tag.box) || !ox_labels_is_free (tagger->labels, &tag.leader))
          continue;
        append_tag (tagger, &tag, text);
        return TRUE;
      }
  return FALSE;
}

static int
larger_first (gconstpointer a, gconstpointer b)
{
  const OxEdge *p = *(const OxEdge *const *) a, *q = *(const OxEdge *const *) b;
  if (p->area != q->area)
    return p->area > q->area ? -1 : 1;
  return g_strcmp0 (p->id, q->id);
}

/* shown_point: where a tag points to: a place of @region that is drawn on this page; FALSE when none of it is */
static gboolean
shown_point (const Tagger *tagger, const OxRegion *region, OxPoint *at)
{
  OxBox box = tagger->plot->shown, has = ox_region_box (region);
  if (has.x0 >= box.x1 || has.x1 <= box.x0 || has.y0 >= box.y1 || has.y1 <= box.y0)
    return FALSE;
  if (has.x0 >= box.x0 && has.x1 <= box.x1 && has.y0 >= box.y0 && has.y1 <= box.y1)
    {
      *at = ox_region_label_point (region, NULL);
      return TRUE;
    }
  const OxPoint corners[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  g_autoptr (OxRegion) part = ox_region_new_points (corners, 4);
  g_autoptr (OxRegion) both = ox_region_intersection (region, part);
  if (ox_region_area (both) < LEAST_SHOWN_M2)
    return FALSE;
  *at = ox_region_label_point (both, NULL);
  return TRUE;
}

/* append_edge: FALSE when it should have a tag and there is no room for one */
static gboolean
append_edge (const Tagger *tagger, const OxEdge *edge)
{
  OxUnits units = tagger->run->job->units;
  OxPoint at;
  if (!shown_point (tagger, edge->region, &at))
    return TRUE;
  OxPoint from = ox_plot_to_page (tagger->plot, at);
  g_autofree char *area = ox_measure_area (units, edge->area), *length = ox_measure_length (units, edge->length);
  g_autofree char *text = g_strdup_printf ("%s\xc2\xa0 %s \xc2\xb7 %s", edge->id, area, length);
  /* On the floor a small one must not take the room of names and numbers. */
  guint n_inside = edge->area >= SMALL_M2                     ? G_N_ELEMENTS (reaches_mm)
                   : tagger->plot->mm_per_m >= ROOMY_MM_PER_M ? 3
                                                              : 0;
  ox_drawing_builder_item (tagger->builder, edge->id, 0);
  return try_leaders (tagger, from, text, TRUE, G_N_ELEMENTS (reaches_mm))
         || try_leaders (tagger, from, edge->id, TRUE, G_N_ELEMENTS (reaches_mm))
         || try_leaders (tagger, from, edge->id, FALSE, n_inside);
}

guint
ox_tags_append_edges (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  Tagger tagger = { run, plot, builder, labels, OX_BOX_EMPTY };
  g_autoptr (GPtrArray) edges = g_ptr_array_new ();
  for (guint i = 0; i < run->plan->n_edges; i++)
    if (!ox_region_is_empty (run->plan->edges[i].region))
      g_ptr_array_add (edges, &run->plan->edges[i]);
  g_ptr_array_sort (edges, larger_first);
  guint missing = 0;
  for (guint i = 0; i < edges->len; i++)
    missing += !append_edge (&tagger, g_ptr_array_index (edges, i));
  ox_drawing_builder_item (builder, NULL, 0);
  return missing;
}

/* --- Along the sides --- */

typedef struct
{
  OxStyle style;
  const char *text;
  double angle;
} Along;

/* readable_angle: turned round where the text would be upside down: from below or from the right */
static double
readable_angle (double angle)
{
  return angle > G_PI / 2 + 1e-9 || angle <= -G_PI / 2 + 1e-9 ? remainder (angle + G_PI, 2 * G_PI) : angle;
}

/* append_at: FALSE when the place is taken */
static gboolean
append_at (const Tagger *tagger, const Along *along, OxPoint at)
{
  double w = ox_text_width (along->text, tagger->run->form.body_mm, TRUE) / 2 + 1, h = tagger->run->form.body_mm * 0.8;
  OxLabelBox box = { to_metres (tagger, at), along->angle, { -w, -h, w, h } };
  if (!ox_labels_is_free (tagger->labels, &box))
    return FALSE;
  ox_labels_take (tagger->labels, &box);
  OxTextLook look = { along->style, tagger->run->form.body_mm, along->angle, OX_ALIGN_MIDDLE, TRUE, TRUE, 0.3, FALSE };
  ox_drawing_builder_text (tagger->builder, look, at, along->text);
  return TRUE;
}

/* append_along: beside the middle of the side where there is room, outside the rooms where that is off the floor; FALSE
 * when the side is too short or its surroundings are taken */
static gboolean
append_along (const Tagger *tagger, const OxRoom *room, guint side, OxStyle style, const char *text)
{
  const OxRing *ring = room->ring;
  OxPoint from = ring->points[side], to = ring->points[(side + 1) % ring->n];
  if (!ox_clip_line (&from, &to, tagger->plot->shown))
    return TRUE;
  OxPoint a = ox_plot_to_page (tagger->plot, from), b = ox_plot_to_page (tagger->plot, to);
  OxPoint along_side = ox_point_sub (b, a);
  double length = ox_point_distance (a, b), sign = ox_ring_area (ring) >= 0 ? -1 : 1;
  if (ox_text_width (text, tagger->run->form.body_mm, TRUE) > length)
    return FALSE;
  OxPoint out = { -along_side.y / length * sign * SIDE_OFFSET_MM, along_side.x / length * sign * SIDE_OFFSET_MM };
  const Along along = { style, text, readable_angle (atan2 (along_side.y, along_side.x)) };
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8 };
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      OxPoint on = ox_point_add (a, ox_point_scale (along_side, shares[i])), outside = ox_point_add (on, out);
      gboolean off_floor = !is_on_floor (tagger, (OxBox){ outside.x, outside.y, outside.x, outside.y });
      if (append_at (tagger, &along, off_floor ? outside : ox_point_sub (on, out)))
        return TRUE;
    }
  return FALSE;
}

static OxPoint
side_middle (const Tagger *tagger, const OxRoom *room, guint side)
{
  OxPoint a = room->ring->points[side], b = room->ring->points[(side + 1) % room->ring->n];
  (void) ox_clip_line (&a, &b, tagger->plot->shown);
  return ox_plot_to_page (tagger->plot, ox_point_scale (ox_point_add (a, b), 0.5));
}

/* chalk_text: what to measure from this wall; (transfer full) */
static char *
chalk_text (const OxSheetRun *run, const OxChalk *chalk)
{
  g_autofree char *first = ox_units_length_text (run->job->units, chalk->first_distance, TRUE);
  g_autofree char *spacing = ox_units_length_text (run->job->units, chalk->spacing, TRUE);
  if (chalk->coat > 1)
    return chalk->lanes > 1
               ? g_strdup_printf (_ ("base wall of coat %u: lane 1 at %s, then every %s"), chalk->coat, first, spacing)
               : g_strdup_printf (_ ("base wall of coat %u: lane 1 at %s"), chalk->coat, first);
  return chalk->lanes > 1 ? g_strdup_printf (_ ("base wall: lane 1 at %s, then every %s"), first, spacing)
                          : g_strdup_printf (_ ("base wall: lane 1 at %s"), first);
}

/* append_drop_tag: with a leader, off the floor or on it; where the words find no room either way, the distance alone,
 * with its caution */
static void
append_drop_tag (const Tagger *tagger, OxPoint from, const char *text, const char *back)
{
  g_autofree char *caution = ox_cautions_tag ("drop", tagger->run->estimate),
                  *brief = g_strconcat (back, caution, NULL);
  const guint n = G_N_ELEMENTS (reaches_mm);
  (void) (try_leaders (tagger, from, text, TRUE, n) || try_leaders (tagger, from, text, FALSE, n)
          || try_leaders (tagger, from, brief, TRUE, n) || try_leaders (tagger, from, brief, FALSE, n));
}

void
ox_tags_append_sides (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  Tagger tagger = { run, plot, builder, labels, OX_BOX_EMPTY };
  for (guint i = 0; i < run->plan->n_chalks; i++)
    {
      const OxChalk *chalk = &run->plan->chalks[i];
      ox_drawing_builder_item (builder, run->job->rooms[chalk->room]->id, 0);
      const OxRoom *room = run->job->rooms[chalk->room];
      g_autofree char *full = chalk_text (run, chalk);
      if (!append_along (&tagger, room, chalk->base_side, OX_STYLE_CHALK, full)
          && !append_along (&tagger, room, chalk->base_side, OX_STYLE_CHALK, _ ("base wall")))
        (void) try_leaders (&tagger, side_middle (&tagger, room, chalk->base_side), _ ("base wall"), FALSE,
                            G_N_ELEMENTS (reaches_mm));
    }
  for (guint i = 0; i < run->job->n_rooms; i++)
    for (guint k = 0; k < run->job->rooms[i]->ring->n; k++)
      {
        OxSide side = run->job->rooms[i]->sides[k];
        if (side.kind != OX_SIDE_DROP)
          continue;
        g_autofree char *back = ox_units_length_text (run->job->units, side.keep_back, TRUE);
        g_autofree char *caution = ox_cautions_tag ("drop", run->estimate);
        g_autofree char *keep = g_strdup_printf (_ ("DROP: keep %s back"), back),
                        *text = g_strconcat (keep, caution, NULL);
        ox_drawing_builder_item (builder, run->job->rooms[i]->id, 0);
        if (!append_along (&tagger, run->job->rooms[i], k, OX_STYLE_DROP, text))
          append_drop_tag (&tagger, side_middle (&tagger, run->job->rooms[i], k), text, back);
      }
  ox_drawing_builder_item (builder, NULL, 0);
}

/* ring_on_page: the upright box around it, mm */
static OxBox
ring_on_page (const OxPlot *plot, const OxRing *ring)
{
  OxBox box = OX_BOX_EMPTY;
  for (guint i = 0; i < ring->n; i++)
    ox_box_add (&box, ox_plot_to_page (plot, ring->points[i]));
  return box;
}

void
ox_tags_append_pits (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  const Tagger tagger = { run, plot, builder, labels, OX_BOX_EMPTY };
  const OxJob *job = run->job;
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      const OxObstacle *pit = job->obstacles[i];
      OxPoint at;
      if (pit->kind != OX_OBSTACLE_PIT)
        continue;
      g_autoptr (OxRegion) region = ox_region_new_ring (pit->shape.ring);
      if (!shown_point (&tagger, region, &at))
        continue;
      g_autofree char *back = ox_units_length_text (job->units, pit->keep_back, TRUE);
      g_autofree char *text
          = pit->keep_back > 0 ? g_strdup_printf (_ ("PIT: keep %s back"), back) : g_strdup (_ ("PIT"));
      g_autofree char *caution = ox_cautions_tag ("drop", run->estimate), *tag = g_strconcat (text, caution, NULL);
      ox_drawing_builder_item (builder, pit->id, 0);
      Tagger off = tagger;
      off.keep_off = ring_on_page (plot, pit->shape.ring);
      if (!try_leaders (&off, ox_plot_to_page (plot, at), tag, FALSE, G_N_ELEMENTS (reaches_mm)))
        (void) try_leaders (&tagger, ox_plot_to_page (plot, at), tag, FALSE, G_N_ELEMENTS (reaches_mm));
    }
  ox_drawing_builder_item (builder, NULL, 0);
}

/* is_named_here: a place on the border between two sheets is named on one of them: on the right one, or the upper one
 */
static gboolean
is_named_here (const Tagger *tagger, OxPoint at)
{
  OxBox box = tagger->plot->shown, all = ox_job_box (tagger->run->job);
  return at.x >= box.x0 && (at.x < box.x1 || (at.x == box.x1 && box.x1 >= all.x1)) && at.y >= box.y0
         && (at.y < box.y1 || (at.y == box.y1 && box.y1 >= all.y1));
}

/* append_check: the cross stands on the floor whatever is there */
static void
append_check (const Tagger *tagger, OxPoint metres)
{
  OxPoint at = ox_plot_to_page (tagger->plot, metres);
  ox_drawing_builder_mark (tagger->builder, (OxMarkLook){ OX_STYLE_LEADER, OX_MARK_CHECK, 0, 2 * CROSS_MM }, at);
  ox_labels_take (tagger->labels, &(OxLabelBox){ metres, 0, { -CROSS_MM, -CROSS_MM, CROSS_MM, CROSS_MM } });
}

/* append_check_name: to the right of the cross where that is free, or to its left */
static void
append_check_name (const Tagger *tagger, OxPoint metres, const char *name)
{
  OxPoint at = ox_plot_to_page (tagger->plot, metres);
  double body = tagger->run->form.body_mm, w = ox_text_width (name, body, FALSE), h = body / 2 + 0.4;
  const OxLabelBox boxes[] = { { metres, 0, { CROSS_MM + 0.3, -h, CROSS_MM + 1.2 + w, h } },
                               { metres, 0, { -CROSS_MM - 1.2 - w, -h, -CROSS_MM - 0.3, h } } };
  for (guint i = 0; i < G_N_ELEMENTS (boxes); i++)
    {
      OxTextLook look = { OX_STYLE_TAG, body, 0, i == 0 ? OX_ALIGN_START : OX_ALIGN_END, TRUE, FALSE, 0.3, FALSE };
      if (!ox_labels_is_free (tagger->labels, &boxes[i]))
        continue;
      ox_labels_take (tagger->labels, &boxes[i]);
      ox_drawing_builder_text (tagger->builder, look, (OxPoint){ at.x + (i == 0 ? 1 : -1) * (CROSS_MM + 0.6), at.y },
                               name);
      return;
    }
}

/* check_step: every how many checks have their names: all, or every fifth where all would cover the floor */
static guint
check_step (const Tagger *tagger, const GArray *spots)
{
  const OxPlot *plot = tagger->plot;
  guint n = 0;
  double m2 = 0;
  for (guint i = 0; i < spots->len; i++)
    n += is_named_here (tagger, g_array_index (spots, OxSpot, i).at);
  for (guint i = 0; i < tagger->run->job->n_rooms; i++)
    {
      OxBox room = ox_ring_box (tagger->run->job->rooms[i]->ring), box = plot->shown;
      m2 += MAX (MIN (room.x1, box.x1) - MAX (room.x0, box.x0), 0)
            * MAX (MIN (room.y1, box.y1) - MAX (room.y0, box.y0), 0);
    }
  double each = m2 * plot->mm_per_m * plot->mm_per_m / MAX (n, 1);
  return each >= CHECK_MM2 ? 1 : 5;
}

/* append_checks: the crosses, or their @names */
static void
append_checks (const Tagger *tagger, gboolean names)
{
  g_autoptr (GArray) spots = ox_spots_of (tagger->run->plan);
  guint step = check_step (tagger, spots);
  for (guint i = 0; i < spots->len; i++)
    {
      const OxSpot *spot = &g_array_index (spots, OxSpot, i);
      g_autofree char *name = ox_check_name (i), *id = g_strdup_printf ("check-%u", i + 1);
      if (!is_named_here (tagger, spot->at))
        continue;
      ox_drawing_builder_item (tagger->builder, id, 0);
      if (!names)
        append_check (tagger, spot->at);
      else if ((i + 1) % step == 0 || i == 0 || i + 1 == spots->len)
        append_check_name (tagger, spot->at, name);
    }
  ox_drawing_builder_item (tagger->builder, NULL, 0);
}

void
ox_tags_append_checks (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  append_checks (&(Tagger){ run, plot, builder, labels, OX_BOX_EMPTY }, FALSE);
}

void
ox_tags_take_wraps (const OxSheetRun *run, OxLabels *labels)
{
  for (guint i = 0; i < run->plan->n_strips; i++)
    ox_picture_take_wrap (&run->plan->strips[i], labels);
}

void
ox_tags_append_check_names (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  /* A name beyond a match line would stand on the neighbour's floor. */
  ox_labels_set_bounds (labels, isfinite (plot->shown.x0) ? &plot->shown : NULL);
  append_checks (&(Tagger){ run, plot, builder, labels, OX_BOX_EMPTY }, TRUE);
  ox_labels_set_bounds (labels, NULL);
}

/* a station of the job, or a place proposed for one */
typedef struct
{
  const char *id, *name;
  OxPoint at;
  gboolean proposed;
} Named;

/* append_station: the name to the right of its mark, or to the left, above, below or across a corner, whichever is free
 * first */
static void
append_station (const Tagger *tagger, const Named *station)
{
  if (!is_named_here (tagger, station->at))
    return;
  OxPoint at = ox_plot_to_page (tagger->plot, station->at);
  double body = tagger->run->form.body_mm, w = ox_text_width (station->name, body, TRUE), h = body / 2 + 0.9;
  const struct
  {
    OxPoint at;
    OxAlign align;
    OxBox mm;
  } places[] = { { { 3.4, 0 }, OX_ALIGN_START, { 2.6, -h, 4 + w, h } },
                 { { -3.4, 0 }, OX_ALIGN_END, { -4 - w, -h, -2.6, h } },
                 { { 0, 4.6 }, OX_ALIGN_MIDDLE, { -w / 2 - 0.6, 4.6 - h, w / 2 + 0.6, 4.6 + h } },
                 { { 0, -4.6 }, OX_ALIGN_MIDDLE, { -w / 2 - 0.6, -4.6 - h, w / 2 + 0.6, -4.6 + h } },
                 { { 2, 4.6 }, OX_ALIGN_START, { 1.4, 4.6 - h, 2.6 + w, 4.6 + h } },
                 { { -2, 4.6 }, OX_ALIGN_END, { -2.6 - w, 4.6 - h, -1.4, 4.6 + h } },
                 { { 2, -4.6 }, OX_ALIGN_START, { 1.4, -4.6 - h, 2.6 + w, -4.6 + h } },
                 { { -2, -4.6 }, OX_ALIGN_END, { -2.6 - w, -4.6 - h, -1.4, -4.6 + h } } };
  ox_drawing_builder_item (tagger->builder, station->id, 0);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      OxLabelBox box = { station->at, 0, places[i].mm };
      if (!ox_labels_is_free (tagger->labels, &box))
        continue;
      ox_labels_take (tagger->labels, &box);
      OxStyle style = station->proposed ? OX_STYLE_PROPOSED : OX_STYLE_STATION;
      OxTextLook look = { style, body, 0, places[i].align, TRUE, !station->proposed, 0.5, FALSE };
      ox_drawing_builder_text (tagger->builder, look, ox_point_add (at, places[i].at), station->name);
      return;
    }
}

/* append_on_line: a text on a line, where it first has room on this page; FALSE when there is none */
static gboolean
append_on_line (const Tagger *tagger, const GArray *line, const char *text)
{
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9 };
  double body = tagger->run->form.body_mm, w = ox_text_width (text, body, TRUE) / 2 + 1, h = body * 0.8;
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      guint k = (guint) (shares[i] * (line->len - 1));
      OxPoint a = g_array_index (line, OxPoint, k > 0 ? k - 1 : 0), at = g_array_index (line, OxPoint, k);
      OxPoint b = g_array_index (line, OxPoint, MIN (k + 1, line->len - 1)), from = at, to = at;
      OxLabelBox box = { at, readable_angle (atan2 (b.y - a.y, b.x - a.x)), { -w, -h, w, h } };
      if (!ox_clip_line (&from, &to, tagger->plot->shown) || !ox_labels_is_free (tagger->labels, &box))
        continue;
      ox_labels_take (tagger->labels, &box);
      OxTextLook look = { OX_STYLE_STATION, body, box.angle, OX_ALIGN_MIDDLE, TRUE, FALSE, 0.4, FALSE };
      ox_drawing_builder_text (tagger->builder, look, ox_plot_to_page (tagger->plot, at), text);
      return TRUE;
    }
  return FALSE;
}

void
ox_tags_append_reach (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  const Tagger tagger = { run, plot, builder, labels, OX_BOX_EMPTY };
  const OxReachLines *reach = run->reach;
  guint named = G_MAXUINT;
  for (guint i = 0; reach != NULL && i < reach->n; i++)
    {
      const OxPlanStation *station = &run->plan->stations[reach->lines[i].station];
      if (reach->lines[i].station == named)
        continue;
      g_autofree char *text = g_strdup_printf (_ ("reach of %s"), ox_naming_station (run->job, station->id));
      ox_drawing_builder_item (builder, station->id, 0);
      if (append_on_line (&tagger, reach->lines[i].points, text))
        named = reach->lines[i].station;
    }
  ox_drawing_builder_item (builder, NULL, 0);
}

void
ox_tags_append_stations (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels,
                         gboolean proposed)
{
  const Tagger tagger = { run, plot, builder, labels, OX_BOX_EMPTY };
  const OxJob *job = run->job;
  const OxPlan *plan = run->plan;
  for (guint i = 0; i < plan->n_stations; i++)
    if (proposed || !plan->stations[i].proposed)
      ox_labels_take (labels, &(OxLabelBox){ plan->stations[i].at, 0, { -2.6, -2.6, 2.6, 2.6 } });
  for (guint i = 0; i < job->n_stations; i++)
    append_station (&tagger, &(Named){ job->stations[i]->id, ox_naming_station (job, job->stations[i]->id),
                                       job->stations[i]->at, FALSE });
  for (guint i = 0; proposed && i < plan->n_stations; i++)
    {
      const OxPlanStation *station = &plan->stations[i];
      g_autofree char *name = plot->mm_per_m >= WORDS_MM_PER_M ? g_strdup_printf (_ ("%s, proposed"), station->id)
                                                               : g_strdup (station->id);
      if (station->proposed)
        append_station (&tagger, &(Named){ station->id, name, station->at, TRUE });
    }
  ox_drawing_builder_item (builder, NULL, 0);
}
