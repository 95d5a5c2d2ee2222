/* Oxturn: app/canvas/floor-layer - the floor picture, painted off the main thread and kept.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/canvas/floor-layer.h"

#include "paint/cairo.h"

#define MARGIN_PX 200 /* painted beyond each side of what is seen */
#define SPARE_PX 60   /* with less than this left on a side the next picture is painted */
#define SCREEN_PX_PER_MM (96 / 25.4)
#define MAX_GRID_LINES 400

/* What a worker paints, and the picture it makes; immutable once handed over. */
typedef struct
{
  OxDrawing *drawing;
  OxTracedSet *traced; /* (nullable) */
  OxView view;         /* with the margin */
  OxPalette palette;
  double grid;
  int scale;                /* device pixels a pixel */
  cairo_surface_t *surface; /* (nullable) painted by the worker */
} Order;

struct _OxFloorLayer
{
  GtkWidget parent_instance;

  /* Owned */
  OxDrawing *drawing;      /* (nullable) */
  OxTracedSet *traced;     /* (nullable) */
  GdkTexture *picture;     /* (nullable) */
  cairo_surface_t *pixels; /* (nullable) the same, for cairo */
  Order *painted;          /* (nullable) what @picture shows */

  OxView view;
  double grid;
  gboolean painting;
};

G_DEFINE_FINAL_TYPE (OxFloorLayer, ox_floor_layer, GTK_TYPE_WIDGET)

static void order_picture (OxFloorLayer *self);

static void
order_free (gpointer data)
{
  Order *order = data;

  ox_drawing_unref (order->drawing);
  g_clear_pointer (&order->traced, ox_traced_set_unref);
  g_clear_pointer (&order->surface, cairo_surface_destroy);
  g_free (order);
}

static void
set_colour (cairo_t *cr, guint32 colour, double alpha)
{
  cairo_set_source_rgba (cr, ((colour >> 16) & 0xff) / 255.0, ((colour >> 8) & 0xff) / 255.0, (colour & 0xff) / 255.0,
                         alpha);
}

/* One line is drawn at whole pixels so that it is as thin and as grey as the next one. */
static void
paint_grid (cairo_t *cr, const Order *order)
{
  OxBox box = ox_view_get_box (&order->view);
  double step = order->grid;

  if (step <= 0 || (box.x1 - box.x0) / step > MAX_GRID_LINES)
    return;
  for (double x = ceil (box.x0 / step) * step; x <= box.x1; x += step)
    {
      double px = floor (ox_view_to_pixel (&order->view, (OxPoint){ x, 0 }).x) + 0.5;

      cairo_move_to (cr, px, 0);
      cairo_line_to (cr, px, order->view.height_px);
    }
  for (double y = ceil (box.y0 / step) * step; y <= box.y1; y += step)
    {
      double py = floor (ox_view_to_pixel (&order->view, (OxPoint){ 0, y }).y) + 0.5;

      cairo_move_to (cr, 0, py);
      cairo_line_to (cr, order->view.width_px, py);
    }
  set_colour (cr, ox_style_get (OX_STYLE_INK)->ink[order->palette], 0.07);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

static void
paint_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancel)
{
  Order *order = task_data;
  int width = (int) order->view.width_px * order->scale;
  int height = (int) order->view.height_px * order->scale;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GBytes) bytes = NULL;
  gsize stride;

  (void) source;
  (void) cancel;
  cairo_scale (cr, order->scale, order->scale);
  set_colour (cr, ox_palette_get_ground (order->palette), 1);
  cairo_paint (cr);
  paint_grid (cr, order);
  ox_paint_cairo (cr, order->drawing,
                  &(OxPaintOptions){ .view = order->view, .px_per_mm = SCREEN_PX_PER_MM, .palette = order->palette });
  if (order->traced != NULL)
    ox_traced_set_paint (order->traced, cr, &order->view, order->palette == OX_PALETTE_NIGHT);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  stride = (gsize) cairo_image_surface_get_stride (surface);
  bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface), stride * (gsize) height,
                                      (GDestroyNotify) cairo_surface_destroy, surface);
  order->surface = cairo_surface_reference (surface);
  /* The picture is opaque, so premultiplied and straight alpha are the same bytes, and GTK 4.8 is twice as fast with
   * the latter. */
  g_task_return_pointer (task, gdk_memory_texture_new (width, height, GDK_MEMORY_B8G8R8A8, bytes, stride),
                         g_object_unref);
}

static gboolean
covers (const Order *order, const OxView *view, double spare_px)
{
  OxBox outer = ox_view_get_box (&order->view);
  OxView wanted = ox_view_with_size (view, view->width_px + 2 * spare_px, view->height_px + 2 * spare_px);
  OxBox inner = ox_view_get_box (&wanted);

  return order->view.px_per_m == view->px_per_m && inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1
         && inner.y1 <= outer.y1;
}

static gboolean
is_current (OxFloorLayer *self, double spare_px)
{
  const Order *order = self->painted;

  return order != NULL && order->drawing == self->drawing && order->traced == self->traced && order->grid == self->grid
         && order->palette == ox_palette_of (GTK_WIDGET (self))
         && order->scale == gtk_widget_get_scale_factor (GTK_WIDGET (self)) && covers (order, &self->view, spare_px);
}

static void
painted_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  OxFloorLayer *self = OX_FLOOR_LAYER (source);
  Order *order = g_task_get_task_data (G_TASK (result));

  (void) data;
  self->painting = FALSE;
  g_clear_object (&self->picture);
  g_clear_pointer (&self->painted, order_free);
  g_clear_pointer (&self->pixels, cairo_surface_destroy);
  self->picture = g_task_propagate_pointer (G_TASK (result), NULL);
  self->pixels = cairo_surface_reference (order->surface);
  self->painted = g_memdup2 (order, sizeof *order);
  self->painted->surface = NULL;
  ox_drawing_ref (order->drawing);
  if (order->traced != NULL)
    ox_traced_set_ref (order->traced);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  order_picture (self);
}

static void
order_picture (OxFloorLayer *self)
{
  Order *order;
  g_autoptr (GTask) task = NULL;

  if (self->painting || self->drawing == NULL || self->view.width_px < 1 || is_current (self, SPARE_PX)
      || gtk_widget_get_root (GTK_WIDGET (self)) == NULL)
    return;
  order = g_new0 (Order, 1);
  order->drawing = ox_drawing_ref (self->drawing);
  order->traced = self->traced != NULL ? ox_traced_set_ref (self->traced) : NULL;
  order->view
      = ox_view_with_size (&self->view, self->view.width_px + 2 * MARGIN_PX, self->view.height_px + 2 * MARGIN_PX);
  order->palette = ox_palette_of (GTK_WIDGET (self));
  order->grid = self->grid;
  order->scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  self->painting = TRUE;
  task = g_task_new (self, NULL, painted_cb, NULL);
  g_task_set_task_data (task, order, order_free);
  g_task_run_in_thread (task, paint_thread);
}

/* Without a graphics card GTK would convert all of a texture in each frame, what lies out of sight too. */
static void
append_by_cairo (OxFloorLayer *self, GtkSnapshot *snapshot, const graphene_rect_t *place)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));
  cairo_surface_t *surface = self->pixels;
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  cairo_translate (cr, place->origin.x, place->origin.y);
  cairo_scale (cr, place->size.width / cairo_image_surface_get_width (surface),
               place->size.height / cairo_image_surface_get_height (surface));
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_FAST);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
ox_floor_layer_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  OxFloorLayer *self = OX_FLOOR_LAYER (widget);
  guint32 ground = ox_palette_get_ground (ox_palette_of (widget));
  GdkRGBA colour = { (float) ((ground >> 16) & 0xff) / 255, (float) ((ground >> 8) & 0xff) / 255,
                     (float) (ground & 0xff) / 255, 1 };
  OxPixel corner, opposite;
  graphene_rect_t place;
  OxBox box;

  gtk_snapshot_append_color (
      snapshot, &colour,
      &GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget), (float) gtk_widget_get_height (widget)));
  if (self->picture == NULL)
    return;
  box = ox_view_get_box (&self->painted->view);
  corner = ox_view_to_pixel (&self->view, (OxPoint){ box.x0, box.y1 });
  opposite = ox_view_to_pixel (&self->view, (OxPoint){ box.x1, box.y0 });
  /* At rest the picture lies on whole pixels: anything else would blur it. */
  place = GRAPHENE_RECT_INIT ((float) round (corner.x), (float) round (corner.y), (float) round (opposite.x - corner.x),
                              (float) round (opposite.y - corner.y));
  if (GSK_IS_CAIRO_RENDERER (gtk_native_get_renderer (gtk_widget_get_native (widget))))
    append_by_cairo (self, snapshot, &place);
  else
    gtk_snapshot_append_texture (snapshot, self->picture, &place);
}

void
ox_floor_layer_set_drawing (OxFloorLayer *self, const OxDrawing *drawing)
{
  OxDrawing *copy = drawing != NULL ? ox_drawing_ref (drawing) : NULL;

  g_clear_pointer (&self->drawing, ox_drawing_unref);
  self->drawing = copy;
  order_picture (self);
}

void
ox_floor_layer_set_traced (OxFloorLayer *self, const OxTracedSet *traced)
{
  OxTracedSet *copy = ox_traced_set_ref (traced);

  g_clear_pointer (&self->traced, ox_traced_set_unref);
  self->traced = copy;
  order_picture (self);
}

void
ox_floor_layer_set_view (OxFloorLayer *self, const OxView *view)
{
  self->view = *view;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  order_picture (self);
}

void
ox_floor_layer_set_grid (OxFloorLayer *self, double step)
{
  self->grid = step;
  order_picture (self);
}

gboolean
ox_floor_layer_is_settled (OxFloorLayer *self)
{
  return !self->painting && (self->drawing == NULL || is_current (self, 0));
}

OxPalette
ox_palette_of (GtkWidget *widget)
{
  GdkRGBA ink;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  return ink.red + ink.green + ink.blue > 1.5f ? OX_PALETTE_NIGHT : OX_PALETTE_PAPER;
}

static void
ox_floor_layer_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (ox_floor_layer_parent_class)->css_changed (widget, change);
  order_picture (OX_FLOOR_LAYER (widget));
}

static void
ox_floor_layer_finalize (GObject *object)
{
  OxFloorLayer *self = OX_FLOOR_LAYER (object);

  g_clear_pointer (&self->drawing, ox_drawing_unref);
  g_clear_pointer (&self->traced, ox_traced_set_unref);
  g_clear_pointer (&self->painted, order_free);
  g_clear_object (&self->picture);
  g_clear_pointer (&self->pixels, cairo_surface_destroy);
  G_OBJECT_CLASS (ox_floor_layer_parent_class)->finalize (object);
}

static void
ox_floor_layer_class_init (OxFloorLayerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ox_floor_layer_finalize;
  GTK_WIDGET_CLASS (klass)->snapshot = ox_floor_layer_snapshot;
  GTK_WIDGET_CLASS (klass)->css_changed = ox_floor_layer_css_changed;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "floor");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ox_floor_layer_init (OxFloorLayer *self)
{
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (order_picture), NULL);
}

GtkWidget *
ox_floor_layer_new (void)
{
  return g_object_new (OX_TYPE_FLOOR_LAYER, NULL);
}
