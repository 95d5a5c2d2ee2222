/* Oxturn: tests of sheets/sheets
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/sheets.h"
#include "drawing/text.h"
#include "paint/pdf.h"
#include "paint/svg.h"
#include "sheets/hall.h"
#include "support/ox-test.h"
#include <locale.h>
#include <string.h>

/* one floor in metres and in feet, planned once for all tests */
static struct
{
  OxJob *job;
  OxPlan *plan;
} halls[2];

static OxPageSet *
make (OxUnits units, const char *paper, OxOrientation orientation)
{
  guint i = units == OX_UNITS_FEET;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find (paper);
  options.orientation = orientation;
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (halls[i].job, halls[i].plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static gboolean
is_of_series (double height)
{
  const double series[] = { 1.8, 2.5, 3.5, 5, 7, 10 };
  for (guint i = 0; i < G_N_ELEMENTS (series); i++)
    if (height == series[i])
      return TRUE;
  return FALSE;
}

static void
check_page (const OxPage *page)
{
  const OxDrawing *drawing = page->drawing;
  OxBox paper = { 0, 0, page->width_mm, page->height_mm };
  for (guint i = 0; i < drawing->n_elements; i++)
    {
      const OxElement *element = &drawing->elements[i];
      g_assert_cmpfloat (element->from_mm, ==, 0);
      OxBox box = element->box;
      if (element->kind == OX_ELEMENT_TEXT)
        {
          g_assert_true (is_of_series (element->text.height_mm));
          OxPoint corners[4];
          ox_element_text_corners (element, 1, corners);
          for (int k = 0; k < 4; k++)
            ox_box_add (&box, corners[k]);
        }
      if (box.x0 < paper.x0 || box.x1 > paper.x1 || box.y0 < paper.y0 || box.y1 > paper.y1)
        g_test_message ("layer %s leaves the paper", drawing->layers[element->layer].id);
      g_assert_true (box.x0 >= paper.x0 && box.x1 <= paper.x1 && box.y0 >= paper.y0 && box.y1 <= paper.y1);
    }
  ox_test_no_texts_overlap (drawing, 1);
}

static void
test_every_page_on_every_paper (void)
{
  const char *const papers[] = { "A4", "A3", "A1", "Letter", "Tabloid", "Arch D" };
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    for (OxOrientation o = OX_ORIENTATION_PORTRAIT; o <= OX_ORIENTATION_LANDSCAPE; o++)
      {
        OxUnits units = i < 3 ? OX_UNITS_METRES : OX_UNITS_FEET;
        g_autoptr (OxPageSet) set = make (units, papers[i], o);
        const OxPaper *paper = ox_paper_find (papers[i]);
        g_assert_cmpuint (set->n_pages, >=, 3);
        for (guint p = 0; p < set->n_pages; p++)
          {
            g_test_message ("%s, page %u of %u", papers[i], p + 1, set->n_pages);
            gboolean drawing = ox_test_find_text (set->pages[p].drawing, "Scale 1:") != NULL;
            const OxPaper *wanted = paper->short_mm < 300 || drawing ? paper : ox_paper_find (i < 3 ? "A4" : "Letter");
            gboolean list = set->pages[p].width_mm * set->pages[p].height_mm < paper->short_mm * paper->long_mm - 1;
            /* Lists beside large drawings stand on office paper; so may no drawing. */
            g_assert_true (!list || (wanted != paper && !drawing));
            const OxPaper *has = list ? wanted : paper;
            ox_test_near (set->pages[p].width_mm, o == OX_ORIENTATION_PORTRAIT ? has->short_mm : has->long_mm, 1e-9);
            g_autofree char *sheet = g_strdup_printf ("%u / %u", p + 1, set->n_pages);
            g_assert_nonnull (ox_test_find_text (set->pages[p].drawing, sheet));
            check_page (&set->pages[p]);
          }
      }
}

static void
test_order_and_texts_of_the_set (void)
{
  g_autoptr (OxPageSet) set = make (OX_UNITS_METRES, "A3", OX_ORIENTATION_AUTO);
  g_assert_cmpstr (set->title, ==, "Hall 3");
  g_assert_cmpstr (set->author, ==, "H. Ostrevik");
  g_assert_cmpstr (set->date, ==, "2026-09-14");
  g_assert_cmpstr (set->pages[0].title, ==, "Scope drawing");
  g_assert_cmpstr (set->pages[0].label, ==, "1");
  g_assert_cmpstr (set->pages[set->n_pages - 1].title, ==, "Day sheet");
}

static void
test_us_scale_for_feet (void)
{
  g_autoptr (OxPageSet) set = make (OX_UNITS_FEET, "Arch D", OX_ORIENTATION_AUTO);
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, "\" = 1'-0\" (1:"));
  g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, " ft"));
  g_assert_null (ox_test_find_text (set->pages[0].drawing, " m\xc2\xb2"));
}

static void
test_same_job_same_bytes (void)
{
  g_autoptr (OxPageSet) a = make (OX_UNITS_METRES, "A3", OX_ORIENTATION_AUTO),
                        b = make (OX_UNITS_METRES, "A3", OX_ORIENTATION_AUTO);
  for (guint i = 0; i < a->n_pages; i++)
    {
      g_autoptr (GBytes) x = ox_svg_new (&a->pages[i]), y = ox_svg_new (&b->pages[i]);
      g_assert_true (g_bytes_equal (x, y));
    }
  g_autoptr (GBytes) x = ox_pdf_new (a, NULL), y = ox_pdf_new (b, NULL);
  g_assert_true (g_bytes_equal (x, y));
}

static void
test_same_bytes_where_a_comma_parts_decimals (void)
{
  g_autofree char *before = g_strdup (setlocale (LC_ALL, NULL));
  g_autoptr (OxPageSet) plain = make (OX_UNITS_METRES, "A3", OX_ORIENTATION_AUTO);
  if (setlocale (LC_ALL, "de_DE.utf8") == NULL)
    {
      g_test_skip ("no German locale is installed");
      return;
    }
  g_autoptr (OxPageSet) comma = make (OX_UNITS_METRES, "A3", OX_ORIENTATION_AUTO);
  g_assert_cmpuint (comma->n_pages, ==, plain->n_pages);
  for (guint i = 0; i < plain->n_pages; i++)
    {
      g_autoptr (GBytes) x = ox_svg_new (&plain->pages[i]), y = ox_svg_new (&comma->pages[i]);
      g_assert_true (g_bytes_equal (x, y));
    }
  setlocale (LC_ALL, before);
}

static void
test_refusals (void)
{
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) none = ox_plan_new (empty, NULL, NULL);
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  g_assert_null (ox_sheets_new (empty, none, &options, &error));
  g_assert_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_NO_FLOOR);
  g_clear_error (&error);
  options.which = OX_SHEET_SCOPE;
  g_assert_true (ox_scale_parse ("1:10", &options.scale));
  g_assert_null (ox_sheets_new (halls[0].job, halls[0].plan, &options, &error));
  g_assert_error (error, OX_SHEETS_ERROR, OX_SHEETS_ERROR_TOO_LARGE);
}

static void
test_kinds_are_read (void)
{
  OxSheetKinds kinds = 0;
  g_assert_true (ox_sheet_kinds_parse ("crew", &kinds));
  g_assert_cmpuint (kinds, ==, OX_SHEET_CREW);
  g_assert_true (ox_sheet_kinds_parse ("all", &kinds));
  g_assert_cmpuint (kinds, ==, OX_SHEET_ALL);
  g_assert_false (ox_sheet_kinds_parse ("Crew drawing", &kinds));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (halls); i++)
    {
      halls[i].job = ox_test_hall (i == 0 ? OX_UNITS_METRES : OX_UNITS_FEET);
      halls[i].plan = ox_test_plan (halls[i].job);
    }
  g_test_add_func ("/sheets/every-paper", test_every_page_on_every_paper);
  g_test_add_func ("/sheets/set", test_order_and_texts_of_the_set);
  g_test_add_func ("/sheets/us-scale", test_us_scale_for_feet);
  g_test_add_func ("/sheets/same-bytes", test_same_job_same_bytes);
  g_test_add_func ("/sheets/locale", test_same_bytes_where_a_comma_parts_decimals);
  g_test_add_func ("/sheets/refusals", test_refusals);
  g_test_add_func ("/sheets/kinds", test_kinds_are_read);
  int result = g_test_run ();
  for (guint i = 0; i < G_N_ELEMENTS (halls); i++)
    {
      ox_plan_unref (halls[i].plan);
      ox_job_unref (halls[i].job);
    }
  return result;
}
