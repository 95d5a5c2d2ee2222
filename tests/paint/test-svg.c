/* Oxturn: tests of paint/svg
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/svg.h"
#include "paint/sample-pages.h"
#include "support/ox-test.h"
#include <libxml/parser.h>
#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>
#include <stdio.h>
#include <string.h>

typedef struct
{
  xmlDoc *doc;
  xmlXPathContext *context;
} Tree;

static Tree
read_tree (guint page)
{
  g_autoptr (OxPageSet) set = ox_test_pages ();
  g_autoptr (GBytes) bytes = ox_svg_new (&set->pages[page]);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  Tree tree = { xmlReadMemory (data, (int) length, NULL, NULL, XML_PARSE_NONET), NULL };
  g_assert_nonnull (tree.doc);
  tree.context = xmlXPathNewContext (tree.doc);
  xmlXPathRegisterNs (tree.context, (const xmlChar *) "s", (const xmlChar *) "http://www.w3.org/2000/svg");
  return tree;
}

static void
free_tree (Tree *tree)
{
  xmlXPathFreeContext (tree->context);
  xmlFreeDoc (tree->doc);
}

static double
number (Tree *tree, const char *path)
{
  xmlXPathObject *object = xmlXPathEvalExpression ((const xmlChar *) path, tree->context);
  g_assert_nonnull (object);
  double value = xmlXPathCastToNumber (object);
  xmlXPathFreeObject (object);
  return value;
}

static char *
text (Tree *tree, const char *path)
{
  xmlXPathObject *object = xmlXPathEvalExpression ((const xmlChar *) path, tree->context);
  g_assert_nonnull (object);
  xmlChar *value = xmlXPathCastToString (object);
  char *out = g_strdup ((const char *) value);
  xmlFree (value);
  xmlXPathFreeObject (object);
  return out;
}

#define assert_text(tree, path, expected)                                                                              \
  G_STMT_START                                                                                                         \
  {                                                                                                                    \
    g_autofree char *found = text ((tree), (path));                                                                    \
    g_assert_cmpstr (found, ==, (expected));                                                                           \
  }                                                                                                                    \
  G_STMT_END

static void
test_head_says_what_it_is (void)
{
  Tree tree = read_tree (0);
  assert_text (&tree, "string(/s:svg/@width)", "420mm");
  assert_text (&tree, "string(/s:svg/@height)", "297mm");
  assert_text (&tree, "string(/s:svg/@viewBox)", "0 0 420 297");
  assert_text (&tree, "name(/s:svg/*[1])", "title");
  assert_text (&tree, "string(/s:svg/s:title)", "Crew drawing");
  assert_text (&tree, "name(/s:svg/*[2])", "desc");
  assert_text (&tree, "string(/s:svg/s:desc)", "Strips & edge work.");
  free_tree (&tree);
  tree = read_tree (1);
  assert_text (&tree, "string(/s:svg/@width)", "215.9mm");
  free_tree (&tree);
}

static void
test_layers_are_groups_with_titles (void)
{
  Tree tree = read_tree (0);
  ox_test_near (number (&tree, "count(/s:svg/s:g)"), 3, 1e-9);
  assert_text (&tree, "string(/s:svg/s:g[@id='layer-edge-work']/s:title)", "Edge work");
  assert_text (&tree, "string(/s:svg/s:g[@id='layer-names']/s:title)", "Names & \"tags\"");
  ox_test_near (number (&tree, "count(//*[@id='outline-R1'])"), 1, 1e-9);
  free_tree (&tree);
}

static void
test_ids_are_unique (void)
{
  Tree tree = read_tree (0);
  ox_test_near (number (&tree, "count(//@id[. = preceding::*/@id or . = ancestor::*[position() > 1]/@id])"), 0, 1e-9);
  g_assert_cmpfloat (number (&tree, "count(//@id)"), >, 6);
  free_tree (&tree);
}

static void
test_texts_are_texts (void)
{
  Tree tree = read_tree (0);
  assert_text (&tree, "string(//s:text[1])",
               "K\xc3\xbc"
               "che <1> & 12.5 m\xc2\xb2");
  /* Capitals 2.5 mm high: DejaVu Sans has its capitals 1493 of 2048 units high. */
  ox_test_near (number (&tree, "number(//s:text[1]/@font-size)"), 2.5 * 2048 / 1493, 5e-4);
  assert_text (&tree, "string(//s:text[2]/@font-weight)", "bold");
  assert_text (&tree, "string(//s:text[2]/@transform)", "translate(40 197) rotate(-90)");
  free_tree (&tree);
}

static void
test_nothing_active_or_from_outside (void)
{
  Tree tree = read_tree (0);
  ox_test_near (number (&tree, "count(//s:script | //s:style | //s:image | //s:use | //@*[contains(., 'url(')])"), 0,
                1e-9);
  ox_test_near (number (&tree, "count(//@*[starts-with(name(), 'on') or local-name() = 'href'])"), 0, 1e-9);
  free_tree (&tree);
}

static void
test_a_wall_is_true_to_scale (void)
{
  Tree tree = read_tree (0);
  g_autofree char *path = text (&tree, "string(//*[@id='outline-R1']/@d)");
  double x0, y0, x1, y1;
  g_assert_cmpint (sscanf (path, "M%lf %lfL%lf %lf", &x0, &y0, &x1, &y1), ==, 4);
  ox_test_near (hypot (x1 - x0, y1 - y0), 100, 1e-9);
  ox_test_near (y0, 297 - 100, 1e-9);
  free_tree (&tree);
}

static void
test_widths_and_dashes (void)
{
  Tree tree = read_tree (0);
  assert_text (&tree, "string(//*[@id='outline-R1']/@stroke-width)", "0.7");
  assert_text (&tree, "string(//s:g[@id='layer-outline']/s:path[2]/@stroke-dasharray)", "6,0.75,0.125,0.75");
  ox_test_near (
      number (&tree, "count(//@stroke-width[not(contains(' 0.13 0.18 0.25 0.35 0.5 0.7 1 ', concat(' ', ., ' ')))])"),
      0, 1e-9);
  free_tree (&tree);
}

static void
test_same_bytes_in_every_locale (void)
{
  g_autoptr (OxPageSet) set = ox_test_pages (), again = ox_test_pages ();
  g_autoptr (GBytes) plain = ox_test_bytes_in_locale (set, FALSE, "C");
  g_autoptr (GBytes) twice = ox_test_bytes_in_locale (again, FALSE, "C");
  g_assert_true (g_bytes_equal (plain, twice));
  g_autoptr (GBytes) comma = ox_test_bytes_in_locale (set, FALSE, "de_DE.utf8");
  if (comma != NULL)
    g_assert_true (g_bytes_equal (plain, comma));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/svg/head", test_head_says_what_it_is);
  g_test_add_func ("/svg/layers", test_layers_are_groups_with_titles);
  g_test_add_func ("/svg/ids", test_ids_are_unique);
  g_test_add_func ("/svg/texts", test_texts_are_texts);
  g_test_add_func ("/svg/passive", test_nothing_active_or_from_outside);
  g_test_add_func ("/svg/true-scale", test_a_wall_is_true_to_scale);
  g_test_add_func ("/svg/widths", test_widths_and_dashes);
  g_test_add_func ("/svg/same-bytes", test_same_bytes_in_every_locale);
  return g_test_run ();
}
