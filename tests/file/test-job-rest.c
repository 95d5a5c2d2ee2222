/* Oxturn: tests/file/test-job-rest
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-known.h"
#include "file/xml-parse.h"
#include "job-texts.h"
#include "job/edit.h"
#include "support/ox-test.h"

/* Puts @new for @old into a job of version 1.3, saves it, and returns what was saved. */
static char *
saved_with (const char *old, const char *new)
{
  g_autofree char *newer = job_text_with (JOB_WHOLE, "\"1.2\" units", "\"1.3\" units");
  g_autofree char *text = job_text_with (newer, old, new);
  g_autoptr (OxJob) job = job_text_read (text);
  return ox_job_file_to_text (job);
}

static void
test_survives (void)
{
  static const struct
  {
    const char *old;
    const char *new;
    const char *kept;
  } rows[] = {
    { "north=", "mood=\"good\" north=", "north=\"90\" mood=\"good\"" },
    { "<texts>", "<texts lang=\"en\">", "<texts lang=\"en\">" },
    { "<title>", "<subtitle>deep <b>inside</b></subtitle><title>", "<subtitle>deep <b>inside</b></subtitle>" },
    { "<pace ", "<pace crawl=\"2\" ", "start-s=\"2\" crawl=\"2\"/>" },
    { "<wear ", "<wear maker=\"x\" ", "run-h=\"3.5\" maker=\"x\"/>" },
    { "<corner x=\"12\" y=\"8\"", "<corner z=\"1\" x=\"12\" y=\"8\"",
      "<corner x=\"12\" y=\"8\" side=\"open\" z=\"1\"/>" },
    { "<point x=\"12\"", "<point z=\"1\" x=\"12\"", "<point x=\"12\" y=\"4\" z=\"1\"/>" },
    { "<station id=\"S1\"", "<station floor=\"2\" id=\"S1\"", "length=\"20\" floor=\"2\"/>" },
    { "<doorway", "<window id=\"W1\"><glass/></window><doorway",
      "<window id=\"W1\">\n    <glass/>\n  </window>\n</job>" },
    { "<excluded ", "<excluded xmlns:v=\"urn:v\" v:why=\"later\" ",
      "<excluded xmlns:v=\"urn:v\" id=\"X1\" name=\"By others\" v:why=\"later\">" },
    { "<doorway", "<v:x xmlns:v=\"urn:v\" v:a=\"1\"/><doorway", "<v:x xmlns:v=\"urn:v\" v:a=\"1\"/>\n</job>" },
    { "<doorway", "<y xmlns=\"urn:y\"/><doorway", "<y xmlns=\"urn:y\"/>\n</job>" },
    { "<doorway", "<n xmlns=\"\"/><doorway", "<n xmlns=\"\"/>\n</job>" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = saved_with (rows[i].old, rows[i].new);
      if (!strstr (text, rows[i].kept))
        g_error ("row %u: “%s” is not in\n%s", i, rows[i].kept, text);
      g_autoptr (OxJob) again = job_text_read (text);
      g_autofree char *same = ox_job_file_to_text (again);
      g_assert_cmpstr (text, ==, same);
    }
}

/* What stands at its default is written where something unknown belongs to it; each new element keeps what belongs to it. */
static void
test_survives_at_default (void)
{
  static const char *const rows[] = {
    "<calendar start=\"07:00\" shift-h=\"8\" break-min=\"45\" setup-min=\"60\" cleanup-min=\"30\" refill-min=\"3\" "
    "drum-change-min=\"10\" wear-check-min=\"20\" machines=\"1\" days=\"mon tue wed thu fri\" mood=\"good\"/>",
    "<costs mood=\"good\"/>", "<outfit mood=\"good\"/>", "<sheets mood=\"good\"/>", "<record mood=\"good\"/>",
    "<costs><bonus mood=\"good\"/></costs>", "<record><visit mood=\"good\"/></record>",
    "<record><day date=\"2026-09-14\" mood=\"good\"/></record>",
    "<patch id=\"P1\" speed=\"6\"><trial left-mm=\"0.4\" right-mm=\"0.6\" mood=\"good\"/></patch>",
    "<record><strip date=\"2026-09-14\" x1=\"1\" y1=\"1\" x2=\"5\" y2=\"1\" width=\"0.21\" mood=\"good\"/></record>",
    "<record><edge date=\"2026-09-14\" wkt=\"POLYGON ((0 0, 1 0, 0 1, 0 0))\" mood=\"good\"/></record>",
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *plain = g_strconcat (JOB_START JOB_MACHINE, rows[i], JOB_END, NULL);
      g_autofree char *newer = job_text_with (plain, "\"1.2\" units", "\"1.3\" units");
      g_autoptr (OxJob) job = job_text_read (newer);
      g_autofree char *text = ox_job_file_to_text (job);
      if (!strstr (text, "mood=\"good\""))
        g_error ("row %u is lost in\n%s", i, text);
      g_autoptr (OxJob) again = job_text_read (text);
      g_autofree char *same = ox_job_file_to_text (again);
      g_assert_cmpstr (text, ==, same);
    }
}

/* Days that stand in another order than a job has them in keep what belongs to each. */
static void
test_days_in_order (void)
{
  g_autofree char *newer
      = job_text_with (JOB_START JOB_MACHINE "<record><day date=\"2026-09-15\" mood=\"late\"/><day date=\"2026-09-14\" "
                                             "machine=\"10\" mood=\"tenth\"/><day date=\"2026-09-14\" machine=\"2\" "
                                             "mood=\"second\"/><day date=\"2026-09-14\"/></record>" JOB_END,
                       "\"1.2\" units", "\"1.3\" units");
  g_autoptr (OxJob) job = job_text_read (newer);
  g_autofree char *text = ox_job_file_to_text (job);
  g_assert_nonnull (strstr (text, "<day date=\"2026-09-14\"/>\n    <day date=\"2026-09-14\" machine=\"2\" mood=\"second\"/>\n"
                                  "    <day date=\"2026-09-14\" machine=\"10\" mood=\"tenth\"/>\n"
                                  "    <day date=\"2026-09-15\" mood=\"late\"/>"));
}

static void
test_known_job_has_none (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  g_assert_null (job->extra);
  g_assert_null (job->rooms[0]->extra);
  g_assert_null (job->stations[0]->extra);
}

/* Edits keep what belongs to an item; what belonged to a corner goes when the corners are others. */
static void
test_survives_edits (void)
{
  g_autofree char *a = job_text_with (JOB_WHOLE, "\"1.2\" units", "\"1.3\" units");
  g_autofree char *b = job_text_with (a, "<corner x=\"3\" y=\"5\"", "<corner z=\"7\" x=\"3\" y=\"5\"");
  g_autofree char *c = job_text_with (b, "<masked ", "<masked film=\"blue\" ");
  g_autoptr (OxJob) job = job_text_read (c);
  const char *const ids[] = { "O3", NULL };
  g_autoptr (OxJob) moved = ox_job_moved (job, ids, (OxPoint){ 1, 0 }, NULL);
  g_autofree char *text = ox_job_file_to_text (moved);
  g_assert_nonnull (strstr (text, "<corner x=\"4\" y=\"5\" z=\"7\"/>"));
  g_assert_nonnull (strstr (text, "film=\"blue\""));
  g_autoptr (OxRing) square = ox_test_ring ("POLYGON ((2 5, 3 5, 3 6, 2 6, 2 5))");
  OxObstacle fields = *job->obstacles[2];
  fields.shape.ring = square;
  g_autoptr (OxObstacle) changed = ox_obstacle_new (&fields);
  g_autoptr (OxJob) other = ox_job_with_obstacle (job, changed, NULL);
  g_autofree char *after = ox_job_file_to_text (other);
  g_assert_null (strstr (after, "z=\"7\""));
  g_assert_nonnull (strstr (after, "film=\"blue\""));
}

/* 20,000 corners with something unknown each are put back in one walk. */
static void
test_many (void)
{
  g_autoptr (GString) text = g_string_new (JOB_START JOB_MACHINE "<joint id=\"J1\">");
  for (guint i = 0; i < 20000; i++)
    g_string_append_printf (text, "<point x=\"%u\" y=\"0\" xmlns:v=\"urn:v\" v:n=\"%u\"/>", i % 9000, i);
  g_string_append (text, "</joint></job>");
  g_autoptr (OxJob) job = job_text_read (text->str);
  g_autofree char *saved = ox_job_file_to_text (job);
  g_assert_nonnull (strstr (saved, "x=\"1999\" y=\"0\" v:n=\"19999\"/>"));
}

static void
test_strip (void)
{
  g_autofree char *text = job_text_with (JOB_WHOLE, "<rates", "<lighting/><v:x xmlns:v=\"urn:v\"/><rates labour=\"2\"");
  g_autoptr (xmlDoc) doc = ox_xml_parse ("floor.oxturn", text, strlen (text), NULL);
  ox_known_strip (xmlDocGetRootElement (doc));
  g_assert_true (ox_known_check ("floor.oxturn", xmlDocGetRootElement (doc), FALSE, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-rest/survives", test_survives);
  g_test_add_func ("/file/job-rest/survives-at-default", test_survives_at_default);
  g_test_add_func ("/file/job-rest/days-in-order", test_days_in_order);
  g_test_add_func ("/file/job-rest/none", test_known_job_has_none);
  g_test_add_func ("/file/job-rest/survives-edits", test_survives_edits);
  g_test_add_func ("/file/job-rest/many", test_many);
  g_test_add_func ("/file/job-rest/strip", test_strip);
  return g_test_run ();
}
