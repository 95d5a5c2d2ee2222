/* Oxturn: tests of drawing/mark
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/mark.h"
#include "support/ox-test.h"

static void
test_every_mark_has_a_shape_near_its_place (void)
{
  for (OxMarkKind kind = 0; kind < OX_N_MARKS; kind++)
    {
      guint n;
      const OxMarkPart *parts = ox_mark_get_parts (kind, &n);
      g_assert_cmpuint (n, >, 0);
      for (guint i = 0; i < n; i++)
        {
          g_assert_cmpuint (parts[i].n, <=, G_N_ELEMENTS (parts[i].points));
          g_assert_cmpuint (parts[i].n, >=, parts[i].radius > 0 ? 1 : 2);
          for (guint k = 0; k < parts[i].n; k++)
            g_assert_cmpfloat (hypot (parts[i].points[k].x, parts[i].points[k].y), <=, 1.5);
        }
    }
}

static void
test_arrow_ends_at_its_tip (void)
{
  OxElement element = { .kind = OX_ELEMENT_MARK };
  element.mark.kind = OX_MARK_ARROW;
  element.mark.at = (OxPoint){ 3, 4 };
  element.mark.angle = G_PI / 2;
  element.mark.size_mm = 2;
  guint n;
  const OxMarkPart *parts = ox_mark_get_parts (OX_MARK_ARROW, &n);
  for (guint k = 0; k < parts[0].n; k++)
    {
      /* Pointing up: all of it at or below the tip, and not further than its length. */
      OxPoint p = ox_mark_place (&element, parts[0].points[k], 0.1);
      g_assert_cmpfloat (p.y, <=, 4 + 1e-12);
      g_assert_cmpfloat (p.y, >=, 4 - 0.2 - 1e-12);
    }
  OxPoint tip = ox_mark_place (&element, (OxPoint){ 0, 0 }, 0.1);
  ox_test_near (tip.x, 3, 1e-12);
  ox_test_near (tip.y, 4, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mark/shapes", test_every_mark_has_a_shape_near_its_place);
  g_test_add_func ("/mark/arrow", test_arrow_ends_at_its_tip);
  return g_test_run ();
}
