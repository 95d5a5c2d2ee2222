/* Oxturn: an independent recount of a crew drawing: pixels as librsvg paints them, words as poppler finds them
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of the exported SVG only the outlines of one layer are kept, filled with one flat colour without smoothing;
 * rsvg-convert paints them. A pixel counts when its middle is covered, so the number of pixels tends to the area as
 * their number grows; the drawing is turned by an odd angle, lest sides that run along rows of pixels all err the same
 * way.
 */
#include "paint/cairo.h"
#include "paint/export.h"
#include "paint/svg.h"
#include "sheets/draft.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"
#include <cairo.h>
#include <libxml/parser.h>
#include <stdio.h>
#include <string.h>

#define PIXELS_PER_MM 10.0
#define X(text) ((const xmlChar *) (text))

static gboolean
has_value (xmlNode *node, const char *name, const char *value)
{
  xmlChar *found = xmlGetProp (node, X (name));
  gboolean same = found != NULL && g_str_equal ((const char *) found, value);
  xmlFree (found);
  return same;
}

/* keep_layer: takes away all other layers, and in that one what is not filled; the rest becomes black */
static void
keep_layer (xmlDoc *doc, const char *layer)
{
  g_autofree char *id = g_strconcat ("layer-", layer, NULL);
  for (xmlNode *group = xmlDocGetRootElement (doc)->children, *next; group != NULL; group = next)
    {
      next = group->next;
      if (!g_str_equal ((const char *) group->name, "g"))
        continue;
      if (!has_value (group, "id", id))
        {
          xmlUnlinkNode (group);
          xmlFreeNode (group);
          continue;
        }
      xmlSetProp (group, X ("transform"), X ("rotate(17 160 148)"));
      for (xmlNode *path = group->children, *after; path != NULL; path = after)
        {
          after = path->next;
          if (path->type != XML_ELEMENT_NODE || g_str_equal ((const char *) path->name, "title"))
            continue;
          if (has_value (path, "fill", "none"))
            {
              xmlUnlinkNode (path);
              xmlFreeNode (path);
              continue;
            }
          xmlSetProp (path, X ("fill"), X ("#000000"));
          xmlSetProp (path, X ("stroke"), X ("none"));
          xmlSetProp (path, X ("shape-rendering"), X ("crispEdges"));
        }
    }
}

/* black_area: m2 of floor in black on the page */
static double
black_area (const OxPage *page, const char *layer, double denominator)
{
  g_autoptr (GBytes) bytes = ox_svg_new (page);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  xmlDoc *doc = xmlReadMemory (data, (int) length, NULL, NULL, XML_PARSE_NONET);
  keep_layer (doc, layer);
  char *folder = ox_test_folder_new ();
  g_autofree char *svg = g_build_filename (folder, "layer.svg", NULL),
                  *png = g_build_filename (folder, "layer.png", NULL);
  g_assert_cmpint (xmlSaveFile (svg, doc), >, 0);
  xmlFreeDoc (doc);
  g_autofree char *width = g_strdup_printf ("%.0f", page->width_mm * PIXELS_PER_MM);
  const char *const argv[]
      = { "rsvg-convert", "--unlimited", "-w", width, "--keep-aspect-ratio", "-o", png, svg, NULL };
  g_autoptr (GError) error = NULL;
  int status;
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
  cairo_surface_t *image = cairo_image_surface_create_from_png (png);
  g_assert_cmpint (cairo_surface_status (image), ==, CAIRO_STATUS_SUCCESS);
  guint64 black = 0;
  int w = cairo_image_surface_get_width (image), h = cairo_image_surface_get_height (image);
  for (int y = 0; y < h; y++)
    {
      const unsigned char *row
          = cairo_image_surface_get_data (image) + (gsize) y * (gsize) cairo_image_surface_get_stride (image);
      for (int x = 0; x < w; x++)
        black += (((const guint32 *) (const void *) row)[x] & 0xffffff) < 0x808080;
    }
  cairo_surface_destroy (image);
  ox_test_folder_free (folder);
  double metres_per_pixel = page->width_mm / w * denominator / 1000;
  return (double) black * metres_per_pixel * metres_per_pixel;
}

static void
test_pixels_agree_with_the_plan (void)
{
  g_autofree char *program = g_find_program_in_path ("rsvg-convert");
  if (program == NULL)
    {
      g_test_skip ("rsvg-convert is not installed");
      return;
    }
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_assert_true (ox_scale_parse ("1:100", &options.scale));
  options.which = OX_SHEET_CREW;
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) crew = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  double edge = black_area (&crew->pages[0], "edge-work", 100), blasted = black_area (&crew->pages[0], "strips", 100);
  g_test_message ("blasted %.3f m2 counted, %.3f planned; edge work %.3f counted, %.3f planned", blasted,
                  plan->totals.blasted_m2, edge, plan->totals.edge_m2);
  ox_test_near (blasted / plan->totals.blasted_m2, 1, 0.005);
  ox_test_near (edge / plan->totals.edge_m2, 1, 0.005);
  options.which = OX_SHEET_SCOPE;
  g_autoptr (OxPageSet) scope = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  ox_test_near (black_area (&scope->pages[0], "strips", 100) / plan->totals.blasted_m2, 1, 0.005);
}

/* read_words: boxes of all words of a PDF in points, page by page one below another, each without the room above and
 * below its capitals */
static GArray *
read_words (const char *listing)
{
  GArray *words = g_array_new (FALSE, FALSE, sizeof (OxBox));
  double below = 0;
  g_auto (GStrv) lines = g_strsplit (listing, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      OxBox b;
      below += strstr (lines[i], "<page ") != NULL ? 1e5 : 0;
      const char *word = strstr (lines[i], "<word ");
      if (word == NULL
          || sscanf (word, "<word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\"", &b.x0, &b.y0, &b.x1, &b.y1)
                 != 4)
        continue;
      double cut = 0.18 * MIN (b.x1 - b.x0, b.y1 - b.y0);
      b = (OxBox){ b.x0 + cut, b.y0 + cut + below, b.x1 - cut, b.y1 - cut + below };
      g_array_append_val (words, b);
    }
  return words;
}

/* What poppler finds in the PDF: no word stands in another. */
static void
test_no_word_overlaps_another (void)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  if (program == NULL)
    {
      g_test_skip ("pdftotext is not installed");
      return;
    }
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  char *folder = ox_test_folder_new ();
  g_autofree char *pdf = g_build_filename (folder, "sheets.pdf", NULL);
  g_assert_true (ox_export_write (set, pdf, NULL, &error));
  g_autofree char *listing = NULL;
  const char *const argv[] = { "pdftotext", "-bbox", pdf, "-", NULL };
  g_assert_true (
      g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &listing, NULL, NULL, &error));
  ox_test_folder_free (folder);
  g_autoptr (GArray) words = read_words (listing);
  g_assert_cmpuint (words->len, >, 500);
  for (guint i = 0; i < words->len; i++)
    for (guint k = 0; k < i; k++)
      {
        OxBox a = g_array_index (words, OxBox, i), b = g_array_index (words, OxBox, k);
        if (a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
          g_test_message ("two words at %.1f, %.1f mm from the upper left corner", a.x0 / 72 * 25.4,
                          fmod (a.y0, 1e5) / 72 * 25.4);
        g_assert_false (a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1);
      }
}

/* --- What a copier leaves of the legend --- */

#define GREY_PER_MM 20

/* paint_sample: as the legend shows it, in grey of 0 (black) to 255; @width * @height of them; (transfer full) */
static guint8 *
paint_sample (const OxLegendEntry *entry, int *width, int *height)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  g_autoptr (OxBlock) block = ox_block_new ("", 60, 1.8);
  if (entry->is_mark)
    ox_block_add_mark (block, entry->style, entry->mark, "");
  else
    ox_block_add_sample (block, entry->style, entry->filled, "");
  ox_drawing_builder_layer (builder, "tables", "");
  ox_block_append (block, builder, (OxPoint){ 0, 20 }, 0, 1);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  OxPage page
      = { .width_mm = 60, .height_mm = 20, .title = (char *) "", .description = (char *) "", .drawing = drawing };
  *width = 10 * GREY_PER_MM;
  *height = 5 * GREY_PER_MM;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, *width, *height);
  cairo_t *cr = cairo_create (image);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  /* Below the title, which is empty here, and its line. */
  cairo_translate (cr, 0, -5.7 * GREY_PER_MM);
  ox_paint_page (cr, &page, GREY_PER_MM);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  guint8 *grey = g_new (guint8, (gsize) *width * (gsize) *height);
  for (int y = 0; y < *height; y++)
    for (int x = 0; x < *width; x++)
      {
        const unsigned char *row
            = cairo_image_surface_get_data (image) + (gsize) y * (gsize) cairo_image_surface_get_stride (image);
        guint32 c = ((const guint32 *) (const void *) row)[x];
        /* ITU-R BT.601 luma, as copiers and grey printing weigh colours */
        grey[y * *width + x] = (guint8) (0.299 * ((c >> 16) & 0xff) + 0.587 * ((c >> 8) & 0xff) + 0.114 * (c & 0xff));
      }
  cairo_surface_destroy (image);
  return grey;
}

/* largest_difference: the largest of two samples in grey, looked at through a window of 0.5 mm, which blurs as an old
 * copier does */
static double
largest_difference (const guint8 *a, const guint8 *b, int width, int height)
{
  const int window = GREY_PER_MM / 2;
  double most = 0;
  for (int y = 0; y + window <= height; y += window)
    for (int x = 0; x + window <= width; x += window)
      {
        double sum = 0;
        for (int i = 0; i < window * window; i++)
          {
            int at = (y + i / window) * width + x + i % window;
            sum += (double) a[at] - b[at];
          }
        most = MAX (most, fabs (sum) / (window * window));
      }
  return most;
}

/* whether two entries can stand in one legend: floor is told as one area or strip by strip */
static gboolean
may_meet (const OxLegendEntry *a, const OxLegendEntry *b)
{
  const OxLegendEntry *both[2] = { a, b };
  for (guint i = 0; i < 2; i++)
    if (both[i]->style == OX_STYLE_TO_PREPARE)
      return both[1 - i]->style < OX_STYLE_STRIP_OUT || both[1 - i]->style > OX_STYLE_PACE;
  return TRUE;
}

static void
test_the_legend_is_told_apart_in_grey (void)
{
  guint n;
  const OxLegendEntry *entries = ox_legend_entries (&n);
  g_autofree guint8 **samples = g_new (guint8 *, n);
  int width, height;
  for (guint i = 0; i < n; i++)
    samples[i] = paint_sample (&entries[i], &width, &height);
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i; k++)
      {
        double difference = largest_difference (samples[i], samples[k], width, height);
        g_test_message ("%s, %s: %.0f of 255", entries[i].text, entries[k].text, difference);
        if (may_meet (&entries[i], &entries[k]))
          g_assert_cmpfloat (difference, >=, 20);
      }
  for (guint i = 0; i < n; i++)
    g_free (samples[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/recount/pixels", test_pixels_agree_with_the_plan);
  g_test_add_func ("/recount/words", test_no_word_overlaps_another);
  g_test_add_func ("/recount/grey", test_the_legend_is_told_apart_in_grey);
  return g_test_run ();
}
