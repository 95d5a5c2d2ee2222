/* Oxturn: tests/bench/bench-plan - how good and how fast plans are, floor by floor; figures to read, nothing that
 * fails. SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Floors: jobs named on the command line, halls and rooms made here, outlines of the folders that OXTURN_FLOORS and
 * OXTURN_BENCH_FLOORS name; jobs with their own machine, all others with the compact and the medium one.
 */
#include "bound.h"
#include "file/job-xml.h"
#include "plan/plan.h"
#include "support/floors.h"
#include <sys/resource.h>

/* The last columns: hours of moves, and about what they were before the search for an order of fields; metres of hose and cord, strip by strip, on floor
 * still to be blasted, and what they were before fields were worked outward from stations; strips in which one wraps round a solid; share of what can be
 * reached that is blasted. */
static void
print_head (void)
{
  g_print ("%-28s %-8s %9s %6s %8s %5s %5s %5s %8s %8s %6s %8s %8s %8s %6s %6s %7s %6s %8s %8s %8s %8s %5s %5s\n", "floor", "machine", "target m2",
           "strips", "strip m", "swing", "pull", "walk", "edge m2", "limit m2", "double", "labour h", "ideal h", "bound h",
           "/ideal", "/bound", "ms", "peak MB", "moves h", "before", "hose m", "before", "wraps", "R* %");
}

/* Peak memory of the process so far: it only grows, so floors stand in order of size within each group. */
static double
peak_mb (void)
{
  struct rusage usage;
  getrusage (RUSAGE_SELF, &usage);
  return (double) usage.ru_maxrss / 1024;
}

/* Returns: strips of the plan */
static guint
run (const OxJob *job, const char *name)
{
  g_autoptr (GError) error = NULL;
  gint64 before = g_get_monotonic_time ();
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
  double ms = (double) (g_get_monotonic_time () - before) / 1000;
  if (plan == NULL)
    {
      g_print ("%-28s %s\n", name, error->message);
      return 0;
    }
  guint kinds[3] = { 0, 0, 0 };
  for (guint i = 0; i < plan->n_moves; i++)
    kinds[plan->moves[i].kind]++;
  const OxTotals *t = &plan->totals;
  double bound = bound_hours (plan);
  g_print ("%-28s %-8s %9.1f %6u %8.1f %5u %5u %5u %8.2f %8.2f %5.1f%% %8.3f %8.3f %8.3f %6.3f %6.3f %7.0f %6.0f %8.4f %8.4f %8.0f %8.0f %5u %5.2f\n", name,
           job->machine->class_id, t->target_m2, t->strips, t->strip_m, kinds[OX_MOVE_SWING], kinds[OX_MOVE_PULL_BACK],
           kinds[OX_MOVE_WALK], t->edge_m2, t->edge_limit_m2,
           t->blasted_m2 > 0 ? 100 * t->double_m2 / t->blasted_m2 : 0, t->labour_hours, t->ideal_hours, bound,
           t->ideal_hours > 0 ? t->labour_hours / t->ideal_hours : 0, bound > 0 ? t->labour_hours / bound : 0, ms, peak_mb (),
           t->move_hours, t->move_hours + t->saved_hours, t->unblasted_hose_m, t->unblasted_before_m, t->wraps,
           t->target_m2 > t->edge_limit_m2 ? 100 * t->blasted_m2 / (t->target_m2 - t->edge_limit_m2) : 0);
  return t->strips;
}

static void
run_job_file (const char *path)
{
  g_autoptr (OxJob) job = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_path_get_basename (path);
  if (ox_job_file_read (path, &job, &error))
    run (job, name);
  else
    g_print ("%s\n", error->message);
}

static void
run_made (const char *machine)
{
  static const double halls[][2]
      = { { 3, 4 }, { 4, 6 }, { 6, 8.3 }, { 1.4, 18 }, { 2.2, 24 }, { 20, 25 }, { 40, 25 }, { 60, 100 } };
  static const double columns[][2] = { { 20, 25 }, { 40, 25 }, { 60, 48 } };
  static const OxPoint ell[] = { { 0, 0 }, { 22, 0 }, { 22, 9 }, { 10, 9 }, { 10, 18 }, { 0, 18 } };
  static const OxPoint tee[] = { { 0, 0 }, { 9, 0 }, { 9, -8 }, { 16, -8 }, { 16, 0 }, { 25, 0 }, { 25, 9 }, { 0, 9 } };
  static const OxPoint slanted[] = { { 0, 0 }, { 24, 0 }, { 20, 14 }, { 3, 12 } };
  char name[64];
  for (guint i = 0; i < G_N_ELEMENTS (halls); i++)
    {
      g_autoptr (OxJob) job = ox_test_floor_rectangle (halls[i][0], halls[i][1], machine);
      g_snprintf (name, sizeof name, "rectangle %g x %g", halls[i][0], halls[i][1]);
      run (job, name);
    }
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      g_autoptr (OxJob) job = ox_test_floor_columns (columns[i][0], columns[i][1], 0.5, 8, machine);
      g_snprintf (name, sizeof name, "columns %g x %g", columns[i][0], columns[i][1]);
      run (job, name);
    }
  g_autoptr (OxJob) l = ox_test_floor_polygon (ell, G_N_ELEMENTS (ell), machine);
  run (l, "L 288 m2");
  g_autoptr (OxJob) t = ox_test_floor_polygon (tee, G_N_ELEMENTS (tee), machine);
  run (t, "T 281 m2");
  g_autoptr (OxJob) s = ox_test_floor_polygon (slanted, G_N_ELEMENTS (slanted), machine);
  run (s, "slanted 265 m2");
}

/* Processor time of the program so far, in seconds: what others do on the machine matters less than by the clock. */
static double
processor_seconds (void)
{
  struct rusage usage;
  getrusage (RUSAGE_SELF, &usage);
  return (double) (usage.ru_utime.tv_sec + usage.ru_stime.tv_sec)
         + (double) (usage.ru_utime.tv_usec + usage.ru_stime.tv_usec) / 1e6;
}

/* Halls of 6,250, 25,000 and 100,000 m2 with about as many columns an area: how much faster than the strips the time grows. */
static void
run_scale (void)
{
  static const double halls[][2] = { { 100, 62.5 }, { 200, 125 }, { 400, 250 } };
  double before = 0;
  guint strips_before = 0;
  char name[64];
  for (guint i = 0; i < G_N_ELEMENTS (halls); i++)
    {
      g_autoptr (OxJob) job = ox_test_floor_columns (halls[i][0], halls[i][1], 0.5, 14.14, "compact");
      double start = processor_seconds ();
      g_snprintf (name, sizeof name, "%g x %g, %u columns", halls[i][0], halls[i][1], job->n_obstacles);
      guint strips = run (job, name);
      double seconds = processor_seconds () - start;
      if (i > 0)
        g_print ("  %.2f times the strips, %.2f times the processor time: %.2f times faster growth (wanted: at most 1.3)\n",
                 (double) strips / strips_before, seconds / before, seconds / before * strips_before / strips);
      before = seconds;
      strips_before = strips;
    }
}

static void
run_folder (const char *variable, const char *machine)
{
  g_autoptr (GPtrArray) paths = ox_test_floor_paths (variable);
  for (guint i = 0; i < paths->len; i++)
    {
      g_autofree char *name = g_path_get_basename (g_ptr_array_index (paths, i));
      g_autoptr (OxJob) job = ox_test_floor_wkt (g_ptr_array_index (paths, i), machine);
      run (job, name);
    }
}

int
main (int argc, char **argv)
{
  static const char *const machines[] = { "compact", "medium" };
  print_head ();
  for (int i = 1; i < argc; i++)
    run_job_file (argv[i]);
  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    {
      run_made (machines[i]);
      run_folder ("OXTURN_FLOORS", machines[i]);
      run_folder ("OXTURN_BENCH_FLOORS", machines[i]);
    }
  run_scale ();
  return 0;
}
