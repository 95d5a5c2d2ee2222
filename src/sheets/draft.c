/* Oxturn: sheets/draft - pages in the making, the flow of blocks, the plot of a floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/draft.h"
#include "base/words.h"
#include "sheets/dimension.h"
#include "sheets/floor.h"

#define PAD_MM 4.0
#define LEAST_ROWS 3      /* of a block that is split */
#define LEAST_TAIL 2      /* rows that such a block leaves: a sum is not parted from all that it sums */
#define BAR_STRIP_MM 17.0 /* below the floor, for scale bar and north arrow */
#define NORTH_MM 2.0      /* of the north arrow, over that strip */
#define LEAST_BLOCK_GAP_MM 2.2
#define LEAST_GAP_MM 3.0   /* between columns of blocks below the floor */
#define LEAST_BAND_MM 24.0 /* a lower one holds nothing worth it */
#define BAND_STEP_MM 3.0
#define MOST_BAND_SHARE 0.4 /* of a page that shows a part of the floor */

OxDraft *
ox_sheet_run_add (OxSheetRun *run, const char *kind, const char *description, const char *scale)
{
  OxDraft draft = { ox_drawing_builder_new (), g_strdup (kind), g_strdup (description), g_strdup (scale), run->form };
  g_array_append_val (run->drafts, draft);
  return &g_array_index (run->drafts, OxDraft, run->drafts->len - 1);
}

/* --- Flow --- */

/* place_foot: the foot of the blocks, if there is one and it is not placed yet, at the bottom of @slot, which gets so
 * much shorter */
static void
place_foot (OxFlow *flow, OxDrawingBuilder *builder, OxSlot *slot)
{
  for (guint i = 0; i < flow->blocks->len && !flow->has_foot; i++)
    {
      const OxBlock *block = g_ptr_array_index (flow->blocks, i);
      double used;
      guint n = ox_block_get_n_rows (block);
      if (!ox_block_is_foot (block) || ox_block_fit (block, 0, slot->top - slot->bottom, &used) < n)
        continue;
      if (builder != NULL)
        ox_block_append (block, builder, (OxPoint){ slot->x, slot->bottom + used }, 0, n);
      slot->bottom += used + flow->gap_mm;
      flow->has_foot = TRUE;
    }
}

/* fit_fewer: rows of a block that is split, short of the @n that would fit, so that what is left is more than one; @n
 * where that would be too few here */
static guint
fit_fewer (const OxBlock *block, guint from, guint n, double used)
{
  double less;
  guint fewer = ox_block_fit (block, from, used - 0.01, &less);
  return fewer >= LEAST_ROWS ? fewer : n;
}

/* fill_slot: places blocks from the top down to where the next one does not fit; FALSE when nothing is left */
static gboolean
fill_slot (OxFlow *flow, OxDrawingBuilder *builder, OxSlot slot)
{
  double y = slot.top;
  for (; flow->block < flow->blocks->len; flow->block++, flow->row = 0)
    {
      const OxBlock *block = g_ptr_array_index (flow->blocks, flow->block);
      guint rest = ox_block_get_n_rows (block) - flow->row;
      if (rest == 0 || (flow->has_foot && ox_block_is_foot (block)))
        continue;
      double used;
      guint n = ox_block_fit (block, flow->row, y - slot.bottom, &used);
      if (n < rest && rest - n < LEAST_TAIL)
        n = fit_fewer (block, flow->row, n, used);
      gboolean whole = ox_block_is_foot (block) || (y < slot.top && (n < LEAST_ROWS || ox_block_is_form (block)));
      if (n == 0 || (n < rest && whole))
        return TRUE;
      if (builder != NULL)
        ox_block_append (block, builder, (OxPoint){ slot.x, y }, flow->row, n);
      y -= used + flow->gap_mm;
      flow->row += n;
      if (n < rest)
        return TRUE;
    }
  return FALSE;
}

gboolean
ox_flow_fill (OxFlow *flow, OxDrawingBuilder *builder, const OxSlot *slots, guint n)
{
  if (n == 0)
    return FALSE;
  OxSlot last = slots[n - 1];
  place_foot (flow, builder, &last);
  for (guint i = 0; i < n; i++)
    if (!fill_slot (flow, builder, i + 1 == n ? last : slots[i]))
      return TRUE;
  return FALSE;
}

gboolean
ox_flow_tighten (OxFlow *flow, const OxSlot *slots, guint n)
{
  static const double gaps_mm[] = { OX_BLOCK_GAP_MM, 4, 3, LEAST_BLOCK_GAP_MM };
  for (guint i = 0; i < G_N_ELEMENTS (gaps_mm); i++)
    {
      OxFlow trial = *flow;
      trial.gap_mm = gaps_mm[i];
      if (!ox_flow_fill (&trial, NULL, slots, n))
        continue;
      flow->gap_mm = gaps_mm[i];
      return TRUE;
    }
  return FALSE;
}

void
ox_flow_finish (OxFlow *flow, OxSheetRun *run, const char *kind, const char *description)
{
  g_autofree OxSlot *slots = ox_form_get_slots (&run->form);
  while (flow->block < flow->blocks->len)
    {
      OxDraft *draft = ox_sheet_run_add (run, kind, description, "");
      ox_drawing_builder_layer (draft->builder, "tables", _ ("Tables and notes"));
      guint block = flow->block, row = flow->row;
      (void) ox_flow_tighten (flow, slots, run->form.n_columns);
      if (ox_flow_fill (flow, draft->builder, slots, run->form.n_columns))
        return;
      /* A row that is higher than an empty page would be tried for ever. */
      if (block == flow->block && row == flow->row)
        return;
    }
}

/* --- Plot --- */

static void
set_band (OxPlot *plot, const OxForm *form, double height)
{
  double top = form->title.y1 + height;
  plot->area = (OxBox){ form->frame.x0, top, form->frame.x1, form->frame.y1 };
  plot->n_slots = height > 0 ? MIN (form->n_columns, G_N_ELEMENTS (plot->slots)) : 0;
  for (guint i = 0; i < plot->n_slots; i++)
    plot->slots[i] = (OxSlot){ ox_form_get_slot_x (form, i), top - PAD_MM, form->title.y1 + PAD_MM };
}

/* set_beside: upright paper has the blocks below the drawing, other paper beside it */
static void
set_beside (OxPlot *plot, const OxForm *form)
{
  plot->area = (OxBox){ form->frame.x0, form->frame.y0, form->title.x0, form->frame.y1 };
  plot->n_slots = 1;
  plot->slots[0]
      = (OxSlot){ ox_form_get_slot_x (form, form->n_columns - 1), form->frame.y1 - PAD_MM, form->title.y1 + PAD_MM };
}

/* free_mm: width and height that the area has for the floor itself */
static void
free_mm (const OxPlot *plot, OxAround around, double mm[2])
{
  mm[0] = plot->area.x1 - plot->area.x0 - around.left - around.right;
  mm[1] = plot->area.y1 - plot->area.y0 - around.below - around.above - BAR_STRIP_MM;
}

/* centre: puts the middle of @box, m of floor, into the middle of what is free */
static void
centre (OxPlot *plot, OxAround around, OxBox box)
{
  OxBox area = plot->area;
  OxPoint middle = { (area.x0 + around.left + area.x1 - around.right) / 2,
                     (area.y0 + BAR_STRIP_MM + around.below + area.y1 - around.above) / 2 };
  OxPoint of_box = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  plot->origin = ox_point_sub (middle, ox_point_scale (of_box, plot->mm_per_m));
}

/* drawing_height: what the floor takes upright at the scale asked for, or at the largest that the whole page has room
 * for */
static double
drawing_height (const OxSheetRun *run, const OxPlot *plot, const double metres[2], OxAround around)
{
  double mm[2];
  free_mm (plot, around, mm);
  OxScale scale = run->asked.denominator > 0 ? run->asked : ox_scale_fit (run->job->units, metres, mm);
  return metres[1] * 1000 / scale.denominator + around.below + around.above + BAR_STRIP_MM;
}

/* divide: how the page is parted into drawing and blocks. Upright, the drawing comes first: blocks get as low a band as
 * holds them all, or what the drawing at its largest scale leaves of the page */
static void
divide (OxPlot *plot, const OxSheetRun *run, const OxFlow *flow, const double metres[2], OxAround around)
{
  const OxForm *form = &run->form;
  if (!form->upright)
    {
      set_beside (plot, form);
      return;
    }
  set_band (plot, form, 0);
  double most = plot->area.y1 - plot->area.y0 - drawing_height (run, plot, metres, around);
  for (double height = LEAST_BAND_MM; height <= most; height += BAND_STEP_MM)
    {
      OxFlow trial = *flow;
      set_band (plot, form, height);
      if (ox_flow_fill (&trial, NULL, plot->slots, plot->n_slots))
        return;
    }
  if (most >= LEAST_BAND_MM)
    set_band (plot, form, most);
}

void
ox_plot_divide_part (const OxSheetRun *run, const OxFlow *flow, OxAround around, OxPlot *out, double mm[2])
{
  const OxForm *form = &run->form;
  OxPlot plot = { .shown = OX_FLOOR_WHOLE };
  if (form->upright)
    {
      double most = (form->frame.y1 - form->title.y1) * MOST_BAND_SHARE;
      for (double height = LEAST_BAND_MM; height <= most; height += BAND_STEP_MM)
        {
          OxFlow trial = *flow;
          set_band (&plot, form, height);
          if (ox_flow_fill (&trial, NULL, plot.slots, plot.n_slots))
            break;
        }
    }
  else
    set_beside (&plot, form);
  free_mm (&plot, around, mm);
  *out = plot;
}

void
ox_plot_set_part (OxPlot *plot, OxScale scale, OxBox box, OxAround around)
{
  plot->scale = scale;
  plot->mm_per_m = 1000 / scale.denominator;
  plot->shown = box;
  centre (plot, around, box);
}

gboolean
ox_plot_new (const OxSheetRun *run, const OxFlow *flow, OxAround around, OxPlot *out, GError **error)
{
  OxPlot plot = { .scale = run->asked, .shown = OX_FLOOR_WHOLE };
  OxBox floor = ox_job_box (run->job);
  const double metres[2] = { floor.x1 - floor.x0, floor.y1 - floor.y0 };
  divide (&plot, run, flow, metres, around);
  double mm[2];
  free_mm (&plot, around, mm);
  OxScale fit = ox_scale_fit (run->job->units, metres, mm);
  if (plot.scale.denominator <= 0)
    plot.scale = fit;
  plot.mm_per_m = 1000 / plot.scale.denominator;
  if (metres[0] * plot.mm_per_m > mm[0] + 1e-6 || metres[1] * plot.mm_per_m > mm[1] + 1e-6)
    {
      g_autofree char *asked = ox_scale_text (plot.scale), *fitting = ox_scale_text (fit);
      g_set_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_TOO_LARGE,
                   _ ("The floor does not fit on %s at %s: choose %s or smaller, or larger paper."),
                   run->form.paper->name, asked, fitting);
      return FALSE;
    }
  centre (&plot, around, floor);
  *out = plot;
  return TRUE;
}

/* add_below: columns for blocks over the width of the area, up to @top */
static void
add_below (OxPlot *plot, const OxForm *form, double bottom, double top)
{
  double width = plot->area.x1 - plot->area.x0 - 2 * PAD_MM;
  guint n = (guint) floor ((width + LEAST_GAP_MM) / (form->block_mm + LEAST_GAP_MM));
  double gap = n > 1 ? MIN (OX_FORM_GAP_MM, (width - n * form->block_mm) / (n - 1)) : 0;
  for (guint i = 0; i < n && plot->n_slots < G_N_ELEMENTS (plot->slots); i++)
    plot->slots[plot->n_slots++] = (OxSlot){ plot->area.x0 + PAD_MM + i * (form->block_mm + gap), top, bottom };
}

void
ox_plot_use_below (OxPlot *plot, const OxSheetRun *run, const OxFlow *flow, OxAround around)
{
  OxBox box = ox_job_box (run->job), area = plot->area;
  double bottom = area.y0 + BAR_STRIP_MM + NORTH_MM + PAD_MM;
  double floor_mm = (box.y1 - box.y0) * plot->mm_per_m + around.below + around.above;
  double most = area.y1 - floor_mm - bottom;
  if (run->form.upright || most < LEAST_BAND_MM)
    return;
  const OxPlot bare = *plot;
  add_below (plot, &run->form, bottom, bottom + most);
  if (plot->n_slots == bare.n_slots)
    return;
  gboolean holds = FALSE;
  double height = LEAST_BAND_MM;
  for (; !holds && height < most; height += BAND_STEP_MM)
    {
      OxFlow trial = *flow;
      *plot = bare;
      add_below (plot, &run->form, bottom, bottom + height);
      holds = ox_flow_fill (&trial, NULL, plot->slots, plot->n_slots);
    }
  if (!holds)
    {
      height = most;
      *plot = bare;
      add_below (plot, &run->form, bottom, bottom + height);
    }
  /* The floor stands in the middle of what is left. */
  double low = (plot->slots[plot->n_slots - 1].top + area.y1 - floor_mm) / 2 + around.below;
  plot->origin.y += low - ox_plot_to_page (plot, (OxPoint){ 0, box.y0 }).y;
}

OxPoint
ox_plot_to_page (const OxPlot *plot, OxPoint metres)
{
  return ox_point_add (plot->origin, ox_point_scale (metres, plot->mm_per_m));
}

/* append_refused: behind the words of the scale bar, that another one was asked for */
static void
append_refused (const OxPlot *plot, const OxSheetRun *run, OxDrawingBuilder *builder, OxPoint at)
{
  if (plot->refused.denominator <= 0)
    return;
  g_autofree char *asked = ox_scale_text (plot->refused);
  g_autofree char *text = g_strdup_printf (_ ("%s does not fit on %s"), asked, run->form.paper->name);
  OxTextLook look = { OX_STYLE_INK, 1.8, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE };
  ox_drawing_builder_text (builder, look, at, text);
}

void
ox_plot_append (const OxPlot *plot, const OxSheetRun *run, OxDrawingBuilder *builder, const OxDrawing *floor)
{
  ox_drawing_builder_place (builder, plot->origin, plot->mm_per_m);
  ox_drawing_builder_clip (builder, &plot->shown);
  ox_drawing_builder_drawing (builder, floor);
  ox_drawing_builder_clip (builder, NULL);
  ox_drawing_builder_place (builder, (OxPoint){ 0, 0 }, 1);
  ox_drawing_builder_item (builder, NULL, 0);
  ox_drawing_builder_layer (builder, "scale", _ ("Scale bar and north"));
  OxBox area = plot->area;
  OxPoint behind = ox_scale_bar_append (builder, (OxPoint){ area.x0 + 8, area.y0 + 5 }, plot->scale, run->job->units,
                                        run->form.paper->name);
  append_refused (plot, run, builder, behind);
  ox_north_append (builder, (OxPoint){ area.x1 - 12, area.y0 + 11 }, run->job->north_deg);
  ox_drawing_builder_layer (builder, "tables", _ ("Tables and notes"));
  OxPoint from = run->form.upright ? (OxPoint){ area.x0, area.y0 } : (OxPoint){ area.x1, area.y0 };
  OxPoint to = run->form.upright ? (OxPoint){ area.x1, area.y0 } : (OxPoint){ area.x1, area.y1 };
  ox_drawing_builder_line (builder, OX_STYLE_BLOCK, from, to);
}
