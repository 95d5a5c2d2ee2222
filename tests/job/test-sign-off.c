/* Oxturn: tests/job/test-sign-off
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/sign-off.h"
#include <string.h>
#include "job/check.h"
#include "signed.h"

static void
assert_signed (const OxJob *job, const char *revision)
{
  g_assert_true (ox_scope_is_signed (job->scope));
  g_assert_cmpstr (job->scope->sign_off.number, ==, job->texts->number);
  g_assert_cmpstr (job->scope->sign_off.revision, ==, revision);
  g_assert_cmpstr (job->texts->revision, ==, revision);
}

/* Nothing wrong that was not wrong before. */
static void
assert_sound (const OxJob *job)
{
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  for (guint i = 0; i < findings->len; i++)
    g_assert_cmpint (((const OxFinding *) findings->pdata[i])->kind, !=, OX_FINDING_ERROR);
}

/* Whatever is done to a signed drawing: it is revision B then, nobody has signed that, and A keeps who did. */
static void
test_each_edit_raises (void)
{
  g_autoptr (OxJob) job = make_signed_job ();
  assert_signed (job, "A");
  for (guint i = 0; i < G_N_ELEMENTS (signed_edits); i++)
    {
      g_test_message ("%s", signed_edits[i].name);
      g_autoptr (OxJob) edited = signed_edits[i].edit (job);
      g_assert_nonnull (edited);
      g_assert_false (ox_scope_is_signed (edited->scope));
      g_assert_cmpstr (edited->texts->revision, ==, "B");
      g_assert_cmpstr (edited->texts->date, ==, "");
      g_assert_cmpstr (edited->texts->status, ==, "for approval");
      g_assert_cmpuint (edited->scope->n_revisions, ==, 2);
      const OxRevision *rows = edited->scope->revisions;
      g_assert_cmpstr (rows[0].mark, ==, "A");
      g_assert_cmpstr (rows[0].accepted_by, ==, "P. Hollow");
      g_assert_cmpstr (rows[0].accepted_on, ==, "2026-08-05");
      g_assert_cmpstr (rows[1].mark, ==, "B");
      g_assert_true (rows[1].after_sign_off);
      g_assert_cmpstr (ox_revision_text (&rows[1]), ==, "changed after sign-off");
      assert_sound (edited);
      /* One more edit of a drawing that nobody signed raises nothing. */
      g_autoptr (OxJob) further = edit_side (edited);
      g_assert_cmpstr (further->texts->revision, ==, "B");
      g_assert_cmpuint (further->scope->n_revisions, ==, 2);
    }
}

static void
test_harmless (void)
{
  g_autoptr (OxJob) job = make_signed_job ();
  for (guint i = 0; i < G_N_ELEMENTS (harmless_edits); i++)
    {
      g_test_message ("%s", harmless_edits[i].name);
      g_autoptr (OxJob) edited = harmless_edits[i].edit (job);
      g_assert_true (edited != job);
      assert_signed (edited, "A");
      g_assert_cmpuint (edited->scope->n_revisions, ==, 0);
      g_assert_cmpstr (edited->texts->date, ==, "2026-08-01");
    }
}

/* A name or day that was written down wrongly can be put right. */
static void
test_corrected (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_signed_job ();
  g_autoptr (OxJob) put_right = ox_job_signed (job, "P. Hollow-Reed", "2026-08-06", &error);
  g_assert_no_error (error);
  assert_signed (put_right, "A");
  g_assert_cmpstr (put_right->scope->sign_off.name, ==, "P. Hollow-Reed");
  g_assert_null (ox_job_signed (job, "P. Hollow", "2026-02-30", &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
}

/* The mark and the date that come with the change stay. */
static void
test_typed_mark (void)
{
  g_autoptr (OxJob) job = make_signed_job ();
  OxTexts draft = *job->texts;
  draft.revision = (char *) "C";
  draft.date = (char *) "2026-09-01";
  g_autoptr (OxJob) edited = ox_job_with_texts (job, &draft, NULL);
  g_assert_cmpstr (edited->texts->revision, ==, "C");
  g_assert_cmpstr (edited->texts->date, ==, "2026-09-01");
  g_assert_false (ox_scope_is_signed (edited->scope));
  g_assert_cmpstr (edited->scope->revisions[1].mark, ==, "C");
  assert_sound (edited);
}

/* Signed A, changed to B, marked A again by hand: the mark is taken. Nor does the line of A go, or its signature. */
static void
test_no_way_back (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = make_signed_job ();
  g_autoptr (OxJob) changed = edit_side (job);
  OxTexts texts = *changed->texts;
  texts.revision = (char *) "A";
  g_autoptr (OxJob) back = ox_job_with_texts (changed, &texts, NULL);
  g_assert_cmpstr (back->texts->revision, ==, "C");
  assert_sound (back);
  OxScope draft = *changed->scope;
  draft.n_revisions = 0;
  g_autoptr (OxScope) bare = ox_scope_new (&draft);
  g_autoptr (OxJob) emptied = ox_job_with_scope (changed, bare, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (emptied->scope->n_revisions, ==, 1);
  g_assert_cmpstr (emptied->scope->revisions[0].accepted_by, ==, "P. Hollow");
  draft = *changed->scope;
  g_autofree OxRevision *rows = g_memdup2 (draft.revisions, 2 * sizeof *rows);
  rows[0].accepted_by = (char *) "";
  draft.revisions = rows;
  g_autoptr (OxScope) forged = ox_scope_new (&draft);
  g_autoptr (OxJob) kept = ox_job_with_scope (changed, forged, &error);
  g_assert_cmpstr (kept->scope->revisions[0].accepted_by, ==, "P. Hollow");
}

/* Sign, change, sign, change: each revision keeps its own signature, in order. */
static void
test_again_and_again (void)
{
  static const char *const marks[] = { "A", "B", "C", "D", "E", "F", "G", "H", "J", "K" };
  g_autoptr (OxJob) job = make_signed_job ();
  for (guint i = 1; i < G_N_ELEMENTS (marks); i++)
    {
      g_autoptr (OxJob) edited = ox_job_moved (job, (const char *const[]){ "O1", NULL }, (OxPoint){ 0.1, 0 }, NULL);
      g_assert_cmpstr (edited->texts->revision, ==, marks[i]);
      g_autofree char *name = g_strdup_printf ("Client %u", i);
      OxJob *next = ox_job_signed (edited, name, "", NULL);
      ox_job_unref (job);
      job = next;
      assert_signed (job, marks[i]);
    }
  g_assert_cmpuint (job->scope->n_revisions, ==, G_N_ELEMENTS (marks));
  for (guint i = 1; i + 1 < G_N_ELEMENTS (marks); i++)
    {
      g_autofree char *name = g_strdup_printf ("Client %u", i);
      g_assert_cmpstr (job->scope->revisions[i].mark, ==, marks[i]);
      g_assert_cmpstr (job->scope->revisions[i].accepted_by, ==, name);
    }
  g_assert_cmpstr (job->scope->revisions[9].accepted_by, ==, "");
}

/* A date of the title block that is no day does not get into the revisions, where none is allowed, so that the job can be edited and read. */
static void
test_date_in_words (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) bare = make_job ();
  g_autoptr (OxJob) titled
      = ox_job_with_texts (bare, &(OxTexts){ .revision = (char *) "A", .date = (char *) "August" }, &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) job = ox_job_signed (titled, "P. Hollow", "", &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) edited = edit_side (job);
  g_assert_nonnull (edited);
  g_assert_cmpstr (edited->scope->revisions[0].mark, ==, "A");
  g_assert_cmpstr (edited->scope->revisions[0].date, ==, "");
  assert_sound (edited);
}

/* With all the revisions that a job may have, a change that would raise another is refused, whatever it is of. */
static void
test_revisions_most (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) bare = make_job ();
  g_autoptr (OxJob) titled = ox_job_with_texts (bare, &(OxTexts){ .revision = (char *) "last" }, NULL);
  g_autoptr (GStringChunk) marks = g_string_chunk_new (4096);
  OxRevision rows[OX_REVISIONS_MOST] = { { .mark = NULL } };
  for (guint i = 0; i < OX_REVISIONS_MOST; i++)
    {
      g_autofree char *mark = i + 1 < OX_REVISIONS_MOST ? g_strdup_printf ("%u", i + 1) : g_strdup ("last");
      rows[i].mark = g_string_chunk_insert (marks, mark);
    }
  OxScope draft = *titled->scope;
  draft.n_revisions = OX_REVISIONS_MOST;
  draft.revisions = rows;
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  g_autoptr (OxJob) full = ox_job_with_scope (titled, scope, &error);
  g_assert_no_error (error);
  g_autoptr (OxJob) job = ox_job_signed (full, "P. Hollow", "", &error);
  g_assert_no_error (error);
  OxTexts texts = *job->texts;
  texts.notes = (char *) "The gate stays open.";
  g_assert_null (ox_job_with_texts (job, &texts, &error));
  g_assert_error (error, OX_JOB_ERROR, OX_JOB_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "501 revisions; 500 are allowed"));
  g_assert_null (edit_side (job));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/sign-off/each-edit-raises", test_each_edit_raises);
  g_test_add_func ("/job/sign-off/harmless", test_harmless);
  g_test_add_func ("/job/sign-off/corrected", test_corrected);
  g_test_add_func ("/job/sign-off/typed-mark", test_typed_mark);
  g_test_add_func ("/job/sign-off/no-way-back", test_no_way_back);
  g_test_add_func ("/job/sign-off/again-and-again", test_again_and_again);
  g_test_add_func ("/job/sign-off/date-in-words", test_date_in_words);
  g_test_add_func ("/job/sign-off/revisions-most", test_revisions_most);
  return g_test_run ();
}
