/* Oxturn: sheets/scope - the scope drawing: what is prepared, what is left out, what is hand work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The client reads and signs it.
 */
#include "drawing/text.h"
#include "base/words.h"
#include "sheets/agreed.h"
#include "sheets/contents.h"
#include "sheets/dimensions.h"
#include "sheets/draft.h"
#include "sheets/floor.h"
#include "sheets/measure.h"
#include "sheets/naming.h"

#define SQUARE_FOOT (0.3048 * 0.3048)
#define SMALL_M2 1.0 /* parts of rooms below are printed with one decimal more, */
#define SMALL_FT2 10.0
#define WALL_MM 0.5         /* to both sides of the outline of a room: a name beside it leaves the wall to be seen */
#define SEEN_MM 4.0         /* of an area around its own name */
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

enum
{
  ALL,
  MACHINE,
  HAND,
  N_AREAS
};

/* areas of the rooms as they are printed: rooms add up to the sums, and machine and edge work to what is in the scope */
typedef struct
{
  double *rooms[N_AREAS]; /* m2, multiples of what is printed */
  double sums[N_AREAS];   /* m2 */
  guint decimals;
} Quantities;

static void
clear_quantities (Quantities *quantities)
{
  for (guint k = 0; k < N_AREAS; k++)
    g_free (quantities->rooms[k]);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Quantities, clear_quantities)

/* choose_step: m2 of the last decimal; small parts, where there are any, ask for one decimal more of all */
static double
choose_step (const OxSheetRun *run, Quantities *quantities)
{
  gboolean feet = run->job->units == OX_UNITS_FEET, small = FALSE;
  double unit = feet ? SQUARE_FOOT : 1;
  for (guint i = 0; i < run->job->n_rooms; i++)
    for (guint k = MACHINE; k < N_AREAS; k++)
      small |= quantities->rooms[k][i] > OX_GRID && quantities->rooms[k][i] < (feet ? SMALL_FT2 * unit : SMALL_M2);
  quantities->decimals = (feet ? 0 : 1) + small;
  return unit * pow (10, -(double) quantities->decimals);
}

static void
reckon_quantities (const OxSheetRun *run, Quantities *out)
{
  guint n = run->job->n_rooms;
  for (guint k = 0; k < N_AREAS; k++)
    out->rooms[k] = g_new0 (double, n + 1);
  for (guint i = 0; i < n; i++)
    {
      out->rooms[HAND][i] = room_edge (run, i);
      out->rooms[MACHINE][i] = MAX (room_target (run, i) - out->rooms[HAND][i], 0);
      out->sums[HAND] += out->rooms[HAND][i];
      out->sums[MACHINE] += out->rooms[MACHINE][i];
    }
  double step = choose_step (run, out);
  out->sums[ALL] = round ((out->sums[HAND] + out->sums[MACHINE]) / step) * step;
  ox_measure_share (&out->sums[MACHINE], 2, step, out->sums[ALL]);
  for (guint k = MACHINE; k < N_AREAS; k++)
    ox_measure_share (out->rooms[k], n, step, out->sums[k]);
  for (guint i = 0; i < n; i++)
    out->rooms[ALL][i] = out->rooms[MACHINE][i] + out->rooms[HAND][i];
}

typedef struct
{
  const char *name, *profile; /* @profile: (nullable): NULL: the row of the sums */
  const double *areas;        /* N_AREAS */
  guint decimals;
} Row;

static void
add_row (OxBlock *block, OxUnits units, const Row *row)
{
  g_autofree char *all = ox_measure_area_to (units, row->areas[ALL], row->decimals),
                  *machine = ox_measure_area_to (units, row->areas[MACHINE], row->decimals),
                  *hand = ox_measure_area_to (units, row->areas[HAND], row->decimals);
  ox_block_add_cells (block, row->profile == NULL, row->name, row->profile != NULL ? row->profile : "", all, machine, hand,
                      NULL);
}

static OxBlock *
quantities_block (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Room"), 0.23, OX_ALIGN_START },
                               { _ ("Profile"), 0.13, OX_ALIGN_START },
                               { _ ("In scope"), 0.22, OX_ALIGN_END },
                               { _ ("Machine"), 0.21, OX_ALIGN_END },
                               { _ ("Edge work"), 0.21, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Quantities"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  g_auto (Quantities) quantities = { 0 };
  reckon_quantities (run, &quantities);
  for (guint i = 0; i < run->job->n_rooms; i++)
    {
      const OxRoom *room = run->job->rooms[i];
      const double areas[N_AREAS]
          = { quantities.rooms[ALL][i], quantities.rooms[MACHINE][i], quantities.rooms[HAND][i] };
      add_row (block, run->job->units, &(Row){ ox_room_title (room), room->profile, areas, quantities.decimals });
    }
  add_row (block, run->job->units, &(Row){ _ ("Total"), NULL, quantities.sums, quantities.decimals });
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
      add_left_out (block, job->units, ox_naming_of (item->name, item->id), _ ("excluded from the scope"), item->ring);
    }
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      const OxObstacle *item = job->obstacles[i];
      if (item->kind != OX_OBSTACLE_SOLID)
        add_left_out (block, job->units, ox_naming_of (item->name, item->id),
                      item->kind == OX_OBSTACLE_MASKED ? _ ("masked, protected") : _ ("pit or opening"),
                      item->shape.ring);
    }
  return block;
}

/* what differs in parts of rooms: a profile of their own, further coats; what they share with the room is left blank */
static OxBlock *
conditions_block (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Condition area"), 0.42, OX_ALIGN_START },
                               { _ ("Profile"), 0.2, OX_ALIGN_START },
                               { _ ("Coats"), 0.18, OX_ALIGN_END },
                               { _ ("Area"), 0.2, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Condition areas"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < run->job->n_conditions; i++)
    {
      const OxCondition *item = run->job->conditions[i];
      g_autofree char *area = ox_measure_area (run->job->units, fabs (ox_ring_area (item->ring)));
      g_autofree char *coats = item->coats > 0 ? g_strdup_printf ("%u", item->coats) : g_strdup ("");
      ox_block_add_cells (block, FALSE, ox_naming_of (item->name, item->id), item->profile, coats, area, NULL);
    }
  return block;
}

/* --- Names and dimensions on the drawing --- */

/* names on the drawing */
typedef struct
{
  const OxPlot *plot;
  OxDrawingBuilder *builder;
  OxLabels *labels;
  OxBox floor; /* m */
  const OxJob *job;
} Page;

typedef struct
{
  double name_mm, detail_mm; /* 0: no detail */
} NameSize;

/* append_name: name, area and profile, one below another, about the middle of the room; smaller or shorter where there
 * is less room, and not at all where there is none: the table has them */
static void
append_name (const Page *page, const OxSheetRun *run, const Quantities *quantities, guint i)
{
  const OxPlot *plot = page->plot;
  OxDrawingBuilder *builder = page->builder;
  OxLabels *labels = page->labels;
  static const NameSize sizes[] = { { 3.5, 2.5 }, { 2.5, 1.8 }, { 2.5, 0 }, { 1.8, 0 } };
  const OxRoom *room = run->job->rooms[i];
  g_autoptr (OxRegion) region = ox_region_new_ring (room->ring);
  if (ox_region_is_empty (region))
    return;
  double radius;
  OxPoint middle = ox_region_label_point (region, &radius), at = ox_plot_to_page (plot, middle);
  g_autofree char *area = ox_measure_area_to (run->job->units, quantities->rooms[ALL][i], quantities->decimals);
  g_autofree char *detail
      = room->profile[0] != '\0' ? g_strdup_printf ("%s \xc2\xb7 %s", area, room->profile) : g_strdup (area);
  for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
    {
      NameSize size = sizes[k];
      double w = MAX (ox_text_width (ox_room_title (room), size.name_mm, TRUE),
                      size.detail_mm > 0 ? ox_text_width (detail, size.detail_mm, FALSE) : 0);
      double low = size.detail_mm > 0 ? size.detail_mm + 2.2 : 0.2;
      OxLabelBox box = { middle, 0, { -w / 2 - 1, -low - 0.8, w / 2 + 1, size.name_mm + 1.8 } };
      if (w > NAME_ROOM_SHARE * radius * plot->mm_per_m || !ox_labels_is_free (labels, &box))
        continue;
      ox_labels_take (labels, &box);
      OxTextLook name = { OX_STYLE_INK, size.name_mm, 0, OX_ALIGN_MIDDLE, FALSE, TRUE, 0.8, FALSE };
      OxTextLook quiet = { OX_STYLE_INK, size.detail_mm, 0, OX_ALIGN_MIDDLE, FALSE, FALSE, 0.8, FALSE };
      ox_drawing_builder_item (builder, room->id, 0);
      ox_drawing_builder_text (builder, name, (OxPoint){ at.x, at.y + 0.8 }, ox_room_title (room));
      if (size.detail_mm > 0)
        ox_drawing_builder_text (builder, quiet, (OxPoint){ at.x, at.y - low + 1 }, detail);
      ox_drawing_builder_item (builder, NULL, 0);
      return;
    }
}

/* append_small_name: of something in the floor, where it leaves room for it; @taken: (out): where */
static gboolean
append_small_name (const Page *page, const char *id, OxPoint middle, const char *text, OxLabelBox *taken)
{
  const OxPlot *plot = page->plot;
  OxTextLook look = { OX_STYLE_INK, 1.8, 0, OX_ALIGN_MIDDLE, FALSE, FALSE, 0.6, FALSE };
  double w = ox_text_width (text, look.height_mm, FALSE) / 2 + 0.8;
  /* A long name beside the outer wall would reach over the dimensions. */
  double from = page->floor.x0 + w / plot->mm_per_m, to = page->floor.x1 - w / plot->mm_per_m;
  middle.x = from < to ? CLAMP (middle.x, from, to) : middle.x;
  for (int k = 0; k < 7; k++)
    {
      /* In its middle, else a line or two above or below, else to its right or left. */
      double up = k < 5 ? (k % 2 ? 1 : -1) * ((k + 1) / 2) * 3.4 : 0, aside = k < 5 ? 0 : (k % 2 ? 1 : -1) * (w + 1.5);
      up -= look.height_mm / 2;
      OxLabelBox box = { middle, 0, { aside - w, up - 0.6, aside + w, up + look.height_mm + 0.6 } };
      OxPoint at = ox_plot_to_page (plot, middle);
      if (!ox_labels_is_free (page->labels, &box))
        continue;
      ox_labels_take (page->labels, &box);
      *taken = box;
      ox_drawing_builder_item (page->builder, id, 0);
      ox_drawing_builder_text (page->builder, look, (OxPoint){ at.x + aside, at.y + up }, text);
      ox_drawing_builder_item (page->builder, NULL, 0);
      return TRUE;
    }
  return FALSE;
}

/* take_outlines: what a name does not cover where it has room elsewhere: solids, and the @walls */
static void
take_outlines (const Page *page, gboolean walls)
{
  const OxJob *job = page->job;
  for (guint i = 0; i < job->n_obstacles; i++)
    {
      OxBox box = ox_ring_box (job->obstacles[i]->shape.ring);
      OxPoint middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
      double w = (box.x1 - box.x0) / 2 * page->plot->mm_per_m, h = (box.y1 - box.y0) / 2 * page->plot->mm_per_m;
      if (job->obstacles[i]->kind == OX_OBSTACLE_SOLID)
        ox_labels_take (page->labels, &(OxLabelBox){ middle, 0, { -w, -h, w, h } });
    }
  for (guint i = 0; walls && i < job->n_rooms; i++)
    for (guint k = 0; k < job->rooms[i]->ring->n; k++)
      {
        OxPoint a = job->rooms[i]->ring->points[k], b = job->rooms[i]->ring->points[(k + 1) % job->rooms[i]->ring->n];
        double length = ox_point_distance (a, b) * page->plot->mm_per_m;
        ox_labels_take (page->labels,
                        &(OxLabelBox){ a, atan2 (b.y - a.y, b.x - a.x), { 0, -WALL_MM, length, WALL_MM } });
      }
}

/* append_beside: beside what it names, of which @box is the place, and beside walls and solids; then over walls; on
 * them all where there is no other place */
static void
append_beside (const Page *page, const char *id, const OxLabelBox *box, const char *text)
{
  OxLabelBox taken;
  guint before = ox_labels_get_count (page->labels);
  for (int walls = 1; walls >= 0; walls--)
    {
      ox_labels_take (page->labels, box);
      take_outlines (page, walls);
      gboolean found = append_small_name (page, id, box->at, text, &taken);
      ox_labels_keep (page->labels, before);
      if (!found)
        continue;
      /* Dimensions may still stand on the outlines. */
      ox_labels_take (page->labels, box);
      ox_labels_take (page->labels, &taken);
      return;
    }
  (void) append_small_name (page, id, box->at, text, &taken);
}

/* append_doorway_name: name and clear width beside the doorway, so that it is seen itself */
static void
append_doorway_name (const Page *page, OxUnits units, const OxDoorway *doorway)
{
  double length = ox_point_distance (doorway->a, doorway->b), w = length / 2 * page->plot->mm_per_m;
  double h = doorway->depth / 2 * page->plot->mm_per_m;
  g_autofree char *width = ox_units_length_text (units, length, FALSE);
  g_autofree char *text = g_strdup_printf ("%s %s", ox_naming_of (doorway->name, doorway->id), width);
  OxPoint middle = ox_point_scale (ox_point_add (doorway->a, doorway->b), 0.5);
  OxLabelBox box = { middle, atan2 (doorway->b.y - doorway->a.y, doorway->b.x - doorway->a.x), { -w, -h, w, h } };
  append_beside (page, doorway->id, &box, text);
}

/* append_ring_name: in an area that is large enough to be seen around its name, else beside it */
static void
append_ring_name (const Page *page, const char *id, const char *name, const OxRing *ring)
{
  g_autoptr (OxRegion) region = ox_region_new_ring (ring);
  if (ox_region_is_empty (region))
    return;
  const char *text = ox_naming_of (name, id);
  OxBox box = ox_ring_box (ring);
  double w = (box.x1 - box.x0) / 2 * page->plot->mm_per_m, h = (box.y1 - box.y0) / 2 * page->plot->mm_per_m;
  OxLabelBox taken, place = { { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 }, 0, { -w, -h, w, h } };
  if (2 * w > ox_text_width (text, OX_TEXT_MIN_MM, FALSE) + SEEN_MM && 2 * h > OX_TEXT_MIN_MM + SEEN_MM)
    (void) append_small_name (page, id, ox_region_label_point (region, NULL), text, &taken);
  else
    append_beside (page, id, &place, text);
}

/* append_names: rooms; excluded, masked and condition areas, pits, and doorways with their clear width */
static void
append_names (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  const OxJob *job = run->job;
  const Page page = { plot, builder, labels, ox_job_box (job), job };
  g_auto (Quantities) quantities = { 0 };
  reckon_quantities (run, &quantities);
  for (guint i = 0; i < job->n_rooms; i++)
    append_name (&page, run, &quantities, i);
  for (guint i = 0; i < job->n_excluded; i++)
    append_ring_name (&page, job->excluded[i]->id, job->excluded[i]->name, job->excluded[i]->ring);
  for (guint i = 0; i < job->n_obstacles; i++)
    if (job->obstacles[i]->kind != OX_OBSTACLE_SOLID)
      append_ring_name (&page, job->obstacles[i]->id, job->obstacles[i]->name, job->obstacles[i]->shape.ring);
  for (guint i = 0; i < job->n_conditions; i++)
    append_ring_name (&page, job->conditions[i]->id, job->conditions[i]->name, job->conditions[i]->ring);
  for (guint i = 0; i < job->n_doorways; i++)
    append_doorway_name (&page, job->units, job->doorways[i]);
}

/* --- The sheet --- */

static GPtrArray *
gather_blocks (const OxSheetRun *run, const OxDrawing *floor)
{
  GPtrArray *blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  if (run->contents || run->contents_lines > 0)
    g_ptr_array_add (blocks, ox_contents_new (run));
  g_ptr_array_add (blocks, quantities_block (run));
  g_ptr_array_add (blocks, conditions_block (run));
  g_ptr_array_add (blocks, left_out_block (run));
  g_ptr_array_add (blocks, ox_legend_new (run, floor, floor)); /* belongs to the drawing more than what follows */
  g_ptr_array_add (blocks, ox_agreed_revisions_new (run));
  g_ptr_array_add (blocks, ox_agreed_lines_new (run, OX_SCOPE_INCLUDED));
  g_ptr_array_add (blocks, ox_agreed_lines_new (run, OX_SCOPE_EXCLUDED));
  g_ptr_array_add (blocks, ox_agreed_lines_new (run, OX_SCOPE_ASSUMED));
  g_ptr_array_add (blocks, ox_agreed_sign_off_new (run));
  return blocks;
}

/* find_scale: among several sheets, one that has no room at the scale asked for takes the largest that fits, and says
 * so */
static gboolean
find_scale (const OxSheetRun *run, const OxFlow *flow, OxPlot *plot, GError **error)
{
  OxSheetRun automatic = *run;
  if (!run->several || run->asked.denominator <= 0)
    return ox_plot_new (run, flow, ox_chains_around (run->job), plot, error);
  if (ox_plot_new (run, flow, ox_chains_around (run->job), plot, NULL))
    return TRUE;
  automatic.asked = (OxScale){ 0, NULL };
  if (!ox_plot_new (&automatic, flow, ox_chains_around (run->job), plot, error))
    return FALSE;
  plot->refused = run->asked;
  return TRUE;
}

/* make_plot: blocks that find no room beside the floor may stand below it */
static gboolean
make_plot (const OxSheetRun *run, const OxFlow *flow, OxPlot *plot, GError **error)
{
  OxFlow trial = *flow;
  if (!find_scale (run, flow, plot, error))
    return FALSE;
  if (!ox_flow_tighten (&trial, plot->slots, plot->n_slots))
    ox_plot_use_below (plot, run, flow, ox_chains_around (run->job));
  return TRUE;
}

gboolean
ox_scope_append (OxSheetRun *run, GError **error)
{
  const OxFloorLayers layers = OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_TO_PREPARE | OX_FLOOR_EDGE_WORK;
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (run->job, run->plan, layers, 1, NULL);
  g_autoptr (GPtrArray) blocks = gather_blocks (run, floor);
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  OxPlot plot;
  if (!make_plot (run, &flow, &plot, error))
    return FALSE;
  g_autofree char *scale = ox_scale_text (plot.scale);
  const char *kind = _ ("Scope drawing");
  const char *description
      = _ ("What is prepared to which profile, what is left out, what is edge work, with dimensions and quantities.");
  OxDraft *draft = ox_sheet_run_add (run, kind, description, scale);
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  ox_plot_append (&plot, run, draft->builder, floor);
  g_autoptr (OxChains) chains = ox_chains_append (run, &plot, draft->builder, labels);
  ox_drawing_builder_layer (draft->builder, "names", _ ("Names"));
  append_names (run, &plot, draft->builder, labels);
  ox_chains_append_sides (chains, run, &plot, draft->builder, labels);
  ox_drawing_builder_layer (draft->builder, "tables", _ ("Tables and notes"));
  (void) ox_flow_tighten (&flow, plot.slots, plot.n_slots);
  if (!ox_flow_fill (&flow, draft->builder, plot.slots, plot.n_slots))
    ox_flow_finish (&flow, run, kind, description);
  return TRUE;
}
