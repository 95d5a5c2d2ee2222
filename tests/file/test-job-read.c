/* Oxturn: tests/file/test-job-read
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-read.h"
#include "job-texts.h"
#include "support/ox-test.h"

/* One place of a sound job changed, and what is to be said about it: the line of @at and the words of @part. */
static const struct
{
  const char *old;
  const char *new;
  const char *at;
  const char *part;
} wrong_rows[] = {
  { "urn:oxturn:job", "urn:other:job", "<job",
    "<job> of namespace “urn:other:job” stands here; <job> of “urn:oxturn:job”" },
  { " xmlns=\"urn:oxturn:job\"", "", "<job", "<job> of namespace “” stands here" },
  { " version=\"1.2\" units", " units", "<job", "job has no version; one is needed" },
  { "\"1.2\" units", "\"one\" units", "<job", "version “one” of the job: two numbers such as 1.0" },
  { "\"1.2\" units", "\"1\" units", "<job", "version “1” of the job" },
  { "\"1.2\" units", "\"1.0.1\" units", "<job", "version “1.0.1” of the job" },
  { "\"1.2\" units", "\"0.9\" units", "<job", "version “0.9” of the job" },
  { "\"metres\"", "\"yards\"", "<job", "units “yards” of job: one of metres, millimetres, feet" },
  { "north=\"90\"", "north=\"up\"", "<job", "north “up” of job: a number from -360 to 360" },
  { "north=\"90\"", "north=\"361\"", "<job", "north “361” of job" },
  { "<machine", "<engine", "engine", "no well-formed XML" },
  { "blast-width=\"0.21\"", "blast-width=\"0\"", "<body",
    "blast-width “0” of body of machine: a number of more than 0 and at most 5" },
  { "blast-width=\"0.21\"", "blast-width=\"NaN\"", "<body", "blast-width “NaN”" },
  { "blast-width=\"0.21\"", "blast-width=\"inf\"", "<body", "blast-width “inf”" },
  { "blast-width=\"0.21\"", "blast-width=\"1e300\"", "<body", "blast-width “1e300”" },
  { "blast-width=\"0.21\"", "blast-width=\"0x1p-2\"", "<body", "blast-width “0x1p-2”" },
  { "blast-width=\"0.21\"", "blast-width=\"0,21\"", "<body", "blast-width “0,21”" },
  { "blast-width=\"0.21\"", "blast-width=\"\"", "<body", "blast-width “”" },
  { "blast-width=\"0.21\" ", "", "<body", "body of machine has no blast-width" },
  { "min-overlap=\"0.02\"", "min-overlap=\"0.21\"", "<machine", "less than the blast width of 0.21 m" },
  { "left=\"0.19\"", "left=\"0.1\"", "<machine", "Left of the machine is 0.1 m; at least 0.105 m" },
  { "phases=\"1\"", "phases=\"2\"", "<supply", "phases “2” of supply of machine: one of 1, 3" },
  { "interval-h=\"120\"", "interval-h=\"0\"", "<wear", "interval-h “0” of wear of machine" },
  { "hour=\"4\"", "hour=\"4\" edge-m-per-hour=\"0\"", "<rates", "edge-m-per-hour “0” of rates" },
  { "hour=\"4\"", "hour=\"0\"", "<rates", "edge-m2-per-hour “0” of rates" },
  { "id=\"R1\" ", "", "<room", "room has no id" },
  { "id=\"R1\"", "id=\"1R\"", "<room", "id “1R” of room: letters, digits" },
  { "along-side=\"2\"", "along-side=\"5\"", "<room", "along-side “5” of room R1: a number from 1 to 4" },
  { "along-side=\"2\"", "along-side=\"1.5\"", "<room", "number of a side" },
  { "along-side=\"2\"", "along-side=\"2\" angle=\"3\"", "<room", "angle of room R1" },
  { "along-side=\"2\"", "angle=\"north\"", "<room", "angle “north” of room R1" },
  { "<corner x=\"12\" y=\"0\"", "<corner x=\"NaN\" y=\"0\"", "\"NaN\"",
    "x “NaN” of corner of room R1: a number from -10000 to 10000" },
  { "<corner x=\"12\" y=\"0\"", "<corner x=\"inf\" y=\"0\"", "\"inf\"", "x “inf” of corner of room R1" },
  { "<corner x=\"12\" y=\"0\"", "<corner x=\"1e300\" y=\"0\"", "1e300", "x “1e300” of corner of room R1" },
  { "<corner x=\"12\" y=\"0\"", "<corner x=\"10000.1\" y=\"0\"", "10000.1", "x “10000.1” of corner of room R1" },
  { "<corner x=\"12\" y=\"0\"", "<corner y=\"0\"", "<corner y", "corner of room R1 has no x" },
  { "side=\"drop\"", "side=\"cliff\"", "cliff", "side “cliff” of corner of room R1: one of wall, open, drop" },
  { " keep-back=\"0.6\"", "", "side=\"drop\"", "corner of room R1 has no keep-back" },
  { "keep-back=\"0.6\"", "keep-back=\"-0.6\"", "\"-0.6\"",
    "keep-back “-0.6” of corner of room R1: a number from 0 to 100" },
  { "side=\"open\"", "side=\"open\" keep-back=\"1\"", "side=\"open\"", "keep-back of corner of room R1: only" },
  { "    <corner x=\"12\" y=\"8\" side=\"open\"/>\n    <corner x=\"0\" y=\"8\"/>\n", "", "<room", "has 2 corners" },
  { "<corner x=\"0\" y=\"8\"/>", "<corner x=\"0\" y=\"0\"/>", "<room", "last corner" },
  { "<corner x=\"0\" y=\"8\"/>", "<corner x=\"6\" y=\"-5\"/>", "<room", "outline of R1 meets itself" },
  { "width=\"0.5\"", "width=\"0\"", "<solid", "width “0” of solid O1: a number of more than 0 and at most 10000" },
  { "width=\"0.5\"", "width=\"0.00004\"", "<solid", "width “0.00004” of solid O1" },
  { "width=\"0.5\"", "width=\"-1\"", "<solid", "width “-1” of solid O1" },
  { "radius=\"0.15\"", "radius=\"0\"", "<pit", "radius “0” of pit O2" },
  { "radius=\"0.15\" ", "", "<pit", "pit O2 has no radius" },
  { "shape=\"circle\"", "shape=\"blob\"", "<pit", "shape “blob” of pit O2: one of rectangle, circle, polygon" },
  { "shape=\"circle\" ", "", "<pit", "pit O2 has no shape" },
  { "<corner x=\"3\" y=\"6.125\"/>", "", "<masked", "masked has 2 corners" },
  { "x2=\"-0.1\" y2=\"4\"", "x2=\"-0.1\" y2=\"2\"", "<doorway", "Doorway D1 has no width" },
  { "depth=\"0.2\"", "depth=\"-1\"", "<doorway", "depth “-1” of doorway D1" },
  { "    <point x=\"12\" y=\"4\"/>\n", "", "<joint", "joint J1 has 1 points" },
  { "kind=\"supply\"", "kind=\"tap\"", "tap", "kind “tap” of station S2: one of collector, supply" },
  { "length=\"20\"", "length=\"9999\"", "9999", "length “9999” of station S1" },
  { "  <solid",
    "  <room id=\"R2\"><corner x=\"11\" y=\"1\"/><corner x=\"15\" y=\"1\"/><corner x=\"11\" y=\"4\"/></room>\n  <solid",
    "\"R2\"", "Rooms R1 and R2 overlap" },
  /* What only the schema refuses. */
  { "y=\"3\" radius=\"0.15\"", "y=\"3\" radius=\"0.15\" angle=\"3\"", "", "not as the schema of job files has it" },
};

static void
test_wrong (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (wrong_rows); i++)
    {
      g_autofree char *text = job_text_with (JOB_WHOLE, wrong_rows[i].old, wrong_rows[i].new);
      guint line = *wrong_rows[i].at ? job_text_line (text, wrong_rows[i].at) : 0;
      /* A missing end is found where the other one stands. */
      if (g_str_equal (wrong_rows[i].at, "engine"))
        line = job_text_line (text, "</machine>");
      job_text_assert_refused (text, strlen (text), line, wrong_rows[i].part);
    }
}

/* An id that stands twice: where, and where it stood before. */
static void
test_id_twice (void)
{
  static const struct
  {
    const char *old, *new, *at, *first, *id;
  } rows[] = {
    { "id=\"O2\"", "id=\"O1\"", "<pit", "<solid", "O1" },
    { "id=\"S2\"", "id=\"R1\"", "id=\"R1\" kind", "<room", "R1" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = job_text_with (JOB_WHOLE, rows[i].old, rows[i].new);
      g_autofree char *part = g_strdup_printf ("id “%s” is that of the item in line %u already", rows[i].id,
                                               job_text_line (text, rows[i].first));
      job_text_assert_refused (text, strlen (text), job_text_line (text, rows[i].at), part);
    }
}

/* All broken rules at once, each with its line. */
static void
test_several (void)
{
  g_autofree char *a = job_text_with (JOB_WHOLE, "<corner x=\"0\" y=\"8\"/>", "<corner x=\"6\" y=\"-5\"/>");
  g_autofree char *b = job_text_with (a, "x2=\"-0.1\" y2=\"4\"", "x2=\"-0.1\" y2=\"2\"");
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  g_assert_false (ox_job_file_read_data ("floor.oxturn", b, strlen (b), &job, &error));
  g_auto (GStrv) lines = g_strsplit (error->message, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, 2);
  g_autofree char *first = g_strdup_printf ("floor.oxturn:%u: The outline of R1", job_text_line (b, "<room id=\"R1\""));
  g_autofree char *second = g_strdup_printf ("floor.oxturn:%u: Doorway D1", job_text_line (b, "<doorway"));
  g_assert_true (g_str_has_prefix (lines[0], first));
  g_assert_true (g_str_has_prefix (lines[1], second));
}

/* Megabytes in one attribute or text are no trouble, and no message repeats them. */
static void
test_huge_values (void)
{
  g_autofree char *huge = g_strnfill (5 * 1000 * 1000, '7');
  g_autofree char *attribute = g_strconcat ("width=\"", huge, "\"", NULL);
  g_autofree char *text = job_text_with (JOB_WHOLE, "width=\"0.5\"", attribute);
  job_text_assert_refused (text, strlen (text), job_text_line (text, "<solid"), "width “7777");
  g_autofree char *name = g_strconcat ("id=\"", huge, "\"", NULL);
  g_autofree char *named = job_text_with (JOB_WHOLE, "id=\"R1\"", name);
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  g_assert_false (ox_job_file_read_data ("floor.oxturn", named, strlen (named), &job, &error));
  g_assert_cmpuint (strlen (error->message), <, 300);
}

static void
test_huge_text (void)
{
  const gsize lengths[] = { 100001, 11 * 1000 * 1000 };
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_autofree char *huge = g_strnfill (lengths[i], 'x');
      g_autofree char *title = g_strconcat (huge, "</title>", NULL);
      g_autofree char *text = job_text_with (JOB_WHOLE, "Hall</title>", title);
      job_text_assert_refused (text, strlen (text), 4, "<title> has more than 100000 bytes");
      g_autofree char *name = g_strconcat ("name=\"", huge, "\"", NULL);
      g_autofree char *named = job_text_with (JOB_WHOLE, "name=\"Column\"", name);
      job_text_assert_refused (named, strlen (named), i == 0 ? job_text_line (named, "<solid") : 0,
                               i == 0 ? "name of solid O1 has more than" : "");
    }
}

static void
test_truncated (void)
{
  gsize length = strlen (JOB_WHOLE);
  for (gsize n = 0; n < length - strlen ("</job>\n"); n += 7)
    job_text_assert_refused (JOB_WHOLE, n, 0, "");
}

/* Any byte changed to any other gives a job or a sentence. */
static void
test_random_bytes (void)
{
  gsize length = strlen (JOB_WHOLE);
  for (guint i = 0; i < 2000; i++)
    {
      g_autofree char *text = g_strdup (JOB_WHOLE);
      g_autoptr (GError) error = NULL;
      g_autoptr (OxJob) job = NULL;
      for (guint k = 0; k < 3; k++)
        text[g_test_rand_int_range (0, (gint32) length)] = (char) g_test_rand_int_range (1, 256);
      gboolean read = ox_job_file_read_data ("floor.oxturn", text, length, &job, &error);
      g_assert_true (read == (job != NULL) && read == (error == NULL));
      g_assert_true (read || g_utf8_validate (error->message, -1, NULL));
    }
}

static void
test_defaults (void)
{
  g_autoptr (OxJob) job
      = job_text_read ("<job xmlns='urn:oxturn:job' version='1.0'>" JOB_MACHINE
                       "<room id='R1'><corner x='0' y='0'/><corner x=' 4 ' y='0'/><corner x='4' y='3'/></room>"
                       "<solid id='O1' shape='rectangle' x='1' y='1' width='1' depth='1'/>"
                       "<pit id='O2' shape='circle' x='1' y='1' radius='1'/></job>");
  g_assert_cmpint (job->units, ==, OX_UNITS_METRES);
  g_assert_cmpfloat (job->north_deg, ==, 90);
  g_assert_cmpstr (job->texts->title, ==, "");
  g_assert_cmpint (job->rooms[0]->direction.kind, ==, OX_DIRECTION_AUTO);
  g_assert_cmpfloat (job->obstacles[1]->keep_back, ==, 0);
  g_assert_cmpfloat (job->rooms[0]->ring->points[1].x, ==, 4);
}

static void
test_values (void)
{
  g_autoptr (OxJob) job = job_text_read (JOB_WHOLE);
  const OxRoom *room = job->rooms[0];
  g_assert_cmpstr (room->profile, ==, "CSP 3");
  g_assert_cmpint (room->direction.kind, ==, OX_DIRECTION_SIDE);
  g_assert_cmpuint (room->direction.side, ==, 1);
  g_assert_cmpint (room->sides[1].kind, ==, OX_SIDE_DROP);
  g_assert_cmpfloat (room->sides[1].keep_back, ==, 0.6);
  g_assert_cmpint (room->sides[2].kind, ==, OX_SIDE_OPEN);
  g_assert_cmpint (job->obstacles[0]->kind, ==, OX_OBSTACLE_SOLID);
  g_assert_cmpfloat (job->obstacles[0]->shape.angle_deg, ==, 30);
  g_assert_cmpint (job->obstacles[1]->kind, ==, OX_OBSTACLE_PIT);
  g_assert_cmpfloat (job->obstacles[1]->shape.radius, ==, 0.15);
  g_assert_cmpint (job->obstacles[2]->kind, ==, OX_OBSTACLE_MASKED);
  g_assert_cmpfloat (job->doorways[0]->b.y, ==, 4);
  g_assert_cmpint (job->stations[1]->kind, ==, OX_STATION_SUPPLY);
  g_assert_cmpfloat (job->stations[0]->length, ==, 20);
  g_assert_cmpfloat (job->machine->wear[0].run_h, ==, 3.5);
  g_assert_cmpfloat (job->machine->rear, ==, 1.25);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-read/values", test_values);
  g_test_add_func ("/file/job-read/defaults", test_defaults);
  g_test_add_func ("/file/job-read/wrong", test_wrong);
  g_test_add_func ("/file/job-read/id-twice", test_id_twice);
  g_test_add_func ("/file/job-read/several", test_several);
  g_test_add_func ("/file/job-read/huge-values", test_huge_values);
  g_test_add_func ("/file/job-read/huge-text", test_huge_text);
  g_test_add_func ("/file/job-read/truncated", test_truncated);
  g_test_add_func ("/file/job-read/random-bytes", test_random_bytes);
  return g_test_run ();
}
