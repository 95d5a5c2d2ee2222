/* Oxturn: file/picture - what kind of picture a file is, by its first bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/picture.h"
#include <glib/gi18n-lib.h>
#include <string.h>
#include "file/job-xml.h"

#define PDF_WITHIN 1024       /* bytes before "%PDF-" that readers of PDF put up with (ISO 32000-1, annex H.3.4.1) */
#define SVG_WITHIN (64 * 1024)
#define TAIL (64 * 1024)      /* bytes that may stand behind the end of a picture */

typedef struct
{
  const guint8 *bytes;
  gsize n;
} Span;

static guint
big_endian (const guint8 *p, guint n)
{
  guint value = 0;
  for (guint i = 0; i < n; i++)
    value = value << 8 | p[i];
  return value;
}

/* Bytes, not a text: any of them may be 0. */
static gboolean
is_found (Span span, gsize within, const char *word)
{
  gsize length = strlen (word), n = MIN (span.n, within);
  for (gsize i = 0; i + length <= n; i++)
    if (memcmp (span.bytes + i, word, length) == 0)
      return TRUE;
  return FALSE;
}

/* What is cut off in the middle must not pass: decoders leave the dots that are missing as they come from memory. */
static gboolean
is_ended (Span span, const char *word, gsize length)
{
  for (gsize i = length; i <= span.n && i <= length + TAIL; i++)
    if (memcmp (span.bytes + span.n - i, word, length) == 0)
      return TRUE;
  return FALSE;
}

/* Signature, then the chunk IHDR with width and height (PNG specification, 5.2 and 11.2.2). */
static gboolean
sniff_png (Span span, OxPictureHead *head)
{
  static const guint8 signature[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };
  if (span.n < 33 || memcmp (span.bytes, signature, sizeof signature) != 0 || memcmp (span.bytes + 12, "IHDR", 4) != 0)
    return FALSE;
  *head = (OxPictureHead){ .kind = OX_TRACED_PNG,
                           .width_px = big_endian (span.bytes + 16, 4),
                           .height_px = big_endian (span.bytes + 20, 4) };
  return TRUE;
}

/* Start of frame: 0xc0 to 0xcf but for the tables DHT, JPG and DAC (ITU-T T.81, table B.1). */
static gboolean
starts_frame (guint8 marker)
{
  return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
}

static gboolean
sniff_jpeg (Span span, OxPictureHead *head)
{
  if (span.n < 4 || span.bytes[0] != 0xff || span.bytes[1] != 0xd8)
    return FALSE;
  gsize i = 2;
  while (i + 9 < span.n && span.bytes[i] == 0xff)
    {
      guint8 marker = span.bytes[i + 1];
      if (starts_frame (marker))
        {
          *head = (OxPictureHead){ .kind = OX_TRACED_JPEG,
                                   .width_px = big_endian (span.bytes + i + 7, 2),
                                   .height_px = big_endian (span.bytes + i + 5, 2) };
          return TRUE;
        }
      /* Any number of 0xff may stand before a marker. */
      i += marker == 0xff ? 1 : 2 + big_endian (span.bytes + i + 2, 2);
    }
  return FALSE;
}

/* "297mm" and the like; 0 for a size in dots, which says nothing about paper. Numbers as in CSS, never the locale's. */
static double
paper_mm (const char *text)
{
  static const struct
  {
    const char *unit;
    double mm;
  } units[] = { { "mm", 1 }, { "cm", 10 }, { "in", 25.4 }, { "pt", 25.4 / 72 } };
  char *end;
  double value = g_ascii_strtod (text, &end);
  for (guint i = 0; end != text && value > 0 && value < 1e6 && i < G_N_ELEMENTS (units); i++)
    if (g_str_has_prefix (end, units[i].unit))
      return value * units[i].mm;
  return 0;
}

static double
svg_size (const char *tag, const char *key)
{
  const char *at = tag;
  while ((at = strstr (at, key)) != NULL)
    {
      gboolean whole = at > tag && g_ascii_isspace (at[-1]);
      at += strlen (key);
      if (whole && at[0] == '=' && (at[1] == '"' || at[1] == '\''))
        return paper_mm (at + 2);
    }
  return 0;
}

/* The first tag is looked at as text: nothing that stands in it can do harm here. */
static gboolean
sniff_svg (Span span, OxPictureHead *head)
{
  g_autofree char *text = g_strndup ((const char *) span.bytes, MIN (span.n, SVG_WITHIN));
  char *tag = strstr (text, "<svg");
  char *end = tag ? strchr (tag, '>') : NULL;
  if (!end)
    return FALSE;
  *end = '\0';
  *head = (OxPictureHead){ .kind = OX_TRACED_SVG,
                           .paper_width_mm = svg_size (tag, "width"),
                           .paper_depth_mm = svg_size (tag, "height") };
  return TRUE;
}

static gboolean
sniff (Span span, OxPictureHead *head)
{
  if (sniff_png (span, head))
    return head->width_px > 0 && head->height_px > 0 && is_ended (span, "IEND", 4);
  if (sniff_jpeg (span, head))
    return head->width_px > 0 && head->height_px > 0 && is_ended (span, "\xff\xd9", 2);
  *head = (OxPictureHead){ .kind = OX_TRACED_PDF };
  return is_found (span, PDF_WITHIN, "%PDF-") || sniff_svg (span, head);
}

gboolean
ox_picture_sniff (GBytes *data, OxPictureHead *head, GError **error)
{
  Span span;
  span.bytes = g_bytes_get_data (data, &span.n);
  if (span.n == 0 || !sniff (span, head))
    {
      g_set_error_literal (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID,
                           _ ("This is no whole PNG, JPEG, SVG or PDF; only those can be traced"));
      return FALSE;
    }
  if ((double) head->width_px * head->height_px <= OX_PICTURE_MAX_PIXELS)
    return TRUE;
  g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE,
               _ ("The picture has %u x %u dots; %.0f million are allowed. Scan it at fewer dots an inch"), head->width_px,
               head->height_px, OX_PICTURE_MAX_PIXELS / 1e6);
  return FALSE;
}
