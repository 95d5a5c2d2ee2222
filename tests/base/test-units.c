/* Oxturn: tests of base/units
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/units.h"
#include <math.h>
#include <string.h>

static void
test_length_text_feet (void)
{
  /* To 1/16 in; 0.3047 m is 11.996 in, which carries into the foot. */
  static const struct
  {
    double metres;
    const char *text;
  } cases[] = {
    { 12.345, "40'-6\"" },  { 3.65, "11'-11 11/16\"" }, { 2.438, "8'-0\"" },       { 0.3047, "1'-0\"" },
    { 5.0, "16'-4 7/8\"" }, { 1.0, "3'-3 3/8\"" },      { -0.1, "-0'-3 15/16\"" }, { 0.0007, "0'-0\"" },
    { -0.0007, "0'-0\"" },  { 12 * 0.3048, "12'-0\"" }, { 3.8227, "12'-6 1/2\"" }, { 0.01905, "0'-0 3/4\"" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = ox_units_length_text (OX_UNITS_FEET, cases[i].metres, TRUE);
      g_autofree char *bare = ox_units_length_text (OX_UNITS_FEET, cases[i].metres, FALSE);
      g_assert_cmpstr (text, ==, cases[i].text);
      g_assert_cmpstr (bare, ==, cases[i].text);
    }
}

static void
test_length_text_metric (void)
{
  static const struct
  {
    OxUnits units;
    double metres;
    const char *text;
    const char *bare;
  } cases[] = {
    { OX_UNITS_METRES, 12.345, "12.345 m", "12.345" }, { OX_UNITS_METRES, 12.3, "12.30 m", "12.30" },
    { OX_UNITS_METRES, 12, "12.00 m", "12.00" },       { OX_UNITS_METRES, 0.0004, "0.00 m", "0.00" },
    { OX_UNITS_METRES, -0.0004, "0.00 m", "0.00" },    { OX_UNITS_METRES, -1.5, "-1.50 m", "-1.50" },
    { OX_UNITS_METRES, 100, "100.00 m", "100.00" },    { OX_UNITS_MILLIMETRES, 12.345, "12345 mm", "12345" },
    { OX_UNITS_MILLIMETRES, 0.0126, "13 mm", "13" },   { OX_UNITS_MILLIMETRES, -0.0002, "0 mm", "0" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = ox_units_length_text (cases[i].units, cases[i].metres, TRUE);
      g_autofree char *bare = ox_units_length_text (cases[i].units, cases[i].metres, FALSE);
      g_assert_cmpstr (text, ==, cases[i].text);
      g_assert_cmpstr (bare, ==, cases[i].bare);
    }
}

/* 1,000 ft2 = 92.90304 m2 exactly. */
static void
test_area_text (void)
{
  static const struct
  {
    OxUnits units;
    double area;
    const char *text;
  } cases[] = {
    { OX_UNITS_METRES, 12.34, "12.3 m²" },    { OX_UNITS_METRES, 240, "240.0 m²" },
    { OX_UNITS_MILLIMETRES, 0.04, "0.0 m²" }, { OX_UNITS_FEET, 92.90304, "1000 ft²" },
    { OX_UNITS_FEET, 100, "1076 ft²" },       { OX_UNITS_FEET, 52.6172335, "566 ft²" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = ox_units_area_text (cases[i].units, cases[i].area);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static const struct
{
  OxUnits units;
  const char *text;
  double millimetres;
} typed[] = {
  { OX_UNITS_FEET, "12'-6 1/2\"", 3822.7 },
  { OX_UNITS_FEET, "12'6-1/2\"", 3822.7 },
  { OX_UNITS_FEET, "12ft 6in", 3810 },
  { OX_UNITS_FEET, "12 feet 6 inches", 3810 },
  { OX_UNITS_FEET, "1 foot", 304.8 },
  { OX_UNITS_FEET, "6 3/16", 157.1625 },
  { OX_UNITS_FEET, "12'", 3657.6 },
  { OX_UNITS_FEET, "12' 6.5", 150.5 * 25.4 },
  { OX_UNITS_FEET, "2'6\"", 30 * 25.4 },
  { OX_UNITS_FEET, "4' 0 3/16\"", 48.1875 * 25.4 },
  { OX_UNITS_FEET, "4'-3/16\"", 48.1875 * 25.4 },
  { OX_UNITS_FEET, "-1' 2 1/2\"", -14.5 * 25.4 },
  { OX_UNITS_FEET, "-0'-3 15/16\"", -3.9375 * 25.4 },
  { OX_UNITS_FEET, "3/4\"", 19.05 },
  { OX_UNITS_FEET, "99 1/16\"", 99.0625 * 25.4 },
  { OX_UNITS_FEET, "6.35", 6.35 * 304.8 },
  { OX_UNITS_FEET, "7", 7 * 304.8 },
  { OX_UNITS_FEET, "12.5'", 12.5 * 304.8 },
  { OX_UNITS_FEET, "250 mm", 250 },
  /* What keyboards, phones and other programs make of the marks. */
  { OX_UNITS_FEET, "12′-6½″", 3822.7 },
  { OX_UNITS_FEET, "12’-6 1⁄2”", 3822.7 },
  { OX_UNITS_FEET, "−1′ 2½″", -14.5 * 25.4 },
  { OX_UNITS_FEET, "¾\"", 19.05 },
  { OX_UNITS_METRES, "6.35", 6350 },
  { OX_UNITS_METRES, "6,35", 6350 },
  { OX_UNITS_METRES, "6350 mm", 6350 },
  { OX_UNITS_METRES, "6350mm", 6350 },
  { OX_UNITS_METRES, " 6350\u00a0MM ", 6350 },
  { OX_UNITS_METRES, "-.5", -500 },
  { OX_UNITS_METRES, "+2", 2000 },
  { OX_UNITS_METRES, "- 2", -2000 },
  { OX_UNITS_METRES, "0", 0 },
  { OX_UNITS_METRES, "0,125", 125 },
  { OX_UNITS_METRES, "1234,567", 1234567 },
  { OX_UNITS_METRES, "1.000", 1000 },
  { OX_UNITS_METRES, "12'-6 1/2\"", 3822.7 },
  { OX_UNITS_METRES, "12'6", 3810 },
  { OX_UNITS_MILLIMETRES, "2.5m", 2500 },
  { OX_UNITS_MILLIMETRES, "250cm", 2500 },
  { OX_UNITS_MILLIMETRES, "2500mm", 2500 },
  { OX_UNITS_MILLIMETRES, "2500", 2500 },
  { OX_UNITS_MILLIMETRES, "3 in", 76.2 },
};

static void
test_length_parse_table (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      double metres = NAN;
      g_test_message ("%s", typed[i].text);
      g_assert_true (ox_units_length_parse (typed[i].units, typed[i].text, &metres));
      g_assert_cmpfloat_with_epsilon (metres * 1000, typed[i].millimetres, 1e-8);
    }
}

static void
test_length_parse_refuses (void)
{
  static const char *const bad[] = {
    "",           " ",
    "-",          "1/0",
    "1/0\"",      "1/3\"",
    "12''6",      "6 1/2 3/4",
    "12'-13\"",   "12'-12\"",
    "1,000",      "12,500 m",
    "1.2.3",      "1,2,3",
    "1.2,3",      "6.",
    "m",          "6 7",
    "6-7",        "6 m m",
    "2 m 50 cm",  "12.5' 6\"",
    "6\" 2'",     "6 5/4\"",
    "6.5 1/2\"",  "1/2 m",
    "1/2 mm",     "1e3",
    "0x10",       "nan",
    "inf",        "6 km",
    "--6",        "6-",
    "12' -6\" x", "12'6' ",
    "12'6 mm",    "12'-",
    "six",        "6\"\"",
    "½½",         "1/2/4",
    "'",          "\"",
    "12'--6\"",   "1111111111111111111111111111111111111111111111111111111111111111111111",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    for (int units = OX_UNITS_METRES; units <= OX_UNITS_FEET; units++)
      {
        double metres = 42;
        g_test_message ("%s", bad[i]);
        g_assert_false (ox_units_length_parse ((OxUnits) units, bad[i], &metres));
        g_assert_cmpfloat (metres, ==, 42);
      }
}

/* What is shown can be typed back, and is shown the same again. */
static void
test_length_round_trip (void)
{
  static const double half_step[] = { 0.0005, 0.0005, 0.0254 / 32 };
  for (int i = 0; i < 3000; i++)
    {
      int units = i % 3;
      double metres = g_test_rand_double_range (-200, 200);
      double back = NAN;
      g_autofree char *text = ox_units_length_text ((OxUnits) units, metres, g_test_rand_bit ());
      g_assert_true (ox_units_length_parse ((OxUnits) units, text, &back));
      g_assert_cmpfloat_with_epsilon (back, metres, half_step[units] + 1e-9);
      g_autofree char *first = ox_units_length_text ((OxUnits) units, metres, TRUE);
      g_autofree char *again = ox_units_length_text ((OxUnits) units, back, TRUE);
      g_assert_cmpstr (again, ==, first);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/units/length-text/feet", test_length_text_feet);
  g_test_add_func ("/base/units/length-text/metric", test_length_text_metric);
  g_test_add_func ("/base/units/area-text/table", test_area_text);
  g_test_add_func ("/base/units/length-parse/table", test_length_parse_table);
  g_test_add_func ("/base/units/length-parse/refuses", test_length_parse_refuses);
  g_test_add_func ("/base/units/length/round-trip", test_length_round_trip);
  return g_test_run ();
}
