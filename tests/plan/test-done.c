/* Oxturn: tests/plan/test-done
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/done.h"
#include "job/edit.h"
#include "plan/verify.h"
#include "support/floors.h"
#include "support/ox-test.h"

#define FLOORS 14

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

static OxJob *
with_edge (const OxJob *job, const OxRegion *region)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rings = ox_done_edge_rings (region);
  OxDoneEdge edge = { (char *) "R1", rings->len, (OxRing **) rings->pdata, (char *) "2026-09-14", NULL };
  g_autoptr (OxRecord) record = ox_record_with_edges (job->record, &edge, 1);
  OxJob *marked = ox_job_with_record (job, record, &error);
  g_assert_no_error (error);
  return marked;
}

/* What of the edge work lies in @wkt; (transfer full) */
static OxRegion *
edge_work_in (const OxPlan *plan, const char *wkt)
{
  g_autoptr (OxRegion) box = ox_test_region (wkt);
  g_autoptr (OxRegion) left = ox_region_difference (plan->target, plan->blasted);
  return ox_region_intersection (left, box);
}

/* A mark over the edge work of the left half of the floor splits the areas that reach across: together they are what they were. */
static void
test_edge_marked_in_part (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (10, 8, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxRegion) half = edge_work_in (plan, "POLYGON ((-1 -1, 5 -1, 5 9, -1 9, -1 -1))");
  g_autoptr (OxJob) marked = with_edge (job, half);
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
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  ox_done_strips (plan, floor);
  g_assert_cmpuint (plan->strips[0].done, ==, 1);
  for (guint i = 1; i < plan->n_strips; i++)
    g_assert_cmpuint (plan->strips[i].done, ==, 0);
}

/* Marks strips @from to @to of @plan as record/mark.h does. */
static OxJob *
with_strips (const OxJob *job, const OxPlan *plan, guint from, guint to)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (OxDoneStrip));
  for (guint i = from; i <= to; i++)
    {
      const OxStrip *strip = &plan->strips[i - 1];
      OxDoneStrip done = { .a = strip->a, .b = strip->b, .width = strip->width, .coat = strip->coat, .kept = plan->kept_marks,
                           .crosswise = strip->kind == OX_STRIP_CROSSWISE, .date = (char *) "2026-09-14" };
      g_array_append_val (strips, done);
    }
  g_autoptr (OxRecord) record = ox_record_with_strips (job->record, (const OxDoneStrip *) (gconstpointer) strips->data, strips->len);
  OxJob *marked = ox_job_with_record (job, record, &error);
  g_assert_no_error (error);
  return marked;
}

static OxJob *
with_overlap (const OxJob *job, double overlap)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxMachine) machine = ox_machine_copy (job->machine);
  machine->min_overlap = overlap;
  OxJob *changed = ox_job_with_machine (job, machine, &error);
  g_assert_no_error (error);
  return changed;
}

/* The record's strips stand first and as they were, and the rest breaks no rule. */
static void
assert_kept (const OxPlan *plan, const char *what)
{
  const OxRecord *record = plan->job->record;
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  for (guint i = 0; i < breaches->len; i++)
    {
      const OxBreach *breach = g_ptr_array_index (breaches, i);
      g_error ("%s: rule %d at %.4f %.4f (strip %u of which %u are kept): %s", what, (int) breach->rule, breach->at.x, breach->at.y, breach->strip,
               plan->n_kept, breach->text);
    }
  g_assert_cmpuint (plan->n_kept, ==, record->n_strips);
  for (guint i = 0; i < plan->n_kept; i++)
    {
      const OxStrip *strip = &plan->strips[i];
      g_assert_cmpuint (strip->done, ==, i + 1);
      g_assert_true (strip->a.x == record->strips[i].a.x && strip->b.y == record->strips[i].b.y);
      g_assert_cmpuint (strip->lane, >, 0);
    }
  for (guint i = plan->n_kept; i < plan->n_strips; i++)
    g_assert_cmpuint (plan->strips[i].done, ==, 0);
}

/* m2 that strips laid anew blast of what was done: the rim alone */
static double
blasted_again (const OxPlan *plan)
{
  double sum = 0;
  for (guint i = plan->n_kept; i < plan->n_strips; i++)
    for (guint k = 0; k < plan->n_kept; k++)
      {
        OxPoint p[4], q[4];
        ox_strip_corners (&plan->strips[i], plan->job->machine->blast_length, p);
        ox_strip_corners (&plan->strips[k], plan->job->machine->blast_length, q);
        g_autoptr (OxRegion) a = ox_region_new_points (p, 4);
        g_autoptr (OxRegion) b = ox_region_new_points (q, 4);
        g_autoptr (OxRegion) both = ox_region_intersection (a, b);
        sum += ox_region_area (both);
      }
  return sum;
}

/* Ten strips of 0.21 m done; then more overlap is asked for: those stay, and the next one overlaps the last of them by as much as is asked now. */
static void
test_other_overlap (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (12, 9, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxJob) begun = with_strips (job, plan, 1, 10);
  g_autoptr (OxJob) other = with_overlap (begun, 0.05);
  g_autoptr (OxPlan) later = plan_of (other);
  assert_kept (later, "overlap");
  g_assert_cmpuint (later->n_kept, ==, 10);
  ox_test_near (later->totals.blasted_m2 + later->totals.edge_m2, 108, 0.01);
  g_assert_cmpfloat (later->totals.edge_m2, <, plan->totals.edge_m2 + 1);
  g_assert_cmpfloat (blasted_again (later), <, 1.5);
  g_assert_cmpfloat (blasted_again (later), >, 0.3);
}

/* Work goes on in the new plan: marking its strips changes nothing but the marks. */
static void
test_goes_on (void)
{
  g_autoptr (OxJob) job = ox_test_floor_columns (12, 9, 0.4, 4, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxJob) begun = with_strips (job, plan, 1, 8);
  g_autoptr (OxJob) other = with_overlap (begun, 0.035);
  g_autoptr (OxPlan) around = plan_of (other);
  assert_kept (around, "columns");
  g_assert_cmpuint (around->kept_marks, ==, 8);
  g_autoptr (OxJob) further = with_strips (other, around, 9, 14);
  g_autoptr (OxPlan) later = plan_of (further);
  g_assert_cmpuint (later->n_kept, ==, 8);
  g_assert_cmpuint (later->n_strips, ==, around->n_strips);
  for (guint i = 0; i < later->n_strips; i++)
    {
      g_assert_true (later->strips[i].a.x == around->strips[i].a.x && later->strips[i].a.y == around->strips[i].a.y);
      g_assert_true (later->strips[i].b.x == around->strips[i].b.x && later->strips[i].b.y == around->strips[i].b.y);
      g_assert_cmpint (later->strips[i].done > 0, ==, i < 14);
    }
}

/* Floors of every kind, a third of their strips done, and then another overlap: no rule is broken by what is laid anew. */
static void
test_any_floor (void)
{
  for (guint32 seed = 0; seed < FLOORS; seed++)
    {
      g_autoptr (OxJob) job = ox_test_floor_random (seed);
      g_autoptr (OxPlan) plan = plan_of (job);
      if (plan->n_strips < 3 || plan->n_strips > 400)
        continue;
      g_autoptr (OxJob) begun = with_strips (job, plan, 1, plan->n_strips / 3);
      g_autoptr (OxJob) other = with_overlap (begun, 1.5 * job->machine->min_overlap);
      g_autoptr (OxPlan) later = plan_of (other);
      g_autofree char *what = g_strdup_printf ("floor %u (%s)", seed, ox_test_floor_kind (seed));
      g_test_message ("%s: %u of %u strips kept, edge work %.2f of %.2f m2, before %.2f", what, later->n_kept, later->n_strips,
                      later->totals.edge_m2, later->totals.target_m2, plan->totals.edge_m2);
      assert_kept (later, what);
    }
}

/* A room that is gone takes its strips out of the plan, not out of the record. */
static void
test_floor_is_gone (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (8, 6, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxJob) begun = with_strips (job, plan, 1, 4);
  g_autoptr (OxJob) moved = ox_job_moved (begun, (const char *const[]){ "R1", NULL }, (OxPoint){ 100, 0 }, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) later = plan_of (moved);
  g_assert_cmpuint (later->n_kept, ==, 0);
  g_assert_cmpuint (later->n_strips, ==, plan->n_strips);
  g_assert_cmpuint (moved->record->n_strips, ==, 4);
}

/* Edge work done by hand is not blasted afterwards: here a stripe across the middle of a hall. */
static void
test_done_by_hand (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (12, 9, "compact");
  g_autoptr (OxRegion) stripe = ox_test_region ("POLYGON ((1 4, 11 4, 11 5, 1 5, 1 4))");
  g_autoptr (OxJob) marked = with_edge (job, stripe);
  g_autoptr (OxPlan) later = plan_of (marked);
  double done = 0;
  for (guint i = 0; i < later->n_edges; i++)
    done += later->edges[i].done > 0 ? later->edges[i].area : 0;
  ox_test_near (done, 10, 0.06);
  assert_kept (later, "by hand");
}

/* Two rooms, of which the second asks for two coats. A second coat marked in the first one is nothing that its floor asks for: it keeps none of the plan. */
static void
test_coat_of_the_room (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) one = ox_test_floor_rectangle (8, 6, "compact");
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 20, 3 }, 8, 6, 0);
  g_autoptr (OxRoom) second = ox_room_new (&(OxRoom){ .id = (char *) "R2", .name = (char *) "Store", .ring = ring, .coats = 2, .coat_turn_deg = 90 });
  g_autoptr (OxJob) job = ox_job_with_room (one, second, &error);
  g_assert_no_error (error);
  OxDoneStrip strip = { .a = { 2, 3.1 }, .b = { 6, 3.1 }, .width = 0.21, .coat = 2, .date = (char *) "2026-09-14" };
  g_autoptr (OxRecord) record = ox_record_with_strips (job->record, &strip, 1);
  g_autoptr (OxJob) marked = ox_job_with_record (job, record, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxPlan) later = plan_of (marked);
  g_assert_cmpuint (later->n_kept, ==, 0);
  g_assert_cmpuint (later->n_strips, ==, plan->n_strips);
}

/* Ten strips done, then the room gets shorter: they reach beyond the target. Covered twice is what they and the rest have in common within it:
 * areas of all strips within the target, one by one, less the floor under them. */
static void
test_kept_beyond_the_target (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = ox_test_floor_rectangle (12, 9, "compact");
  g_autoptr (OxPlan) plan = plan_of (job);
  g_autoptr (OxJob) begun = with_strips (job, plan, 1, 10);
  g_autoptr (OxJob) shorter = ox_test_floor_rectangle (10, 9, "compact");
  g_autoptr (OxJob) changed = ox_job_with_record (shorter, begun->record, &error);
  g_assert_no_error (error);
  g_autoptr (OxPlan) later = plan_of (changed);
  g_assert_cmpuint (later->n_kept, ==, 10);
  double sum = 0;
  for (guint i = 0; i < later->n_strips; i++)
    {
      OxPoint corners[4];
      ox_strip_corners (&later->strips[i], later->job->machine->blast_length, corners);
      g_autoptr (OxRegion) whole = ox_region_new_points (corners, 4);
      g_autoptr (OxRegion) within = ox_region_intersection (whole, later->target);
      sum += ox_region_area (within);
    }
  ox_test_near (later->totals.double_m2, sum - ox_region_area (later->blasted), 0.01);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/done/edge-marked-in-part", test_edge_marked_in_part);
  g_test_add_func ("/plan/done/strips-by-place", test_strips_by_place);
  g_test_add_func ("/plan/done/other-overlap", test_other_overlap);
  g_test_add_func ("/plan/done/goes-on", test_goes_on);
  g_test_add_func ("/plan/done/floor-is-gone", test_floor_is_gone);
  g_test_add_func ("/plan/done/done-by-hand", test_done_by_hand);
  g_test_add_func ("/plan/done/coat-of-the-room", test_coat_of_the_room);
  g_test_add_func ("/plan/done/kept-beyond-the-target", test_kept_beyond_the_target);
  g_test_add_func ("/plan/done/any-floor", test_any_floor);
  return g_test_run ();
}
