/* Oxturn: batch/main - oxturn-batch: check, make, plan and draw jobs without a display.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n-lib.h>
#include <locale.h>
#include "batch/command.h"

static const struct
{
  const char *name;
  OxExit (*run) (int argc, char **argv);
  const char *usage;
  const char *help;
} commands[] = {
  { "check", ox_command_check, ox_usage_check, N_ ("say what is wrong with the job, or nothing") },
  { "new", ox_command_new, ox_usage_new,
    N_ ("make a job from an outline: first ring the room, inner rings solid obstacles") },
  { "plan", ox_command_plan, ox_usage_plan, N_ ("plan the job, write its tables") },
  { "draw", ox_command_draw, ox_usage_draw, N_ ("plan the job, draw its sheets") },
  { "mark", ox_command_mark, ox_usage_mark, N_ ("mark strips and edge work of the plan done") },
};

static gboolean
asks_for_help (const char *word)
{
  return g_strcmp0 (word, "--help") == 0 || g_strcmp0 (word, "-h") == 0;
}

static OxExit
print_command_help (guint i)
{
  g_print ("%s\n    %s\n", commands[i].usage, _ (commands[i].help));
  return OX_EXIT_DONE;
}

static OxExit
print_help (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    print_command_help (i);
  g_print (
      _ ("Exit status: 0 done, 1 the job or the input is at fault, 2 wrong usage, 3 the machine (disk, memory)\n"));
  return OX_EXIT_DONE;
}

static OxExit
run_command (int argc, char **argv)
{
  static const char usage[] = "oxturn-batch check|new|plan|draw|mark ... (--help says more)";
  const char *name = argc > 1 ? argv[1] : NULL;
  if (!name)
    return ox_exit_usage (_ ("a command is missing"), usage);
  if (asks_for_help (name))
    return print_help ();
  if (g_str_equal (name, "--version"))
    {
      g_print ("oxturn-batch %s\n", OX_VERSION);
      return OX_EXIT_DONE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (name, commands[i].name))
      return asks_for_help (argv[2]) ? print_command_help (i) : commands[i].run (argc - 1, argv + 1);
  g_autofree char *what = g_strdup_printf (_ ("“%s” is no command"), name);
  return ox_exit_usage (what, usage);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, OX_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_prgname ("oxturn-batch");
  return (int) run_command (argc, argv);
}
