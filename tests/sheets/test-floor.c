/* Oxturn: tests of sheets/floor
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/ox-test.h"

static void
test_without_a_plan (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, NULL, OX_FLOOR_SCREEN);
  g_assert_cmpuint (ox_test_count (drawing, "rooms", NULL), ==, 2);
  g_assert_cmpuint (ox_test_count (drawing, NULL, "strip-"), ==, 0);
  g_assert_cmpuint (ox_test_count (drawing, "stations", "S"), ==, 2);
}

static void
test_an_empty_job (void)
{
  g_autoptr (OxJob) job = ox_job_builder_end (ox_job_builder_new (NULL));
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, NULL, OX_FLOOR_SCREEN);
  g_assert_cmpuint (drawing->n_elements, ==, 0);
  g_assert_true (ox_box_is_empty (drawing->box));
}

static void
test_each_switch_shows_its_layer (void)
{
  static const struct
  {
    OxFloorLayers layers;
    const char *layer, *other;
  } switches[] = { { OX_FLOOR_OUTLINE, "outline", "obstacles" },  { OX_FLOOR_OBSTACLES, "obstacles", "outline" },
                   { OX_FLOOR_STRIPS, "strips", "edge-work" },    { OX_FLOOR_NUMBERS, "numbers", "strips" },
                   { OX_FLOOR_ZONES, "zone-outlines", "strips" }, { OX_FLOOR_EDGE_WORK, "edge-work", "strips" },
                   { OX_FLOOR_MOVES, "moves", "strips" },         { OX_FLOOR_STATIONS, "stations", "outline" },
                   { OX_FLOOR_NAMES, "names", "numbers" },        { OX_FLOOR_TO_PREPARE, "strips", "directions" },
                   { OX_FLOOR_TAGS, "names", "edge-work" },
                   { OX_FLOOR_LANES, "lanes", "strips" },         { OX_FLOOR_DOSE, "dose", "strips" } };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint i = 0; i < G_N_ELEMENTS (switches); i++)
    {
      g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, switches[i].layers);
      g_test_message ("%s", switches[i].layer);
      g_assert_cmpuint (ox_test_count (drawing, switches[i].layer, NULL), >, 0);
      g_assert_cmpuint (ox_test_count (drawing, switches[i].other, NULL), ==, 0);
    }
}

static void
test_hit_finds_what_one_points_at (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, NULL, OX_FLOOR_SCREEN & ~OX_FLOOR_NAMES);
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 4, 4 }, 0.02), ==, "O1");
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 1, 7 }, 0.02), ==, "X1");
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 6.01, 3 }, 0.02), ==, "J1");
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 15, 4 }, 0.02), ==, "R2");
  g_assert_cmpstr (ox_drawing_hit (drawing, (OxPoint){ 10.01, 1 }, 0.1), ==, "S1");
  g_assert_null (ox_drawing_hit (drawing, (OxPoint){ -3, 4 }, 0.02));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/floor/no-plan", test_without_a_plan);
  g_test_add_func ("/floor/empty", test_an_empty_job);
  g_test_add_func ("/floor/switches", test_each_switch_shows_its_layer);
  g_test_add_func ("/floor/hit", test_hit_finds_what_one_points_at);
  return g_test_run ();
}
