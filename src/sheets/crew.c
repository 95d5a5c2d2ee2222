/* Oxturn: sheets/crew - the crew drawing: what a crew follows on the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/crew.h"
#include "base/number.h"
#include "base/words.h"
#include "record/progress.h"
#include "sheets/cautions.h"
#include "sheets/draft.h"
#include "sheets/floor.h"
#include "sheets/measure.h"
#include "sheets/naming.h"
#include "sheets/picture.h"
#include "sheets/split.h"
#include "sheets/tags.h"

#define MOST_WRAPS_NAMED 8 /* strips in a caution */
#define ROUGH_MM_PER_M 20  /* at which all middles of strips are drawn */

/* Where to begin; (transfer full) */
static char *
start_text (const OxPlan *plan)
{
  guint first = ox_picture_first_left (plan);
  if (first == 0)
    return g_strdup (_ ("Start at strip 1, at the flag. Follow the numbers; arrows stand where a strip stops."));
  if (first == plan->n_strips)
    return g_strdup (_ ("All strips are done."));
  return g_strdup_printf (_ ("Go on at strip %u, at the flag; what is done is hatched. Follow the numbers; arrows "
                             "stand where a strip stops."),
                          first + 1);
}

/* Strips, edge areas and hours: all, or what is left once something is done; (transfer full) */
static char *
amount_text (const OxPlan *plan)
{
  if (ox_record_is_empty (plan->job->record))
    {
      g_autofree char *hours = ox_measure_number (plan->totals.labour_hours, 1);
      return g_strdup_printf (ox_words_count ("%u strip and %u edge areas: about %s hours, edge work counted.",
                                              "%u strips and %u edge areas: about %s hours, edge work counted.",
                                              plan->totals.strips),
                              plan->totals.strips, plan->n_edges, hours);
    }
  g_autoptr (OxProgress) progress = ox_progress_new (plan);
  g_autofree char *hours = ox_measure_number (ox_progress_hours (&progress->left), 1);
  return g_strdup_printf (ox_words_count ("Left: %u strip and %u edge areas, about %s hours, edge work counted.",
                                          "Left: %u strips and %u edge areas, about %s hours, edge work counted.",
                                          progress->left.strips),
                          progress->left.strips, progress->left.edges, hours);
}

OxBlock *
ox_crew_order_new (const OxSheetRun *run)
{
  const OxMachine *machine = run->job->machine;
  OxUnits units = run->job->units;
  OxBlock *block = ox_block_new (_ ("Order of work"), run->form.block_mm, run->form.body_mm);
  g_autofree char *speed = ox_measure_speed (units, machine->travel_speed);
  g_autofree char *width = ox_units_length_text (units, machine->blast_width, TRUE);
  g_autofree char *overlap = ox_units_length_text (units, machine->min_overlap, TRUE);
  g_autofree char *settings
      = g_strdup_printf (_ ("%s at %s, blast width %s, overlap %s or more."), _ (machine->name), speed, width, overlap);
  g_autofree char *start = start_text (run->plan);
  g_autofree char *amount = amount_text (run->plan);
  const char *const steps[] = {
    _ ("Snap the chalk lines from the base walls. The middle of the pattern follows them."), start,  settings,
    _ ("Open the valve as the machine starts to roll, close it before it stands."),          amount,
  };
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      g_autofree char *mark = g_strdup_printf ("%u", i + 1);
      ox_block_add_text (block, mark, steps[i]);
    }
  return block;
}

static char *
degrees_text (const OxStrip *strip)
{
  double turn = strip->heading * 180 / G_PI;
  return ox_words_number (turn < -1e-9 ? turn + 360 : turn, 1);
}

/* field_heading: "90°", of a field that is walked both ways "90/270°", that of its first strip first; (transfer full) */
static char *
field_heading (const OxStrip *first, guint n)
{
  g_autofree char *one = degrees_text (first);
  for (guint i = 1; i < n; i++)
    {
      g_autofree char *other = degrees_text (first + i);
      if (fabs (remainder (first[i].heading - first->heading, 2 * G_PI)) > G_PI / 2)
        return g_strdup_printf ("%s/%s\xc2\xb0", one, other);
    }
  return g_strconcat (one, "\xc2\xb0", NULL);
}

OxBlock *
ox_crew_fields_new (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Strips"), 0.21, OX_ALIGN_START },
                               { _ ("Room"), 0.26, OX_ALIGN_START },
                               { _ ("Heading"), 0.16, OX_ALIGN_END },
                               { C_ ("head of a column", "Done"), 0.11, OX_ALIGN_START },
                               { C_ ("head of a column", "Date"), 0.13, OX_ALIGN_START },
                               { C_ ("head of a column", "Init."), 0.13, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (_ ("Fields in order"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_set_by_hand (block, 3);
  const OxPlan *plan = run->plan;
  gboolean crosswise = FALSE;
  for (guint i = 0, end; i < plan->n_strips; i = end)
    {
      const OxStrip *first = &plan->strips[i];
      for (end = i + 1; end < plan->n_strips && ox_picture_is_same_field (first, &plan->strips[end]);)
        end++;
      const char *cross = first->kind == OX_STRIP_CROSSWISE ? "\xc2\xa0\xc3\x97" : ""; /* held together */
      g_autofree char *strips
          = end - i > 1 ? g_strdup_printf ("%u\xe2\x80\x93%u%s", first->order, plan->strips[end - 1].order, cross)
                        : g_strdup_printf ("%u%s", first->order, cross);
      g_autofree char *heading = field_heading (first, end - i);
      crosswise |= first->kind == OX_STRIP_CROSSWISE;
      g_autofree char *room = ox_plan_coat_text (run->plan, first->room, first->coat);
      ox_block_add_cells (block, FALSE, strips, room, heading, "", "", "", NULL);
    }
  if (crosswise)
    ox_block_add_text (block, "\xc3\x97", _ ("A crosswise strip."));
  return block;
}

/* side_text: where a side of a room lies, as one looks at the sheet */
static const char *
side_text (const OxRoom *room, guint side)
{
  OxPoint a = room->ring->points[side], b = room->ring->points[(side + 1) % room->ring->n];
  double sign = ox_ring_area (room->ring) >= 0 ? 1 : -1;
  OxPoint out = { (b.y - a.y) * sign, (a.x - b.x) * sign };
  if (fabs (out.x) > fabs (out.y))
    return out.x < 0 ? C_ ("side of a room", "left") : C_ ("side of a room", "right");
  return out.y < 0 ? C_ ("side of a room", "bottom") : C_ ("side of a room", "top");
}

OxBlock *
ox_crew_chalk_new (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Room"), 0.2, OX_ALIGN_START },   { _ ("Base wall"), 0.2, OX_ALIGN_START },
                               { _ ("Heading"), 0.14, OX_ALIGN_END }, { _ ("Lane 1 at"), 0.17, OX_ALIGN_END },
                               { _ ("Spacing"), 0.17, OX_ALIGN_END }, { _ ("Lanes"), 0.11, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Chalk lines, from the base wall"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < run->plan->n_chalks; i++)
    {
      const OxChalk *chalk = &run->plan->chalks[i];
      const OxRoom *room = run->job->rooms[chalk->room];
      g_autofree char *degrees = ox_words_number (chalk->heading * 180 / G_PI, 1);
      g_autofree char *heading = g_strconcat (degrees, "\xc2\xb0", NULL);
      g_autofree char *first = ox_units_length_text (run->job->units, chalk->first_distance, TRUE);
      g_autofree char *spacing
          = chalk->lanes > 1 ? ox_units_length_text (run->job->units, chalk->spacing, TRUE) : g_strdup ("\xe2\x80\x93");
      g_autofree char *lanes = g_strdup_printf ("%u", chalk->lanes);
      g_autofree char *name = ox_plan_coat_text (run->plan, chalk->room, chalk->coat);
      ox_block_add_cells (block, FALSE, name, side_text (room, chalk->base_side), heading, first, spacing, lanes, NULL);
    }
  return block;
}

static const char *
cause_text (OxCause cause)
{
  switch (cause)
    {
    case OX_CAUSE_CORNER:
      return _ ("corner");
    case OX_CAUSE_OBSTACLE:
      return _ ("at an obstacle");
    case OX_CAUSE_DROP:
      return _ ("at a drop");
    case OX_CAUSE_NARROW:
      return _ ("too narrow");
    case OX_CAUSE_REACH:
      return _ ("out of reach");
    case OX_CAUSE_WALL:
    default:
      return _ ("along a wall");
    }
}

/* add_edge: a row of the table; a row with the name of its room stands before the first area of each */
static void
add_edge (const OxSheetRun *run, OxBlock *block, const OxEdge *edge, guint *room)
{
  if (run->job->n_rooms > 1 && *room != edge->room)
    ox_block_add_group (block, ox_room_title (run->job->rooms[edge->room]));
  *room = edge->room;
  g_autofree char *area = ox_measure_area (run->job->units, edge->area);
  g_autofree char *length = ox_measure_length (run->job->units, edge->length);
  ox_block_add_cells (block, FALSE, edge->id, cause_text (edge->cause), area, length, "", "", "", NULL);
}

OxBlock *
ox_edge_table_new_some (const OxSheetRun *run, const char *title, const guint *which, guint n)
{
  const OxColumn columns[] = { { _ ("Id"), 0.09, OX_ALIGN_START },
                               { _ ("Cause"), 0.24, OX_ALIGN_START },
                               { _ ("Area"), 0.15, OX_ALIGN_END },
                               { _ ("Length"), 0.17, OX_ALIGN_END },
                               { C_ ("head of a column", "Done"), 0.11, OX_ALIGN_START },
                               { C_ ("head of a column", "Date"), 0.13, OX_ALIGN_START },
                               { C_ ("head of a column", "Init."), 0.11, OX_ALIGN_START } };
  OxBlock *block = ox_block_new (title, run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  ox_block_set_by_hand (block, 3);
  guint room = G_MAXUINT;
  for (guint i = 0; i < n; i++)
    add_edge (run, block, &run->plan->edges[which != NULL ? which[i] : i], &room);
  return block;
}

OxBlock *
ox_edge_table_new (const OxSheetRun *run)
{
  OxBlock *block = ox_edge_table_new_some (run, _ ("Edge work"), NULL, run->plan->n_edges);
  g_autofree char *sum = ox_measure_area (run->job->units, run->plan->totals.edge_m2);
  if (run->plan->n_edges > 0)
    ox_block_add_cells (block, TRUE, "", _ ("Total"), sum, "", "", "", "", NULL);
  return block;
}

/* add_station: a row of the table; what it serves and how long its hose or cord must be for that, in the plan */
static void
add_station (const OxSheetRun *run, OxBlock *block, const OxPlanStation *station)
{
  const char *name = station->proposed ? station->id : ox_naming_station (run->job, station->id);
  gboolean collector = station->kind == OX_STATION_COLLECTOR;
  g_autofree char *proposed = g_strdup_printf (_ ("%s, proposed"), name);
  g_autofree char *length = ox_units_length_text (run->job->units, station->length, TRUE);
  g_autofree char *farthest = ox_measure_length (run->job->units, station->farthest_m);
  g_autofree char *strips = g_strdup_printf ("%u", station->strips);
  ox_block_add_cells (block, FALSE, station->proposed ? proposed : name,
                      collector ? _ ("collector hose") : _ ("power cord"), length, strips,
                      station->strips > 0 ? farthest : "\xe2\x80\x93", NULL);
}

OxBlock *
ox_crew_stations_new (const OxSheetRun *run)
{
  const OxColumn columns[] = { { _ ("Station"), 0.3, OX_ALIGN_START },
                               { _ ("Kind"), 0.24, OX_ALIGN_START },
                               { _ ("Length"), 0.16, OX_ALIGN_END },
                               { _ ("Strips"), 0.13, OX_ALIGN_END },
                               { _ ("Farthest"), 0.17, OX_ALIGN_END } };
  OxBlock *block = ox_block_new (_ ("Stations"), run->form.block_mm, run->form.body_mm);
  ox_block_set_columns (block, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < run->plan->n_stations; i++)
    add_station (run, block, &run->plan->stations[i]);
  return block;
}

void
ox_crew_add_untagged (OxBlock *block, guint untagged)
{
  if (untagged > 0)
    {
      g_autofree char *text = g_strdup_printf (
          ox_words_count ("%u edge area has no tag on the drawing, only a line in the table.",
                          "%u edge areas have no tag on the drawing, only a line in the table.", untagged),
          untagged);
      ox_block_add_text (block, "\xe2\x80\xa2", text);
    }
}

/* add_wraps: where hose or cord is to be freed; the first few by number, all have a mark on the drawing */
static void
add_wraps (OxBlock *block, const OxPlan *plan)
{
  g_autoptr (GString) numbers = g_string_new (NULL);
  guint n = 0;
  for (guint i = 0; i < plan->n_strips && plan->totals.wraps > 0; i++)
    {
      if (!plan->strips[i].hose_wraps && !plan->strips[i].cord_wraps)
        continue;
      if (n < MOST_WRAPS_NAMED)
        g_string_append_printf (numbers, n > 0 ? ", %u" : "%u", plan->strips[i].order);
      n++;
    }
  if (n == 0)
    return;
  if (n > MOST_WRAPS_NAMED)
    g_string_append (numbers, " \xe2\x80\xa6");
  g_autofree char *text = g_strdup_printf (
      _ ("Hose or cord wraps round a solid in strips %s, marked at their stop: free it there."), numbers->str);
  ox_block_add_text (block, "!", text);
}

void
ox_crew_add_unnumbered (OxBlock *block, const OxPlan *plan, const OxDrawing *floor)
{
  guint numbers = 0;
  for (guint i = 0; i < floor->n_elements; i++)
    numbers += floor->elements[i].kind == OX_ELEMENT_TEXT
               && g_str_equal (floor->layers[floor->elements[i].layer].id, "numbers");
  if (numbers >= plan->n_strips)
    return;
  guint n = plan->n_strips - numbers;
  g_autofree char *text
      = g_strdup_printf (ox_words_count ("%u strip has no number on the drawing, for want of room: its place in the "
                                         "order is that between its neighbours.",
                                         "%u strips have no number on the drawing, for want of room: the ends of fields "
                                         "are numbered first, then every tenth, every fifth, every strip.",
                                         n),
                         n);
  ox_block_add_text (block, "\xe2\x80\xa2", text);
}

OxBlock *
ox_crew_cautions_new (const OxSheetRun *run, guint untagged, gboolean brief)
{
  OxBlock *block = ox_block_new (_ ("Cautions"), run->form.block_mm, run->form.body_mm);
  ox_cautions_add (block, run->estimate, OX_CAUTIONS_BRIEF);
  g_autofree char *tag = ox_cautions_tag ("drop", run->estimate);
  if (*tag != '\0')
    {
      g_autofree char *text
          = g_strdup_printf (_ ("%s on the drawing: the caution of that number applies there."), g_strstrip (tag));
      ox_block_add_text (block, "\xe2\x80\xa2", text);
    }
  if (run->plan->totals.out_of_reach > 0)
    {
      g_autofree char *text = g_strdup_printf (
          ox_words_count (
              "%u strip is out of reach of every station and hatched: set up a proposed station, or take a longer hose and cord.",
              "%u strips are out of reach of every station and hatched: set up proposed stations, or take a longer hose and cord.",
              run->plan->totals.out_of_reach),
          run->plan->totals.out_of_reach);
      ox_block_add_text (block, "!", text);
    }
  add_wraps (block, run->plan);
  ox_crew_add_untagged (block, untagged);
  if (brief)
    ox_block_add_text (block, "\xe2\x80\xa2", _ ("All edge areas are listed in the schedule."));
  return block;
}

/* what the blocks say of the drawing beside them */
typedef struct
{
  const OxDrawing *floor, *beside; /* @beside: (nullable): NULL: not drawn yet */
  guint untagged;                  /* edge areas */
  gboolean brief;                  /* without the table of edge work, which the schedule has */
} Shown;

/* (transfer full) */
static GPtrArray *
gather_blocks (const OxSheetRun *run, const Shown *shown)
{
  GPtrArray *blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_block_free);
  OxBlock *order = ox_crew_order_new (run);
  ox_crew_add_unnumbered (order, run->plan, shown->floor);
  g_ptr_array_add (blocks, order);
  g_ptr_array_add (blocks, ox_crew_cautions_new (run, shown->untagged, shown->brief));
  g_ptr_array_add (blocks, ox_crew_chalk_new (run));
  g_ptr_array_add (blocks, ox_crew_stations_new (run));
  /* The page may not hold all of them, and the legend belongs to the drawing more than these do. */
  g_ptr_array_insert (blocks, 2, ox_legend_new (run, shown->floor, shown->beside));
  if (!shown->brief)
    g_ptr_array_add (blocks, ox_edge_table_new (run));
  g_ptr_array_add (blocks, ox_crew_fields_new (run));
  return blocks;
}

/* try_page: FALSE where the floor does not fit; @holds: (out): whether the page has room for all blocks */
static gboolean
try_page (const OxSheetRun *run, GPtrArray *blocks, OxPlot *plot, gboolean *holds, GError **error)
{
  const OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  OxFlow trial = flow;
  if (!ox_plot_new (run, &flow, OX_CREW_AROUND, plot, error))
    return FALSE;
  *holds = ox_flow_tighten (&trial, plot->slots, plot->n_slots);
  if (!*holds)
    {
      ox_plot_use_below (plot, run, &flow, OX_CREW_AROUND);
      trial = flow;
      *holds = ox_flow_tighten (&trial, plot->slots, plot->n_slots);
    }
  return TRUE;
}

OxDrawing *
ox_crew_rough_new (const OxSheetRun *run)
{
  const OxFloorPart all = { OX_CREW_LAYERS, ROUGH_MM_PER_M, OX_FLOOR_WHOLE, run->reach, run->form.body_mm };
  return ox_floor_picture_new_part (run->job, run->plan, &all, NULL);
}

/* divide_page: by blocks as long as they will be; what they say of the legend and of tags comes later. @brief: (out):
 * whether the page is too full for the table of edge work and another has it */
static gboolean
divide_page (const OxSheetRun *run, OxPlot *plot, gboolean *brief, GError **error)
{
  g_autoptr (OxDrawing) rough = ox_crew_rough_new (run);
  Shown shown = { rough, NULL, run->plan->n_edges, FALSE };
  g_autoptr (GPtrArray) blocks = gather_blocks (run, &shown);
  gboolean holds;
  if (!try_page (run, blocks, plot, &holds, error))
    return FALSE;
  *brief = run->has_schedule && !holds;
  if (!*brief)
    return TRUE;
  shown.brief = TRUE;
  g_autoptr (GPtrArray) fewer = gather_blocks (run, &shown);
  return try_page (run, fewer, plot, &holds, error);
}

guint
ox_crew_append_tags (const OxSheetRun *run, const OxPlot *plot, OxDrawingBuilder *builder, OxLabels *labels)
{
  ox_drawing_builder_layer (builder, "tags", _ ("Tags"));
  ox_tags_take_wraps (run, labels);
  ox_tags_append_checks (run, plot, builder, labels);
  ox_tags_append_stations (run, plot, builder, labels, TRUE);
  ox_tags_append_sides (run, plot, builder, labels);
  guint untagged = ox_tags_append_edges (run, plot, builder, labels);
  ox_tags_append_pits (run, plot, builder, labels);
  return untagged;
}

gboolean
ox_crew_append (OxSheetRun *run, GError **error)
{
  const char *kind = _ ("Crew drawing");
  const char *description
      = _ ("Numbered strips with their directions, turnaround zones, edge work, stations and the order of work.");
  OxPlot plot;
  gboolean brief;
  if (ox_split_is_needed (run))
    return ox_split_append (run, kind, error);
  if (!divide_page (run, &plot, &brief, error))
    return FALSE;
  g_autofree char *scale = ox_scale_text (plot.scale);
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  OxDrawingBuilder *tags = ox_drawing_builder_new ();
  guint untagged = ox_crew_append_tags (run, &plot, tags, labels);
  g_autoptr (OxDrawing) beside = ox_drawing_builder_end (tags);
  const OxFloorPart all = { OX_CREW_LAYERS, plot.mm_per_m, OX_FLOOR_WHOLE, run->reach, run->form.body_mm };
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_part (run->job, run->plan, &all, labels);
  OxDraft *draft = ox_sheet_run_add (run, kind, description, scale);
  ox_plot_append (&plot, run, draft->builder, floor);
  ox_drawing_builder_drawing (draft->builder, beside);
  ox_drawing_builder_layer (draft->builder, "tags", _ ("Tags"));
  ox_tags_append_check_names (run, &plot, draft->builder, labels);
  ox_tags_append_reach (run, &plot, draft->builder, labels);
  g_autoptr (GPtrArray) blocks = gather_blocks (run, &(Shown){ floor, beside, untagged, brief });
  OxFlow flow = { blocks, 0, 0, FALSE, OX_BLOCK_GAP_MM };
  ox_drawing_builder_item (draft->builder, NULL, 0);
  ox_drawing_builder_layer (draft->builder, "tables", _ ("Tables and notes"));
  (void) ox_flow_tighten (&flow, plot.slots, plot.n_slots);
  if (!ox_flow_fill (&flow, draft->builder, plot.slots, plot.n_slots))
    ox_flow_finish (&flow, run, kind, description);
  return TRUE;
}
