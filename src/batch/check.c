/* Oxturn: batch/check - oxturn-batch check: what is wrong with a job, or nothing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "batch/command.h"
#include <glib/gi18n-lib.h>
#include "file/job-xml.h"
#include "job/check.h"

const char ox_usage_check[] = "oxturn-batch check JOB";

OxExit
ox_command_check (int argc, char **argv)
{
  const char *path;
  g_autoptr (OxJob) job = NULL;
  g_autoptr (GError) error = NULL;
  if (!ox_command_parse (&argc, &argv, NULL, ox_usage_check, &path))
    return OX_EXIT_USAGE;
  if (!path)
    return ox_exit_usage (_ ("JOB is missing"), ox_usage_check);
  if (!ox_job_file_read (path, &job, &error))
    return ox_exit_failed (error);
  /* What is left are notices: a job with an error is not read. */
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  for (guint i = 0; i < findings->len; i++)
    g_printerr (_ ("%s: notice: %s\n"), path, ((const OxFinding *) findings->pdata[i])->text);
  return OX_EXIT_DONE;
}
