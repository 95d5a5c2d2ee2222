/* Oxturn: tests/tools/test-preview - what a tool wants to be seen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/preview.h"

static void
test_copies (void)
{
  g_autoptr (OxPreview) preview = ox_preview_new ();
  OxPoint points[2] = { { 1, 2 }, { 3, 4 } };
  char text[] = "6.00 m";
  const OxPreviewShape *line, *label;

  ox_preview_add (preview, OX_PREVIEW_LINE, points, 2);
  ox_preview_add_label (preview, points[1], text);
  points[0].x = 99;
  text[0] = '9';
  line = g_ptr_array_index (preview->shapes, 0);
  label = g_ptr_array_index (preview->shapes, 1);
  g_assert_cmpuint (preview->shapes->len, ==, 2);
  g_assert_cmpfloat (line->points[0].x, ==, 1);
  g_assert_cmpint (label->kind, ==, OX_PREVIEW_LABEL);
  g_assert_cmpstr (label->text, ==, "6.00 m");
  g_assert_cmpfloat (label->points[0].y, ==, 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tools/preview/copies", test_copies);
  return g_test_run ();
}
