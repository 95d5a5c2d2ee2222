/* Oxturn: tests of sheets/crew
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/mark.h"
#include "record/which.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

static OxPageSet *
make (const OxJob *job, const OxPlan *plan, OxSheetKinds which, const char *paper)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = which;
  options.paper = ox_paper_find (paper);
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static void
test_what_a_crew_needs (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan, OX_SHEET_CREW, "A2");
  const OxDrawing *drawing = set->pages[0].drawing;
  const char *const parts[] = { "Order of work", "Chalk lines", "Stations",  "Cautions",  "Legend", "First start",
                                "DROP",          "base wall",   "Collector", "Edge work", "Hall" };
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_test_message ("%s", parts[i]);
      g_assert_nonnull (ox_test_find_text (drawing, parts[i]));
    }
  g_assert_cmpuint (ox_test_count (drawing, "strips", "strip-"), ==, plan->n_strips);
  g_autofree char *last = g_strdup_printf ("strip-%u", plan->n_strips);
  g_assert_cmpuint (ox_test_count (drawing, "numbers", "strip-1"), >, 0);
  g_assert_cmpuint (ox_test_count (drawing, "numbers", last), ==, 1);
}

/* Sheets that are read from a step away, or printed at half their size, have the larger letters on the floor too. */
static void
test_numbers_of_large_sheets (void)
{
  static const struct
  {
    const char *paper;
    double height_mm; /* of ISO 3098-1's series */
  } rows[] = { { "A3", 1.8 }, { "Tabloid", 1.8 }, { "A1", 2.5 }, { "ANSI D", 2.5 } };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxPageSet) set = make (job, plan, OX_SHEET_CREW, rows[i].paper);
      const OxDrawing *drawing = set->pages[0].drawing;
      guint numbers = 0;
      for (guint k = 0; k < drawing->n_elements; k++)
        if (drawing->elements[k].kind == OX_ELEMENT_TEXT
            && g_str_equal (drawing->layers[drawing->elements[k].layer].id, "numbers"))
          {
            ox_test_near (drawing->elements[k].text.height_mm, rows[i].height_mm, 1e-9);
            numbers++;
          }
      g_assert_cmpuint (numbers, >, 5);
      ox_test_no_texts_overlap (drawing, 1);
    }
}

static void
test_first_start_is_marked_once (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = make (job, plan, OX_SHEET_CREW, "A3");
  const OxDrawing *drawing = set->pages[0].drawing;
  guint flags = 0;
  for (guint i = 0; i < drawing->n_elements; i++)
    flags += drawing->elements[i].kind == OX_ELEMENT_MARK && drawing->elements[i].mark.kind == OX_MARK_FIRST
             && g_str_equal (drawing->layers[drawing->elements[i].layer].id, "stations");
  g_assert_cmpuint (flags, ==, 1);
}

/* A crew that comes back goes on where it stopped, and sees what is left. */
static void
test_goes_on (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GArray) numbers = ox_which_strips (plan, "-3", &error);
  g_autoptr (OxJob) begun = ox_mark_strips (job, plan, numbers, &(OxMark){ .date = "2026-09-14" }, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) later = ox_test_plan (begun);
  g_autoptr (OxPageSet) set = make (begun, later, OX_SHEET_CREW, "A2");
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "Go on at strip 4"));
  g_autofree char *left = g_strdup_printf ("Left: %u strips", later->n_strips - 3);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, left));
}

/* count_in_tables: cells that are @id on the pages of the set */
static guint
count_in_tables (const OxPageSet *set, const char *id)
{
  guint n = 0;
  for (guint p = 0; p < set->n_pages; p++)
    for (guint i = 0; i < set->pages[p].drawing->n_elements; i++)
      {
        const OxElement *element = &set->pages[p].drawing->elements[i];
        n += element->kind == OX_ELEMENT_TEXT
             && g_str_equal (set->pages[p].drawing->layers[element->layer].id, "tables")
             && g_str_equal (element->text.text, id);
      }
  return n;
}

static void
test_every_edge_area_is_in_a_table (void)
{
  const char *const papers[] = { "A4", "A3", "A1", "Letter" };
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  for (guint p = 0; p < G_N_ELEMENTS (papers); p++)
    {
      g_autoptr (OxPageSet) alone = make (job, plan, OX_SHEET_CREW, papers[p]);
      g_autoptr (OxPageSet) all = make (job, plan, OX_SHEET_CREW | OX_SHEET_SCHEDULE, papers[p]);
      for (guint i = 0; i < plan->n_edges; i++)
        {
          g_assert_cmpuint (count_in_tables (alone, plan->edges[i].id), ==, 1);
          g_assert_cmpuint (count_in_tables (all, plan->edges[i].id), >=, 1);
        }
    }
}

/* A field that is walked to and fro says both headings; where numbers are left out, or one has a cross, it is said. */
static void
test_what_numbers_mean_is_said (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  gboolean crosswise = FALSE;
  for (guint i = 0; i < plan->n_strips; i++)
    crosswise |= plan->strips[i].kind == OX_STRIP_CROSSWISE;
  const char *const papers[] = { "A4", "A1" };
  guint thinned = 0;
  for (guint k = 0; k < G_N_ELEMENTS (papers); k++)
    {
      g_autoptr (OxPageSet) set = make (job, plan, OX_SHEET_CREW, papers[k]);
      guint numbers = 0, said = 0, both = 0, cross = 0;
      for (guint p = 0; p < set->n_pages; p++)
        {
          const OxDrawing *drawing = set->pages[p].drawing;
          for (guint i = 0; i < drawing->n_elements; i++)
            numbers += drawing->elements[i].kind == OX_ELEMENT_TEXT
                       && g_str_equal (drawing->layers[drawing->elements[i].layer].id, "numbers");
          said += ox_test_find_text (drawing, "no number on the") != NULL;
          both += ox_test_find_text (drawing, "0/180\xc2\xb0") != NULL || ox_test_find_text (drawing, "180/0\xc2\xb0") != NULL
                  || ox_test_find_text (drawing, "90/270\xc2\xb0") != NULL || ox_test_find_text (drawing, "270/90\xc2\xb0") != NULL;
          cross += ox_test_find_text (drawing, "A crosswise strip.") != NULL;
        }
      g_test_message ("%s: %u of %u numbers", papers[k], numbers, plan->n_strips);
      g_assert_cmpint (said > 0, ==, numbers < plan->n_strips);
      g_assert_cmpuint (both, >, 0);
      g_assert_cmpint (cross > 0, ==, crosswise);
      thinned += numbers < plan->n_strips;
    }
  g_assert_cmpuint (thinned, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/crew/numbers-of-large-sheets", test_numbers_of_large_sheets);
  g_test_add_func ("/crew/parts", test_what_a_crew_needs);
  g_test_add_func ("/crew/first", test_first_start_is_marked_once);
  g_test_add_func ("/crew/goes-on", test_goes_on);
  g_test_add_func ("/crew/edges", test_every_edge_area_is_in_a_table);
  g_test_add_func ("/crew/what-numbers-mean", test_what_numbers_mean_is_said);
  return g_test_run ();
}
