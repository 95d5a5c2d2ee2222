/* Oxturn: tests of sheets/setup
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/edit.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

static OxPageSet *
make (OxUnits units, const char *paper, const char *language)
{
  OxLanguage found;
  g_assert_true (ox_language_find (language, &found));
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SETUP;
  options.paper = ox_paper_find (paper);
  options.language = &found;
  g_autoptr (OxJob) job = ox_test_hall (units);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GError) error = NULL;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

/* One page for the crew, whatever the paper and the language. */
static void
test_one_page (void)
{
  static const char *const papers[] = { "A4", "A3", "Letter", "Tabloid" }, *const languages[] = { "en", "es", "de" };
  for (guint p = 0; p < G_N_ELEMENTS (papers); p++)
    for (guint l = 0; l < G_N_ELEMENTS (languages); l++)
      {
        g_test_message ("%s, %s", papers[p], languages[l]);
        g_autoptr (OxPageSet) set = make (p < 2 ? OX_UNITS_METRES : OX_UNITS_FEET, papers[p], languages[l]);
        g_assert_cmpuint (set->n_pages, ==, 1);
        ox_test_no_texts_overlap (set->pages[0].drawing, 1);
      }
}

/* 10 m at 6 m/min take 100 s; 30 ft, which are 9.144 m, 91 s. Everything that the card is for stands on it. */
static void
test_contents (void)
{
  static const char *const parts[] = { "10 m in 100 s",
                                       "magnet seal",
                                       "Hopper screen",
                                       "1.",
                                       "8.",
                                       "Ammeter",
                                       "Chalk lines",
                                       "Feed cage",
                                       "10:30",
                                       "Left, mm",
                                       "Balance, %",
                                       "Blast wheel blades",
                                       "maker's manual",
                                       "80 %",
                                       "120 V, 16 A",
                                       "S330",
                                       "Plan, not a certificate." };
  g_autoptr (OxPageSet) set = make (OX_UNITS_METRES, "A4", "en"), feet = make (OX_UNITS_FEET, "Letter", "en");
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_test_message ("%s", parts[i]);
      g_assert_nonnull (ox_test_find_text (set->pages[0].drawing, parts[i]));
    }
  g_assert_nonnull (ox_test_find_text (feet->pages[0].drawing, "30 ft in 91 s"));
  g_assert_null (ox_test_find_text (feet->pages[0].drawing, "m/min"));
}

/* With a trial in the job the card has what it found and what is to be done, and no cells to fill in. */
static void
test_trial (void)
{
  static const char *const parts[] = { "P1 2026-09-01: left 0.40 mm", "0.60", "Balance 20 %", "left.",
                                       "o'clock: 9:00", "turned to: 9:10" };
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SETUP;
  options.paper = ox_paper_find ("A4");
  OxPatch patch = { .id = (char *) "P1", .date = (char *) "2026-09-01", .speed_m_per_min = 6, .left_mm = 0.4, .middle_mm = 0.5,
                    .right_mm = 0.6, .cage_min = 540, .cage_to_min = 550 };
  g_autoptr (OxJob) hall = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 1, &patch });
  g_autoptr (OxJob) job = ox_job_with_patches (hall, patches, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (set->n_pages, ==, 1);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (ox_test_find_text (set->pages[0].drawing, parts[i]) == NULL)
      g_error ("%s", parts[i]);
  g_assert_null (ox_test_find_text (set->pages[0].drawing, "Left, mm"));
}

/* A strip is done and the meter went on by 12.3 h: so have the wear parts, and so the card says it. */
static void
test_hours_of_the_record (void)
{
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.which = OX_SHEET_SETUP;
  options.paper = ox_paper_find ("A4");
  g_autoptr (OxJob) hall = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxPlan) whole = ox_test_plan (hall);
  const OxStrip *first = &whole->strips[0];
  OxDoneStrip mark = { .room = hall->rooms[first->room]->id, .a = first->a, .b = first->b, .width = first->width, .coat = first->coat, .date = (char *) "2026-09-18" };
  g_autoptr (OxRecord) marked = ox_record_with_strips (hall->record, &mark, 1);
  g_autoptr (OxRecord) record = ox_record_with_day (marked, &(OxRecordDay){ (char *) "2026-09-18", 100, 112.3, NULL, 1 });
  g_autoptr (OxJob) job = ox_job_with_record (hall, record, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  const OxElement *part = ox_test_find_cell (set->pages[0].drawing, "Blast wheel blades");
  g_assert_nonnull (part);
  g_assert_true (ox_test_has_cell_beside (set->pages[0].drawing, part, "12.3"));
  g_assert_true (ox_test_has_cell_beside (set->pages[0].drawing, part, "37.7"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheets/setup/one-page", test_one_page);
  g_test_add_func ("/sheets/setup/contents", test_contents);
  g_test_add_func ("/sheets/setup/trial", test_trial);
  g_test_add_func ("/sheets/setup/hours-of-the-record", test_hours_of_the_record);
  return g_test_run ();
}
