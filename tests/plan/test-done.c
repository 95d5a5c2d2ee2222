/* Oxturn: tests/plan/test-done
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/done.h"
#include "job/edit.h"
#include "support/floors.h"
#include "support/ox-test.h"

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

static OxJob *
with_edge (const OxJob *job, const char *wkt)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxRegion) region = ox_test_region (wkt);
  g_autoptr (GPtrArray) rings = ox_done_edge_rings (region);
  OxDoneEdge edge = { (char *) "R1", rings->len, (OxRing **) rings->pdata, (char *) "2026-09-14", NULL };
  g_autoptr (OxRecord) record = ox_record_with_edges (job->record, &edge, 1);
  OxJob *marked = ox_job_with_record (job, record, &error);
  g_assert_no_error (error);
  return marked;
}

/* A mark over the left half of the floor splits the areas that reach across: together they are what they were. */
static void
test_edge_marked_in_part (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxJob) marked = with_edge (job, "POLYGON ((-1 -1, 5 -1, 5 9, -1 9, -1 -1))");
  g_autoptr (OxPlan) later = plan_of (marked);
  g_assert_cmpuint (later->n_edges, >, plan->n_edges);
  double done = 0, all = 0;
  for (guint i = 0; i < later->n_edges; i++)
    {
      OxBox box = ox_region_box (later->edges[i].region);
      g_autofree char *id = g_strdup_printf ("E%u", i + 1);
      g_assert_cmpstr (later->edges[i].id, ==, id);
      all += later->edges[i].area;
      if (later->edges[i].done == 0)
        g_assert_cmpfloat (box.x1, >, 5);
      else
        {
          done += later->edges[i].area;
          g_assert_cmpfloat (box.x1, <, 5.01);
        }
    }
  ox_test_near (all, plan->totals.edge_m2, 1e-6);
  g_assert_cmpfloat (done, >, 0.3 * all);
}

/* A mark elsewhere, or of another coat, is none of a strip's. */
static void
test_strips_by_place (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  const OxStrip *first = &plan->strips[0];
  char *date = (char *) "2026-09-14";
  OxDoneStrip strips[] = {
    { .a = first->b, .b = first->a, .width = 0.21, .date = date },
    { .a = plan->strips[1].a, .b = plan->strips[1].b, .width = 0.21, .coat = 2, .date = date },
  };
  g_autoptr (OxRecord) record = ox_record_with_strips (job->record, strips, G_N_ELEMENTS (strips));
  ox_job_unref (plan->job);
  plan->job = ox_job_with_record (job, record, &error);
  g_assert_no_error (error);
  ox_done_strips (plan);
  g_assert_cmpuint (plan->strips[0].done, ==, 1);
  for (guint i = 1; i < plan->n_strips; i++)
    g_assert_cmpuint (plan->strips[i].done, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/done/edge-marked-in-part", test_edge_marked_in_part);
  g_test_add_func ("/plan/done/strips-by-place", test_strips_by_place);
  return g_test_run ();
}
