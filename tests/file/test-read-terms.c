/* Oxturn: tests/file/test-read-terms
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-terms.h"
#include "job-texts.h"

/* What each element becomes. */
static void
test_values (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  g_assert_cmpstr (job->calendar->first_day, ==, "2026-09-14");
  g_assert_cmpuint (job->calendar->start_min, ==, 6 * 60 + 30);
  g_assert_cmpfloat (job->calendar->refill_min, ==, 2.5);
  g_assert_cmpuint (job->calendar->days, ==, 1 + 2 + 32);
  g_assert_cmpfloat (job->calendar->noise_db, ==, 92.5);
  g_assert_cmpfloat (job->calendar->silica_machine, ==, 18);
  g_assert_cmpfloat (job->calendar->silica_hand, ==, 240);
  g_assert_cmpuint (job->costs->n, ==, 2);
  g_assert_cmpint (job->costs->rates[0].per, ==, OX_COST_LABOUR_HOUR);
  g_assert_cmpstr (job->costs->rates[1].amount, ==, "-20.0375");
  g_assert_cmpfloat (job->costs->contingency, ==, 0.075);
  g_assert_cmpstr (job->costs->validity, ==, "30 days");
  g_assert_cmpstr (job->outfit->shot, ==, "S330");
  g_assert_cmpfloat (job->outfit->circuit_a, ==, 20);
  g_assert_cmpuint (job->outfit->n_cords, ==, 2);
  g_assert_cmpfloat (job->outfit->cords[1].length, ==, 15.24);
  g_assert_cmpuint (job->patches->n, ==, 2);
  g_assert_cmpfloat (job->patches->items[0].depth_mm, ==, 0.42);
  g_assert_cmpuint (job->patches->items[0].n_diameters, ==, 2);
  g_assert_cmpfloat (job->patches->items[0].left_mm, ==, 0.4);
  g_assert_cmpfloat (job->patches->items[0].middle_mm, ==, 0.5);
  g_assert_cmpfloat (job->patches->items[0].right_mm, ==, 0.6);
  g_assert_cmpuint (job->patches->items[0].cage_min, ==, 9 * 60);
  g_assert_cmpuint (job->patches->items[0].cage_to_min, ==, 9 * 60 + 10);
  g_assert_false (ox_patch_has_trial (&job->patches->items[1]));
  g_assert_cmpfloat (job->patches->items[1].speed_m_per_min, ==, 3.25);
  g_assert_cmpuint (job->patches->items[1].csp, ==, 0);
}

/* A file of the first version has none of them. */
static void
test_defaults (void)
{
  g_autofree char *text = job_text_with (JOB_START JOB_MACHINE JOB_ROOM JOB_END, "\"1.2\" units", "\"1.0\" units");
  g_autoptr (OxJob) job = job_text_read (text);
  g_autoptr (OxCalendar) calendar = ox_calendar_default ();
  g_autoptr (OxCosts) costs = ox_costs_default ();
  g_assert_true (ox_calendar_equal (job->calendar, calendar));
  g_assert_true (ox_costs_equal (job->costs, costs));
  g_autoptr (OxOutfit) outfit = ox_outfit_default ();
  g_assert_true (ox_outfit_equal (job->outfit, outfit));
  g_assert_cmpfloat (job->rates.edge_m_per_hour, ==, 0);
  g_assert_cmpuint (job->patches->n, ==, 0);
  g_assert_cmpuint (job->rooms[0]->coats, ==, 1);
  g_assert_cmpfloat (job->rooms[0]->coat_turn_deg, ==, 90);
}

static const JobWrong wrong_rows[] = {
  { "2026-09-14", "2026-02-30", "<calendar", "first-day “2026-02-30” of calendar: a day such as" },
  { "06:30", "6:30", "<calendar", "start “6:30” of calendar: a time from 00:00 to 23:59" },
  { "06:30", "24:00", "<calendar", "start “24:00” of calendar" },
  { "shift-h=\"9\"", "shift-h=\"25\"", "<calendar", "shift-h “25” of calendar" },
  { "machines=\"2\"", "machines=\"1.5\"", "<calendar", "machines of calendar: a whole number" },
  { "mon tue sat", "mon funday", "<calendar", "days “mon funday” of calendar: one or more of mon tue" },
  { "noise-db=\"92.5\"", "noise-db=\"201\"", "<calendar", "noise-db “201” of calendar" },
  { "silica-hand=\"240\"", "silica-hand=\"0\"", "<calendar", "silica-hand “0” of calendar" },
  { "mon tue sat", "", "<calendar", "days “” of calendar" },
  { "decimals=\"2\"", "decimals=\"9\"", "<costs", "decimals “9” of costs" },
  { "0.075", "NaN", "<costs", "contingency “NaN” of costs" },
  { "per=\"fixed\"", "per=\"day\"", "<rate per=\"day", "per “day” of" },
  { "-20.0375", "20.03751", "<rate per=\"fixed", "amount “20.03751” of rate: digits with at most 4 decimals" },
  { "-20.0375", "1e3", "<rate per=\"fixed", "amount “1e3” of rate" },
  { "circuit=\"20\"", "circuit=\"0\"", "<outfit", "circuit “0” of outfit" },
  { " mm2=\"3.31\"", "", "<cord length=\"15\"", "mm2" },
  { "length=\"15.24\"", "length=\"-3\"", "<cord length=\"-3", "length “-3” of cord" },
  { "id=\"P2\"", "id=\"P1\"", "<patch id=\"P1\" speed", "id “P1” is that of another test patch" },
  { "id=\"P2\"", "id=\"2\"", "<patch id=\"2", "id “2” of patch" },
  { "speed=\"3.25\"", "speed=\"0\"", "<patch id=\"P2", "speed “0” of patch P2" },
  { "csp=\"3\"", "csp=\"11\"", "<patch id=\"P1", "csp “11” of patch P1" },
  { "2026-09-01", "yesterday", "<patch id=\"P1", "date “yesterday” of patch" },
  { "left-mm=\"0.4\"", "left-mm=\"0\"", "<trial", "left-mm “0” of trial of patch P1" },
  { " right-mm=\"0.6\"", "", "<trial", "trial of patch P1 has no right-mm" },
  { "cage=\"9:00\"", "cage=\"0:30\"", "<trial", "cage “0:30” of trial: a place on a clock from 1:00 to 12:59" },
  { "cage-to=\"9:10\"", "cage-to=\"9\"", "<trial", "cage-to “9” of trial" },
  { "<trial", "<trial left-mm=\"1\" right-mm=\"1\"/><trial", "<trial", "<trial> stands twice in <patch>" },
  { "mon tue sat", "mon, tue", "<calendar", "days “mon, tue” of calendar" },
  { "mm=\"198\"", "mm=\"-1\"", "<diameter", "mm “-1” of diameter of patch P1" },
  { "speed=\"3.5\"", "speed=\"-1\"", "<condition", "speed “-1” of condition K1" },
  { "coats=\"2\"", "coats=\"5\"", "<condition", "coats “5” of condition K1" },
  { "coats=\"2\"", "coats=\"1.5\"", "<condition", "coats of condition: 1, 2, 3 or 4" },
};

static void
test_wrong (void)
{
  job_text_assert_wrong (wrong_rows, G_N_ELEMENTS (wrong_rows));
}

/* Weekdays are a list of the schema: as many blanks between them as anybody likes. */
static void
test_blanks (void)
{
  g_autofree char *text = job_text_with (JOB_WHOLE, "mon tue sat", "  mon   tue\tsat ");
  g_autoptr (OxJob) job = job_text_read (text);
  g_assert_cmpuint (job->calendar->days, ==, 1 + 2 + 32);
}

/* More than anybody has is no job but an attack. */
static void
test_too_many (void)
{
  g_autoptr (GString) text = g_string_new (JOB_START JOB_MACHINE);
  for (guint i = 0; i <= OX_PATCHES_MOST; i++)
    g_string_append_printf (text, "<patch id='P%u' speed='1'/>", i);
  g_string_append (text, JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 200 test patches");
  g_string_assign (text, JOB_START JOB_MACHINE "<outfit>");
  for (guint i = 0; i <= OX_OUTFIT_MOST_CORDS; i++)
    g_string_append (text, "<cord length='1' mm2='2.5'/>");
  g_string_append (text, "</outfit>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 8 cords in series");
  g_string_assign (text, JOB_START JOB_MACHINE "<costs>");
  for (guint i = 0; i <= OX_COST_LINES_MOST; i++)
    g_string_append (text, "<rate per='fixed' amount='1'/>");
  g_string_append (text, "</costs>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 200 rates of cost");
  g_string_assign (text, JOB_START JOB_MACHINE "<patch id='P1' speed='1'>");
  for (guint i = 0; i <= OX_PATCH_MOST_DIAMETERS; i++)
    g_string_append (text, "<diameter mm='200'/>");
  g_string_append (text, "</patch>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 12 diameters");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/read-terms/values", test_values);
  g_test_add_func ("/file/read-terms/defaults", test_defaults);
  g_test_add_func ("/file/read-terms/wrong", test_wrong);
  g_test_add_func ("/file/read-terms/blanks", test_blanks);
  g_test_add_func ("/file/read-terms/too-many", test_too_many);
  return g_test_run ();
}
