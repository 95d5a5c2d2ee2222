/* Oxturn: tests/job/test-check-scope
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <string.h>
#include "job/check.h"
#include "job/edit.h"
#include "job-making.h"

/* Takes @made, which is to have been refused with @part. */
static void
assert_refused (OxJob *made, GError **error, const char *part)
{
  g_assert_null (made);
  g_assert_error (*error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  if (!strstr ((*error)->message, part))
    g_error ("“%s” does not say “%s”", (*error)->message, part);
  g_clear_error (error);
}

static void
assert_scope_refused (const OxScope *draft, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  g_autoptr (OxScope) scope = ox_scope_new (draft);
  assert_refused (ox_job_with_scope (job, scope, &error), &error, part);
}

static void
test_scope (void)
{
  g_autofree char *long_text = g_strnfill (OX_SCOPE_LINE_BYTES_MOST + 1, 'x');
  OxScopeLine empty = { NULL, NULL }, unknown = { (char *) "corners", NULL }, wordy = { NULL, long_text };
  g_autofree OxScopeLine *many = g_new0 (OxScopeLine, OX_SCOPE_LINES_MOST + 1);
  OxRevision twice[] = { { .mark = (char *) "A" }, { .mark = (char *) "A" } };
  OxRevision late = { .mark = (char *) "A", .date = (char *) "2026-06-31" };
  OxSignOff other = { (char *) "OX-1", (char *) "A", (char *) "P. Hollow", NULL };
  OxSignOff undated = { NULL, NULL, (char *) "P. Hollow", (char *) "today" };
  OxRevision used = { .mark = NULL, .accepted_by = (char *) "P. Hollow" };
  assert_scope_refused (&(OxScope){ .n_lines = { 1 }, .lines = { &empty } }, "A line of the scope is empty");
  assert_scope_refused (&(OxScope){ .n_lines = { 1 }, .lines = { &unknown } }, "“corners” is no line of the scope");
  assert_scope_refused (&(OxScope){ .n_lines = { 1 }, .lines = { &wordy } }, "too long");
  assert_scope_refused (&(OxScope){ .n_lines = { OX_SCOPE_LINES_MOST + 1 }, .lines = { many } }, "has 201 lines");
  assert_scope_refused (&(OxScope){ .n_revisions = 2, .revisions = twice }, "Two revisions have the mark “A”");
  assert_scope_refused (&(OxScope){ .n_revisions = 1, .revisions = &late }, "“2026-06-31” is no day");
  assert_scope_refused (&(OxScope){ .sign_off = other }, "The sign-off is for drawing “OX-1”");
  assert_scope_refused (&(OxScope){ .sign_off = undated }, "“today” is no day");
  /* Of a new job, since an edit would go on to the next mark: job/sign-off.h. */
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  g_autoptr (OxScope) scope = ox_scope_new (&(OxScope){ .n_revisions = 1, .revisions = &used });
  ox_job_builder_set_scope (builder, scope);
  g_autoptr (OxJob) job = ox_job_builder_end (builder);
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_assert_cmpuint (findings->len, >=, 1);
  g_assert_nonnull (strstr (((const OxFinding *) findings->pdata[0])->text, "was signed and has changed since"));
}

static void
test_setup (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_job ();
  const struct
  {
    OxSheetSetup draft;
    const char *part;
  } rows[] = {
    { { .paper = (char *) "A9" }, "“A9” is none of the papers A4, A3" },
    { { .schedule_paper = (char *) "a4" }, "“a4” is none of the papers" },
    { { .tiles = (char *) "foolscap" }, "“foolscap” is none" },
    { { .language = (char *) "xx" }, "“xx” is no language" },
    { { .scale = 0.5 }, "1:1 to 1:100000" },
    { { .scale = 1e6 }, "1:1 to 1:100000" },
    { { .scale = NAN }, "1:1 to 1:100000" },
    { { .scale = -100 }, "1:1 to 1:100000" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&rows[i].draft);
      assert_refused (ox_job_with_setup (job, setup, &error), &error, rows[i].part);
    }
  g_autoptr (OxSheetSetup) fine = ox_sheet_setup_new (&(OxSheetSetup){ .paper = (char *) "Arch E1", .scale = 96 });
  g_autoptr (OxJob) set = ox_job_with_setup (job, fine, &error);
  g_assert_no_error (error);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check-scope/scope", test_scope);
  g_test_add_func ("/job/check-scope/setup", test_setup);
  return g_test_run ();
}
