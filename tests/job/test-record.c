/* Oxturn: tests/job/test-record
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/record.h"
#include "job/edit.h"
#include "job-making.h"

static OxDoneStrip
strip_at (double y, const char *date)
{
  return (OxDoneStrip){ .room = (char *) "R1", .a = { 1, y }, .b = { 9, y }, .width = 0.21, .date = (char *) date };
}

static OxRecord *
make_record (void)
{
  OxRecordDay days[] = { { (char *) "2026-09-15", 1211.5, 1218.25, NULL, 1 },
                         { (char *) "2026-09-14", 1204, 1211.5, (char *) "cold\nstart", 0 } };
  OxDoneStrip strips[] = { strip_at (1, "2026-09-14"), strip_at (1.19, "2026-09-14"), strip_at (1.38, "2026-09-15") };
  return ox_record_new (&(OxRecord){ 2, 3, 0, days, strips, NULL });
}

static void
test_days_in_order (void)
{
  g_autoptr (OxRecord) record = make_record ();
  g_assert_cmpstr (record->days[0].date, ==, "2026-09-14");
  g_assert_cmpstr (record->days[0].notes, ==, "cold\nstart");
  g_assert_cmpstr (record->days[1].notes, ==, "");
  OxRecordDay again = { (char *) "2026-09-14", 1204, OX_METER_UNREAD, NULL, 1 };
  g_autoptr (OxRecord) set = ox_record_with_day (record, &again);
  g_assert_cmpuint (set->n_days, ==, 2);
  g_assert_cmpfloat (set->days[0].meter_end_h, ==, OX_METER_UNREAD);
  g_autoptr (OxRecord) without = ox_record_without_day (set, "2026-09-14");
  g_assert_cmpuint (without->n_days, ==, 1);
  g_assert_cmpuint (without->n_strips, ==, 3);
  g_assert_null (ox_record_find_day (without, "2026-09-14", 1));
  g_assert_nonnull (ox_record_find_day (without, "2026-09-15", 1));
}

/* 7.5 h and 6.75 h; a day with one reading missing has none. */
static void
test_meter (void)
{
  g_autoptr (OxRecord) record = make_record ();
  g_assert_cmpfloat (ox_record_day_hours (&record->days[0]), ==, 7.5);
  g_assert_cmpfloat (ox_record_meter_hours (record, 0), ==, 14.25);
  OxRecordDay half = { (char *) "2026-09-16", OX_METER_UNREAD, 1300, NULL, 1 };
  g_autoptr (OxRecord) more = ox_record_with_day (record, &half);
  g_assert_cmpfloat (ox_record_meter_hours (more, 1), ==, 14.25);
}

/* Each machine has days, meters and notes of its own; a day taken away is that of all. */
static void
test_machines (void)
{
  g_autoptr (OxRecord) record = make_record ();
  OxRecordDay second = { (char *) "2026-09-14", 300, 304.5, (char *) "new wheel", 2 };
  g_autoptr (OxRecord) both = ox_record_with_day (record, &second);
  g_assert_cmpuint (both->n_days, ==, 3);
  g_assert_cmpuint (both->days[0].machine, ==, 1);
  g_assert_cmpuint (both->days[1].machine, ==, 2);
  g_assert_cmpstr (both->days[2].date, ==, "2026-09-15");
  g_assert_cmpfloat (ox_record_meter_hours (both, 1), ==, 14.25);
  g_assert_cmpfloat (ox_record_meter_hours (both, 2), ==, 4.5);
  g_assert_cmpfloat (ox_record_meter_hours (both, 0), ==, 18.75);
  g_assert_cmpstr (ox_record_find_day (both, "2026-09-14", 2)->notes, ==, "new wheel");
  second.meter_end_h = 305;
  g_autoptr (OxRecord) again = ox_record_with_day (both, &second);
  g_assert_cmpuint (again->n_days, ==, 3);
  g_assert_cmpfloat (ox_record_meter_hours (again, 2), ==, 5);
  g_autoptr (OxRecord) without = ox_record_without_day (both, "2026-09-14");
  g_assert_cmpuint (without->n_days, ==, 1);
}

/* Notes of marks keep their lines as those of days do. */
static void
test_lines (void)
{
  OxDoneStrip strip = strip_at (1, "2026-09-14");
  strip.note = (char *) "damp\r\nat the gate";
  g_autoptr (OxRecord) record = ox_record_new (&(OxRecord){ .n_strips = 1, .strips = &strip });
  g_assert_cmpstr (record->strips[0].note, ==, "damp\nat the gate");
}

/* The place counts, either way round, and the coat; not the room nor the date. */
static void
test_marks (void)
{
  g_autoptr (OxRecord) record = make_record ();
  OxDoneStrip back = { .room = (char *) "R9", .a = { 9, 1 }, .b = { 1, 1 }, .width = 0.21, .date = (char *) "2026-09-17",
                       .csp = 3, .depth_mm = 0.42 };
  OxDoneStrip second = strip_at (1, "2026-09-18");
  second.coat = 2;
  g_autoptr (OxRecord) marked = ox_record_with_strips (record, (OxDoneStrip[]){ back, second }, 2);
  g_assert_cmpuint (marked->n_strips, ==, 4);
  g_assert_cmpstr (marked->strips[0].date, ==, "2026-09-17");
  g_assert_cmpfloat (marked->strips[0].depth_mm, ==, 0.42);
  g_assert_cmpuint (marked->strips[1].coat, ==, 1);
  g_assert_cmpuint (marked->strips[3].coat, ==, 2);
  second = strip_at (5, "2026-09-18");
  second.kept = 3;
  g_autoptr (OxRecord) later = ox_record_with_strips (marked, &second, 1);
  g_autoptr (OxRecord) parted = ox_record_without_strips (later, &back, 1);
  g_assert_cmpuint (later->strips[4].kept, ==, 3);
  second.kept = 1;
  g_autoptr (OxRecord) remarked = ox_record_with_strips (later, &second, 1);
  g_assert_cmpuint (remarked->n_strips, ==, later->n_strips);
  g_assert_cmpuint (remarked->strips[4].kept, ==, 3);
  g_assert_cmpuint (parted->strips[3].kept, ==, 2);
  g_autoptr (OxRecord) fewer = ox_record_without_strips (marked, &back, 1);
  g_assert_cmpuint (fewer->n_strips, ==, 3);
  g_assert_cmpfloat (fewer->strips[0].a.y, ==, 1.19);
  g_assert_cmpuint (fewer->n_days, ==, 2);
}

static OxRecord *
mark_edge (const OxRecord *record, const char *wkt)
{
  g_autoptr (OxRegion) region = ox_test_region (wkt);
  g_autoptr (GPtrArray) rings = ox_done_edge_rings (region);
  OxDoneEdge edge = { (char *) "R1", rings->len, (OxRing **) rings->pdata, (char *) "2026-09-15", NULL };
  return ox_record_with_edges (record, &edge, 1);
}

static double
edge_area (const OxRecord *record)
{
  double sum = 0;
  for (guint i = 0; i < record->n_edges; i++)
    {
      g_autoptr (OxRegion) region = ox_done_edge_region (&record->edges[i]);
      sum += ox_region_area (region);
    }
  return sum;
}

/* A frame of 10 m x 8 m about a hole of 9 m x 7 m is 17 m2; what is marked twice counts once. */
static void
test_edges (void)
{
  g_autoptr (OxRecord) none = ox_record_new (&(OxRecord){ .n_days = 0 });
  g_assert_true (ox_record_is_empty (none));
  g_autoptr (OxRecord) frame
      = mark_edge (none, "POLYGON ((0 0, 10 0, 10 8, 0 8, 0 0), (0.5 0.5, 9.5 0.5, 9.5 7.5, 0.5 7.5, 0.5 0.5))");
  g_assert_cmpuint (frame->edges[0].n_rings, ==, 2);
  ox_test_near (edge_area (frame), 17, 1e-9);
  /* 1 m x 1 m at the corner, of which the frame has 0.75 m2 */
  g_autoptr (OxRecord) more = mark_edge (frame, "POLYGON ((0 0, 1 0, 1 1, 0 1, 0 0))");
  ox_test_near (edge_area (more), 17.25, 0.002);
  g_autoptr (OxRegion) west = ox_test_region ("POLYGON ((-1 -1, 0.5 -1, 0.5 9, -1 9, -1 -1))");
  g_autoptr (OxRecord) less = ox_record_without_edge_floor (frame, west);
  ox_test_near (edge_area (less), 13, 0.02);
  g_autoptr (OxRegion) all = ox_test_region ("POLYGON ((-1 -1, 11 -1, 11 9, -1 9, -1 -1))");
  g_autoptr (OxRecord) gone = ox_record_without_edge_floor (less, all);
  g_assert_cmpuint (gone->n_edges, ==, 0);
}

/* Two squares that touch within the grid's width, and a sliver: the rings are simple whatever the grid does. */
static void
test_rings_on_the_grid (void)
{
  const OxPoint corners[] = { { 0, 0 }, { 2, 0 }, { 2, 1 }, { 1.00003, 1 }, { 1.00002, 0.00004 }, { 1.00001, 1 }, { 0, 1 } };
  g_autoptr (OxRegion) pinched = ox_region_new_points (corners, G_N_ELEMENTS (corners));
  g_autoptr (GPtrArray) rings = ox_done_edge_rings (pinched);
  double area = 0;
  for (guint i = 0; i < rings->len; i++)
    {
      g_assert_true (ox_ring_is_simple (rings->pdata[i], NULL));
      area += ox_ring_area (rings->pdata[i]);
    }
  ox_test_near (area, 2, 0.01);
}

/* An edit of something else shares it; the empty one of a new job does not stand in the way of anything. */
static void
test_shared (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_assert_true (ox_record_is_empty (job->record));
  g_autoptr (OxRecord) record = make_record ();
  g_autoptr (OxJob) begun = ox_job_with_record (job, record, &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) feet = ox_job_with_units (begun, OX_UNITS_FEET);
  g_assert_true (feet->record == record);
}

/* Either way round is one place; strips about one middle, as those of a round floor are, are told apart before they are compared. */
static void
test_hash (void)
{
  g_autoptr (GHashTable) hashes = g_hash_table_new (NULL, NULL);
  for (guint i = 0; i < 1000; i++)
    {
      OxPoint by = { ox_snap (8 * cos (i * G_PI / 1000)), ox_snap (8 * sin (i * G_PI / 1000)) };
      OxDoneStrip strip = { .a = by, .b = { -by.x, -by.y }, .coat = 1 };
      OxDoneStrip back = { .a = strip.b, .b = strip.a };
      g_assert_true (ox_done_strip_same_place (&strip, &back));
      g_assert_cmpuint (ox_done_strip_hash (&strip), ==, ox_done_strip_hash (&back));
      g_hash_table_add (hashes, GUINT_TO_POINTER (ox_done_strip_hash (&strip)));
    }
  g_assert_cmpuint (g_hash_table_size (hashes), >, 990);
  OxDoneStrip zero = { .a = { 0.0, 1 }, .b = { 2, 0.0 } }, minus = { .a = { -0.0, 1 }, .b = { 2, -0.0 } };
  g_assert_true (ox_done_strip_same_place (&zero, &minus));
  g_assert_cmpuint (ox_done_strip_hash (&zero), ==, ox_done_strip_hash (&minus));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/record/days-in-order", test_days_in_order);
  g_test_add_func ("/job/record/meter", test_meter);
  g_test_add_func ("/job/record/marks", test_marks);
  g_test_add_func ("/job/record/edges", test_edges);
  g_test_add_func ("/job/record/rings-on-the-grid", test_rings_on_the_grid);
  g_test_add_func ("/job/record/shared", test_shared);
  g_test_add_func ("/job/record/hash", test_hash);
  g_test_add_func ("/job/record/machines", test_machines);
  g_test_add_func ("/job/record/lines", test_lines);
  return g_test_run ();
}
