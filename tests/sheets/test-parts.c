/* Oxturn: tests of sheets/parts
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/parts.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static void
test_parts_make_up_the_floor (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  const double mm[2] = { 60, 50 };
  g_autoptr (OxParts) parts = ox_parts_new (job, 10, mm, 5);
  OxBox floor = ox_job_box (job);
  /* 10 mm a metre: so many times 6 m x 5 m. */
  g_assert_cmpuint (parts->n_columns, ==, (guint) ceil ((floor.x1 - floor.x0) / 6));
  g_assert_cmpuint (parts->n_rows, ==, (guint) ceil ((floor.y1 - floor.y0) / 5));
  double sum = 0;
  guint sheet = 5;
  for (guint i = 0; i < parts->n_columns * parts->n_rows; i++)
    {
      OxBox box = parts->parts[i].box;
      sum += (box.x1 - box.x0) * (box.y1 - box.y0);
      g_assert_cmpfloat ((box.x1 - box.x0) * 10, <=, mm[0] + 0.01);
      if (parts->parts[i].sheet > 0)
        g_assert_cmpuint (parts->parts[i].sheet, ==, sheet++);
    }
  ox_test_near (sum, (floor.x1 - floor.x0) * (floor.y1 - floor.y0), 1e-3);
  g_assert_cmpuint (parts->n_sheets, ==, sheet - 5);
}

static void
test_a_part_without_a_room_has_no_sheet (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  /* An L: nothing in its upper right quarter. */
  const OxPoint corners[] = { { 0, 0 }, { 20, 0 }, { 20, 10 }, { 10, 10 }, { 10, 20 }, { 0, 20 } };
  g_autoptr (OxRing) ring = ox_ring_new (corners, 6);
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .ring = ring });
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  const double mm[2] = { 100, 100 };
  g_autoptr (OxParts) parts = ox_parts_new (job, 10, mm, 2);
  const guint sheets[] = { 2, 0, 3, 4 };
  for (guint i = 0; i < 4; i++)
    g_assert_cmpuint (parts->parts[i].sheet, ==, sheets[i]);
}

/* On the drawing of the whole floor a sheet's number makes way for what stands in the middle of its part, and stays in
 * the part. */
static void
test_numbers_make_way (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  const double mm[2] = { 60, 50 };
  g_autoptr (OxParts) parts = ox_parts_new (job, 10, mm, 2);
  OxPlot plot = { .origin = { 0, 0 }, .mm_per_m = 10 };
  g_autoptr (OxLabels) labels = ox_labels_new (10);
  OxBox box = parts->parts[0].box;
  OxPoint middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  ox_labels_take (labels, &(OxLabelBox){ middle, 0, { -2.5, -2.5, 2.5, 2.5 } });
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_parts_append_grid (parts, &plot, builder, labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  const OxElement *first = ox_test_find_cell (drawing, "Sheet 2"), *second = ox_test_find_cell (drawing, "Sheet 3");
  g_assert_nonnull (first);
  g_assert_nonnull (second);
  g_assert_cmpfloat (fabs (first->text.at.y - middle.y * 10), >, 2.5);
  g_assert_true (first->text.at.y > box.y0 * 10 && first->text.at.y < box.y1 * 10);
  ox_test_near (second->text.at.y, middle.y * 10, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/parts/whole", test_parts_make_up_the_floor);
  g_test_add_func ("/parts/numbers-make-way", test_numbers_make_way);
  g_test_add_func ("/parts/empty", test_a_part_without_a_room_has_no_sheet);
  return g_test_run ();
}
