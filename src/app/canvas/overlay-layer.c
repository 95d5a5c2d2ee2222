/* Oxturn: app/canvas/overlay-layer - what a tool wants to be seen, over the floor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/overlay-layer.h"

#include "app/canvas/floor-layer.h"

#define HANDLE_PX 9.0
#define SNAP_PX 5.0
#define LABEL_GAP_PX 14.0 /* between a place and the label that belongs to it */
#define LABEL_PAD_PX 5.0
#define TROUBLE_PX 11.0
#define REACH_PX 16.0 /* how far marks and lines go beyond their points */

struct _OxOverlayLayer
{
  GtkWidget parent_instance;

  OxPreview *preview; /* Owned (nullable) */
  OxView view;
};

G_DEFINE_FINAL_TYPE (OxOverlayLayer, ox_overlay_layer, GTK_TYPE_WIDGET)

typedef struct
{
  cairo_t *cr;
  const OxView *view;
  guint32 accent, ink, ground;
} Brush;

static void
set_colour (const Brush *brush, guint32 colour, double alpha)
{
  cairo_set_source_rgba (brush->cr, ((colour >> 16) & 0xff) / 255.0, ((colour >> 8) & 0xff) / 255.0,
                         (colour & 0xff) / 255.0, alpha);
}

static void
trace (const Brush *brush, const OxPreviewShape *shape, gboolean closed)
{
  cairo_new_path (brush->cr);
  for (guint i = 0; i < shape->n; i++)
    {
      OxPixel p = ox_view_to_pixel (brush->view, shape->points[i]);

      cairo_line_to (brush->cr, p.x, p.y);
    }
  if (closed)
    cairo_close_path (brush->cr);
}

/* A light line under the dark one (or the other way round) keeps it visible over strips and hatches. */
static void
stroke_twice (const Brush *brush, double width)
{
  set_colour (brush, brush->ground, 0.85);
  cairo_set_line_width (brush->cr, width + 2);
  cairo_stroke_preserve (brush->cr);
  set_colour (brush, brush->accent, 1);
  cairo_set_line_width (brush->cr, width);
  cairo_stroke (brush->cr);
}

static void
draw_handle (const Brush *brush, OxPoint at)
{
  OxPixel p = ox_view_to_pixel (brush->view, at);

  cairo_rectangle (brush->cr, round (p.x - HANDLE_PX / 2) + 0.5, round (p.y - HANDLE_PX / 2) + 0.5, HANDLE_PX,
                   HANDLE_PX);
  set_colour (brush, brush->ground, 1);
  cairo_fill_preserve (brush->cr);
  set_colour (brush, brush->accent, 1);
  cairo_set_line_width (brush->cr, 1.5);
  cairo_stroke (brush->cr);
}

static void
draw_snap (const Brush *brush, OxPoint at)
{
  OxPixel p = ox_view_to_pixel (brush->view, at);

  cairo_new_path (brush->cr);
  cairo_arc (brush->cr, p.x, p.y, SNAP_PX, 0, 2 * G_PI);
  stroke_twice (brush, 1.5);
}

/* A ring with a bar across: it differs from where the pointer is held by its form, not by its colour. */
static void
draw_trouble (const Brush *brush, OxPoint at)
{
  OxPixel p = ox_view_to_pixel (brush->view, at);

  cairo_new_path (brush->cr);
  cairo_arc (brush->cr, p.x, p.y, TROUBLE_PX, 0, 2 * G_PI);
  cairo_new_sub_path (brush->cr);
  cairo_move_to (brush->cr, p.x - TROUBLE_PX * G_SQRT2 / 2, p.y - TROUBLE_PX * G_SQRT2 / 2);
  cairo_line_to (brush->cr, p.x + TROUBLE_PX * G_SQRT2 / 2, p.y + TROUBLE_PX * G_SQRT2 / 2);
  stroke_twice (brush, 3);
}

static void
draw_shape (const Brush *brush, const OxPreviewShape *shape)
{
  static const double dashes[] = { 5, 4 };

  switch (shape->kind)
    {
    case OX_PREVIEW_OUTLINE:
    case OX_PREVIEW_BAND:
      trace (brush, shape, TRUE);
      set_colour (brush, brush->accent, 0.14);
      cairo_fill_preserve (brush->cr);
      stroke_twice (brush, shape->kind == OX_PREVIEW_BAND ? 1 : 1.5);
      break;
    case OX_PREVIEW_LINE:
      trace (brush, shape, FALSE);
      stroke_twice (brush, 2);
      break;
    case OX_PREVIEW_SELECTED:
      trace (brush, shape, shape->n > 2);
      stroke_twice (brush, shape->n > 2 ? 2 : 4);
      break;
    case OX_PREVIEW_GUIDE:
      trace (brush, shape, FALSE);
      set_colour (brush, brush->accent, 0.8);
      cairo_set_dash (brush->cr, dashes, 2, 0);
      cairo_set_line_width (brush->cr, 1);
      cairo_stroke (brush->cr);
      cairo_set_dash (brush->cr, NULL, 0, 0);
      break;
    case OX_PREVIEW_HANDLE:
      draw_handle (brush, shape->points[0]);
      break;
    case OX_PREVIEW_SNAP:
      draw_snap (brush, shape->points[0]);
      break;
    case OX_PREVIEW_TROUBLE:
      draw_trouble (brush, shape->points[0]);
      break;
    case OX_PREVIEW_DONE:
      /* There may be thousands of them, each frame. */
      cairo_set_antialias (brush->cr, CAIRO_ANTIALIAS_NONE);
      trace (brush, shape, TRUE);
      set_colour (brush, brush->accent, 0.3);
      cairo_fill (brush->cr);
      cairo_set_antialias (brush->cr, CAIRO_ANTIALIAS_DEFAULT);
      break;
    case OX_PREVIEW_LABEL:
      break;
    }
}

static gboolean
overlaps (const graphene_rect_t *a, const GArray *placed)
{
  for (guint i = 0; i < placed->len; i++)
    if (graphene_rect_intersection (a, &g_array_index (placed, graphene_rect_t, i), NULL))
      return TRUE;
  return FALSE;
}

/* Labels stand below right of their place, within the picture, and step down where another one stands already. */
static graphene_rect_t
place_label (OxOverlayLayer *self, OxPoint at, PangoLayout *layout, const GArray *placed)
{
  OxPixel p = ox_view_to_pixel (&self->view, at);
  int width, height;
  graphene_rect_t box;

  pango_layout_get_pixel_size (layout, &width, &height);
  box = GRAPHENE_RECT_INIT ((float) (p.x + LABEL_GAP_PX), (float) (p.y + LABEL_GAP_PX),
                            (float) (width + 2 * LABEL_PAD_PX), (float) (height + 2 * LABEL_PAD_PX));
  box.origin.x = MAX (0, MIN (box.origin.x, (float) self->view.width_px - box.size.width));
  box.origin.y = MAX (0, MIN (box.origin.y, (float) self->view.height_px - box.size.height));
  while (overlaps (&box, placed) && box.origin.y < (float) self->view.height_px)
    box.origin.y += box.size.height + 2;
  return box;
}

static void
snapshot_label (OxOverlayLayer *self, GtkSnapshot *snapshot, const OxPreviewShape *shape, GArray *placed)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), shape->text);
  graphene_rect_t box = place_label (self, shape->points[0], layout, placed);
  GskRoundedRect round_box;
  const GdkRGBA ground = { 0.13f, 0.15f, 0.17f, 0.92f };
  const GdkRGBA ink = { 1, 1, 1, 1 };

  g_array_append_val (placed, box);
  gsk_rounded_rect_init_from_rect (&round_box, &box, 4);
  gtk_snapshot_push_rounded_clip (snapshot, &round_box);
  gtk_snapshot_append_color (snapshot, &ground, &box);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT (box.origin.x + (float) LABEL_PAD_PX, box.origin.y + (float) LABEL_PAD_PX));
  gtk_snapshot_append_layout (snapshot, layout, &ink);
  gtk_snapshot_restore (snapshot);
}

/* What the shapes cover on screen: the smaller the node, the less is drawn anew. FALSE when nothing of it is seen. */
static gboolean
find_bounds (OxOverlayLayer *self, graphene_rect_t *bounds)
{
  OxBox box = OX_BOX_EMPTY;

  for (guint i = 0; i < self->preview->shapes->len; i++)
    {
      const OxPreviewShape *shape = g_ptr_array_index (self->preview->shapes, i);

      for (guint k = 0; k < shape->n; k++)
        {
          OxPixel p = ox_view_to_pixel (&self->view, shape->points[k]);

          ox_box_add (&box, (OxPoint){ p.x, p.y });
        }
    }
  if (ox_box_is_empty (box))
    return FALSE;
  box.x0 = floor (MAX (box.x0 - REACH_PX, 0));
  box.y0 = floor (MAX (box.y0 - REACH_PX, 0));
  box.x1 = ceil (MIN (box.x1 + REACH_PX, self->view.width_px));
  box.y1 = ceil (MIN (box.y1 + REACH_PX, self->view.height_px));
  *bounds = GRAPHENE_RECT_INIT ((float) box.x0, (float) box.y0, (float) (box.x1 - box.x0), (float) (box.y1 - box.y0));
  return box.x1 > box.x0 && box.y1 > box.y0;
}

static void
ox_overlay_layer_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  OxOverlayLayer *self = OX_OVERLAY_LAYER (widget);
  OxPalette palette = ox_palette_of (widget);
  g_autoptr (GArray) placed = g_array_new (FALSE, FALSE, sizeof (graphene_rect_t));
  graphene_rect_t bounds;
  Brush brush = { .view = &self->view,
                  .accent = ox_style_get (OX_STYLE_ACCENT)->ink[palette],
                  .ink = ox_style_get (OX_STYLE_INK)->ink[palette],
                  .ground = ox_palette_get_ground (palette) };

  if (self->preview == NULL || !find_bounds (self, &bounds))
    return;
  brush.cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  for (guint i = 0; i < self->preview->shapes->len; i++)
    draw_shape (&brush, g_ptr_array_index (self->preview->shapes, i));
  cairo_destroy (brush.cr);
  for (guint i = 0; i < self->preview->shapes->len; i++)
    {
      const OxPreviewShape *shape = g_ptr_array_index (self->preview->shapes, i);

      if (shape->kind == OX_PREVIEW_LABEL)
        snapshot_label (self, snapshot, shape, placed);
    }
}

void
ox_overlay_layer_set (OxOverlayLayer *self, const OxView *view, OxPreview *preview)
{
  g_clear_pointer (&self->preview, ox_preview_free);
  self->preview = preview;
  self->view = *view;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
ox_overlay_layer_finalize (GObject *object)
{
  g_clear_pointer (&OX_OVERLAY_LAYER (object)->preview, ox_preview_free);
  G_OBJECT_CLASS (ox_overlay_layer_parent_class)->finalize (object);
}

static void
ox_overlay_layer_class_init (OxOverlayLayerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ox_overlay_layer_finalize;
  GTK_WIDGET_CLASS (klass)->snapshot = ox_overlay_layer_snapshot;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ox_overlay_layer_init (OxOverlayLayer *self)
{
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
ox_overlay_layer_new (void)
{
  return g_object_new (OX_TYPE_OVERLAY_LAYER, NULL);
}
