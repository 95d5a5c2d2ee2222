/* Oxturn: tests of sheets/split
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/split.h"
#include "job/classes.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/floors.h"
#include "support/ox-test.h"
#include <string.h>

static OxJob *job;
static OxPlan *plan;

static OxPageSet *
make_of (const OxJob *of, const OxPlan *its_plan, const char *paper, const char *scale)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_CREW;
  options.paper = ox_paper_find (paper);
  g_assert_true (ox_scale_parse (scale, &options.scale));
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (of, its_plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static OxPageSet *
make (const char *paper, const char *scale)
{
  return make_of (job, plan, paper, scale);
}

static void
test_match_lines_name_each_other (void)
{
  g_autoptr (OxPageSet) set = make ("A4", "1:50");
  guint lines = 0;
  g_assert_cmpuint (set->n_pages, >, 3);
  for (guint p = 0; p < set->n_pages; p++)
    for (guint q = 0; q < set->n_pages; q++)
      {
        g_autofree char *there = g_strdup_printf ("Match line \xe2\x80\x93 see sheet %u", q + 1);
        g_autofree char *back = g_strdup_printf ("Match line \xe2\x80\x93 see sheet %u", p + 1);
        if (!ox_test_find_cell (set->pages[p].drawing, there))
          continue;
        lines++;
        g_assert_true (ox_test_find_cell (set->pages[q].drawing, back) != NULL);
        g_assert_true (p != q);
      }
  g_assert_cmpuint (lines, >=, 2);
}

static void
test_nothing_overlaps_and_nothing_is_too_small (void)
{
  const char *const papers[] = { "A4", "A3", "Letter" };
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autoptr (OxPageSet) set = make (papers[i], "1:50");
      for (guint p = 0; p < set->n_pages; p++)
        {
          const OxDrawing *drawing = set->pages[p].drawing;
          g_test_message ("%s, page %u", papers[i], p + 1);
          ox_test_no_texts_overlap (drawing, 1);
          for (guint k = 0; k < drawing->n_elements; k++)
            if (drawing->elements[k].kind == OX_ELEMENT_TEXT)
              g_assert_cmpfloat (drawing->elements[k].text.height_mm, >=, 1.8);
        }
    }
}

static void
test_all_strips_are_on_the_parts (void)
{
  /* The area of the strips over all parts is that of the plan: nothing is lost or twice where sheets meet. */
  g_autoptr (OxPageSet) set = make ("A4", "1:50");
  double drawn = 0, planned = 0;
  for (guint i = 0; i < plan->n_strips; i++)
    planned += (ox_strip_length (&plan->strips[i]) + job->machine->blast_length) * plan->strips[i].width;
  for (guint p = 0; p < set->n_pages; p++)
    {
      const OxDrawing *drawing = set->pages[p].drawing;
      for (guint i = 0; i < drawing->n_elements; i++)
        {
          const OxElement *element = &drawing->elements[i];
          if (element->kind != OX_ELEMENT_PATH || !g_str_has_prefix (element->id, "strip-")
              || !g_str_equal (drawing->layers[element->layer].id, "strips"))
            continue;
          const OxTrace *trace = &drawing->traces[element->path.first_trace];
          const OxPoint *points = drawing->points + trace->start;
          for (guint k = 0; k < trace->n; k++)
            drawn += ox_point_cross (points[k], points[(k + 1) % trace->n]) / 2;
        }
    }
  ox_test_near (drawn * 50 * 50 / 1e6, planned, 0.001);
}

static void
test_one_sheet_where_strips_can_be_told_apart (void)
{
  g_autoptr (OxPageSet) set = make ("A1", "auto");
  for (guint p = 0; p < set->n_pages; p++)
    g_assert_null (ox_test_find_text (set->pages[p].drawing, "Match line"));
}

/* The sheet of the whole floor sends the crew to the flag, so it has one; the parts have it once. */
static void
test_flag (void)
{
  g_autoptr (OxPageSet) set = make ("A4", "1:50");
  guint flags[2] = { 0 };
  for (guint p = 0; p < set->n_pages; p++)
    for (guint i = 0; i < set->pages[p].drawing->n_elements; i++)
      {
        const OxElement *element = &set->pages[p].drawing->elements[i];
        flags[p > 0]
            += element->kind == OX_ELEMENT_MARK && element->mark.kind == OX_MARK_FIRST && element->id[0] != '\0';
      }
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "at the flag"));
  g_assert_cmpuint (flags[0], ==, 1);
  g_assert_cmpuint (flags[1], ==, 1);
}

/* count_on_parts: how often @text stands on all pages but the first */
static guint
count_on_parts (const OxPageSet *set, const char *text)
{
  guint n = 0;
  for (guint p = 1; p < set->n_pages; p++)
    for (guint i = 0; i < set->pages[p].drawing->n_elements; i++)
      {
        const OxElement *element = &set->pages[p].drawing->elements[i];
        n += element->kind == OX_ELEMENT_TEXT && g_str_equal (element->text.text, text);
      }
  return n;
}

static OxPageSet *
make_with_stations (OxPoint at, guint copies)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; i < copies; i++)
    {
      g_autofree char *id = g_strdup_printf ("T%u", i), *name = g_strdup_printf ("Place %u", i);
      g_autoptr (OxStation) station
          = ox_station_new (&(OxStation){ .id = id, .name = name, .kind = OX_STATION_COLLECTOR, .at = at });
      ox_job_builder_put_station (builder, station);
    }
  g_autoptr (OxJob) with = ox_job_builder_end (builder);
  g_autoptr (OxPlan) planned = ox_test_plan (with);
  OxJob *job_before = job;
  OxPlan *plan_before = plan;
  job = with;
  plan = planned;
  OxPageSet *set = make ("A4", "1:50");
  job = job_before;
  plan = plan_before;
  return set;
}

/* A station on the line between two parts, or where four meet, is named on one of their sheets. */
static void
test_station_on_a_match_line_is_named_once (void)
{
  g_autoptr (OxPageSet) bare = make ("A4", "1:50");
  OxBox floor = ox_job_box (job);
  guint n_columns = 0;
  for (guint p = 1; p < bare->n_pages; p++)
    n_columns += ox_test_find_text (bare->pages[p].drawing, "Match line") != NULL;
  g_assert_cmpuint (n_columns, >=, 2);
  for (guint parts = 2; parts <= 4; parts++)
    {
      OxPoint at = { ox_snap (floor.x0 + (floor.x1 - floor.x0) / parts), (floor.y0 + floor.y1) / 2 };
      g_autoptr (OxPageSet) set = make_with_stations (at, 1);
      g_assert_cmpuint (count_on_parts (set, "Place 0"), ==, 1);
    }
}

/* Places that would hide the floor at the scale of the whole are drawn on the sheets of its parts, and the first says
 * so. */
static void
test_crowded_proposals_stand_on_the_parts (void)
{
  OxPlanStation *stations = g_new0 (OxPlanStation, plan->n_stations + 120);
  OxPlanStation *before = plan->stations;
  guint n_before = plan->n_stations;
  memcpy (stations, before, n_before * sizeof *stations);
  for (guint i = 0; i < 120; i++)
    stations[n_before + i] = (OxPlanStation){
      .id = (char *) "P9", .kind = OX_STATION_COLLECTOR, .proposed = TRUE, .at = { 1 + 0.09 * i, 4 }, .length = 15
    };
  g_autoptr (OxPageSet) few = make ("A4", "1:50");
  plan->stations = stations;
  plan->n_stations = n_before + 120;
  g_autoptr (OxPageSet) set = make ("A4", "1:50");
  plan->stations = before;
  plan->n_stations = n_before;
  g_free (stations);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "sheets of the"));
  g_assert_null (ox_test_find_text (few->pages[0].drawing, "sheets of the parts."));
  g_assert_cmpuint (ox_test_count (set->pages[0].drawing, "stations", "P9"), ==, 0);
  g_assert_cmpuint (ox_test_count (set->pages[0].drawing, "stations", NULL), >, 0);
  /* Nothing else is drawn for it: as many paths as where there are few. */
  guint paths[2] = { 0 };
  for (guint k = 0; k < 2; k++)
    for (guint i = 0; i < (k ? set : few)->pages[0].drawing->n_elements; i++)
      {
        const OxElement *element = &(k ? set : few)->pages[0].drawing->elements[i];
        const char *layer = (k ? set : few)->pages[0].drawing->layers[element->layer].id;
        paths[k] += element->kind == OX_ELEMENT_PATH && !g_str_equal (layer, "tables") && !g_str_equal (layer, "tags");
      }
  g_assert_cmpuint (paths[1], <=, paths[0]);
  guint on_parts = 0;
  for (guint p = 1; p < set->n_pages; p++)
    on_parts += ox_test_count (set->pages[p].drawing, "stations", "P9");
  g_assert_cmpuint (on_parts, >=, 120);
}

/* Numbers of strips stay on their part: what stands beyond a match line belongs to the neighbour. */
static void
test_numbers_stay_on_their_part (void)
{
  g_autoptr (OxJob) columns = ox_test_floor_columns (30, 20, 0.4, 3, "compact");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) planned = ox_plan_new (columns, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (OxPageSet) set = make_of (columns, planned, "A4", "1:100");
  guint n = 0;
  for (guint p = 1; p < set->n_pages; p++)
    {
      const OxDrawing *drawing = set->pages[p].drawing;
      OxBox strips = OX_BOX_EMPTY;
      for (guint i = 0; i < drawing->n_elements; i++)
        if (drawing->elements[i].kind == OX_ELEMENT_PATH
            && (g_str_equal (drawing->layers[drawing->elements[i].layer].id, "strips")
                || g_str_equal (drawing->layers[drawing->elements[i].layer].id, "rooms")))
          {
            ox_box_add (&strips, (OxPoint){ drawing->elements[i].box.x0, drawing->elements[i].box.y0 });
            ox_box_add (&strips, (OxPoint){ drawing->elements[i].box.x1, drawing->elements[i].box.y1 });
          }
      for (guint i = 0; i < drawing->n_elements; i++)
        {
          const OxElement *element = &drawing->elements[i];
          OxPoint corners[4];
          if (element->kind != OX_ELEMENT_TEXT || !g_str_equal (drawing->layers[element->layer].id, "numbers"))
            continue;
          ox_element_text_corners (element, 1, corners);
          n++;
          for (guint k = 0; k < 4; k++)
            g_assert_true (corners[k].x > strips.x0 - 1.5 && corners[k].x < strips.x1 + 1.5
                           && corners[k].y > strips.y0 - 1.5 && corners[k].y < strips.y1 + 1.5);
        }
    }
  g_assert_cmpuint (n, >, 20);
}

/* The first of the parts has no floor; an edge area of which no place is known stands in the table of one that has. */
static void
test_every_edge_area_has_a_table (void)
{
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 0, 20 0, 20 16, 12 16, 12 5, 0 5, 0 0))");
  g_autoptr (OxRoom) room = ox_room_new (&(OxRoom){ .id = (char *) "R1", .name = (char *) "Ell", .ring = ring });
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, ox_classes_find ("compact"));
  ox_job_builder_put_room (builder, room);
  g_autoptr (OxJob) ell = ox_job_builder_end (builder);
  g_autoptr (OxPlan) planned = ox_test_plan (ell);
  ox_region_unref (planned->edges[0].region);
  planned->edges[0].region = ox_test_region ("POLYGON EMPTY");
  g_autoptr (OxPageSet) set = make_of (ell, planned, "A4", "1:50");
  guint found = 0;
  for (guint p = 0; p < set->n_pages; p++)
    found += ox_test_find_cell (set->pages[p].drawing, planned->edges[0].id) != NULL;
  g_assert_cmpuint (found, ==, 1);
}

/* What a sheet says of tags that it has no room for stands on it, under its legend, wherever the table of edge work
 * went. */
static void
test_what_has_no_tag_is_said_there (void)
{
  g_autoptr (OxJob) columns = ox_test_floor_columns (30, 20, 0.4, 3, "compact");
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) planned = ox_plan_new (columns, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (OxPageSet) set = make_of (columns, planned, "A4", "1:200");
  guint told = 0;
  for (guint p = 0; p < set->n_pages; p++)
    if (ox_test_find_text (set->pages[p].drawing, "no tag on the drawing") != NULL)
      {
        told++;
        g_assert_nonnull (ox_test_find_cell (set->pages[p].drawing, "Legend"));
        g_assert_nonnull (ox_test_find_cell (set->pages[p].drawing, "Key plan"));
      }
  g_assert_cmpuint (told, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  job = ox_test_hall (OX_UNITS_METRES);
  plan = ox_test_plan (job);
  g_test_add_func ("/split/match-lines", test_match_lines_name_each_other);
  g_test_add_func ("/split/overlap", test_nothing_overlaps_and_nothing_is_too_small);
  g_test_add_func ("/split/strips", test_all_strips_are_on_the_parts);
  g_test_add_func ("/split/stations", test_station_on_a_match_line_is_named_once);
  g_test_add_func ("/split/crowded", test_crowded_proposals_stand_on_the_parts);
  g_test_add_func ("/split/numbers", test_numbers_stay_on_their_part);
  g_test_add_func ("/split/flag", test_flag);
  g_test_add_func ("/split/untagged", test_what_has_no_tag_is_said_there);
  g_test_add_func ("/split/edges", test_every_edge_area_has_a_table);
  g_test_add_func ("/split/one", test_one_sheet_where_strips_can_be_told_apart);
  int result = g_test_run ();
  ox_plan_unref (plan);
  ox_job_unref (job);
  return result;
}
