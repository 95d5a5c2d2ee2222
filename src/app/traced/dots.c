/* Oxturn: app/traced/dots - the dots of a picture in rows without gaps, in one or three bytes each, whole and halved.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/traced/dots.h"

#include <string.h>

#define COLOUR_LEAST 10 /* difference of two channels below which a dot passes for grey: scans of grey paper are never quite grey */

gboolean
ox_dots_init (OxDots *dots, guint width, guint height)
{
  gsize n = (gsize) width * height * 3;

  *dots = (OxDots){ .width = width, .height = height, .channels = 3, .bytes = g_try_malloc (MAX (n, 1)) };
  if (dots->bytes == NULL)
    return FALSE;
  memset (dots->bytes, 0xff, n);
  return TRUE;
}

void
ox_dots_clear (OxDots *dots)
{
  g_clear_pointer (&dots->bytes, g_free);
}

static guint8 *
row_of (const OxDots *dots, guint y)
{
  return dots->bytes + (gsize) y * dots->width * dots->channels;
}

static guint8
on_white (guint8 value, guint8 alpha)
{
  return (guint8) ((value * alpha + 255 * (255 - alpha) + 127) / 255);
}

void
ox_dots_take_row (OxDots *dots, guint y, const guint8 *pixels, gboolean alpha)
{
  guint8 *to = row_of (dots, y);

  if (!alpha)
    {
      memcpy (to, pixels, (gsize) dots->width * 3);
      return;
    }
  for (guint x = 0; x < dots->width; x++, to += 3, pixels += 4)
    for (guint k = 0; k < 3; k++)
      to[k] = on_white (pixels[k], pixels[3]);
}

void
ox_dots_take_cairo (OxDots *dots, guint y, cairo_surface_t *surface)
{
  guint rows = MIN ((guint) cairo_image_surface_get_height (surface), dots->height - y);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);

  cairo_surface_flush (surface);
  for (guint i = 0; i < rows; i++)
    {
      const guint32 *from = (const guint32 *) (gconstpointer) (cairo_image_surface_get_data (surface) + i * stride);
      guint8 *to = row_of (dots, y + i);

      for (guint x = 0; x < dots->width; x++, to += 3)
        {
          to[0] = (guint8) (from[x] >> 16);
          to[1] = (guint8) (from[x] >> 8);
          to[2] = (guint8) from[x];
        }
    }
}

static gboolean
is_coloured (const guint8 *dot)
{
  return ABS (dot[0] - dot[1]) >= COLOUR_LEAST || ABS (dot[1] - dot[2]) >= COLOUR_LEAST
         || ABS (dot[0] - dot[2]) >= COLOUR_LEAST;
}

void
ox_dots_pack (OxDots *dots)
{
  gsize n = (gsize) dots->width * dots->height;

  for (gsize i = 0; i < n; i++)
    if (is_coloured (dots->bytes + 3 * i))
      return;
  for (gsize i = 0; i < n; i++)
    dots->bytes[i] = dots->bytes[3 * i + 1];
  dots->channels = 1;
  dots->bytes = g_realloc (dots->bytes, MAX (n, 1));
}

gboolean
ox_dots_halve (const OxDots *dots, OxDots *out)
{
  guint n = dots->channels;

  *out = (OxDots){ .width = (dots->width + 1) / 2, .height = (dots->height + 1) / 2, .channels = n };
  out->bytes = g_try_malloc ((gsize) out->width * out->height * n);
  if (out->bytes == NULL)
    return FALSE;
  for (guint y = 0; y < out->height; y++)
    {
      const guint8 *a = row_of (dots, 2 * y);
      const guint8 *b = row_of (dots, MIN (2 * y + 1, dots->height - 1));
      guint8 *to = row_of (out, y);

      for (guint x = 0; x < out->width; x++)
        {
          gsize left = (gsize) 2 * x * n;
          gsize right = (gsize) MIN (2 * x + 1, dots->width - 1) * n;

          for (guint k = 0; k < n; k++)
            *to++ = (guint8) ((a[left + k] + a[right + k] + b[left + k] + b[right + k] + 2) / 4);
        }
    }
  return TRUE;
}

cairo_surface_t *
ox_dots_surface (const OxDots *dots, const OxDotsPart *part, gboolean turned)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) part->width, (int) part->height);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  guint n = dots->channels;
  guint32 turn = turned ? 0xffffff : 0;

  cairo_surface_flush (surface);
  for (guint y = 0; y < part->height; y++)
    {
      const guint8 *from = row_of (dots, part->y + y) + (gsize) part->x * n;
      guint32 *to = (guint32 *) (gpointer) (cairo_image_surface_get_data (surface) + y * stride);

      for (guint x = 0; x < part->width; x++, from += n)
        to[x] = ((guint32) from[0] << 16 | (guint32) from[n / 2] << 8 | from[n - 1]) ^ turn;
    }
  cairo_surface_mark_dirty (surface);
  return surface;
}
