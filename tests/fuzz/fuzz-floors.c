/* Oxturn: tests/fuzz/fuzz-floors - job files and outlines spoiled by chance: each is refused in words, or read, planned
 * and found sound. SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     fuzz-floors [--seed N] [--first N] [--count N] [--seconds S] [--keep FOLDER] JOB...
 *
 * Starts from the jobs, from made-up floors (tests/support/floors) and from their outlines. Each case is tried in a
 * process of its own, so that one that falls over is only told: with its number, what it said, and the smallest text
 * found that does the same, which also goes into FOLDER. The same seed and number give the same case. --seconds is for
 * a long run by hand and takes the place of the count.
 */
#include <glib/gstdio.h>
#include <locale.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include "base/number.h"
#include "file/floor-import.h"
#include "file/job-xml.h"
#include "job/check.h"
#include "job/classes.h"
#include "mutate.h"
#include "plan/verify.h"
#include "support/floors.h"

#define MADE_UP 56        /* floors, four of each kind */
#define STRIP_M_MOST 2500 /* more is not planned, which would only take long */
#define LANES_MOST 300
/* Known, and no danger: a way that bends round a sharp tip is not always found, and the plan says that the machine is
 * carried there. */
#define CARRIED "carried although there is a way on wheels"
#define CPU_SECONDS 120 /* of one case; only one that hangs comes near */
#define SHRINK_TRIES 300

/* How a case ended; signals and sanitizers have ends of their own. */
enum
{
  REFUSED,
  PLANNED = 40,
  READ, /* and too large to be planned here */
  WRONG
};

typedef struct
{
  GPtrArray *jobs, *outlines; /* texts to start from */
  gint seed, first, count, seconds;
  char *keep;
} Fuzz;

/* --- One case, in a process of its own --- */

static void G_GNUC_NORETURN G_GNUC_PRINTF (1, 2) wrong (const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_printerr ("%s\n", text);
  _exit (WRONG);
}

static gboolean
is_small (const OxJob *job)
{
  OxBox box = ox_job_box (job);
  double spacing = job->machine->blast_width - job->machine->min_overlap, area = 0;
  guint corners = 0, coats = 1;
  for (guint i = 0; i < job->n_rooms; i++)
    {
      area += fabs (ox_ring_area (job->rooms[i]->ring)) * job->rooms[i]->coats;
      corners += job->rooms[i]->ring->n;
      coats = MAX (coats, job->rooms[i]->coats);
    }
  for (guint i = 0; i < job->n_conditions; i++)
    coats = MAX (coats, job->conditions[i]->coats);
  return area * coats / spacing < STRIP_M_MOST && hypot (box.x1 - box.x0, box.y1 - box.y0) / spacing < LANES_MOST
         && corners < 500;
}

static void
judge_plan (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
  if (plan == NULL)
    wrong ("not planned: %s", error->message);
  g_autoptr (GPtrArray) breaches = ox_plan_verify (plan);
  for (guint i = 0; i < breaches->len; i++)
    {
      const OxBreach *b = g_ptr_array_index (breaches, i);
      if (strcmp (b->text, CARRIED) != 0)
        wrong ("rule %d strip %u at %.4f %.4f: %s", b->rule, b->strip, b->at.x, b->at.y, b->text);
    }
  const OxTotals *t = &plan->totals;
  if (t->edge_m2 < t->edge_limit_m2 - 1e-6 * MAX (t->target_m2, 1))
    wrong ("edge work %.6f m2 under its limit %.6f m2", t->edge_m2, t->edge_limit_m2);
}

/* What is read has no error, and comes back from its own file as it was. */
static void
judge_job (const OxJob *job)
{
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  const OxFinding *first = findings->len > 0 ? g_ptr_array_index (findings, 0) : NULL;
  if (first != NULL && first->kind == OX_FINDING_ERROR)
    wrong ("read with an error: %s", first->text);
  g_autofree char *text = ox_job_file_to_text (job);
  g_autoptr (GError) error = NULL;
  OxJob *again = NULL;
  if (!ox_job_file_read_data ("again", text, strlen (text), &again, &error))
    wrong ("written and not read again: %s", error->message);
  g_autofree char *same = ox_job_file_to_text (again);
  ox_job_unref (again);
  if (!g_str_equal (text, same))
    wrong ("written, read and written again it is another file");
}

static int
judge_text (const char *text)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  gboolean is_job = strchr (text, '<') != NULL;
  gboolean read = is_job ? ox_job_file_read_data ("case", text, strlen (text), &job, &error)
                         : ox_floor_from_wkt ("case", text, ox_classes_get (0), &job, &error);
  if (!read && (job != NULL || error == NULL || *error->message == '\0' || !g_utf8_validate (error->message, -1, NULL)))
    wrong ("refused without words");
  if (!read)
    return REFUSED;
  judge_job (job);
  gboolean small = is_small (job);
  if (small)
    judge_plan (job);
  ox_job_unref (job);
  return small ? PLANNED : READ;
}

/* Returns the exit status as wait() has it, and in @told what was said. */
static int
try_text (const char *text, char **told)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "oxturn-fuzz-XXXXXX", NULL);
  int status = 0, said = g_mkstemp (path);
  g_assert_cmpint (said, >=, 0);
  pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      const struct rlimit cpu = { CPU_SECONDS, CPU_SECONDS }, core = { 0, 0 };
      setrlimit (RLIMIT_CPU, &cpu);
      setrlimit (RLIMIT_CORE, &core);
      dup2 (said, STDERR_FILENO);
      _exit (judge_text (text));
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  close (said);
  if (told != NULL)
    g_file_get_contents (path, told, NULL, NULL);
  g_remove (path);
  return status;
}

/* A debug build warns of a plan that breaks a rule, which is judged here anyway; any other warning is one too many. */
static void
hear (const char *domain, GLogLevelFlags level, const char *message, gpointer data)
{
  g_log_default_handler (domain, level, message, data);
  if ((level & G_LOG_LEVEL_WARNING) && !g_str_has_prefix (message, "plan breaks rule"))
    abort ();
}

/* --- Many --- */

static gboolean
shows (const char *text, gpointer status)
{
  return try_text (text, NULL) == *(int *) status;
}

static char *
make_case (const Fuzz *fuzz, guint number)
{
  const guint32 seeds[] = { (guint32) fuzz->seed, number };
  GRand *rand = g_rand_new_with_seed_array (seeds, G_N_ELEMENTS (seeds));
  GPtrArray *from = g_rand_int_range (rand, 0, 3) == 0 ? fuzz->outlines : fuzz->jobs;
  const char *text = from->pdata[g_rand_int_range (rand, 0, (gint32) from->len)];
  const char *other = from->pdata[g_rand_int_range (rand, 0, (gint32) from->len)];
  char *made = mutate_text (rand, text, other);
  g_rand_free (rand);
  return made;
}

static void
print_lines (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", 60);
  for (guint k = 0; lines[k] != NULL && k < 59; k++)
    g_print ("# %s\n", lines[k]);
  fflush (stdout);
}

static void
keep_case (const Fuzz *fuzz, guint number, const char *what, const char *text)
{
  if (fuzz->keep == NULL)
    return;
  g_autofree char *name
      = g_strdup_printf ("case-%d-%u%s.%s", fuzz->seed, number, what, strchr (text, '<') ? "oxturn" : "wkt");
  g_autofree char *path = g_build_filename (fuzz->keep, name, NULL);
  g_file_set_contents (path, text, -1, NULL);
}

/* What it is about at once, since making it small takes its time. */
static void
report (const Fuzz *fuzz, guint number, const char *text, int status)
{
  g_autofree char *told = NULL;
  (void) try_text (text, &told);
  g_print ("# case %u of seed %d: %s %d\n", number, fuzz->seed, WIFSIGNALED (status) ? "signal" : "status",
           WIFSIGNALED (status) ? WTERMSIG (status) : WEXITSTATUS (status));
  print_lines (told != NULL ? told : "");
  keep_case (fuzz, number, "", text);
  g_autofree char *small = mutate_shrink (text, shows, &status, SHRINK_TRIES);
  print_lines (small);
  keep_case (fuzz, number, "-small", small);
}

static guint
run_cases (const Fuzz *fuzz)
{
  guint failed = 0, planned = 0, read = 0;
  gint64 stop = g_get_monotonic_time () + (gint64) fuzz->seconds * G_USEC_PER_SEC;
  guint number = (guint) fuzz->first;
  for (; fuzz->seconds > 0 ? g_get_monotonic_time () < stop : number < (guint) (fuzz->first + fuzz->count); number++)
    {
      g_autofree char *text = make_case (fuzz, number);
      int status = try_text (text, NULL);
      int end = WIFEXITED (status) ? WEXITSTATUS (status) : WRONG;
      planned += end == PLANNED;
      read += end == READ;
      if (end == REFUSED || end == PLANNED || end == READ)
        continue;
      failed++;
      report (fuzz, number, text, status);
    }
  g_print ("# %u cases: %u planned, %u read only, %u failed, the others refused\n", number - (guint) fuzz->first,
           planned, read, failed);
  return failed;
}

/* --- What to start from --- */

static void
append_ring (GString *wkt, const char *before, const OxRing *ring)
{
  g_string_append_printf (wkt, "%s(", before);
  for (guint i = 0; i <= ring->n; i++)
    {
      g_string_append (wkt, i > 0 ? ", " : "");
      ox_number_append (wkt, ring->points[i % ring->n].x, 4);
      g_string_append_c (wkt, ' ');
      ox_number_append (wkt, ring->points[i % ring->n].y, 4);
    }
  g_string_append_c (wkt, ')');
}

/* The rooms, with all obstacles as holes of the first one, on it or not. */
static char *
outline_of (const OxJob *job)
{
  GString *wkt = g_string_new ("MULTIPOLYGON (");
  for (guint i = 0; i < job->n_rooms; i++)
    {
      append_ring (wkt, i > 0 ? ", (" : "(", job->rooms[i]->ring);
      for (guint k = 0; i == 0 && k < job->n_obstacles; k++)
        append_ring (wkt, ", ", job->obstacles[k]->shape.ring);
      g_string_append_c (wkt, ')');
    }
  g_string_append_c (wkt, ')');
  return g_string_free (wkt, FALSE);
}

static void
gather (Fuzz *fuzz, int n, char **paths)
{
  fuzz->jobs = g_ptr_array_new_with_free_func (g_free);
  fuzz->outlines = g_ptr_array_new_with_free_func (g_free);
  for (guint32 i = 0; i < MADE_UP; i++)
    {
      g_autoptr (OxJob) job = i % 4 == 3 ? ox_test_floor_coats (i) : ox_test_floor_random (i);
      g_ptr_array_add (fuzz->jobs, ox_job_file_to_text (job));
      g_ptr_array_add (fuzz->outlines, outline_of (job));
    }
  for (int i = 0; i < n; i++)
    {
      char *text = NULL;
      if (!g_file_get_contents (paths[i], &text, NULL, NULL))
        g_error ("%s cannot be read", paths[i]);
      for (guint k = 0; k < MADE_UP / 14; k++)
        g_ptr_array_add (fuzz->jobs, g_strdup (text));
      g_free (text);
    }
}

int
main (int argc, char **argv)
{
  Fuzz fuzz = { .seed = 1, .count = 100 };
  const GOptionEntry options[] = {
    { "seed", 0, 0, G_OPTION_ARG_INT, &fuzz.seed, NULL, NULL },
    { "first", 0, 0, G_OPTION_ARG_INT, &fuzz.first, NULL, NULL },
    { "count", 0, 0, G_OPTION_ARG_INT, &fuzz.count, NULL, NULL },
    { "seconds", 0, 0, G_OPTION_ARG_INT, &fuzz.seconds, NULL, NULL },
    { "keep", 0, 0, G_OPTION_ARG_FILENAME, &fuzz.keep, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_autoptr (GOptionContext) context = g_option_context_new ("JOB...");
  g_autoptr (GError) error = NULL;
  setlocale (LC_ALL, "");
  g_log_set_always_fatal (G_LOG_LEVEL_ERROR | G_LOG_LEVEL_CRITICAL);
  g_log_set_default_handler (hear, NULL);
  g_option_context_add_main_entries (context, options, NULL);
  if (!g_option_context_parse (context, &argc, &argv, &error))
    g_error ("%s", error->message);
  gather (&fuzz, argc - 1, argv + 1);
  g_print ("1..1\n");
  guint failed = run_cases (&fuzz);
  g_print ("%s 1 /fuzz/floors\n", failed == 0 ? "ok" : "not ok");
  g_ptr_array_unref (fuzz.jobs);
  g_ptr_array_unref (fuzz.outlines);
  g_free (fuzz.keep);
  return failed == 0 ? 0 : 1;
}
