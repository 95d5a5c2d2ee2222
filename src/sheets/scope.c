/* Oxturn: sheets/scope - the scope drawing: what is prepared, what is left out, what is hand work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The client reads and signs it.
 */
#include "drawing/text.h"
#include "base/words.h"
#include "sheets/dimension.h"
#include "sheets/draft.h"
#include "sheets/floor.h"
#include "sheets/measure.h"

#define AROUND_MM 22.0 /* dimensions in two rows */
#define SIDE_OFFSET_MM 9.0
#define OVERALL_OFFSET_MM 18.0
#define INSIDE_OFFSET_MM 4.5
#define NAME_ROOM_SHARE 1.9 /* of the radius of the largest circle in the room: how wide its name may be */

/* --- Blocks --- */

/* room_target: what of a room is in the scope, m2 */
static double
room_target (const OxSheetRun *run, guint room)
{
  g_autoptr (OxRegion) floor = ox_region_new_ring (run->job->rooms[room]->ring);
  g_autoptr (OxRegion) target = ox_region_intersection (run->plan->target, floor);
  return ox_region_area (target);
}

static double
room_edge (const OxSheetRun *run, guint room)
{
  double sum = 0;
  for (guint i = 0; i < run->plan->n_edges; i++)
    if (run->plan->edges[i].room == room)
      sum += run->plan->edges[i].area;
  return sum;
}

static const char *
room_name (const OxRoom *room)
{
  return room->name[0] != '\0' ? room->name : room->id;
}

static OxBlock *
quantities_block (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Room"), 0.24, OX_ALIGN_START },
                               { _ ("Profile"), 0.15, OX_ALIGN_START },
                               { _ ("In scope"), 0.19, OX_ALIGN_END },
                               { _ ("Machine"), 0.2, OX_ALIGN_END },
                               { _ ("Edge work"), 0.22, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Quantities"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  OxUnits units = run->job->units;
  for (guint i = 0; i < run->job->n_rooms; i++)
    {
      double target = room_target (run, i), edge = room_edge (run, i);
      g_autofree char *all = ox_measure_area (units, target), *machine = ox_measure_area (units, target - edge),
                      *hand = ox_measure_area (units, edge);
      ox_block_add_cells (block, FALSE, room_name (run->job->rooms[i]), run->job->rooms[i]->profile, all, machine, hand,
                          NULL);
    }
  const OxTotals *totals = &run->plan->totals;
  g_autofree char *all = ox_measure_area (units, totals->target_m2),
                  *machine = ox_measure_area (units, totals->blasted_m2),
                  *hand = ox_measure_area (units, totals->edge_m2);
  ox_block_add_cells (block, TRUE, _ ("Total"), "", all, machine, hand, NULL);
  return block;
}

static void
add_left_out (OxBlock *block, OxUnits units, const char *name, const char *what, const OxRing *ring)
{
  g_autofree char *area = ox_measure_area (units, fabs (ox_ring_area (ring)));
  ox_block_add_cells (block, FALSE, name, what, area, NULL);
}

static OxBlock *
left_out_block (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Item"), 0.42, OX_ALIGN_START },
                               { _ ("Why"), 0.38, OX_ALIGN_START },
                               { _ ("Area"), 0.2, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Not prepared"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  const OxJob *job = run->job;
  for (guint i = 0; i < job->n_excluded; i++)
    {
      const OxExcluded *item = job->excluded[i];
      add_left_out (block, job->units, item->name[0] ? item->name : item->id, _ ("excluded from the scope"),
                    item->ring);
    }
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      const OxObstacle *item = job->obstacles[i];
      if (item->kind != OX_OBSTACLE_SOLID)
        add_left_out (block, job->units, item->name[0] ? item->name : item->id,
                      item->kind == OX_OBSTACLE_MASKED ? _ ("masked, protected") : _ ("pit or opening"),
                      item->shape.ring);
    }
  return block;
}

static OxBlock *
notes_block (const OxSheetRun *run)
{
  OxBlock *block = ox_block_new (_ ("Assumptions and notes"), run->form.block_mm, run->form.body_mm);
  const char *const standing[] = {
    _ ("Areas are measured on this drawing; dimensions govern, do not scale from a print."),
    _ ("Floor that the machine does not reach is edge work, done with hand tools; its texture may differ from "
       "machine-prepared floor."),
    _ ("The profile reached is judged on a test patch on this floor before work starts."),
  };
  guint number = 1;
  for (guint i = 0; i < G_N_ELEMENTS (standing); i++, number++)
    {
      g_autofree char *mark = g_strdup_printf ("%u", number);
      ox_block_add_text (block, mark, standing[i]);
    }
  g_auto (GStrv) own = g_strsplit (run->job->texts->notes, "\n", -1);
  for (guint i = 0; own[i] != NULL; i++)
    if (g_strstrip (own[i])[0] != '\0')
      {
        g_autofree char *mark = g_strdup_printf ("%u", number++);
        ox_block_add_text (block, mark, own[i]);
      }
  return block;
}

static OxBlock *
revision_block (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Rev."), 0.12, OX_ALIGN_START },
                               { _ ("Date"), 0.24, OX_ALIGN_START },
                               { _ ("Drawn by"), 0.34, OX_ALIGN_START },
                               { _ ("Status"), 0.3, OX_ALIGN_START } };
  const OxTexts *texts = run->job->texts;
  OxBlock *block = ox_block_new (_ ("Revisions"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  const char *revision = texts->revision[0] != '\0' ? texts->revision : "\xe2\x80\x93";
  ox_block_add_cells (block, FALSE, revision, texts->date, texts->author, texts->status, NULL);
  return block;
}

static OxBlock *
sign_off_block (const OxSheetRun *run)
{
  const OxTexts *texts = run->job->texts;
  OxBlock *block = ox_block_new (_ ("Sign-off"), run->form.block_mm, run->form.body_mm);
  g_autofree char *accepted = texts->revision[0] != '\0'
                                  ? g_strdup_printf (_ ("Accepted as the scope of work: drawing %s, revision %s."),
                                                     texts->number, texts->revision)
                                  : g_strdup_printf (_ ("Accepted as the scope of work: drawing %s."), texts->number);
  ox_block_add_text (block, NULL, accepted);
  ox_block_add_text (block, NULL, "");
  ox_block_add_blank (block, _ ("Name in print"), 0.6, FALSE);
  ox_block_add_blank (block, _ ("Date"), 0.4, TRUE);
  ox_block_add_blank (block, _ ("Signature"), 1.0, TRUE);
  ox_block_set_foot (block);
  return block;
}

/* --- Names and dimensions on the drawing --- */

typedef struct
{
  double name_mm, detail_mm; /* 0: no detail */
} NameSize;

/* append_name: name, area and profile, one below another, about the middle of the room; smaller or shorter where there
 * is less room, and not at all where there is none: the table has them */
static void
append_name (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels, guint i)
{
  static const NameSize sizes[] = { { 3.5, 2.5 }, { 2.5, 1.8 }, { 2.5, 0 }, { 1.8, 0 } };
  const OxRoom *room = run->job->rooms[i];
  g_autoptr (OxRegion) region = ox_region_new_ring (room->ring);
  if (ox_region_is_empty (region))
    return;
  double radius;
  OxPoint middle = ox_region_label_point (region, &radius), at = ox_plot_to_page (plot, middle);
  g_autofree char *area = ox_measure_area (run->job->units, room_target (run, i));
  g_autofree char *detail
      = room->profile[0] != '\0' ? g_strdup_printf ("%s \xc2\xb7 %s", area, room->profile) : g_strdup (area);
  for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
    {
      NameSize size = sizes[k];
      double w = MAX (ox_text_width (room_name (room), size.name_mm, TRUE),
                      size.detail_mm > 0 ? ox_text_width (detail, size.detail_mm, FALSE) : 0);
      double low = size.detail_mm > 0 ? size.detail_mm + 2.2 : 0.2;
      OxLabelBox box = { middle, 0, { -w / 2 - 1, -low - 0.8, w / 2 + 1, size.name_mm + 1.8 } };
      if (w > NAME_ROOM_SHARE * radius * plot->mm_per_m || !ox_labels_is_free (labels, &box))
        continue;
      ox_labels_take (labels, &box);
      OxTextLook name = { OX_STYLE_INK, size.name_mm, 0, OX_ALIGN_MIDDLE, FALSE, TRUE, 0.8, FALSE };
      OxTextLook quiet = { OX_STYLE_INK, size.detail_mm, 0, OX_ALIGN_MIDDLE, FALSE, FALSE, 0.8, FALSE };
      ox_drawing_builder_item (builder, room->id, 0);
      ox_drawing_builder_text (builder, name, (OxPoint){ at.x, at.y + 0.8 }, room_name (room));
      if (size.detail_mm > 0)
        ox_drawing_builder_text (builder, quiet, (OxPoint){ at.x, at.y - low + 1 }, detail);
      ox_drawing_builder_item (builder, NULL, 0);
      return;
    }
}

/* is_outside: whether a band beside a-b, from 1 mm to @depth mm on the side of @sign, is clear of all rooms */
static gboolean
is_outside (const OxSheetRun *run, const OxPlot *plot, OxPoint a, OxPoint b, double depth_mm)
{
  double length = ox_point_distance (a, b);
  OxPoint left = { -(b.y - a.y) / length, (b.x - a.x) / length };
  const double depths[] = { depth_mm * 0.12, depth_mm * 0.5, depth_mm };
  for (int k = 0; k < 3; k++)
    for (int t = 1; t <= 9; t++)
      {
        OxPoint p = ox_point_add (a, ox_point_scale (ox_point_sub (b, a), t / 10.0));
        p = ox_point_add (p, ox_point_scale (left, depths[k] / plot->mm_per_m));
        for (guint i = 0; i < run->job->n_rooms; i++)
          if (ox_ring_contains (run->job->rooms[i]->ring, p))
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

static gboolean
try_dimension (const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels, const OxDimension *dimension)
{
  OxLabelBox box = dimension_box (plot, dimension);
  if (ox_point_distance (dimension->a, dimension->b) < box.mm.x1 - box.mm.x0 + 1 || !ox_labels_is_free (labels, &box))
    return FALSE;
  ox_labels_take (labels, &box);
  ox_dimension_append (dimension, builder);
  return TRUE;
}

typedef struct
{
  OxPoint a, b;
} Span;

/* says_same: whether the length of @t follows from that of @s: the same side, or one of the same length and direction
 * just across, as in a rectangle */
static gboolean
says_same (Span s, Span t)
{
  OxPoint along = ox_point_sub (s.b, s.a), other = ox_point_sub (t.b, t.a);
  double length = hypot (along.x, along.y), tolerance = 0.002 * length;
  if (fabs (length - hypot (other.x, other.y)) > 0.0005 || fabs (ox_point_cross (along, other)) > tolerance)
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

/* append_side: outside where the floor leaves room for it, inside where not; each length once */
static void
append_side (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels, Span span)
{
  g_autofree char *text = ox_units_length_text (run->job->units, ox_point_distance (span.a, span.b), FALSE);
  /* The room lies to the left of a side, so a dimension outside runs the other way. */
  OxDimension dimension = { ox_plot_to_page (plot, span.b), ox_plot_to_page (plot, span.a), SIDE_OFFSET_MM, text };
  if (is_outside (run, plot, span.b, span.a, SIDE_OFFSET_MM + 4) && try_dimension (plot, builder, labels, &dimension))
    return;
  dimension.offset_mm = -INSIDE_OFFSET_MM;
  if (!try_dimension (plot, builder, labels, &dimension))
    {
      dimension.offset_mm = -2.4 * INSIDE_OFFSET_MM;
      (void) try_dimension (plot, builder, labels, &dimension);
    }
}

static void
append_overall (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels,
                const GArray *spans)
{
  OxBox box = ox_job_box (run->job);
  const Span sums[2] = { { { box.x0, box.y0 }, { box.x1, box.y0 } }, { { box.x0, box.y1 }, { box.x0, box.y0 } } };
  for (int i = 0; i < 2; i++)
    {
      if (is_known (spans, sums[i]))
        continue;
      g_autofree char *text = ox_units_length_text (run->job->units, ox_point_distance (sums[i].a, sums[i].b), FALSE);
      OxDimension dimension
          = { ox_plot_to_page (plot, sums[i].a), ox_plot_to_page (plot, sums[i].b), -OVERALL_OFFSET_MM, text };
      (void) try_dimension (plot, builder, labels, &dimension);
    }
}

static void
append_dimensions (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
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
          Span span = left ? (Span){ p, q } : (Span){ q, p };
          if (is_known (spans, span))
            continue;
          g_array_append_val (spans, span);
          append_side (run, plot, builder, labels, span);
        }
    }
  append_overall (run, plot, builder, labels, spans);
}

/* --- The sheet --- */

gboolean
ox_scope_append (OxSheetRun *run, GError **error)
{
  const OxFloorLayers layers = OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_TO_PREPARE | OX_FLOOR_EDGE_WORK;
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (run->job, run->plan, layers, 1, NULL);
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  g_ptr_array_add (blocks, quantities_block (run));
  g_ptr_array_add (blocks, left_out_block (run));
  g_ptr_array_add (blocks, ox_legend_new (run, floor));
  g_ptr_array_add (blocks, notes_block (run));
  g_ptr_array_add (blocks, revision_block (run));
  g_ptr_array_add (blocks, sign_off_block (run));
  OxFlow flow = { blocks, 0, 0, FALSE };
  OxPlot plot;
  if (!ox_plot_new (run, &flow, AROUND_MM, &plot, error))
    return FALSE;
  g_autofree char *scale = ox_scale_text (plot.scale);
  const char *kind = _ ("Scope drawing");
  const char *description
      = _ ("What is prepared to which profile, what is left out, what is edge work, with dimensions and quantities.");
  OxDraft *draft = ox_sheet_run_add (run, kind, description, scale);
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  ox_plot_append (&plot, run, draft->builder, floor);
  ox_drawing_builder_layer (draft->builder, "names", _ ("Names"));
  for (guint i = 0; i < run->job->n_rooms; i++)
    append_name (run, &plot, draft->builder, labels, i);
  append_dimensions (run, &plot, draft->builder, labels);
  ox_drawing_builder_layer (draft->builder, "tables", _ ("Tables and notes"));
  gboolean done = ox_flow_fill (&flow, draft->builder, plot.slots, plot.n_slots);
  if (!done)
    ox_flow_finish (&flow, run, kind, description);
  return TRUE;
}
