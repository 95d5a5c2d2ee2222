/* Oxturn: tests/file/test-job-known
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-known.h"
#include "file/xml-parse.h"
#include "job-texts.h"

static xmlDoc *
parse (const char *text)
{
  return ox_xml_parse ("floor.oxturn", text, strlen (text), NULL);
}

static void
test_whole_job (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (xmlDoc) doc = parse (JOB_WHOLE);
  gboolean known = ox_known_check ("floor.oxturn", xmlDocGetRootElement (doc), FALSE, &error);
  g_assert_no_error (error);
  g_assert_true (known);
}

static const struct
{
  const char *old;
  const char *new;
  const char *part;
} unknown_rows[] = {
  { "<rates", "<lighting/><rates",
    "element <lighting> is not known in <job>; allowed are: texts machine rates calendar costs" },
  { "<rates", "<job/><rates", "element <job> is not known in <job>" },
  { "<corner x=\"12\" y=\"0\"", "<point x=\"1\" y=\"0\"/><corner x=\"12\" y=\"0\"",
    "element <point> is not known in <room>; allowed are: corner" },
  { "<corner x=\"12\" y=\"0\"", "<corner colour=\"red\" x=\"12\" y=\"0\"",
    "attribute “colour” is not known in <corner>; allowed are: x y side keep-back" },
  { "<corner x=\"9\" y=\"5\"", "<corner side=\"open\" x=\"9\" y=\"5\"",
    "attribute “side” is not known in <corner>; allowed are: x y" },
  { "<title>", "<title size=\"1\">", "attribute “size” is not known in <title>; allowed are: nothing" },
  { "Hall</title>", "Ha<b/>ll</title>", "element <b> is not known in <title>" },
  { "<rates", "rates: <rates", "text “rates:” stands in <job>" },
  { "<rates", "<texts/><rates", "<texts> stands twice in <job>" },
  { "<title>", "<title/><title>", "<title> stands twice in <texts>" },
};

static void
test_unknown (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (unknown_rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = job_text_with (JOB_WHOLE, unknown_rows[i].old, unknown_rows[i].new);
      g_autoptr (xmlDoc) doc = parse (text);
      g_assert_false (ox_known_check ("floor.oxturn", xmlDocGetRootElement (doc), FALSE, &error));
      g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
      if (!strstr (error->message, unknown_rows[i].part))
        g_error ("“%s” does not say “%s”", error->message, unknown_rows[i].part);
    }
}

/* What is ours is no error in a newer version, what stands twice or is stray text is. */
static void
test_newer (void)
{
  g_autofree char *text = job_text_with (JOB_WHOLE, "<rates", "<lighting lux=\"3\"/><rates labour=\"2\"");
  g_autoptr (xmlDoc) doc = parse (text);
  g_assert_true (ox_known_check ("floor.oxturn", xmlDocGetRootElement (doc), TRUE, NULL));
  g_autofree char *twice = job_text_with (JOB_WHOLE, "<rates", "<texts/><rates");
  g_autoptr (xmlDoc) other = parse (twice);
  g_assert_false (ox_known_check ("floor.oxturn", xmlDocGetRootElement (other), TRUE, NULL));
}

static void
test_other_namespaces (void)
{
  g_autofree char *text
      = job_text_with (JOB_WHOLE, "<rates", "<v:x xmlns:v=\"urn:v\">text<job/></v:x><rates xml:lang=\"en\"");
  g_autoptr (xmlDoc) doc = parse (text);
  g_assert_true (ox_known_check ("floor.oxturn", xmlDocGetRootElement (doc), FALSE, NULL));
}

static void
test_is_item (void)
{
  g_autoptr (xmlDoc) doc = parse (JOB_WHOLE);
  guint items = 0;
  for (const xmlNode *child = xmlDocGetRootElement (doc)->children; child; child = child->next)
    items += ox_known_is_item (child);
  g_assert_cmpuint (items, ==, 10);
  g_assert_true (ox_known_is_ours (xmlDocGetRootElement (doc), "job"));
  g_assert_false (ox_known_is_ours (xmlDocGetRootElement (doc), "room"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/job-known/whole-job", test_whole_job);
  g_test_add_func ("/file/job-known/unknown", test_unknown);
  g_test_add_func ("/file/job-known/newer", test_newer);
  g_test_add_func ("/file/job-known/other-namespaces", test_other_namespaces);
  g_test_add_func ("/file/job-known/is-item", test_is_item);
  return g_test_run ();
}
