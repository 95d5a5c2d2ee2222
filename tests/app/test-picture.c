/* Oxturn: tests/app/test-picture - files of plans decoded and painted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/traced/picture.h"

#include "file/job-xml.h"
#include "plans.h"
#include "support/ox-test.h"

static OxTracedPicture *
decode (OxTracedKind kind, guint page)
{
  g_autoptr (GBytes) data = ox_plan_file (kind);
  g_autoptr (GError) error = NULL;
  OxTracedPicture *picture = ox_traced_picture_new (data, page, NULL, &error);

  g_assert_no_error (error);
  return picture;
}

/* The grey of one dot of a picture of the floor: 100 x 100 pixels, 10 a metre, with the origin in the middle. */
static guint
shown_at (const OxTracedPicture *picture, const OxTracedLook *look, gboolean night, OxPoint at)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 100, 100);
  cairo_t *cr = cairo_create (surface);
  OxView view = { .px_per_m = 10, .width_px = 100, .height_px = 100 };
  OxPixel pixel = ox_view_to_pixel (&view, at);
  guint32 dot;

  cairo_set_source_rgb (cr, night ? 0 : 1, night ? 0 : 1, night ? 0 : 1);
  cairo_paint (cr);
  ox_traced_picture_paint (picture, cr, &view, look, night);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  dot = ((const guint32 *) (gconstpointer) cairo_image_surface_get_data (surface))[(int) pixel.y * 100 + (int) pixel.x];
  cairo_surface_destroy (surface);
  return dot & 0xff;
}

static const OxTracedLook flat = { .width = 4, .depth = 2, .strength = 1 };

static void
test_kinds (void)
{
  static const OxTracedKind kinds[] = { OX_TRACED_PNG, OX_TRACED_JPEG, OX_TRACED_SVG, OX_TRACED_PDF };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (OxTracedPicture) picture = decode (kinds[i], 1);

      ox_test_near (ox_traced_picture_aspect (picture), 2, 0.01);
      g_assert_cmpuint (shown_at (picture, &flat, FALSE, (OxPoint){ -1, 0.5 }), <, 8);
      g_assert_cmpuint (shown_at (picture, &flat, FALSE, (OxPoint){ 1, 0.5 }), >, 247);
      g_assert_cmpuint (shown_at (picture, &flat, FALSE, (OxPoint){ -2.5, 0 }), ==, 255);
      g_assert_cmpuint (shown_at (picture, &flat, FALSE, (OxPoint){ -1, 1.5 }), ==, 255);
    }
}

/* A quarter turn to the left brings the black half down; it lies where its middle is put. */
static void
test_place (void)
{
  g_autoptr (OxTracedPicture) picture = decode (OX_TRACED_PNG, 1);
  OxTracedLook look = { .middle = { 2, 1 }, .width = 4, .depth = 2, .angle_deg = 90, .strength = 1 };

  g_assert_cmpuint (shown_at (picture, &look, FALSE, (OxPoint){ 2, 0 }), ==, 0);
  g_assert_cmpuint (shown_at (picture, &look, FALSE, (OxPoint){ 2, 2 }), ==, 255);
  g_assert_cmpuint (shown_at (picture, &look, FALSE, (OxPoint){ 0.5, 0 }), ==, 255);
  look.strength = 0.4;
  ox_test_near (shown_at (picture, &look, FALSE, (OxPoint){ 2, 0 }), 0.6 * 255, 2);
}

/* On a dark ground black lines are light, and white paper is not there. */
static void
test_night (void)
{
  g_autoptr (OxTracedPicture) picture = decode (OX_TRACED_PNG, 1);

  g_assert_cmpuint (shown_at (picture, &flat, TRUE, (OxPoint){ -1, 0 }), ==, 255);
  g_assert_cmpuint (shown_at (picture, &flat, TRUE, (OxPoint){ 1, 0 }), ==, 0);
}

/* Held far off, near, and so near that it is a dot of the picture: the same colour. */
static void
test_any_size (void)
{
  g_autoptr (OxTracedPicture) picture = decode (OX_TRACED_PDF, 1);

  for (double width = 0.7; width < 3000; width *= 3)
    {
      OxTracedLook look = { .middle = { width / 4, 0 }, .width = width, .depth = width / 2, .strength = 1 };

      g_assert_cmpuint (shown_at (picture, &look, FALSE, (OxPoint){ 0.05, 0.05 }), <, 8);
    }
}

static void
test_pages (void)
{
  g_autoptr (GBytes) data = ox_plan_file (OX_TRACED_PDF);
  g_autoptr (OxTracedPicture) second = decode (OX_TRACED_PDF, 2);
  g_autoptr (GError) error = NULL;
  OxTracedInfo info;

  g_assert_cmpuint (shown_at (second, &flat, FALSE, (OxPoint){ -1, 0.5 }), ==, 255);
  g_assert_true (ox_traced_info_read (data, 1, &info, NULL));
  g_assert_cmpuint (info.pages, ==, 2);
  ox_test_near (info.paper_width_mm, 40, 0.01);
  ox_test_near (info.paper_depth_mm, 20, 0.01);
  g_assert_null (ox_traced_picture_new (data, 3, NULL, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
  g_assert_nonnull (strstr (error->message, "1 to 2"));
}

static void
assert_refused (const void *bytes, gsize n)
{
  g_autoptr (GBytes) data = g_bytes_new (bytes, n);
  g_autoptr (GError) error = NULL;

  g_assert_null (ox_traced_picture_new (data, 1, NULL, &error));
  g_assert_nonnull (error);
  g_assert_cmpuint (strlen (error->message), >, 10);
}

/* Cut off in the middle, or spoiled: refused in words, whatever the kind. */
static void
test_spoiled (void)
{
  static const OxTracedKind kinds[] = { OX_TRACED_PNG, OX_TRACED_SVG, OX_TRACED_PDF };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (GBytes) data = ox_plan_file (kinds[i]);

      assert_refused (g_bytes_get_data (data, NULL), MIN (g_bytes_get_size (data) / 2, 100));
    }
  assert_refused ("<svg width='1'>&bomb;", 21);
  assert_refused ("%PDF-1.7 and nothing else", 25);
}

static void
test_stopped (void)
{
  g_autoptr (GBytes) data = ox_plan_file (OX_TRACED_PDF);
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancel);
  g_assert_null (ox_traced_picture_new (data, 1, cancel, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/picture/kinds", test_kinds);
  g_test_add_func ("/app/picture/place", test_place);
  g_test_add_func ("/app/picture/night", test_night);
  g_test_add_func ("/app/picture/any-size", test_any_size);
  g_test_add_func ("/app/picture/pages", test_pages);
  g_test_add_func ("/app/picture/spoiled", test_spoiled);
  g_test_add_func ("/app/picture/stopped", test_stopped);
  return g_test_run ();
}
