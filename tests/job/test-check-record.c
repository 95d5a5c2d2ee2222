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
    { { (char *) "2026-02-29", 1, 2, NULL }, "“2026-02-29” is no day of the record" },
    { { NULL, 1, 2, NULL }, "“” is no day of the record" },
    { { (char *) "2026-09-14", 7, 6.5, NULL }, "ends at 6.5 h, before its start at 7 h" },
    { { (char *) "2026-09-14", NAN, 2, NULL }, "meter reading of 2026-09-14" },
    { { (char *) "2026-09-14", 1, 2e6, NULL }, "meter reading of 2026-09-14" },
    { { (char *) "2026-09-14", 1, INFINITY, NULL }, "meter reading of 2026-09-14" },
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
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0, .date = date }, "figure of a strip done" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date, .coat = 5 }, "figure of a strip done" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date, .csp = 11 }, "figure of a strip done" },
    { { .a = { 0, 0 }, .b = { 1, 0 }, .width = 0.2, .date = date, .depth_mm = -1 }, "figure of a strip done" },
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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check-record/days", test_days);
  g_test_add_func ("/job/check-record/strips", test_strips);
  g_test_add_func ("/job/check-record/edges", test_edges);
  return g_test_run ();
}
