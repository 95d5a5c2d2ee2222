/* Oxturn: tests/file/test-read-traced
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-traced.h"
#include "job-texts.h"
#include "job/edit.h"
#include "support/ox-test.h"

/* "%PDF-1.7\n" in base64, in two parts. */
#define TRACED                                                                                                         \
  "  <traced-plan id=\"T1\" name=\"Ground floor\" kind=\"pdf\" page=\"2\" x=\"5\" y=\"-3.5\" width=\"29.7\" "          \
  "depth=\"21\" angle=\"1.25\" strength=\"0.6\" locked=\"yes\">\n"                                                     \
  "    <part>JVBE</part>\n"                                                                                            \
  "    <part>Ri0x Ljc\nK</part>\n"                                                                                     \
  "  </traced-plan>\n"
#define JOB JOB_START JOB_MACHINE JOB_ROOM TRACED JOB_END

static void
test_read (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) job = NULL;
  gboolean read = ox_job_file_read_data ("f", JOB, strlen (JOB), &job, &error);
  g_assert_no_error (error);
  g_assert_true (read);
  g_assert_cmpuint (job->n_traced, ==, 1);
  const OxTracedPlan *traced = job->traced[0];
  g_assert_cmpstr (traced->name, ==, "Ground floor");
  g_assert_cmpint (traced->kind, ==, OX_TRACED_PDF);
  g_assert_cmpuint (traced->page, ==, 2);
  g_assert_cmpfloat (traced->middle.y, ==, -3.5);
  g_assert_cmpfloat (traced->width, ==, 29.7);
  g_assert_cmpfloat (traced->depth, ==, 21);
  g_assert_cmpfloat (traced->angle_deg, ==, 1.25);
  g_assert_cmpfloat_with_epsilon (traced->strength, 0.6, 1e-12);
  g_assert_true (traced->locked);
  g_assert_false (traced->hidden);
  g_assert_cmpmem (g_bytes_get_data (traced->data, NULL), g_bytes_get_size (traced->data), "%PDF-1.7\n", 9);
}

static const struct
{
  const char *old, *new, *part;
} wrong[] = {
  { "JVBE<", "JV*E<", "something else than base64" },
  { "JVBE<", "<!-- -->&#233;<", "something else than base64" },
  { "kind=\"pdf\"", "kind=\"png\"", "hold pdf; png is needed" },
  { "kind=\"pdf\"", "kind=\"gif\"", "“gif”" },
  { "JVBE<", "AAAA<", "no whole PNG, JPEG, SVG or PDF" },
  { "page=\"2\"", "page=\"2.5\"", "page of a traced plan" },
  { "page=\"2\"", "page=\"0\"", "page" },
  { "strength=\"0.6\"", "strength=\"0\"", "strength" },
  { "width=\"29.7\"", "width=\"NaN\"", "width" },
  { "locked=\"yes\"", "locked=\"maybe\"", "locked" },
  { "id=\"T1\"", "id=\"1T\"", "id “1T”" },
  { "id=\"T1\"", "id=\"R1\"", "already" },
  { "    <part>JVBE</part>\n", "", "no whole PNG, JPEG, SVG or PDF" },
  { "<part>JVBE", "<part><b/>JVBE", "element <b> is not known in <part>" },
};

static void
test_refused (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (OxJob) job = NULL;
      g_autofree char *text = job_text_with (JOB, wrong[i].old, wrong[i].new);
      g_assert_false (ox_job_file_read_data ("f", text, strlen (text), &job, &error));
      g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
      if (!strstr (error->message, wrong[i].part))
        g_error ("“%s” does not say “%s”", error->message, wrong[i].part);
    }
}

/* 11 MB are more than libxml2 takes in one text. What comes back is the same, bit by bit, and so is the file. */
static void
test_large (void)
{
  gsize n = 11 * 1000 * 1000 + 1;
  guint8 *bytes = g_malloc (n);
  guint32 state = 7;
  for (gsize i = 0; i < n; i++)
    bytes[i] = (guint8) ((state = state * 1664525 + 1013904223) >> 24);
  memcpy (bytes, "%PDF-1.7", 8);
  g_autoptr (GBytes) data = g_bytes_new_take (bytes, n);
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&(OxTracedPlan){
      .id = (char *) "T1", .kind = OX_TRACED_PDF, .data = data, .page = 1, .width = 10, .depth = 7, .strength = 1 });
  g_autoptr (OxJob) job = ox_job_with_traced (empty, traced, NULL);
  g_autofree char *text = ox_job_file_to_text (job);
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) back = NULL;
  gboolean read = ox_job_file_read_data ("f", text, strlen (text), &back, &error);
  g_assert_no_error (error);
  g_assert_true (read);
  g_assert_true (g_bytes_equal (back->traced[0]->data, data));
  g_autofree char *again = ox_job_file_to_text (back);
  g_assert_cmpstr (text, ==, again);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/read-traced/read", test_read);
  g_test_add_func ("/file/read-traced/refused", test_refused);
  g_test_add_func ("/file/read-traced/large", test_large);
  return g_test_run ();
}
