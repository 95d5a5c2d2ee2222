/* Oxturn: tests/batch/test-command
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "batch/command.h"
#include <gio/gio.h>
#include "file/job-xml.h"
#include "geometry/wkt.h"
#include "job/edit.h"
#include "plan/plan.h"

/* Whose fault it is: of the job or the paths that were given (1), or of the machine (3). */
static void
test_exit_status (void)
{
  const struct
  {
    GQuark domain;
    int code;
    OxExit status;
  } rows[] = {
    { OX_FILE_ERROR, OX_FILE_ERROR_INVALID, OX_EXIT_INPUT },
    { OX_FILE_ERROR, OX_FILE_ERROR_NEWER, OX_EXIT_INPUT },
    { OX_FILE_ERROR, OX_FILE_ERROR_TOO_LARGE, OX_EXIT_INPUT },
    { OX_WKT_ERROR, OX_WKT_ERROR_SYNTAX, OX_EXIT_INPUT },
    { OX_PLAN_ERROR, OX_PLAN_ERROR_BAD_JOB, OX_EXIT_INPUT },
    { OX_JOB_ERROR, OX_JOB_ERROR_REFUSED, OX_EXIT_INPUT },
    { G_FILE_ERROR, G_FILE_ERROR_NOENT, OX_EXIT_INPUT },
    { G_FILE_ERROR, G_FILE_ERROR_ISDIR, OX_EXIT_INPUT },
    { G_FILE_ERROR, G_FILE_ERROR_ACCES, OX_EXIT_INPUT },
    { G_FILE_ERROR, G_FILE_ERROR_NOSPC, OX_EXIT_MACHINE },
    { G_FILE_ERROR, G_FILE_ERROR_IO, OX_EXIT_MACHINE },
    { G_FILE_ERROR, G_FILE_ERROR_NOMEM, OX_EXIT_MACHINE },
    { G_IO_ERROR, G_IO_ERROR_NOT_FOUND, OX_EXIT_INPUT },
    { G_IO_ERROR, G_IO_ERROR_PERMISSION_DENIED, OX_EXIT_INPUT },
    { G_IO_ERROR, G_IO_ERROR_NO_SPACE, OX_EXIT_MACHINE },
    { G_IO_ERROR, G_IO_ERROR_READ_ONLY, OX_EXIT_MACHINE },
    { G_IO_ERROR, G_IO_ERROR_FAILED, OX_EXIT_MACHINE },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = g_error_new_literal (rows[i].domain, rows[i].code, "as it should");
      g_assert_cmpint (ox_exit_failed (error), ==, rows[i].status);
    }
}

static gboolean
parse (const char *line, gboolean *flag, char **operand)
{
  const GOptionEntry options[] = { { "flag", 'f', 0, G_OPTION_ARG_NONE, flag, NULL, NULL }, G_OPTION_ENTRY_NULL };
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  /* GLib takes words out of the vector without freeing them; they stay ours. */
  g_autofree char **argv = g_memdup2 (words, (g_strv_length (words) + 1) * sizeof *words);
  int argc = (int) g_strv_length (words);
  char **moving = argv;
  const char *found = NULL;
  *flag = FALSE;
  gboolean right = ox_command_parse (&argc, &moving, options, "check JOB", &found);
  *operand = g_strdup (found);
  return right;
}

static void
test_parse (void)
{
  static const struct
  {
    const char *line;
    gboolean right;
    gboolean flag;
    const char *operand;
  } rows[] = {
    { "check", TRUE, FALSE, NULL },
    { "check job", TRUE, FALSE, "job" },
    { "check --flag job", TRUE, TRUE, "job" },
    { "check job -f", TRUE, TRUE, "job" },
    { "check -- -job", TRUE, FALSE, "-job" },
    { "check job more", FALSE, FALSE, NULL },
    { "check --other", FALSE, FALSE, NULL },
    { "check --help", FALSE, FALSE, NULL },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gboolean flag;
      g_autofree char *operand = NULL;
      g_assert_cmpint (parse (rows[i].line, &flag, &operand), ==, rows[i].right);
      g_assert_cmpint (flag, ==, rows[i].flag);
      g_assert_cmpstr (operand, ==, rows[i].operand);
    }
}

static void
test_usage (void)
{
  g_assert_cmpint (ox_exit_usage ("as it should", "check JOB"), ==, OX_EXIT_USAGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/command/exit-status", test_exit_status);
  g_test_add_func ("/batch/command/parse", test_parse);
  g_test_add_func ("/batch/command/usage", test_usage);
  return g_test_run ();
}
