/* Oxturn: tests of drawing/hatch
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/hatch.h"
#include "support/ox-test.h"

static const OxBox everywhere = { -1e6, -1e6, 1e6, 1e6 };

static OxDrawing *
draw (const char *wkt)
{
  g_autoptr (OxRegion) region = ox_test_region (wkt);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_region (builder, OX_STYLE_EDGE, region);
  return ox_drawing_builder_end (builder);
}

static double
total_length (const GArray *ends)
{
  double sum = 0;
  for (guint i = 0; i + 1 < ends->len; i += 2)
    sum += ox_point_distance (g_array_index (ends, OxPoint, i), g_array_index (ends, OxPoint, i + 1));
  return sum;
}

static void
test_lines_of_a_rectangle (void)
{
  g_autoptr (OxDrawing) drawing = draw ("POLYGON ((0.5 0.5, 10.5 0.5, 10.5 4.5, 0.5 4.5, 0.5 0.5))");
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_hatch_append (ends, drawing, &drawing->elements[0], &(OxHatchGrid){ 0, 1, everywhere });
  /* y = 1, 2, 3, 4, each 10 long */
  g_assert_cmpuint (ends->len, ==, 8);
  ox_test_near (total_length (ends), 40, 1e-9);
}

/* Lines at distance d cover area / d of length, whatever the angle, up to what is cut at the outline. */
static void
test_length_is_area_over_spacing (void)
{
  for (int k = 0; k < 50; k++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      OxDrawingBuilder *builder = ox_drawing_builder_new ();
      ox_drawing_builder_polygon (builder, OX_STYLE_EDGE, ring->points, ring->n);
      g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
      g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (OxPoint));
      double spacing = 0.01, angle = g_test_rand_double_range (0, G_PI);
      ox_hatch_append (ends, drawing, &drawing->elements[0], &(OxHatchGrid){ angle, spacing, everywhere });
      double area = fabs (ox_ring_area (ring));
      ox_test_near (total_length (ends) * spacing, area, 0.01 * ox_ring_perimeter (ring));
    }
}

static void
test_holes_stay_empty (void)
{
  g_autoptr (OxRegion) region = ox_test_region ("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (3 3, 7 3, 7 7, 3 7, 3 3))");
  g_autoptr (OxDrawing) drawing = draw ("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (3 3, 7 3, 7 7, 3 7, 3 3))");
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_hatch_append (ends, drawing, &drawing->elements[0], &(OxHatchGrid){ G_PI / 4, 0.3, everywhere });
  g_assert_cmpuint (ends->len, >, 20);
  for (guint i = 0; i + 1 < ends->len; i += 2)
    {
      OxPoint a = g_array_index (ends, OxPoint, i), b = g_array_index (ends, OxPoint, i + 1);
      g_assert_true (ox_region_contains (region, ox_point_scale (ox_point_add (a, b), 0.5)));
    }
}

static void
test_neighbours_share_their_lines (void)
{
  g_autoptr (OxDrawing) left = draw ("POLYGON ((0 0, 5 0, 5 5, 0 5, 0 0))"),
                        right = draw ("POLYGON ((5 0, 9 0, 9 5, 5 5, 5 0))");
  g_autoptr (GArray) a = g_array_new (FALSE, FALSE, sizeof (OxPoint)), b = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  OxHatchGrid grid = { 0, 0.7, everywhere };
  ox_hatch_append (a, left, &left->elements[0], &grid);
  ox_hatch_append (b, right, &right->elements[0], &grid);
  g_assert_cmpuint (a->len, ==, b->len);
  for (guint i = 0; i < a->len; i += 2)
    ox_test_near (g_array_index (a, OxPoint, i + 1).y, g_array_index (b, OxPoint, i).y, 1e-12);
}

static void
test_only_what_can_be_seen (void)
{
  g_autoptr (OxDrawing) drawing = draw ("POLYGON ((0 0, 1000 0, 1000 1000, 0 1000, 0 0))");
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_hatch_append (ends, drawing, &drawing->elements[0], &(OxHatchGrid){ 0, 0.1, { 500, 500, 501, 501 } });
  g_assert_cmpuint (ends->len, >=, 20);
  g_assert_cmpuint (ends->len, <=, 30);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hatch/rectangle", test_lines_of_a_rectangle);
  g_test_add_func ("/hatch/area", test_length_is_area_over_spacing);
  g_test_add_func ("/hatch/holes", test_holes_stay_empty);
  g_test_add_func ("/hatch/neighbours", test_neighbours_share_their_lines);
  g_test_add_func ("/hatch/within", test_only_what_can_be_seen);
  return g_test_run ();
}
