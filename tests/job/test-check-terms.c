/* Oxturn: tests/job/test-check-terms
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "job/check.h"
#include "job/edit.h"
#include "job-making.h"

/* Takes @made, which is to have been refused with @part. */
static void
assert_refused (OxJob *made, GError **error, const char *part)
{
  g_assert_null (made);
  g_assert_error (*error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  if (!strstr ((*error)->message, part))
    g_error ("“%s” does not say “%s”", (*error)->message, part);
  g_clear_error (error);
}

static void
test_calendar (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxCalendar) usual = ox_calendar_default ();
  const struct
  {
    OxCalendar draft;
    const char *part;
  } rows[] = {
    { { (char *) "2026-13-01", 0, 8, 0, 0, 0, 0, 0, 0, 1, 1, 0, 0, 0 }, "is no day" },
    { { NULL, 1440, 8, 0, 0, 0, 0, 0, 0, 1, 1, 0, 0, 0 }, "A time of the calendar" },
    { { NULL, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 0, 0, 0 }, "A time of the calendar" },
    { { NULL, 0, 8, NAN, 0, 0, 0, 0, 0, 1, 1, 0, 0, 0 }, "A time of the calendar" },
    { { NULL, 0, 4.15, 83, 83, 83, 0, 0, 0, 1, 1, 0, 0, 0 }, "leaves 0 min to work; 10 min at least" },
    { { NULL, 0, 8, 240, 200, 30.001, 0, 0, 0, 1, 1, 0, 0, 0 }, "leaves 9 min to work; 10 min at least" },
    { { NULL, 0, 1, 45, 60, 30, 0, 0, 0, 1, 1, 0, 0, 0 }, "leaves -75 min to work" },
    { { NULL, 0, 8, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0 }, "0 machines" },
    { { NULL, 0, 8, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0 }, "working day" },
    { { NULL, 0, 8, 0, 0, 0, 0, 0, 0, 1, 1, 201, 0, 0 }, "A measured exposure" },
    { { NULL, 0, 8, 0, 0, 0, 0, 0, 0, 1, 1, 0, -1, 0 }, "A measured exposure" },
    { { NULL, 0, 8, 0, 0, 0, 0, 0, 0, 1, 1, 0, 0, NAN }, "A measured exposure" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxCalendar) calendar = ox_calendar_new (&rows[i].draft);
      assert_refused (ox_job_with_calendar (job, calendar, &error), &error, rows[i].part);
    }
  g_autoptr (OxJob) fine = ox_job_with_calendar (job, usual, &error);
  g_assert_no_error (error);
  g_autoptr (OxCalendar) short_one
      = ox_calendar_new (&(OxCalendar){ NULL, 0, 8, 240, 200, 30, 0, 0, 0, 1, 1, 0, 0, 0 });
  g_autoptr (OxJob) just = ox_job_with_calendar (job, short_one, &error);
  g_assert_no_error (error);
}

static void
test_costs (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  OxCostRate rate = { OX_COST_FIXED, NULL, (char *) "a lot" };
  g_autoptr (OxCosts) words = ox_costs_new (&(OxCosts){ .n = 1, .rates = &rate });
  g_autoptr (OxCosts) double_price = ox_costs_new (&(OxCosts){ .contingency = 1.5 });
  g_autoptr (OxCosts) fine_money = ox_costs_new (&(OxCosts){ .decimals = 5 });
  assert_refused (ox_job_with_costs (job, words, &error), &error, "“a lot” is no amount");
  assert_refused (ox_job_with_costs (job, double_price, &error), &error, "contingency");
  assert_refused (ox_job_with_costs (job, fine_money, &error), &error, "5 decimals");
}

static void
test_patches (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  OxPatch twice[] = { { .id = (char *) "P1", .speed_m_per_min = 1 }, { .id = (char *) "P1", .speed_m_per_min = 2 } };
  OxPatch still = { .id = (char *) "P1" };
  g_autoptr (OxPatches) two = ox_patches_new (&(OxPatches){ 2, twice });
  g_autoptr (OxPatches) one = ox_patches_new (&(OxPatches){ 1, &still });
  assert_refused (ox_job_with_patches (job, two, &error), &error, "Two test patches have the id P1");
  assert_refused (ox_job_with_patches (job, one, &error), &error, "test patch P1 is out of range");
}

/* Readings of both sides or of none, the cage on a clock. */
static void
test_trial (void)
{
  static const struct
  {
    double left, middle, right;
    guint cage, cage_to;
    const char *part; /* NULL: allowed */
  } rows[] = {
    { 0.4, 0, 0.6, 0, 0, NULL },          { 0.4, 0.5, 0.6, 60, 779, NULL },    { 0, 0, 0, 0, 0, NULL },
    { 0.4, 0, 0, 0, 0, "one side alone" }, { 0, 0, 0.6, 0, 0, "one side alone" }, { 0, 0.5, 0, 0, 0, "one side alone" },
    { 0.4, 0, 101, 0, 0, "out of range" }, { -1, 0, 0.6, 0, 0, "out of range" }, { NAN, 0, 0.6, 0, 0, "out of range" },
    { 0.4, 0, 0.6, 59, 0, "1:00 to 12:59" }, { 0.4, 0, 0.6, 60, 780, "1:00 to 12:59" },
  };
  g_autoptr (OxJob) job = make_job ();
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      OxPatch patch = { .id = (char *) "P1", .speed_m_per_min = 6, .left_mm = rows[i].left, .middle_mm = rows[i].middle,
                        .right_mm = rows[i].right, .cage_min = rows[i].cage, .cage_to_min = rows[i].cage_to };
      g_autoptr (OxPatches) patches = ox_patches_new (&(OxPatches){ 1, &patch });
      if (rows[i].part)
        assert_refused (ox_job_with_patches (job, patches, &error), &error, rows[i].part);
      else
        {
          g_autoptr (OxJob) tried = ox_job_with_patches (job, patches, &error);
          g_assert_no_error (error);
        }
    }
}

static void
test_conditions (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((90 90, 92 90, 92 92, 90 90))");
  OxCondition draft = { .id = (char *) "C1", .ring = ring, .coats = 5 };
  g_autoptr (OxCondition) many = ox_condition_new (&draft);
  assert_refused (ox_job_with_condition (job, many, &error), &error, "5 coats; 0 to 4");
  draft.coats = 0;
  draft.speed_m_per_min = -1;
  g_autoptr (OxCondition) back = ox_condition_new (&draft);
  assert_refused (ox_job_with_condition (job, back, &error), &error, "walking speed in C1");
  draft.speed_m_per_min = 0;
  g_autoptr (OxCondition) far = ox_condition_new (&draft);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_condition (builder, far);
  g_autoptr (OxJob) outside = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (outside);
  g_assert_cmpuint (findings->len, ==, 1);
  const OxFinding *finding = findings->pdata[0];
  g_assert_cmpint (finding->kind, ==, OX_FINDING_NOTICE);
  g_assert_nonnull (strstr (finding->text, "C1 lies outside every room"));
  g_autoptr (OxJob) moved = ox_job_moved (outside, (const char *const[]){ "C1", NULL }, (OxPoint){ -88, -88 }, &error);
  g_assert_cmpfloat (moved->conditions[0]->ring->points[0].x, ==, 2);
  g_autoptr (OxJob) bent = ox_job_with_corner (moved, "C1", 0, (OxPoint){ 1, 1 }, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (bent->conditions[0]->ring->points[0].y, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check-terms/calendar", test_calendar);
  g_test_add_func ("/job/check-terms/costs", test_costs);
  g_test_add_func ("/job/check-terms/patches", test_patches);
  g_test_add_func ("/job/check-terms/trial", test_trial);
  g_test_add_func ("/job/check-terms/conditions", test_conditions);
  return g_test_run ();
}
