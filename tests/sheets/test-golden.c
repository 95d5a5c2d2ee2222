/* Oxturn: golden drawings: a small plan that is laid by hand here, drawn as a crew drawing draws it, against lists of
 * what is on it. SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lists in tests/sheets/golden were looked at as pictures when they were made. A line is one element: layer, item,
 * style, and where it stands in mm of the page, to 0.1 mm: the box of a path, the place of a mark, the place, height,
 * angle and words of a text. A difference is a change that people see: draw it, look at it, and when it is right write
 * the lists anew with OXTURN_WRITE_GOLDEN=1.
 */
#include "job/classes.h"
#include "sheets/crew.h"
#include "sheets/hall.h"
#include "sheets/parts.h"
#include "sheets/tags.h"
#include "support/ox-test.h"
#include <string.h>

static void
put_room (OxJobBuilder *builder)
{
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 0, 6 0, 6 4, 0 4, 0 0))");
  const OxSide sides[4] = { { OX_SIDE_WALL, 0 }, { OX_SIDE_DROP, 0.5 }, { OX_SIDE_WALL, 0 }, { OX_SIDE_OPEN, 0 } };
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){
      .id = (char *) "R1", .name = (char *) "Bay", .ring = ring, .sides = (OxSide *) sides, .profile = (char *) "" });
  ox_job_builder_put_room (builder, room);
}

static void
put_obstacle (OxJobBuilder *builder, const char *id, OxObstacleKind kind, OxPoint centre)
{
  OxShape shape = { .kind = OX_SHAPE_RECTANGLE, .centre = centre, .width = 0.4, .depth = 0.4 };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){ .id = (char *) id,
                                                                    .name = (char *) "",
                                                                    .kind = kind,
                                                                    .shape = shape,
                                                                    .keep_back = kind == OX_OBSTACLE_PIT ? 0.2 : 0 });
  ox_job_builder_put_obstacle (builder, obstacle);
}

static OxJob *
made_job (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, ox_classes_find ("compact"));
  put_room (builder);
  put_obstacle (builder, "O1", OX_OBSTACLE_SOLID, (OxPoint){ 1.5, 3.2 });
  put_obstacle (builder, "O2", OX_OBSTACLE_PIT, (OxPoint){ 4, 3.2 });
  g_autoptr (OxStation) station = ox_station_new (
      &(OxStation){ .id = (char *) "S1", .name = (char *) "Drum", .kind = OX_STATION_COLLECTOR, .at = { 0.4, 3.4 } });
  ox_job_builder_put_station (builder, station);
  return ox_job_builder_end (builder);
}

static void
lay_strip (OxPlan *plan, OxPoint a, OxPoint b)
{
  gboolean crosswise = a.x == b.x;
  OxStrip *strip = &plan->strips[plan->n_strips++];
  *strip = (OxStrip){
    .order = plan->n_strips, .lane = plan->n_strips, .coat = 1, .a = a, .b = b, .width = 0.21, .speed = 6
  };
  strip->kind = crosswise ? OX_STRIP_CROSSWISE : OX_STRIP_MAIN;
  strip->heading = atan2 (b.y - a.y, b.x - a.x);
}

/* made_plan: eight strips there and back, two crosswise ones of which the second is out of reach; one zone, one edge
 * area, a place proposed */
static OxPlan *
made_plan (const OxJob *job)
{
  OxPlan *plan = g_atomic_rc_box_new0 (OxPlan);
  plan->job = ox_job_ref (job);
  plan->strips = g_new0 (OxStrip, 10);
  for (guint i = 0; i < 8; i++)
    {
      OxPoint left = { 0.9, 0.3 + 0.19 * i }, right = { 5, 0.3 + 0.19 * i };
      lay_strip (plan, i % 2 == 0 ? left : right, i % 2 == 0 ? right : left);
    }
  lay_strip (plan, (OxPoint){ 0.3, 0.4 }, (OxPoint){ 0.3, 2.8 });
  lay_strip (plan, (OxPoint){ 0.49, 2.8 }, (OxPoint){ 0.49, 0.4 });
  plan->strips[9].out_of_reach = TRUE;
  plan->zones = g_new0 (OxZone, 1);
  plan->n_zones = 1;
  plan->zones[0] = (OxZone){ .id = g_strdup ("Z1"),
                             .area = 1.2,
                             .region = ox_test_region ("POLYGON ((0.2 0.3, 0.6 0.3, 0.6 2.9, 0.2 2.9, 0.2 0.3))") };
  plan->edges = g_new0 (OxEdge, 1);
  plan->n_edges = 1;
  plan->edges[0] = (OxEdge){ .id = g_strdup ("E1"),
                             .cause = OX_CAUSE_WALL,
                             .area = 1.2,
                             .length = 6,
                             .region = ox_test_region ("POLYGON ((0 0, 6 0, 6 0.2, 0 0.2, 0 0))") };
  plan->chalks = g_new0 (OxChalk, 1);
  plan->n_chalks = 1;
  plan->chalks[0] = (OxChalk){ .first_distance = 0.3, .spacing = 0.19, .lanes = 8 };
  plan->stations = g_new0 (OxPlanStation, 2);
  plan->n_stations = 2;
  plan->stations[0]
      = (OxPlanStation){ .id = g_strdup ("S1"), .kind = OX_STATION_COLLECTOR, .at = { 0.4, 3.4 }, .length = 15 };
  plan->stations[1] = (OxPlanStation){
    .id = g_strdup ("P1"), .kind = OX_STATION_COLLECTOR, .proposed = TRUE, .at = { 5.4, 3.4 }, .length = 15
  };
  plan->totals.strips = plan->n_strips;
  return plan;
}

/* --- Drawings as lists --- */

static double
tenth (double mm)
{
  double rounded = round (mm * 10) / 10;
  return rounded == 0 ? 0 : rounded; /* no -0.0 */
}

static void
append_element (GString *list, const OxDrawing *drawing, const OxElement *element)
{
  g_string_append_printf (list, "%s %s %s ", drawing->layers[element->layer].id,
                          element->id[0] != '\0' ? element->id : "-", ox_style_get (element->style)->name);
  if (element->kind == OX_ELEMENT_PATH)
    g_string_append_printf (list, "path %.1f %.1f %.1f %.1f\n", tenth (element->box.x0), tenth (element->box.y0),
                            tenth (element->box.x1), tenth (element->box.y1));
  else if (element->kind == OX_ELEMENT_MARK)
    g_string_append_printf (list, "mark %d %.1f %.1f turned %.0f\n", (int) element->mark.kind,
                            tenth (element->mark.at.x), tenth (element->mark.at.y),
                            tenth (remainder (element->mark.angle, 2 * G_PI) * 180 / G_PI));
  else
    g_string_append_printf (list, "text %.1f %.1f high %.1f turned %.0f: %s\n", tenth (element->text.at.x),
                            tenth (element->text.at.y), element->text.height_mm,
                            tenth (remainder (element->text.angle, 2 * G_PI) * 180 / G_PI), element->text.text);
}

static void
compare (const OxDrawing *drawing, const char *name)
{
  g_autoptr (GString) list = g_string_new (NULL);
  g_autofree char *path = g_build_filename (g_getenv ("OXTURN_SOURCE"), "tests", "sheets", "golden", name, NULL);
  g_autofree char *golden = NULL;
  g_autoptr (GError) error = NULL;
  for (guint i = 0; i < drawing->n_elements; i++)
    append_element (list, drawing, &drawing->elements[i]);
  if (g_getenv ("OXTURN_WRITE_GOLDEN") != NULL)
    g_file_set_contents (path, list->str, -1, NULL);
  g_file_get_contents (path, &golden, NULL, &error);
  g_assert_no_error (error);
  g_auto (GStrv) has = g_strsplit (list->str, "\n", -1), wanted = g_strsplit (golden, "\n", -1);
  for (guint i = 0; has[i] != NULL && wanted[i] != NULL; i++)
    g_assert_cmpstr (has[i], ==, wanted[i]);
  g_assert_cmpuint (g_strv_length (has), ==, g_strv_length (wanted));
}

/* draw: the floor, or a part of it, with everything beside it; (transfer full) */
static OxDrawing *
draw (const OxSheetRun *run, OxScale scale, const OxParts *parts, OxBox box)
{
  OxPlot plot = { .area = run->form.frame };
  ox_plot_set_part (&plot, scale, box, OX_AROUND_ALL (22));
  g_autoptr (OxLabels) labels = ox_labels_new (plot.mm_per_m);
  OxDrawingBuilder *beside = ox_drawing_builder_new ();
  if (parts != NULL)
    {
      ox_drawing_builder_layer (beside, "match-lines", "");
      ox_parts_append_lines (parts, 0, &plot, beside, labels);
    }
  (void) ox_crew_append_tags (run, &plot, beside, labels);
  g_autoptr (OxDrawing) around = ox_drawing_builder_end (beside);
  const OxFloorPart shown = { OX_CREW_LAYERS, plot.mm_per_m, box, NULL, 0 };
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_part (run->job, run->plan, &shown, labels);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();
  ox_plot_append (&plot, run, builder, floor);
  ox_drawing_builder_drawing (builder, around);
  return ox_drawing_builder_end (builder);
}

static void
test_golden (void)
{
  g_autoptr (OxJob) job = made_job ();
  g_autoptr (OxPlan) plan = made_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find ("A3");
  OxSheetRun run = { .job = job, .plan = plan, .form = ox_form_new (&options, job->units) };
  g_autoptr (OxDrawing) whole = draw (&run, (OxScale){ 50, NULL }, NULL, (OxBox){ -0.5, -0.5, 6.5, 4.5 });
  ox_test_no_texts_overlap (whole, 1);
  compare (whole, "crew-whole.txt");
  const double mm[2] = { 90, 90 };
  g_autoptr (OxParts) parts = ox_parts_new (job, 25, mm, 2);
  g_autoptr (OxDrawing) part = draw (&run, (OxScale){ 40, NULL }, parts, parts->parts[0].box);
  ox_test_no_texts_overlap (part, 1);
  compare (part, "crew-part.txt");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/golden/crew", test_golden);
  return g_test_run ();
}
