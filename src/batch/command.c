/* Oxturn: batch/command - what the commands of oxturn-batch have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "batch/command.h"
#include <gio/gio.h>
#include <glib/gi18n-lib.h>

OxExit
ox_exit_usage (const char *what, const char *usage)
{
  g_printerr (_ ("%s: %s. Right is: %s\n"), g_get_prgname (), what, usage);
  return OX_EXIT_USAGE;
}

gboolean
ox_command_parse (int *argc, char ***argv, const GOptionEntry *options, const char *usage, const char **operand)
{
  static const GOptionEntry none[] = { G_OPTION_ENTRY_NULL };
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  g_autoptr (GError) error = NULL;
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_add_main_entries (context, options ? options : none, GETTEXT_PACKAGE);
  *operand = NULL;
  if (!g_option_context_parse (context, argc, argv, &error))
    {
      ox_exit_usage (error->message, usage);
      return FALSE;
    }
  /* "--" is left in place where something that looks like an option follows it. */
  int first = *argc > 1 && g_str_equal ((*argv)[1], "--") ? 2 : 1;
  if (*argc > first + 1)
    {
      g_autofree char *what = g_strdup_printf (_ ("“%s” is one argument too many"), (*argv)[first + 1]);
      ox_exit_usage (what, usage);
      return FALSE;
    }
  if (*argc > first)
    *operand = (*argv)[first];
  return TRUE;
}

/* A path that leads nowhere or may not be used is the user's to mend; a full disk is not. */
static OxExit
file_status (GFileError code)
{
  switch ((int) code)
    {
    case G_FILE_ERROR_EXIST:
    case G_FILE_ERROR_ISDIR:
    case G_FILE_ERROR_ACCES:
    case G_FILE_ERROR_NAMETOOLONG:
    case G_FILE_ERROR_NOENT:
    case G_FILE_ERROR_NOTDIR:
    case G_FILE_ERROR_LOOP:
    case G_FILE_ERROR_INVAL:
    case G_FILE_ERROR_PERM:
      return OX_EXIT_INPUT;
    default:
      return OX_EXIT_MACHINE;
    }
}

static OxExit
io_status (GIOErrorEnum code)
{
  switch ((int) code)
    {
    case G_IO_ERROR_NOT_FOUND:
    case G_IO_ERROR_EXISTS:
    case G_IO_ERROR_IS_DIRECTORY:
    case G_IO_ERROR_NOT_DIRECTORY:
    case G_IO_ERROR_FILENAME_TOO_LONG:
    case G_IO_ERROR_INVALID_FILENAME:
    case G_IO_ERROR_INVALID_ARGUMENT:
    case G_IO_ERROR_TOO_MANY_LINKS:
    case G_IO_ERROR_PERMISSION_DENIED:
    case G_IO_ERROR_NOT_SUPPORTED:
      return OX_EXIT_INPUT;
    default:
      return OX_EXIT_MACHINE;
    }
}

OxExit
ox_exit_failed (const GError *error)
{
  g_printerr ("%s\n", error->message);
  if (error->domain == G_FILE_ERROR)
    return file_status ((GFileError) error->code);
  if (error->domain == G_IO_ERROR)
    return io_status ((GIOErrorEnum) error->code);
  return OX_EXIT_INPUT;
}
