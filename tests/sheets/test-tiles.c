/* Oxturn: tests of sheets/tiles
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/tiles.h"
#include "drawing/text.h"
#include "paint/cairo.h"
#include "paint/svg.h"
#include "sheets/hall.h"
#include "support/ox-test.h"
#include <string.h>

/* a page with a square in its upper left corner and a long line near its lower side */
static OxPageSet *
sample (double width, double height)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_layer (builder, "sample", "Sample");
  ox_drawing_builder_box (builder, OX_STYLE_BAR, (OxBox){ 10, height - 60, 60, height - 10 });
  ox_drawing_builder_line (builder, OX_STYLE_FRAME, (OxPoint){ 10, 30 }, (OxPoint){ width - 10, 30 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  char title[] = "Sample", label[] = "1", none[] = "";
  OxPage page = {
    .width_mm = width, .height_mm = height, .title = title, .description = none, .label = label, .drawing = drawing
  };
  OxPageSet set = { .title = title, .n_pages = 1, .pages = &page };
  return ox_page_set_new (&set);
}

/* The worked example: A1 landscape in pieces of 190 mm x 277 mm that share 10 mm: ceil (831/180) = 5 by ceil (584/267)
 * = 3. */
static void
test_count (void)
{
  g_assert_cmpuint (ox_tiles_count (841, 190, 10), ==, 5);
  g_assert_cmpuint (ox_tiles_count (594, 277, 10), ==, 3);
  g_assert_cmpuint (ox_tiles_count (190, 190, 10), ==, 1);
  g_assert_cmpuint (ox_tiles_count (100, 190, 10), ==, 1);
  g_assert_cmpuint (ox_tiles_count (370, 190, 10), ==, 2);
  g_assert_cmpuint (ox_tiles_count (370.1, 190, 10), ==, 3);
}

/* Together the pieces show the page without a gap, neighbours share the overlap, and only blank ones are missing. */
static void
test_pieces (void)
{
  g_autoptr (OxPageSet) whole = sample (841, 594);
  g_autoptr (OxPageSet) tiles = ox_tiles_new (whole, ox_paper_find ("A4"), 10);
  double area = 0;
  for (guint i = 0; i < tiles->n_pages; i++)
    {
      const OxPage *tile = &tiles->pages[i];
      OxBox piece = tile->piece;
      g_assert_true (tile->part == whole->pages[0].drawing);
      g_assert_cmpfloat (tile->piece_at.x, >=, 10);
      g_assert_cmpfloat (tile->piece_at.x + piece.x1 - piece.x0, <=, tile->width_mm - 10 + 1e-9);
      g_assert_cmpfloat (tile->piece_at.y + piece.y1 - piece.y0, <=, tile->height_mm - 10 + 1e-9);
      area += (piece.x1 - piece.x0) * (piece.y1 - piece.y0);
      for (guint k = 0; k < i; k++)
        {
          OxBox other = tiles->pages[k].piece;
          double across = MIN (piece.x1, other.x1) - MAX (piece.x0, other.x0),
                 up = MIN (piece.y1, other.y1) - MAX (piece.y0, other.y0);
          if (across > 1e-9 && up > 1e-9)
            g_assert_true (fabs (across - 10) < 1e-9 || fabs (up - 10) < 1e-9);
        }
    }
  /* The square is on the first tile, the line crosses a whole row: the rows between are blank. */
  g_assert_cmpstr (tiles->pages[0].label, ==, "1-A1");
  g_assert_cmpfloat (area, <, 841 * 594);
  g_assert_nonnull (ox_test_find_text (tiles->pages[0].drawing, "Blank, left out: A2"));
  g_autofree char *of = g_strdup_printf ("A1 of %u", tiles->n_pages);
  g_assert_nonnull (ox_test_find_text (tiles->pages[0].drawing, of));
}

static guint
find_crosses (const OxPage *page, OxPoint *out)
{
  guint n = 0;
  const OxDrawing *drawing = page->drawing;
  for (guint i = 0; i + 1 < drawing->n_elements && n < 4; i++)
    {
      OxBox a = drawing->elements[i].box, b = drawing->elements[i + 1].box;
      if (strcmp (drawing->layers[drawing->elements[i].layer].id, "register-marks") != 0 || a.y0 != a.y1
          || b.x0 != b.x1)
        continue;
      OxPoint at = { b.x0 - page->piece_at.x + page->piece.x0, a.y0 - page->piece_at.y + page->piece.y0 };
      out[n++] = at;
    }
  return n;
}

/* Laid side by side, the marks of two neighbours lie on one another within 0.05 mm. */
static void
test_register_marks (void)
{
  g_autoptr (OxPageSet) whole = sample (841, 594);
  g_autoptr (OxPageSet) tiles = ox_tiles_new (whole, ox_paper_find ("Letter"), 12);
  const OxPage *left = NULL, *right = NULL;
  for (guint i = 0; i < tiles->n_pages; i++)
    for (guint k = 0; k < tiles->n_pages; k++)
      if (fabs (tiles->pages[i].piece.x1 - tiles->pages[k].piece.x0 - 12) < 1e-9
          && tiles->pages[i].piece.y0 == tiles->pages[k].piece.y0)
        {
          left = &tiles->pages[i];
          right = &tiles->pages[k];
          OxPoint a[4], b[4];
          g_assert_cmpuint (find_crosses (left, a), ==, 4);
          g_assert_cmpuint (find_crosses (right, b), ==, 4);
          guint same = 0;
          for (int m = 0; m < 4; m++)
            for (int n = 0; n < 4; n++)
              same += ox_point_distance (a[m], b[n]) < 0.05;
          g_assert_cmpuint (same, ==, 2);
        }
  g_assert_nonnull (right);
}

static gboolean
is_dark (const guint8 *pixel)
{
  return pixel[0] + pixel[1] + pixel[2] < 3 * 140;
}

/* Painted at true scale, the square of 50 mm is where it belongs, and nothing of the piece stands in the margin. */
static void
test_painted (void)
{
  g_autoptr (OxPageSet) whole = sample (841, 594);
  g_autoptr (OxPageSet) tiles = ox_tiles_new (whole, ox_paper_find ("A4"), 10);
  const OxPage *tile = &tiles->pages[0];
  const double px = 4;
  int width = (int) (tile->width_mm * px), height = (int) (tile->height_mm * px);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  ox_paint_page (cr, tile, px);
  cairo_surface_flush (surface);
  const guint8 *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface), dark = 0;
  int y = (int) ((10 + 35) * px); /* in the middle of the square, below the upper margin */
  for (int x = 0; x < width; x++)
    dark += is_dark (data + y * stride + 4 * x);
  ox_test_near (dark / px, 50, 1);
  for (int x = 0; x < 9 * px; x++)
    g_assert_false (is_dark (data + y * stride + 4 * x));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  g_autoptr (GBytes) svg = ox_svg_new (tile);
  g_assert_nonnull (g_strstr_len (g_bytes_get_data (svg, NULL), (gssize) g_bytes_get_size (svg), "id=\"piece\""));
}

/* What fits stays whole; the check line is 100 mm. */
static void
test_whole_page_and_check_line (void)
{
  g_autoptr (OxPageSet) small = sample (210, 297), large = sample (420, 297);
  g_autoptr (OxPageSet) kept = ox_tiles_new (small, ox_paper_find ("A4"), 10),
                        tiles = ox_tiles_new (large, ox_paper_find ("A4"), 10);
  g_assert_cmpuint (kept->n_pages, ==, 1);
  g_assert_null (kept->pages[0].part);
  const OxDrawing *drawing = tiles->pages[0].drawing;
  guint lines = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    if (strcmp (drawing->layers[drawing->elements[i].layer].id, "check-line") == 0
        && drawing->elements[i].kind == OX_ELEMENT_PATH)
      lines += fabs (drawing->elements[i].box.x1 - drawing->elements[i].box.x0 - 100) < 1e-9;
  g_assert_cmpuint (lines, ==, 1);
  ox_test_no_texts_overlap (drawing, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/tiles/count", test_count);
  g_test_add_func ("/sheets/tiles/pieces-make-up-the-page", test_pieces);
  g_test_add_func ("/sheets/tiles/register-marks-coincide", test_register_marks);
  g_test_add_func ("/sheets/tiles/painted-at-true-scale", test_painted);
  g_test_add_func ("/sheets/tiles/what-fits-stays-whole", test_whole_page_and_check_line);
  return g_test_run ();
}
