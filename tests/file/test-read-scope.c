/* Oxturn: tests/file/test-read-scope
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-scope.h"
#include "job-texts.h"

/* What each element becomes. */
static void
test_values (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  const OxScope *scope = job->scope;
  g_assert_cmpuint (scope->n_lines[OX_SCOPE_INCLUDED], ==, 2);
  g_assert_cmpstr (scope->lines[OX_SCOPE_INCLUDED][0].key, ==, "edges");
  g_assert_cmpstr (scope->lines[OX_SCOPE_INCLUDED][1].text, ==, "Two test patches.");
  g_assert_cmpuint (scope->n_lines[OX_SCOPE_EXCLUDED], ==, 1);
  g_assert_cmpuint (scope->n_lines[OX_SCOPE_ASSUMED], ==, 1);
  g_assert_cmpuint (scope->n_revisions, ==, 2);
  g_assert_cmpstr (scope->revisions[0].author, ==, "O. Marsh");
  g_assert_cmpstr (scope->revisions[0].accepted_by, ==, "P. Hollow");
  g_assert_cmpstr (scope->revisions[0].accepted_on, ==, "2026-08-05");
  g_assert_true (scope->revisions[1].after_sign_off);
  g_assert_cmpstr (scope->sign_off.date, ==, "2026-08-20");
  g_assert_cmpstr (job->setup->language, ==, "es");
  g_assert_cmpstr (job->setup->schedule_paper, ==, "A4");
  g_assert_cmpstr (job->setup->tiles, ==, "Letter");
  g_assert_cmpfloat (job->setup->scale, ==, 96);
  g_assert_cmpint (job->setup->orientation, ==, OX_ORIENTATION_LANDSCAPE);
}

/* Files of the versions before have neither: lines of ours and automatic sheets stand for them. A scope without lines
 * has none. */
static void
test_defaults (void)
{
  g_autoptr (OxScope) scope = ox_scope_default ();
  g_autofree char *text = job_text_with (JOB_START JOB_MACHINE JOB_ROOM JOB_END, "\"1.2\" units", "\"1.1\" units");
  g_autoptr (OxJob) job = job_text_read (text);
  g_assert_true (ox_scope_equal (job->scope, scope));
  g_assert_cmpstr (job->setup->paper, ==, "");
  g_assert_cmpfloat (job->setup->scale, ==, 0);
  g_autoptr (OxJob) bare = job_text_read (JOB_START JOB_MACHINE "<scope/>" JOB_ROOM JOB_END);
  g_assert_cmpuint (bare->scope->n_lines[OX_SCOPE_INCLUDED], ==, 0);
  g_autofree char *written = ox_job_file_to_text (bare);
  g_autoptr (OxJob) again = job_text_read (written);
  g_assert_true (ox_scope_equal (again->scope, bare->scope));
}

static const JobWrong wrong_rows[] = {
  { "key=\"edges\"", "key=\"corners\"", "<inclusion key=\"corners",
    "key “corners” of inclusion is none that is known" },
  { "key=\"edges\"", "", "<inclusion ", "key “” of inclusion" },
  { "key=\"sound\"", "key=\"edges\"", "<assumption", "key “edges” of assumption" },
  { " mark=\"B\"", "", "<revision after", "revision of scope has no mark; one is needed" },
  { " mark=\"B\"", " mark=\"A\"", "<revision mark=\"A\" after", "mark “A” is that of another revision" },
  { "2026-08-01", "2026-08-32", "<revision mark=\"A\"", "date “2026-08-32” of revision" },
  { "after-sign-off=\"true\"", "after-sign-off=\"yes\"", "<revision mark=\"B\"", "after-sign-off “yes” of" },
  { "name=\"P. Hollow\" date", "name=\"\" date", "<sign-off", "name of sign-off is empty" },
  { "name=\"P. Hollow\" date", "date", "<sign-off", "sign-off of scope has no name; one is needed" },
  { "2026-08-20", "soon", "<sign-off", "date “soon” of sign-off" },
  { "language=\"es\"", "language=\"tlh\"", "<sheets", "language “tlh” of sheets" },
  { "paper=\"A3\"", "paper=\"A9\"", "<sheets", "paper “A9” of" },
  { "tiles=\"Letter\"", "tiles=\"\"", "<sheets", "tiles “” of" },
  { "scale=\"96\"", "scale=\"0.5\"", "<sheets", "scale “0.5” of" },
  { "scale=\"96\"", "scale=\"NaN\"", "<sheets", "scale “NaN” of" },
  { "orientation=\"landscape\"", "orientation=\"left\"", "<sheets", "orientation “left” of" },
};

static void
test_wrong (void)
{
  job_text_assert_wrong (wrong_rows, G_N_ELEMENTS (wrong_rows));
}

/* What only the whole job can tell, with the line of the machine as for all that is no item. */
static void
test_sign_off_of_another (void)
{
  g_autofree char *other = job_text_with (JOB_WHOLE, "<number>OX-7</number>", "<number>OX-8</number>");
  job_text_assert_refused (other, strlen (other), 0, "The sign-off is for drawing “OX-7” revision “B”");
  g_autofree char *unsigned_text = job_text_with (JOB_WHOLE, "<revision>B</revision>", "<revision>A</revision>");
  g_autofree char *back
      = job_text_with (unsigned_text, "number=\"OX-7\" revision=\"B\"", "number=\"OX-7\" revision=\"A\"");
  job_text_assert_refused (back, strlen (back), 0, "Revision “A” was signed and has changed since");
}

/* More than anybody has is no job but an attack. */
static void
test_too_many (void)
{
  g_autoptr (GString) lines = g_string_new (JOB_START JOB_MACHINE "<scope>");
  for (guint i = 0; i <= OX_SCOPE_LINES_MOST; i++)
    g_string_append (lines, "<exclusion text='x'/>");
  g_string_append (lines, "</scope>" JOB_END);
  job_text_assert_refused (lines->str, lines->len, 0, "more than 200 <exclusion>");
  g_autoptr (GString) marks = g_string_new (JOB_START JOB_MACHINE "<scope>");
  for (guint i = 0; i <= OX_REVISIONS_MOST; i++)
    g_string_append_printf (marks, "<revision mark='%u'/>", i);
  g_string_append (marks, "</scope>" JOB_END);
  job_text_assert_refused (marks->str, marks->len, 0, "more than 500 <revision>");
  g_autofree char *word = g_strnfill (OX_SCOPE_LINE_BYTES_MOST + 1, 'x');
  g_autofree char *wordy = job_text_with (JOB_WHOLE, "The loading bay.", word);
  job_text_assert_refused (wordy, strlen (wordy), 0, "text of exclusion has more than 2000 bytes");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/read-scope/values", test_values);
  g_test_add_func ("/file/read-scope/defaults", test_defaults);
  g_test_add_func ("/file/read-scope/wrong", test_wrong);
  g_test_add_func ("/file/read-scope/sign-off-of-another", test_sign_off_of_another);
  g_test_add_func ("/file/read-scope/too-many", test_too_many);
  return g_test_run ();
}
