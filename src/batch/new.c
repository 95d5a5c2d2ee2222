/* Oxturn: batch/new - oxturn-batch new: a job from an outline.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "batch/command.h"
#include <glib/gi18n-lib.h>
#include "file/floor-import.h"
#include "file/job-xml.h"
#include "job/classes.h"

const char ox_usage_new[] = "oxturn-batch new OUT --room FILE.wkt --machine CLASS (--machine help lists the classes)";

static OxExit
list_classes (void)
{
  for (guint i = 0; i < ox_classes_get_count (); i++)
    {
      const OxMachine *machine = ox_classes_get (i);
      g_print ("%-10s %s\n", machine->class_id, machine->name);
    }
  return OX_EXIT_DONE;
}

static OxExit
make_job (const char *path, const char *outline, const OxMachine *machine)
{
  g_autoptr (OxJob) job = NULL;
  g_autoptr (GError) error = NULL;
  if (!ox_floor_from_wkt_file (outline, machine, &job, &error) || !ox_job_file_write (job, path, &error))
    return ox_exit_failed (error);
  return OX_EXIT_DONE;
}

OxExit
ox_command_new (int argc, char **argv)
{
  g_autofree char *outline = NULL;
  g_autofree char *class_id = NULL;
  const char *path;
  const GOptionEntry options[] = {
    { "room", 0, 0, G_OPTION_ARG_FILENAME, &outline, NULL, NULL },
    { "machine", 0, 0, G_OPTION_ARG_STRING, &class_id, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };
  if (!ox_command_parse (&argc, &argv, options, ox_usage_new, &path))
    return OX_EXIT_USAGE;
  if (g_strcmp0 (class_id, "help") == 0)
    return list_classes ();
  if (!path || !outline || !class_id)
    return ox_exit_usage (!path      ? _ ("OUT is missing")
                          : !outline ? _ ("--room is missing")
                                     : _ ("--machine is missing"),
                          ox_usage_new);
  const OxMachine *machine = ox_classes_find (class_id);
  if (machine)
    return make_job (path, outline, machine);
  g_autofree char *what = g_strdup_printf (_ ("“%s” is no class of machines"), class_id);
  return ox_exit_usage (what, ox_usage_new);
}
