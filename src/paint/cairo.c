/* Oxturn: paint/cairo - a drawing onto a cairo context.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/cairo.h"
#include "drawing/hatch.h"
#include "drawing/mark.h"
#include "drawing/text.h"
#include <pango/pangocairo.h>

/* cairo keeps places in 24.8 fixed point; what lies further out is far off the picture and may be bent. */
#define FAR_PX 4.0e6

typedef struct
{
  cairo_t *cr;
  const OxDrawing *drawing;
  const OxPaintOptions *options;
  double px;    /* a mm of paper */
  double mm;    /* drawing units a mm of paper */
  OxBox within; /* visible box in drawing units, with all that reaches into it */
  PangoLayout *layout;
  PangoFontDescription *font;
} Painter;

static void
set_colour (cairo_t *cr, guint32 colour)
{
  cairo_set_source_rgb (cr, ((colour >> 16) & 0xff) / 255.0, ((colour >> 8) & 0xff) / 255.0, (colour & 0xff) / 255.0);
}

static OxPixel
to_pixel (const Painter *painter, OxPoint p)
{
  OxPixel out = ox_view_to_pixel (&painter->options->view, p);
  return (OxPixel){ CLAMP (out.x, -FAR_PX, FAR_PX), CLAMP (out.y, -FAR_PX, FAR_PX) };
}

static void
go_to (const Painter *painter, OxPoint p, gboolean first)
{
  OxPixel at = to_pixel (painter, p);
  if (first)
    cairo_move_to (painter->cr, at.x, at.y);
  else
    cairo_line_to (painter->cr, at.x, at.y);
}

static void
set_line (const Painter *painter, double width_mm, const double dash[4])
{
  double width = width_mm * painter->px;
  cairo_set_line_width (painter->cr, width);
  double pattern[4] = { dash[0] * width, dash[1] * width, dash[2] * width, dash[3] * width };
  cairo_set_dash (painter->cr, pattern, dash[0] <= 0 ? 0 : dash[2] <= 0 ? 2 : 4, 0);
}

static void
paint_hatch (const Painter *painter, const OxElement *element, const OxStyleSpec *style)
{
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  OxHatchGrid grid = { style->hatch.angle_deg * G_PI / 180, style->hatch.spacing_mm * painter->mm, painter->within };
  ox_hatch_append (ends, painter->drawing, element, &grid);
  grid.angle += G_PI / 2;
  if (style->hatch.crossed)
    ox_hatch_append (ends, painter->drawing, element, &grid);
  for (guint i = 0; i < ends->len; i++)
    go_to (painter, g_array_index (ends, OxPoint, i), i % 2 == 0);
  set_colour (painter->cr, style->ink[painter->options->palette]);
  set_line (painter, style->hatch_width_mm, (const double[4]){ 0 });
  cairo_stroke (painter->cr);
}

static void
trace_path (const Painter *painter, const OxElement *element)
{
  for (guint t = 0; t < element->path.n_traces; t++)
    {
      const OxTrace *trace = &painter->drawing->traces[element->path.first_trace + t];
      for (guint i = 0; i < trace->n; i++)
        go_to (painter, painter->drawing->points[trace->start + i], i == 0);
      if (trace->closed)
        cairo_close_path (painter->cr);
    }
}

static void
paint_path (const Painter *painter, const OxElement *element)
{
  const OxStyleSpec *style = ox_style_get (element->style);
  guint32 fill = style->fill[painter->options->palette];
  if (!element->path.no_fill && fill != OX_COLOUR_NONE)
    {
      trace_path (painter, element);
      set_colour (painter->cr, fill);
      cairo_fill (painter->cr);
    }
  if (!element->path.no_fill && style->hatch.spacing_mm > 0)
    paint_hatch (painter, element, style);
  if (style->width_mm > 0)
    {
      trace_path (painter, element);
      set_colour (painter->cr, style->ink[painter->options->palette]);
      set_line (painter, style->width_mm, style->dash);
      cairo_stroke (painter->cr);
    }
}

static void
trace_part (const Painter *painter, const OxElement *element, const OxMarkPart *part)
{
  if (part->radius > 0)
    {
      OxPixel at = to_pixel (painter, ox_mark_place (element, part->points[0], painter->mm));
      double radius = part->radius * element->mark.size_mm * painter->px;
      cairo_new_sub_path (painter->cr);
      cairo_arc (painter->cr, at.x, at.y, radius, 0, 2 * G_PI);
      return;
    }
  for (guint i = 0; i < part->n; i++)
    go_to (painter, ox_mark_place (element, part->points[i], painter->mm), i == 0);
  if (part->closed)
    cairo_close_path (painter->cr);
}

static void
paint_mark (const Painter *painter, const OxElement *element)
{
  const OxStyleSpec *style = ox_style_get (element->style);
  guint n;
  const OxMarkPart *parts = ox_mark_get_parts (element->mark.kind, &n);
  set_line (painter, style->width_mm, style->dash);
  for (guint i = 0; i < n; i++)
    {
      trace_part (painter, element, &parts[i]);
      if (parts[i].paint == OX_PART_GROUND && style->fill[painter->options->palette] != OX_COLOUR_NONE)
        {
          set_colour (painter->cr, style->fill[painter->options->palette]);
          cairo_fill_preserve (painter->cr);
        }
      set_colour (painter->cr, style->ink[painter->options->palette]);
      if (parts[i].paint == OX_PART_SOLID)
        cairo_fill (painter->cr);
      else
        cairo_stroke (painter->cr);
    }
}

static void
paint_ground (const Painter *painter, const OxElement *element, const OxStyleSpec *style)
{
  OxPoint corners[4];
  ox_element_text_corners (element, painter->mm, corners);
  for (int i = 0; i < 4; i++)
    go_to (painter, corners[i], i == 0);
  cairo_close_path (painter->cr);
  if (style->fill[painter->options->palette] != OX_COLOUR_NONE)
    {
      set_colour (painter->cr, style->fill[painter->options->palette]);
      cairo_fill_preserve (painter->cr);
    }
  set_colour (painter->cr, style->ink[painter->options->palette]);
  set_line (painter, style->width_mm, (const double[4]){ 0 });
  if (element->style == OX_STYLE_TAG)
    cairo_stroke (painter->cr);
  cairo_new_path (painter->cr);
}

static void
paint_text (const Painter *painter, const OxElement *element)
{
  const OxStyleSpec *style = ox_style_get (element->style);
  if (element->text.ground_mm > 0)
    paint_ground (painter, element, style);
  double em = element->text.height_mm / OX_TEXT_CAP_SHARE * painter->px;
  pango_font_description_set_absolute_size (painter->font, em * PANGO_SCALE);
  pango_font_description_set_weight (painter->font, element->text.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (painter->layout, painter->font);
  pango_layout_set_text (painter->layout, element->text.text, -1);
  int width;
  pango_layout_get_size (painter->layout, &width, NULL);
  double share = element->text.align == OX_ALIGN_START ? 0 : element->text.align == OX_ALIGN_MIDDLE ? 0.5 : 1;
  OxPixel at = to_pixel (painter, element->text.at);
  cairo_save (painter->cr);
  cairo_translate (painter->cr, at.x, at.y);
  cairo_rotate (painter->cr, -element->text.angle);
  cairo_move_to (painter->cr, -share * width / PANGO_SCALE,
                 element->text.centred ? element->text.height_mm * painter->px / 2 : 0);
  set_colour (painter->cr, style->ink[painter->options->palette]);
  pango_cairo_show_layout_line (painter->cr, pango_layout_get_line_readonly (painter->layout, 0));
  cairo_restore (painter->cr);
}

static void
paint_element (const Painter *painter, const OxElement *element)
{
  switch (element->kind)
    {
    case OX_ELEMENT_PATH:
      paint_path (painter, element);
      break;
    case OX_ELEMENT_TEXT:
      paint_text (painter, element);
      break;
    case OX_ELEMENT_MARK:
      paint_mark (painter, element);
      break;
    default:
      g_return_if_reached ();
    }
}

/* make_layout: for text whose advance widths are the font's own at any size, as ox_text_width() has them */
static PangoLayout *
make_layout (cairo_t *cr)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoContext *context = pango_layout_get_context (layout);
  cairo_font_options_t *options = cairo_font_options_create ();
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  return layout;
}

void
ox_paint_cairo (cairo_t *cr, const OxDrawing *drawing, const OxPaintOptions *options)
{
  g_return_if_fail (options->px_per_mm > 0 && options->view.px_per_m > 0);
  Painter painter = { .cr = cr, .drawing = drawing, .options = options, .px = options->px_per_mm };
  painter.mm = options->px_per_mm / options->view.px_per_m;
  double out = drawing->reach_mm * painter.mm, unit_mm = 1 / painter.mm;
  OxBox box = ox_view_get_box (&options->view);
  painter.within = (OxBox){ box.x0 - out, box.y0 - out, box.x1 + out, box.y1 + out };
  cairo_save (cr);
  cairo_new_path (cr);
  painter.layout = make_layout (cr);
  painter.font = pango_font_description_from_string (OX_TEXT_FAMILY ",sans-serif");
  for (guint i = 0; (i = ox_drawing_next_in (drawing, painter.within, i)) < drawing->n_elements; i++)
    if (drawing->elements[i].from_mm <= unit_mm)
      paint_element (&painter, &drawing->elements[i]);
  pango_font_description_free (painter.font);
  g_object_unref (painter.layout);
  cairo_restore (cr);
}

static void
paint_piece (cairo_t *cr, const OxPage *page, double units_per_mm)
{
  double width = page->piece.x1 - page->piece.x0, height = page->piece.y1 - page->piece.y0;
  OxPaintOptions options = { .view = { .centre = { page->piece.x0 + width / 2, page->piece.y0 + height / 2 },
                                       .px_per_m = units_per_mm,
                                       .width_px = width * units_per_mm,
                                       .height_px = height * units_per_mm },
                             .px_per_mm = units_per_mm,
                             .palette = OX_PALETTE_PAPER };
  cairo_save (cr);
  cairo_translate (cr, page->piece_at.x * units_per_mm, (page->height_mm - page->piece_at.y - height) * units_per_mm);
  cairo_rectangle (cr, 0, 0, options.view.width_px, options.view.height_px);
  cairo_clip (cr);
  ox_paint_cairo (cr, page->part, &options);
  cairo_restore (cr);
}

void
ox_paint_page (cairo_t *cr, const OxPage *page, double units_per_mm)
{
  OxPaintOptions options = { .view = { .centre = { page->width_mm / 2, page->height_mm / 2 },
                                       .px_per_m = units_per_mm,
                                       .width_px = page->width_mm * units_per_mm,
                                       .height_px = page->height_mm * units_per_mm },
                             .px_per_mm = units_per_mm,
                             .palette = OX_PALETTE_PAPER };
  if (page->part != NULL)
    paint_piece (cr, page, units_per_mm);
  ox_paint_cairo (cr, page->drawing, &options);
}
