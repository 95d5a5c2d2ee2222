/* Oxturn: tests of sheets/scope
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"
#include <string.h>

static OxPageSet *
make (const OxJob *job, const OxPlan *plan)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCOPE;
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static void
test_what_a_client_signs (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  g_assert_cmpuint (set->n_pages, ==, 1);
  const char *const parts[]
      = { "Hall",      "Store",    "CSP 3",         "Quantities", "Not prepared", "Plant bay",           "Legend",
          "Revisions", "Slab dry", "Work at night", "Sign-off",   "Signature",    "BFP-0412, revision B" };
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_test_message ("%s", parts[i]);
      g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, parts[i]));
    }
  g_assert_cmpuint (ox_test_count (set->pages[0].drawing, NULL, "strip-"), ==, 0);
}

static void
test_quantities_are_the_plan_s (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  const double areas[] = { plan->totals.target_m2, plan->totals.blasted_m2, plan->totals.edge_m2 };
  for (guint i = 0; i < G_N_ELEMENTS (areas); i++)
    {
      g_autofree char *text = ox_units_area_text (OX_UNITS_METRES, areas[i]);
      g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, text));
    }
}

/* Of a rectangle two sides say all: 12.00, 8.00 (also the store's), 5.00; overall 17.20. */
static void
test_each_length_once (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  const OxDrawing *drawing = set->pages[0].drawing;
  static const struct
  {
    const char *text;
    guint least, most;
  } figures[] = { { "12.00", 1, 1 }, { "5.00", 1, 1 }, { "17.20", 1, 1 }, { "8.00", 1, 2 } };
  for (guint f = 0; f < G_N_ELEMENTS (figures); f++)
    {
      guint n = 0;
      for (guint i = 0; i < drawing->n_elements; i++)
        n += drawing->elements[i].kind == OX_ELEMENT_TEXT
             && g_str_equal (drawing->layers[drawing->elements[i].layer].id, "dimensions")
             && g_str_equal (drawing->elements[i].text.text, figures[f].text);
      g_test_message ("%s: %u", figures[f].text, n);
      g_assert_cmpuint (n, >=, figures[f].least);
      g_assert_cmpuint (n, <=, figures[f].most);
    }
}

/* A dimension line is as long on paper as its figure says at the sheet's scale: one of the lines since the figure
 * before. */
static void
test_dimensions_are_true (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  const OxDrawing *drawing = set->pages[0].drawing;
  const OxElement *words = ox_test_find_text (drawing, "Scale 1:");
  g_assert_nonnull (words);
  double denominator = g_ascii_strtod (strchr (words->text.text, ':') + 1, NULL);
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (double));
  guint checked = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (!g_str_equal (drawing->layers[element->layer].id, "dimensions"))
        continue;
      if (element->kind == OX_ELEMENT_PATH)
        {
          const OxPoint *ends = drawing->points + drawing->traces[element->path.first_trace].start;
          double metres = ox_point_distance (ends[0], ends[1]) * denominator / 1000;
          g_array_append_val (lines, metres);
        }
      else if (element->kind == OX_ELEMENT_TEXT)
        {
          gboolean found = FALSE;
          for (guint k = 0; k < lines->len; k++)
            found
                = found || fabs (g_array_index (lines, double, k) - g_ascii_strtod (element->text.text, NULL)) < 0.002;
          g_test_message ("%s", element->text.text);
          g_assert_true (found);
          g_array_set_size (lines, 0);
          checked++;
        }
    }
  g_assert_cmpuint (checked, >=, 4);
}

/* A part of a room with a profile of its own stands in a table and on the floor. */
static void
test_condition_areas (void)
{
  g_autoptr (OxJob) bare = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((7 1, 9 1, 9 3, 7 3, 7 1))");
  g_autoptr (OxCondition) soft = ox_condition_new (
      &(OxCondition){ .id = (char *) "C1", .name = (char *) "Soft patch", .ring = ring, .profile = (char *) "CSP 5" });
  g_autoptr (OxJob) job = ox_job_with_condition (bare, soft, NULL);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  const OxDrawing *drawing = set->pages[0].drawing;
  guint n = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    n += drawing->elements[i].kind == OX_ELEMENT_TEXT && strstr (drawing->elements[i].text.text, "Soft patch") != NULL;
  g_assert_cmpuint (n, ==, 2);
  g_assert_nonnull (ox_test_find_text (drawing, "Condition areas"));
  g_assert_nonnull (ox_test_find_text (drawing, "CSP 5"));
  g_assert_nonnull (ox_test_find_text (drawing, "4.0"));
}

/* The name of a doorway stands beside it, not on it. */
static void
test_doorways_are_seen (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan);
  const OxDrawing *drawing = set->pages[0].drawing;
  OxBox doorway = OX_BOX_EMPTY, name = OX_BOX_EMPTY;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      OxPoint corners[4];
      if (element->id == NULL || !g_str_equal (element->id, job->doorways[0]->id))
        continue;
      if (element->kind == OX_ELEMENT_TEXT)
        {
          ox_element_text_corners (element, 1, corners);
          ox_box_add (&name, corners[0]);
          ox_box_add (&name, corners[2]);
        }
      else
        doorway = element->box;
    }
  g_assert_cmpfloat (name.x0, <, name.x1);
  g_assert_cmpfloat (doorway.x0, <, doorway.x1);
  g_assert_true (name.x0 > doorway.x1 || name.x1 < doorway.x0 || name.y0 > doorway.y1 || name.y1 < doorway.y0);
}

/* A client adds the column up: what is printed of rooms is the sum that is printed, and machine and edge work are what is
 * in the scope. Numbers of the table are read in the order in which they stand: row by row. */
static void
test_printed_areas_add_up (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  /* Of edge work each room has 1.06 m2: 1.1 and 1.1 where each is rounded by itself, 2.1 in all. */
  for (guint i = 0; i < plan->n_edges; i++)
    plan->edges[i].area = 0;
  for (guint room = 0, i = 0; room < job->n_rooms; room++)
    {
      for (i = 0; i < plan->n_edges && plan->edges[i].room != room;)
        i++;
      g_assert_cmpuint (i, <, plan->n_edges);
      plan->edges[i].area = 1.06;
    }
  g_autoptr (OxPageSet) set = make (job, plan);
  const OxDrawing *drawing = set->pages[0].drawing;
  double areas[64];
  guint n = 0, first = 0;
  while (first < drawing->n_elements
         && !(drawing->elements[first].kind == OX_ELEMENT_TEXT
              && g_str_equal (drawing->elements[first].text.text, "Quantities")))
    first++;
  for (guint i = first; i < drawing->n_elements && n < 3 * (job->n_rooms + 1); i++)
    if (drawing->elements[i].kind == OX_ELEMENT_TEXT && g_str_has_suffix (drawing->elements[i].text.text, " m\xc2\xb2"))
      areas[n++] = g_ascii_strtod (drawing->elements[i].text.text, NULL);
  g_assert_cmpuint (n, ==, 3 * (job->n_rooms + 1));
  double sums[3] = { 0 };
  for (guint i = 0; i <= job->n_rooms; i++)
    {
      ox_test_near (areas[3 * i], areas[3 * i + 1] + areas[3 * i + 2], 1e-6);
      for (guint k = 0; k < 3; k++)
        if (i < job->n_rooms)
          sums[k] += areas[3 * i + k];
        else
          ox_test_near (sums[k], areas[3 * i + k], 1e-6);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scope/parts", test_what_a_client_signs);
  g_test_add_func ("/scope/quantities", test_quantities_are_the_plan_s);
  g_test_add_func ("/scope/once", test_each_length_once);
  g_test_add_func ("/scope/true", test_dimensions_are_true);
  g_test_add_func ("/scope/doorways", test_doorways_are_seen);
  g_test_add_func ("/scope/condition-areas", test_condition_areas);
  g_test_add_func ("/scope/printed-areas-add-up", test_printed_areas_add_up);
  return g_test_run ();
}
