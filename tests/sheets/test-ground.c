/* Oxturn: tests of sheets/ground
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static double
length_of_style (const OxDrawing *drawing, OxStyle style, const char *id)
{
  double sum = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_PATH || element->style != style || !g_str_equal (element->id, id))
        continue;
      const OxTrace *trace = &drawing->traces[element->path.first_trace];
      for (guint k = 0; k + 1 < trace->n; k++)
        sum += ox_point_distance (drawing->points[trace->start + k], drawing->points[trace->start + k + 1]);
    }
  return sum;
}

static void
test_every_side_is_drawn_as_its_kind (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, NULL, OX_FLOOR_OUTLINE);
  ox_test_near (length_of_style (drawing, OX_STYLE_DROP, "R1"), 12, 1e-9);
  ox_test_near (length_of_style (drawing, OX_STYLE_WALL, "R1"), 8 + 12 + 8, 1e-9);
  /* All walls: once round, and the first side again for the corner. */
  ox_test_near (length_of_style (drawing, OX_STYLE_WALL, "R2"), 2 * (5 + 8) + 5, 1e-9);
}

static void
test_keep_back_lies_inside (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, NULL, OX_FLOOR_OUTLINE);
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_PATH && drawing->elements[i].style == OX_STYLE_KEEP_BACK)
      {
        ox_test_near (drawing->elements[i].box.y0, 0.6, 1e-9);
        ox_test_near (drawing->elements[i].box.y1, 0.6, 1e-9);
        return;
      }
  g_assert_not_reached ();
}

static void
test_obstacles_have_the_style_of_their_kind (void)
{
  static const struct
  {
    const char *id;
    OxStyle style;
  } items[] = { { "O1", OX_STYLE_SOLID },
                { "O2", OX_STYLE_PIT },
                { "O3", OX_STYLE_MASKED },
                { "X1", OX_STYLE_EXCLUDED },
                { "J1", OX_STYLE_JOINT } };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, NULL, OX_FLOOR_OBSTACLES);
  for (guint i = 0; i < G_N_ELEMENTS (items); i++)
    {
      gboolean found = FALSE;
      for (guint k = 0; k < drawing->n_elements; k++)
        found |= g_str_equal (drawing->elements[k].id, items[i].id) && drawing->elements[k].style == items[i].style;
      g_assert_true (found);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ground/sides", test_every_side_is_drawn_as_its_kind);
  g_test_add_func ("/ground/keep-back", test_keep_back_lies_inside);
  g_test_add_func ("/ground/obstacles", test_obstacles_have_the_style_of_their_kind);
  return g_test_run ();
}
