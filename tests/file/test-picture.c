/* Oxturn: tests/file/test-picture
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/picture.h"
#include <string.h>
#include "file/job-xml.h"
#include "support/ox-test.h"

#define PNG_HEAD(w, h)                                                                                                 \
  "\x89PNG\r\n\x1a\n\0\0\0\rIHDR" w h "\x08\0\0\0\0"                                                                   \
  "crc!....IEND"
#define BYTES(text) text, sizeof (text) - 1

static const struct
{
  const char *bytes;
  gsize n;
  OxPictureHead expected;
} known[] = {
  { BYTES (PNG_HEAD ("\0\0\x26\xcd", "\0\0\x36\xdb")), { OX_TRACED_PNG, 9933, 14043, 0, 0 } },
  /* SOI, an APP0 of 4 bytes, a quantisation table, then a progressive frame (SOF2) of 600 x 400 dots. */
  { BYTES ("\xff\xd8\xff\xe0\0\4ab\xff\xdb\0\3x\xff\xc2\0\x11\x08\x01\x90\x02\x58\1\1\x11\0\xff\xd9"), { OX_TRACED_JPEG, 600, 400, 0, 0 } },
  { BYTES ("%PDF-1.7\n%"), { OX_TRACED_PDF, 0, 0, 0, 0 } },
  { BYTES ("some rubbish before\n%PDF-1.4"), { OX_TRACED_PDF, 0, 0, 0, 0 } },
  { BYTES ("\0\0 before\0%PDF-1.4"), { OX_TRACED_PDF, 0, 0, 0, 0 } },
  { BYTES ("<?xml version='1.0'?><svg width='29.7cm' viewBox='0 0 1 1' height=\"8.5in\">"), { OX_TRACED_SVG, 0, 0, 297, 215.9 } },
  { BYTES ("<svg width='800' height='600px' stroke-width='3mm'>"), { OX_TRACED_SVG, 0, 0, 0, 0 } },
  { BYTES ("<svg stroke-width='3mm' width='72pt' height='-4mm'>"), { OX_TRACED_SVG, 0, 0, 25.4, 0 } },
};

static void
test_known (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      g_autoptr (GBytes) data = g_bytes_new (known[i].bytes, known[i].n);
      g_autoptr (GError) error = NULL;
      OxPictureHead head;
      gboolean found = ox_picture_sniff (data, &head, &error);
      g_assert_no_error (error);
      g_assert_true (found);
      g_assert_cmpint (head.kind, ==, known[i].expected.kind);
      g_assert_cmpuint (head.width_px, ==, known[i].expected.width_px);
      g_assert_cmpuint (head.height_px, ==, known[i].expected.height_px);
      ox_test_near (head.paper_width_mm, known[i].expected.paper_width_mm, 1e-9);
      ox_test_near (head.paper_depth_mm, known[i].expected.paper_depth_mm, 1e-9);
    }
}

static void
assert_refused (const char *bytes, gsize n, OxFileError code)
{
  g_autoptr (GBytes) data = g_bytes_new (bytes, n);
  g_autoptr (GError) error = NULL;
  OxPictureHead head;
  g_assert_false (ox_picture_sniff (data, &head, &error));
  g_assert_error (error, OX_FILE_ERROR, (gint) code);
}

static void
test_refused (void)
{
  assert_refused (BYTES (""), OX_FILE_ERROR_INVALID);
  assert_refused (BYTES ("GIF89a"), OX_FILE_ERROR_INVALID);
  assert_refused (BYTES ("<html><body>"), OX_FILE_ERROR_INVALID);
  assert_refused (BYTES ("<svg width='3mm'"), OX_FILE_ERROR_INVALID);
  assert_refused (BYTES (PNG_HEAD ("\0\0\0\0", "\0\0\0\1")), OX_FILE_ERROR_INVALID);
  /* A few bytes that call for 18 million million dots. */
  assert_refused (BYTES (PNG_HEAD ("\xff\xff\xff\xff", "\xff\xff\xff\xff")), OX_FILE_ERROR_TOO_LARGE);
  assert_refused (BYTES ("\xff\xd8\xff\xc0\0\x11\x08\xff\xff\xff\xff\1\1\x11\0\xff\xd9"), OX_FILE_ERROR_TOO_LARGE);
}

/* Every length that a file can be cut to, and lengths in it that point beyond its end or stand still. */
static void
test_cut_off (void)
{
  for (guint i = 0; i < 2; i++)
    for (gsize n = 0; n + 1 < known[i].n; n++)
      assert_refused (known[i].bytes, n, OX_FILE_ERROR_INVALID);
  assert_refused (BYTES ("\xff\xd8\xff\xe0\xff\xff" "abcdefgh"), OX_FILE_ERROR_INVALID);
  assert_refused (BYTES ("\xff\xd8\xff\xe0\0\0\xff\xe0\0\0\xff\xe0\0\0ab"), OX_FILE_ERROR_INVALID);
  assert_refused (BYTES ("\xff\xd8\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff"), OX_FILE_ERROR_INVALID);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/picture/known", test_known);
  g_test_add_func ("/file/picture/refused", test_refused);
  g_test_add_func ("/file/picture/cut-off", test_cut_off);
  return g_test_run ();
}
