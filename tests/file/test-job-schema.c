/* Oxturn: tests/file/test-job-schema
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The schema by itself, as another program would use it: what the reader's own rules refuse it refuses, too.
 */
#include "file/job-schema.h"
#include "file/xml-parse.h"
#include "job-texts.h"

static gboolean
is_valid (const char *text, GError **error)
{
  g_autoptr (xmlDoc) doc = ox_xml_parse ("floor.oxturn", text, strlen (text), NULL);
  return ox_job_schema_check ("floor.oxturn", doc, error);
}

static void
test_valid (void)
{
  static const struct
  {
    const char *old;
    const char *new;
  } rows[] = {
    { "<job", "<job" },
    { "\"1.2\" units", "\"1.0\" units" },
    { "along-side=\"2\"", "along-side=\"2\" coats=\"3\" coat-turn=\"45\"" },
    { "\"1.2\" units", "\"1.1\" units" },
    { "\"1.2\" units", "\"1.7\" units" },
    { "hour=\"4\"", "hour=\"4\" edge-m-per-hour=\"12\"" },
    { " units=\"metres\"", "" },
    { "  <rates edge-m2-per-hour=\"4\"/>\n", "" },
    { "<rates", "<v:x xmlns:v=\"urn:v\" a=\"b\">text<c/></v:x><rates" },
    { "<room ", "<room xmlns:v=\"urn:v\" v:a=\"1\" " },
    { "along-side=\"2\"", "angle=\"-12.5\"" },
    { "  <record>", "  <record xmlns:v=\"urn:v\" v:a=\"1\"><v:b/>" },
    { " meter-end=\"1211.25\"", "" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = job_text_with (JOB_WHOLE, rows[i].old, rows[i].new);
      gboolean valid = is_valid (text, &error);
      g_assert_no_error (error);
      g_assert_true (valid);
    }
}

static void
test_invalid (void)
{
  static const struct
  {
    const char *old;
    const char *new;
  } rows[] = {
    { "\"1.2\" units", "\"2.0\" units" },
    { "\"1.2\" units", "\"1.01\" units" },
    { "<rates", "<lighting/><rates" },
    { "<rates", "<n xmlns=\"\"/><rates" },
    { "<room ", "<room colour=\"red\" " },
    { "along-side=\"2\"", "along-side=\"2\" angle=\"3\"" },
    { "along-side=\"2\"", "along-side=\"0\"" },
    { "x=\"12\" y=\"0\"", "x=\"NaN\" y=\"0\"" },
    { "x=\"12\" y=\"0\"", "x=\"INF\" y=\"0\"" },
    { "x=\"12\" y=\"0\"", "x=\"10000.0001\" y=\"0\"" },
    { "side=\"open\"", "side=\"open\" keep-back=\"1\"" },
    { " keep-back=\"0.6\"", "" },
    { "width=\"0.5\"", "width=\"0\"" },
    { "shape=\"circle\"", "shape=\"rectangle\"" },
    { "id=\"O1\"", "id=\"1O\"" },
    { "phases=\"1\"", "phases=\"2\"" },
    { "kind=\"supply\"", "kind=\"tap\"" },
    { "<title>", "<heading/><title>" },
    { "start=\"06:30\"", "start=\"24:30\"" },
    { "mon tue sat", "mon moonday" },
    { "per=\"fixed\"", "per=\"day\"" },
    { "2026-09-01", "1 Sept" },
    { "speed=\"3.5\" coats=\"2\"", "speed=\"3.5\" coats=\"5\"" },
    { "<day date=\"2026-09-15\"/>", "<day/>" },
    { "meter-end=\"1211.25\"", "meter-end=\"INF\"" },
    { "x2=\"9.75\"", "x2=\"NaN\"" },
    { "coat=\"2\"", "coat=\"5\"" },
    { " wkt=", " floor=" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = job_text_with (JOB_WHOLE, rows[i].old, rows[i].new);
      if (is_valid (text, &error))
        g_error ("row %u: %s is taken", i, rows[i].new);
      g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
      g_assert_true (g_str_has_prefix (error->message, "floor.oxturn:"));
    }
}

/* A job with three long lists; point number @point, station number @station and strip number @strip are wrong, where
 * there is one of that number. */
static GString *
long_job (guint n, guint point, guint station, guint strip)
{
  GString *text = g_string_new (JOB_START JOB_MACHINE "<joint id='J1'>");
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "<point x='%u' y='%s'/>", i, i == point ? "no" : "1");
  g_string_append (text, "</joint>");
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "<station id='S%u' kind='%s' x='1' y='1'/>", i, i == station ? "tap" : "supply");
  g_string_append (text, "<record>");
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "<strip date='%s' x1='0' y1='%u' x2='9' y2='%u' width='0.2'/>",
                            i == strip ? "today" : "2026-09-14", i, i);
  g_string_append (text, "</record></job>");
  return text;
}

/* Longer than one bite: a fault in any part of a list is found. */
static void
test_long_lists (void)
{
  const guint n = 1000;
  for (guint wrong = 0; wrong < n; wrong += 111)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GString) points = long_job (n, wrong, n, n);
      g_assert_false (is_valid (points->str, &error));
      g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
      g_autoptr (GString) stations = long_job (n, n, wrong, n);
      g_assert_false (is_valid (stations->str, NULL));
      g_autoptr (GString) strips = long_job (n, n, n, wrong);
      g_assert_false (is_valid (strips->str, NULL));
    }
}

static void
test_put_together_again (void)
{
  const guint n = 1000;
  g_autoptr (GString) text = long_job (n, n, n, n);
  g_autoptr (xmlDoc) doc = ox_xml_parse ("floor.oxturn", text->str, text->len, NULL);
  g_assert_true (ox_job_schema_check ("floor.oxturn", doc, NULL));
  xmlNode *root = xmlDocGetRootElement (doc);
  g_assert_cmpuint (xmlChildElementCount (root), ==, 3 + 2 + n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-schema/valid", test_valid);
  g_test_add_func ("/file/job-schema/invalid", test_invalid);
  g_test_add_func ("/file/job-schema/long-lists", test_long_lists);
  g_test_add_func ("/file/job-schema/put-together-again", test_put_together_again);
  return g_test_run ();
}
