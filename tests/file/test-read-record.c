/* Oxturn: tests/file/test-read-record
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-record.h"
#include "job-texts.h"

/* What each element becomes. */
static void
test_values (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  const OxRecord *record = job->record;
  g_assert_cmpuint (record->n_days, ==, 3);
  g_assert_cmpfloat (record->days[0].meter_start_h, ==, 1204.5);
  g_assert_cmpstr (record->days[0].notes, ==, "cold start");
  g_assert_cmpuint (record->days[0].machine, ==, 1);
  g_assert_cmpuint (record->days[1].machine, ==, 2);
  g_assert_cmpfloat (record->days[1].meter_end_h, ==, 304.5);
  g_assert_cmpstr (record->days[1].notes, ==, "new wheel\nat noon");
  g_assert_cmpfloat (record->days[2].meter_end_h, ==, OX_METER_UNREAD);
  g_assert_cmpuint (record->n_strips, ==, 2);
  g_assert_cmpfloat (record->strips[0].b.x, ==, 9.75);
  g_assert_cmpuint (record->strips[0].csp, ==, 3);
  g_assert_cmpfloat (record->strips[0].depth_mm, ==, 0.42);
  g_assert_false (record->strips[0].crosswise);
  g_assert_true (record->strips[1].crosswise);
  g_assert_cmpuint (record->strips[1].coat, ==, 2);
  g_assert_cmpuint (record->strips[1].kept, ==, 1);
  g_assert_cmpuint (record->n_edges, ==, 1);
  g_assert_cmpuint (record->edges[0].n_rings, ==, 3);
  /* 4 x 2 less a triangle of 1 x 0.5 / 2, and one of 1 x 0.25 / 2 */
  g_autoptr (OxRegion) floor = ox_done_edge_region (&record->edges[0]);
  g_assert_cmpfloat (ABS (ox_region_area (floor) - (8 - 0.25 + 0.125)), <, 1e-9);
}

static void
test_round_trip (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  g_autofree char *text = ox_job_file_to_text (job);
  g_assert_nonnull (strstr (text, JOB_RECORD));
  g_autoptr (OxJob) again = job_text_read (text);
  g_autofree char *twice = ox_job_file_to_text (again);
  g_assert_cmpstr (twice, ==, text);
}

/* An older file has none, and one without anything done does not say so. */
static void
test_nothing_done (void)
{
  g_autofree char *text = job_text_with (JOB_START JOB_MACHINE JOB_ROOM JOB_END, "\"1.2\" units", "\"1.1\" units");
  g_autoptr (OxJob) job = job_text_read (text);
  g_assert_true (ox_record_is_empty (job->record));
  g_autofree char *written = ox_job_file_to_text (job);
  g_assert_null (strstr (written, "record"));
}

static const JobWrong wrong_rows[] = {
  { "<day date=\"2026-09-15\"", "<day date=\"2026-02-30\"", "<day date=\"2026-02", "date “2026-02-30” of day: a day" },
  { "<day date=\"2026-09-15\"", "<day date=\"\"", "<day date=\"\"", "date “” of day: a day such as" },
  { "<day date=\"2026-09-15\"", "<day", "<day/>", "has no date" },
  { "<day date=\"2026-09-15\"", "<day date=\"2026-09-14\"", "<day date=\"2026-09-14\"/>", "that of another day" },
  { "machine=\"2\" meter", "machine=\"1\" meter", "<day date=\"2026-09-14\" machine", "that of another day" },
  { "machine=\"2\" meter", "machine=\"21\" meter", "<day date=\"2026-09-14\" machine", "machine “21” of day of record: a number from 1 to 20" },
  { "1211.25", "1204.25", "<day", "meter-end of day 2026-09-14 is 1204.25 h; meter-start, 1204.5 h, or more" },
  { "1211.25", "1e9", "<day", "meter-end “1e9” of day" },
  { "1204.5", "-3", "<day", "meter-start “-3” of day" },
  { "x2=\"9.75\"", "x2=\"1.5\"", "<strip", "has no length" },
  { "x2=\"9.75\"", "x2=\"10000.1\"", "<strip", "x2 “10000.1” of strip" },
  { "x2=\"9.75\"", "x2=\"nan\"", "<strip", "x2 “nan” of strip" },
  { "width=\"0.21\" csp", "width=\"0\" csp", "<strip", "width “0” of strip" },
  { "width=\"0.21\" csp", "width=\"11\" csp", "<strip", "width “11” of strip" },
  { "kind=\"crosswise\"", "kind=\"round\"", "<strip date=\"2026-09-15\"", "kind “round” of strip" },
  { "coat=\"2\" x1", "coat=\"0\" x1", "<strip date=\"2026-09-15\"", "coat “0” of strip" },
  { "kind=\"crosswise\" coat=\"2\" x1=\"11\" y1=\"6\" x2=\"11\" y2=\"1\"", "x1=\"9.75\" y1=\"0.21\" x2=\"1.5\" y2=\"0.21\"",
    "<strip date=\"2026-09-15\"", "stands in the record already" },
  { "kept=\"1\"", "kept=\"2\"", "<strip date=\"2026-09-15\"", "kept “2” of strip of record: a number from 0 to 1" },
  { "csp=\"3\" depth", "csp=\"12\" depth", "<strip", "csp “12” of strip" },
  { "depth-mm=\"0.42\" note", "depth-mm=\"101\" note", "<strip", "depth-mm “101” of strip" },
  { "(5 0, 6 0, 6 0.25, 5 0)", "(5 0, 6 0, 6 0.25)", "<edge", "wkt of edge: line 1, column" },
  { "(5 0, 6 0, 6 0.25, 5 0)", "(5 0, 6 1, 6 0, 5 1, 5 0)", "<edge", "meets itself at 5.500, 0.500" },
  { "(5 0, 6 0, 6 0.25, 5 0)", "(5 0, 60000 0, 6 0.25, 5 0)", "<edge", "corner 60000, 0: coordinates from" },
  { "wkt=\"MULTI", "wkt=\"", "<edge", "wkt of edge" },
  { "  </record>", "  </record><record/>", "  </record>", "<record> stands twice" },
  { "<day date=\"2026-09-15\"/>", "<week/>", "<week", "element <week> is not known in <record>" },
};

static void
test_wrong (void)
{
  job_text_assert_wrong (wrong_rows, G_N_ELEMENTS (wrong_rows));
}

/* More than anybody has is no record but an attack. */
static void
test_too_many (void)
{
  g_autoptr (GString) text = g_string_new (JOB_START JOB_MACHINE "<record>");
  for (guint i = 0; i <= OX_RECORD_DAYS_MOST; i++)
    g_string_append_printf (text, "<day date='%04u-%02u-01'/>", 1000 + i / 12, i % 12 + 1);
  g_string_append (text, "</record>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 5000 days");
}

static void
test_too_many_strips (void)
{
  g_autoptr (GString) text = g_string_new (JOB_START JOB_MACHINE "<record>");
  for (guint i = 0; i <= OX_RECORD_STRIPS_MOST; i++)
    g_string_append_printf (text, "<strip date='2026-09-14' x1='%u' y1='%u' x2='9999' y2='0' width='.2'/>", i % 9000,
                            i / 9000 + 1);
  g_string_append (text, "</record>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 100000 strips");
}

static void
test_too_many_edges (void)
{
  g_autoptr (GString) text = g_string_new (JOB_START JOB_MACHINE "<record>");
  for (guint i = 0; i <= OX_RECORD_EDGES_MOST; i++)
    g_string_append (text, "<edge date='2026-09-14' wkt='POLYGON ((0 0, 1 0, 0 1, 0 0))'/>");
  g_string_append (text, "</record>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 20000 edge areas");
}

/* 11 areas of 100,000 corners: counted before any of the last one is looked at, which meets itself. */
static void
test_too_many_corners (void)
{
  g_autoptr (GString) wkt = g_string_new ("POLYGON ((");
  for (guint i = 0; i < 50000; i++)
    g_string_append_printf (wkt, "%u.%u 0.%u,", i / 10, i % 10, i % 2);
  for (guint i = 50000; i > 0; i--)
    g_string_append_printf (wkt, "%u.%u 9,", (i - 1) / 10, (i - 1) % 10);
  g_string_append (wkt, "0 0))");
  g_autoptr (GString) text = g_string_new (JOB_START JOB_MACHINE "<record>");
  for (guint i = 0; i < 10; i++)
    g_string_append_printf (text, "<edge date='2026-09-14' wkt='%s'/>", wkt->str);
  g_string_append (text, "<edge date='2026-09-14' wkt='POLYGON ((0 0, 2 2, 2 0, 0 2, 0 0))'/></record>" JOB_END);
  job_text_assert_refused (text->str, text->len, 0, "more than 1000000 corners");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/read-record/values", test_values);
  g_test_add_func ("/file/read-record/round-trip", test_round_trip);
  g_test_add_func ("/file/read-record/nothing-done", test_nothing_done);
  g_test_add_func ("/file/read-record/wrong", test_wrong);
  g_test_add_func ("/file/read-record/too-many", test_too_many);
  g_test_add_func ("/file/read-record/too-many-edges", test_too_many_edges);
  g_test_add_func ("/file/read-record/too-many-corners", test_too_many_corners);
  g_test_add_func ("/file/read-record/too-many-strips", test_too_many_strips);
  return g_test_run ();
}
