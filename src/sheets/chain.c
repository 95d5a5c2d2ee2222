/* Oxturn: sheets/chain - one row of running dimensions beside the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/chain.h"
#include "drawing/text.h"
#include "sheets/dimension.h"

#define TEXT_MM OX_DIMENSION_TEXT_MM
#define CLEAR_MM 1.0  /* from the line to a figure */
#define BESIDE_MM 0.6 /* from figure to figure */
#define GAP_MM 1.5    /* from the corner to its extension line */
#define OVERRUN_MM 1.5
#define TICK_MM 3.5
#define MOST_SHIFTS 6

typedef struct
{
  char *text;
  double along;  /* mm of page: middle of the figure */
  double middle; /* mm of page: middle of its span */
  gboolean moved;
} Figure;

static void
clear_figure (gpointer data)
{
  g_free (((Figure *) data)->text);
}

/* shown_step: what lengths are rounded to where they are shown, m */
static double
shown_step (OxUnits units)
{
  return units == OX_UNITS_FEET ? 0.3048 / 12 / 16 : 0.001;
}

static OxPoint
page_point (OxChainEdge edge, double along, double across)
{
  return edge.level ? (OxPoint){ along, across } : (OxPoint){ across, along };
}

static double
along_mm (const OxChainPage *page, OxChainEdge edge, double s)
{
  return (edge.level ? page->plot->origin.x : page->plot->origin.y) + s * page->plot->mm_per_m;
}

static double
across_mm (const OxChainPage *page, OxChainEdge edge, double v)
{
  return (edge.level ? page->plot->origin.y : page->plot->origin.x) + v * page->plot->mm_per_m;
}

/* line_mm: where the dimension line stands, across the chain */
static double
line_mm (const OxChainPage *page, OxChainEdge edge, double row_mm)
{
  const OxBox *box = &page->box;
  double side = edge.level ? (edge.out < 0 ? box->y0 : box->y1) : (edge.out < 0 ? box->x0 : box->x1);
  return across_mm (page, edge, side) + edge.out * row_mm;
}

/* base_mm: where the base line of a figure stands. Above a level line, left of an upright one, which is read from the
 * right; a figure that was moved stands one row further out. */
static double
base_mm (OxChainEdge edge, double line, gboolean moved)
{
  double above = edge.level ? 1 : -1;
  double base = line + above * CLEAR_MM;
  if (!moved)
    return base;
  return edge.out == above ? base + above * (TEXT_MM + CLEAR_MM) : line - above * (CLEAR_MM + TEXT_MM + 0.3);
}

static OxLabelBox
figure_box (const OxChainPage *page, OxChainEdge edge, double line, const Figure *figure)
{
  double w = ox_text_width (figure->text, TEXT_MM, FALSE) / 2 + BESIDE_MM;
  OxPoint at = page_point (edge, figure->along, base_mm (edge, line, figure->moved));
  OxPoint metres = ox_point_scale (ox_point_sub (at, page->plot->origin), 1 / page->plot->mm_per_m);
  return (OxLabelBox){ metres, edge.level ? 0 : G_PI / 2, { -w, -0.4, w, TEXT_MM + 0.4 } };
}

static gboolean
take_place (const OxChainPage *page, OxChainEdge edge, double line, const Figure *figure)
{
  const OxBox *area = &page->plot->area;
  OxLabelBox box = figure_box (page, edge, line, figure);
  double from = edge.level ? area->x0 : area->y0, to = edge.level ? area->x1 : area->y1;
  if (figure->along + box.mm.x0 < from + 1 || figure->along + box.mm.x1 > to - 1
      || !ox_labels_is_free (page->labels, &box))
    return FALSE;
  ox_labels_take (page->labels, &box);
  return TRUE;
}

/* place_figure: in its span, or one row out below it, or beside that with a leader */
static gboolean
place_figure (const OxChainPage *page, OxChainEdge edge, double line, double span_mm, Figure *figure)
{
  double width = ox_text_width (figure->text, TEXT_MM, FALSE);
  figure->along = figure->middle;
  figure->moved = FALSE;
  if (width + 2 * BESIDE_MM <= span_mm && take_place (page, edge, line, figure))
    return TRUE;
  figure->moved = TRUE;
  for (int k = 0; k <= 2 * MOST_SHIFTS; k++)
    {
      int shift = k % 2 ? (k + 1) / 2 : -(k / 2);
      figure->along = figure->middle + shift * (width / 2 + BESIDE_MM);
      if (take_place (page, edge, line, figure))
        return TRUE;
    }
  return FALSE;
}

/* place_all: @figures: (out); Returns: which span finds no place, or their number */
static guint
place_all (const OxChainPage *page, OxChainEdge edge, const GArray *stops, double line, GArray *figures)
{
  double step = shown_step (page->units);
  double first = g_array_index (stops, OxChainStop, 0).s;
  g_array_set_size (figures, 0);
  for (guint i = 0; i + 1 < stops->len; i++)
    {
      double a = g_array_index (stops, OxChainStop, i).s, b = g_array_index (stops, OxChainStop, i + 1).s;
      double shown = (round ((b - first) / step) - round ((a - first) / step)) * step;
      Figure figure
          = { .text = ox_units_length_text (page->units, shown, FALSE), .middle = along_mm (page, edge, (a + b) / 2) };
      gboolean placed = place_figure (page, edge, line, (b - a) * page->plot->mm_per_m, &figure);
      g_array_append_val (figures, figure);
      if (!placed)
        return i;
    }
  return stops->len - 1;
}

static void
append_extension (const OxChainPage *page, OxChainEdge edge, OxChainStop stop, double line)
{
  double along = along_mm (page, edge, stop.s);
  double from = across_mm (page, edge, stop.v) + edge.out * GAP_MM, to = line + edge.out * OVERRUN_MM;
  ox_drawing_builder_line (page->builder, OX_STYLE_DIMENSION, page_point (edge, along, from),
                           page_point (edge, along, to));
}

static void
append_figure (const OxChainPage *page, OxChainEdge edge, double line, const Figure *figure)
{
  OxTextLook look
      = { OX_STYLE_DIMENSION, TEXT_MM, edge.level ? 0 : G_PI / 2, OX_ALIGN_MIDDLE, FALSE, FALSE, 0.35, FALSE };
  double base = base_mm (edge, line, figure->moved), above = edge.level ? 1 : -1;
  double reach = ox_text_width (figure->text, TEXT_MM, FALSE) / 2 + BESIDE_MM;
  double shift = figure->along - figure->middle;
  ox_drawing_builder_text (page->builder, look, page_point (edge, figure->along, base), figure->text);
  if (figure->moved && fabs (shift) > reach)
    ox_drawing_builder_line (
        page->builder, OX_STYLE_DIMENSION, page_point (edge, figure->middle, line),
        page_point (edge, figure->along - (shift > 0 ? reach : -reach), base + above * TEXT_MM / 2));
}

static void
append_row (const OxChainPage *page, OxChainEdge edge, const GArray *stops, double line)
{
  guint last = stops->len - 1;
  for (guint i = 0; i <= last; i++)
    append_extension (page, edge, g_array_index (stops, OxChainStop, i), line);
  for (guint i = 0; i <= last; i++)
    {
      double along = along_mm (page, edge, g_array_index (stops, OxChainStop, i).s);
      ox_drawing_builder_mark (page->builder,
                               (OxMarkLook){ OX_STYLE_BLOCK, OX_MARK_TICK, edge.level ? 0 : G_PI / 2, TICK_MM },
                               page_point (edge, along, line));
    }
}

gboolean
ox_chain_append (const OxChainPage *page, OxChainEdge edge, GArray *stops, double row_mm)
{
  g_autoptr (GArray) figures = g_array_new (FALSE, TRUE, sizeof (Figure));
  double line = line_mm (page, edge, row_mm);
  guint taken = ox_labels_get_count (page->labels), failed;
  g_array_set_clear_func (figures, clear_figure);
  if (stops->len < 2)
    return FALSE;
  while ((failed = place_all (page, edge, stops, line, figures)) + 1 < stops->len)
    {
      ox_labels_keep (page->labels, taken);
      if (stops->len == 2)
        return FALSE;
      g_array_remove_index (stops, failed + 2 < stops->len ? failed + 1 : failed);
    }
  append_row (page, edge, stops, line);
  for (guint i = 0; i < figures->len; i++)
    {
      double a = along_mm (page, edge, g_array_index (stops, OxChainStop, i).s);
      double b = along_mm (page, edge, g_array_index (stops, OxChainStop, i + 1).s);
      ox_drawing_builder_line (page->builder, OX_STYLE_DIMENSION, page_point (edge, a, line),
                               page_point (edge, b, line));
      append_figure (page, edge, line, &g_array_index (figures, Figure, i));
    }
  return TRUE;
}
