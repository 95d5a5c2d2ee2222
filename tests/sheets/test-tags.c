/* Oxturn: tests of sheets/tags
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/tags.h"
#include "sheets/crew.h"
#include "sheets/floor.h"
#include "sheets/hall.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include <string.h>

typedef struct
{
  OxJob *job;
  OxPlan *plan;
  OxSheetRun run;
  OxPlot plot;
  OxLabels *labels;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer paper)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find (paper);
  fixture->job = ox_test_hall (OX_UNITS_METRES);
  fixture->plan = ox_test_plan (fixture->job);
  fixture->run
      = (OxSheetRun){ .job = fixture->job, .plan = fixture->plan, .form = ox_form_new (&options, OX_UNITS_METRES) };
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_assert_true (ox_plot_new (&fixture->run, &(OxFlow){ none, 0, 0, FALSE, OX_BLOCK_GAP_MM }, OX_AROUND_ALL (22), &fixture->plot, NULL));
  fixture->labels = ox_labels_new (fixture->plot.mm_per_m);
}

static void
tear_down (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  ox_labels_free (fixture->labels);
  ox_plan_unref (fixture->plan);
  ox_job_unref (fixture->job);
}

static void
test_each_area_has_one_tag_or_is_counted (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  guint missing = ox_tags_append_edges (&fixture->run, &fixture->plot, builder, fixture->labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  guint tags = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_TEXT)
        continue;
      g_assert_true (g_str_has_prefix (element->text.text, element->id));
      tags++;
    }
  g_assert_cmpuint (tags + missing, ==, fixture->plan->n_edges);
  g_assert_cmpuint (missing, <, fixture->plan->n_edges / 2);
  ox_test_no_texts_overlap (drawing, 1);
}

static void
test_tags_stay_in_the_drawing_area (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_tags_append_stations (&fixture->run, &fixture->plot, builder, fixture->labels, TRUE);
  ox_tags_append_sides (&fixture->run, &fixture->plot, builder, fixture->labels);
  (void) ox_tags_append_edges (&fixture->run, &fixture->plot, builder, fixture->labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  ox_test_no_texts_overlap (drawing, 1);
  OxBox area = fixture->plot.area;
  for (guint i = 0; i < drawing->n_elements; i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT)
      {
        OxPoint corners[4];
        ox_element_text_corners (&drawing->elements[i], 1, corners);
        for (int k = 0; k < 4; k++)
          g_assert_true (corners[k].x > area.x0 && corners[k].x < area.x1 && corners[k].y > area.y0
                         && corners[k].y < area.y1);
      }
}

static void
test_leaders_point_into_their_area (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  (void) ox_tags_append_edges (&fixture->run, &fixture->plot, builder, fixture->labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind != OX_ELEMENT_MARK)
        continue;
      OxPoint at = ox_point_scale (ox_point_sub (element->mark.at, fixture->plot.origin), 1 / fixture->plot.mm_per_m);
      gboolean inside = FALSE;
      for (guint e = 0; e < fixture->plan->n_edges; e++)
        inside |= g_str_equal (fixture->plan->edges[e].id, element->id)
                  && ox_region_contains (fixture->plan->edges[e].region, at);
      g_assert_true (inside);
    }
}

static void
test_drops_base_walls_and_stations_are_named (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_tags_append_stations (&fixture->run, &fixture->plot, builder, fixture->labels, TRUE);
  ox_tags_append_sides (&fixture->run, &fixture->plot, builder, fixture->labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  const OxElement *drop = ox_test_find_text (drawing, "0.60 m");
  g_assert_nonnull (drop);
  g_assert_cmpint (drop->style, ==, OX_STYLE_DROP);
  g_assert_nonnull (ox_test_find_text (drawing, "base wall: lane 1 at"));
  g_assert_nonnull (ox_test_find_text (drawing, "Collector"));
  g_assert_nonnull (ox_test_find_text (drawing, "Socket"));
}

static void
test_pits_and_the_ends_of_hoses_are_told (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  OxReachLine line = { 0, g_array_new (FALSE, FALSE, sizeof (OxPoint)) };
  const OxPoint across[] = { { 2, 1 }, { 5, 3 }, { 9, 6 } };
  g_array_append_vals (line.points, across, G_N_ELEMENTS (across));
  const OxReachLines reach = { 1, &line };
  fixture->run.reach = &reach;
  ox_tags_append_pits (&fixture->run, &fixture->plot, builder, fixture->labels);
  ox_tags_append_reach (&fixture->run, &fixture->plot, builder, fixture->labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  g_array_unref (line.points);
  g_assert_nonnull (ox_test_find_text (drawing, "PIT: keep 0.30 m back"));
  const OxElement *told = ox_test_find_text (drawing, "reach of Collector");
  g_assert_nonnull (told);
  OxPoint at = ox_plot_to_page (&fixture->plot, (OxPoint){ 5, 3 });
  ox_test_near (told->text.at.x, at.x, 1e-6);
  ox_test_near (told->text.at.y, at.y, 1e-6);
}

static OxBox
text_box (const OxElement *text)
{
  OxPoint corners[4];
  OxBox box = OX_BOX_EMPTY;
  ox_element_text_corners (text, 1, corners);
  for (guint i = 0; i < 4; i++)
    ox_box_add (&box, corners[i]);
  return box;
}

/* A tag stands beside the pit that it names, not over it. */
static void
test_tags_lie_beside_their_pits (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  /* A part around the pit, so large that the pit is wider than the shortest leaders. */
  OxPlot plot = fixture->plot;
  ox_plot_set_part (&plot, (OxScale){ 20, NULL }, (OxBox){ 7, 3.5, 10, 6.5 }, OX_AROUND_ALL (22));
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_tags_append_pits (&fixture->run, &plot, builder, labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  const OxElement *tag = ox_test_find_text (drawing, "PIT: keep 0.30 m back");
  g_assert_nonnull (tag);
  OxBox box = text_box (tag);
  for (guint i = 0; i < fixture->job->n_obstacles; i++)
    {
      const OxObstacle *pit = fixture->job->obstacles[i];
      OxBox floor = ox_ring_box (pit->shape.ring);
      OxPoint low = ox_plot_to_page (&plot, (OxPoint){ floor.x0, floor.y0 }),
              high = ox_plot_to_page (&plot, (OxPoint){ floor.x1, floor.y1 });
      if (pit->kind == OX_OBSTACLE_PIT)
        g_assert_true (box.x0 >= high.x || box.x1 <= low.x || box.y0 >= high.y || box.y1 <= low.y);
    }
}

/* The mark of a hose that wraps is not hidden by a tag. */
static void
test_tags_keep_off_marks (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxPlan *plan = fixture->plan;
  guint tags = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    plan->strips[i].hose_wraps = TRUE;
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  (void) ox_crew_append_tags (&fixture->run, &fixture->plot, builder, fixture->labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      if (drawing->elements[i].kind != OX_ELEMENT_TEXT || drawing->elements[i].style != OX_STYLE_TAG)
        continue;
      OxBox box = text_box (&drawing->elements[i]);
      tags++;
      for (guint k = 0; k < plan->n_strips; k++)
        {
          OxPoint at = ox_plot_to_page (&fixture->plot, plan->strips[k].b);
          g_assert_true (at.x < box.x0 || at.x > box.x1 || at.y < box.y0 || at.y > box.y1);
        }
    }
  g_assert_cmpuint (tags, >, 5);
}

/* Where two sheets meet on a station its name stands on one of them, as does everything's within them. */
static void
test_named_once_on_a_match_line (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  OxBox all = ox_job_box (fixture->job), halves[2] = { all, all };
  OxPoint at = fixture->job->stations[0]->at;
  halves[0].x1 = halves[1].x0 = at.x;
  guint names = 0, others = 0;
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (OxLabels) labels = ox_labels_new (fixture->plot.mm_per_m);
      OxDrawingBuilder *builder = ox_drawing_builder_new ();
      ox_plot_set_part (&fixture->plot, fixture->plot.scale, halves[i], OX_AROUND_ALL (22));
      ox_tags_append_stations (&fixture->run, &fixture->plot, builder, labels, TRUE);
      g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
      for (guint k = 0; k < drawing->n_elements; k++)
        {
          gboolean it = g_str_equal (drawing->elements[k].id, fixture->job->stations[0]->id);
          names += it;
          others += !it;
        }
    }
  g_assert_cmpuint (names, ==, 1);
  g_assert_cmpuint (others, >=, fixture->job->n_stations - 1);
}

/* The name of a station stands clear of the crosses of the checks around it, wherever those are. */
static void
test_names_of_stations_keep_off_crosses (Fixture *fixture, gconstpointer paper)
{
  (void) paper;
  g_autoptr (GArray) spots = ox_spots_of (fixture->plan);
  double mm = 1 / fixture->plot.mm_per_m;
  const OxPoint offs[] = { { -6 * mm, 0 }, { 6 * mm, 0 }, { 0, -4.6 * mm }, { 0, 4.6 * mm } };
  for (guint i = 0; i < G_N_ELEMENTS (offs); i++)
    {
      OxPoint spot = g_array_index (spots, OxSpot, 0).at;
      g_autoptr (OxStation) station = ox_station_new (
          &(OxStation){ .id = (char *) "S9", .name = (char *) "Drum", .at = ox_point_add (spot, offs[i]) });
      OxJobBuilder *job_builder = ox_job_builder_new (fixture->job);
      ox_job_builder_put_station (job_builder, station);
      g_autoptr (OxJob) job = ox_job_builder_end (job_builder);
      OxSheetRun run = fixture->run;
      run.job = job;
      g_autoptr (OxLabels) labels = ox_labels_new (fixture->plot.mm_per_m);
      OxDrawingBuilder *builder = ox_drawing_builder_new ();
      (void) ox_crew_append_tags (&run, &fixture->plot, builder, labels);
      g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
      const OxElement *name = ox_test_find_cell (drawing, "Drum");
      g_assert_nonnull (name);
      OxPoint corners[4], cross = ox_plot_to_page (&fixture->plot, spot);
      ox_element_text_corners (name, 1, corners);
      g_assert_false (cross.x > corners[0].x - 1 && cross.x < corners[2].x + 1 && cross.y > corners[0].y - 1
                      && cross.y < corners[2].y + 1);
    }
}

/* How many profile checks have their name on a floor of 100 m x 60 m at a scale; every one has its cross, once, and
 * what is left of the names is the first, the last and those of the step */
static void
assert_names (double denominator, guint step)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (100, 60, "large");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GArray) spots = ox_spots_of (plan);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find ("A0");
  OxSheetRun run = { .job = job, .plan = plan, .form = ox_form_new (&options, OX_UNITS_METRES) };
  OxPlot plot = { .area = run.form.frame };
  ox_plot_set_part (&plot, (OxScale){ denominator, NULL }, OX_FLOOR_WHOLE, OX_AROUND_ALL (22));
  plot.origin = (OxPoint){ 40, 40 };
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_tags_append_checks (&run, &plot, builder, labels);
  ox_tags_append_check_names (&run, &plot, builder, labels);
  g_autoptr (OxDrawing) drawing = ox_drawing_builder_end (builder);
  guint crosses = 0, names = 0, wanted = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      crosses += element->kind == OX_ELEMENT_MARK;
      if (element->kind != OX_ELEMENT_TEXT)
        continue;
      guint64 number = g_ascii_strtoull (element->text.text + strlen ("PC"), NULL, 10);
      g_assert_true (number == 1 || number == spots->len || number % step == 0);
      names++;
    }
  for (guint i = 1; i <= spots->len; i++)
    wanted += i == 1 || i == spots->len || i % step == 0;
  g_test_message ("1:%g: %u checks, %u names of %u", denominator, spots->len, names, wanted);
  g_assert_cmpuint (crosses, ==, spots->len);
  g_assert_cmpuint (names, >=, wanted * 9 / 10); /* two of a strip may stand close together */
  ox_test_no_texts_overlap (drawing, 1);
}

static void
test_names_of_checks_are_thinned (void)
{
  assert_names (100, 1);
  assert_names (500, 5);
}

#define ADD(name, paper, function) g_test_add ("/tags/" name "/" paper, Fixture, paper, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("once", "A3", test_each_area_has_one_tag_or_is_counted);
  ADD ("once", "A1", test_each_area_has_one_tag_or_is_counted);
  ADD ("area", "A4", test_tags_stay_in_the_drawing_area);
  ADD ("area", "A3", test_tags_stay_in_the_drawing_area);
  ADD ("leaders", "A3", test_leaders_point_into_their_area);
  ADD ("names", "A3", test_drops_base_walls_and_stations_are_named);
  ADD ("match-line", "A3", test_named_once_on_a_match_line);
  g_test_add_func ("/tags/checks-thinned", test_names_of_checks_are_thinned);
  ADD ("crosses", "A3", test_names_of_stations_keep_off_crosses);
  ADD ("beside-pits", "A1", test_tags_lie_beside_their_pits);
  ADD ("off-marks", "A4", test_tags_keep_off_marks);
  ADD ("off-marks", "A3", test_tags_keep_off_marks);
  ADD ("pits", "A3", test_pits_and_the_ends_of_hoses_are_told);
  return g_test_run ();
}
