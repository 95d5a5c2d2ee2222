/* Oxturn: tests/job/test-check-record
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "job/check.h"
#include "job/edit.h"
#include "job-making.h"

static void
assert_refused (const OxRecord *draft, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxRecord) record = ox_record_new (draft);
  OxJob *made = ox_job_with_record (job, record, &error);
  g_assert_null (made);
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  if (!strstr (error->message, part))
    g_error ("“%s” does not say “%s”", error->message, part);
}

static void
test_days (void)
{
  const struct
  {
    OxRecordDay day;
    const char *part;
  } rows[] = {
    { { (char *) "2026-02-29", 1, 2, NULL, 1 }, "“2026-02-29” is no day of the record" },
    { { NULL, 1, 2, NULL, 1 }, "“” is no day of the record" },
    { { (char *) "2026-09-14", 7, 6.5, NULL, 1 }, "ends at 6.5 h, before its start at 7 h" },
    { { (char *) "2026-09-14", NAN, 2, NULL, 1 }, "meter reading of 2026-09-14" },
    { { (char *) "2026-09-14", 1, 2e6, NULL, 1 }, "meter reading of 2026-09-14" },
    { { (char *) "2026-09-14", 1, INFINITY, NULL, 1 }, "meter reading of 2026-09-14" },
    { { (char *) "2026-09-14", 1, 2, NULL, 21 }, "that of machine 21; 1 to 20" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_refused (&(OxRecord){ .n_days = 1, .days = (OxRecordDay *) &rows[i].day }, rows[i].part);
}

static void
test_strips (void)
{
  char *date = (char *) "2026-09-14";
  const struct
  {
    OxDoneStrip strip;
    const char *part;
  } rows[] = {
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = (char *) "today" }, "“today” is no day" },
    { { .a = { NAN, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date }, "coordinates from -10000" },
    { { .a = { 0, 0 }, .b = { 10001, 0 }, .width = 0.2, .date = date }, "coordinates from -10000" },
    { { .a = { 1, 1 }, .b = { 1, 1 }, .width = 0.2, .date = date }, "has no length" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0, .date = date }, "width of a strip done on 2026-09-14 is 0 m" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date, .coat = 5 }, "is of coat 5; 1 to 4" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date, .csp = 11 }, "has a profile of CSP 11" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date, .depth_mm = -1 }, "texture depth of a strip done on 2026-09-14 is -1 mm" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_refused (&(OxRecord){ .n_strips = 1, .strips = (OxDoneStrip *) &rows[i].strip }, rows[i].part);
}

static void
test_edges (void)
{
  static const struct
  {
    const char *wkt;
    const char *part;
  } rows[] = {
    { "POLYGON ((0 0, 4 0, 1 2, 3 2, 0 0))", "meets itself at 2.000, 1.333" },
    { "POLYGON ((0 0, 20000 0, 1 2, 0 0))", "corners beyond" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxRing) ring = ox_test_ring (rows[i].wkt);
      OxRing *rings[] = { ring };
      OxDoneEdge edge = { NULL, 1, rings, (char *) "2026-09-14", NULL };
      assert_refused (&(OxRecord){ .n_edges = 1, .edges = &edge }, rows[i].part);
    }
}

/* Too many are said to be too many, and nothing is looked at one by one: not a date among 20,001 is asked for. */
static void
test_counts (void)
{
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 0, 4 0, 4 2, 0 0))");
  OxRing *rings[] = { ring };
  g_autofree OxDoneEdge *edges = g_new (OxDoneEdge, OX_RECORD_EDGES_MOST + 1);
  for (guint i = 0; i <= OX_RECORD_EDGES_MOST; i++)
    edges[i] = (OxDoneEdge){ NULL, 1, rings, NULL, NULL };
  assert_refused (&(OxRecord){ .n_edges = OX_RECORD_EDGES_MOST + 1, .edges = edges },
                  "20001 edge areas with 60003 corners; 5000, 100000, 20000 and 1000000 are the most");
  g_autofree OxDoneStrip *strips = g_new (OxDoneStrip, OX_RECORD_STRIPS_MOST + 1);
  for (guint i = 0; i <= OX_RECORD_STRIPS_MOST; i++)
    strips[i] = (OxDoneStrip){ .a = { 0, i % 9000 }, .b = { 1 + i / 9000, i % 9000 }, .width = 0.2 };
  assert_refused (&(OxRecord){ .n_strips = OX_RECORD_STRIPS_MOST + 1, .strips = strips }, "100001 strips");
  /* 101 areas with the outline of one, of 10,000 corners */
  g_autofree OxPoint *points = g_new (OxPoint, 10000);
  for (guint i = 0; i < 5000; i++)
    {
      points[i] = (OxPoint){ i, i % 2 };
      points[9999 - i] = (OxPoint){ i, 10 };
    }
  g_autoptr (OxRing) long_ring = ox_ring_new (points, 10000);
  OxRing *long_rings[] = { long_ring };
  for (guint i = 0; i <= 100; i++)
    edges[i].rings = long_rings;
  assert_refused (&(OxRecord){ .n_edges = 101, .edges = edges }, "101 edge areas with 1010000 corners");
}

/* An edge area of two corners is told as that, not as one beyond the ends of the floor. */
static void
test_corners (void)
{
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 0, 4 0, 4 2, 0 0))");
  OxRing *rings[] = { ring };
  OxDoneEdge edge = { NULL, 1, rings, (char *) "2026-09-14", NULL };
  g_autoptr (OxRecord) record = ox_record_new (&(OxRecord){ .n_edges = 1, .edges = &edge });
  record->edges[0].rings[0]->n = 2;
  g_autoptr (GError) error = NULL;
  g_assert_null (ox_job_with_record (job, record, &error));
  g_assert_nonnull (strstr (error->message, "has 2 corners; 3 or more are needed"));
  record->edges[0].rings[0]->n = 3;
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check-record/days", test_days);
  g_test_add_func ("/job/check-record/strips", test_strips);
  g_test_add_func ("/job/check-record/edges", test_edges);
  g_test_add_func ("/job/check-record/counts", test_counts);
  g_test_add_func ("/job/check-record/corners", test_corners);
  return g_test_run ();
}
