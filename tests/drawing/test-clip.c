/* Oxturn: tests of drawing/clip
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/clip.h"
#include "drawing/drawing.h"
#include "support/ox-test.h"

static const OxBox unit = { 0, 0, 1, 1 };

static double
area (const GArray *ring)
{
  double sum = 0;
  for (guint i = 0; i < ring->len; i++)
    sum += ox_point_cross (g_array_index (ring, OxPoint, i), g_array_index (ring, OxPoint, (i + 1) % ring->len)) / 2;
  return sum;
}

static void
test_area_of_what_is_left (void)
{
  /* A diamond of half diagonal d about the corner of the unit box leaves a quarter of its 2 d2. */
  const OxPoint diamond[] = { { 1.6, 1 }, { 1, 1.6 }, { 0.4, 1 }, { 1, 0.4 } };
  const OxPoint apart[] = { { 2, 2 }, { 3, 2 }, { 3, 3 } }, around[] = { { -1, -1 }, { 3, -1 }, { 3, 3 }, { -1, 3 } };
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  ox_clip_ring (out, diamond, 4, unit);
  ox_test_near (area (out), 2 * 0.36 / 4, 1e-12);
  ox_clip_ring (out, apart, 3, unit);
  g_assert_cmpuint (out->len, ==, 0);
  ox_clip_ring (out, around, 4, unit);
  ox_test_near (area (out), 1, 1e-12);
}

static void
test_lines (void)
{
  OxPoint a = { -1, 0.5 }, b = { 3, 0.5 };
  g_assert_true (ox_clip_line (&a, &b, unit));
  ox_test_near (a.x, 0, 1e-12);
  ox_test_near (b.x, 1, 1e-12);
  OxPoint c = { -1, 0.5 }, d = { 0.5, 2.5 }; /* passes the upper left corner outside */
  g_assert_false (ox_clip_line (&c, &d, unit));
  OxPoint e = { 0.2, 0.2 }, f = { 0.8, 0.4 };
  g_assert_true (ox_clip_line (&e, &f, unit));
  g_assert_true (e.x == 0.2 && e.y == 0.2 && f.x == 0.8 && f.y == 0.4);
}

static void
test_a_copied_drawing_stays_in_the_clip (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  const OxPoint zigzag[] = { { 0.5, 0.5 }, { 2, 0.5 }, { 2, 0.8 }, { 0.5, 0.8 } };
  ox_drawing_builder_polyline (builder, OX_STYLE_WALL, zigzag, 4);
  ox_drawing_builder_box (builder, OX_STYLE_ROOM, (OxBox){ -1, -1, 0.5, 0.5 });
  ox_drawing_builder_mark (builder, (OxMarkLook){ OX_STYLE_INK, OX_MARK_DOT, 0, 1 }, (OxPoint){ 1.5, 0.5 });
  g_autoptr (OxDrawing) whole = ox_drawing_builder_end (builder);
  OxDrawingBuilder *copy = ox_drawing_builder_new ();
  ox_drawing_builder_clip (copy, &unit);
  ox_drawing_builder_place (copy, (OxPoint){ 10, 0 }, 2);
  ox_drawing_builder_drawing (copy, whole);
  g_autoptr (OxDrawing) part = ox_drawing_builder_end (copy);
  g_assert_cmpuint (part->n_elements, ==, 2);
  g_assert_cmpuint (part->elements[0].path.n_traces, ==, 2); /* the way out and the way back */
  ox_test_near (part->box.x0, 10, 1e-12);
  ox_test_near (part->box.x1, 12, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clip/area", test_area_of_what_is_left);
  g_test_add_func ("/clip/lines", test_lines);
  g_test_add_func ("/clip/drawing", test_a_copied_drawing_stays_in_the_clip);
  return g_test_run ();
}
