/* Oxturn: plan/plan on many floors: every plan holds, and the same job gives the same plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * OXTURN_RANDOM_FLOORS says on how many made-up floors (500), OXTURN_RANDOM_FIRST from which on ("any": a new place every
 * time; else the same floors every time, so that a change is what makes a difference), OXTURN_FLOORS names a folder of
 * outlines in well-known text.
 */
#include "judge.h"
#include "job/check.h"
#include "plan/verify.h"
#include "support/floors.h"
#include "support/shrink.h"

#define SHRINK_TRIES 200 /* plans of ever smaller floors */

static OxPlan *
plan_of (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  OxPlan *plan = ox_plan_new (job, NULL, &error);
  g_assert_no_error (error);
  return plan;
}

/* Adds what is wrong with the plan to @faults; beyond the rules, nobody may claim to leave less than the reachable
 * limit leaves. */
static guint
judge (const OxPlan *plan, const char *name, GString *faults)
{
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  guint n = breaches->len;
  for (guint i = 0; i < MIN (n, 5); i++)
    {
      const OxBreach *b = g_ptr_array_index (breaches, i);
      g_string_append_printf (faults, "%s: rule %d strip %u at %.4f %.4f: %s\n", name, b->rule, b->strip, b->at.x,
                              b->at.y, b->text);
    }
  const OxTotals *t = &plan->totals;
  if (t->edge_m2 >= t->edge_limit_m2 - 1e-6 * MAX (t->target_m2, 1))
    return n;
  g_string_append_printf (faults, "%s: edge work %.6f m2 under its limit %.6f m2\n", name, t->edge_m2,
                          t->edge_limit_m2);
  return n + 1;
}

static void
expect_none (const GString *faults)
{
  if (faults->len == 0)
    return;
  g_auto (GStrv) lines = g_strsplit (faults->str, "\n", 40);
  for (guint i = 0; lines[i] != NULL && i < 39; i++)
    g_test_message ("%s", lines[i]);
  g_assert_cmpuint (faults->len, ==, 0);
}

/* A debug build warns of a plan that breaks a rule; here all such plans are gathered first. */
static gboolean
go_on (const gchar *domain, GLogLevelFlags level, const gchar *message, gpointer data)
{
  (void) domain;
  (void) message;
  (void) data;
  return (level & G_LOG_LEVEL_WARNING) == 0;
}

static guint
count_of_random_floors (void)
{
  const char *count = g_getenv ("OXTURN_RANDOM_FLOORS");
  return count != NULL ? (guint) g_ascii_strtoull (count, NULL, 10) : 500;
}

static guint32
first_random_floor (void)
{
  const char *first = g_getenv ("OXTURN_RANDOM_FIRST");
  guint32 number = first == NULL                ? 20000
                   : g_str_equal (first, "any") ? (guint32) g_test_rand_int () & 0xffffff
                                                : (guint32) g_ascii_strtoull (first, NULL, 10);
  g_test_message ("floors from %u on", number);
  return number;
}

static gboolean
is_at_fault (const OxJob *job, gpointer data)
{
  g_autoptr (GString) faults = g_string_new (NULL);
  g_autoptr (OxPlan) plan = plan_of (job);
  (void) data;
  return judge (plan, "", faults) > 0;
}

/* The smallest floor that was found to be at fault, too. */
static void
tell_small (const OxJob *job, GString *faults)
{
  g_autoptr (OxJob) small = ox_test_shrink (job, is_at_fault, NULL, SHRINK_TRIES);
  g_autofree char *outlines = ox_test_outlines (small);
  g_string_append_printf (faults, "small, %s:\n%s", small->machine->class_id, outlines);
}

static gboolean
has_column_in_long_room (const OxJob *job, gpointer data)
{
  OxBox box = ox_job_box (job);
  ++*(guint *) data;
  return ox_job_find_obstacle (job, "O2") != NULL && box.x1 - box.x0 > 5;
}

/* Of a hall with columns the one that matters stays, of the room three corners. */
static void
shrinks (void)
{
  guint asked = 0;
  g_autoptr (OxJob) job = ox_test_floor_columns (12.3456, 9, 0.4, 3, "compact");
  g_autoptr (OxJob) small = ox_test_shrink (job, has_column_in_long_room, &asked, 100);
  g_autofree char *outlines = ox_test_outlines (small);
  g_assert_cmpuint (small->n_obstacles, ==, 1);
  g_assert_cmpuint (small->rooms[0]->ring->n, ==, 3);
  g_assert_cmpuint (asked, <=, 100);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat (small->rooms[0]->ring->points[i].x, ==, round (small->rooms[0]->ring->points[i].x));
  g_assert_true (g_str_has_prefix (outlines, "R1 POLYGON (("));
  g_assert_nonnull (strstr (outlines, "\nO2 POLYGON (("));
}

static void
judge_floors (OxJob *(*make) (guint32 seed), guint n)
{
  g_autoptr (GString) faults = g_string_new (NULL);
  guint32 first = first_random_floor ();
  g_test_log_set_fatal_handler (go_on, NULL);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("floor %u (%s)", first + i, ox_test_floor_kind (first + i));
      g_autoptr (OxJob) job = make (first + i);
      g_autoptr (GPtrArray) findings = ox_job_check (job);
      if (findings->len > 0 && ((const OxFinding *) g_ptr_array_index (findings, 0))->kind == OX_FINDING_ERROR)
        {
          g_string_append_printf (faults, "%s: %s\n", name,
                                  ((const OxFinding *) g_ptr_array_index (findings, 0))->text);
          continue;
        }
      g_autoptr (OxPlan) plan = plan_of (job);
      if (judge (plan, name, faults) > 0)
        tell_small (job, faults);
    }
  expect_none (faults);
}

static void
random_floors (void)
{
  judge_floors (ox_test_floor_random, count_of_random_floors ());
}

/* With several coats and condition areas: they take two to three times as long, so there are fewer. */
static void
floors_in_coats (void)
{
  judge_floors (ox_test_floor_coats, (count_of_random_floors () + 4) / 5);
}

static void
outlines (void)
{
  static const char *const classes[] = { "compact", "medium" };
  g_autoptr (GString) faults = g_string_new (NULL);
  g_autoptr (GPtrArray) paths = ox_test_floor_paths ("OXTURN_FLOORS");
  g_test_log_set_fatal_handler (go_on, NULL);
  for (guint i = 0; i < paths->len; i++)
    for (guint c = 0; c < G_N_ELEMENTS (classes); c++)
      {
        const char *path = g_ptr_array_index (paths, i);
        g_autofree char *base = g_path_get_basename (path);
        g_autofree char *name = g_strdup_printf ("%s, %s", base, classes[c]);
        g_autoptr (OxJob) job = ox_test_floor_wkt (path, classes[c]);
        g_autoptr (OxPlan) plan = plan_of (job);
        judge (plan, name, faults);
      }
  expect_none (faults);
}

static gpointer
plan_in_thread (gpointer job)
{
  g_autoptr (OxPlan) plan = plan_of (job);
  return judge_plan_text (plan);
}

/* Once more in this thread, and three times at once in others. */
static void
same_plan (void)
{
  guint32 first = first_random_floor ();
  for (guint i = 0; i < 14; i++)
    {
      g_autoptr (OxJob) job = i % 2 == 0 ? ox_test_floor_random (first + i) : ox_test_floor_coats (first + i);
      g_autofree char *text = plan_in_thread (job);
      g_autofree char *again = plan_in_thread (job);
      GThread *threads[3];
      g_assert_cmpstr (text, ==, again);
      for (guint k = 0; k < G_N_ELEMENTS (threads); k++)
        threads[k] = g_thread_new ("plan", plan_in_thread, job);
      for (guint k = 0; k < G_N_ELEMENTS (threads); k++)
        {
          g_autofree char *other = g_thread_join (threads[k]);
          g_assert_cmpstr (text, ==, other);
        }
    }
}

static OxJob *
rooms_backwards (const OxJob *job)
{
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = job->n_rooms; i-- > 0;)
    {
      ox_job_builder_remove (builder, job->rooms[i]->id);
      ox_job_builder_put_room (builder, job->rooms[i]);
    }
  return ox_job_builder_end (builder);
}

/* What is laid in a room does not depend on the place of the room in the list. */
static void
rooms_in_another_order (void)
{
  guint rooms = 0;
  for (guint32 seed = 0; rooms < 12; seed++)
    {
      if (!g_str_equal (ox_test_floor_kind (seed), "rooms"))
        continue;
      rooms++;
      g_autoptr (OxJob) job = ox_test_floor_random (seed);
      g_autoptr (OxJob) backwards = rooms_backwards (job);
      g_autoptr (OxPlan) a = plan_of (job);
      g_autoptr (OxPlan) b = plan_of (backwards);
      g_assert_cmpstr (backwards->rooms[0]->id, ==, job->rooms[job->n_rooms - 1]->id);
      g_assert_cmpuint (a->totals.strips, ==, b->totals.strips);
      g_assert_cmpfloat_with_epsilon (a->totals.strip_m, b->totals.strip_m, 1e-6);
      g_assert_cmpfloat_with_epsilon (a->totals.target_m2, b->totals.target_m2, 1e-6);
      g_assert_cmpfloat_with_epsilon (a->totals.blasted_m2, b->totals.blasted_m2, 1e-6);
      g_assert_cmpfloat_with_epsilon (a->totals.edge_m2, b->totals.edge_m2, 1e-6);
      g_assert_cmpfloat_with_epsilon (a->totals.edge_limit_m2, b->totals.edge_limit_m2, 1e-6);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/invariants/random-floors", random_floors);
  g_test_add_func ("/plan/invariants/floors-in-coats", floors_in_coats);
  g_test_add_func ("/plan/invariants/shrinks", shrinks);
  g_test_add_func ("/plan/invariants/outlines", outlines);
  g_test_add_func ("/plan/invariants/same-plan", same_plan);
  g_test_add_func ("/plan/invariants/rooms-in-another-order", rooms_in_another_order);
  return g_test_run ();
}
