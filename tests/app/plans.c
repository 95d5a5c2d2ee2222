/* Oxturn: tests/app/plans - somebody's plan as a file, in each kind.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plans.h"

#include <cairo-pdf.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

static cairo_status_t
append_cb (void *bytes, const unsigned char *data, unsigned int n)
{
  g_byte_array_append (bytes, data, n);
  return CAIRO_STATUS_SUCCESS;
}

static GBytes *
new_pdf (void)
{
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append_cb, bytes, 40 / 25.4 * 72, 20 / 25.4 * 72);
  cairo_t *cr = cairo_create (surface);

  cairo_rectangle (cr, 0, 0, 20 / 25.4 * 72, 20 / 25.4 * 72);
  cairo_fill (cr);
  cairo_show_page (cr);
  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (bytes);
}

static GBytes *
new_pixbuf (const char *type)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 400, 200);
  g_autoptr (GdkPixbuf) left = gdk_pixbuf_new_subpixbuf (pixbuf, 0, 0, 200, 200);
  char *data = NULL;
  gsize n = 0;

  gdk_pixbuf_fill (pixbuf, 0xffffffff);
  gdk_pixbuf_fill (left, 0x000000ff);
  g_assert_true (gdk_pixbuf_save_to_buffer (pixbuf, &data, &n, type, NULL, NULL));
  return g_bytes_new_take (data, n);
}

GBytes *
ox_plan_file (OxTracedKind kind)
{
  static const char svg[] = "<svg xmlns='http://www.w3.org/2000/svg' width='40mm' height='20mm' viewBox='0 0 40 20'>"
                            "<rect width='40' height='20' fill='#fff'/><rect width='20' height='20'/></svg>";

  switch (kind)
    {
    case OX_TRACED_SVG:
      return g_bytes_new_static (svg, sizeof svg - 1);
    case OX_TRACED_PDF:
      return new_pdf ();
    case OX_TRACED_PNG:
    case OX_TRACED_JPEG:
      break;
    }
  return new_pixbuf (kind == OX_TRACED_PNG ? "png" : "jpeg");
}
