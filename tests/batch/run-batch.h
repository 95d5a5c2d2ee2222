/* Oxturn: tests/batch/run-batch - runs oxturn-batch and looks at what comes out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <string.h>
#include <sys/wait.h>
#include "support/ox-test.h"
G_BEGIN_DECLS

typedef struct
{
  int status; /* exit status; -1 after a signal */
  char *out;
  char *err;
} Run;

static inline void
run_clear (Run *run)
{
  g_free (run->out);
  g_free (run->err);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Run, run_clear)

/* @argv: NULL-ended, the program first */
static inline Run
run_program (const char *const *argv)
{
  Run run = { -1, NULL, NULL };
  g_autoptr (GError) error = NULL;
  int status = 0;
  gboolean ran
      = g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &run.out, &run.err, &status, &error);
  g_assert_no_error (error);
  g_assert_true (ran);
  if (WIFEXITED (status))
    run.status = WEXITSTATUS (status);
  return run;
}

/* path of something that was built; (transfer full) */
static inline char *
built_path (const char *name)
{
  return g_build_filename (g_getenv ("OXTURN_BUILD"), name, NULL);
}

/* path of something in the source tree; (transfer full) */
static inline char *
source_path (const char *name)
{
  return g_build_filename (g_getenv ("OXTURN_SOURCE"), name, NULL);
}

static inline Run
run_batch_strv (const char *const *arguments)
{
  g_autofree char *program = built_path ("src/batch/oxturn-batch");
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_ptr_array_add (argv, program);
  for (guint i = 0; arguments[i]; i++)
    g_ptr_array_add (argv, (gpointer) arguments[i]);
  g_ptr_array_add (argv, NULL);
  return run_program ((const char *const *) argv->pdata);
}

#define run_batch(...) run_batch_strv ((const char *const[]){ __VA_ARGS__, NULL })

/* The run ended so, its complaint has @part in it, and it said nothing else. */
static inline void
assert_complained (const Run *run, int status, const char *part)
{
  if (run->status != status || !strstr (run->err, part))
    g_error ("status %d, “%s” is not in “%s”", run->status, part, run->err);
  g_assert_cmpstr (run->out, ==, "");
}

/* Done, and not a word. */
static inline void
assert_silent (const Run *run)
{
  g_assert_cmpstr (run->err, ==, "");
  g_assert_cmpstr (run->out, ==, "");
  g_assert_cmpint (run->status, ==, 0);
}

/* Done, and no more said than what somebody should know of the plan. */
static inline void
assert_done (const Run *run)
{
  g_auto (GStrv) lines = g_strsplit (run->err, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    g_assert_true (*lines[i] == '\0' || strstr (lines[i], ": notice: ") != NULL);
  g_assert_cmpstr (run->out, ==, "");
  g_assert_cmpint (run->status, ==, 0);
}

/* One line, as wrong usage is told. */
static inline void
assert_one_line (const char *text)
{
  g_assert_true (g_str_has_suffix (text, "\n"));
  g_assert_true (strchr (text, '\n') == text + strlen (text) - 1);
}

G_END_DECLS
