/* Oxturn: batch/plan - oxturn-batch plan: plan a job, write its tables.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/plan.h"
#include "base/notice.h"
#include <glib/gi18n-lib.h>
#include "batch/command.h"
#include "file/job-xml.h"
#include "file/tables.h"

const char ox_usage_plan[] = "oxturn-batch plan JOB --tables DIR";

static OxExit
plan_job (const char *path, const char *directory)
{
  g_autoptr (OxJob) job = NULL;
  g_autoptr (OxPlan) plan = NULL;
  g_autoptr (GError) error = NULL;
  if (!ox_job_file_read (path, &job, &error))
    return ox_exit_failed (error);
  plan = ox_plan_new (job, NULL, &error);
  if (!plan || !ox_tables_write (plan, directory, &error))
    return ox_exit_failed (error);
  for (guint i = 0; plan->notices && plan->notices[i]; i++)
    {
      g_autofree char *text = ox_notice_text (plan->notices[i]);
      g_printerr (_ ("%s: notice: %s\n"), path, text);
    }
  return OX_EXIT_DONE;
}

OxExit
ox_command_plan (int argc, char **argv)
{
  g_autofree char *directory = NULL;
  const char *path;
  const GOptionEntry options[] = {
    { "tables", 0, 0, G_OPTION_ARG_FILENAME, &directory, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };
  if (!ox_command_parse (&argc, &argv, options, ox_usage_plan, &path))
    return OX_EXIT_USAGE;
  if (!path || !directory)
    return ox_exit_usage (!path ? _ ("JOB is missing") : _ ("--tables is missing"), ox_usage_plan);
  return plan_job (path, directory);
}
