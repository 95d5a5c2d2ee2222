/* Oxturn: tests/file/test-read-value
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-value.h"
#include <math.h>
#include "file/xml-parse.h"
#include "job-texts.h"

typedef struct
{
  xmlDoc *doc;
  const xmlNode *node;
  GError *error;
  OxReader reader;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer text)
{
  fixture->doc = ox_xml_parse ("f", text, strlen (text), NULL);
  fixture->node = xmlDocGetRootElement (fixture->doc);
  fixture->reader = (OxReader){ "f", &fixture->error };
}

static void
tear_down (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  xmlFreeDoc (fixture->doc);
  g_clear_error (&fixture->error);
}

static void
assert_error (Fixture *fixture, const char *message)
{
  g_assert_error (fixture->error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
  g_assert_cmpstr (fixture->error->message, ==, message);
  g_clear_error (&fixture->error);
}

static void
test_number (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  double value = 7;
  OxRange range = { "a", 0, TRUE, 10, FALSE, NAN };
  g_assert_true (ox_read_number (&fixture->reader, fixture->node, &range, &value));
  g_assert_cmpfloat (value, ==, 2.50004);
  range.snap = TRUE;
  g_assert_true (ox_read_number (&fixture->reader, fixture->node, &range, &value));
  g_assert_cmpfloat (value, ==, 2.5);
  range.most = 2;
  g_assert_false (ox_read_number (&fixture->reader, fixture->node, &range, &value));
  assert_error (fixture, "f:1: a “2.50004” of thing T1: a number of more than 0 and at most 2 is needed");
  g_assert_cmpfloat (value, ==, 2.5);
}

static void
test_ends (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  double value;
  g_assert_true (ox_read_number (&fixture->reader, fixture->node, &(OxRange){ "z", 0, FALSE, 1, FALSE, NAN }, &value));
  g_assert_false (ox_read_number (&fixture->reader, fixture->node, &(OxRange){ "z", 0, TRUE, 1, FALSE, NAN }, &value));
  assert_error (fixture, "f:1: z “0” of thing T1: a number of more than 0 and at most 1 is needed");
  g_assert_true (ox_read_number (&fixture->reader, fixture->node, &(OxRange){ "z", -1, FALSE, 0, FALSE, NAN }, &value));
}

static void
test_missing (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  double value;
  g_assert_true (ox_read_number (&fixture->reader, fixture->node, &(OxRange){ "q", 0, TRUE, 1, FALSE, 99 }, &value));
  g_assert_cmpfloat (value, ==, 99);
  g_assert_false (ox_read_number (&fixture->reader, fixture->node, &(OxRange){ "q", 0, TRUE, 1, FALSE, NAN }, &value));
  assert_error (fixture, "f:1: thing T1 has no q; one is needed");
  g_autofree char *otherwise = ox_read_text (&fixture->reader, fixture->node, "q", "usual");
  g_assert_cmpstr (otherwise, ==, "usual");
  g_assert_null (ox_read_text (&fixture->reader, fixture->node, "q", NULL));
  assert_error (fixture, "f:1: thing T1 has no q; one is needed");
}

static void
test_choice (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  static const char *const words[] = { "red", "blue", NULL };
  int choice = 5;
  g_assert_true (ox_read_choice (&fixture->reader, fixture->node, &(OxChoice){ "c", words, 0 }, &choice));
  g_assert_cmpint (choice, ==, 1);
  g_assert_true (ox_read_choice (&fixture->reader, fixture->node, &(OxChoice){ "q", words, 0 }, &choice));
  g_assert_cmpint (choice, ==, 0);
  g_assert_false (ox_read_choice (&fixture->reader, fixture->node, &(OxChoice){ "q", words, -1 }, &choice));
  assert_error (fixture, "f:1: thing T1 has no q; one of red, blue is needed");
  g_assert_false (ox_read_choice (&fixture->reader, fixture->node, &(OxChoice){ "z", words, 0 }, &choice));
  assert_error (fixture, "f:1: z “0” of thing T1: one of red, blue is needed");
}

static void
test_refuse_attribute (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  g_assert_true (ox_read_refuse_attribute (&fixture->reader, fixture->node, "q", "why"));
  g_assert_false (ox_read_refuse_attribute (&fixture->reader, fixture->node, "c", "it is no colour"));
  assert_error (fixture, "f:1: c of thing T1: it is no colour");
}

/* A part without an id is named by what it belongs to, up to but without the root. */
static void
test_place (Fixture *fixture, gconstpointer text G_GNUC_UNUSED)
{
  const xmlNode *inner = fixture->node->children->children;
  double value;
  g_assert_false (ox_read_number (&fixture->reader, inner, &(OxRange){ "x", 0, FALSE, 1, FALSE, NAN }, &value));
  assert_error (fixture, "f:1: corner of room has no x; one is needed");
}

int
main (int argc, char **argv)
{
  static const char thing[] = "<thing id='T1' a='2.50004' z='0' c='blue'/>";
  static const char rooms[] = "<job><room><corner/></room></job>";
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/file/read-value/number", Fixture, thing, set_up, test_number, tear_down);
  g_test_add ("/file/read-value/number/ends", Fixture, thing, set_up, test_ends, tear_down);
  g_test_add ("/file/read-value/missing", Fixture, thing, set_up, test_missing, tear_down);
  g_test_add ("/file/read-value/choice", Fixture, thing, set_up, test_choice, tear_down);
  g_test_add ("/file/read-value/refuse-attribute", Fixture, thing, set_up, test_refuse_attribute, tear_down);
  g_test_add ("/file/read-value/place", Fixture, rooms, set_up, test_place, tear_down);
  return g_test_run ();
}
