/* Oxturn: tests of drawing/view
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/view.h"
#include "support/ox-test.h"

static const OxView view = { { 10, 5 }, 20, 800, 600 };

static OxView
random_view (void)
{
  return (OxView){ { g_test_rand_double_range (-500, 500), g_test_rand_double_range (-500, 500) },
                   g_test_rand_double_range (0.1, 900),
                   g_test_rand_double_range (50, 2000),
                   g_test_rand_double_range (50, 2000) };
}

static void
test_known_places (void)
{
  OxPixel middle = ox_view_to_pixel (&view, (OxPoint){ 10, 5 });
  ox_test_near (middle.x, 400, 1e-9);
  ox_test_near (middle.y, 300, 1e-9);
  /* A metre up is 20 pixels up, and y counts down. */
  OxPixel up = ox_view_to_pixel (&view, (OxPoint){ 10, 6 });
  ox_test_near (up.y, 280, 1e-9);
  OxBox box = ox_view_get_box (&view);
  ox_test_near (box.x0, -10, 1e-9);
  ox_test_near (box.x1, 30, 1e-9);
  ox_test_near (box.y0, -10, 1e-9);
  ox_test_near (box.y1, 20, 1e-9);
}

static void
test_there_and_back (void)
{
  for (int i = 0; i < 200; i++)
    {
      OxView v = random_view ();
      OxPoint p = { g_test_rand_double_range (-900, 900), g_test_rand_double_range (-900, 900) };
      OxPoint back = ox_view_to_point (&v, ox_view_to_pixel (&v, p));
      ox_test_near (back.x, p.x, 1e-7);
      ox_test_near (back.y, p.y, 1e-7);
    }
}

static void
test_zoom_keeps_the_point_under_the_pointer (void)
{
  for (int i = 0; i < 200; i++)
    {
      OxView v = random_view ();
      OxPixel about = { g_test_rand_double_range (0, v.width_px), g_test_rand_double_range (0, v.height_px) };
      OxPoint before = ox_view_to_point (&v, about);
      OxView zoomed = ox_view_with_zoom (&v, g_test_rand_double_range (0.3, 4), about);
      OxPixel after = ox_view_to_pixel (&zoomed, before);
      ox_test_near (after.x, about.x, 1e-6);
      ox_test_near (after.y, about.y, 1e-6);
    }
}

static void
test_zoom_has_limits (void)
{
  OxPixel about = { 100, 100 };
  OxView in = ox_view_with_zoom (&view, 1e9, about), out = ox_view_with_zoom (&view, 1e-9, about);
  g_assert_cmpfloat (in.px_per_m, ==, OX_VIEW_MAX_PX_PER_M);
  g_assert_cmpfloat (out.px_per_m, ==, OX_VIEW_MIN_PX_PER_M);
}

static void
test_pan_follows_the_hand (void)
{
  OxPoint held = ox_view_to_point (&view, (OxPixel){ 100, 200 });
  OxView moved = ox_view_with_pan (&view, (OxPixel){ 30, -40 });
  OxPixel now = ox_view_to_pixel (&moved, held);
  ox_test_near (now.x, 130, 1e-9);
  ox_test_near (now.y, 160, 1e-9);
}

static void
test_size_keeps_the_middle (void)
{
  OxView larger = ox_view_with_size (&view, 1000, 900);
  OxPixel middle = ox_view_to_pixel (&larger, view.centre);
  ox_test_near (middle.x, 500, 1e-9);
  ox_test_near (middle.y, 450, 1e-9);
  g_assert_cmpfloat (larger.px_per_m, ==, view.px_per_m);
}

static void
test_fit_touches_one_pair_of_margins (void)
{
  for (int i = 0; i < 200; i++)
    {
      OxView v = random_view ();
      OxBox box = { g_test_rand_double_range (-99, 0), g_test_rand_double_range (-99, 0), 0, 0 };
      box.x1 = box.x0 + g_test_rand_double_range (1, 90);
      box.y1 = box.y0 + g_test_rand_double_range (1, 90);
      OxView fit = ox_view_with_fit (&v, box, 10);
      OxPixel low = ox_view_to_pixel (&fit, (OxPoint){ box.x0, box.y0 }),
              high = ox_view_to_pixel (&fit, (OxPoint){ box.x1, box.y1 });
      ox_test_near (low.x + high.x, fit.width_px, 1e-6);
      ox_test_near (low.y + high.y, fit.height_px, 1e-6);
      g_assert_cmpfloat (MIN (low.x, high.y), >=, 10 - 1e-6);
      ox_test_near (MIN (low.x, high.y), 10, 1e-6);
    }
}

static void
test_fit_of_nothing_keeps_the_scale (void)
{
  OxView none = ox_view_with_fit (&view, OX_BOX_EMPTY, 10);
  g_assert_cmpfloat (none.centre.x, ==, view.centre.x);
  OxView point = ox_view_with_fit (&view, (OxBox){ 3, 4, 3, 4 }, 10);
  g_assert_cmpfloat (point.px_per_m, ==, view.px_per_m);
  g_assert_cmpfloat (point.centre.x, ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/view/known-places", test_known_places);
  g_test_add_func ("/view/there-and-back", test_there_and_back);
  g_test_add_func ("/view/zoom-about", test_zoom_keeps_the_point_under_the_pointer);
  g_test_add_func ("/view/zoom-limits", test_zoom_has_limits);
  g_test_add_func ("/view/pan", test_pan_follows_the_hand);
  g_test_add_func ("/view/size", test_size_keeps_the_middle);
  g_test_add_func ("/view/fit", test_fit_touches_one_pair_of_margins);
  g_test_add_func ("/view/fit-nothing", test_fit_of_nothing_keeps_the_scale);
  return g_test_run ();
}
