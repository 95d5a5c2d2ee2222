/* Oxturn: tests/app/test-dots - the dots of a picture, whole and halved.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/traced/dots.h"

/* Means of four, by hand; the odd column and row stand in for their missing neighbours. */
static void
test_halve (void)
{
  static const guint8 rows[3][9] = {
    { 10, 0, 1, 20, 0, 2, 100, 0, 3 },
    { 30, 0, 1, 40, 0, 2, 200, 0, 3 },
    { 50, 0, 1, 70, 0, 2, 250, 0, 3 },
  };
  OxDots dots, half;

  g_assert_true (ox_dots_init (&dots, 3, 3));
  for (guint y = 0; y < 3; y++)
    ox_dots_take_row (&dots, y, rows[y], FALSE);
  ox_dots_pack (&dots);
  g_assert_cmpuint (dots.channels, ==, 3);
  g_assert_true (ox_dots_halve (&dots, &half));
  g_assert_cmpuint (half.width, ==, 2);
  g_assert_cmpuint (half.height, ==, 2);
  g_assert_cmpuint (half.bytes[0], ==, 25);
  g_assert_cmpuint (half.bytes[3], ==, 150);
  g_assert_cmpuint (half.bytes[6], ==, 60);
  g_assert_cmpuint (half.bytes[9], ==, 250);
  ox_dots_clear (&dots);
  ox_dots_clear (&half);
}

/* Glass lies on white paper: half black is middle grey, none at all is white. */
static void
test_alpha (void)
{
  static const guint8 row[8] = { 0, 0, 0, 128, 0, 0, 0, 0 };
  OxDots dots;

  g_assert_true (ox_dots_init (&dots, 2, 1));
  ox_dots_take_row (&dots, 0, row, TRUE);
  ox_dots_pack (&dots);
  g_assert_cmpuint (dots.channels, ==, 1);
  g_assert_cmpuint (dots.bytes[0], ==, 127);
  g_assert_cmpuint (dots.bytes[1], ==, 255);
  ox_dots_clear (&dots);
}

static void
test_surface (void)
{
  static const guint8 rows[2][6] = { { 1, 2, 100, 255, 255, 255 }, { 9, 9, 9, 0x12, 0x34, 0xff } };
  OxDots dots;
  cairo_surface_t *plain, *turned;

  g_assert_true (ox_dots_init (&dots, 2, 2));
  ox_dots_take_row (&dots, 0, rows[0], FALSE);
  ox_dots_take_row (&dots, 1, rows[1], FALSE);
  plain = ox_dots_surface (&dots, &(OxDotsPart){ 1, 1, 1, 1 }, FALSE);
  turned = ox_dots_surface (&dots, &(OxDotsPart){ 1, 1, 1, 1 }, TRUE);
  g_assert_cmphex (*(guint32 *) (gpointer) cairo_image_surface_get_data (plain) & 0xffffff, ==, 0x1234ff);
  g_assert_cmphex (*(guint32 *) (gpointer) cairo_image_surface_get_data (turned) & 0xffffff, ==, 0xedcb00);
  cairo_surface_destroy (plain);
  cairo_surface_destroy (turned);
  ox_dots_clear (&dots);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/dots/halve", test_halve);
  g_test_add_func ("/app/dots/alpha", test_alpha);
  g_test_add_func ("/app/dots/surface", test_surface);
  return g_test_run ();
}
