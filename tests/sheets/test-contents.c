/* Oxturn: tests of sheets/contents
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/contents.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"
#include <string.h>

static OxPageSet *
make (const OxJob *job, const char *paper, const char *schedule_paper)
{
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GError) error = NULL;
  options.paper = ox_paper_find (paper);
  options.schedule_paper = schedule_paper ? ox_paper_find (schedule_paper) : NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

/* Column by column what stands in the lines of the contents on the first page; the rows of a column share their x. */
static char *
text_right_of (const OxDrawing *drawing, const OxElement *cell)
{
  const OxElement *best = NULL;
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      if (element->kind == OX_ELEMENT_TEXT && fabs (element->text.at.y - cell->text.at.y) < 0.01
          && element->text.at.x > cell->text.at.x + 0.5 && (!best || element->text.at.x < best->text.at.x))
        best = element;
    }
  return g_strdup (best ? best->text.text : "");
}

/* Every page of the set is in a line of the first sheet, under its number, with what it shows. */
static void
test_names_every_page (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPageSet) set = make (job, "A3", "A4");
  const OxDrawing *first = set->pages[0].drawing;
  g_assert_nonnull (ox_test_find_text (first, "Sheets of this set"));
  guint from = 0;
  while (from < set->n_pages)
    {
      guint to = from + 1;
      while (to < set->n_pages && g_str_equal (set->pages[to].title, set->pages[from].title))
        to++;
      g_autofree char *numbers
          = to == from + 1 ? g_strdup (set->pages[from].label)
                           : g_strdup_printf ("%s \xe2\x80\x93 %s", set->pages[from].label, set->pages[to - 1].label);
      gboolean found = FALSE;
      for (guint i = 0; i < first->n_elements && !found; i++)
        if (first->elements[i].kind == OX_ELEMENT_TEXT && g_str_equal (first->elements[i].text.text, numbers))
          {
            g_autofree char *shows = text_right_of (first, &first->elements[i]);
            found = g_str_equal (shows, set->pages[from].title);
          }
      g_test_message ("%s %s", numbers, set->pages[from].title);
      g_assert_true (found);
      from = to;
    }
  ox_test_no_texts_overlap (first, 1);
}

/* One line for each kind of sheet, none of them empty. */
static void
test_no_empty_lines (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPageSet) set = make (job, "A4", NULL);
  const OxDrawing *first = set->pages[0].drawing;
  const OxElement *head = ox_test_find_cell (first, "Shows");
  guint kinds = 1, rules = 0;
  for (guint i = 1; i < set->n_pages; i++)
    kinds += !g_str_equal (set->pages[i].title, set->pages[i - 1].title);
  /* A line is drawn under each row, over the width of the block, down to the title of the next one. */
  const OxElement *next = ox_test_find_cell (first, "Quantities");
  for (guint i = 0; i < first->n_elements; i++)
    {
      OxBox box = first->elements[i].box;
      rules += first->elements[i].kind == OX_ELEMENT_PATH && first->elements[i].style == OX_STYLE_RULE
               && box.y1 < head->text.at.y && box.y0 > next->text.at.y && box.x0 < head->text.at.x;
    }
  g_assert_cmpuint (rules, ==, kinds);
}

/* Beside large drawings lists and forms are for the office printer, unless told otherwise. */
static void
test_lists_beside_large_drawings (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  const char *const papers[][3] = { { "A1", NULL, "A4" },
                                    { "Arch D", NULL, "Letter" },
                                    { "A3", NULL, "A3" },
                                    { "Tabloid", NULL, "Tabloid" },
                                    { "A1", "A2", "A2" } };
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autoptr (OxPageSet) set = make (job, papers[i][0], papers[i][1]);
      const OxPaper *lists = ox_paper_find (papers[i][2]), *drawings = ox_paper_find (papers[i][0]);
      const OxPage *first = &set->pages[0], *last = &set->pages[set->n_pages - 1];
      ox_test_near (first->width_mm * first->height_mm, drawings->short_mm * drawings->long_mm, 1e-9);
      ox_test_near (last->width_mm * last->height_mm, lists->short_mm * lists->long_mm, 1e-9);
    }
}

/* Drawings on one paper, lists on another. */
static void
test_mixed_papers (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPageSet) set = make (job, "A3", "A4");
  guint n_a3 = 0, n_a4 = 0;
  for (guint i = 0; i < set->n_pages; i++)
    {
      n_a3 += set->pages[i].width_mm == 420 && set->pages[i].height_mm == 297;
      n_a4 += set->pages[i].width_mm == 210 && set->pages[i].height_mm == 297;
    }
  g_assert_cmpfloat (set->pages[0].width_mm, ==, 420);
  g_assert_cmpuint (n_a3, >=, 2);
  g_assert_cmpuint (n_a4, >=, 1);
  g_assert_cmpuint (n_a3 + n_a4, ==, set->n_pages);
  g_autoptr (OxPageSet) same = make (job, "A3", NULL);
  for (guint i = 0; i < same->n_pages; i++)
    g_assert_cmpfloat (same->pages[i].width_mm, ==, 420);
}

/* A sheet by itself has no list of others. */
static void
test_one_kind (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SCOPE;
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, NULL);
  g_assert_null (ox_test_find_text (set->pages[0].drawing, "Sheets of this set"));
}

/* A scale that one sheet has no room for: among all sheets it takes the largest that fits and says so; alone it is
 * refused. */
static void
test_scale_that_does_not_fit (void)
{
  g_autoptr (OxJob) job = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find ("A4");
  options.scale = (OxScale){ 20, NULL };
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  const OxElement *note = ox_test_find_text (set->pages[0].drawing, "1:20 does not fit");
  g_assert_nonnull (note);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "Scale 1:"));
  g_assert_null (ox_test_find_text (set->pages[0].drawing, "Scale 1:20 "));
  options.which = OX_SHEET_SCOPE;
  g_assert_null (ox_sheets_new (job, plan, &options, &error));
  g_assert_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_TOO_LARGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/contents/names-every-page", test_names_every_page);
  g_test_add_func ("/contents/lines", test_no_empty_lines);
  g_test_add_func ("/contents/large", test_lists_beside_large_drawings);
  g_test_add_func ("/contents/mixed-papers", test_mixed_papers);
  g_test_add_func ("/contents/one-kind", test_one_kind);
  g_test_add_func ("/contents/scale-that-does-not-fit", test_scale_that_does_not_fit);
  return g_test_run ();
}
