/* Oxturn: paint/svg - a page as SVG.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/svg.h"
#include "base/number.h"
#include "drawing/hatch.h"
#include "drawing/mark.h"
#include "drawing/text.h"
#include <libxml/xmlwriter.h>

#define DECIMALS 3
#define FAMILY OX_TEXT_FAMILY ", Verdana, sans-serif"

typedef struct
{
  xmlTextWriter *writer;
  const OxPage *page;
  GHashTable *ids; /* set of those given */
  GString *scratch;
} Painter;

#define X(text) ((const xmlChar *) (text))

static void
attribute (Painter *painter, const char *name, const char *value)
{
  xmlTextWriterWriteAttribute (painter->writer, X (name), X (value));
}

static void
number_attribute (Painter *painter, const char *name, double value, const char *unit)
{
  g_string_truncate (painter->scratch, 0);
  ox_number_append (painter->scratch, value, DECIMALS);
  g_string_append (painter->scratch, unit);
  attribute (painter, name, painter->scratch->str);
}

static void
colour_attribute (Painter *painter, const char *name, guint32 colour)
{
  char text[8] = "none";
  if (colour != OX_COLOUR_NONE)
    g_snprintf (text, sizeof text, "#%06x", colour & 0xffffff);
  attribute (painter, name, text);
}

static void
start (Painter *painter, const char *name)
{
  xmlTextWriterStartElement (painter->writer, X (name));
}

static void
end (Painter *painter)
{
  xmlTextWriterEndElement (painter->writer);
}

/* item_id: the first element that shows an item in a layer is called after both, so that it can be found; ids are
 * unique */
static void
item_id (Painter *painter, const OxElement *element)
{
  if (element->id[0] == '\0')
    return;
  g_autofree char *id = g_strconcat (painter->page->drawing->layers[element->layer].id, "-", element->id, NULL);
  if (g_hash_table_contains (painter->ids, id))
    return;
  attribute (painter, "id", id);
  g_hash_table_add (painter->ids, g_steal_pointer (&id));
}

static void
append_pair (Painter *painter, OxPoint p)
{
  ox_number_append (painter->scratch, p.x, DECIMALS);
  g_string_append_c (painter->scratch, ' ');
  ox_number_append (painter->scratch, painter->page->height_mm - p.y, DECIMALS);
}

static void
append_place (Painter *painter, char command, OxPoint p)
{
  g_string_append_c (painter->scratch, command);
  append_pair (painter, p);
}

static void
append_trace (Painter *painter, const OxPoint *points, guint n, gboolean closed)
{
  for (guint i = 0; i < n; i++)
    append_place (painter, i == 0 ? 'M' : 'L', points[i]);
  if (closed)
    g_string_append_c (painter->scratch, 'Z');
}

static void
line_attributes (Painter *painter, guint32 ink, double width_mm, const double dash[4])
{
  colour_attribute (painter, "stroke", ink);
  number_attribute (painter, "stroke-width", width_mm, "");
  if (dash[0] <= 0)
    return;
  g_string_truncate (painter->scratch, 0);
  for (guint i = 0; i < (dash[2] > 0 ? 4 : 2); i++)
    {
      g_string_append (painter->scratch, i > 0 ? "," : "");
      ox_number_append (painter->scratch, dash[i] * width_mm, DECIMALS);
    }
  attribute (painter, "stroke-dasharray", painter->scratch->str);
}

static void
write_path (Painter *painter, const OxElement *element)
{
  const OxDrawing *drawing = painter->page->drawing;
  const OxStyleSpec *style = ox_style_get (element->style);
  g_string_truncate (painter->scratch, 0);
  for (guint t = 0; t < element->path.n_traces; t++)
    {
      const OxTrace *trace = &drawing->traces[element->path.first_trace + t];
      append_trace (painter, drawing->points + trace->start, trace->n, trace->closed);
    }
  start (painter, "path");
  item_id (painter, element);
  attribute (painter, "d", painter->scratch->str);
  colour_attribute (painter, "fill", element->path.no_fill ? OX_COLOUR_NONE : style->fill[OX_PALETTE_PAPER]);
  if (style->width_mm > 0)
    line_attributes (painter, style->ink[OX_PALETTE_PAPER], style->width_mm, style->dash);
  end (painter);
}

static void
write_hatch (Painter *painter, const OxElement *element)
{
  const OxStyleSpec *style = ox_style_get (element->style);
  if (element->path.no_fill || style->hatch.spacing_mm <= 0)
    return;
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  OxHatchGrid grid = { style->hatch.angle_deg * G_PI / 180,
                       style->hatch.spacing_mm,
                       { 0, 0, painter->page->width_mm, painter->page->height_mm } };
  ox_hatch_append (ends, painter->page->drawing, element, &grid);
  grid.angle += G_PI / 2;
  if (style->hatch.crossed)
    ox_hatch_append (ends, painter->page->drawing, element, &grid);
  if (ends->len == 0)
    return;
  g_string_truncate (painter->scratch, 0);
  for (guint i = 0; i < ends->len; i++)
    append_place (painter, i % 2 == 0 ? 'M' : 'L', g_array_index (ends, OxPoint, i));
  start (painter, "path");
  attribute (painter, "d", painter->scratch->str);
  attribute (painter, "fill", "none");
  line_attributes (painter, style->ink[OX_PALETTE_PAPER], style->hatch_width_mm, (const double[4]){ 0 });
  end (painter);
}

static void
write_part (Painter *painter, const OxElement *element, const OxMarkPart *part)
{
  const OxStyleSpec *style = ox_style_get (element->style);
  guint32 ink = style->ink[OX_PALETTE_PAPER];
  if (part->radius > 0)
    {
      OxPoint at = ox_mark_place (element, part->points[0], 1);
      start (painter, "circle");
      number_attribute (painter, "cx", at.x, "");
      number_attribute (painter, "cy", painter->page->height_mm - at.y, "");
      number_attribute (painter, "r", part->radius * element->mark.size_mm, "");
    }
  else
    {
      OxPoint placed[G_N_ELEMENTS (part->points)];
      for (guint i = 0; i < part->n; i++)
        placed[i] = ox_mark_place (element, part->points[i], 1);
      g_string_truncate (painter->scratch, 0);
      append_trace (painter, placed, part->n, part->closed);
      start (painter, "path");
      attribute (painter, "d", painter->scratch->str);
    }
  guint32 ground = part->paint == OX_PART_GROUND ? style->fill[OX_PALETTE_PAPER] : OX_COLOUR_NONE;
  colour_attribute (painter, "fill", part->paint == OX_PART_SOLID ? ink : ground);
  if (part->paint != OX_PART_SOLID)
    line_attributes (painter, ink, style->width_mm, style->dash);
  end (painter);
}

static void
write_mark (Painter *painter, const OxElement *element)
{
  guint n;
  const OxMarkPart *parts = ox_mark_get_parts (element->mark.kind, &n);
  if (n > 1)
    {
      start (painter, "g");
      item_id (painter, element);
    }
  for (guint i = 0; i < n; i++)
    write_part (painter, element, &parts[i]);
  if (n > 1)
    end (painter);
}

static void
write_ground (Painter *painter, const OxElement *element, const OxStyleSpec *style)
{
  OxPoint corners[4];
  ox_element_text_corners (element, 1, corners);
  g_string_truncate (painter->scratch, 0);
  append_trace (painter, corners, 4, TRUE);
  start (painter, "path");
  attribute (painter, "d", painter->scratch->str);
  colour_attribute (painter, "fill", style->fill[OX_PALETTE_PAPER]);
  if (element->style == OX_STYLE_TAG)
    line_attributes (painter, style->ink[OX_PALETTE_PAPER], style->width_mm, (const double[4]){ 0 });
  end (painter);
}

static void
write_text (Painter *painter, const OxElement *element)
{
  static const char *const anchors[] = { "start", "middle", "end" };
  const OxStyleSpec *style = ox_style_get (element->style);
  if (element->text.ground_mm > 0)
    write_ground (painter, element, style);
  OxPoint base = element->text.at;
  if (element->text.centred)
    {
      OxPoint down = ox_point_turn ((OxPoint){ 0, -element->text.height_mm / 2 }, cos (element->text.angle),
                                    sin (element->text.angle));
      base = ox_point_add (base, down);
    }
  start (painter, "text");
  if (fabs (element->text.angle) < 1e-9)
    {
      number_attribute (painter, "x", base.x, "");
      number_attribute (painter, "y", painter->page->height_mm - base.y, "");
    }
  else
    {
      g_string_assign (painter->scratch, "translate(");
      append_pair (painter, base);
      g_string_append (painter->scratch, ") rotate(");
      ox_number_append (painter->scratch, -element->text.angle * 180 / G_PI, 4);
      g_string_append_c (painter->scratch, ')');
      attribute (painter, "transform", painter->scratch->str);
    }
  number_attribute (painter, "font-size", element->text.height_mm / OX_TEXT_CAP_SHARE, "");
  if (element->text.bold)
    attribute (painter, "font-weight", "bold");
  if (element->text.align != OX_ALIGN_START)
    attribute (painter, "text-anchor", anchors[element->text.align]);
  colour_attribute (painter, "fill", style->ink[OX_PALETTE_PAPER]);
  xmlTextWriterWriteString (painter->writer, X (element->text.text));
  end (painter);
}

static void
write_element (Painter *painter, const OxElement *element)
{
  switch (element->kind)
    {
    case OX_ELEMENT_PATH:
      write_path (painter, element);
      write_hatch (painter, element);
      break;
    case OX_ELEMENT_TEXT:
      write_text (painter, element);
      break;
    case OX_ELEMENT_MARK:
      write_mark (painter, element);
      break;
    default:
      g_return_if_reached ();
    }
}

static void
write_layers (Painter *painter)
{
  const OxDrawing *drawing = painter->page->drawing;
  guint i = 0;
  for (guint l = 0; l < drawing->n_layers; l++)
    {
      if (i == drawing->n_elements || drawing->elements[i].layer != l)
        continue;
      g_autofree char *id = g_strconcat ("layer-", drawing->layers[l].id, NULL);
      start (painter, "g");
      attribute (painter, "id", id);
      if (drawing->layers[l].title[0] != '\0')
        xmlTextWriterWriteElement (painter->writer, X ("title"), X (drawing->layers[l].title));
      for (; i < drawing->n_elements && drawing->elements[i].layer == l; i++)
        if (drawing->elements[i].from_mm <= 1)
          write_element (painter, &drawing->elements[i]);
      end (painter);
    }
}

/* write_piece: a picture in the picture, which cuts off what lies outside; it is mirrored about its upper side as every
 * page is */
static void
write_piece (Painter *painter)
{
  const OxPage *page = painter->page;
  double width = page->piece.x1 - page->piece.x0, height = page->piece.y1 - page->piece.y0;
  OxPage part = { .width_mm = page->piece.x1, .height_mm = page->piece.y1, .drawing = page->part };
  start (painter, "svg");
  attribute (painter, "id", "piece");
  number_attribute (painter, "x", page->piece_at.x, "");
  number_attribute (painter, "y", page->height_mm - page->piece_at.y - height, "");
  number_attribute (painter, "width", width, "");
  number_attribute (painter, "height", height, "");
  g_string_truncate (painter->scratch, 0);
  ox_number_append (painter->scratch, page->piece.x0, DECIMALS);
  g_string_append (painter->scratch, " 0 ");
  ox_number_append (painter->scratch, width, DECIMALS);
  g_string_append_c (painter->scratch, ' ');
  ox_number_append (painter->scratch, height, DECIMALS);
  attribute (painter, "viewBox", painter->scratch->str);
  attribute (painter, "overflow", "hidden");
  painter->page = &part;
  write_layers (painter);
  painter->page = page;
  end (painter);
}

static void
write_head (Painter *painter)
{
  const OxPage *page = painter->page;
  attribute (painter, "xmlns", "http://www.w3.org/2000/svg");
  attribute (painter, "version", "1.1");
  number_attribute (painter, "width", page->width_mm, "mm");
  number_attribute (painter, "height", page->height_mm, "mm");
  g_string_assign (painter->scratch, "0 0 ");
  ox_number_append (painter->scratch, page->width_mm, DECIMALS);
  g_string_append_c (painter->scratch, ' ');
  ox_number_append (painter->scratch, page->height_mm, DECIMALS);
  attribute (painter, "viewBox", painter->scratch->str);
  attribute (painter, "font-family", FAMILY);
  attribute (painter, "role", "img");
  attribute (painter, "aria-labelledby", "page-title page-description");
  start (painter, "title");
  attribute (painter, "id", "page-title");
  xmlTextWriterWriteString (painter->writer, X (page->title));
  end (painter);
  start (painter, "desc");
  attribute (painter, "id", "page-description");
  xmlTextWriterWriteString (painter->writer, X (page->description));
  end (painter);
  start (painter, "rect");
  attribute (painter, "id", "paper");
  number_attribute (painter, "width", page->width_mm, "");
  number_attribute (painter, "height", page->height_mm, "");
  colour_attribute (painter, "fill", ox_palette_get_ground (OX_PALETTE_PAPER));
  end (painter);
}

GBytes *
ox_svg_new (const OxPage *page)
{
  xmlBuffer *buffer = xmlBufferCreate ();
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GString) scratch = g_string_new (NULL);
  Painter painter = { xmlNewTextWriterMemory (buffer, 0), page, ids, scratch };
  xmlTextWriterSetIndent (painter.writer, 1);
  xmlTextWriterStartDocument (painter.writer, NULL, "UTF-8", NULL);
  start (&painter, "svg");
  write_head (&painter);
  if (page->part != NULL)
    write_piece (&painter);
  write_layers (&painter);
  xmlTextWriterEndDocument (painter.writer);
  xmlFreeTextWriter (painter.writer);
  GBytes *bytes = g_bytes_new (xmlBufferContent (buffer), (gsize) xmlBufferLength (buffer));
  xmlBufferFree (buffer);
  return bytes;
}
