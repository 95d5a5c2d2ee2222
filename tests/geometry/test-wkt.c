/* Oxturn: tests of geometry/wkt
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/wkt.h"
#include "support/ox-test.h"
#include <string.h>

static GPtrArray *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *polygons = NULL;
  g_assert_true (ox_wkt_parse_polygons (text, &polygons, &error));
  g_assert_no_error (error);
  return polygons;
}

static void
test_parse_forms (void)
{
  static const struct
  {
    const char *text;
    guint polygons, rings, corners; /* rings and corners of the last one's last ring */
  } cases[] = {
    { "POLYGON ((0 0, 3 0, 0 4, 0 0))", 1, 1, 3 },
    { "polygon((0 0,3 0,0 4,0 0))", 1, 1, 3 },
    { "\r\n  Polygon\n(\n( 0\t0 ,\n 3.0 0. , 0 +4e0 , -0 0 )\n)\n", 1, 1, 3 },
    { "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))", 1, 2, 4 },
    { "MULTIPOLYGON (((0 0, 3 0, 0 4, 0 0)), ((9 9, 12 9, 9 13, 8 11, 9 9)))", 2, 1, 4 },
    { "POLYGON ((0 0, 3 0, 0 4, 0 0))\nPOLYGON ((9 9, 12 9, 9 13, 9 9))MULTIPOLYGON(((0 0,3 0,0 4,0 0)))", 3, 1, 3 },
    { "POLYGON EMPTY", 0, 0, 0 },
    { "MULTIPOLYGON empty", 0, 0, 0 },
    { "POLYGON EMPTY POLYGON ((0 0, 3 0, 0 4, 0 0))", 1, 1, 3 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].text);
      g_autoptr (GPtrArray) polygons = parse (cases[i].text);
      g_assert_cmpuint (polygons->len, ==, cases[i].polygons);
      if (polygons->len == 0)
        continue;
      const OxWktPolygon *last = polygons->pdata[polygons->len - 1];
      g_assert_cmpuint (last->n_rings, ==, cases[i].rings);
      g_assert_cmpuint (last->rings[last->n_rings - 1]->n, ==, cases[i].corners);
    }
}

static void
test_parse_refuses (void)
{
  static const struct
  {
    const char *text;
    const char *place;
  } cases[] = {
    { "", "line 1, column 1:" },
    { " \n ", "line 2, column 2:" },
    { "POLYGON", "line 1, column 8:" },
    { "POLYGON (", "line 1, column 10:" },
    { "POLYGON ((", "line 1, column 11:" },
    { "POLYGON ((0", "line 1, column 12:" },
    { "POLYGON ((0 0, 3 0, 0 4, 0 0", "line 1, column 29:" },
    { "POLYGON ((0 0, 3 0, 0 4, 0 0)", "line 1, column 30:" },
    { "POLYGON ((0 0, 3 0,\n0 4, 0 0)) x", "line 2, column 12:" },
    { "POLYGON ((0 0, 3 0, 0 4))", NULL },
    { "POLYGON ((0 0, 3 0, 0 0))", NULL },
    { "POLYGON ((0 0, 3 0, 0 4, 0 1))", NULL },
    { "POLYGON ((0 0 0, 3 0 0, 0 4 0, 0 0 0))", "line 1, column 15:" },
    { "POLYGON Z ((0 0 0, 3 0 0, 0 4 0, 0 0 0))", "line 1, column 10:" },
    { "POLYGON ZM EMPTY", NULL },
    { "POLYGON M ((0 0 0))", NULL },
    { "POLYGONZ ((0 0 0, 3 0 0, 0 4 0, 0 0 0))", "line 1, column 1:" },
    { "POLYGON ((0 0, nan 0, 0 4, 0 0))", "line 1, column 16:" },
    { "POLYGON ((0 0, inf 0, 0 4, 0 0))", NULL },
    { "POLYGON ((0 0, 1e400 0, 0 4, 0 0))", NULL },
    { "POLYGON ((0 0, 1e10 0, 0 4, 0 0))", NULL },
    { "POLYGON ((0 0, 0x3 0, 0 4, 0 0))", NULL },
    { "POLYGON ((0 0, 3,0 0, 0 4, 0 0))", NULL },
    { "POLYGON ((0 0, 3-0 0, 0 4, 0 0))", NULL },
    { "POLYGON ((0 0; 3 0; 0 4; 0 0))", NULL },
    { "POLYGON ((0 0, 3 0, 0 4, 0 0),)", NULL },
    { "POLYGON ((0 0, 3 0, 0 4, 0 0,))", NULL },
    { "POLYGON (())", NULL },
    { "POLYGON ()", NULL },
    { "POLYGON (EMPTY)", NULL },
    { "MULTIPOLYGON ((0 0, 3 0, 0 4, 0 0))", NULL },
    { "MULTIPOLYGON (((0 0, 3 0, 0 4, 0 0)), EMPTY)", NULL },
    { "POINT (1 2)", "line 1, column 1:" },
    { "SRID=25832;POLYGON ((0 0, 3 0, 0 4, 0 0))", "line 1, column 1:" },
    { "POLYGON ((0.0000000000000000000000000000000000000000000000001 0, 3 0, 0 4, 0 0))", NULL },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      GPtrArray *polygons = NULL;
      g_test_message ("%s", cases[i].text);
      g_assert_false (ox_wkt_parse_polygons (cases[i].text, &polygons, &error));
      g_assert_error (error, OX_WKT_ERROR, OX_WKT_ERROR_SYNTAX);
      g_assert_null (polygons);
      if (cases[i].place)
        g_assert_true (g_str_has_prefix (error->message, cases[i].place));
    }
}

/* Brackets without end, commas without end: one look at each byte, no stack. */
static void
test_parse_floods (void)
{
  static const struct
  {
    const char *start, *again, *end;
    OxWktError code;
  } cases[] = {
    { "", "(", "", OX_WKT_ERROR_SYNTAX },
    { "POLYGON (", "(", "", OX_WKT_ERROR_SYNTAX },
    { "POLYGON ((0 0", ",", "))", OX_WKT_ERROR_SYNTAX },
    { "POLYGON ((0 0", "1", "))", OX_WKT_ERROR_SYNTAX },
    { "POLYGON ((", "\n", "", OX_WKT_ERROR_SYNTAX },
    { "", "POLYGON EMPTY ", "POLYGON", OX_WKT_ERROR_SYNTAX },
    { "POLYGON ((0 0", ",1 1", ",0 0))", OX_WKT_ERROR_TOO_LARGE },
    { "MULTIPOLYGON (((0 0,1 0,1 1,0 0))", ",((0 0,1 0,1 1,0 0))", ")", OX_WKT_ERROR_TOO_LARGE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      GPtrArray *polygons = NULL;
      g_autoptr (GString) text = g_string_new (cases[i].start);
      for (int k = 0; k < OX_WKT_MAX_CORNERS; k++)
        g_string_append (text, cases[i].again);
      g_string_append (text, cases[i].end);
      g_assert_false (ox_wkt_parse_polygons (text->str, &polygons, &error));
      g_assert_error (error, OX_WKT_ERROR, (gint) cases[i].code);
    }
}

static void
test_parse_too_long (void)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *polygons = NULL;
  gsize length = 65 * 1024 * 1024;
  g_autofree char *text = g_malloc (length + 1);
  memset (text, ' ', length);
  text[length] = '\0';
  g_assert_false (ox_wkt_parse_polygons (text, &polygons, &error));
  g_assert_error (error, OX_WKT_ERROR, OX_WKT_ERROR_TOO_LARGE);
}

/* Whatever is done to a good text, it is read or refused with a reason. */
static void
test_parse_damaged (void)
{
  static const char good[]
      = "MULTIPOLYGON (((0 0, 9 0, 9 9.5, 0 9, 0 0), (1 1, 2 1, 2e0 2, 1 2, 1 1)), ((20 0, 23 0, 20 4, 20 0)))";
  static const char bytes[] = "(),. \n-+0159eEZPnx\"\x80\xff";
  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) polygons = NULL;
      g_autoptr (GString) text = g_string_new (good);
      for (int k = g_test_rand_int_range (1, 4); k > 0 && text->len > 0; k--)
        {
          gssize at = g_test_rand_int_range (0, (gint) text->len);
          switch (g_test_rand_int_range (0, 3))
            {
            case 0:
              g_string_erase (text, at, 1);
              break;
            case 1:
              g_string_insert_c (text, at, bytes[g_test_rand_int_range (0, sizeof bytes - 1)]);
              break;
            default:
              g_string_truncate (text, (gsize) at + 1);
              break;
            }
        }
      gboolean read = ox_wkt_parse_polygons (text->str, &polygons, &error);
      g_assert_true (read == (error == NULL) && read == (polygons != NULL));
    }
}

static void
test_write (void)
{
  static const struct
  {
    const char *from;
    gboolean multi;
    const char *to;
  } cases[] = {
    { "POLYGON ((0 4, 3 0, 0 0, 0 4))", FALSE, "POLYGON ((0 0, 3 0, 0 4, 0 0))" },
    { "POLYGON ((0 4, 3 0, 0 0, 0 4))", TRUE, "MULTIPOLYGON (((0 0, 3 0, 0 4, 0 0)))" },
    { "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (1 1, 2.5 1, 2.5 2, 1 1))", FALSE,
      "POLYGON ((0 0, 9 0, 9 9, 0 9, 0 0), (1 1, 2.5 2, 2.5 1, 1 1))" },
    { "POLYGON ((5 1, 6 1, 6 2, 5 1)) POLYGON ((0 0, 3 0, 0 4, 0 0))", FALSE,
      "MULTIPOLYGON (((0 0, 3 0, 0 4, 0 0)), ((5 1, 6 1, 6 2, 5 1)))" },
    { "POLYGON EMPTY", FALSE, "POLYGON EMPTY" },
    { "POLYGON EMPTY", TRUE, "MULTIPOLYGON EMPTY" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (OxRegion) region = ox_test_region (cases[i].from);
      ox_wkt_append_region (text, region, cases[i].multi, 4);
      g_assert_cmpstr (text->str, ==, cases[i].to);
    }
}

static void
test_write_ring_and_line (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (OxRing) ring = ox_test_ring ("POLYGON ((0 4, 3 0, 0 0, 0 4))");
  g_autoptr (OxRing) none = ox_ring_new (NULL, 0);
  OxPoint line[3] = { { 0, 0 }, { 1.23456, -2 }, { 3, 4 } };
  ox_wkt_append_ring (text, ring, 4);
  g_assert_cmpstr (text->str, ==, "POLYGON ((0 4, 3 0, 0 0, 0 4))");
  g_string_truncate (text, 0);
  ox_wkt_append_ring (text, none, 4);
  g_assert_cmpstr (text->str, ==, "POLYGON EMPTY");
  g_string_truncate (text, 0);
  ox_wkt_append_line (text, line, 3, 3);
  g_assert_cmpstr (text->str, ==, "LINESTRING (0 0, 1.235 -2, 3 4)");
  g_string_truncate (text, 0);
  ox_wkt_append_line (text, line, 1, 3);
  g_assert_cmpstr (text->str, ==, "LINESTRING EMPTY");
}

/* Rings stay as they are; the direction says which is a hole. */
static void
test_write_rings (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (OxRing) square = ox_test_ring ("POLYGON ((9 9, 0 9, 0 0, 9 0, 9 9))");
  g_autoptr (OxRing) hole = ox_test_ring ("POLYGON ((1 1, 2.5 2, 2.5 1, 1 1))");
  g_autoptr (OxRing) other = ox_test_ring ("POLYGON ((20 0, 21 0, 20 1, 20 0))");
  OxRing *const rings[] = { square, hole, other };
  ox_wkt_append_rings (text, rings, 0, 4);
  g_assert_cmpstr (text->str, ==, "POLYGON EMPTY");
  g_string_truncate (text, 0);
  ox_wkt_append_rings (text, rings, 2, 4);
  g_assert_cmpstr (text->str, ==, "POLYGON ((9 9, 0 9, 0 0, 9 0, 9 9), (1 1, 2.5 2, 2.5 1, 1 1))");
  g_string_truncate (text, 0);
  ox_wkt_append_rings (text, rings, 3, 4);
  g_assert_cmpstr (text->str, ==,
                   "MULTIPOLYGON (((9 9, 0 9, 0 0, 9 0, 9 9), (1 1, 2.5 2, 2.5 1, 1 1)), ((20 0, 21 0, 20 1, 20 0)))");
}

/* Outlines on the grid come back to the last bit. */
static void
test_round_trip (void)
{
  for (int i = 0; i < 300; i++)
    {
      g_autoptr (OxRing) ring = ox_test_random_ring ();
      g_autoptr (OxRegion) region = ox_region_new_ring (ring);
      g_autoptr (GString) text = g_string_new (NULL);
      ox_wkt_append_region (text, region, g_test_rand_bit (), 4);
      g_autoptr (OxRegion) back = ox_test_region (text->str);
      g_assert_true (ox_test_same_bytes (back, region));
      g_string_truncate (text, 0);
      ox_wkt_append_ring (text, ring, 4);
      g_autoptr (OxRing) ring_back = ox_test_ring (text->str);
      g_assert_true (ox_ring_equal (ring_back, ring));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/wkt/parse/forms", test_parse_forms);
  g_test_add_func ("/geometry/wkt/parse/refuses", test_parse_refuses);
  g_test_add_func ("/geometry/wkt/parse/floods", test_parse_floods);
  g_test_add_func ("/geometry/wkt/parse/too-long", test_parse_too_long);
  g_test_add_func ("/geometry/wkt/parse/damaged", test_parse_damaged);
  g_test_add_func ("/geometry/wkt/write/region", test_write);
  g_test_add_func ("/geometry/wkt/write/ring-and-line", test_write_ring_and_line);
  g_test_add_func ("/geometry/wkt/write/rings", test_write_rings);
  g_test_add_func ("/geometry/wkt/round-trip", test_round_trip);
  return g_test_run ();
}
