/* Oxturn: tests of sheets/dose-map
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/dose.h"
#include "job/edit.h"
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/floors.h"
#include "support/ox-test.h"

/* (transfer full): all that the drawing paints in @style, as one region */
static OxRegion *
painted (const OxDrawing *drawing, OxStyle style)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) ox_region_unref);
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_PATH || element->style != style)
        continue;
      const OxTrace *trace = &drawing->traces[element->path.first_trace];
      g_autoptr (OxRing) ring = ox_ring_new (drawing->points + trace->start, trace->n);
      if (ring->n > 2 && ox_ring_is_simple (ring, NULL))
        g_ptr_array_add (rings, ox_region_new_ring (ring));
    }
  return ox_region_union_many ((const OxRegion *const *) (gpointer) rings->pdata, rings->len);
}

static double
target_in (const OxPlan *plan, const OxRegion *region)
{
  g_autoptr (OxRegion) common = ox_region_intersection (plan->target, region);
  return ox_region_area (common);
}

/* What is painted has the areas that the dose along lines of the floor gives: another way to come to them. */
static void
check (const OxPlan *plan)
{
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (plan->job, plan, OX_FLOOR_DOSE);
  g_autoptr (OxRegion) once = painted (drawing, OX_STYLE_DOSE_ONCE);
  g_autoptr (OxRegion) twice = painted (drawing, OX_STYLE_DOSE_TWICE);
  g_autoptr (OxRegion) more = painted (drawing, OX_STYLE_DOSE_MORE);
  OxDose dose = ox_dose_of (plan);
  double error = 2 * dose.error_m2 + 0.02;
  ox_test_near (target_in (plan, once), dose.area[1] + dose.area[2] + dose.area[3], error);
  ox_test_near (target_in (plan, twice), dose.area[2] + dose.area[3], error);
  ox_test_near (target_in (plan, more), dose.area[3], error);
  g_assert_cmpfloat (dose.area[3], >, 0.05); /* there is something of each to be seen */
}

static void
test_areas_of_a_hall (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 5, "compact");
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  check (plan);
}

static void
test_areas_of_slanting_strips (void)
{
  g_autoptr (OxJob) floor = ox_test_floor_columns (16, 10, 0.4, 5, "compact");
  g_autoptr (OxJob) job = ox_job_with_direction (floor, floor->rooms[0]->id,
                                                 (OxDirection){ .kind = OX_DIRECTION_ANGLE, .angle_deg = 27 }, NULL);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  check (plan);
}

/* Over what strips cover lies what two of them share, over that what three do: the order of painting. */
static void
test_more_is_painted_over_less (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (20, 12, 0.5, 5, "compact");
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_DOSE);
  OxStyle last = OX_STYLE_DOSE_NONE;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      g_assert_cmpint (drawing->elements[i].style, >=, last);
      last = drawing->elements[i].style;
    }
  g_assert_cmpint (last, ==, OX_STYLE_DOSE_MORE);
}

/* Two coats over each other are wanted and no double dose: each coat counts for itself. */
static void
test_coats_count_each_for_itself (void)
{
  g_autoptr (OxJob) floor = ox_test_floor_rectangle (9, 7, "compact");
  OxRoom draft = *floor->rooms[0];
  draft.coats = 2;
  draft.coat_turn_deg = 90;
  g_autoptr (OxRoom) room = ox_room_new (&draft);
  g_autoptr (OxJob) job = ox_job_with_room (floor, room, NULL);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_DOSE);
  g_autoptr (OxRegion) twice = painted (drawing, OX_STYLE_DOSE_TWICE);
  g_assert_cmpuint (plan->n_coats, ==, 2);
  g_assert_cmpfloat (ox_region_area (twice), <, 0.6 * plan->totals.target_m2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/dose-map/areas-of-a-hall", test_areas_of_a_hall);
  g_test_add_func ("/sheets/dose-map/areas-of-slanting-strips", test_areas_of_slanting_strips);
  g_test_add_func ("/sheets/dose-map/more-is-painted-over-less", test_more_is_painted_over_less);
  g_test_add_func ("/sheets/dose-map/coats-count-each-for-itself", test_coats_count_each_for_itself);
  return g_test_run ();
}
