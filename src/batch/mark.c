/* Oxturn: batch/mark - oxturn-batch mark: strips and edge work done, as a crew's day sheet tells them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/mark.h"
#include <glib/gi18n-lib.h>
#include "batch/command.h"
#include "file/job-xml.h"
#include "record/which.h"

const char ox_usage_mark[] = "oxturn-batch mark JOB --date 2026-09-14 [--strips 1-40] [--edges E1-E3] [--meter-start H "
                             "--meter-end H] [--note TEXT] -o OUT";

typedef struct
{
  char *date, *strips, *edges, *note, *out;
  double meter_start, meter_end;
} Told;

static void
told_clear (Told *told)
{
  g_free (told->date);
  g_free (told->strips);
  g_free (told->edges);
  g_free (told->note);
  g_free (told->out);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Told, told_clear)

/* Takes the place of @job; FALSE where @next is NULL, which an error then tells of. */
static gboolean
go_on (OxJob **job, OxJob *next)
{
  if (next == NULL)
    return FALSE;
  ox_job_unref (*job);
  *job = next;
  return TRUE;
}

static gboolean
mark_all (OxJob **job, const OxPlan *plan, const Told *told, GError **error)
{
  const OxMark mark = { .date = told->date, .note = told->note };
  g_autoptr (GArray) strips = told->strips != NULL ? ox_which_strips (plan, told->strips, error) : NULL;
  if (told->strips != NULL && (strips == NULL || !go_on (job, ox_mark_strips (*job, plan, strips, &mark, error))))
    return FALSE;
  g_autoptr (GArray) edges = told->edges != NULL ? ox_which_edges (plan, told->edges, error) : NULL;
  if (told->edges != NULL && (edges == NULL || !go_on (job, ox_mark_edges (*job, plan, edges, &mark, error))))
    return FALSE;
  if (told->meter_start < 0 && told->meter_end < 0)
    return TRUE;
  /* A reading that is not told now may have been told in the morning. */
  const OxRecordDay *before = ox_record_find_day ((*job)->record, told->date);
  OxRecordDay day = { told->date, told->meter_start, told->meter_end, before != NULL ? before->notes : NULL };
  if (before != NULL && day.meter_start_h < 0)
    day.meter_start_h = before->meter_start_h;
  if (before != NULL && day.meter_end_h < 0)
    day.meter_end_h = before->meter_end_h;
  return go_on (job, ox_mark_day (*job, &day, error));
}

static OxExit
mark_job (const char *path, const Told *told)
{
  g_autoptr (OxJob) job = NULL;
  g_autoptr (OxPlan) plan = NULL;
  g_autoptr (GError) error = NULL;
  if (!ox_job_file_read (path, &job, &error))
    return ox_exit_failed (error);
  plan = ox_plan_new (job, NULL, &error);
  if (!plan || !mark_all (&job, plan, told, &error) || !ox_job_file_write (job, told->out, &error))
    return ox_exit_failed (error);
  return OX_EXIT_DONE;
}

OxExit
ox_command_mark (int argc, char **argv)
{
  g_auto (Told) told = { .meter_start = OX_METER_UNREAD, .meter_end = OX_METER_UNREAD };
  const char *path;
  const GOptionEntry options[] = {
    { "date", 0, 0, G_OPTION_ARG_STRING, &told.date, NULL, NULL },
    { "strips", 0, 0, G_OPTION_ARG_STRING, &told.strips, NULL, NULL },
    { "edges", 0, 0, G_OPTION_ARG_STRING, &told.edges, NULL, NULL },
    { "meter-start", 0, 0, G_OPTION_ARG_DOUBLE, &told.meter_start, NULL, NULL },
    { "meter-end", 0, 0, G_OPTION_ARG_DOUBLE, &told.meter_end, NULL, NULL },
    { "note", 0, 0, G_OPTION_ARG_STRING, &told.note, NULL, NULL },
    { "out", 'o', 0, G_OPTION_ARG_FILENAME, &told.out, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };
  if (!ox_command_parse (&argc, &argv, options, ox_usage_mark, &path))
    return OX_EXIT_USAGE;
  if (!path || !told.date || !told.out)
    return ox_exit_usage (!path        ? _ ("JOB is missing")
                          : !told.date ? _ ("--date is missing")
                                       : _ ("-o is missing"),
                          ox_usage_mark);
  return mark_job (path, &told);
}
