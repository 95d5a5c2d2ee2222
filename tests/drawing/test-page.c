/* Oxturn: tests of drawing/page
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/page.h"
#include "support/ox-test.h"

static void
test_a_set_keeps_its_own_copies (void)
{
  char title[] = "Crew drawing";
  OxDrawing *drawing = ox_drawing_builder_end (ox_drawing_builder_new ());
  OxPage page = { .width_mm = 420, .height_mm = 297, .title = title, .label = title, .drawing = drawing };
  OxPageSet given = { .title = title, .n_pages = 1, .pages = &page };
  OxPageSet *set = ox_page_set_new (&given);
  title[0] = 'X';
  ox_drawing_unref (drawing);
  OxPageSet *other = ox_page_set_ref (set);
  ox_page_set_unref (set);
  g_assert_cmpstr (other->title, ==, "Crew drawing");
  g_assert_cmpstr (other->pages[0].title, ==, "Crew drawing");
  g_assert_cmpstr (other->author, ==, "");
  g_assert_cmpstr (other->pages[0].description, ==, "");
  g_assert_cmpuint (other->pages[0].drawing->n_elements, ==, 0);
  ox_page_set_unref (other);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/page/copies", test_a_set_keeps_its_own_copies);
  return g_test_run ();
}
