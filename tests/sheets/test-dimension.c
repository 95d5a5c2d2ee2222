/* Oxturn: tests of sheets/dimension
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/dimension.h"
#include "sheets/hall.h"
#include "support/ox-test.h"
#include <stdlib.h>
#include <string.h>

static void
test_figures_can_be_read (void)
{
  for (int k = 0; k < 72; k++)
    {
      double heading = k * G_PI / 36, angle;
      OxDimension dimension = { { 0, 0 }, { 50 * cos (heading), 50 * sin (heading) }, 9, "12.00" };
      OxPoint at = ox_dimension_get_text (&dimension, &angle);
      /* Upright or leaning, never upside down; exactly along the line. */
      g_assert_cmpfloat (angle, >, -G_PI / 2 + 1e-6);
      g_assert_cmpfloat (angle, <, G_PI / 2 + 1e-6);
      ox_test_near (fabs (sin (angle - heading)), 0, 1e-9);
      /* Above the line as one reads it. */
      OxPoint up = { -sin (angle), cos (angle) }, line = { -9 * sin (heading), 9 * cos (heading) };
      OxPoint middle = ox_point_add (ox_point_scale (dimension.b, 0.5), line);
      ox_test_near (ox_point_dot (ox_point_sub (at, middle), up), 1, 1e-9);
    }
}

static void
test_the_line_is_as_long_as_what_it_measures (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  OxDimension dimension = { { 10, 10 }, { 90, 40 }, -9, "8.54" };
  ox_dimension_append (&dimension, builder);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  const OxTrace *line = &drawing->traces[0];
  OxPoint a = drawing->points[line->start], b = drawing->points[line->start + 1];
  ox_test_near (ox_point_distance (a, b), hypot (80, 30), 1e-9);
  ox_test_near (ox_point_segment_distance (a, dimension.a, dimension.b, NULL), 9, 1e-9);
  g_assert_nonnull (ox_test_find_text (drawing, "8.54"));
}

/* bar_extent: mm from the left end of the bar's box with figure 0 ... to the right end */
static void
check_bar (OxUnits units, double denominator, const char *unit, double metres_per_unit)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_scale_bar_append (builder, (OxPoint){ 10, 20 }, (OxScale){ denominator, NULL }, units, "A3");
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  const OxElement *last = ox_test_find_text (drawing, unit);
  g_assert_nonnull (last);
  const OxElement *zero = NULL;
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && g_str_equal (drawing->elements[i].text.text, "0"))
      zero = &drawing->elements[i];
  g_assert_nonnull (zero);
  double says = g_ascii_strtod (last->text.text, NULL) * metres_per_unit;
  ox_test_near ((last->text.at.x - zero->text.at.x) * denominator / 1000, says, 1e-6 * says);
  g_assert_cmpfloat (last->text.at.x - zero->text.at.x, <, 80);
  g_assert_cmpfloat (last->text.at.x - zero->text.at.x, >, 20);
  ox_test_near (drawing->box.x1, last->text.at.x, 1e-9);
}

static void
test_the_bar_is_true (void)
{
  const double metric[] = { 10, 20, 50, 100, 200, 500, 1000, 2000 },
               us[] = { 48, 96, 120, 128, 192, 240, 384, 480, 1200 };
  for (guint i = 0; i < G_N_ELEMENTS (metric); i++)
    check_bar (OX_UNITS_METRES, metric[i], " m", 1);
  for (guint i = 0; i < G_N_ELEMENTS (us); i++)
    check_bar (OX_UNITS_FEET, us[i], " ft", 0.3048);
}

static void
test_north_points_north (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_north_append (builder, (OxPoint){ 50, 50 }, 120);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  const OxElement *letter = ox_test_find_text (drawing, "N");
  ox_test_near (atan2 (letter->text.at.y - 50, letter->text.at.x - 50), 120 * G_PI / 180, 1e-9);
  ox_test_near (drawing->elements[0].mark.angle, 120 * G_PI / 180, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/dimension/readable", test_figures_can_be_read);
  g_test_add_func ("/dimension/length", test_the_line_is_as_long_as_what_it_measures);
  g_test_add_func ("/dimension/bar", test_the_bar_is_true);
  g_test_add_func ("/dimension/north", test_north_points_north);
  return g_test_run ();
}
