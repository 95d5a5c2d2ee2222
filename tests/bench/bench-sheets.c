/* Oxturn: tests/bench/bench-sheets - how long sheets take to draw, and in how much memory; figures to read, nothing
 * that fails. SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All sheets of the jobs named on the command line, and of a floor of 100,000 m2 with 500 columns and four stations, as
 * PDF and as SVG, each on several papers. Planning is told apart; memory is the peak of the process so far, which
 * planning has its share in.
 */
#include "file/job-xml.h"
#include "paint/pdf.h"
#include "paint/svg.h"
#include "sheets/sheets.h"
#include "support/floors.h"
#include <sys/resource.h>
#include <time.h>

static double
peak_mb (void)
{
  struct rusage usage;
  getrusage (RUSAGE_SELF, &usage);
  return (double) usage.ru_maxrss / 1024;
}

/* seconds_since: of the processor, in which other programs have no share: sheets are made by one thread; @mark becomes
 * now */
static double
seconds_since (clock_t *mark)
{
  clock_t now = clock ();
  double seconds = (double) (now - *mark) / CLOCKS_PER_SEC;
  *mark = now;
  return seconds;
}

static void
draw (const OxJob *job, const OxPlan *plan, const char *name, const char *paper)
{
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  options.paper = ox_paper_find (paper);
  clock_t mark = clock ();
  g_autoptr (OxPageSet) set = ox_sheets_new (job, plan, &options, &error);
  double laid = seconds_since (&mark);
  if (set == NULL)
    {
      g_print ("%-22s %-8s %s\n", name, paper, error->message);
      return;
    }
  g_autoptr (GBytes) pdf = ox_pdf_new (set, &error);
  double pdf_seconds = seconds_since (&mark);
  gsize svg_bytes = 0;
  for (guint i = 0; i < set->n_pages; i++)
    {
      g_autoptr (GBytes) svg = ox_svg_new (&set->pages[i]);
      svg_bytes += g_bytes_get_size (svg);
    }
  double svg_seconds = seconds_since (&mark);
  g_print ("%-22s %-8s %6u %8.2f %8.2f %8.2f %9.1f %9.1f %8.0f\n", name, paper, set->n_pages, laid, pdf_seconds,
           svg_seconds, (double) g_bytes_get_size (pdf) / 1e6, (double) svg_bytes / 1e6, peak_mb ());
}

static void
run (const OxJob *job, const char *name)
{
  static const char *const papers[] = { "A1", "A3", "A4" };
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  g_autoptr (OxPlan) plan = ox_plan_new (job, NULL, &error);
  if (plan == NULL)
    {
      g_print ("%s: %s\n", name, error->message);
      return;
    }
  g_print ("%-22s planned in %.2f s, %u strips, %.0f MB\n", name, (double) (g_get_monotonic_time () - start) / 1e6,
           plan->n_strips, peak_mb ());
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    draw (job, plan, name, papers[i]);
}

static OxJob *
large_floor (void)
{
  g_autoptr (OxJob) floor = ox_test_floor_columns (400, 250, 0.5, 14.14, "compact");
  OxJobBuilder *builder = ox_job_builder_new (floor);
  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *id = g_strdup_printf ("S%u", i + 1);
      OxPoint at = { i % 2 == 0 ? 100 : 300, i < 2 ? 60 : 190 };
      g_autoptr (OxStation) station = ox_station_new (&(OxStation){
          .id = id, .name = (char *) "", .kind = i % 2 == 0 ? OX_STATION_COLLECTOR : OX_STATION_SUPPLY, .at = at });
      ox_job_builder_put_station (builder, station);
    }
  return ox_job_builder_end (builder);
}

int
main (int argc, char **argv)
{
  g_print ("%-22s %-8s %6s %8s %8s %8s %9s %9s %8s\n", "floor", "paper", "sheets", "laid s", "PDF s", "SVG s", "PDF MB",
           "SVG MB", "peak MB");
  for (int i = 1; i < argc; i++)
    {
      g_autoptr (OxJob) job = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *name = g_path_get_basename (argv[i]);
      if (ox_job_file_read (argv[i], &job, &error))
        run (job, name);
      else
        g_print ("%s\n", error->message);
    }
  g_autoptr (OxJob) large = large_floor ();
  run (large, "100,000 m2");
  return 0;
}
