/* Oxturn: drawing/drawing - a picture as a list of elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/drawing.h"
#include "drawing/clip.h"
#include "drawing/text.h"

/* Elements that follow each other lie near each other (strips of a lane, sides of a room), so a box around each run of
 * them is all the index that culling needs. */
#define PACK 32
#define EVERYWHERE ((OxBox){ -INFINITY, -INFINITY, INFINITY, INFINITY })

typedef struct
{
  OxDrawing base; /* first, so that a pointer to one is a pointer to the other */
  GStringChunk *strings;
  OxBox *packs;
} Drawing;

struct _OxDrawingBuilder
{
  GArray *layers, *elements, *traces, *points;
  GStringChunk *strings;
  OxPoint origin;
  double scale;
  guint layer;
  const char *item;
  double from_mm;
  OxBox clip; /* of drawings that are copied */
};

OxDrawing *
ox_drawing_ref (const OxDrawing *drawing)
{
  return g_atomic_rc_box_acquire ((OxDrawing *) drawing);
}

static void
clear_drawing (gpointer data)
{
  Drawing *drawing = data;
  g_free ((gpointer) drawing->base.layers);
  g_free ((gpointer) drawing->base.elements);
  g_free ((gpointer) drawing->base.traces);
  g_free ((gpointer) drawing->base.points);
  g_free (drawing->packs);
  g_string_chunk_free (drawing->strings);
}

void
ox_drawing_unref (const OxDrawing *drawing)
{
  g_atomic_rc_box_release_full ((OxDrawing *) drawing, clear_drawing);
}

/* --- Finding --- */

static gboolean
boxes_meet (OxBox a, OxBox b)
{
  return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

guint
ox_drawing_next_in (const OxDrawing *drawing, OxBox box, guint i)
{
  const OxBox *packs = ((const Drawing *) drawing)->packs;
  while (i < drawing->n_elements)
    {
      if (i % PACK == 0 && !boxes_meet (packs[i / PACK], box))
        i += PACK;
      else if (boxes_meet (drawing->elements[i].box, box))
        return i;
      else
        i++;
    }
  return drawing->n_elements;
}

static gboolean
trace_holds (const OxTrace *trace, const OxPoint *points, OxPoint p)
{
  gboolean in = FALSE;
  for (guint i = 0, j = trace->n - 1; i < trace->n; j = i++)
    {
      OxPoint a = points[trace->start + i], b = points[trace->start + j];
      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y))
        in = !in;
    }
  return in;
}

static gboolean
hits_path (const OxDrawing *drawing, const OxElement *element, OxPoint p, double radius)
{
  const OxStyleSpec *style = ox_style_get (element->style);
  gboolean filled = !element->path.no_fill && (style->fill[0] != OX_COLOUR_NONE || style->hatch.spacing_mm > 0);
  gboolean in = FALSE;
  for (guint t = 0; t < element->path.n_traces; t++)
    {
      const OxTrace *trace = &drawing->traces[element->path.first_trace + t];
      if (filled)
        {
          in ^= trace_holds (trace, drawing->points, p);
          continue;
        }
      const OxPoint *points = drawing->points + trace->start;
      for (guint i = 0; i + 1 < trace->n + (trace->closed ? 1 : 0); i++)
        if (ox_point_segment_distance (p, points[i], points[(i + 1) % trace->n], NULL) <= radius)
          return TRUE;
    }
  return in;
}

static gboolean
hits (const OxDrawing *drawing, const OxElement *element, OxPoint p, double radius)
{
  OxBox near = { p.x - radius, p.y - radius, p.x + radius, p.y + radius };
  if (!boxes_meet (element->box, near))
    return FALSE;
  switch (element->kind)
    {
    case OX_ELEMENT_PATH:
      return hits_path (drawing, element, p, radius);
    case OX_ELEMENT_TEXT:
      return ox_point_distance (p, element->text.at) <= radius;
    case OX_ELEMENT_MARK:
      return ox_point_distance (p, element->mark.at) <= radius;
    default:
      g_return_val_if_reached (FALSE);
    }
}

const char *
ox_drawing_hit (const OxDrawing *drawing, OxPoint point, double radius)
{
  const OxBox *packs = ((const Drawing *) drawing)->packs;
  OxBox near = { point.x - radius, point.y - radius, point.x + radius, point.y + radius };
  for (guint i = drawing->n_elements; i-- > 0;)
    {
      if (!boxes_meet (packs[i / PACK], near))
        {
          i -= i % PACK;
          continue;
        }
      const OxElement *element = &drawing->elements[i];
      if (element->id[0] != '\0' && hits (drawing, element, point, radius))
        return element->id;
    }
  return NULL;
}

/* --- Building --- */

OxDrawingBuilder *
ox_drawing_builder_new (void)
{
  OxDrawingBuilder *builder = g_new0 (OxDrawingBuilder, 1);
  builder->layers = g_array_new (FALSE, FALSE, sizeof (OxLayer));
  builder->elements = g_array_new (FALSE, FALSE, sizeof (OxElement));
  builder->traces = g_array_new (FALSE, FALSE, sizeof (OxTrace));
  builder->points = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  builder->strings = g_string_chunk_new (4096);
  builder->scale = 1;
  builder->clip = EVERYWHERE;
  builder->item = "";
  return builder;
}

static gpointer
hand_over (GArray **array, guint *n)
{
  *n = (*array)->len;
  return g_array_free (g_steal_pointer (array), FALSE);
}

void
ox_drawing_builder_free (OxDrawingBuilder *builder)
{
  g_clear_pointer (&builder->layers, g_array_unref);
  g_clear_pointer (&builder->elements, g_array_unref);
  g_clear_pointer (&builder->traces, g_array_unref);
  g_clear_pointer (&builder->points, g_array_unref);
  g_clear_pointer (&builder->strings, g_string_chunk_free);
  g_free (builder);
}

static void
add_box (OxBox *sum, OxBox box)
{
  sum->x0 = MIN (sum->x0, box.x0);
  sum->y0 = MIN (sum->y0, box.y0);
  sum->x1 = MAX (sum->x1, box.x1);
  sum->y1 = MAX (sum->y1, box.y1);
}

/* reach: mm that the element stands out from its box on paper, at most */
static double
reach (const OxElement *element)
{
  double line = ox_style_get (element->style)->width_mm;
  switch (element->kind)
    {
    case OX_ELEMENT_TEXT:
      return ox_text_width (element->text.text, element->text.height_mm, element->text.bold)
             + 2 * element->text.height_mm + element->text.ground_mm + line;
    case OX_ELEMENT_MARK:
      return element->mark.size_mm * 1.5 + line;
    case OX_ELEMENT_PATH:
    default:
      return line * 4; /* as far as a mitre goes */
    }
}

/* sort_by_layer: layer by layer, otherwise as appended; (transfer full) */
static OxElement *
sort_by_layer (const OxElement *elements, guint n, guint n_layers)
{
  g_autofree guint *next = g_new0 (guint, n_layers + 1);
  for (guint i = 0; i < n; i++)
    next[elements[i].layer + 1]++;
  for (guint l = 0; l < n_layers; l++)
    next[l + 1] += next[l];
  OxElement *sorted = g_new (OxElement, n);
  for (guint i = 0; i < n; i++)
    sorted[next[elements[i].layer]++] = elements[i];
  return sorted;
}

OxDrawing *
ox_drawing_builder_end (OxDrawingBuilder *builder)
{
  Drawing *drawing = g_atomic_rc_box_new0 (Drawing);
  OxDrawing *base = &drawing->base;
  drawing->strings = g_steal_pointer (&builder->strings);
  base->layers = hand_over (&builder->layers, &base->n_layers);
  base->n_elements = builder->elements->len;
  base->elements
      = sort_by_layer ((const OxElement *) (gpointer) builder->elements->data, base->n_elements, base->n_layers);
  base->traces = hand_over (&builder->traces, &base->n_traces);
  base->points = hand_over (&builder->points, &base->n_points);
  guint n_packs = (base->n_elements + PACK - 1) / PACK;
  drawing->packs = g_new (OxBox, n_packs);
  base->box = OX_BOX_EMPTY;
  for (guint i = 0; i < n_packs; i++)
    drawing->packs[i] = OX_BOX_EMPTY;
  for (guint i = 0; i < base->n_elements; i++)
    {
      add_box (&drawing->packs[i / PACK], base->elements[i].box);
      add_box (&base->box, base->elements[i].box);
      base->reach_mm = MAX (base->reach_mm, reach (&base->elements[i]));
    }
  ox_drawing_builder_free (builder);
  return base;
}

void
ox_drawing_builder_place (OxDrawingBuilder *builder, OxPoint origin, double scale)
{
  g_return_if_fail (scale > 0);
  builder->origin = origin;
  builder->scale = scale;
}

void
ox_drawing_builder_layer (OxDrawingBuilder *builder, const char *id, const char *title)
{
  for (guint i = 0; i < builder->layers->len; i++)
    if (g_str_equal (g_array_index (builder->layers, OxLayer, i).id, id))
      {
        builder->layer = i;
        return;
      }
  OxLayer layer
      = { g_string_chunk_insert_const (builder->strings, id), g_string_chunk_insert_const (builder->strings, title) };
  builder->layer = builder->layers->len;
  g_array_append_val (builder->layers, layer);
}

void
ox_drawing_builder_item (OxDrawingBuilder *builder, const char *id, double from_mm)
{
  builder->item = g_string_chunk_insert_const (builder->strings, id ? id : "");
  builder->from_mm = from_mm;
}

void
ox_drawing_builder_clip (OxDrawingBuilder *builder, const OxBox *box)
{
  builder->clip = box != NULL ? *box : EVERYWHERE;
}

static OxPoint
placed (const OxDrawingBuilder *builder, OxPoint p)
{
  return ox_point_add (builder->origin, ox_point_scale (p, builder->scale));
}

static OxElement
start_element (OxDrawingBuilder *builder, OxElementKind kind, OxStyle style)
{
  if (builder->layers->len == 0)
    ox_drawing_builder_layer (builder, "drawing", "");
  return (OxElement){ .kind = kind,
                      .style = style,
                      .layer = builder->layer,
                      .id = builder->item,
                      .box = OX_BOX_EMPTY,
                      .from_mm = builder->from_mm };
}

static void
append_trace (OxDrawingBuilder *builder, OxElement *path, const OxPoint *points, guint n)
{
  OxTrace trace = { builder->points->len, n, !path->path.no_fill };
  for (guint i = 0; i < n; i++)
    {
      OxPoint p = placed (builder, points[i]);
      ox_box_add (&path->box, p);
      g_array_append_val (builder->points, p);
    }
  g_array_append_val (builder->traces, trace);
  path->path.n_traces++;
}

static void
append_path (OxDrawingBuilder *builder, OxStyle style, const OxPoint *points, guint n, gboolean closed)
{
  OxElement path = start_element (builder, OX_ELEMENT_PATH, style);
  path.path.first_trace = builder->traces->len;
  path.path.no_fill = !closed;
  append_trace (builder, &path, points, n);
  g_array_append_val (builder->elements, path);
}

void
ox_drawing_builder_region (OxDrawingBuilder *builder, OxStyle style, const OxRegion *region)
{
  if (region->n_rings == 0)
    return;
  OxElement path = start_element (builder, OX_ELEMENT_PATH, style);
  path.path.first_trace = builder->traces->len;
  for (guint i = 0; i < region->n_rings; i++)
    append_trace (builder, &path, region->points + region->rings[i].start, region->rings[i].n);
  g_array_append_val (builder->elements, path);
}

void
ox_drawing_builder_polygon (OxDrawingBuilder *builder, OxStyle style, const OxPoint *points, guint n)
{
  g_return_if_fail (n >= 3);
  append_path (builder, style, points, n, TRUE);
}

void
ox_drawing_builder_polyline (OxDrawingBuilder *builder, OxStyle style, const OxPoint *points, guint n)
{
  g_return_if_fail (n >= 2);
  append_path (builder, style, points, n, FALSE);
}

void
ox_drawing_builder_line (OxDrawingBuilder *builder, OxStyle style, OxPoint a, OxPoint b)
{
  append_path (builder, style, (OxPoint[2]){ a, b }, 2, FALSE);
}

void
ox_drawing_builder_box (OxDrawingBuilder *builder, OxStyle style, OxBox box)
{
  const OxPoint corners[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  append_path (builder, style, corners, 4, TRUE);
}

void
ox_drawing_builder_mark (OxDrawingBuilder *builder, OxMarkLook look, OxPoint at)
{
  OxElement element = start_element (builder, OX_ELEMENT_MARK, look.style);
  element.mark.kind = look.kind;
  element.mark.at = placed (builder, at);
  element.mark.angle = look.angle;
  element.mark.size_mm = look.size_mm;
  ox_box_add (&element.box, element.mark.at);
  g_array_append_val (builder->elements, element);
}

void
ox_drawing_builder_text (OxDrawingBuilder *builder, OxTextLook look, OxPoint at, const char *text)
{
  if (text[0] == '\0')
    return;
  OxElement element = start_element (builder, OX_ELEMENT_TEXT, look.style);
  element.text.at = placed (builder, at);
  element.text.angle = look.angle;
  element.text.height_mm = look.height_mm;
  element.text.align = look.align;
  element.text.centred = look.centred;
  element.text.bold = look.bold;
  element.text.ground_mm = look.ground_mm;
  element.text.flat = look.flat;
  element.text.text = g_string_chunk_insert_const (builder->strings, text);
  ox_box_add (&element.box, element.text.at);
  g_array_append_val (builder->elements, element);
}

/* append_line_within: the runs of a line that lie in the builder's clip, each a trace of its own */
static void
append_line_within (OxDrawingBuilder *builder, OxElement *path, const OxPoint *points, guint n)
{
  g_autoptr (GArray) run = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  for (guint i = 0; i + 1 < n; i++)
    {
      OxPoint a = points[i], b = points[i + 1];
      if (ox_clip_line (&a, &b, builder->clip))
        {
          if (run->len == 0)
            g_array_append_val (run, a);
          g_array_append_val (run, b);
          if (b.x == points[i + 1].x && b.y == points[i + 1].y && i + 2 < n)
            continue;
        }
      if (run->len >= 2)
        append_trace (builder, path, (const OxPoint *) (gpointer) run->data, run->len);
      g_array_set_size (run, 0);
    }
}

/* copy_path: FALSE when nothing of it lies in the builder's clip */
static gboolean
copy_path (OxDrawingBuilder *builder, OxElement *to, const OxDrawing *drawing, const OxElement *from)
{
  OxBox box = from->box, clip = builder->clip;
  gboolean whole = box.x0 >= clip.x0 && box.x1 <= clip.x1 && box.y0 >= clip.y0 && box.y1 <= clip.y1;
  g_autoptr (GArray) ring = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  to->path.first_trace = builder->traces->len;
  to->path.n_traces = 0;
  for (guint t = 0; t < from->path.n_traces; t++)
    {
      const OxTrace *trace = &drawing->traces[from->path.first_trace + t];
      const OxPoint *points = drawing->points + trace->start;
      if (whole)
        append_trace (builder, to, points, trace->n);
      else if (from->path.no_fill)
        append_line_within (builder, to, points, trace->n);
      else
        {
          ox_clip_ring (ring, points, trace->n, clip);
          if (ring->len > 0)
            append_trace (builder, to, (const OxPoint *) (gpointer) ring->data, ring->len);
        }
    }
  return to->path.n_traces > 0;
}

static gboolean
is_in (OxPoint p, OxBox box)
{
  return p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1;
}

void
ox_drawing_builder_drawing (OxDrawingBuilder *builder, const OxDrawing *drawing)
{
  for (guint i = ox_drawing_next_in (drawing, builder->clip, 0); i < drawing->n_elements;
       i = ox_drawing_next_in (drawing, builder->clip, i + 1))
    {
      const OxElement *from = &drawing->elements[i];
      const OxLayer *layer = &drawing->layers[from->layer];
      ox_drawing_builder_layer (builder, layer->id, layer->title);
      OxElement to = *from;
      to.layer = builder->layer;
      to.id = g_string_chunk_insert_const (builder->strings, from->id);
      to.from_mm = from->from_mm / builder->scale;
      to.box = OX_BOX_EMPTY;
      if (to.kind == OX_ELEMENT_PATH && !copy_path (builder, &to, drawing, from))
        continue;
      if (to.kind != OX_ELEMENT_PATH)
        {
          OxPoint at = to.kind == OX_ELEMENT_MARK ? from->mark.at : from->text.at;
          if (!is_in (at, builder->clip))
            continue;
          ox_box_add (&to.box, placed (builder, at));
          if (to.kind == OX_ELEMENT_MARK)
            to.mark.at = placed (builder, at);
          else
            {
              to.text.at = placed (builder, at);
              to.text.text = g_string_chunk_insert_const (builder->strings, from->text.text);
            }
        }
      g_array_append_val (builder->elements, to);
    }
}

void
ox_element_text_corners (const OxElement *element, double mm, OxPoint corners[4])
{
  g_return_if_fail (element->kind == OX_ELEMENT_TEXT);
  double w = ox_text_width (element->text.text, element->text.height_mm, element->text.bold),
         h = element->text.height_mm;
  double out = element->text.ground_mm, up = element->text.flat ? 0 : out;
  double x = element->text.align == OX_ALIGN_START ? 0 : element->text.align == OX_ALIGN_MIDDLE ? -w / 2 : -w;
  double y = element->text.centred ? -h / 2 : 0;
  double down = out > 0 ? up : h / OX_TEXT_CAP_SHARE * OX_TEXT_DROP_SHARE;
  const OxPoint local[4]
      = { { x - out, y - down }, { x + w + out, y - down }, { x + w + out, y + h + up }, { x - out, y + h + up } };
  for (int i = 0; i < 4; i++)
    {
      OxPoint turned = ox_point_turn (local[i], cos (element->text.angle), sin (element->text.angle));
      corners[i] = ox_point_add (element->text.at, ox_point_scale (turned, mm));
    }
}
