/* Oxturn: tests of paint/cairo
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/cairo.h"
#include "paint/sample-pages.h"
#include "support/ox-test.h"

#define WIDTH 400
#define HEIGHT 300

static const OxView view = { { 2, 1.5 }, 100, WIDTH, HEIGHT };

static cairo_surface_t *
paint (const OxDrawing *drawing, const OxView *at, OxPalette palette)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  ox_paint_cairo (cr, drawing, &(OxPaintOptions){ *at, 4, palette });
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guint32
colour_at (cairo_surface_t *surface, int x, int y)
{
  const unsigned char *row
      = cairo_image_surface_get_data (surface) + (gsize) y * (gsize) cairo_image_surface_get_stride (surface);
  return ((const guint32 *) (const void *) row)[x] & 0xffffff;
}

static guint
count_colour (cairo_surface_t *surface, guint32 colour)
{
  guint n = 0;
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      n += colour_at (surface, x, y) == colour;
  return n;
}

static void
test_a_box_covers_its_pixels (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_box (builder, OX_STYLE_STRIP_OUT, (OxBox){ 1, 1, 3, 1.5 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  for (OxPalette palette = 0; palette < OX_N_PALETTES; palette++)
    {
      guint32 fill = ox_style_get (OX_STYLE_STRIP_OUT)->fill[palette];
      cairo_surface_t *surface = paint (drawing, &view, palette);
      g_assert_cmpuint (count_colour (surface, fill), ==, 200 * 50);
      g_assert_cmpuint (colour_at (surface, 101, 151), ==, fill);
      g_assert_cmpuint (colour_at (surface, 101, 149), ==, 0xffffff);
      cairo_surface_destroy (surface);
    }
}

static void
test_lines_have_paper_width_at_every_scale (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_line (builder, OX_STYLE_KEEP_BACK, (OxPoint){ 0, 0 }, (OxPoint){ 0, 0.001 });
  ox_drawing_builder_line (builder, OX_STYLE_FRAME, (OxPoint){ 2, -100 }, (OxPoint){ 2, 100 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  for (double scale = 30; scale < 3000; scale *= 3)
    {
      OxView at = view;
      at.px_per_m = scale;
      cairo_surface_t *surface = paint (drawing, &at, OX_PALETTE_PAPER);
      /* 0.7 mm at 4 pixels a mm are 2.8 pixels of ink a row, in parts of pixels where the edges are. */
      double ink = 0;
      for (int x = 100; x < 300; x++)
        ink += (255 - (colour_at (surface, x, 150) & 0xff)) / 255.0;
      guint32 full = ox_style_get (OX_STYLE_FRAME)->ink[OX_PALETTE_PAPER];
      ox_test_near (ink / ((255 - (full & 0xff)) / 255.0), 2.8, 0.1);
      cairo_surface_destroy (surface);
    }
}

static void
test_what_needs_a_larger_scale_waits_for_it (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_item (builder, "strip-3", 25);
  ox_drawing_builder_box (builder, OX_STYLE_STRIP_OUT, (OxBox){ 1, 1, 3, 2 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  guint32 fill = ox_style_get (OX_STYLE_STRIP_OUT)->fill[OX_PALETTE_PAPER];
  const struct
  {
    double px_per_m;
    gboolean shown;
  } cases[] = { { 99, FALSE }, { 101, TRUE } };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      OxView at = view;
      at.px_per_m = cases[i].px_per_m;
      cairo_surface_t *surface = paint (drawing, &at, OX_PALETTE_PAPER);
      g_assert_cmpint (count_colour (surface, fill) > 0, ==, cases[i].shown);
      cairo_surface_destroy (surface);
    }
}

static void
test_far_off_places_do_no_harm (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_box (builder, OX_STYLE_EDGE, (OxBox){ -10000, -10000, 10000, 10000 });
  ox_drawing_builder_text (builder, (OxTextLook){ OX_STYLE_INK, 2.5, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE },
                           (OxPoint){ 9999, 9999 }, "far");
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  OxView at = view;
  at.px_per_m = OX_VIEW_MAX_PX_PER_M;
  cairo_surface_t *surface = paint (drawing, &at, OX_PALETTE_PAPER);
  g_assert_cmpuint (count_colour (surface, 0xffffff), ==, 0);
  cairo_surface_destroy (surface);
}

static void
test_a_page_fills_its_size (void)
{
  g_autoptr (OxPageSet) set = ox_test_pages ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 420, 297);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  ox_paint_page (cr, &set->pages[0], 1);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  /* The wall of the sample runs from (50, 100) to (150, 100) mm from the lower left corner. */
  for (int x = 52; x < 148; x++)
    g_assert_cmpuint (colour_at (surface, x, 196) & colour_at (surface, x, 197), !=, 0xffffff);
  g_assert_cmpuint (colour_at (surface, 47, 197), ==, 0xffffff);
  g_assert_cmpuint (colour_at (surface, 153, 197), ==, 0xffffff);
  cairo_surface_destroy (surface);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cairo/box", test_a_box_covers_its_pixels);
  g_test_add_func ("/cairo/paper-width", test_lines_have_paper_width_at_every_scale);
  g_test_add_func ("/cairo/from-scale", test_what_needs_a_larger_scale_waits_for_it);
  g_test_add_func ("/cairo/far", test_far_off_places_do_no_harm);
  g_test_add_func ("/cairo/page", test_a_page_fills_its_size);
  return g_test_run ();
}
