/* Oxturn: tests of sheets/lanes
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/floors.h"

/* As many lines as there are lanes, and each strip lies on one of them. */
static void
test_every_strip_lies_on_a_lane (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 5, "compact");
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_LANES);
  g_autoptr (GHashTable) numbers = g_hash_table_new (NULL, NULL); /* there is one room and one coat */
  for (guint i = 0; i < plan->n_strips; i++)
    g_hash_table_add (numbers, GUINT_TO_POINTER (plan->strips[i].lane));
  guint lanes = g_hash_table_size (numbers);
  g_assert_cmpuint (drawing->n_elements, ==, lanes);
  g_assert_cmpuint (lanes, <, plan->n_strips); /* columns part some lanes into several strips */
  for (guint i = 0; i < plan->n_strips; i++)
    {
      double off = INFINITY;
      for (guint k = 0; k < drawing->n_elements; k++)
        {
          const OxPoint *line = drawing->points + drawing->traces[drawing->elements[k].path.first_trace].start;
          double a = ox_point_segment_distance (plan->strips[i].a, line[0], line[1], NULL);
          double b = ox_point_segment_distance (plan->strips[i].b, line[0], line[1], NULL);
          off = MIN (off, MAX (a, b));
        }
      g_assert_cmpfloat (off, <, 0.001);
    }
}

/* A line is snapped across the floor of the room, past its columns, and never through a wall. */
static void
test_no_lane_leaves_the_room (void)
{
  const OxPoint u[] = { { 0, 0 }, { 13, 0 }, { 13, 3 }, { 17, 3 }, { 17, 0 }, { 30, 0 }, { 30, 8 }, { 0, 8 } };
  g_autoptr (OxRing) ring = ox_ring_new (u, G_N_ELEMENTS (u));
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .ring = ring });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_LANES);
  guint long_ones = 0;
  for (guint k = 0; k < drawing->n_elements; k++)
    {
      const OxPoint *line = drawing->points + drawing->traces[drawing->elements[k].path.first_trace].start;
      long_ones += ox_point_distance (line[0], line[1]) > 20;
      for (guint i = 0; i < ring->n; i++)
        g_assert_false (ox_segments_cross (line[0], line[1], ring->points[i], ring->points[(i + 1) % ring->n]));
    }
  g_assert_cmpuint (long_ones, >, 10); /* behind the notch */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/lanes/every-strip-lies-on-a-lane", test_every_strip_lies_on_a_lane);
  g_test_add_func ("/sheets/lanes/no-lane-leaves-the-room", test_no_lane_leaves_the_room);
  return g_test_run ();
}
