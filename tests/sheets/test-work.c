/* Oxturn: tests of sheets/work
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "sheets/picture.h"
#include "support/ox-test.h"

static double
area_of_path (const OxDrawing *drawing, const OxElement *element)
{
  double twice = 0;
  for (guint t = 0; t < element->path.n_traces; t++)
    {
      const OxTrace *trace = &drawing->traces[element->path.first_trace + t];
      for (guint i = 0; i < trace->n; i++)
        twice += ox_point_cross (drawing->points[trace->start + i], drawing->points[trace->start + (i + 1) % trace->n]);
    }
  return twice / 2;
}

static void
test_every_strip_edge_and_zone_is_there (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing
      = ox_floor_picture_new (job, plan, OX_FLOOR_STRIPS | OX_FLOOR_EDGE_WORK | OX_FLOOR_ZONES | OX_FLOOR_MOVES);
  g_assert_cmpuint (ox_test_count (drawing, "strips", "strip-"), ==, plan->n_strips);
  g_assert_cmpuint (ox_test_count (drawing, "directions", "strip-"), ==, plan->n_strips);
  g_assert_cmpuint (ox_test_count (drawing, "edge-work", "E"), ==, plan->n_edges);
  g_assert_cmpuint (ox_test_count (drawing, "zone-outlines", "Z"), ==, plan->n_zones);
  g_assert_cmpuint (ox_test_count (drawing, "moves", "move-"), >, 0);
}

static void
test_areas_are_those_of_the_plan (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_STRIPS | OX_FLOOR_EDGE_WORK);
  double edge = 0;
  guint strip = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (g_str_equal (drawing->layers[element->layer].id, "edge-work"))
        edge += area_of_path (drawing, element);
      else if (g_str_equal (drawing->layers[element->layer].id, "strips"))
        {
          const OxStrip *s = &plan->strips[strip++];
          double covered = s->width * (ox_strip_length (s) + job->machine->blast_length);
          ox_test_near (fabs (area_of_path (drawing, element)), covered, 1e-6);
        }
    }
  ox_test_near (edge, plan->totals.edge_m2, 1e-4 * plan->totals.edge_m2);
}

static void
test_axes_run_from_start_to_stop (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_STRIPS);
  guint strip = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (!g_str_equal (drawing->layers[element->layer].id, "directions"))
        continue;
      const OxPoint *ends = drawing->points + drawing->traces[element->path.first_trace].start;
      ox_test_near (ox_point_distance (ends[0], plan->strips[strip].a), 0, 1e-9);
      ox_test_near (ox_point_distance (ends[1], plan->strips[strip].b), 0, 1e-9);
      ox_test_near (element->from_mm, ox_picture_axis_from (&plan->strips[strip]), 1e-9);
      strip++;
    }
}

static void
test_walks_are_those_moves_that_lead_elsewhere (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_WALKS);
  guint walks = 0;
  for (guint i = 0; i < plan->n_moves; i++)
    walks += plan->moves[i].kind == OX_MOVE_WALK && plan->moves[i].n_path >= 2;
  g_assert_cmpuint (walks, >, 0); /* there are two rooms */
  g_assert_cmpuint (ox_test_count (drawing, "moves", NULL), ==, walks);
}

/* The hall in two coats with an area that is walked at 3 m/min. */
static OxJob *
hall_in_coats (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  OxRoom fields = *job->rooms[0];
  fields.coats = 2;
  fields.coat_turn_deg = 90;
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 6, 4 }, 3, 3, 0);
  g_autoptr (OxCondition) area = ox_condition_new (&(OxCondition){
      .id = (char *) "K1", .name = (char *) "", .ring = ring, .speed_m_per_min = 3, .profile = (char *) "" });
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_room (builder, room);
  ox_job_builder_put_condition (builder, area);
  return ox_job_builder_end (builder);
}

/* Only the first coat is laid out as floor; the second is drawn over it in a layer and a style of its own. */
static void
test_further_coats (void)
{
  g_autoptr (OxJob) job = hall_in_coats ();
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_STRIPS);
  guint further = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    further += plan->strips[i].coat > 1;
  g_assert_cmpuint (further, >, 20);
  g_assert_cmpuint (ox_test_count (drawing, "strips", "strip-"), ==, plan->n_strips - further);
  g_assert_cmpuint (ox_test_count (drawing, "directions", "strip-"), ==, plan->n_strips - further);
  g_assert_cmpuint (ox_test_count (drawing, "further-coats", "strip-"), ==, further);
  for (guint i = 0; i < drawing->n_elements; i++)
    if (g_str_equal (drawing->layers[drawing->elements[i].layer].id, "further-coats"))
      g_assert_cmpint (drawing->elements[i].style, ==, OX_STYLE_COAT_AXIS);
}

/* What is done of a further coat is hatched as what is done of the first, and has no middle to follow any more. */
static void
test_done_of_a_further_coat (void)
{
  g_autoptr (OxJob) job = hall_in_coats ();
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  guint i = 0;
  while (plan->strips[i].coat < 2)
    i++;
  plan->strips[i].done = 1;
  g_autofree char *id = g_strdup_printf ("strip-%u", plan->strips[i].order);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_STRIPS);
  guint hatched = 0;
  for (guint k = 0; k < drawing->n_elements; k++)
    if (g_str_equal (drawing->elements[k].id, id) && drawing->elements[k].kind == OX_ELEMENT_PATH)
      {
        const OxElement *element = &drawing->elements[k];
        if (g_str_equal (drawing->layers[element->layer].id, "speeds"))
          continue;
        g_assert_cmpint (element->style, ==, OX_STYLE_DONE);
        ox_test_near (fabs (area_of_path (drawing, element)),
                      plan->strips[i].width * (ox_strip_length (&plan->strips[i]) + job->machine->blast_length), 1e-6);
        hatched++;
      }
  g_assert_cmpuint (hatched, ==, 1);
}

/* A bar as long as the strip is wide lies where the strip enters the area and where it leaves it, or where it starts in
 * it. */
static void
test_speeds (void)
{
  g_autoptr (OxJob) job = hall_in_coats ();
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxDrawing) drawing = ox_floor_picture_new (job, plan, OX_FLOOR_STRIPS);
  guint changes = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    changes += plan->strips[i].n_paces > 0 ? plan->strips[i].n_paces - 1 : 0;
  g_assert_cmpuint (changes, >, 20);
  g_assert_cmpuint (ox_test_count (drawing, "speeds", "strip-"), >=, changes);
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (!g_str_equal (drawing->layers[element->layer].id, "speeds"))
        continue;
      const OxPoint *ends = drawing->points + drawing->traces[element->path.first_trace].start;
      OxPoint middle = ox_point_scale (ox_point_add (ends[0], ends[1]), 0.5);
      ox_test_near (ox_point_distance (ends[0], ends[1]), job->machine->blast_width, 1e-6);
      g_assert_true (ox_ring_contains (job->conditions[0]->ring, middle)
                     || MAX (fabs (middle.x - 6), fabs (middle.y - 4)) < 1.5 + 1e-3);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/work/all-there", test_every_strip_edge_and_zone_is_there);
  g_test_add_func ("/work/areas", test_areas_are_those_of_the_plan);
  g_test_add_func ("/work/axes", test_axes_run_from_start_to_stop);
  g_test_add_func ("/work/walks", test_walks_are_those_moves_that_lead_elsewhere);
  g_test_add_func ("/work/further-coats", test_further_coats);
  g_test_add_func ("/work/done-of-a-further-coat", test_done_of_a_further_coat);
  g_test_add_func ("/work/speeds", test_speeds);
  return g_test_run ();
}
