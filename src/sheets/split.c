/* Oxturn: sheets/split - the crew drawing of a floor that is too large for one legible sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/split.h"
#include "sheets/crew.h"
#include "sheets/parts.h"
#include "sheets/tags.h"
#include "base/words.h"

#define OVERVIEW_AROUND OX_AROUND_ALL (12.0)
#define STATION_ROOM_MM2 100.0 /* what a station and its name take */
#define CROWDED_SHARE 0.5      /* of the floor */
#define KEY_HEIGHT_MM 30.0
#define LEAST_PITCH_MM 0.9 /* from strip to strip on paper: every fifth then has room for its number */
#define OVERVIEW_LAYERS                                                                                                \
  (OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_TO_PREPARE | OX_FLOOR_EDGE_WORK | OX_FLOOR_STATIONS                \
   | OX_FLOOR_FIRST | OX_FLOOR_REACH)

/* what all sheets of one split drawing share */
typedef struct
{
  OxSheetRun *run;
  const char *kind;
  OxScale scale;
  OxPlot page; /* area and slots of each part's sheet */
  OxParts *parts;
  guint *homes;    /* of each edge area: the part in whose table it stands */
  GPtrArray *left; /* of OxBlock: tables that found no room on their sheet */
} Split;

/* least_pitch: m from strip to strip where they lie closest */
static double
least_pitch (const OxPlan *plan)
{
  double pitch = INFINITY;
  for (guint i = 0; i < plan->n_chalks; i++)
    if (plan->chalks[i].lanes > 1)
      pitch = MIN (pitch, plan->chalks[i].spacing);
  return pitch;
}

static GPtrArray *
new_blocks (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
}

gboolean
ox_split_is_needed (const OxSheetRun *run)
{
  g_autoptr (GPtrArray) none = new_blocks ();
  OxPlot plot;
  if (!ox_plot_new (run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_CREW_AROUND, &plot, NULL))
    return TRUE;
  return run->asked.denominator <= 0 && least_pitch (run->plan) * plot.mm_per_m < LEAST_PITCH_MM;
}

/* home_of: the part with a sheet that has @p in it, else the first with a sheet */
static guint
home_of (const OxParts *parts, OxPoint p)
{
  guint found = 0;
  for (guint i = 0; i < parts->n_columns * parts->n_rows; i++)
    {
      OxBox box = parts->parts[i].box;
      if (parts->parts[i].sheet > 0 && p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1)
        return i;
      found = parts->parts[found].sheet > 0 ? found : i;
    }
  return found;
}

static void
find_homes (Split *split)
{
  const OxPlan *plan = split->run->plan;
  split->homes = g_new0 (guint, plan->n_edges);
  for (guint i = 0; i < plan->n_edges; i++)
    {
      OxPoint at = ox_region_is_empty (plan->edges[i].region) ? (OxPoint){ INFINITY, INFINITY }
                                                              : ox_region_label_point (plan->edges[i].region, NULL);
      split->homes[i] = home_of (split->parts, at);
    }
}

static OxBlock *
key_block (const Split *split, guint i)
{
  OxBlock *block = ox_block_new (_ ("Key plan"), split->run->form.block_mm, split->run->form.body_mm);
  const double mm[2] = { split->run->form.block_mm - 2, KEY_HEIGHT_MM - 2 };
  g_autoptr (OxDrawing) key = ox_parts_key_new (split->parts, i, split->run->job, mm);
  ox_block_add_drawing (block, key, MIN (KEY_HEIGHT_MM, key->box.y1 + 2));
  return block;
}

/* part_legend: says of the drawing too how many of the edge areas in its table have no tag: the table may stand on
 * another sheet; (transfer full) */
static OxBlock *
part_legend (const OxSheetRun *run, const OxDrawing *floor, const OxDrawing *beside, guint untagged)
{
  OxBlock *block = ox_legend_new (run, floor, beside);
  ox_crew_add_untagged (block, untagged);
  return block;
}

/* lay_out_parts: the scale, what a sheet keeps for its blocks, and from it the parts. Only then is it known what the
 * key plan looks like; its place is kept by an empty one of the same height. */
static void
lay_out_parts (Split *split, guint first_sheet)
{
  const OxSheetRun *run = split->run;
  double pitch = least_pitch (run->plan);
  split->scale
      = run->asked.denominator > 0 ? run->asked : ox_scale_at_least (run->job->units, pitch * 1000 / LEAST_PITCH_MM);
  g_autoptr (OxDrawing) rough = ox_crew_rough_new (run);
  g_autoptr (GPtrArray) blocks = new_blocks ();
  OxBlock *key = ox_block_new (_ ("Key plan"), run->form.block_mm, run->form.body_mm);
  ox_block_add_drawing (key, rough, KEY_HEIGHT_MM);
  g_ptr_array_add (blocks, key);
  g_ptr_array_add (blocks, part_legend (run, rough, NULL, 1));
  double mm[2];
  ox_plot_divide_part (run, &(OxFlow){ blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_CREW_AROUND, &split->page, mm);
  split->parts = ox_parts_new (run->job, 1000 / split->scale.denominator, mm, first_sheet);
}

/* --- The sheet of the whole floor --- */

/* the sheet of the whole floor, laid out */
typedef struct
{
  OxPlot plot;
  gboolean crowded; /* the proposed stations would hide the floor: the sheets of the parts show them */
} Overview;

/* beside_overview: (transfer full): grid of the sheets, stations, drops and base walls */
static OxDrawing *
beside_overview (const Split *split, const Overview *overview, OxLabels *labels)
{
  const OxPlot *plot = &overview->plot;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_layer (builder, "tags", _ ("Tags"));
  ox_parts_append_grid (split->parts, plot, builder, labels);
  ox_tags_append_stations (split->run, plot, builder, labels, !overview->crowded);
  ox_tags_append_sides (split->run, plot, builder, labels);
  ox_tags_append_reach (split->run, plot, builder, labels);
  return ox_drawing_builder_end (builder);
}

/* overview_blocks: @beside: (nullable): NULL: not drawn yet; (transfer full) */
static GPtrArray *
overview_blocks (const OxSheetRun *run, const OxDrawing *floor, const OxDrawing *beside, gboolean crowded)
{
  GPtrArray *blocks = new_blocks ();
  OxBlock *order = ox_crew_order_new (run);
  ox_crew_add_unnumbered (order, run->plan, floor);
  if (crowded)
    ox_block_add_text (order, "\xe2\x80\xa2", _ ("Proposed stations are drawn on the sheets of the parts."));
  g_ptr_array_add (blocks, order);
  g_ptr_array_add (blocks, ox_crew_cautions_new (run, 0, FALSE));
  g_ptr_array_add (blocks, ox_legend_new (run, floor, beside));
  g_ptr_array_add (blocks, ox_crew_chalk_new (run));
  g_ptr_array_add (blocks, ox_crew_stations_new (run));
  g_ptr_array_add (blocks, ox_crew_fields_new (run));
  return blocks;
}

static OxFloorLayers
overview_layers (const Overview *overview)
{
  return OVERVIEW_LAYERS | (overview->crowded ? OX_FLOOR_OWN : 0);
}

/* is_crowded: whether the marks of the proposed stations would hide the floor */
static gboolean
is_crowded (const OxSheetRun *run, const OxPlot *plot)
{
  OxBox box = ox_job_box (run->job);
  double floor_mm2 = (box.x1 - box.x0) * (box.y1 - box.y0) * plot->mm_per_m * plot->mm_per_m;
  guint n = 0;
  for (guint i = 0; i < run->plan->n_stations; i++)
    n += run->plan->stations[i].proposed;
  return n * STATION_ROOM_MM2 > CROWDED_SHARE * floor_mm2;
}

/* lay_out_overview: by blocks as long as they may become */
static gboolean
lay_out_overview (const OxSheetRun *run, Overview *out, GError **error)
{
  OxSheetRun whole = *run;
  whole.asked = (OxScale){ 0, NULL };
  const OxFloorPart all = { overview_layers (out), 1, OX_FLOOR_WHOLE, run->reach, run->form.body_mm };
  g_autoptr (OxDrawing) rough = ox_floor_picture_new_part (run->job, run->plan, &all, NULL);
  g_autoptr (GPtrArray) blocks = overview_blocks (run, rough, NULL, out->crowded);
  const OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  if (!ox_plot_new (&whole, &flow, OVERVIEW_AROUND, &out->plot, error))
    return FALSE;
  OxFlow trial = flow;
  if (!ox_flow_tighten (&trial, out->plot.slots, out->plot.n_slots))
    ox_plot_use_below (&out->plot, run, &flow, OVERVIEW_AROUND);
  return TRUE;
}

/* make_overview: its scale decides whether the proposed stations are drawn */
static gboolean
make_overview (const OxSheetRun *run, Overview *out, GError **error)
{
  out->crowded = FALSE;
  if (!lay_out_overview (run, out, error))
    return FALSE;
  out->crowded = is_crowded (run, &out->plot);
  return !out->crowded || lay_out_overview (run, out, error);
}

/* append_overview: what finds no room on it is kept in @flow, whose @blocks are (out) */
static void
append_overview (const Split *split, const Overview *overview, const char *description, OxFlow *flow)
{
  OxSheetRun *run = split->run;
  const OxPlot *plot = &overview->plot;
  g_autoptr (OxLabels) labels = ox_labels_new (plot->mm_per_m);
  const OxFloorPart all = { overview_layers (overview), plot->mm_per_m, OX_FLOOR_WHOLE, run->reach, run->form.body_mm };
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_part (run->job, run->plan, &all, labels);
  g_autoptr (OxDrawing) beside = beside_overview (split, overview, labels);
  g_autofree char *scale = ox_scale_text (plot->scale);
  OxDrawingBuilder *builder = ox_sheet_run_add (run, split->kind, description, scale)->builder;
  ox_plot_append (plot, run, builder, floor);
  ox_drawing_builder_drawing (builder, beside);
  ox_drawing_builder_item (builder, NULL, 0);
  ox_drawing_builder_layer (builder, "tables", _ ("Tables and notes"));
  *flow = (OxFlow){ overview_blocks (run, floor, beside, overview->crowded), 0, 0, FALSE, OX_BLOCK_GAP_MM };
  (void) ox_flow_tighten (flow, plot->slots, plot->n_slots);
  (void) ox_flow_fill (flow, builder, plot->slots, plot->n_slots);
}

/* --- The sheet of a part --- */

/* count_untagged: edge areas of the table of @part that have no tag @beside its floor. One that only reaches into the
 * part is in the table of another, and no line here is its. */
static guint
count_untagged (const Split *split, guint part, const OxDrawing *beside)
{
  const OxPlan *plan = split->run->plan;
  guint n = 0;
  for (guint i = 0; i < plan->n_edges; i++)
    {
      gboolean tagged = split->homes[i] != part;
      for (guint k = 0; k < beside->n_elements && !tagged; k++)
        tagged = beside->elements[k].kind == OX_ELEMENT_TEXT && g_strcmp0 (beside->elements[k].id, plan->edges[i].id) == 0;
      n += !tagged;
    }
  return n;
}

/* part_edges: the edge areas that belong to a part */
static OxBlock *
part_edges (const Split *split, guint part)
{
  const OxPlan *plan = split->run->plan;
  g_autofree guint *which = g_new (guint, plan->n_edges + 1);
  guint n = 0;
  for (guint i = 0; i < plan->n_edges; i++)
    if (split->homes[i] == part)
      which[n++] = i;
  g_autofree char *title = g_strdup_printf (_ ("Edge work of sheet %u"), split->parts->parts[part].sheet);
  return ox_edge_table_new_some (split->run, title, which, n);
}

/* take_rest: what @flow has not placed, to the place @at among what is left */
static void
take_rest (Split *split, OxFlow *flow, guint at)
{
  if (flow->block < flow->blocks->len)
    ox_block_drop (g_ptr_array_index (flow->blocks, flow->block), flow->row);
  while (flow->block < flow->blocks->len)
    g_ptr_array_insert (split->left, (gint) at++, g_ptr_array_steal_index (flow->blocks, flow->block));
}

/* place_blocks: what finds no room on the sheet is kept for the end */
static void
place_blocks (Split *split, OxDraft *draft, const OxPlot *plot, GPtrArray *blocks)
{
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  ox_drawing_builder_item (draft->builder, NULL, 0);
  ox_drawing_builder_layer (draft->builder, "tables", _ ("Tables and notes"));
  (void) ox_flow_tighten (&flow, plot->slots, plot->n_slots);
  if (!ox_flow_fill (&flow, draft->builder, plot->slots, plot->n_slots))
    take_rest (split, &flow, split->left->len);
}

/* cut: (transfer full): what of @drawing lies in @box */
static OxDrawing *
cut (const OxDrawing *drawing, OxBox box)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_clip (builder, &box);
  ox_drawing_builder_drawing (builder, drawing);
  return ox_drawing_builder_end (builder);
}

static void
append_part (Split *split, guint i)
{
  const OxSheetRun *run = split->run;
  const OxPart *part = &split->parts->parts[i];
  OxPlot plot = split->page;
  ox_plot_set_part (&plot, split->scale, part->box, OX_CREW_AROUND);
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  for (guint k = 0; k < run->plan->n_stations; k++)
    ox_labels_take (labels, &(OxLabelBox){ run->plan->stations[k].at, 0, { -2.6, -2.6, 2.6, 2.6 } });
  OxDrawingBuilder *tags = ox_drawing_builder_new ();
  ox_drawing_builder_layer (tags, "match-lines", _ ("Match lines"));
  ox_parts_append_lines (split->parts, i, &plot, tags, labels);
  (void) ox_crew_append_tags (run, &plot, tags, labels);
  g_autoptr (OxDrawing) beside = ox_drawing_builder_end (tags);
  const OxFloorPart shown = { OX_CREW_LAYERS, plot.mm_per_m, part->box, run->reach, run->form.body_mm };
  g_autoptr (OxDrawing) uncut = ox_floor_picture_new_part (run->job, run->plan, &shown, labels);
  g_autoptr (OxDrawing) floor = cut (uncut, part->box);
  g_autofree char *scale = ox_scale_text (split->scale);
  g_autofree char *description = g_strdup_printf (_ ("Part of the floor, %u of %u."),
                                                  part->sheet - split->parts->first_sheet + 1, split->parts->n_sheets);
  OxDraft *draft = ox_sheet_run_add (split->run, split->kind, description, scale);
  ox_plot_append (&plot, run, draft->builder, floor);
  ox_drawing_builder_drawing (draft->builder, beside);
  ox_drawing_builder_layer (draft->builder, "tags", _ ("Tags"));
  ox_tags_append_check_names (run, &plot, draft->builder, labels);
  ox_tags_append_reach (run, &plot, draft->builder, labels);
  g_autoptr (GPtrArray) blocks = new_blocks ();
  g_ptr_array_add (blocks, key_block (split, i));
  g_ptr_array_add (blocks, part_legend (run, floor, beside, count_untagged (split, i, beside)));
  g_ptr_array_add (blocks, part_edges (split, i));
  place_blocks (split, draft, &plot, blocks);
}

static void
clear_split (Split *split)
{
  g_clear_pointer (&split->parts, ox_parts_free);
  g_clear_pointer (&split->homes, g_free);
  g_clear_pointer (&split->left, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Split, clear_split)

gboolean
ox_split_append (OxSheetRun *run, const char *kind, GError **error)
{
  g_auto (Split) split = { .run = run, .kind = kind, .left = new_blocks () };
  const char *description = _ ("The whole floor: sheets of its parts, order of work, chalk lines and stations.");
  Overview overview;
  OxFlow flow;
  lay_out_parts (&split, run->drafts->len + 2);
  find_homes (&split);
  if (!make_overview (run, &overview, error))
    return FALSE;
  append_overview (&split, &overview, description, &flow);
  g_autoptr (GPtrArray) blocks = flow.blocks;
  for (guint i = 0; i < split.parts->n_columns * split.parts->n_rows; i++)
    if (split.parts->parts[i].sheet > 0)
      append_part (&split, i);
  take_rest (&split, &flow, 0);
  OxFlow rest = { split.left, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  ox_flow_finish (&rest, run, kind, _ ("Tables that found no room on their own sheets."));
  return TRUE;
}
