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
  g_test_add_func ("/split/flag", test_flag);
  g_test_add_func ("/split/untagged", test_what_has_no_tag_is_said_there);
  g_test_add_func ("/split/edges", test_every_edge_area_has_a_table);
  g_test_add_func ("/split/one", test_one_sheet_where_strips_can_be_told_apart);
  int result = g_test_run ();
  ox_plan_unref (plan);
  ox_job_unref (job);
  return result;
}
