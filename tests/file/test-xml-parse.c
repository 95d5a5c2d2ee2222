/* Oxturn: tests/file/test-xml-parse
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/xml-parse.h"
#include "job-texts.h"

static void
assert_refused (const char *text, gsize length, guint line, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (ox_xml_parse ("floor.oxturn", text, length, &error));
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
  g_autofree char *place = g_strdup_printf ("floor.oxturn:%u: ", line);
  if (!g_str_has_prefix (error->message, place) || !strstr (error->message, part))
    g_error ("“%s” does not say “%s … %s”", error->message, place, part);
}

static void
test_broken (void)
{
  static const struct
  {
    const char *text;
    guint line;
    const char *part;
  } rows[] = {
    { "", 1, "empty" },
    { "   \n  ", 2, "no well-formed XML" },
    { "one room please", 1, "no well-formed XML" },
    { "<job>\n<room>\n</job>", 3, "no well-formed XML" },
    { "<job>\n<a b=1/></job>", 2, "no well-formed XML" },
    { "<job/>\n<job/>", 2, "no well-formed XML" },
    { "<job>\n&nbsp;</job>", 2, "no well-formed XML" },
    { "<job>\n<x:y/></job>", 2, "no well-formed XML" }, /* a prefix that nobody declared */
    { "<job>\n&#0;</job>", 2, "no well-formed XML" },
    { "<job>\n\x01</job>", 2, "no well-formed XML" },
    { "<job>\n\xff\xfe</job>", 2, "no well-formed XML" },
    { "<job a='1'\n a='2'/>", 2, "no well-formed XML" },
    { "\x7f"
      "ELF\x02\x01\x01",
      1, "no well-formed XML" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_refused (rows[i].text, strlen (rows[i].text), rows[i].line, rows[i].part);
  static const char with_nul[] = "<job>\n\0</job>";
  assert_refused (with_nul, sizeof with_nul - 1, 2, "no well-formed XML");
}

/* Nothing behind the DOCTYPE is looked at: not the entities, not the file, not even whether it ends. */
static void
test_doctype (void)
{
  static const char *const rows[] = {
    "<?xml version='1.0'?>\n<!DOCTYPE job>\n<job/>",
    "\n<!DOCTYPE job [ <!ENTITY a 'b'> ]>\n<job>&a;</job>",
    "\n<!DOCTYPE job SYSTEM 'file:///etc/passwd'>\n<job/>",
    "\n<!DOCTYPE job [ <!ENTITY p SYSTEM 'file:///etc/passwd'> ]>\n<job>&p;</job>",
    "\n<!DOCTYPE job [ <!ENTITY % p SYSTEM 'http://127.0.0.1:9/x'> %p; ]>\n<job/>",
    "\n<!DOCTYPE job [ <!ENTITY a 'xxxxxxxxxx'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;'>"
    "<!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;'><!ENTITY d '&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;'> ]>\n<job>&d;</job>",
    "\n<!DOCTYPE job [ <!ATTLIST job a CDATA 'b'> ",
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_refused (rows[i], strlen (rows[i]), 2, "DOCTYPE");
}

static char *
nested (guint depth)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < depth; i++)
    g_string_append (text, "<a>\n");
  for (guint i = 0; i < depth; i++)
    g_string_append (text, "</a>\n");
  return g_string_free (text, FALSE);
}

static void
test_depth (void)
{
  g_autofree char *deepest = nested (64);
  g_autoptr (xmlDoc) doc = ox_xml_parse ("floor.oxturn", deepest, strlen (deepest), NULL);
  g_assert_nonnull (doc);
  const guint depths[] = { 65, 300, 100000 };
  for (guint i = 0; i < G_N_ELEMENTS (depths); i++)
    {
      g_autofree char *text = nested (depths[i]);
      assert_refused (text, strlen (text), 65, "nested too deep; 64 deep is allowed");
    }
}

/* Lines beyond 65,535 keep their numbers. */
static void
test_line_numbers (void)
{
  g_autoptr (GString) text = g_string_new ("<job>\n");
  for (guint i = 0; i < 70000; i++)
    g_string_append (text, "<a/>\n");
  g_string_append (text, "<last/></job>");
  g_autoptr (xmlDoc) doc = ox_xml_parse ("floor.oxturn", text->str, text->len, NULL);
  const xmlNode *last = xmlDocGetRootElement (doc)->last;
  g_assert_cmpint (xmlGetLineNo (last), ==, 70002);
}

static void
test_other_encodings (void)
{
  static const char latin[] = "<?xml version='1.0' encoding='ISO-8859-1'?><job a='caf\xe9'/>";
  g_autoptr (xmlDoc) doc = ox_xml_parse ("floor.oxturn", latin, strlen (latin), NULL);
  g_assert_nonnull (doc);
  xmlChar *value = xmlGetNoNsProp (xmlDocGetRootElement (doc), BAD_CAST "a");
  g_assert_cmpstr ((char *) value, ==, "café");
  xmlFree (value);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/xml-parse/broken", test_broken);
  g_test_add_func ("/file/xml-parse/doctype", test_doctype);
  g_test_add_func ("/file/xml-parse/depth", test_depth);
  g_test_add_func ("/file/xml-parse/line-numbers", test_line_numbers);
  g_test_add_func ("/file/xml-parse/other-encodings", test_other_encodings);
  return g_test_run ();
}
