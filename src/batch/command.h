/* Oxturn: batch/command - what the commands of oxturn-batch have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef enum
{
  OX_EXIT_DONE = 0,
  OX_EXIT_INPUT = 1,  /* the job or the input is at fault */
  OX_EXIT_USAGE = 2,  /* wrong usage */
  OX_EXIT_MACHINE = 3 /* disk, memory */
} OxExit;

/* Each command takes its own name and arguments, says what is wrong on stderr and returns the exit status. */
OxExit ox_command_check (int argc, char **argv);
OxExit ox_command_new (int argc, char **argv);
OxExit ox_command_plan (int argc, char **argv);
OxExit ox_command_draw (int argc, char **argv);
OxExit ox_command_mark (int argc, char **argv);

extern const char ox_usage_check[], ox_usage_new[], ox_usage_plan[], ox_usage_draw[], ox_usage_mark[]; /* one line each, untranslated */

/* ox_command_parse:
 * @options: (nullable): entries ended by an empty one
 * @usage: what is right
 * @operand: (out): the one argument that is no option, borrowed from @argv; NULL where there is none
 *
 * Returns: FALSE after wrong usage, which has been said
 */
gboolean ox_command_parse (int *argc, char ***argv, const GOptionEntry *options, const char *usage,
                           const char **operand) G_GNUC_WARN_UNUSED_RESULT;

/* ox_exit_usage: says what is wrong and what is right, in one line; Returns: OX_EXIT_USAGE */
OxExit ox_exit_usage (const char *what, const char *usage);

/* ox_exit_failed: says what happened; Returns: whose fault it is */
OxExit ox_exit_failed (const GError *error);

G_END_DECLS
