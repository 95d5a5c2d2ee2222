/* Oxturn: tests of drawing/drawing
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/drawing.h"
#include "drawing/text.h"
#include "support/ox-test.h"

static void
test_places_are_scaled_and_moved (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_place (builder, (OxPoint){ 100, 50 }, 10);
  ox_drawing_builder_line (builder, OX_STYLE_WALL, (OxPoint){ 1, 2 }, (OxPoint){ 3, 4 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  ox_test_near (drawing->points[0].x, 110, 1e-12);
  ox_test_near (drawing->points[1].y, 90, 1e-12);
  ox_test_near (drawing->box.x1, 130, 1e-12);
  ox_test_near (drawing->elements[0].box.y0, 70, 1e-12);
}

static void
test_layers_are_painted_as_begun (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_layer (builder, "low", "Low");
  ox_drawing_builder_layer (builder, "high", "High");
  ox_drawing_builder_line (builder, OX_STYLE_WALL, (OxPoint){ 0, 0 }, (OxPoint){ 1, 0 });
  ox_drawing_builder_layer (builder, "low", "");
  ox_drawing_builder_line (builder, OX_STYLE_OPEN, (OxPoint){ 0, 0 }, (OxPoint){ 1, 0 });
  ox_drawing_builder_line (builder, OX_STYLE_DROP, (OxPoint){ 0, 0 }, (OxPoint){ 1, 0 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  g_assert_cmpuint (drawing->n_layers, ==, 2);
  g_assert_cmpstr (drawing->layers[0].title, ==, "Low");
  g_assert_cmpint (drawing->elements[0].style, ==, OX_STYLE_OPEN);
  g_assert_cmpint (drawing->elements[1].style, ==, OX_STYLE_DROP);
  g_assert_cmpint (drawing->elements[2].style, ==, OX_STYLE_WALL);
}

/* A drawing of many small squares at random places, each with an id of its own. */
static OxDrawing *
draw_squares (guint n)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("Q%u", i);
      double x = g_test_rand_double_range (0, 100), y = g_test_rand_double_range (0, 100);
      ox_drawing_builder_item (builder, id, 0);
      ox_drawing_builder_box (builder, OX_STYLE_SOLID, (OxBox){ x, y, x + 2, y + 1 });
    }
  return ox_drawing_builder_end (builder);
}

static void
test_culling_finds_all_and_only_what_meets (void)
{
  g_autoptr (OxDrawing) drawing = draw_squares (500);
  for (int k = 0; k < 100; k++)
    {
      double x = g_test_rand_double_range (-5, 100), y = g_test_rand_double_range (-5, 100);
      OxBox box = { x, y, x + g_test_rand_double_range (0, 30), y + g_test_rand_double_range (0, 30) };
      guint next = ox_drawing_next_in (drawing, box, 0);
      for (guint i = 0; i < drawing->n_elements; i++)
        {
          OxBox b = drawing->elements[i].box;
          if (!(b.x0 <= box.x1 && box.x0 <= b.x1 && b.y0 <= box.y1 && box.y0 <= b.y1))
            continue;
          g_assert_cmpuint (next, ==, i);
          next = ox_drawing_next_in (drawing, box, i + 1);
        }
      g_assert_cmpuint (next, ==, drawing->n_elements);
    }
}

static void
test_hit_is_the_uppermost (void)
{
  g_autoptr (OxDrawing) drawing = draw_squares (300);
  for (int k = 0; k < 300; k++)
    {
      OxPoint p = { g_test_rand_double_range (0, 100), g_test_rand_double_range (0, 100) };
      const char *expected = NULL;
      for (guint i = 0; i < drawing->n_elements; i++)
        {
          OxBox b = drawing->elements[i].box;
          if (b.x0 < p.x && p.x < b.x1 && b.y0 < p.y && p.y < b.y1)
            expected = drawing->elements[i].id;
        }
      g_assert_cmpstr (ox_drawing_hit (drawing, p, 0.01), ==, expected);
    }
}

static void
test_lines_and_holes_are_hit_as_they_look (void)
{
  g_autoptr (OxRegion) ring = ox_test_region ("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (3 3, 7 3, 7 7, 3 7, 3 3))");
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_item (builder, "E1", 0);
  ox_drawing_builder_region (builder, OX_STYLE_EDGE, ring);
  ox_drawing_builder_item (builder, "J1", 0);
  ox_drawing_builder_line (builder, OX_STYLE_JOINT, (OxPoint){ 0, 20 }, (OxPoint){ 10, 20 });
  ox_drawing_builder_item (builder, "S1", 0);
  ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_STATION, OX_MARK_COLLECTOR, 0, 4 }, (OxPoint){ 30, 30 });
  ox_drawing_builder_item (builder, NULL, 0);
  ox_drawing_builder_box (builder, OX_STYLE_SOLID, (OxBox){ 0, 0, 1, 1 });
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 1.5, 5 }, 0.1), ==, "E1");
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 0.5, 0.5 }, 0.1), ==, "E1"); /* through what has no id */
  g_assert_null (ox_drawing_hit (drawing, (OxPoint){ 5, 5 }, 0.1));
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 5, 20.09 }, 0.1), ==, "J1");
  g_assert_null (ox_drawing_hit (drawing, (OxPoint){ 5, 20.11 }, 0.1));
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 30.3, 30.3 }, 0.5), ==, "S1");
  g_assert_null (ox_drawing_hit (drawing, (OxPoint){ 30.4, 30.4 }, 0.5));
}

static void
test_text_box_has_the_width_of_its_text (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  OxTextLook look = { OX_STYLE_INK, 2.5, G_PI / 2, OX_ALIGN_END, TRUE, FALSE, 0.5, FALSE };
  ox_drawing_builder_text (builder, look, (OxPoint){ 10, 20 }, "E12");
  ox_drawing_builder_text (builder, look, (OxPoint){ 10, 20 }, "");
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  g_assert_cmpuint (drawing->n_elements, ==, 1);
  OxPoint corners[4];
  ox_element_text_corners (&drawing->elements[0], 1, corners);
  OxBox box = OX_BOX_EMPTY;
  for (int i = 0; i < 4; i++)
    ox_box_add (&box, corners[i]);
  /* Upright, ending at its place: below it, as high to the left as to the right. */
  double w = ox_text_width ("E12", 2.5, FALSE);
  ox_test_near (box.y0, 20 - w - 0.5, 1e-9);
  ox_test_near (box.y1, 20.5, 1e-9);
  ox_test_near (box.x0, 10 - 1.25 - 0.5, 1e-9);
  ox_test_near (box.x1, 10 + 1.25 + 0.5, 1e-9);
  g_assert_cmpfloat (drawing->reach_mm, >=, w);
}

static void
test_a_drawing_in_a_drawing (void)
{
  g_autoptr (OxRegion) ring = ox_test_region ("POLYGON ((0 0, 4 0, 4 4, 0 4, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))");
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_drawing_builder_layer (builder, "edge", "Edge");
  ox_drawing_builder_item (builder, "E1", 5);
  ox_drawing_builder_region (builder, OX_STYLE_EDGE, ring);
  ox_drawing_builder_text (builder, (OxTextLook){ OX_STYLE_INK, 1.8, 0, OX_ALIGN_START, FALSE, FALSE, 0, FALSE },
                           (OxPoint){ 1, 1 }, "E1");
  g_autoptr (OxDrawing) inner = ox_drawing_builder_end (builder);
  builder = ox_drawing_builder_new ();
  ox_drawing_builder_place (builder, (OxPoint){ 20, 30 }, 10);
  ox_drawing_builder_drawing (builder, inner);
  g_autoptr (OxDrawing) outer = ox_drawing_builder_end (builder);
  g_assert_cmpuint (outer->n_elements, ==, 2);
  g_assert_cmpuint (outer->n_traces, ==, 2);
  g_assert_cmpstr (outer->layers[outer->elements[0].layer].id, ==, "edge");
  g_assert_cmpstr (outer->elements[0].id, ==, "E1");
  /* 5 mm a metre are 0.5 mm a unit, now that a metre is 10 units. */
  ox_test_near (outer->elements[0].from_mm, 0.5, 1e-12);
  ox_test_near (outer->box.x1, 60, 1e-12);
  ox_test_near (outer->elements[1].text.at.y, 40, 1e-12);
  ox_test_near (outer->elements[1].text.height_mm, 1.8, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/place", test_places_are_scaled_and_moved);
  g_test_add_func ("/drawing/layers", test_layers_are_painted_as_begun);
  g_test_add_func ("/drawing/culling", test_culling_finds_all_and_only_what_meets);
  g_test_add_func ("/drawing/hit", test_hit_is_the_uppermost);
  g_test_add_func ("/drawing/hit-looks", test_lines_and_holes_are_hit_as_they_look);
  g_test_add_func ("/drawing/text-box", test_text_box_has_the_width_of_its_text);
  g_test_add_func ("/drawing/nested", test_a_drawing_in_a_drawing);
  return g_test_run ();
}
