/* Oxturn: tests/file/test-job-write
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-write.h"
#include "file/job-schema.h"
#include "file/xml-parse.h"
#include "job-texts.h"
#include "job/classes.h"

static void
assert_valid (const OxJob *job)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (xmlDoc) doc = ox_job_write_tree (job);
  gboolean valid = ox_job_schema_check ("written", doc, &error);
  g_assert_no_error (error);
  g_assert_true (valid);
}

static void
test_passes_the_schema (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  assert_valid (job);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  assert_valid (empty);
}

/* Whatever people type or paste, the file stays well-formed and says the same. */
static void
test_any_text (void)
{
  static const char *const typed[] = { "<&>\"'", "]]>", "\x01\x02", "a\r\nb", "\xff\xfe", "&#0;", "   ", "床 ✓ 𝕏" };
  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      OxJobBuilder *builder = ox_job_builder_new (NULL);
      ox_job_builder_set_texts (builder, &(OxTexts){ .title = (char *) typed[i], .notes = (char *) typed[i] });
      g_autoptr (OxStation) station = ox_station_new (&(OxStation){ .id = (char *) "S1", .name = (char *) typed[i] });
      ox_job_builder_put_station (builder, station);
      g_autoptr (OxJob) job = ox_job_builder_end (builder);
      assert_valid (job);
      g_autofree char *text = ox_job_file_to_text (job);
      g_autoptr (OxJob) again = job_text_read (text);
      g_assert_cmpstr (again->texts->title, ==, job->texts->title);
      g_assert_cmpstr (again->texts->notes, ==, job->texts->notes);
      g_assert_cmpstr (again->stations[0]->name, ==, job->stations[0]->name);
    }
}

/* What is usual is not written, so that a file stays short: walls, empty texts, an angle of nothing. */
static void
test_short (void)
{
  g_autoptr (OxJob) job = job_text_read (
      "<job xmlns='urn:oxturn:job' version='1.0'><texts><client/></texts>" JOB_MACHINE
      "<room id='R1' name=''><corner x='0' y='0' side='wall'/><corner x='4' y='0'/><corner x='4' y='3'/></room>"
      "<solid id='O1' shape='rectangle' x='1' y='1' width='1' depth='1' angle='0'/></job>");
  g_autofree char *text = ox_job_file_to_text (job);
  g_assert_null (strstr (text, "wall\""));
  g_assert_null (strstr (text, "client"));
  g_assert_null (strstr (text, "name=\"\""));
  g_assert_null (strstr (text, " angle="));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-write/passes-the-schema", test_passes_the_schema);
  g_test_add_func ("/file/job-write/any-text", test_any_text);
  g_test_add_func ("/file/job-write/short", test_short);
  return g_test_run ();
}
