/* Oxturn: batch/mark - oxturn-batch mark: strips and edge work done, as a crew's day sheet tells them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/mark.h"
#include <glib/gi18n-lib.h>
#include "base/number.h"
#include "batch/command.h"
#include "file/job-xml.h"
#include "record/which.h"

const char ox_usage_mark[] = "oxturn-batch mark JOB --date 2026-09-14 [--strips 1-40] [--edges E1-E3] [--machine N] "
                             "[--meter-start H --meter-end H] [--note TEXT] -o OUT";

typedef struct
{
  char *date, *strips, *edges, *note, *out;
  char *meter_start, *meter_end;
  double meter_start_h, meter_end_h; /* OX_METER_UNREAD where not told */
  int machine;                       /* of the meter and the day's note, from 1 */
} Told;

static void
told_clear (Told *told)
{
  g_free (told->date);
  g_free (told->strips);
  g_free (told->edges);
  g_free (told->note);
  g_free (told->out);
  g_free (told->meter_start);
  g_free (told->meter_end);
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
tells_meter (const Told *told)
{
  return told->meter_start_h >= 0 || told->meter_end_h >= 0;
}

/* The note is the day's where there is no strip or edge work that it could be about. */
static gboolean
notes_day (const Told *told)
{
  return told->note != NULL && *told->note != '\0' && told->strips == NULL && told->edges == NULL;
}

/* What is not told now may have been told in the morning: readings stay, a note comes below the others. */
static gboolean
mark_day (OxJob **job, const Told *told, GError **error)
{
  const OxRecordDay *before = ox_record_find_day ((*job)->record, told->date, (guint) told->machine);
  const char *old = before != NULL && before->notes != NULL ? before->notes : "";
  g_autofree char *notes = notes_day (told) && *old != '\0' ? g_strconcat (old, "\n", told->note, NULL)
                                                            : g_strdup (notes_day (told) ? told->note : old);
  OxRecordDay day = { told->date, told->meter_start_h, told->meter_end_h, notes, (guint) told->machine };
  if (before != NULL && day.meter_start_h < 0)
    day.meter_start_h = before->meter_start_h;
  if (before != NULL && day.meter_end_h < 0)
    day.meter_end_h = before->meter_end_h;
  return go_on (job, ox_mark_day (*job, &day, error));
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
  return (!tells_meter (told) && !notes_day (told)) || mark_day (job, told, error);
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

/* FALSE for what is no reading, which has been said */
static gboolean
read_meter (const char *text, double *hours)
{
  if (text == NULL || (ox_number_parse (text, hours) && *hours >= 0))
    return TRUE;
  g_autofree char *what = g_strdup_printf (_ ("“%s” is no reading of a meter in hours"), text);
  ox_exit_usage (what, ox_usage_mark);
  return FALSE;
}

/* FALSE for what is no machine, which has been said */
static gboolean
machine_fits (int machine)
{
  if (machine >= 1 && machine <= OX_MACHINES_MOST)
    return TRUE;
  g_autofree char *what = g_strdup_printf (_ ("--machine %d: 1 to %d is allowed"), machine, OX_MACHINES_MOST);
  ox_exit_usage (what, ox_usage_mark);
  return FALSE;
}

/* (nullable): what is missing for anything to be marked */
static const char *
find_missing (const char *path, const Told *told)
{
  if (path == NULL)
    return _ ("JOB is missing");
  if (told->date == NULL)
    return _ ("--date is missing");
  if (told->out == NULL)
    return _ ("-o is missing");
  if (told->strips == NULL && told->edges == NULL && !notes_day (told) && !tells_meter (told))
    return _ ("one of --strips, --edges, --meter-start, --meter-end and --note is needed");
  return NULL;
}

OxExit
ox_command_mark (int argc, char **argv)
{
  g_auto (Told) told = { .meter_start_h = OX_METER_UNREAD, .meter_end_h = OX_METER_UNREAD, .machine = 1 };
  const char *path;
  const GOptionEntry options[] = {
    { "date", 0, 0, G_OPTION_ARG_STRING, &told.date, NULL, NULL },
    { "strips", 0, 0, G_OPTION_ARG_STRING, &told.strips, NULL, NULL },
    { "edges", 0, 0, G_OPTION_ARG_STRING, &told.edges, NULL, NULL },
    { "machine", 0, 0, G_OPTION_ARG_INT, &told.machine, NULL, NULL },
    { "meter-start", 0, 0, G_OPTION_ARG_STRING, &told.meter_start, NULL, NULL },
    { "meter-end", 0, 0, G_OPTION_ARG_STRING, &told.meter_end, NULL, NULL },
    { "note", 0, 0, G_OPTION_ARG_STRING, &told.note, NULL, NULL },
    { "out", 'o', 0, G_OPTION_ARG_FILENAME, &told.out, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };
  if (!ox_command_parse (&argc, &argv, options, ox_usage_mark, &path))
    return OX_EXIT_USAGE;
  if (!machine_fits (told.machine) || !read_meter (told.meter_start, &told.meter_start_h)
      || !read_meter (told.meter_end, &told.meter_end_h))
    return OX_EXIT_USAGE;
  const char *missing = find_missing (path, &told);
  if (missing != NULL)
    return ox_exit_usage (missing, ox_usage_mark);
  return mark_job (path, &told);
}
